/* piece/ledger.c - the ledger of weights: parts by geometry, what was weighed laid over them in the
 * order that counts, the sum settled by the whole. kg. */
#include "piece/ledger.h"

#include <math.h>

const char *const tt_weight_source_word[] = {"geometry", "wax", "scales"};

/* How far a weighed part is open: assumptions of this program. */
static const double of_wax = 0.10, of_scales = 0.03;

static double bronze(const tt_piece *piece, const tt_segment *segment, int which)
{
    return tt_segment_mass(piece, segment, tt_segment_bronze, which);
}

static double armature_along(const tt_piece *piece, const tt_segment *segment, double t, int which)
{
    (void)which;
    return tt_segment_armature(piece, segment, t);
}

/* ---- parts ----------------------------------------------------------------------------------- */

static double left_of(const tt_piece *piece, size_t segment)
{
    double left = 1.0;
    for (size_t p = 0; p < piece->works->panels.n; p++) {
        const tt_panel *panel = &piece->works->panels.at[p];
        for (size_t i = 0; i < panel->parts; i++)
            if (panel->part[i].segment == segment) left -= panel->part[i].share;
    }
    return left;
}

static void add_part(tt_ledger *ledger, tt_ledger_part part)
{
    part.estimate = (tt_open){0, 0, 0};
    for (size_t i = 0; i < part.n; i++) {
        const tt_ledger_segment *whole = &ledger->segment[part.of[i].segment];
        part.estimate.is += part.of[i].share * whole->estimate.is;
        part.estimate.low += part.of[i].share * whole->estimate.low;
        part.estimate.high += part.of[i].share * whole->estimate.high;
        part.solid += part.of[i].share * whole->solid;
    }
    part.taken = part.alone = part.estimate;
    ledger->part[ledger->parts++] = part;
}

static bool rest_of_segment(const tt_piece *piece, tt_ledger *ledger, tt_pool *pool, size_t s)
{
    const double left = left_of(piece, s);
    if (piece->segments.at[s].alloy == TT_NONE || left < 1e-9) return true;
    tt_panel_part *of = tt_pool_take(pool, 1, sizeof *of);
    const char *name = piece->segments.at[s].name;
    if (left < 1.0 - 1e-9) name = tt_pool_format(pool, "%s, the other %.3g %%", name, 100 * left);
    if (!of || !name) return false;
    *of = (tt_panel_part){s, left};
    add_part(ledger, (tt_ledger_part){.name = name, .panel = TT_NONE, .of = of, .n = 1});
    return true;
}

/* By the walls as they were said, not as an earlier ledger lowered them. */
static tt_ledger_segment estimate(const tt_piece *piece, const tt_segment *segment)
{
    tt_segment said = *segment, solid = *segment;
    if (segment->said_low[0] > 0.0) {
        said.wall.low = segment->said_low[0];
        said.wall_to.low = segment->said_low[1];
    }
    solid.solid = true;
    const bool numbers = segment->outline.kind == TT_OUTLINE_NUMBERS; /* their area is the metal */
    return (tt_ledger_segment){
        .estimate = {bronze(piece, &said, 0), bronze(piece, &said, -1), bronze(piece, &said, 1)},
        .solid = numbers ? INFINITY : bronze(piece, &solid, 1),
        .wall_factor = 1.0};
}

static bool make_parts(const tt_piece *piece, tt_ledger *ledger, tt_pool *pool)
{
    const tt_works *works = piece->works;
    const size_t n = piece->segments.n;
    ledger->segment = tt_pool_take(pool, n, sizeof *ledger->segment);
    ledger->part = tt_pool_take(pool, n + works->panels.n, sizeof *ledger->part);
    if (!ledger->segment || !ledger->part) return false;
    for (size_t s = 0; s < n; s++) ledger->segment[s] = estimate(piece, &piece->segments.at[s]);
    bool fits = true;
    for (size_t p = 0; p < works->panels.n; p++) {
        const tt_panel *panel = &works->panels.at[p];
        add_part(ledger,
                 (tt_ledger_part){
                     .name = panel->name, .panel = p, .of = panel->part, .n = panel->parts});
    }
    for (size_t s = 0; s < n; s++) fits = fits && rest_of_segment(piece, ledger, pool, s);
    return fits;
}

/* ---- what was weighed ------------------------------------------------------------------------ */

