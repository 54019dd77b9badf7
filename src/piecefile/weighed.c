/* piecefile/weighed.c - what was weighed, in the piece file or in a table beside it; kg. */
#include "base/text.h"
#include "piecefile/works.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

void tt_read_plumb(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    double *plumb = field;
    if (node->kind != TT_SEQUENCE || node->n != 2) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    plumb[0] = tt_take_number(reader, node->child[0], key);
    plumb[1] = tt_take_number(reader, node->child[1], key);
}

void tt_read_hangs(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_weighing *weighing = field;
    weighing->hang = tt_pool_take(&reader->piece->pool, node->n, sizeof *weighing->hang);
    if (!weighing->hang) reader->no_memory = true;
    for (size_t i = 0; weighing->hang && i < node->n; i++) {
        tt_hang *hang = &weighing->hang[weighing->hangs++];
        hang->at = TT_NONE;
        tt_walk(reader, node->child[i], key->map, hang);
    }
}

/* ---- what was weighed: names that are close by ------------------------------------------------
 */

/* Of a limb: the panel that makes its segments a part to weigh. */
static void limb_instead(tt_reader *reader, const tt_node *node, const tt_limb *limb)
{
    const tt_segment *segment = &reader->piece->segments.at[limb->first];
    tt_text hint = {0};
    if (limb->count == 1) tt_text_format(&hint, "segment: %s is all of it", segment->name);
    if (limb->count > 1) tt_text_format(&hint, "panels: {%s: [", limb->name);
    for (size_t i = 0; i < limb->count && limb->count > 1; i++)
        tt_text_format(&hint, "%s%s", i ? ", " : "", segment[i].name);
    if (limb->count > 1) tt_text_format(&hint, "]} makes a part of it: panel: %s", limb->name);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node, tt_text_of(&hint),
             "`%.60s` is a limb; segments and panels are weighed", limb->name);
    if (hint.failed) reader->no_memory = true;
    tt_text_clear(&hint);
}

bool tt_weighed_instead(tt_reader *reader, const tt_node *node)
{
    const tt_piece *piece = reader->piece;
    for (size_t i = 0; i < piece->limbs.n && !reader->holes; i++) {
        if (!tt_is_word(node, piece->limbs.at[i].name) || !piece->limbs.at[i].count) continue;
        limb_instead(reader, node, &piece->limbs.at[i]);
        return true;
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        if (!tt_is_word(node, piece->lumps.at[i].name)) continue;
        tt_wrong(reader, TT_D_NAME_UNKNOWN, node, "a lump's weight goes into its `mass`",
                 "`%.60s` is a lump; segments and panels are weighed", piece->lumps.at[i].name);
        return true;
    }
    return false;
}

void tt_read_weighed_segment(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const bool known =
        node->kind == TT_SCALAR && tt_piece_segment(reader->piece, node->text) != TT_NONE;
    *(size_t *)field = TT_NONE;
    if (known || !tt_weighed_instead(reader, node)) tt_read_segment_name(reader, node, key, field);
}

/* ---- one weighing ---------------------------------------------------------------------------- */

static void left_out(tt_reader *reader, const char *name, tt_given *given, double is)
{
    if (given->origin) return;
    const tt_key *key = tt_key_named(&tt_weighing_map, name);
    char path[40];
    snprintf(path, sizeof path, "weighed/%s", name);
    *given = (tt_given){is, is, is, tt_origin_default(reader, path, key->otherwise, key->why)};
}

static void what(tt_reader *reader, const tt_node *entry, tt_weighing_draft *draft)
{
    static const char *const names[] = {"segment", "panel", "whole", NULL};
    const tt_node *of =
        tt_one_of(reader, entry, names,
                  "for example: {panel: P3, bronze: 61 kg}, or {whole: yes, bronze: 142 kg}");
    tt_weighing *weighing = &draft->weighing;
    weighing->index = TT_NONE;
    if (!of) return;
    weighing->what = of == tt_tree_find(entry, "segment") ? TT_WEIGHED_SEGMENT
                     : of == tt_tree_find(entry, "panel") ? TT_WEIGHED_PANEL
                                                          : TT_WEIGHED_WHOLE;
    if (weighing->what == TT_WEIGHED_SEGMENT) weighing->index = draft->segment;
    if (weighing->what == TT_WEIGHED_PANEL) weighing->index = draft->panel;
    if (weighing->what == TT_WEIGHED_WHOLE && draft->whole == TT_NO)
        tt_wrong(reader, TT_D_WORD, of, "whole: yes, or name a segment or a panel",
                 "`whole: no` weighs nothing");
}

