/* check/checks/balance.c - balance is judged where a stand merely rests; where every stand holds
 * down it is told as a figure (check/balance.c) and does not apply as a check. */
#include "check/parts.h"

static const char name[] = "balance";

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    bool sole = false;
    for (size_t i = 0; i < in->piece->stands.n; i++)
        sole = sole || in->piece->stands.at[i].sole_n >= 3;
    const char *why =
        sole ? "every stand holds the piece down; what it would need unanchored is told as a figure"
             : "no stand has a sole: the piece does not stand on its own weight";
    return tt_inapplicable_add(out, name, why) ? TT_OK : TT_E_NOMEM;
}

const tt_check tt_check_balance = {
    .name = name,
    .title = "balance",
    .explain =
        "Where a stand merely rests, the moment that would tip the piece over each edge of the "
        "hull "
        "of its soles, drawn in by the larger of 5 mm and 5 % of its least width, must stay below "
        "the moment that keeps it down. Where the stands hold it down this is told, not judged.",
    .source = TT_S_statics,
    .run = run};
