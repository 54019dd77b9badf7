/* piecefile/loads.c - one's own loads (N, N.m, N/m, global axes) and combinations of loads. */
#include "piecefile/reader.h"

#include <string.h>

/* Names of cases that the program makes; those that take a direction or a place behind them. */
static const char *const made[] = {"weight", "wind", "quake", "climb", "push", "ice",
                                   "snow",   "heat", "cold",  "water", NULL};
static const char *const with_words[] = {"wind", "quake", "climb", "push", NULL};

static bool among(const char *const *words, const char *name, size_t length)
{
    for (; *words; words++)
        if (strlen(*words) == length && strncmp(*words, name, length) == 0) return true;
    return false;
}

static bool built_in(const char *name)
{
    return among(made, name, strlen(name)) || among(with_words, name, strcspn(name, " "));
}

static const tt_own_load *case_named(const tt_piece *piece, const char *name)
{
    for (size_t i = 0; i < piece->loads.n; i++)
        if (strcmp(piece->loads.at[i].name, name) == 0) return &piece->loads.at[i];
    return NULL;
}

static void read_between(tt_reader *reader, const tt_node *entry, tt_own_load *load)
{
    const tt_node *node = tt_tree_find(entry, "between");
    load->between[1] = 1;
    if (!node) return;
    if (node->kind != TT_SEQUENCE || node->n != 2) {
        tt_wrong_shape(reader, node, &tt_fraction);
        return;
    }
    load->between[0] = tt_take_number(reader, node->child[0], &tt_fraction);
    load->between[1] = tt_take_number(reader, node->child[1], &tt_fraction);
    if (load->between[0] >= load->between[1])
        tt_wrong(reader, TT_D_RANGE, node, "for example: between: [0.2, 0.7]",
                 "`between` ends before it begins");
}

static void read_along(tt_reader *reader, const tt_node *entry, tt_own_load *load)
{
    const tt_node *node = tt_tree_find(entry, "along");
    if (!node) return;
    const char *name = tt_take_text(reader, node, tt_key_named(&tt_load_map, "along"));
    load->along = tt_draft_named(reader, name);
    if (load->along != TT_NONE || !name[0] || reader->holes) return;
    tt_near near = tt_near_to(name);
    for (size_t i = 0; i < reader->drafts.n; i++)
        tt_near_try_segment(&near, reader->drafts.at[i].name);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node,
             tt_near_words(&near, "segments of limbs are named first-second"),
             "no segment is named `%.80s`", name);
}

/* A load acts at a place, with force or moment, or along a segment. */
static void check_shape(tt_reader *reader, const tt_node *entry)
{
    const tt_node *at = tt_tree_find(entry, "at"), *along = tt_tree_find(entry, "along");
    const tt_node *line = tt_tree_find(entry, "force_per_length");
    const tt_node *force = tt_tree_find(entry, "force");
    const tt_node *moment = tt_tree_find(entry, "moment"),
                  *between = tt_tree_find(entry, "between");
    const tt_node *point = force ? force : moment, *lines = line ? line : between;
    if (at && along)
        tt_wrong_key(reader, TT_D_CONTRADICTION, along, "keep one of the two",
                     "a load acts at a place or along a segment");
    else if (!at && !along)
        tt_wrong_key(reader, TT_D_KEY_MISSING, entry, "add at: PLACE, or along: SEGMENT",
                     "a load that acts nowhere");
    else if (at && lines)
        tt_wrong_key(reader, TT_D_CONTRADICTION, lines, "write along: SEGMENT in place of `at`",
                     "`%s` goes with `along`", lines->key);
    else if (along && point)
        tt_wrong_key(reader, TT_D_CONTRADICTION, point, "write at: PLACE in place of `along`",
                     "`%s` goes with `at`", point->key);
    else if (at ? !point : !line)
        tt_wrong_key(reader, TT_D_KEY_MISSING, entry,
                     at ? "for example: force: [0, 0.4 kN, 0]"
                        : "for example: force_per_length: [0, 0, -0.2 kN/m]",
                     "a load without a force");
}

