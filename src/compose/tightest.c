/* compose/tightest.c - the ten tightest places. */
#include "compose/parts.h"

#include <string.h>

enum { TIGHTEST = 10 };

const char *tt_say_judged(tt_report *out, const tt_finding *finding)
{
    const char *title = tt_say_check(finding->check);
    if (finding->has_use) return title;
    return tt_report_text(out, "%s: %s%s", title, finding->holds ? "" : "falls short, ",
                          finding->why ? finding->why : "no use can be told");
}

static void row(const tt_assessment *a, const tt_finding *finding, tt_report *out)
{
    const bool fits = !tt_never_fits(finding);
    const char *what = tt_say_judged(out, finding);
    if (!fits) what = tt_report_text(out, "%s: %s", what, tt_say_misfit(out, a, finding));
    const char *margin = tt_say_margin(out, finding);
    if (tt_margin_of_neck(a, finding)) margin = tt_report_text(out, "%s*", margin);
    const char *const cells[] = {
        finding->where, what, tt_say_loads(out, a, finding),
        fits ? tt_say_use(out, finding, a->piece->limits.use.is) : "none", fits ? margin : "none"};
    tt_report_row(out, cells);
}

/* What the table leaves to be said. */
static void notes(const tt_assessment *a, size_t shown, tt_report *out)
{
    const size_t *order = tt_assessment_order(a);
    bool neck = false;
    const char *wind = NULL;
    for (size_t i = 0; i < shown; i++) {
        const tt_finding *finding = &a->findings.list.at[order[i]];
        neck = neck || tt_margin_of_neck(a, finding);
        if (!wind) wind = tt_say_wind_in(out, finding->combination);
    }
    if (neck)
        tt_report_say(out, "* The margin counts the lower casting quality of a neck, which holds "
                           "from half use on.");
    if (wind)
        tt_report_say(out, tt_report_text(out, "The number behind a wind is its direction: %s blows towards "
                                          "%s deg; 0 deg is +x, 90 deg is +y.",
                                          wind, strchr(wind, *TT_TIE) + 1));
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
    const size_t shown = n < TIGHTEST ? n : TIGHTEST;
    for (size_t i = 0; i < shown; i++) row(a, &a->findings.list.at[order[i]], out);
    notes(a, shown, out);
    if (n > TIGHTEST) {
        tt_report_say(out,
                      tt_report_text(out,
                                     "%zu places more were judged; none of them is tighter than "
                                     "the last of these.",
                                     n - TIGHTEST));
    }
}
