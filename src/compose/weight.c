/* compose/weight.c - weight with its spread and limit, and where the centre of mass stands over the
 * sole, in full size and, when scaled, in millimetres of the maquette. */
#include "compose/parts.h"

#include <math.h>

static const char *mass(const tt_assessment *a, double kg, tt_report *out)
{
    return tt_say(out, kg, "kg", a->piece->report);
}

static const char *against_limit(const tt_assessment *a, tt_report *out)
{
    const double limit = a->piece->limits.mass.is;
    const double is = tt_model_mass(a->model, TT_NOMINAL),
                 high = tt_model_mass_told(a->model, TT_HEAVY);
    if (!a->piece->limits.has_mass) return "";
    const char *said = mass(a, limit, out);
    if (is > limit)
        return tt_report_text(out, " Over the limit of %s by %s.", said, mass(a, is - limit, out));
    if (high > limit) {
        return tt_report_text(out,
                              " Within the limit of %s at the nominal walls, over it by %s at the "
                              "thickest.",
                              said, mass(a, high - limit, out));
    }
    return tt_report_text(out, " Within the limit of %s.", said);
}

static bool lumps_spread(const tt_piece *piece)
{
    for (size_t i = 0; i < piece->lumps.n; i++) {
        if (piece->lumps.at[i].mass.low < piece->lumps.at[i].mass.high) return true;
    }
    return false;
}

/* ", by the spread of the bronze 50 kg to 80 kg"; nothing where there is none. */
static const char *spread(const tt_assessment *a, tt_report *out)
{
    const double light = tt_model_mass_told(a->model, TT_LIGHT),
                 heavy = tt_model_mass_told(a->model, TT_HEAVY);
    if (heavy - light <= 1e-9 * heavy) return "";
    const bool scales = a->model->ledger && a->model->ledger->whole > 0.0;
    return tt_report_text(out, ", by the %s %s to %s",
                          scales                   ? "scales"
                          : lumps_spread(a->piece) ? "spread of bronze and lumps"
                                                   : "spread of the bronze",
                          mass(a, light, out), mass(a, heavy, out));
}

/* ": bronze 53 kg, armature 6 kg"; what there is none of is left out. */
static const char *parts(const tt_assessment *a, tt_report *out)
{
    const tt_weight *w = &a->model->weight[TT_NOMINAL];
    const struct {
        const char *name;
        double kg;
    } part[] = {{"bronze", w->bronze}, {"armature", w->armature}, {"lumps", w->lumps}};
    const char *words = "", *only = "";
    size_t n = 0;
    for (size_t i = 0; i < sizeof part / sizeof *part; i++) {
        if (part[i].kg == 0.0) continue;
        words = tt_report_text(out, "%s%s %s %s", words, n++ ? "," : ":", part[i].name,
                               mass(a, part[i].kg, out));
        only = part[i].name;
    }
    return n == 1 ? tt_report_text(out, ", all of it %s", only) : words;
}

/* Parts far from their estimate. */
static const char *far_off(const tt_ledger *ledger, tt_report *out)
{
    const char *words = "";
    for (size_t i = 0; i < ledger->parts; i++) {
        const double off = tt_ledger_difference(&ledger->part[i]);
        if (fabs(off) > TT_LEDGER_FLAG)
            words = tt_report_text(out, "%s %s weighs %.0f %% %s than estimated.", words,
                                   ledger->part[i].name, 100.0 * fabs(off),
                                   off > 0.0 ? "more" : "less");
    }
    return words;
}

/* Walls that strength takes thinner than they were said, for their weight. */
static const char *thin_walls(const tt_assessment *a, tt_report *out)
{
    const char *words = "";
    for (size_t s = 0; s < a->piece->segments.n; s++) {
        const tt_segment *segment = &a->piece->segments.at[s];
        if (segment->said_low[0] <= 0.0) continue;
        const bool from = segment->wall.low < segment->said_low[0];
        words = tt_report_text(
            out, "%s By its weight the wall of %s is thinner: strength takes it as %s, not %s.",
            words, segment->name,
            tt_say(out, from ? segment->wall.low : segment->wall_to.low, "m", a->piece->report),
            tt_say(out, segment->said_low[from ? 0 : 1], "m", a->piece->report));
    }
    return words;
}

