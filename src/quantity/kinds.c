/* quantity/kinds.c - word, SI unit and example of each kind of quantity, and
 * the units that a bare number of it may be meant in. */
#include "quantity/quantity.h"

static const char *const kinds[TT_Q_COUNT][3] = {
#define TT_KIND(id, word, si, example) {word, si, example},
#include "quantity/kinds.def"
#undef TT_KIND
};

const char *tt_kind_word(tt_kind kind)
{
    return kinds[kind][0];
}

const char *tt_kind_si(tt_kind kind)
{
    return kinds[kind][1];
}

const char *tt_kind_example(tt_kind kind)
{
    return kinds[kind][2];
}

static const struct {
    tt_kind kind;
    tt_unit_system system;
    const char *unit;
} meant[] = {
#define TT_MEANT(kind, system, unit) {TT_Q_##kind, TT_##system, unit},
#include "quantity/meant.def"
#undef TT_MEANT
};

const char *tt_kind_meant(tt_kind kind, tt_unit_system system, size_t i)
{
    for (size_t k = 0; k < sizeof meant / sizeof *meant; k++)
        if (meant[k].kind == kind && meant[k].system == system && i-- == 0) return meant[k].unit;
    return NULL;
}

tt_kind tt_quantity_kind(const char *text)
{
    int kind = TT_Q_PURE + 1;
    for (; kind < TT_Q_COUNT; kind++) {
        const tt_quantity q = tt_quantity_read(text, (tt_kind)kind, 0);
        if (q.fault == TT_QUANTITY_OK && !q.bare) break;
    }
    return (tt_kind)kind;
}
