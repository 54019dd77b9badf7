/* piece/implied.c - the mean walls that what was weighed implies: the factor on the nominal walls
 * of a part with which it weighs what was taken, by bisection; m, kg. */
#include "piece/ledger.h"

static double with_walls(const tt_piece *piece, const tt_ledger_part *part, double factor)
{
    double sum = 0.0;
    for (size_t i = 0; i < part->n; i++) {
        tt_segment segment = piece->segments.at[part->of[i].segment];
        segment.wall.is *= factor;
        segment.wall_to.is *= factor;
        sum += part->of[i].share * tt_segment_mass(piece, &segment, tt_segment_bronze, 0);
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

/* 0: no wall weighs that. */
static double factor_of(const tt_piece *piece, const tt_ledger_part *part, double mass)
{
    double low = 0.0, high = 64.0;
    if (with_walls(piece, part, high) <= mass || with_walls(piece, part, low) >= mass) return 0.0;
    for (int i = 0; i < 60; i++) {
        const double middle = 0.5 * (low + high);
        if (with_walls(piece, part, middle) < mass)
            low = middle;
        else
            high = middle;
    }
    return 0.5 * (low + high);
}

/* Decision of this program: strength counts on no more than the mean wall that the scales show. Of
 * a wax it is that of its light end: a wax tells the bronze to 10 % only, and as long as there is
 * nothing but the wax nobody knows the walls of the casting better. */
void tt_ledger_imply_wall(const tt_piece *piece, tt_ledger_part *part)
{
    const bool by_wax = part->source == TT_BY_WAX && !part->settled;
    part->wall = part->nominal_wall = mean_wall(piece, part);
    part->thin_factor = 1.0;
    if (part->nominal_wall <= 0.0 || (part->source == TT_BY_GEOMETRY && !part->settled)) return;
    const double factor = factor_of(piece, part, part->taken.is);
    const double thin = by_wax ? factor_of(piece, part, part->taken.low) : factor;
    part->wall = factor * part->nominal_wall;
    if (thin > 0.0 && thin < 1.0) part->thin_factor = thin;
}
