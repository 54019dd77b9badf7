/* piecefile/faults.c - telling what is wrong with the text of a quantity: the caret under the
 * guilty bytes, and an example that the key itself reads. Bounds SI. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <stdio.h>
#include <string.h>

enum { HINT = 320 };

static tt_number number_of(tt_quantity_fault fault)
{
    switch (fault) {
    case TT_QUANTITY_NO_UNIT:
        return TT_D_UNIT_MISSING;
    case TT_QUANTITY_UNKNOWN:
        return TT_D_UNIT_UNKNOWN;
    case TT_QUANTITY_WRONG:
        return TT_D_UNIT_WRONG;
    case TT_QUANTITY_RANGE:
        return TT_D_RANGE;
    default:
        return TT_D_NUMBER_BAD;
    }
}

static const char *words_of(tt_quantity_fault fault)
{
    switch (fault) {
    case TT_QUANTITY_NO_UNIT:
        return "has no unit";
    case TT_QUANTITY_UNKNOWN:
        return "has an unknown unit";
    case TT_QUANTITY_WRONG:
        return "has a unit of another kind";
    case TT_QUANTITY_RANGE:
        return "is out of all bounds";
    default:
        return "is not a number that is read here";
    }
}

/* The caret under the guilty bytes only. */
static tt_place guilty(const tt_node *node, const tt_quantity *q)
{
    tt_place place = node->place;
    const size_t length = strlen(node->text);
    if (place.line == 0 || q->at > length || q->length == 0 || q->at + q->length > length)
        return place;
    place.column += (unsigned)tt_text_width(node->text, q->at) + (node->quoted ? 1u : 0u);
    place.width = (unsigned)tt_text_width(node->text + q->at, q->length);
    return place;
}

static void hint_at(tt_reader *reader, const tt_node *node, const tt_key *key, const tt_quantity *q,
                    char hint[HINT])
{
    const char *value = strstr(key->example, ": ");
    if (q->fault == TT_QUANTITY_NO_UNIT)
        tt_hint_at_unit(reader, node, key, hint, HINT);
    else if (q->fault == TT_QUANTITY_WRONG && value && strchr(value, '/') &&
             key->dimension == TT_Q_PURE)
        snprintf(hint, HINT, "a ratio is due, for example %s", value + 2);
    else
        snprintf(hint, HINT, "%.*s; as in `%s`", (int)q->plain, q->hint, tt_example(reader, key));
}

static void tell(tt_reader *reader, const tt_node *node, const tt_key *key, const char *more)
{
    const tt_quantity q = tt_quantity_read(node->text, key->dimension, tt_bare_unit(reader, key));
    const char *word = tt_kind_word(key->dimension);
    char hint[HINT];
    hint_at(reader, node, key, &q, hint);
    tt_tell(reader, TT_ERROR, number_of(q.fault), node, guilty(node, &q), hint,
            "`%s` is %s %s; `%.60s` %s%s", key->name, strchr("aeiou", word[0]) ? "an" : "a", word,
            node->text, words_of(q.fault), more);
}

static bool before(const tt_place *a, const tt_place *b)
{
    return a->line < b->line || (a->line == b->line && a->column < b->column);
}

void tt_tell_fault(tt_reader *reader, const tt_node *node, const tt_key *key, const tt_quantity *q)
{
    if (q->fault != TT_QUANTITY_NO_UNIT || key->dimension != TT_Q_LENGTH || node->set ||
        node->beside) {
        tell(reader, node, key, "");
        return;
    }
    if (reader->bare.n++ > 0 && !before(&node->place, &reader->bare.node->place)) return;
    reader->bare.node = node;
    reader->bare.key = key;
}

void tt_tell_bare(tt_reader *reader)
{
    const size_t more = reader->bare.n - 1;
    char words[60] = "";
    if (reader->bare.n == 0) return;
    if (more)
        snprintf(words, sizeof words, "; %zu more length%s none", more,
                 more > 1 ? "s have" : " has");
    tell(reader, reader->bare.node, reader->bare.key, words);
}

/* Of a share written without its sign: `efficiency: 40` is 40 %. */
static bool per_cent(const tt_node *node, const tt_key *key)
{
    if (key->dimension != TT_Q_PURE || node->kind != TT_SCALAR) return false;
    const tt_quantity q = tt_quantity_read(node->text, TT_Q_PURE, 0);
    return q.fault == TT_QUANTITY_OK && q.bare && q.value > key->most &&
           q.value / 100 <= key->most && (key->share || key->most <= 1.0);
}

void tt_tell_bound(tt_reader *reader, const tt_node *node, const tt_key *key, double bound,
                   const char *words)
{
    tt_text limit = {0};
    char hint[200];
    tt_quantity_write(&limit, bound, key->dimension, tt_reader_system(reader), 4);
    snprintf(hint, sizeof hint, "for example: %s", tt_example(reader, key));
    if (per_cent(node, key)) snprintf(hint, sizeof hint, "did you mean %.40s %%?", node->text);
    tt_wrong(reader, TT_D_RANGE, node, hint, "`%s` %s %s", key->name, words, tt_text_of(&limit));
    tt_text_clear(&limit);
}

void tt_tell_not_positive(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    char hint[200];
    snprintf(hint, sizeof hint, "for example: %s", tt_example(reader, key));
    tt_wrong(reader, TT_D_RANGE, node, hint, "`%s` is positive; `%.60s` is not", key->name,
             node->text);
}
