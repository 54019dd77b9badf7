/* compose/reactions.c - what the stands press with on the ground, or on what else holds the piece,
 * for whoever designs it. */
#include "compose/parts.h"

static void row(const tt_assessment *a, size_t stand, tt_level level, tt_report *out)
{
    const tt_press worst = tt_press_of(a, stand, level);
    if (!worst.any) return;
    const tt_unit_system units = a->piece->report;
    const char *const cells[] = {a->piece->points.at[a->piece->stands.at[stand].at].name,
                                 tt_level_word(level),
                                 tt_say(out, worst.down, "N", units),
                                 tt_say(out, worst.up, "N", units),
                                 tt_say(out, worst.level, "N", units),
                                 tt_say(out, worst.tilt, "N.m", units),
                                 tt_say(out, worst.twist, "N.m", units)};
    tt_report_row(out, cells);
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
    static const tt_level levels[] = {TT_STRENGTH, TT_ALLOWABLE, TT_SERVICE, TT_ACCIDENTAL,
                                      TT_SEISMIC};
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
    for (size_t s = 0; s < a->piece->stands.n; s++) {
        for (size_t l = 0; l < sizeof levels / sizeof *levels; l++) row(a, s, levels[l], out);
    }
}
