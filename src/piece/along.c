/* piece/along.c - what a segment is at a fraction of its length: outline, wall, member, mass. */
#include "piece/piece.h"

#include <math.h>

static double between(double a, double b, double t)
{
    return a + t * (b - a);
}

double tt_segment_length(const tt_piece *piece, const tt_segment *segment)
{
    return tt_length(tt_sub(piece->points.at[segment->to].at, piece->points.at[segment->from].at));
}

tt_outline tt_segment_outline(const tt_segment *segment, double t)
{
    return tt_outline_between(&segment->outline, &segment->outline_to, t);
}

static double spread(const tt_given *given, int which)
{
    return which < 0 ? given->low : which > 0 ? given->high : given->is;
}

double tt_segment_wall(const tt_segment *segment, double t, int which)
{
    return between(spread(&segment->wall, which), spread(&segment->wall_to, which), t);
}

double tt_member_od(const tt_member *member, double t)
{
    return between(member->od, member->od_to, t);
}

double tt_member_wall(const tt_member *member, double t)
{
    return between(member->wall, member->wall_to, t);
}

double tt_segment_bronze(const tt_piece *piece, const tt_segment *segment, double t, int which)
{
    const tt_outline outline = tt_segment_outline(segment, t);
    if (outline.kind == TT_OUTLINE_NONE || segment->alloy == TT_NONE) return 0.0;
    const double full = tt_outline_area(&outline);
    double area = full;
    if (!segment->solid) {
        const double shell = tt_outline_shell_area(&outline, tt_segment_wall(segment, t, which));
        area = fmin(shell * spread(&segment->surface, which), full);
    }
    const double density = piece->metals.at[segment->alloy].fact[TT_P_DENSITY].value;
    return density * area * (1.0 + spread(&segment->extra, which));
}

double tt_segment_armature(const tt_piece *piece, const tt_segment *segment, double t)
{
    const tt_member *member = &segment->armature;
    if (member->form == TT_MEMBER_NONE) return 0.0;
    const double od = tt_member_od(member, t), wall = tt_member_wall(member, t);
    const double area = 3.14159265358979323846 * wall * (od - wall);
    return piece->metals.at[member->metal].fact[TT_P_DENSITY].value * area;
}
