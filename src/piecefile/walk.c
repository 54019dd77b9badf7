/* piecefile/walk.c - reading a map by its table: what is not in the table is told with its nearest
 * spelling, what this version does not read by name, the rest goes into the record in the order of
 * the table, whatever the order of the file. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <stdio.h>
#include <string.h>

enum { HINT = 200 };
static const char *const yes_no[] = {"no", "yes", NULL};

const tt_key *tt_key_named(const tt_map *map, const char *name)
{
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++)
            if (strcmp(part->key[i].name, name) == 0) return &part->key[i];
    return NULL;
}

/* Words that people write for a key of this name or of another place, and what to write. */
static const struct {
    const tt_map *map;
    const char *word, *hint;
} strangers[] = {
#define TT_STRANGER(map, word, hint) {&tt_##map##_map, word, hint},
#include "piecefile/strangers.def"
#undef TT_STRANGER
};

/* A key that stands one map further down: "`wall` goes into `bronze`". */
static bool further_down(const tt_map *map, const char *name, char hint[HINT])
{
    for (size_t i = 0; i < map->n; i++) {
        const tt_key *key = &map->key[i];
        const bool one = key->kind == TT_KEY_OWN || key->kind == TT_KEY_MAP;
        const tt_key *inside = key->map && one ? tt_key_named(key->map, name) : NULL;
        if (!inside) continue;
        snprintf(hint, HINT, "it goes into `%s`: {%.100s}", key->name, inside->example);
        return true;
    }
    return false;
}

/* Where the word belongs, or what it is called here; false: neither is known. */
static bool misplaced(const tt_map *map, const char *name, char hint[HINT])
{
    for (size_t i = 0; i < sizeof strangers / sizeof *strangers; i++) {
        if (strangers[i].map != map || !tt_same_letters(strangers[i].word, name)) continue;
        snprintf(hint, HINT, "%s", strangers[i].hint);
        return true;
    }
    return map == &tt_root_map && further_down(map, name, hint);
}

/* Told; then taken for the key that it must have been, so that this key is not missed as well. */
static void tell_unknown(tt_reader *reader, const tt_node *node, tt_node *child, const tt_map *map)
{
    tt_near near = tt_near_to(child->key);
    tt_text all = {0};
    tt_text_put(&all, "its keys are");
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++) {
            tt_near_try(&near, part->key[i].name);
            tt_text_format(&all, "%s %s", all.n > 12 ? "," : "", part->key[i].name);
        }
    char hint[HINT];
    const bool elsewhere = misplaced(map, child->key, hint);
    tt_wrong_key(reader, TT_D_KEY_UNKNOWN, child,
                 elsewhere ? hint : tt_near_words(&near, tt_text_of(&all)),
                 "`%.60s` is not a key of %s", child->key, map->title);
    tt_text_clear(&all);
    const char *meant = elsewhere ? NULL : tt_near_only(&near);
    if (meant && !tt_tree_find(node, meant)) child->key = meant;
}

static void tell_strangers(tt_reader *reader, const tt_node *node, const tt_map *map)
{
    for (size_t i = 0; i < node->n; i++) {
        tt_node *child = node->child[i];
        const tt_key *key = tt_key_named(map, child->key);
        if (!key) tell_unknown(reader, node, child, map);
    }
}

/* The number, or false and told: whole, in digits. */
static bool count(tt_reader *reader, const tt_node *node, const tt_key *key, int *out)
{
    const char *text = tt_take_text(reader, node, key);
    int value = 0;
    size_t i = 0;
    for (; i < 6 && text[i] >= '0' && text[i] <= '9'; i++) value = 10 * value + (text[i] - '0');
    if (!text[0]) return false;
    char hint[120];
    snprintf(hint, sizeof hint, "a whole number from %g to %g, for example: %s", key->least,
             key->most, key->example);
    if (text[i])
        tt_wrong(reader, TT_D_NUMBER_BAD, node, hint, "`%s` is a whole number", key->name);
    else if (value < key->least || value > key->most)
        tt_wrong(reader, TT_D_RANGE, node, hint, "`%s` cannot be %d", key->name, value);
    else
        *out = value;
    return true;
}

