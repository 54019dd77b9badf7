/* quantity/unit.c - the unit table and the reading of compound units to powers of m, kg, s, K, rad
 * and a factor to SI. */
#include "quantity/unit.h"

#include <string.h>

const tt_unit_row tt_unit_rows[] = {
#define TT_UNIT(symbol, m, kg, s, k, rad, factor, source)                                          \
    {symbol, source, {{m, kg, s, k, rad}, factor}},
#include "quantity/units.def"
#undef TT_UNIT
    {NULL, NULL, {{0}, 0.0}}};

const tt_unit_row *tt_unit_find(const char *symbol, size_t length)
{
    for (const tt_unit_row *row = tt_unit_rows; row->symbol; row++) {
        if (strlen(row->symbol) == length && memcmp(row->symbol, symbol, length) == 0) return row;
    }
    return NULL;
}

double tt_length_unit(const char *name)
{
    const tt_unit due = tt_kind_unit(TT_Q_LENGTH);
    const tt_unit_row *row = tt_unit_find(name, strlen(name));
    return row && tt_unit_same(&row->unit, &due) ? row->unit.factor : 0.0;
}

static size_t letters(const char *text, size_t length)
{
    size_t n = 0;
    while (n < length && strchr("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz", text[n]))
        n++;
    return n;
}

/* Multiplies one word into the powers; `factor` gathers what stands on its side of the stroke. */
static void join(tt_unit *unit, const tt_unit *word, int power, double *factor)
{
    for (int i = 0; i < TT_BASES; i++) unit->power[i] += power * word->power[i];
    for (int i = power < 0 ? -power : power; i > 0; i--) *factor *= word->factor;
}

static int digit(const char *text, size_t at, size_t length)
{
    return at < length && text[at] >= '2' && text[at] <= '9' ? text[at] - '0' : 0;
}

static bool parse(const char *text, size_t length, bool grams, tt_unit *unit, tt_unit_slip *slip)
{
    const bool inverse = length > 1 && text[0] == '1' && text[1] == '/';
    size_t at = inverse ? 2 : 0;
    double over = 1.0;
    *unit = (tt_unit){.factor = 1.0};
    for (int sign = inverse ? -1 : 1; length > 0; at++) {
        const size_t n = letters(text + at, length - at);
        const bool gram = grams && n == 1 && text[at] == 'g';
        const tt_unit_row *row = gram ? tt_unit_find("gram", 4) : tt_unit_find(text + at, n);
        *slip = (tt_unit_slip){at, n || at == length ? n : 1, n == 0};
        if (!row) return false;
        const int power = digit(text, at + n, length);
        join(unit, &row->unit, sign * (power ? power : 1), sign > 0 ? &unit->factor : &over);
        at += n + (power ? 1 : 0);
        if (at == length) break;
        *slip = (tt_unit_slip){at, 1, true};
        if (text[at] != '/' && (text[at] != '.' || sign < 0)) return false;
        if (text[at] == '/') sign = -1;
    }
    unit->factor /= over;
    return true;
}

bool tt_unit_parse(const char *text, size_t length, tt_unit *unit, tt_unit_slip *slip)
{
    return parse(text, length, false, unit, slip);
}

bool tt_unit_parse_for(const char *text, size_t length, tt_kind kind, tt_unit *unit,
                       tt_unit_slip *slip)
{
    const tt_unit due = tt_kind_unit(kind);
    tt_unit mass;
    tt_unit_slip other;
    const bool read = parse(text, length, false, unit, slip);
    if (!read || tt_unit_same(unit, &due)) return read;
    if (parse(text, length, true, &mass, &other) && tt_unit_same(&mass, &due)) *unit = mass;
    return true;
}

bool tt_unit_same(const tt_unit *a, const tt_unit *b)
{
    return memcmp(a->power, b->power, sizeof a->power) == 0;
}

tt_unit tt_kind_unit(tt_kind kind)
{
    const char *si = tt_kind_si(kind);
    tt_unit unit;
    tt_unit_slip slip;
    tt_unit_parse(si, strlen(si), &unit, &slip);
    return unit;
}
