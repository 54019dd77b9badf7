/* piecefile/values.c - scalars and quantities: text to SI through the one door of quantity, scaled
 * and held against the bounds of the key; spreads and reasons. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *const parts[] = {"is", "low", "high", "because", NULL};

bool tt_is_word(const tt_node *node, const char *word)
{
    return node->kind == TT_SCALAR && strcmp(node->text, word) == 0;
}

static int lower(char c)
{
    return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c;
}

bool tt_same_letters(const char *a, const char *b)
{
    if (!a || !b) return false;
    while (*a && lower(*a) == lower(*b)) a++, b++;
    return lower(*a) == lower(*b);
}

static void check_parts(tt_reader *reader, const tt_node *node)
{
    for (size_t i = 0; i < node->n; i++) {
        const tt_node *child = node->child[i];
        tt_near near = tt_near_to(child->key);
        size_t k = 0;
        while (parts[k] && strcmp(parts[k], child->key) != 0) tt_near_try(&near, parts[k++]);
        if (!parts[k])
            tt_wrong_key(reader, TT_D_KEY_UNKNOWN, child,
                         tt_near_words(&near, "a value reads: is, low, high, because"),
                         "`%s` is not a key of a value", child->key);
    }
}

static const char *reason(tt_reader *reader, const tt_node *node)
{
    const tt_node *because = tt_tree_find(node, "because");
    if (!because) return NULL;
    if (because->kind == TT_SCALAR && because->text[0]) return because->text;
    tt_wrong(reader, TT_D_SHAPE, because, "write: because: \"why it is so\"",
             "a reason is a line of words");
    return NULL;
}

const tt_node *tt_value(tt_reader *reader, const tt_node *node, const char **because)
{
    *because = NULL;
    const tt_node *is = tt_tree_find(node, "is");
    if (!is) return node;
    check_parts(reader, node);
    *because = reason(reader, node);
    return is;
}

double tt_bare_unit(const tt_reader *reader, const tt_key *key)
{
    return key->dimension == TT_Q_LENGTH ? reader->unit : 0;
}

static bool within(tt_reader *reader, const tt_node *node, const tt_key *key, double written,
                   double full)
{
    const bool positive = key->least > 0 && key->dimension != TT_Q_PURE;
    if (positive && written <= 0)
        tt_tell_not_positive(reader, node, key);
    else if (written < key->least)
        tt_tell_bound(reader, node, key, key->least, "must not be less than");
    else if (full > key->most)
        tt_tell_bound(reader, node, key, key->most, "must not be more than");
    else
        return true;
    return false;
}

/* NaN when it could not be read. */
static double scalar(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    if (node->kind != TT_SCALAR) {
        tt_wrong_shape(reader, node, key);
        return NAN;
    }
    const tt_quantity q = tt_quantity_read(node->text, key->dimension, tt_bare_unit(reader, key));
    if (q.fault != TT_QUANTITY_OK) {
        tt_tell_fault(reader, node, key, &q);
        return NAN;
    }
    double full = q.value; /* NaN under a scale that is refused */
    for (int i = 0; i < key->power; i++) full *= reader->piece->scale;
    if (!within(reader, node, key, q.value, full)) return NAN;
    if (key->share && q.bare && q.value >= 1) tt_doubt_share(reader, node, key);
    return full;
}

static void refuse_spread(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const tt_node *low = tt_tree_find(node, "low"), *high = tt_tree_find(node, "high");
    if (low || high)
        tt_wrong_key(reader, TT_D_SHAPE, low ? low : high, "write one value",
                     "`%s` takes no spread", key->name);
}

double tt_take_number(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    if (value != node) refuse_spread(reader, node, key);
    const double number = scalar(reader, value, key);
    if (because && value->kind == TT_SCALAR) tt_origin_add(reader, value, value->text, because);
    return number;
}

static void spread(tt_reader *reader, const tt_node *node, const tt_key *key, tt_given *out)
{
    const tt_node *low = tt_tree_find(node, "low"), *high = tt_tree_find(node, "high");
    if (low) out->low = scalar(reader, low, key);
    if (high) out->high = scalar(reader, high, key);
    const tt_node *wrong = low && out->low > out->is     ? low
                           : high && out->high < out->is ? high
                                                         : NULL;
    if (wrong)
        tt_wrong(reader, TT_D_SPREAD, wrong, "low must not be above `is`, high not below it",
                 "the spread of `%s` misses it", key->name);
}

