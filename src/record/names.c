/* record/names.c - cases, combinations and places by the names that the result gives them. */
#include "record/put.h"

#include <string.h>

const char *tt_case_words(const tt_assessment *a, size_t index)
{
    static const char *const weight[TT_PATTERNS] = {"weight", "weight heavy", "weight light"};
    return index < TT_PATTERNS ? weight[index] : a->actions.cases.at[index].name;
}

/* A case that stands in it twice counts with the sum of its factors. */
void tt_put_sum(tt_record *r, cJSON *into, const tt_combination *together)
{
    cJSON *sum = tt_put(r, into, "sum", tt_make_object(r));
    tt_put_number(r, sum, "weight", together->weight);
    for (size_t i = 0; i < together->parts; i++) {
        double factor = 0.0;
        bool first = true;
        for (size_t k = 0; k < together->parts; k++) {
            if (together->part[k].acting != together->part[i].acting) continue;
            first = first && k >= i;
            factor += together->part[k].factor;
        }
        if (first)
            tt_put_number(r, sum, r->a->actions.cases.at[together->part[i].acting].name, factor);
    }
}

void tt_put_place(tt_record *r, cJSON *into, size_t segment, double x)
{
    const bool along = segment != TT_NONE;
    tt_put_text(r, into, "segment", along ? r->a->piece->segments.at[segment].name : NULL);
    tt_put(r, into, "x", along ? tt_make_number(r, x) : tt_make_null(r));
}
