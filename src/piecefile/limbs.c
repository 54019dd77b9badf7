/* piecefile/limbs.c - limbs: chains of places. Each row makes a place or names one, each two
 * neighbours make a draft of a segment `first-second`. */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

typedef struct {
    const char *name;
    size_t point; /* TT_NONE: told */
    tt_outline outline;
} tt_station;

static void wrong_row(tt_reader *reader, const tt_node *row)
{
    char comma[100];
    const bool seven = row->kind == TT_SEQUENCE && row->n == 7;
    tt_wrong(
        reader, TT_D_ROW, row,
        seven && tt_row_comma(row, comma, sizeof comma)
            ? comma
            : "write [name, x, y, z, girth] or [name, x, y, z, wide, deep]; a place that is made "
              "already: [name], [name, girth] or [name, wide, deep]",
        "a row has 1 to 6 entries, its name first");
}

/* The outline in the entries from `first` on: none, a girth, or wide and deep. */
static tt_outline row_outline(tt_reader *reader, const tt_node *row, size_t first)
{
    tt_outline outline = tt_outline_of(TT_OUTLINE_NONE, 0, 0);
    if (row->n == first) return outline;
    if (row->n == first + 2) {
        outline.kind = TT_OUTLINE_ELLIPSE;
        outline.wide = tt_take_number(reader, row->child[first], &tt_row_wide);
        outline.deep = tt_take_number(reader, row->child[first + 1], &tt_row_deep);
        return outline;
    }
    const double girth = tt_take_number(reader, row->child[first], &tt_row_girth);
    if (!(girth > 0) || !tt_outline_of_girth(girth, 0, &outline))
        outline = tt_outline_of(TT_OUTLINE_ELLIPSE, NAN, NAN);
    return outline;
}

static void station_of_old(tt_reader *reader, const tt_node *row, tt_station *out)
{
    out->point = tt_place_named(reader, row->child[0]);
    if (row->n > 1) {
        out->outline = row_outline(reader, row, 1);
    } else if (out->point != TT_NONE) {
        const tt_made *made = &reader->made.at[out->point];
        out->outline = made->outline;
        if (made->by_limb) return;
        tt_wrong(reader, TT_D_ROW, row, "give its girth, or wide and deep: [name, 150 mm]",
                 "no limb made `%.60s`, so that it has no outline", out->name);
        out->outline = tt_outline_of(TT_OUTLINE_ELLIPSE, NAN, NAN);
    }
}

static void station_of_new(tt_reader *reader, const tt_node *rows, const tt_node *row,
                           tt_station *out)
{
    tt_vec3 at;
    at.x = tt_take_number(reader, row->child[1], &tt_coordinate);
    at.y = tt_take_number(reader, row->child[2], &tt_coordinate);
    at.z = tt_take_number(reader, row->child[3], &tt_coordinate);
    out->outline = tt_row_lacks_girth(reader, rows, row)
                       ? tt_outline_of(TT_OUTLINE_ELLIPSE, NAN, NAN)
                       : row_outline(reader, row, 4);
    out->point = tt_place_add(reader, row->child[0], out->name, at, &(tt_made){out->outline, true});
}

static tt_station read_row(tt_reader *reader, const tt_node *rows, const tt_node *row)
{
    tt_station station = {"", TT_NONE, tt_outline_of(TT_OUTLINE_NONE, 0, 0)};
    if (row->kind != TT_SEQUENCE || row->n < 1 || row->n > 6 || row->child[0]->kind != TT_SCALAR ||
        !row->child[0]->text[0]) {
        wrong_row(reader, row);
        return station;
    }
    if (tt_row_lacks_name(reader, rows, row)) return station;
    station.name = row->child[0]->text;
    if (row->n <= 3)
        station_of_old(reader, row, &station);
    else
        station_of_new(reader, rows, row, &station);
    return station;
}

size_t tt_draft_named(const tt_reader *reader, const char *name)
{
    for (size_t i = 0; i < reader->drafts.n; i++)
        if (strcmp(reader->drafts.at[i].name, name) == 0) return i;
    return TT_NONE;
}

static void add_draft(tt_reader *reader, const tt_node *row, const tt_limb_draft *limb,
                      const tt_station *a, const tt_station *b)
{
    tt_piece *piece = reader->piece;
    if (a->point == TT_NONE || b->point == TT_NONE) {
        reader->holes = true;
        return;
    }
    tt_draft draft = {.said = limb->said,
                      .from = a->point,
                      .to = b->point,
                      .outline = a->outline,
                      .outline_to = b->outline,
                      .node = row,
                      .limb = piece->limbs.n - 1,
                      .place_in_limb = piece->limbs.at[piece->limbs.n - 1].count,
                      .name = tt_pool_format(&piece->pool, "%s-%s", a->name, b->name)};
    if (draft.name && tt_draft_named(reader, draft.name) != TT_NONE) {
        tt_wrong(reader, TT_D_NAME_TWICE, row,
                 "write one of the two in the long form, under "
                 "`segments`, with a name of its own",
                 "there is a segment named `%.80s` already", draft.name);
        reader->holes = true;
    } else if (!draft.name || !tt_list_push(&reader->drafts, draft)) {
        reader->no_memory = true;
    } else {
        piece->limbs.at[piece->limbs.n - 1].count++;
    }
}

static void read_rows(tt_reader *reader, const tt_node *rows, const tt_limb_draft *limb)
{
    if (rows->kind != TT_SEQUENCE || rows->n < 2) {
        tt_wrong_shape(reader, rows, tt_key_named(&tt_limb_map, "rows"));
        reader->holes = true;
    }
    if (rows->kind == TT_SEQUENCE) tt_doubt_commas(reader, rows);
    tt_station before = {0};
    for (size_t i = 0; rows->kind == TT_SEQUENCE && i < rows->n; i++) {
        const tt_station station = read_row(reader, rows, rows->child[i]);
        if (i > 0) add_draft(reader, rows->child[i], limb, &before, &station);
        before = station;
    }
}

static void read_limb(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    tt_limb_draft draft = {.rows = node->kind == TT_SEQUENCE ? node : NULL};
    if (!draft.rows) {
        tt_walk(reader, node, key->map, &draft);
        tt_check_said(reader, node, &draft.said);
    }
    const tt_limb limb = {tt_keep(reader, node->key), reader->drafts.n, 0, TT_NONE,
                          tt_keep_place(node)};
    if (!tt_list_push(&reader->piece->limbs, limb)) {
        reader->no_memory = true;
        return;
    }
    const size_t index = reader->piece->limbs.n - 1;
    if (draft.joins && !tt_list_push(&reader->joins, ((tt_joins){index, draft.joins})))
        reader->no_memory = true;
    const size_t first = reader->drafts.n;
    if (draft.rows)
        read_rows(reader, draft.rows, &draft);
    else
        reader->holes = true;
    tt_finish_through(reader, first, index);
}

void tt_read_limbs(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        tt_enter(reader, node->child[i]->key);
        read_limb(reader, node->child[i], key);
        tt_leave(reader);
    }
}