/* A wall of which no more is known: decision of this program, once among the origins. */
static void default_spread(tt_reader *reader, const tt_key *key, tt_given *out)
{
    out->low = out->is * key->spread_low;
    out->high = out->is * key->spread_high;
    if (reader->spread_told) return;
    reader->spread_told = true;
    char words[60];
    snprintf(words, sizeof words, "%g to %g of it", key->spread_low, key->spread_high);
    tt_origin_default(reader, "bronze/wall", words,
                      "where no spread was given: assumption of this program");
}

tt_given tt_take_given(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    tt_given out = {.is = scalar(reader, value, key)};
    out.low = out.high = out.is;
    if (value != node && key->kind == TT_KEY_SPREAD)
        spread(reader, node, key, &out);
    else if (value != node)
        refuse_spread(reader, node, key);
    if (key->spread_low > 0 && !tt_tree_find(node, "low") && !tt_tree_find(node, "high"))
        default_spread(reader, key, &out);
    out.origin = tt_origin_add(reader, value, value->kind == TT_SCALAR ? value->text : "", because);
    return out;
}

const char *tt_take_text(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    if (value->kind == TT_SCALAR && value->text[0]) {
        if (because) tt_origin_add(reader, value, value->text, because);
        return value->text;
    }
    tt_wrong_shape(reader, value, key);
    return "";
}

/* Words that people write, and the one that is read. */
static const struct {
    const char *written, *read;
} synonyms[] = {{"true", "yes"},      {"on", "yes"},      {"y", "yes"},         {"false", "no"},
                {"off", "no"},        {"n", "no"},        {"welded", "fixed"},  {"bolted", "fixed"},
                {"clamped", "fixed"}, {"rigid", "fixed"}, {"hinged", "pinned"}, {"hinge", "pinned"},
                {"pin", "pinned"},    {"free", "rests"},  {"resting", "rests"}};

/* The word of the list that is meant; NULL where none is. */
static const char *meant_word(const char *text, const char *const *words)
{
    tt_near near = tt_near_to(text);
    for (size_t i = 0; words[i]; i++) {
        if (tt_same_letters(words[i], text)) return words[i];
        for (size_t k = 0; k < sizeof synonyms / sizeof *synonyms; k++)
            if (strcmp(synonyms[k].read, words[i]) == 0 &&
                tt_same_letters(synonyms[k].written, text))
                return words[i];
        tt_near_try(&near, words[i]);
    }
    return strlen(text) > 2 ? tt_near_only(&near) : NULL;
}

static void tell_word(tt_reader *reader, const tt_node *node, const tt_key *key,
                      const char *const *words)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    const char *meant = meant_word(value->text, words);
    tt_text all = {0};
    if (meant) tt_text_format(&all, "write %s; ", meant);
    for (size_t i = 0; words[i]; i++)
        tt_text_format(&all, "%s%s", i ? ", " : "it reads: ", words[i]);
    tt_wrong(reader, TT_D_WORD, value, tt_text_of(&all), "`%s` does not read the word `%.60s`",
             key->name, value->text);
    tt_text_clear(&all);
}

int tt_take_word(tt_reader *reader, const tt_node *node, const tt_key *key,
                 const char *const *words)
{
    const char *text = tt_take_text(reader, node, key);
    if (!text[0]) return -1;
    for (int i = 0; words[i]; i++)
        if (strcmp(words[i], text) == 0) return i;
    tell_word(reader, node, key, words);
    return -1;
}

bool tt_take_triple(tt_reader *reader, const tt_node *node, const tt_key *key, tt_vec3 *out)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    *out = (tt_vec3){NAN, NAN, NAN};
    if (value->kind != TT_SEQUENCE || value->n != 3) {
        tt_wrong_shape(reader, value, key);
        return false;
    }
    out->x = tt_take_number(reader, value->child[0], key);
    out->y = tt_take_number(reader, value->child[1], key);
    out->z = tt_take_number(reader, value->child[2], key);
    return isfinite(out->x) && isfinite(out->y) && isfinite(out->z);
}
