/* piecefile/set.c - --set KEY=VALUE: edits the tree before it is read, so that what is set is read
 * and checked like the file. KEY: names joined by strokes; an entry of a list by its name, else by
 * the place it is at, else by its number from 0; + appends; a backslash takes the next character as
 * it is. VALUE is YAML. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <stdio.h>
#include <string.h>

enum { MOST_STEPS = 16 };

typedef struct {
    const char *name[MOST_STEPS];
    tt_place place[MOST_STEPS]; /* in the option's text */
    size_t n;
    const char *value; /* in the option's text, behind the = */
} tt_steps_of_key;

static void wrong_set(tt_reader *reader, const char *text, tt_place place, const char *hint,
                      const char *words, const char *name)
{
    tt_diags_about(reader->diags, "--set", text, strlen(text));
    tt_complain(reader->diags, TT_D_SET, place, hint, words, name);
    tt_diags_about(reader->diags, reader->file, reader->text, reader->length);
}

static tt_place place_of(const char *text, const char *from, const char *to)
{
    return (tt_place){1, (unsigned)tt_text_width(text, (size_t)(from - text)) + 1,
                      (unsigned)tt_text_width(from, (size_t)(to - from))};
}

/* One name up to a stroke or an =; false without memory or room. */
static bool step(tt_reader *reader, const char *text, const char **at, tt_steps_of_key *key)
{
    const char *from = *at;
    char *name = tt_pool_take(&reader->trees, strlen(from) + 1, 1);
    if (!name) reader->no_memory = true;
    if (!name || key->n == MOST_STEPS) return false;
    size_t n = 0;
    while (**at && **at != '/' && **at != '=') {
        if (**at == '\\' && (*at)[1]) ++*at;
        name[n++] = *(*at)++;
    }
    key->name[key->n] = name;
    key->place[key->n++] = place_of(text, from, *at);
    return n > 0;
}

static bool split(tt_reader *reader, const char *text, tt_steps_of_key *key)
{
    const char *at = text;
    bool whole = step(reader, text, &at, key);
    while (whole && *at == '/') {
        at++;
        whole = step(reader, text, &at, key);
    }
    key->value = at + 1;
    if (whole && *at == '=' && at[1]) return true;
    wrong_set(reader, text, place_of(text, text, text + strlen(text)),
              "for example: bronze/wall=6 mm", "`%.80s` is not KEY=VALUE", text);
    return false;
}

static void mark(tt_node *node)
{
    node->set = true;
    for (size_t i = 0; i < node->n; i++) mark(node->child[i]);
}

/* The value's tree. The key is blanked out, not cut off, so that columns are those of the option.
 */
static tt_node *read_value(tt_reader *reader, const char *text, const tt_steps_of_key *key)
{
    const size_t blank = tt_text_width(text, (size_t)(key->value - text));
    tt_text padded = {0};
    tt_text_fill(&padded, ' ', blank);
    tt_text_put(&padded, key->value);
    tt_node *value = NULL;
    tt_diags_about(reader->diags, "--set", text, strlen(text));
    if (padded.failed || tt_tree_read(tt_text_of(&padded), padded.n, &reader->trees, reader->diags,
                                      &value) == TT_E_NOMEM)
        reader->no_memory = true;
    tt_diags_about(reader->diags, reader->file, reader->text, reader->length);
    tt_text_clear(&padded);
    if (!value) return NULL;
    tt_join_commas(reader, value);
    mark(value);
    return value;
}

static tt_node *new_node(tt_reader *reader, tt_node_kind kind, const char *name, tt_place place)
{
    tt_node *node = tt_pool_take(&reader->trees, 1, sizeof *node);
    if (!node) {
        reader->no_memory = true;
        return NULL;
    }
    *node = (tt_node){.kind = kind, .set = true, .place = place, .key_place = place, .key = name};
    return node;
}

static bool put(tt_reader *reader, tt_node *node, tt_node *child)
{
    if (child && tt_tree_put(node, &reader->trees, child)) return true;
    reader->no_memory = true;
    return false;
}

static bool called(const tt_node *entry, const char *key, const char *name)
{
    const tt_node *child = tt_tree_find(entry, key);
    return child && tt_is_word(child, name);
}

static bool of_limbs(const tt_steps_of_key *key)
{
    return strcmp(key->name[0], "limbs") == 0;
}

