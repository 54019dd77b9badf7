/* piece/ledger.c - the ledger of weights: parts by geometry, what was weighed laid over them in the
 * order that counts, the sum settled by the whole. kg. */
#include "piece/ledger.h"

#include <math.h>

const char *const tt_weight_source_word[] = {"geometry", "wax", "scales"};

/* How far a weighed part is open: assumptions of this program. */
static const double of_wax = 0.10, of_scales = 0.03;

/* Gauss points and weights on 0..1, four of them. */
static const double point[] = {0.069431844202973712, 0.33000947820757187, 0.66999052179242813,
                               0.93056815579702629};
static const double weight[] = {0.17392742256872693, 0.32607257743127307, 0.32607257743127307,
                                0.17392742256872693};

typedef struct {
    double mass, first; /* first moment: kg times the fraction of the length */
} integral;

typedef double per_length(const tt_piece *piece, const tt_segment *segment, double t, int which);

static double armature(const tt_piece *piece, const tt_segment *segment, double t, int which)
{
    (void)which;
    return tt_segment_armature(piece, segment, t);
}

/* Quarter by quarter, as the bars of the model end. */
static integral along(const tt_piece *piece, const tt_segment *segment, per_length *of, int which)
{
    integral sum = {0, 0};
    const double length = tt_segment_length(piece, segment);
    for (int quarter = 0; quarter < 4; quarter++) {
        for (int k = 0; k < 4; k++) {
            const double t = (quarter + point[k]) / 4.0;
            const double mass = of(piece, segment, t, which) * length * weight[k] / 4.0;
            sum.mass += mass;
            sum.first += mass * t;
        }
    }
    return sum;
}

static double bronze(const tt_piece *piece, const tt_segment *segment, int which)
{
    return along(piece, segment, tt_segment_bronze, which).mass;
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
        const tt_open *whole = &ledger->segment[part.of[i].segment].estimate;
        part.estimate.is += part.of[i].share * whole->is;
        part.estimate.low += part.of[i].share * whole->low;
        part.estimate.high += part.of[i].share * whole->high;
    }
    part.taken = part.estimate;
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

static bool make_parts(const tt_piece *piece, tt_ledger *ledger, tt_pool *pool)
{
    const tt_works *works = piece->works;
    const size_t n = piece->segments.n;
    ledger->segment = tt_pool_take(pool, n, sizeof *ledger->segment);
    ledger->part = tt_pool_take(pool, n + works->panels.n, sizeof *ledger->part);
    if (!ledger->segment || !ledger->part) return false;
    for (size_t s = 0; s < n; s++) {
        const tt_segment *segment = &piece->segments.at[s];
        tt_ledger_segment *row = &ledger->segment[s];
        row->estimate = (tt_open){bronze(piece, segment, 0), bronze(piece, segment, -1),
                                  bronze(piece, segment, 1)};
        row->wall_factor = 1.0;
    }
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

static tt_ledger_part *part_of(tt_ledger *ledger, const tt_weighing *weighing)
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

/* Bronze that the wax becomes: its volume, split as the estimate is, in the alloys' densities. */
static double bronze_of_wax(const tt_piece *piece, const tt_ledger *ledger,
                            const tt_ledger_part *part, const tt_weighing *weighing)
{
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
    tt_ledger_part *part = part_of(ledger, weighing);
    if (!part) return;
    const double is =
        weighing->wax ? bronze_of_wax(piece, ledger, part, weighing) : tt_weighing_net(weighing);
    const double open = weighing->wax ? of_wax : of_scales;
    if (weighing->wax)
        part->wax = is;
    else
        part->scales = is;
    part->taken = (tt_open){is, is * (1.0 - open), is * (1.0 + open)};
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
 * the measure of their weight where none is. */
static void settle(tt_ledger *ledger, double whole)
{
    const tt_open sum = sum_of_bronze(ledger);
    ledger->by_parts = sum_of_all(ledger);
    const double lacks = whole - ledger->armature - ledger->lumps.is - sum.is;
    const bool more = lacks > 0.0;
    const double open = more ? sum.high - sum.is : sum.is - sum.low;
    ledger->whole = whole;
    if (!(sum.is > 0.0)) return;
    for (size_t i = 0; i < ledger->parts; i++) {
        tt_open *taken = &ledger->part[i].taken;
        const double mine = more ? taken->high - taken->is : taken->is - taken->low;
        const double share = open > 1e-12 * sum.is ? mine / open : taken->is / sum.is;
        const double factor = taken->is > 0.0 ? 1.0 + lacks * share / taken->is : 1.0;
        *taken = (tt_open){taken->is * factor, taken->low * factor, taken->high * factor};
        ledger->part[i].settled = share > 0.0;
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
                settle(ledger, tt_weighing_net(weighing));
            } else {
                lay(piece, ledger, weighing);
                if (!wax) ledger->whole = 0.0; /* weighed later than the whole: a new sum */
            }
        }
    }
}