tt_ledger_part *tt_ledger_part_of(const tt_ledger *ledger, const tt_weighing *weighing)
{
    for (size_t i = 0; i < ledger->parts; i++) {
        tt_ledger_part *part = &ledger->part[i];
        const bool panel = weighing->what == TT_WEIGHED_PANEL;
        if (panel ? part->panel == weighing->index
                  : part->panel == TT_NONE && part->of[0].segment == weighing->index)
            return part;
    }
    return NULL;
}

/* Wax becomes bronze by its volume, split as the estimate is, in the alloys' densities. */
double tt_ledger_bronze(const tt_piece *piece, const tt_ledger *ledger, const tt_weighing *weighing)
{
    const tt_ledger_part *part = tt_ledger_part_of(ledger, weighing);
    if (!weighing->wax || !part) return tt_weighing_net(weighing);
    double volume = 0.0;
    for (size_t i = 0; i < part->n; i++) {
        const size_t s = part->of[i].segment;
        const size_t alloy = piece->segments.at[s].alloy;
        volume += part->of[i].share * ledger->segment[s].estimate.is /
                  piece->metals.at[alloy].fact[TT_P_DENSITY].value;
    }
    const double density = volume > 0.0 ? part->estimate.is / volume : 0.0;
    return tt_weighing_net(weighing) * density / weighing->wax_density.is *
           (1.0 + weighing->not_in_wax.is);
}

static void lay(const tt_piece *piece, tt_ledger *ledger, const tt_weighing *weighing)
{
    tt_ledger_part *part = tt_ledger_part_of(ledger, weighing);
    if (!part) return;
    const double is = tt_ledger_bronze(piece, ledger, weighing);
    const double open = weighing->wax ? of_wax : of_scales;
    if (weighing->wax)
        part->wax = is;
    else
        part->scales = is;
    part->taken = part->alone = (tt_open){is, is * (1.0 - open), is * (1.0 + open)};
    part->source = weighing->wax ? TT_BY_WAX : TT_BY_SCALES;
    part->settled = false;
}

static tt_open sum_of_bronze(const tt_ledger *ledger)
{
    tt_open sum = {0, 0, 0};
    for (size_t i = 0; i < ledger->parts; i++) {
        sum.is += ledger->part[i].taken.is;
        sum.low += ledger->part[i].taken.low;
        sum.high += ledger->part[i].taken.high;
    }
    return sum;
}

static tt_open sum_of_all(const tt_ledger *ledger)
{
    const tt_open sum = sum_of_bronze(ledger), *lumps = &ledger->lumps;
    const double arm = ledger->armature;
    return (tt_open){sum.is + arm + lumps->is, sum.low + arm + lumps->low,
                     sum.high + arm + lumps->high};
}

/* What the sum misses goes to the parts in the measure in which each is open that way; to all in
 * the measure of their weight where none is. When all are at their low ends, which for what was
 * weighed make `kept`, the others alone are lighter still. */
static double settled(const tt_ledger_part *part, const tt_open *sum, double lacks, double kept)
{
    const tt_open *own = &part->alone;
    const bool more = lacks > 0.0;
    const double open = more ? sum->high - sum->is : sum->is - sum->low;
    const double mine = more ? own->high - own->is : own->is - own->low;
    if (-lacks > open && kept > 0.0 && part->source != TT_BY_GEOMETRY) return own->low;
    if (-lacks > open) return own->low * (sum->is + lacks - kept) / (sum->low - kept);
    if (open <= 1e-12 * sum->is) return own->is * (1.0 + lacks / sum->is);
    return own->is + lacks * mine / open;
}

/* What the whole cannot be lighter than: armature, lumps, and what was weighed of the bronze where
 * something else must weigh too. */
static tt_open least(const tt_ledger *ledger)
{
    const double rest = ledger->armature + ledger->lumps.is;
    tt_open sum = {rest, rest, rest};
    bool all = true;
    for (size_t i = 0; i < ledger->parts; i++)
        all = all && ledger->part[i].source != TT_BY_GEOMETRY;
    for (size_t i = 0; i < ledger->parts && !all; i++) {
        if (ledger->part[i].source == TT_BY_GEOMETRY) continue;
        sum.is += ledger->part[i].alone.is;
        sum.low += ledger->part[i].alone.low;
    }
    return sum;
}

