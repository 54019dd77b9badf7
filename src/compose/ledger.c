/* compose/ledger.c - the ledger of weights as a document, for who must keep the piece on its
 * weight: the sum against the limit first, then part by part, what stands out, what is still open.
 */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

typedef struct {
    const tt_weights *of;
    const tt_piece *piece;
    const tt_ledger *ledger;
    tt_report *out;
} sheet;

static const char *kg(const sheet *s, double mass)
{
    return tt_say(s->out, mass, "kg", s->piece->report);
}

static void title(const sheet *s)
{
    const char *revision =
        s->piece->revision ? tt_report_text(s->out, ", revision %s", s->piece->revision) : "";
    tt_report_heading(s->out, 1,
                      tt_report_text(s->out, "tiptoe weigh: %s%s", s->piece->name, revision));
}

/* ---- the sum --------------------------------------------------------------------------------- */

/* By the heavy end, as a check judges it. */
static const char *against_limit(const sheet *s)
{
    const double limit = s->piece->limits.mass.is;
    const tt_open *total = &s->ledger->total;
    if (!s->piece->limits.has_mass) return " No limit is given (limits: {mass: ...}).";
    if (total->is > limit)
        return tt_report_text(s->out, " Over the limit of %s by %s, by %s at the heavy end.",
                              kg(s, limit), kg(s, total->is - limit), kg(s, total->high - limit));
    if (total->high > limit)
        return tt_report_text(
            s->out, " Over the limit of %s by %s at the heavy end; %s under it as estimated.",
            kg(s, limit), kg(s, total->high - limit), kg(s, limit - total->is));
    return tt_report_text(s->out, " Limit %s: %s left, %s at the heavy end.", kg(s, limit),
                          kg(s, limit - total->is), kg(s, limit - total->high));
}

static void sum(const sheet *s)
{
    const tt_open *total = &s->ledger->total;
    tt_report_paragraph(s->out);
    tt_report_run(s->out, true, tt_report_text(s->out, "It weighs %s", kg(s, total->is)));
    if (total->high - total->low > 1e-9 * total->high)
        tt_report_run(
            s->out, false,
            tt_report_text(s->out, ", between %s and %s.", kg(s, total->low), kg(s, total->high)));
    else
        tt_report_run(s->out, false, ".");
    tt_report_run(s->out, false, against_limit(s));
    const double more = total->is - s->ledger->estimated;
    if (fabs(more) > 1e-6 * total->is)
        tt_report_say(s->out, tt_report_text(s->out,
                                             "By its outlines and walls it would be %s; what "
                                             "was weighed made it %s %s.",
                                             kg(s, s->ledger->estimated), kg(s, fabs(more)),
                                             more > 0.0 ? "more" : "less"));
}

static void whole(const sheet *s)
{
    const tt_ledger *ledger = s->ledger;
    if (ledger->whole <= 0.0) return;
    const tt_open *parts = &ledger->by_parts;
    const double lacks = ledger->whole - parts->is;
    const bool too_far = ledger->whole > parts->high || ledger->whole < parts->low;
    tt_report_say(
        s->out, tt_report_text(
                    s->out,
                    "The whole was on the scales with %s; its parts by themselves make %s. What "
                    "they %s, %s, is laid on the bronze of each in the measure in which its weight "
                    "was open.%s",
                    kg(s, ledger->whole), kg(s, parts->is), lacks >= 0.0 ? "lack" : "have too much",
                    kg(s, fabs(lacks)),
                    too_far ? " That is more than they were open by: something on the scales is "
                              "not in the file, or the other way round."
                            : ""));
}

/* ---- part by part ---------------------------------------------------------------------------- */

/* A figure without its unit, where it is the one that the sentence over the table tells. */
static const char *figure(const sheet *s, double value, const char *unit)
{
    static const char *const told[][2] = {{"kg", "mm"}, {"lb", "in"}};
    const char *said = tt_say(s->out, value, unit, s->piece->report);
    const size_t digits = strcspn(said, " ");
    const char *const *units = told[s->piece->report == TT_IMPERIAL];
    const bool plain = said[digits] && (strcmp(said + digits + 1, units[0]) == 0 ||
                                        strcmp(said + digits + 1, units[1]) == 0);
    return plain ? tt_report_text(s->out, "%.*s", (int)digits, said) : said;
}

static const char *figure_or(const sheet *s, double mass)
{
    return mass > 0.0 ? figure(s, mass, "kg") : "";
}

static bool moved(const tt_ledger_part *part)
{
    return part->source != TT_BY_GEOMETRY || part->settled;
}

static const char *wall_by_weight(const sheet *s, const tt_ledger_part *part)
{
    if (part->nominal_wall <= 0.0 || !moved(part)) return "";
    return part->wall > 0.0 ? figure(s, part->wall, "m") : "none";
}

static bool is_open(const tt_open *of)
{
    return of->high - of->low > 1e-9 * of->high;
}

static void part_row(const sheet *s, const tt_ledger_part *part)
{
    const tt_open *taken = &part->taken;
    const char *const cells[] = {
        part->name,
        figure(s, part->estimate.is, "kg"),
        figure_or(s, part->wax),
        figure_or(s, part->scales),
        figure(s, taken->is, "kg"),
        moved(part) ? tt_report_text(s->out, "%+.0f %%", 100.0 * tt_ledger_difference(part)) : "",
        is_open(taken) ? figure(s, taken->low, "kg") : "",
        is_open(taken) ? figure(s, taken->high, "kg") : "",
        part->nominal_wall > 0.0 ? figure(s, part->nominal_wall, "m") : "solid",
        wall_by_weight(s, part)};
    tt_report_row(s->out, cells);
}

