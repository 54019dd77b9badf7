/* compose/steps.c - the lines of calculation of every check, from the worst to the least, and those
 * of the wind that is in the worst. */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

static void assumptions(const tt_finding *finding, tt_report *out)
{
    for (const char *const *line = finding->assumes; line && *line; line++) {
        if (line == finding->assumes) tt_report_list(out, TT_BLOCK_LIST);
        tt_report_item(out, tt_report_text(out, "assumes: %s", *line));
    }
}

static void calculation(const tt_assessment *a, const tt_finding *finding, tt_report *out)
{
    const char *loads = tt_say_loads(out, a, finding);
    const tt_unit_system units = a->piece->report;
    const double more = fmax(finding->demand, finding->resistance);
    tt_report_heading(out, 3,
                      tt_report_text(out, "%s, %s", finding->where, tt_say_judged(out, finding)));
    tt_report_say(
        out, tt_report_text(out, "%s: demand %s, resistance %s, use %s%s%s.",
                            finding->holds ? "Holds" : "Falls short",
                            tt_say_beside(out, finding->demand, more, finding->unit, units),
                            tt_say_beside(out, finding->resistance, more, finding->unit, units),
                            tt_say_use(out, finding, a->piece->limits.use.is),
                            *loads ? ", under " : "", loads));
    assumptions(finding, out);
    tt_steps steps = {.pool = &out->pool};
    tt_assessment_lines(a, finding, &steps);
    if (steps.list.n) tt_report_steps(out, steps.list.at, steps.list.n);
    out->failed |= steps.failed;
    tt_list_clear(&steps.list);
}

/* The wind among loads together; NULL where none is. */
static const tt_wind_direction *wind_in(const tt_assessment *a, const char *name)
{
    for (size_t i = 0; name && i < a->combinations.n; i++) {
        const tt_combination *together = &a->combinations.at[i];
        if (strcmp(together->name, name) != 0) continue;
        for (size_t p = 0; p < together->parts; p++) {
            const tt_case *acting = &a->actions.cases.at[together->part[p].acting];
            for (size_t w = 0; acting->kind == TT_CASE_WIND && w < a->actions.winds; w++) {
                if (a->actions.wind[w].direction == acting->direction) return &a->actions.wind[w];
            }
        }
    }
    return NULL;
}

/* That of the tightest place that has one in it. */
static const tt_wind_direction *worst_wind(const tt_assessment *a)
{
    const size_t *order = tt_assessment_order(a);
    const tt_wind_direction *wind = NULL;
    for (size_t i = 0; i < a->findings.list.n && !wind; i++)
        wind = wind_in(a, a->findings.list.at[order[i]].combination);
    return wind;
}

static void wind(const tt_assessment *a, tt_report *out)
{
    const tt_wind_direction *worst = worst_wind(a);
    if (!worst) return;
    const tt_unit_system units = a->piece->report;
    tt_report_heading(out, 3, tt_report_text(out, "Wind %.0f", worst->direction));
    tt_report_say(out,
                  tt_report_text(out, "Pushes with %s in all, on %s across it.",
                                 tt_say(out, hypot(worst->force.x, worst->force.y), "N", units),
                                 tt_say(out, worst->area, "m2", units)));
    tt_steps steps = {.pool = &out->pool};
    tt_wind_steps(a->basis, &a->actions.wind_site, worst, &steps);
    tt_report_steps(out, steps.list.at, steps.list.n);
    out->failed |= steps.failed;
    tt_list_clear(&steps.list);
}

void tt_compose_steps(const tt_assessment *a, tt_report *out)
{
    const size_t *order = tt_assessment_order(a);
    if (a->findings.list.n) tt_report_heading(out, 2, "Calculation");
    for (size_t i = 0; i < a->findings.list.n; i++) {
        calculation(a, &a->findings.list.at[order[i]], out);
    }
    wind(a, out);
}