static void settle(tt_ledger *ledger, const tt_weighing *weighing)
{
    const double whole = tt_weighing_net(weighing);
    for (size_t i = 0; i < ledger->parts; i++) ledger->part[i].taken = ledger->part[i].alone;
    const tt_open sum = sum_of_bronze(ledger), floor = least(ledger);
    const double kept = floor.low - ledger->armature - ledger->lumps.is;
    ledger->by_parts = sum_of_all(ledger);
    ledger->whole = whole;
    ledger->too_light = whole <= floor.low ? weighing : NULL;
    ledger->least = floor.is;
    if (!(sum.is > 0.0) || ledger->too_light) return;
    for (size_t i = 0; i < ledger->parts; i++) {
        tt_ledger_part *part = &ledger->part[i];
        const tt_open own = part->alone;
        const double is = settled(part, &sum, whole - ledger->by_parts.is, kept);
        const double factor = own.is > 0.0 ? is / own.is : 1.0;
        part->taken = (tt_open){own.is * factor, own.low * factor, own.high * factor};
        part->settled = is != own.is;
    }
}

/* Wax first, then bronze, each in the order of the file: bronze beats wax, later beats earlier. */
static void lay_all(const tt_piece *piece, tt_ledger *ledger)
{
    const tt_works *works = piece->works;
    for (int wax = 1; wax >= 0; wax--) {
        for (size_t i = 0; i < works->weighings.n; i++) {
            const tt_weighing *weighing = &works->weighings.at[i];
            if (weighing->wax != (wax == 1)) continue;
            if (weighing->what == TT_WEIGHED_WHOLE) {
                settle(ledger, weighing);
            } else {
                lay(piece, ledger, weighing);
                if (!wax) ledger->whole = 0.0; /* weighed later than the whole: a new sum */
            }
        }
    }
}

/* ---- sums ------------------------------------------------------------------------------------ */

static void to_segments(tt_ledger *ledger)
{
    for (size_t i = 0; i < ledger->parts; i++) {
        const tt_ledger_part *part = &ledger->part[i];
        for (size_t k = 0; k < part->n; k++) {
            tt_ledger_segment *row = &ledger->segment[part->of[k].segment];
            const double mine = part->of[k].share * row->estimate.is;
            const double share = part->estimate.is > 0.0 ? mine / part->estimate.is : 0.0;
            const tt_weight_source source = part->settled ? TT_BY_SCALES : part->source;
            row->taken.is += share * part->taken.is;
            row->taken.low += share * part->taken.low;
            row->taken.high += share * part->taken.high;
            if (source > row->source) row->source = source;
            if (part->thin_factor >= row->wall_factor) continue;
            row->wall_factor = part->thin_factor;
            row->thin_by_wax = source == TT_BY_WAX;
        }
    }
}

static void lumps(const tt_piece *piece, tt_ledger *ledger)
{
    for (size_t i = 0; i < piece->lumps.n; i++) {
        ledger->lumps.is += piece->lumps.at[i].mass.is;
        ledger->lumps.low += piece->lumps.at[i].mass.low;
        ledger->lumps.high += piece->lumps.at[i].mass.high;
    }
}

static void total(tt_ledger *ledger)
{
    ledger->total = sum_of_all(ledger);
    if (ledger->whole <= 0.0) return;
    ledger->total.low = ledger->whole * (1.0 - of_scales);
    ledger->total.high = ledger->whole * (1.0 + of_scales);
}

bool tt_ledger_make(const tt_piece *piece, tt_pool *pool, tt_ledger *out)
{
    *out = (tt_ledger){0};
    if (!make_parts(piece, out, pool)) return false;
    for (size_t s = 0; s < piece->segments.n; s++)
        out->armature += tt_segment_mass(piece, &piece->segments.at[s], armature_along, 0);
    lumps(piece, out);
    out->estimated = sum_of_all(out).is;
    lay_all(piece, out);
    for (size_t i = 0; i < out->parts; i++) tt_ledger_imply_wall(piece, &out->part[i]);
    to_segments(out);
    total(out);
    return true;
}

double tt_ledger_difference(const tt_ledger_part *part)
{
    return part->estimate.is > 0.0 ? part->taken.is / part->estimate.is - 1.0 : 0.0;
}

bool tt_piece_weighed(const tt_piece *piece)
{
    return piece->works->weighings.n > 0;
}
