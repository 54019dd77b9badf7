/* quantity/kinds.c - word, SI unit and example of each kind of quantity. */
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