/* Wax or bronze; what belongs to wax alone. */
static void metal(tt_reader *reader, const tt_node *entry, tt_weighing_draft *draft)
{
    static const char *const names[] = {"bronze", "wax", NULL};
    static const char *const of_wax[] = {"wax_density", "not_in_wax"};
    const tt_node *of =
        tt_one_of(reader, entry, names, "for example: bronze: 61 kg, or wax: 0.42 kg");
    tt_weighing *weighing = &draft->weighing;
    weighing->wax = of && of == tt_tree_find(entry, "wax");
    weighing->mass = weighing->wax ? draft->wax : draft->bronze;
    if (weighing->wax && weighing->what == TT_WEIGHED_WHOLE)
        tt_wrong_key(reader, TT_D_CONTRADICTION, of, "weigh the wax panel by panel",
                     "the whole is weighed in bronze");
    for (size_t i = 0; of && i < 2; i++) {
        const tt_node *child = tt_tree_find(entry, of_wax[i]);
        if (child && !weighing->wax)
            tt_wrong_key(reader, TT_D_CONTRADICTION, child, "it belongs to a wax",
                         "`%s` of what is weighed in bronze", of_wax[i]);
    }
    left_out(reader, "tare", &weighing->tare, 0.0);
    left_out(reader, "gates", &weighing->gates, 0.0);
    if (!weighing->wax) return;
    left_out(reader, "wax_density", &weighing->wax_density, 930.0);
    left_out(reader, "not_in_wax", &weighing->not_in_wax, 0.0);
}

static void net(tt_reader *reader, const tt_node *entry, const tt_weighing *weighing)
{
    const tt_node *of = tt_tree_find(entry, weighing->wax ? "wax" : "bronze");
    if (of && tt_weighing_net(weighing) <= 0)
        tt_wrong(reader, TT_D_WEIGHED, of, "the scales show part, tare and gates together",
                 "nothing is left when tare and gates are taken off");
}

static bool in_a_panel(const tt_piece *piece, size_t segment, const char **name)
{
    for (size_t p = 0; p < piece->works->panels.n; p++) {
        const tt_panel *panel = &piece->works->panels.at[p];
        for (size_t i = 0; i < panel->parts; i++) {
            *name = panel->name;
            if (panel->part[i].segment == segment) return true;
        }
    }
    return false;
}

static void segment_rules(tt_reader *reader, const tt_node *entry, const tt_weighing *weighing)
{
    const tt_node *of = tt_tree_find(entry, "segment");
    const char *panel;
    if (!of || weighing->what != TT_WEIGHED_SEGMENT || weighing->index == TT_NONE) return;
    const tt_segment *segment = &reader->piece->segments.at[weighing->index];
    if (segment->alloy == TT_NONE)
        tt_wrong(reader, TT_D_NOTHING_TO_JOIN, of, "the armature is weighed with the whole",
                 "`%.80s` has no bronze", segment->name);
    else if (in_a_panel(reader->piece, weighing->index, &panel))
        tt_wrong(reader, TT_D_WEIGHED, of, "weigh the panel, or make a panel of this part alone",
                 "`%.80s` is part of the panel `%.60s`", segment->name, panel);
}

static void one(tt_reader *reader, const tt_node *entry, tt_works *works)
{
    tt_weighing_draft draft = {.segment = TT_NONE, .panel = TT_NONE};
    draft.weighing.place = tt_keep_place(entry);
    tt_walk_entry(reader, entry, &tt_weighing_map, &draft);
    if (entry->kind != TT_MAPPING) return;
    what(reader, entry, &draft);
    metal(reader, entry, &draft);
    net(reader, entry, &draft.weighing);
    segment_rules(reader, entry, &draft.weighing);
    if (!tt_list_push(&works->weighings, draft.weighing) || !tt_list_push(&reader->weighed, entry))
        reader->no_memory = true;
}

/* ---- a table --------------------------------------------------------------------------------- */

/* A row as a map: the columns' heads are its keys, empty fields are left out. */
static tt_node *as_map(tt_reader *reader, const tt_node *head, const tt_node *row)
{
    tt_node *map = tt_pool_take(&reader->trees, 1, sizeof *map);
    tt_node **child = tt_pool_take(&reader->trees, row->n ? row->n : 1, sizeof *child);
    if (!map || !child) {
        reader->no_memory = true;
        return NULL;
    }
    *map = *row;
    map->kind = TT_MAPPING;
    map->child = child;
    map->n = 0;
    for (size_t i = 0; i < row->n; i++) {
        tt_node *field = row->child[i];
        if (i >= head->n && field->text[0])
            tt_wrong(reader, TT_D_TABLE, field,
                     "put a text with commas into double quotes; numbers take decimal points",
                     "a field more than the table has columns");
        if (i >= head->n || !field->text[0]) continue;
        field->key = head->child[i]->text;
        field->key_place = field->place;
        child[map->n++] = field;
    }
    return map;
}

/* The rows below the heads as a list of maps, told with the table's name. */
static tt_node *as_list(tt_reader *reader, const tt_node *name, const tt_node *rows)
{
    tt_node *list = tt_pool_take(&reader->trees, 1, sizeof *list);
    if (list) *list = (tt_node){.kind = TT_SEQUENCE, .key = name->key};
    for (size_t i = 1; list && i < rows->n; i++) {
        tt_node *map = as_map(reader, rows->child[0], rows->child[i]);
        if (!map || !tt_tree_put(list, &reader->trees, map)) reader->no_memory = true;
    }
    const char *text = reader->sets.at[reader->sets.n - 1].text;
    if (!list || !tt_list_push(&reader->sets, ((tt_set_entry){text, list, name->text})))
        reader->no_memory = true;
    return reader->no_memory ? NULL : list;
}

