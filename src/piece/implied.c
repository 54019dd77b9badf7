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

/* 0: no wall weighs that. A chord between two walls that hold the mass between them; where one end
 * stays twice, its error counts half, so that both come nearer (the Illinois rule). */
static double factor_of(const tt_piece *piece, const tt_ledger_part *part, double mass)
{
    double low = 0.0, high = 64.0, middle = 0.0;
    double under = with_walls(piece, part, low) - mass, over = with_walls(piece, part, high) - mass;
    int stayed = 0;
    if (under >= 0.0 || over <= 0.0) return 0.0;
    for (int i = 0; i < 200 && high - low > 1e-12 * high; i++) {
        middle = high - over * (high - low) / (over - under);
        const double off = with_walls(piece, part, middle) - mass;
        if (fabs(off) <= 1e-12 * mass) break;
        if (off < 0.0) {
            low = middle;
            under = off;
            over *= stayed > 0 ? 0.5 : 1.0;
            stayed = 1;
        } else {
            high = middle;
            over = off;
            under *= stayed < 0 ? 0.5 : 1.0;
            stayed = -1;
        }
    }
    return middle;
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
