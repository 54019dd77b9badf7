/* piecefile/bare.c - in whose units hints are written: what to write for a number without a unit,
 * and the example of a key, in inches and pounds where the file is. Values SI. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { WORD = 40, MOST = 4, DIGITS = 2 };

typedef struct {
    char text[MOST][2 * WORD]; /* "900 lb" */
    double value[MOST];
    size_t n;
} readings;

tt_unit_system tt_reader_system(const tt_reader *reader)
{
    const char *unit = reader->unit_name;
    const bool inches = unit && (strcmp(unit, "in") == 0 || strcmp(unit, "ft") == 0);
    return inches || (!unit && reader->us) ? TT_IMPERIAL : TT_METRIC;
}

/* ---- what a bare number may be meant as ---- */

/* The number in this unit, when the key reads it and no other unit before came to the same. */
static void add(readings *all, const tt_key *key, const char *number, const char *unit)
{
    char text[2 * WORD];
    if (all->n == MOST) return;
    snprintf(text, sizeof text, "%.30s %.30s", number, unit);
    const tt_quantity q = tt_quantity_read(text, key->dimension, 0);
    if (q.fault != TT_QUANTITY_OK || q.value < key->least || q.value > key->most) return;
    for (size_t i = 0; i < all->n; i++)
        if (fabs(all->value[i] - q.value) <= 1e-9 * fabs(q.value)) return;
    snprintf(all->text[all->n], sizeof text, "%s", text);
    all->value[all->n++] = q.value;
}

/* The unit of the key's own example first. */
static void add_example(readings *all, const tt_key *key, const char *number)
{
    for (const char *at = key->example; *at;) {
        char unit[WORD], one[WORD + 2];
        const size_t n = strcspn(at, " ,]}");
        snprintf(unit, sizeof unit, "%.*s", (int)(n < WORD ? n : WORD - 1), at);
        snprintf(one, sizeof one, "1 %s", unit);
        const bool known = n && tt_quantity_read(one, key->dimension, 0).fault == TT_QUANTITY_OK;
        if (known) add(all, key, number, unit);
        at += n + (at[n] ? 1 : 0);
    }
}

static readings meant(const tt_key *key, const char *number, tt_unit_system system)
{
    readings all = {.n = 0};
    const char *unit;
    if (system == TT_METRIC) add_example(&all, key, number);
    if (system == TT_METRIC && key->dimension == TT_Q_LENGTH && all.n) return all;
    for (size_t i = 0; (unit = tt_kind_meant(key->dimension, system, i)) != NULL; i++)
        add(&all, key, number, unit);
    return all;
}

/* "write 90 m/s or 90 km/h, whichever is meant"; "write 900 lb (or 900 kg, if that is meant)". */
static void put_readings(tt_text *out, const readings *all, const readings *others)
{
    for (size_t i = 0; i < all->n; i++)
        tt_text_format(out, "%s%s",
                       i == 0            ? "write "
                       : i + 1 == all->n ? " or "
                                         : ", ",
                       all->text[i]);
    if (all->n > 1) tt_text_put(out, ", whichever is meant");
    if (others->n && all->n)
        tt_text_format(out, " (or %s, if that is meant)", others->text[0]);
    else if (others->n)
        tt_text_format(out, "write %s", others->text[0]);
}

void tt_hint_at_unit(tt_reader *reader, const tt_node *node, const tt_key *key, char *hint,
                     size_t size)
{
    const tt_unit_system system = reader->us ? TT_IMPERIAL : tt_reader_system(reader);
    const readings all = meant(key, node->text, system), none = {.n = 0};
    const readings others = system == TT_IMPERIAL ? meant(key, node->text, TT_METRIC) : none;
    const char *unit = system == TT_IMPERIAL ? "in" : "mm";
    tt_text out = {0};
    put_readings(&out, &all, &others);
    if (key->dimension == TT_Q_LENGTH && tt_tree_find(reader->root, "units"))
        tt_text_format(&out, "%s `length: %s` in `units`", out.n ? ", or say" : "say", unit);
    else if (key->dimension == TT_Q_LENGTH)
        tt_text_format(&out, "%s `units: %s` once at the top of the file",
                       out.n ? ", or say" : "say", unit);
    else if (out.n)
        tt_text_format(&out, "; as in `%s`", tt_example(reader, key));
    else
        tt_text_format(&out, "write its unit, as in `%s`", tt_example(reader, key));
    snprintf(hint, size, "%s", tt_text_of(&out));
    if (out.failed) reader->no_memory = true;
    tt_text_clear(&out);
}

/* ---- the example of a key ---- */

/* Bytes of a quantity with its unit at the beginning of the text, 0 when there is none. */
static size_t quantity_at(const char *at, double *value, tt_kind *kind)
{
    char text[2 * WORD];
    const size_t number = strspn(at, "-0123456789.e");
    if (number == 0 || at[number] != ' ') return 0;
    const size_t n = number + 1 + strcspn(at + number + 1, " ,]};");
    if (n >= sizeof text) return 0;
    snprintf(text, sizeof text, "%.*s", (int)n, at);
    *kind = tt_quantity_kind(text);
    if (*kind == TT_Q_COUNT) return 0;
    *value = tt_quantity_read(text, *kind, 0).value;
    return n;
}

static void in_inches(tt_text *out, const char *example)
{
    for (const char *at = example; *at;) {
        double value;
        tt_kind kind;
        const bool begins = at == example || strchr(" [{(", at[-1]);
        const size_t n = begins ? quantity_at(at, &value, &kind) : 0;
        if (n)
            tt_quantity_write(out, value, kind, TT_IMPERIAL, DIGITS);
        else
            tt_text_add(out, at, 1);
        at += n ? n : 1;
    }
}

const char *tt_example(tt_reader *reader, const tt_key *key)
{
    if (tt_reader_system(reader) == TT_METRIC) return key->example;
    tt_text out = {0};
    in_inches(&out, key->example);
    const char *kept = tt_pool_text(&reader->trees, tt_text_of(&out));
    if (out.failed || !kept) reader->no_memory = true;
    tt_text_clear(&out);
    return kept ? kept : key->example;
}