static bool is_row(const tt_node *node, const tt_steps_of_key *key)
{
    return of_limbs(key) && node->kind == TT_SEQUENCE && node->n > 0 &&
           node->child[0]->kind == TT_SCALAR;
}

/* Where the entry stands in the list; node->n when it does not. A row bears the name of its place.
 */
static size_t entry_of(const tt_node *node, const tt_steps_of_key *key, size_t step)
{
    static const char *const keys[] = {"name", "at", "case"};
    const char *name = key->name[step];
    for (size_t i = 0; i < node->n; i++)
        if (is_row(node->child[i], key) && tt_is_word(node->child[i]->child[0], name)) return i;
    for (size_t k = 0; k < sizeof keys / sizeof *keys; k++)
        for (size_t i = 0; i < node->n; i++)
            if (called(node->child[i], keys[k], name)) return i;
    size_t number = 0, digits = 0;
    for (; digits < 6 && name[digits] >= '0' && name[digits] <= '9'; digits++)
        number = 10 * number + (size_t)(name[digits] - '0');
    return digits && !name[digits] && number < node->n ? number : node->n;
}

/* `segments/NAME` of a segment that a limb makes: an entry of its own. */
static tt_node *new_entry(tt_reader *reader, tt_node *list, const char *name, tt_place place)
{
    tt_node *entry = new_node(reader, TT_MAPPING, NULL, place);
    tt_node *word = new_node(reader, TT_SCALAR, "name", place);
    if (!entry || !word) return NULL;
    word->text = name;
    return put(reader, entry, word) && put(reader, list, entry) ? entry : NULL;
}

static tt_node *in_list(tt_reader *reader, tt_node *list, const tt_steps_of_key *key, size_t i,
                        const char *text)
{
    const size_t at = entry_of(list, key, i);
    if (at < list->n) return list->child[at];
    if (i == 1 && strcmp(key->name[0], "segments") == 0)
        return new_entry(reader, list, key->name[i], key->place[i]);
    tt_near near = tt_near_to(key->name[i]);
    for (size_t k = 0; k < list->n; k++) {
        const tt_node *name = tt_tree_find(list->child[k], "name");
        if (!name) name = tt_tree_find(list->child[k], "at");
        if (is_row(list->child[k], key)) name = list->child[k]->child[0];
        if (name && name->kind == TT_SCALAR) tt_near_try(&near, name->text);
    }
    wrong_set(reader, text, key->place[i],
              tt_near_words(&near, "an entry by its name, its `at`, or its number from 0"),
              "the list has no entry `%.60s`", key->name[i]);
    return NULL;
}

static bool makes_list(const tt_steps_of_key *key, size_t i)
{
    const tt_key *row = i == 0 ? tt_key_named(&tt_root_map, key->name[0]) : NULL;
    return (row && row->kind == TT_KEY_LIST) || strcmp(key->name[i + 1], "+") == 0;
}

/* A limb that is a plain list of rows becomes a map with `rows`, to have room for other keys. */
static tt_node *rows_apart(tt_reader *reader, tt_node *limbs, const tt_node *rows)
{
    tt_node *whole = new_node(reader, TT_MAPPING, rows->key, rows->key_place);
    tt_node *apart = new_node(reader, TT_SEQUENCE, "rows", rows->key_place);
    if (!whole || !apart) return NULL;
    *apart = *rows;
    apart->key = "rows";
    whole->set = false; /* it stands for the list of the file */
    return put(reader, whole, apart) && put(reader, limbs, whole) ? whole : NULL;
}

/* A limb is made by its rows; with another key a limb of the file is meant. */
static bool no_limb(tt_reader *reader, const tt_node *limbs, const tt_steps_of_key *key, size_t i,
                    const char *text)
{
    if (i != 1 || !of_limbs(key) || strcmp(key->name[i + 1], "rows") == 0) return false;
    tt_near near = tt_near_to(key->name[i]);
    for (size_t k = 0; k < limbs->n; k++) tt_near_try(&near, limbs->child[k]->key);
    wrong_set(reader, text, key->place[i],
              tt_near_words(&near, "a new limb: limbs/NAME=[[name, x, y, z, girth], ...]"),
              "no limb is named `%.60s`", key->name[i]);
    return true;
}