/* ---- walls ----------------------------------------------------------------------------------- */

static double with_walls(const tt_piece *piece, const tt_ledger_part *part, double factor)
{
    double sum = 0.0;
    for (size_t i = 0; i < part->n; i++) {
        tt_segment segment = piece->segments.at[part->of[i].segment];
        segment.wall.is *= factor;
        segment.wall_to.is *= factor;
        sum += part->of[i].share * bronze(piece, &segment, 0);
    }
    return sum;
}

static double mean_wall(const tt_piece *piece, const tt_ledger_part *part)
{
    double sum = 0.0, length = 0.0;
    for (size_t i = 0; i < part->n; i++) {
        const tt_segment *segment = &piece->segments.at[part->of[i].segment];
        const double l = part->of[i].share * tt_segment_length(piece, segment);
        if (segment->solid) continue;
        sum += l * (segment->wall.is + segment->wall_to.is) / 2.0;
        length += l;
    }
    return length > 0.0 ? sum / length : 0.0;
}

/* The factor on the nominal walls that weighs what was taken, by bisection. */
static void imply_wall(const tt_piece *piece, tt_ledger_part *part)
{
    double low = 0.0, high = 64.0;
    part->nominal_wall = mean_wall(piece, part);
    part->wall_factor = 1.0;
    part->wall = part->nominal_wall;
    if (part->nominal_wall <= 0.0 || (part->source == TT_BY_GEOMETRY && !part->settled)) return;
    part->wall = 0.0;
    if (with_walls(piece, part, high) <= part->taken.is ||
        with_walls(piece, part, low) >= part->taken.is)
        return;
    for (int i = 0; i < 60; i++) {
        const double middle = 0.5 * (low + high);
        if (with_walls(piece, part, middle) < part->taken.is)
            low = middle;
        else
            high = middle;
    }
    part->wall_factor = 0.5 * (low + high);
    part->wall = part->wall_factor * part->nominal_wall;
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
            if (source == TT_BY_SCALES && part->wall > 0.0)
                row->wall_factor = fmin(row->wall_factor, part->wall_factor);
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

static tt_vec3 moment_of(const tt_piece *piece, const tt_segment *segment, integral of,
                         double times)
{
    const tt_vec3 from = piece->points.at[segment->from].at, to = piece->points.at[segment->to].at;
    return tt_scale(tt_add(tt_scale(from, of.mass - of.first), tt_scale(to, of.first)), times);
}

static void centre(const tt_piece *piece, tt_ledger *ledger)
{
    tt_vec3 moment = {0, 0, 0};
    for (size_t s = 0; s < piece->segments.n; s++) {
        const tt_segment *segment = &piece->segments.at[s];
        const tt_ledger_segment *row = &ledger->segment[s];
        const double times = row->estimate.is > 0.0 ? row->taken.is / row->estimate.is : 0.0;
        moment = tt_add(
            moment, moment_of(piece, segment, along(piece, segment, tt_segment_bronze, 0), times));
        moment = tt_add(moment, moment_of(piece, segment, along(piece, segment, armature, 0), 1.0));
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        const tt_vec3 at = tt_add(piece->points.at[lump->at].at, lump->offset);
        moment = tt_add(moment, tt_scale(at, lump->mass.is));
    }
    if (ledger->total.is > 0.0) ledger->centre = tt_scale(moment, 1.0 / ledger->total.is);
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
        out->armature += along(piece, &piece->segments.at[s], armature, 0).mass;
    lumps(piece, out);
    out->estimated = sum_of_all(out).is;
    lay_all(piece, out);
    for (size_t i = 0; i < out->parts; i++) imply_wall(piece, &out->part[i]);
    to_segments(out);
    total(out);
    centre(piece, out);
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
