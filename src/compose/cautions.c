/* compose/cautions.c - the cautions: always there, whatever else the document holds. */
#include "compose/parts.h"

void tt_compose_cautions(const tt_assessment *a, tt_report *out)
{
    (void)a;
    tt_report_heading(out, 2, "Cautions");
    tt_report_list(out, TT_BLOCK_CAUTIONS);
    for (const char *const *caution = tt_cautions(); *caution; caution++)
        tt_report_item(out, *caution);
}