static void check_case(tt_reader *reader, const tt_node *entry, const tt_own_load *load)
{
    if (!load->name || !load->name[0]) return;
    const tt_own_load *first = case_named(reader->piece, load->name);
    if (built_in(load->name))
        tt_wrong(reader, TT_D_NAME_BUILT_IN, tt_tree_find(entry, "case"), "choose another name",
                 "`%.60s` is a load that the program makes", load->name);
    else if (first && first->kind != load->kind)
        tt_wrong_key(reader, TT_D_CONTRADICTION, tt_tree_find(entry, "kind"),
                     "write the same kind in both", "the load `%.60s` is of two kinds", load->name);
}

void tt_read_loads(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i], *name = tt_tree_find(entry, "case");
        tt_own_load load = {
            .name = "", .at = TT_NONE, .along = TT_NONE, .place = tt_keep_place(entry)};
        tt_enter(reader, name && name->kind == TT_SCALAR ? name->text : "load");
        tt_walk(reader, entry, key->map, &load);
        const tt_node *kind = tt_tree_find(entry, "kind");
        const tt_key *kinds = tt_key_named(key->map, "kind");
        const int word = kind ? tt_take_word(reader, kind, kinds, kinds->words) : -1;
        if (word >= 0) load.kind = (tt_load_kind)word;
        if (entry->kind == TT_MAPPING) {
            read_along(reader, entry, &load);
            read_between(reader, entry, &load);
            check_shape(reader, entry);
            if (word >= 0) check_case(reader, entry, &load);
        }
        if (!tt_list_push(&reader->piece->loads, load)) reader->no_memory = true;
        tt_leave(reader);
    }
}

/* ---- combinations ---- */

static void read_sum(tt_reader *reader, const tt_node *node, const tt_key *key,
                     tt_own_combination *out)
{
    if (node->kind != TT_MAPPING || node->n == 0) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    out->term = tt_pool_take(&reader->piece->pool, node->n, sizeof *out->term);
    if (!out->term) {
        reader->no_memory = true;
        return;
    }
    for (size_t i = 0; i < node->n; i++) {
        const tt_node *term = node->child[i];
        tt_enter(reader, term->key);
        if (!tt_term_computed(reader, term)) out->waits = true;
        tt_leave(reader);
        out->term[i] =
            (tt_term){tt_keep(reader, term->key), tt_take_number(reader, term, &tt_factor)};
    }
    out->terms = node->n;
}

static void read_combination(tt_reader *reader, const tt_node *entry, const tt_map *map,
                             tt_own_combination *out)
{
    const tt_node *sum = tt_tree_find(entry, "sum");
    const tt_node *imperfection = tt_tree_find(entry, "imperfection");
    tt_walk(reader, entry, map, out);
    tt_enter(reader, "sum");
    if (sum) read_sum(reader, sum, tt_key_named(map, "sum"), out);
    tt_leave(reader);
    if (imperfection && !tt_is_word(imperfection, "none"))
        out->imperfection = tt_take_given(reader, imperfection, tt_key_named(map, "imperfection"));
}

void tt_read_combinations(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_piece *piece = reader->piece;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i], *name = tt_tree_find(entry, "name");
        tt_own_combination combination = {.name = "", .place = tt_keep_place(entry)};
        tt_enter(reader, name && name->kind == TT_SCALAR ? name->text : "combination");
        read_combination(reader, entry, key->map, &combination);
        for (size_t j = 0; j < piece->combinations.n; j++)
            if (name && combination.name &&
                strcmp(piece->combinations.at[j].name, combination.name) == 0)
                tt_wrong(reader, TT_D_NAME_TWICE, name, "give it another name",
                         "there is a combination named `%.60s` already", combination.name);
        if (!tt_list_push(&piece->combinations, combination)) reader->no_memory = true;
        tt_leave(reader);
    }
}
