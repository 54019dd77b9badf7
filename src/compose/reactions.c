/* compose/reactions.c - what the stands press with on the ground, or on what else holds the piece,
 * for whoever designs it. */
#include "compose/parts.h"

#include <math.h>

static const tt_level levels[] = {TT_STRENGTH, TT_ALLOWABLE, TT_SERVICE, TT_ACCIDENTAL, TT_SEISMIC};
enum { TOLD = sizeof levels / sizeof *levels };

/* Forces in one unit, moments in one unit: that of the largest of the table. */
typedef struct {
    double force, moment;
} largest;

static void widen(largest *most, const tt_press *worst)
{
    most->force = fmax(most->force, fmax(worst->down, fmax(worst->up, worst->level)));
    most->moment = fmax(most->moment, fmax(worst->tilt, worst->twist));
}

static void row(const tt_assessment *a, size_t stand, tt_level level, const tt_press *worst,
                const largest *most, tt_report *out)
{
    if (!worst->any) return;
    const tt_unit_system units = a->piece->report;
    const char *const cells[] = {a->piece->points.at[a->piece->stands.at[stand].at].name,
                                 tt_level_word(level),
                                 tt_say_beside(out, worst->down, most->force, "N", units),
                                 tt_say_beside(out, worst->up, most->force, "N", units),
                                 tt_say_beside(out, worst->level, most->force, "N", units),
                                 tt_say_beside(out, worst->tilt, most->moment, "N.m", units),
                                 tt_say_beside(out, worst->twist, most->moment, "N.m", units)};
    tt_report_row(out, cells);
}

static void rows(const tt_assessment *a, tt_report *out)
{
    const size_t n = a->piece->stands.n * TOLD;
    tt_press *worst = tt_pool_take(&out->pool, n, sizeof *worst);
    largest most = {0.0, 0.0};
    if (!worst) out->failed = true;
    for (size_t i = 0; worst && i < n; i++) {
        worst[i] = tt_press_of(a, i / TOLD, levels[i % TOLD]);
        widen(&most, &worst[i]);
    }
    for (size_t i = 0; worst && i < n; i++)
        row(a, i / TOLD, levels[i % TOLD], &worst[i], &most, out);
}

static bool stands_on_ground(const tt_piece *piece)
{
    for (size_t i = 0; i < piece->stands.n; i++) {
        if (piece->stands.at[i].sole_n) return true;
    }
    return false;
}

void tt_compose_reactions(const tt_assessment *a, tt_report *out)
{
    static const tt_column columns[] = {
        {"stand", TT_LEFT},     {"level", TT_LEFT},    {"down", TT_RIGHT},    {"up", TT_RIGHT},
        {"sideways", TT_RIGHT}, {"tilting", TT_RIGHT}, {"twisting", TT_RIGHT}};
    const bool ground = stands_on_ground(a->piece);
    tt_report_heading(out, 2, ground ? "Forces on the ground" : "Forces on what holds it");
    tt_report_say(
        out,
        tt_report_text(
            out,
            "For whoever designs %s: what each stand puts on it, moments about the stand's "
            "place. Each figure is the worst of all loads together of its level%s and of heavy "
            "and light weight, each by itself: they do not all come at once.",
            ground ? "the ground" : "what holds the piece",
            tt_two_models(a) ? ", of both carry models" : ""));
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    rows(a, out);
}
