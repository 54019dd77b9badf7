/* num/vec3.h - vectors of three, and rows of three of them as rotations. */
#ifndef TT_NUM_VEC3_H
#define TT_NUM_VEC3_H

#include <math.h>

typedef struct {
    double x, y, z;
} tt_vec3;

/** Rows are the unit vectors of a frame in global axes: local = R * global. */
typedef struct {
    tt_vec3 x, y, z;
} tt_axes;

static inline tt_vec3 tt_add(tt_vec3 a, tt_vec3 b)
{
    return (tt_vec3){a.x + b.x, a.y + b.y, a.z + b.z};
}
static inline tt_vec3 tt_sub(tt_vec3 a, tt_vec3 b)
{
    return (tt_vec3){a.x - b.x, a.y - b.y, a.z - b.z};
}
static inline tt_vec3 tt_scale(tt_vec3 a, double s)
{
    return (tt_vec3){a.x * s, a.y * s, a.z * s};
}
static inline double tt_dot(tt_vec3 a, tt_vec3 b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
static inline tt_vec3 tt_cross(tt_vec3 a, tt_vec3 b)
{
    return (tt_vec3){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
static inline double tt_length(tt_vec3 a)
{
    return sqrt(tt_dot(a, a));
}
/** a / |a|; a must not be nil. */
static inline tt_vec3 tt_unit(tt_vec3 a)
{
    return tt_scale(a, 1.0 / tt_length(a));
}
static inline tt_vec3 tt_lerp(tt_vec3 a, tt_vec3 b, double t)
{
    return tt_add(tt_scale(a, 1.0 - t), tt_scale(b, t));
}
static inline tt_vec3 tt_to_local(const tt_axes *axes, tt_vec3 v)
{
    return (tt_vec3){tt_dot(axes->x, v), tt_dot(axes->y, v), tt_dot(axes->z, v)};
}
static inline tt_vec3 tt_to_global(const tt_axes *axes, tt_vec3 v)
{
    return tt_add(tt_add(tt_scale(axes->x, v.x), tt_scale(axes->y, v.y)), tt_scale(axes->z, v.z));
}

#endif