/* The heads are keys of a weighing, each once; told at the head, so that rows need not. */
static bool heads(tt_reader *reader, const tt_node *head)
{
    bool good = true;
    for (size_t i = 0; i < head->n; i++) {
        const tt_node *one_head = head->child[i];
        const tt_key *key = tt_key_named(&tt_weighing_map, one_head->text);
        tt_near near = tt_near_to(one_head->text);
        for (size_t k = 0; k < tt_weighing_map.n; k++)
            tt_near_try(&near, tt_weighing_map.key[k].name);
        if (!key || key->kind == TT_KEY_LIST)
            tt_wrong(reader, TT_D_TABLE, one_head,
                     tt_near_words(&near, "columns are segment, panel, whole, wax, bronze, tare, "
                                          "gates, wax_density, not_in_wax, day, by"),
                     "`%.60s` is not a column of a table of weighings", one_head->text);
        for (size_t k = 0; k < i; k++)
            if (tt_is_word(head->child[k], one_head->text))
                tt_wrong(reader, TT_D_TABLE, one_head, "keep one of the two",
                         "two columns named `%.60s`", one_head->text),
                    key = NULL;
        good = good && key && key->kind != TT_KEY_LIST;
    }
    return good;
}

static bool comma_in_number(const char *text)
{
    for (const char *comma = strchr(text, ','); comma; comma = strchr(comma + 1, ','))
        if (comma > text && isdigit((unsigned char)comma[-1]) && isdigit((unsigned char)comma[1]))
            return true;
    return false;
}

/* A table of a sheet that writes decimal commas: told once, at the first of them. */
static bool has_commas(tt_reader *reader, const tt_node *rows)
{
    const tt_node *head = rows->child[0];
    for (size_t r = 1; r < rows->n; r++) {
        for (size_t i = 0; i < rows->child[r]->n && i < head->n; i++) {
            const tt_node *field = rows->child[r]->child[i];
            const tt_key *key = tt_key_named(&tt_weighing_map, head->child[i]->text);
            if (key->kind != TT_KEY_GIVEN || !comma_in_number(field->text)) continue;
            tt_wrong(reader, TT_D_TABLE, field,
                     "set the sheet to a language that writes decimal points and save the table "
                     "again; thousands without a mark",
                     "`%.40s` has a comma in its number", field->text);
            return true;
        }
    }
    return false;
}

static void table(tt_reader *reader, const tt_node *node, tt_works *works)
{
    const tt_node *rows = tt_neighbour_table(reader, node);
    if (!rows || !heads(reader, rows->child[0]) || has_commas(reader, rows)) return;
    if (rows->n == 1)
        tt_wrong(reader, TT_D_TABLE, rows->child[0], "a row a weighing below the heads",
                 "the table has no rows");
    tt_node *all = as_list(reader, node, rows);
    if (!all) return;
    for (size_t i = 0; i < all->n && !reader->no_memory; i++) one(reader, all->child[i], works);
    reader->table_name = node;
    reader->table_rows = all;
}

/* ---- of which size --------------------------------------------------------------------------- */

#define NEAR_ENOUGH 0.005 /* a scale told with three digits: 1 % of the weight */

static bool set_somewhere(const tt_node *node)
{
    bool set = node && node->set;
    for (size_t i = 0; node && i < node->n; i++) set = set || set_somewhere(node->child[i]);
    return set;
}

/* Castings and waxes are of the size that the file itself says; another one must not lie under
 * them. */
static bool of_this_size(tt_reader *reader, const tt_node *node)
{
    const bool set = !node->set && set_somewhere(tt_tree_find(reader->root, "scale"));
    const double own = reader->own_scale;
    if (reader->scale_option && fabs(reader->piece->scale - own) > NEAR_ENOUGH * own)
        tt_wrong_key(reader, TT_D_CONTRADICTION, node,
                     "leave out --scale, or look at the other size with --set weighed=[]",
                     "what was weighed is of the size of the file's own scale, %.3g", own);
    else if (set)
        tt_wrong_key(
            reader, TT_D_CONTRADICTION, node,
            "change it in the file, and what was weighed too; or --set weighed=[]",
            "what was weighed is of the size of the file's own scale, which --set changes");
    else
        return true;
    return false;
}

void tt_read_weighed(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const bool nothing = node->kind == TT_SEQUENCE && node->n == 0;
    if (!nothing && !of_this_size(reader, node)) return;
    if (node->kind == TT_SCALAR && node->text[0])
        table(reader, node, field);
    else if (node->kind == TT_SEQUENCE)
        for (size_t i = 0; i < node->n && !reader->no_memory; i++)
            one(reader, node->child[i], field);
    else
        tt_wrong_shape(reader, node, key);
}
