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
    return tt_report_text(out, "%s%s: %s.%s%s", tt_say_check(item->check), at, item->why, demand,
                          give);
}

typedef enum { FILE_GIVES, NOT_COMPUTED, TOLD_ONLY, GROUPS } group;

static group group_of(const tt_unchecked *item)
{
    if (!item->needed) return TOLD_ONLY;
    return item->give ? FILE_GIVES : NOT_COMPUTED;
}

static void list_unchecked(const tt_assessment *a, group of, tt_report *out)
{
    static const char *const heads[] = {[FILE_GIVES] = "What the file can give",
                                        [NOT_COMPUTED] = "What this version does not compute",
                                        [TOLD_ONLY] = "Told only: the verdict does not hang on it"};
    size_t n = 0;
    for (size_t i = 0; i < a->findings.unchecked.n; i++)
        n += group_of(&a->findings.unchecked.at[i]) == of;
    if (n == 0) return;
    tt_report_heading(out, 3, tt_report_text(out, "%s (%zu)", heads[of], n));
    tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < a->findings.unchecked.n; i++) {
        const tt_unchecked *item = &a->findings.unchecked.at[i];
        if (group_of(item) == of) tt_report_item(out, unchecked(a, item, out));
    }
}

void tt_compose_missing(const tt_assessment *a, tt_report *out)
{
    if (a->findings.unchecked.n) {
        tt_report_heading(out, 2, "Not checked");
        for (int of = 0; of < GROUPS; of++) list_unchecked(a, (group)of, out);
    }
    if (a->findings.inapplicable.n == 0) return;
    tt_report_heading(out, 2, "Does not apply");
    tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < a->findings.inapplicable.n; i++) {
        const tt_inapplicable *item = &a->findings.inapplicable.at[i];
        tt_report_item(out, tt_report_text(out, "%s: %s.", tt_say_check(item->check), item->why));
    }
}
