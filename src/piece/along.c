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

double tt_member_wall(const tt_member *member, double t)
{
    return between(member->wall, member->wall_to, t);
}

static bool rectangular(const tt_member *member)
{
    return member->form == TT_MEMBER_BOX || member->form == TT_MEMBER_FLAT;
}

tt_outline tt_member_outline(const tt_member *member, double t)
{
    const double od = between(member->od, member->od_to, t);
    if (member->form == TT_MEMBER_NONE) return tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    if (!rectangular(member)) return tt_outline_of(TT_OUTLINE_ELLIPSE, od, od);
    return tt_outline_of(TT_OUTLINE_BOX, od, between(member->deep, member->deep_to, t));
}

double tt_member_girdle(const tt_member *member, double t)
{
    const tt_outline outside = tt_member_outline(member, t);
    return rectangular(member) ? hypot(outside.wide, outside.deep) : outside.wide;
}

/* Outside corners of a cold formed tube: EN 10219-2, nominal for calculation, FROM MEMORY; AISC
 * Manual 2 t, FROM MEMORY. Those of a hot finished one are sharper (1.5 t): less is counted here.
 */
double tt_member_corner(const tt_member *member, double t)
{
    const double wall = tt_member_wall(member, t);
    const tt_outline outside = tt_member_outline(member, t);
    const double corner = wall * (wall <= 6e-3 + 1e-9 ? 2.0 : wall <= 10e-3 + 1e-9 ? 2.5 : 3.0);
    return fmin(corner, 0.5 * fmin(outside.wide, outside.deep));
}

double tt_member_area(const tt_member *member, double t)
{
    const tt_outline outside = tt_member_outline(member, t);
    const double wall = tt_member_wall(member, t);
    switch (member->form) {
    case TT_MEMBER_NONE:
        return 0.0;
    case TT_MEMBER_TUBE:
    case TT_MEMBER_BAR:
        return 3.14159265358979323846 * wall * (outside.wide - wall);
    case TT_MEMBER_BOX:
        return tt_box_tube_area(outside.wide, outside.deep, wall, tt_member_corner(member, t));
    case TT_MEMBER_FLAT:
        return outside.wide * outside.deep;
    }
    return 0.0;
}

tt_vec2 tt_member_off(const tt_member *member, double t)
{
    return (tt_vec2){between(member->off[0], member->off_to[0], t),
                     between(member->off[1], member->off_to[1], t)};
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
    return piece->metals.at[member->metal].fact[TT_P_DENSITY].value * tt_member_area(member, t);
}

/* Gauss points and weights on 0..1, four of them; quarter by quarter, as the bars of the model end.
 */
static const double point[] = {0.069431844202973712, 0.33000947820757187, 0.66999052179242813,
                               0.93056815579702629};
static const double weight[] = {0.17392742256872693, 0.32607257743127307, 0.32607257743127307,
                                0.17392742256872693};

/* The same all along: what is there once is there everywhere. */
static bool even(const tt_segment *segment)
{
    const tt_outline *a = &segment->outline, *b = &segment->outline_to;
    const tt_member *member = &segment->armature;
    bool same = a->wide == b->wide && a->deep == b->deep && a->kind != TT_OUTLINE_NUMBERS &&
                segment->wall.is == segment->wall_to.is &&
                segment->wall.low == segment->wall_to.low &&
                segment->wall.high == segment->wall_to.high && member->od == member->od_to &&
                member->deep == member->deep_to && member->wall == member->wall_to;
    for (size_t i = 0; same && a->trace && i < a->trace->n; i++)
        same = a->trace->from[i].x == a->trace->to[i].x && a->trace->from[i].y == a->trace->to[i].y;
    return same;
}

double tt_segment_mass(const tt_piece *piece, const tt_segment *segment, tt_per_length *of,
                       int which)
{
    double sum = 0.0;
    const double length = tt_segment_length(piece, segment);
    if (even(segment)) return of(piece, segment, 0.5, which) * length;
    for (int quarter = 0; quarter < 4; quarter++) {
        for (int k = 0; k < 4; k++)
            sum += of(piece, segment, (quarter + point[k]) / 4.0, which) * weight[k];
    }
    return sum * length / 4.0;
}
