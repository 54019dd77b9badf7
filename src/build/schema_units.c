/* build/schema_units.c - for each kind of quantity a regular expression of how it is written, from
 * the table of units: the unit alone, or a product or quotient of up to three that comes to it. */
#include "build/schema.h"

#include "quantity/unit.h"

#include <string.h>

enum { MOST_CLASSES = 24 };

/** Units of one dimension: mm, cm, m, ... */
typedef struct {
    tt_unit unit;
    tt_text names; /* "(mm|cm|m)" */
} family;

typedef struct {
    family at[MOST_CLASSES];
    size_t n;
} families;

/** A unit to a power that stands above (1) or below (-1) the stroke. */
typedef struct {
    const family *of;
    int power, sign;
} factor;

static void gather(families *all)
{
    for (const tt_unit_row *row = tt_unit_rows; row->symbol; row++) {
        size_t i = 0;
        while (i < all->n && !tt_unit_same(&all->at[i].unit, &row->unit)) i++;
        if (i == MOST_CLASSES) continue;
        if (i == all->n) all->at[all->n++].unit = row->unit;
        tt_text_format(&all->at[i].names, "%s%s", all->at[i].names.n ? "|" : "(", row->symbol);
    }
    const tt_unit mass = tt_kind_unit(TT_Q_MASS);
    for (size_t i = 0; i < all->n; i++) /* g is gram where it comes to the kind that is due */
        tt_text_put(&all->at[i].names, tt_unit_same(&all->at[i].unit, &mass) ? "|g)" : ")");
}

static bool comes_to(const factor *factors, size_t n, const tt_unit *due)
{
    tt_unit sum = {.factor = 1};
    for (size_t f = 0; f < n; f++)
        for (int b = 0; b < TT_BASES; b++)
            sum.power[b] += factors[f].sign * factors[f].power * factors[f].of->unit.power[b];
    return tt_unit_same(&sum, due);
}

static void put(tt_text *out, const factor *factors, size_t n)
{
    if (out->n) tt_text_put(out, "|");
    for (size_t f = 0; f < n; f++) {
        if (f) tt_text_put(out, factors[f].sign > 0 ? "\\." : "/");
        if (!f && factors[f].sign < 0) tt_text_put(out, "1/");
        tt_text_put(out, tt_text_of(&factors[f].of->names));
        if (factors[f].power > 1) tt_text_format(out, "%d", factors[f].power);
    }
}

/* Adds factors until there are `most`; what stands below the stroke stands last, no family twice.
 */
static void extend(const families *all, factor *factors, size_t n, size_t most, const tt_unit *due,
                   tt_text *out)
{
    if (n == most) {
        if (comes_to(factors, n, due)) put(out, factors, n);
        return;
    }
    const int most_power = most < 3 ? 4 : 2;
    for (size_t i = 0; i < all->n; i++) {
        bool twice = false;
        for (size_t f = 0; f < n; f++) twice |= factors[f].of == &all->at[i];
        for (int power = 1; !twice && power <= most_power; power++) {
            factors[n] = (factor){&all->at[i], power, 1};
            if (n == 0 || factors[n - 1].sign > 0) extend(all, factors, n + 1, most, due, out);
            factors[n].sign = -1;
            if (n == most - 1) extend(all, factors, n + 1, most, due, out);
        }
    }
}

static void units_of(tt_kind kind, tt_text *out)
{
    families all = {.n = 0};
    const tt_unit due = tt_kind_unit(kind);
    factor factors[3];
    gather(&all);
    for (size_t most = 1; most <= 3; most++) extend(&all, factors, 0, most, &due, out);
    for (size_t i = 0; i < all.n; i++) tt_text_clear(&all.at[i].names);
}

#define DECIMAL "([0-9]+(\\.[0-9]+)?|\\.[0-9]+)([eE][+-]?[0-9]+)?"
#define NUMBER "([0-9]+( +[0-9]+)?/[0-9]+|" DECIMAL ")"

void tt_schema_pattern(tt_text *out, tt_kind kind, bool negative)
{
    tt_text_format(out, "^%s", negative ? "[+-]?" : "[+]?");
    if (kind == TT_Q_PURE) {
        tt_text_put(out, NUMBER " *%?$");
        return;
    }
    tt_text units = {0};
    units_of(kind, &units);
    tt_text_put(out, "(0|" NUMBER " *(");
    tt_text_put(out, tt_text_of(&units));
    tt_text_put(out, ")");
    if (kind == TT_Q_LENGTH) tt_text_put(out, "|" NUMBER "|[0-9]+ *ft *" NUMBER " *in");
    tt_text_put(out, ")$");
    if (units.failed) out->failed = true;
    tt_text_clear(&units);
}
