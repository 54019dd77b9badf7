/* compose/tightest.c - the ten tightest places. */
#include "compose/parts.h"

enum { TIGHTEST = 10 };

const char *tt_say_judged(tt_report *out, const tt_finding *finding)
{
    const char *title = tt_say_check(finding->check);
    if (finding->has_use) return title;
    return tt_report_text(out, "%s: %s%s", title, finding->holds ? "" : "falls short, ",
                          finding->why ? finding->why : "no use can be told");
}

void tt_compose_tightest(const tt_assessment *a, tt_report *out)
{
    const size_t *order = tt_assessment_order(a), n = a->findings.list.n;
    if (n == 0) return;
    static const tt_column columns[] = {{"where", TT_LEFT},
                                        {"what", TT_LEFT},
                                        {"loads together", TT_LEFT},
                                        {"use", TT_RIGHT},
                                        {"margin", TT_RIGHT}};
    tt_report_heading(out, 2, "The tightest places");
    if (tt_two_models(a)) {
        tt_report_say(out, "Each place is judged in the worse of two carry models: the armature "
                           "alone, and bronze and armature together.");
    }
    tt_report_say(out, "Use is demand over resistance, rounded up; margin is what is allowed over "
                       "demand, less one, rounded down.");
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < n && i < TIGHTEST; i++) {
        const tt_finding *finding = &a->findings.list.at[order[i]];
        const char *const row[] = {finding->where, tt_say_judged(out, finding),
                                   tt_say_loads(out, a, finding),
                                   tt_say_use(out, finding, a->piece->limits.use.is),
                                   tt_say_margin(out, finding)};
        tt_report_row(out, row);
    }
    if (n > TIGHTEST) {
        tt_report_say(out,
                      tt_report_text(out,
                                     "%zu places more were judged; none of them is tighter than "
                                     "the last of these.",
                                     n - TIGHTEST));
    }
}