static tt_node *in_map(tt_reader *reader, tt_node *map, const tt_steps_of_key *key, size_t i,
                       const char *text)
{
    tt_node *child = tt_tree_find(map, key->name[i]);
    const tt_node_kind kind = makes_list(key, i) ? TT_SEQUENCE : TT_MAPPING;
    if (!child && no_limb(reader, map, key, i, text)) return NULL;
    if (!child) {
        child = new_node(reader, kind, key->name[i], key->place[i]);
        return put(reader, map, child) ? child : NULL;
    }
    const bool limb = i == 1 && of_limbs(key);
    if (!limb || child->kind != TT_SEQUENCE || tt_key_named(&tt_limb_map, key->name[i + 1]) == NULL)
        return child;
    return rows_apart(reader, map, child);
}

/* `limbs/LEG/ANKLE`: what is no key of the limb is a place of its rows. */
static tt_node *rows_of(tt_node *node, const tt_steps_of_key *key, size_t i)
{
    tt_node *rows = i == 2 && of_limbs(key) ? tt_tree_find(node, "rows") : NULL;
    const bool row = rows && rows->kind == TT_SEQUENCE &&
                     !tt_key_named(&tt_limb_map, key->name[i]) && entry_of(rows, key, i) < rows->n;
    return row ? rows : node;
}

static tt_node *descend(tt_reader *reader, tt_node *node, const tt_steps_of_key *key, size_t i,
                        const char *text)
{
    node = rows_of(node, key, i);
    if (node->kind == TT_MAPPING) return in_map(reader, node, key, i, text);
    if (node->kind == TT_SEQUENCE) return in_list(reader, node, key, i, text);
    wrong_set(reader, text, key->place[i], "give the whole value: KEY={...}",
              "`%.60s` would stand in a single value", key->name[i]);
    return NULL;
}

/* A row takes the place of a row; a single value says what it was meant for. */
static void put_entry(tt_reader *reader, tt_node **entry, const tt_steps_of_key *key,
                      tt_node *value, const char *text)
{
    const size_t last = key->n - 1;
    char hint[256];
    if (!is_row(*entry, key) || value->kind != TT_SCALAR) {
        *entry = value;
        return;
    }
    snprintf(hint, sizeof hint, "limbs/%.40s/%.40s=[%.40s, x, y, z, %.20s], or %.40s/%zu=%.20s",
             key->name[1], key->name[last], (*entry)->child[0]->text, value->text, key->name[last],
             (*entry)->n - 1, value->text);
    wrong_set(reader, text, key->place[last], hint, "`%.60s` is a whole row", key->name[last]);
}

static void put_last(tt_reader *reader, tt_node *node, const tt_steps_of_key *key, tt_node *value,
                     const char *text)
{
    const size_t last = key->n - 1;
    const char *name = key->name[last];
    node = rows_of(node, key, last);
    value->key_place = key->place[last];
    if (node->kind == TT_SEQUENCE && strcmp(name, "+") != 0) {
        const size_t at = entry_of(node, key, last);
        if (at < node->n)
            put_entry(reader, &node->child[at], key, value, text);
        else
            in_list(reader, node, key, last, text);
    } else if (node->kind == TT_SCALAR) {
        descend(reader, node, key, last, text);
    } else {
        value->key = node->kind == TT_MAPPING ? name : NULL;
        put(reader, node, value);
    }
}

static void apply(tt_reader *reader, tt_node *root, const char *text)
{
    tt_steps_of_key key = {0};
    if (!split(reader, text, &key)) return;
    tt_node *value = read_value(reader, text, &key), *node = root;
    const tt_node *top = NULL; /* the first node that this option makes */
    for (size_t i = 0; value && node && i + 1 < key.n; i++) {
        node = descend(reader, node, &key, i, text);
        if (!top && node && node->set) top = node;
    }
    if (!value || !node) return;
    put_last(reader, node, &key, value, text);
    if (!tt_list_push(&reader->sets, ((tt_set_entry){text, value, NULL})) ||
        (top && !tt_list_push(&reader->sets, ((tt_set_entry){text, top, NULL}))))
        reader->no_memory = true;
}

bool tt_apply_sets(tt_reader *reader, tt_node *root, const tt_changes *changes)
{
    tt_piece *piece = reader->piece;
    const char **kept = tt_pool_take(&piece->pool, changes->sets, sizeof *kept);
    if (!kept) reader->no_memory = true;
    for (size_t i = 0; kept && i < changes->sets && !reader->no_memory; i++) {
        kept[i] = tt_keep(reader, changes->set[i]);
        apply(reader, root, kept[i]);
    }
    piece->set = kept;
    piece->sets = kept ? changes->sets : 0;
    return !reader->no_memory;
}