static void weighed(const tt_assessment *a, tt_report *out)
{
    const tt_ledger *ledger = a->model->ledger;
    size_t n = 0;
    for (size_t i = 0; ledger && i < ledger->parts; i++)
        n += ledger->part[i].source != TT_BY_GEOMETRY;
    if (!ledger) return;
    tt_report_say(out,
                  tt_report_text(out,
                                 "Weighed by itself: %zu of %zu parts of the bronze%s; `tiptoe "
                                 "weigh` tells each.%s%s",
                                 n, ledger->parts, ledger->whole > 0.0 ? ", and the whole" : "",
                                 far_off(ledger, out), thin_walls(a, out)));
}

/* The base, which is no part of it. */
static void besides(const tt_assessment *a, tt_report *out)
{
    const tt_base *base = &a->piece->works->base;
    const double kg = tt_base_mass(a->piece);
    const char *words = !base->has_pedestal ? "The plate, %s, is not in it."
                        : base->has_plate   ? "Plate and pedestal, %s, are not in it."
                                            : "The pedestal, %s, is not in it.";
    if (kg > 0.0) tt_report_say(out, tt_report_text(out, words, mass(a, kg, out)));
}

static void weight(const tt_assessment *a, tt_report *out)
{
    tt_report_say(out, tt_report_text(out, "Weight %s%s%s.%s",
                                      mass(a, tt_model_mass(a->model, TT_NOMINAL), out),
                                      spread(a, out), parts(a, out), against_limit(a, out)));
}

/* A length in the unit of the largest beside it, with its millimetres on the maquette behind it
 * when the piece is scaled. */
static const char *length(const tt_assessment *a, double m, double largest, tt_report *out)
{
    const tt_unit_system units = a->piece->report;
    const char *full = tt_say_beside(out, m, units == TT_METRIC ? m : largest, "m", units);
    if (a->piece->scale == 1.0) return full;
    return tt_report_text(out, "%s (%.1f mm on the maquette)", full, m * 1000.0 / a->piece->scale);
}

static void centre(const tt_assessment *a, tt_report *out)
{
    const tt_vec3 c = a->model->centre[TT_NOMINAL];
    const double far = fmax(fmax(fabs(c.x), fabs(c.y)), fabs(c.z));
    tt_report_say(out, tt_report_text(out, "Centre of mass at x = %s, y = %s, z = %s.",
                                      length(a, c.x, far, out), length(a, c.y, far, out),
                                      length(a, c.z, far, out)));
}

static void over_sole(const tt_assessment *a, tt_report *out)
{
    const tt_balance *b = &a->balance;
    const bool inside = b->edge_distance >= 0.0;
    const double far = fabs(b->edge_distance);
    const char *distance = length(a, far, far, out);
    const char *way = tt_say_bearing(out, b->edge_way);
    const char *drawn = tt_say(out, b->drawn_in, "m", a->piece->report);
    tt_report_say(out, tt_report_text(out,
                                      inside ? "It stands over the sole, %s inside the nearest "
                                               "edge, which lies towards %s (0 deg is +x, "
                                               "90 deg is +y); the edges are drawn in by %s."
                                             : "It stands outside the sole, %s beyond the nearest "
                                               "edge, which lies towards %s (0 deg is "
                                               "+x, 90 deg is +y); the edges are drawn in by %s.",
                                      distance, way, drawn));
    if (!b->combination) return;
    if (!inside) {
        tt_report_say(out, "Told, not judged: not held down, its own weight tips it over.");
        return;
    }
    const tt_finding told = {.has_use = true, .use = b->use, .holds = b->use <= 1.0};
    tt_report_say(
        out, tt_report_text(out,
                            "Told, not judged: not held down, it would need %s of what its weight "
                            "restores against tipping, under %s.",
                            tt_say_use(out, &told, 1.0), tt_say_tied(out, b->combination)));
}

void tt_compose_weight(const tt_assessment *a, tt_report *out)
{
    tt_report_heading(out, 2, "Weight and balance");
    weight(a, out);
    weighed(a, out);
    besides(a, out);
    centre(a, out);
    if (a->balance.applies) over_sole(a, out);
}
