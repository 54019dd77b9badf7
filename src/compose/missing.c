/* compose/missing.c - what was not checked, and what to give for it; what does not apply, and why.
 */
#include "compose/parts.h"

static const char *unchecked(const tt_assessment *a, const tt_unchecked *item, tt_report *out)
{
    const char *at = item->where ? tt_report_text(out, ", %s", item->where) : "";
    const char *demand =
        item->has_demand ? tt_report_text(out, " Demand %s.",
                                          tt_say(out, item->demand, item->unit, a->piece->report))
                         : "";
    const char *give = item->give ? tt_report_text(out, " Give: %s.", item->give) : "";
    return tt_report_text(out, "%s%s: %s.%s%s%s", tt_say_check(item->check), at, item->why, demand,
                          give, item->needed ? "" : " Told only: the verdict does not hang on it.");
}

static void list_unchecked(const tt_assessment *a, bool needed, tt_report *out)
{
    for (size_t i = 0; i < a->findings.unchecked.n; i++) {
        const tt_unchecked *item = &a->findings.unchecked.at[i];
        if (item->needed == needed) tt_report_item(out, unchecked(a, item, out));
    }
}

void tt_compose_missing(const tt_assessment *a, tt_report *out)
{
    if (a->findings.unchecked.n) {
        tt_report_heading(out, 2, "Not checked");
        tt_report_list(out, TT_BLOCK_LIST);
        list_unchecked(a, true, out);
        list_unchecked(a, false, out);
    }
    if (a->findings.inapplicable.n == 0) return;
    tt_report_heading(out, 2, "Does not apply");
    tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < a->findings.inapplicable.n; i++) {
        const tt_inapplicable *item = &a->findings.inapplicable.at[i];
        tt_report_item(out, tt_report_text(out, "%s: %s.", tt_say_check(item->check), item->why));
    }
}
