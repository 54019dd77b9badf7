/* piece/implied.c - the mean walls that what was weighed implies: the factor on the nominal walls
 * of a part with which it weighs what was taken; m, kg. */
#include "piece/ledger.h"

#include <math.h>

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

/* 0: no wall weighs that. The weight grows with the wall, almost evenly: false position, the end
 * that stays counted half (Illinois). */
static double factor_of(const tt_piece *piece, const tt_ledger_part *part, double mass)
{
    double low = 0.0, high = 1.0, over = with_walls(piece, part, high) - mass;
    for (; over <= 0.0 && high < 64.0; over = with_walls(piece, part, high) - mass) {
        low = high;
        high *= 2.0;
    }
    double under = mass - with_walls(piece, part, low), factor = 0.0;
    if (over <= 0.0 || under < 0.0 || (under == 0.0 && low == 0.0)) return 0.0;
    for (int i = 0, last = 0; i < 100 && high - low > 1e-12 * high; i++) {
        factor = (low * over + high * under) / (under + over);
        const double more = with_walls(piece, part, factor) - mass;
        if (fabs(more) <= 1e-12 * mass) break;
        const int side = more > 0.0 ? 1 : -1;
        if (side > 0) {
            high = factor;
            over = more;
            if (last == side) under *= 0.5;
        } else {
            low = factor;
            under = -more;
            if (last == side) over *= 0.5;
        }
        last = side;
    }
    return factor;
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