static void take(tt_reader *reader, const tt_node *node, const tt_key *key, void *record)
{
    void *field = (char *)record + key->offset;
    int word;
    switch (key->kind) {
    case TT_KEY_TEXT:
        *(const char **)field = tt_keep(reader, tt_take_text(reader, node, key));
        break;
    case TT_KEY_WORD:
        word = tt_take_word(reader, node, key, key->words);
        if (word >= 0) *(int *)field = word;
        break;
    case TT_KEY_FLAG:
        word = tt_take_word(reader, node, key, yes_no);
        if (word >= 0) *(tt_answer *)field = word ? TT_YES : TT_NO;
        break;
    case TT_KEY_COUNT:
        count(reader, node, key, field);
        break;
    case TT_KEY_GIVEN:
    case TT_KEY_SPREAD:
        *(tt_given *)field = tt_take_given(reader, node, key);
        break;
    case TT_KEY_NUMBER:
        *(double *)field = tt_take_number(reader, node, key);
        break;
    case TT_KEY_TRIPLE:
        tt_take_triple(reader, node, key, field);
        break;
    case TT_KEY_PLACE:
        *(size_t *)field = tt_place_named(reader, node);
        break;
    case TT_KEY_LATER:
        *(const tt_node **)field = node;
        break;
    case TT_KEY_MAP:
        tt_walk(reader, node, key->map, record);
        break;
    case TT_KEY_LIST:
        if (node->kind == TT_SEQUENCE)
            key->read(reader, node, key, field);
        else
            tt_wrong_shape(reader, node, key);
        break;
    case TT_KEY_NAMES:
        if (node->kind == TT_MAPPING)
            key->read(reader, node, key, field);
        else
            tt_wrong_shape(reader, node, key);
        break;
    case TT_KEY_OWN:
        if (key->read) key->read(reader, node, key, field);
        break;
    }
}

static bool other_basis(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const tt_key_basis here = reader->us ? TT_US : TT_EU;
    if (key->basis == TT_ANY_BASIS || key->basis == here || reader->basis_lost) return false;
    tt_wrong_key(reader, TT_D_CONTRADICTION, node,
                 key->basis == TT_EU ? "it belongs to basis: eu" : "it belongs to basis: us",
                 "`%s` does not belong to the basis of this piece", key->name);
    return true;
}

static void missing(tt_reader *reader, const tt_node *node, const tt_key *key, const tt_map *map)
{
    const tt_key_basis here = reader->us ? TT_US : TT_EU;
    if (!key->required ||
        (key->basis != TT_ANY_BASIS && (key->basis != here || reader->basis_lost)))
        return;
    char hint[240];
    snprintf(hint, sizeof hint, "add, for example: %s", tt_example(reader, key));
    tt_wrong_key(reader, TT_D_KEY_MISSING, node, hint, "%s lacks `%s`", map->title, key->name);
}

void tt_walk(tt_reader *reader, const tt_node *node, const tt_map *map, void *record)
{
    if (node->kind != TT_MAPPING) {
        char hint[200];
        snprintf(hint, sizeof hint, "its keys stand below it or in braces: {%s, ...}",
                 map->key[0].example);
        tt_wrong(reader, TT_D_SHAPE, node, hint, "%s is written as a map of keys", map->title);
        return;
    }
    tell_strangers(reader, node, map);
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++) {
            const tt_key *key = &part->key[i];
            const tt_node *child = tt_tree_find(node, key->name);
            if (!child) {
                missing(reader, node, key, map);
            } else if (record && !other_basis(reader, child, key)) {
                tt_enter(reader, key->name);
                take(reader, child, key, record);
                if (key->consumer) tt_wait(reader, child, key->consumer);
                tt_leave(reader);
            }
        }
}

void tt_default(tt_reader *reader, const tt_node *node, const tt_map *map, const char *name,
                void *record)
{
    const tt_key *key = tt_key_named(map, name);
    const tt_key_basis here = reader->us ? TT_US : TT_EU;
    if (key->basis != TT_ANY_BASIS && key->basis != here) return;
    if (node && tt_tree_find(node, name)) return;
    tt_node value = {.text = key->otherwise, .kind = TT_SCALAR};
    tt_enter(reader, key->name);
    reader->defaulting = key;
    take(reader, &value, key, record);
    if (key->kind != TT_KEY_GIVEN && key->kind != TT_KEY_SPREAD)
        tt_origin_add(reader, &value, key->otherwise, NULL);
    reader->defaulting = NULL;
    if (key->consumer) tt_wait(reader, &value, key->consumer);
    tt_leave(reader);
}