static void plain_row(const sheet *s, const char *name, const tt_open *of)
{
    const char *is = figure(s, of->is, "kg");
    const char *const cells[] = {name,
                                 is,
                                 "",
                                 "",
                                 is,
                                 "",
                                 is_open(of) ? figure(s, of->low, "kg") : "",
                                 is_open(of) ? figure(s, of->high, "kg") : "",
                                 "",
                                 ""};
    if (of->is > 0.0) tt_report_row(s->out, cells);
}

/* Numbers alone, so that the names have room. */
static void table(const sheet *s)
{
    static const tt_column columns[] = {
        {"part", TT_LEFT},   {"estimated", TT_RIGHT}, {"by wax", TT_RIGHT}, {"scales", TT_RIGHT},
        {"taken", TT_RIGHT}, {"off by", TT_RIGHT},    {"low", TT_RIGHT},    {"high", TT_RIGHT},
        {"wall", TT_RIGHT},  {"weighs as", TT_RIGHT}};
    const double arm = s->ledger->armature;
    const bool metric = s->piece->report == TT_METRIC;
    tt_report_heading(s->out, 2, "Part by part");
    tt_report_say(s->out,
                  metric ? "Weights in kg, walls in mm." : "Weights in lb, walls in inches.");
    tt_report_table(s->out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < s->ledger->parts; i++) part_row(s, &s->ledger->part[i]);
    plain_row(s, "armature", &(tt_open){arm, arm, arm});
    for (size_t i = 0; i < s->piece->lumps.n; i++) {
        const tt_lump *lump = &s->piece->lumps.at[i];
        plain_row(s, lump->name, &(tt_open){lump->mass.is, lump->mass.low, lump->mass.high});
    }
    tt_report_say(s->out,
                  "Weights are bronze without tare and gates; by wax: the bronze that the wax "
                  "becomes; low and high: how far it is still open. Walls are means; the last "
                  "column is the wall that would weigh what was taken. On the scales a part is "
                  "taken as known to 3 %, by its wax to 10 %: assumptions of this program.");
}

/* ---- what stands out ------------------------------------------------------------------------- */

static void flagged(const sheet *s)
{
    bool any = false;
    for (size_t i = 0; i < s->ledger->parts; i++) {
        const tt_ledger_part *part = &s->ledger->part[i];
        const double off = tt_ledger_difference(part);
        if (fabs(off) <= TT_LEDGER_FLAG) continue;
        if (!any) tt_report_heading(s->out, 2, "More than 15 % from the estimate");
        if (!any) tt_report_list(s->out, TT_BLOCK_LIST);
        any = true;
        tt_report_item(s->out,
                       tt_report_text(s->out, "%s: %s %s than estimated%s.", part->name,
                                      kg(s, fabs(part->taken.is - part->estimate.is)),
                                      off > 0.0 ? "more" : "less",
                                      part->nominal_wall > 0.0 && part->wall <= 0.0
                                          ? "; no wall weighs that: look at units, tare and gates"
                                          : ""));
    }
}

static void unweighed(const sheet *s)
{
    double mass = 0.0, spread = 0.0;
    size_t n = 0;
    for (size_t i = 0; i < s->ledger->parts; i++) {
        const tt_ledger_part *part = &s->ledger->part[i];
        if (part->source == TT_BY_SCALES) continue;
        mass += part->taken.is;
        spread += part->taken.high - part->taken.low;
        n++;
    }
    if (n == 0 || s->ledger->whole > 0.0) return;
    tt_report_say(s->out,
                  tt_report_text(s->out, "Not on the scales yet: %zu of %zu parts, %s, open by %s.",
                                 n, s->ledger->parts, kg(s, mass), kg(s, spread)));
}

static bool hung(const tt_piece *piece)
{
    for (size_t i = 0; i < piece->works->weighings.n; i++)
        if (piece->works->weighings.at[i].hangs) return true;
    return false;
}

static void centre(const sheet *s)
{
    const tt_vec3 c = s->of->centre;
    tt_report_heading(s->out, 2, "Centre of mass");
    tt_report_say(s->out, tt_report_text(s->out, "At x = %s, y = %s, z = %s.",
                                         tt_say(s->out, c.x, "m", s->piece->report),
                                         tt_say(s->out, c.y, "m", s->piece->report),
                                         tt_say(s->out, c.z, "m", s->piece->report)));
    if (hung(s->piece))
        tt_report_say(s->out, "How it hung (`hangs`) is kept; it is not compared with this.");
    const double base = tt_base_mass(s->piece);
    if (base > 0.0)
        tt_report_say(s->out, tt_report_text(s->out, "Besides: its base (plate, pedestal), %s.",
                                             kg(s, base)));
}

tt_status tt_compose_weights(const tt_weights *weights, tt_report *out)
{
    const sheet s = {weights, weights->piece, &weights->ledger, out};
    title(&s);
    sum(&s);
    whole(&s);
    table(&s);
    flagged(&s);
    unweighed(&s);
    centre(&s);
    tt_report_list(out, TT_BLOCK_CAUTIONS);
    tt_report_item(out,
                   "Weights that were not measured are estimates: weigh the parts, and the whole "
                   "before it is lifted.");
    if (out->failed) return TT_E_NOMEM;
    return out->not_finite ? TT_E_NOT_FINITE : TT_OK;
}
