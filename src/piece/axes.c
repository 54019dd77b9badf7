/* piece/axes.c - the local axes of a segment: which way is wide, which way is deep. */
#include "piece/piece.h"

#include <math.h>

static const double switch_angle = 20.0 * 3.14159265358979323846 / 180.0;

static tt_vec3 along(const tt_piece *piece, const tt_segment *segment)
{
    return tt_unit(tt_sub(piece->points.at[segment->to].at, piece->points.at[segment->from].at));
}

/* Angle between a limb and a line, either way, rad. */
static double angle_to_line(tt_vec3 x, tt_vec3 line)
{
    return atan2(tt_length(tt_cross(x, line)), fabs(tt_dot(x, line)));
}

static tt_vec3 front(tt_vec3 x, tt_vec3 faces)
{
    const tt_vec3 up = {0, 0, 1}, forward = {1, 0, 0};
    if (angle_to_line(x, faces) > switch_angle) return faces;
    return angle_to_line(x, up) > switch_angle ? up : forward;
}

static tt_axes turned(tt_axes axes, double angle)
{
    const double c = cos(angle), s = sin(angle);
    const tt_vec3 y = axes.y, z = axes.z;
    axes.y = tt_add(tt_scale(y, c), tt_scale(z, s));
    axes.z = tt_sub(tt_scale(z, c), tt_scale(y, s));
    return axes;
}

tt_axes tt_segment_axes(const tt_piece *piece, const tt_segment *segment, double t)
{
    const tt_vec3 x = along(piece, segment), to = front(x, segment->faces);
    const tt_vec3 z = tt_unit(tt_sub(to, tt_scale(x, tt_dot(x, to))));
    const tt_axes axes = {x, tt_cross(z, x), z};
    return turned(axes, segment->turn + t * (segment->turn_to - segment->turn));
}

double tt_segment_axes_margin(const tt_piece *piece, const tt_segment *segment)
{
    const tt_vec3 x = along(piece, segment), up = {0, 0, 1};
    const double to_degrees = 180.0 / 3.14159265358979323846;
    const double from_faces = angle_to_line(x, segment->faces) - switch_angle;
    if (from_faces > 0) return from_faces * to_degrees;
    return fmin(-from_faces, fabs(angle_to_line(x, up) - switch_angle)) * to_degrees;
}
