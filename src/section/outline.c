/* section/outline.c - lengths, areas and widths of the outside of a limb, m and m2. */
#include "section/section.h"
#include "section/parts.h"

#include <math.h>

/* Perimeter of an ellipse from its semi-axes by the arithmetic-geometric mean:
 * P = (2 pi / M)(a0^2 - sum 2^(n-1) c_n^2), c_0^2 = a^2 - b^2, c_n = (a_(n-1) - b_(n-1)) / 2.
 * Abramowitz and Stegun, Handbook of Mathematical Functions, 17.6, FROM MEMORY. */
static double ellipse_perimeter(double p, double q)
{
    double a = fmax(p, q), b = fmin(p, q);
    if (b <= 0.0) return 4.0 * a;
    double sum = 0.5 * (a * a + b * b), power = 0.5;
    double c = a;
    while (c > 1e-9 * a) {
        c = 0.5 * (a - b);
        const double mean = 0.5 * (a + b);
        b = sqrt(a * b);
        a = mean;
        power *= 2.0;
        sum -= power * c * c;
    }
    return 2.0 * PI / a * sum;
}

bool tt_outline_of_girth(double girth, double deep, tt_outline *out)
{
    if (!(girth > 0.0)) return false;
    if (!(deep > 0.0)) {
        *out = tt_outline_of(TT_OUTLINE_ELLIPSE, girth / PI, girth / PI);
        return true;
    }
    if (!(girth > 2.0 * deep)) return false;
    /* The perimeter grows with the width, from 2 deep at none; it is longer than twice the width.
     */
    double low = 0.0, high = 0.5 * girth;
    while (high - low > 1e-15 * girth) {
        const double wide = 0.5 * (low + high);
        if (ellipse_perimeter(0.5 * wide, 0.5 * deep) < girth)
            low = wide;
        else
            high = wide;
    }
    *out = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.5 * (low + high), deep);
    return true;
}

tt_outline tt_outline_of(tt_outline_kind kind, double wide, double deep)
{
    return (tt_outline){.kind = kind, .wide = wide, .deep = deep};
}

tt_outline tt_outline_between(const tt_outline *a, const tt_outline *b, double t)
{
    tt_outline between = *a;
    between.wide += t * (b->wide - a->wide);
    between.deep += t * (b->deep - a->deep);
    between.corner += t * (b->corner - a->corner);
    between.numbers[1] = b->numbers[1];
    between.t = t;
    return between;
}

/* Its corners; how many. */
static size_t corners_of(const tt_outline *outline, tt_vec2 *out)
{
    tt_trace_corners(outline->trace, outline->t, out);
    return outline->trace->n;
}

double tt_outline_area(const tt_outline *outline)
{
    tt_vec2 corner[TT_TRACE_MOST];
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
        return 0.25 * PI * outline->wide * outline->deep;
    case TT_OUTLINE_BOX:
        return outline->wide * outline->deep;
    case TT_OUTLINE_TRACE:
        return tt_polygon_moments(corner, corners_of(outline, corner)).area;
    case TT_OUTLINE_NUMBERS:
        return tt_section_solid(outline, 0.0).area;
    }
    return 0.0;
}

double tt_outline_perimeter(const tt_outline *outline)
{
    tt_vec2 corner[TT_TRACE_MOST];
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
        return ellipse_perimeter(0.5 * outline->wide, 0.5 * outline->deep);
    case TT_OUTLINE_BOX:
    case TT_OUTLINE_NUMBERS:
        return 2.0 * (outline->wide + outline->deep);
    case TT_OUTLINE_TRACE:
        return tt_polygon_perimeter(corner, corners_of(outline, corner));
    }
    return 0.0;
}

double tt_outline_width(const tt_outline *outline, double uy, double uz)
{
    const double y = outline->wide * fabs(uy), z = outline->deep * fabs(uz);
    tt_vec2 corner[TT_TRACE_MOST];
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
        return hypot(y, z);
    case TT_OUTLINE_BOX:
    case TT_OUTLINE_NUMBERS:
        return y + z;
    case TT_OUTLINE_TRACE:
        return tt_polygon_extent(corner, corners_of(outline, corner), (tt_vec2){uy, uz});
    }
    return 0.0;
}

double tt_outline_flatness(const tt_outline *outline)
{
    if (outline->kind == TT_OUTLINE_NONE) return 1.0;
    if (outline->kind != TT_OUTLINE_TRACE)
        return fmax(outline->wide / outline->deep, outline->deep / outline->wide);
    double most = 1.0;
    for (int i = 0; i < 36; i++) {
        const double c = cos(i * PI / 36.0), s = sin(i * PI / 36.0);
        most = fmax(most, tt_outline_width(outline, c, s) / tt_outline_width(outline, -s, c));
    }
    return most;
}

/* From a place in the first quadrant to an ellipse of semi-axes p, q: the nearest point is at the
 * angle u at which the place lies on the normal; distances fall towards it from both ends. */
static double ellipse_depth(double p, double q, double y, double z)
{
    if (y == 0.0 && z == 0.0) return fmin(p, q); /* from the middle there is nothing to look for */
    double low = 0.0, high = 0.5 * PI;
    for (int i = 0; i < 200 && high - low > 1e-15; i++) {
        const double u = 0.5 * (low + high), c = cos(u), s = sin(u);
        /* derivative of half the squared distance */
        const double rise = (y - p * c) * p * s - (z - q * s) * q * c;
        if (rise > 0.0)
            high = u;
        else
            low = u;
    }
    const double u = 0.5 * (low + high);
    double distance = hypot(y - p * cos(u), z - q * sin(u));
    distance = fmin(distance, fmin(hypot(y - p, z), hypot(y, z - q)));
    return y * y / (p * p) + z * z / (q * q) <= 1.0 ? distance : -distance;
}

double tt_outline_depth(const tt_outline *outline, double y, double z)
{
    const double p = 0.5 * outline->wide, q = 0.5 * outline->deep;
    tt_vec2 corner[TT_TRACE_MOST];
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
    case TT_OUTLINE_NUMBERS:
        return ellipse_depth(p, q, fabs(y), fabs(z));
    case TT_OUTLINE_BOX:
        return fmin(p - fabs(y), q - fabs(z));
    case TT_OUTLINE_TRACE:
        return tt_polygon_distance(corner, corners_of(outline, corner), (tt_vec2){y, z});
    }
    return 0.0;
}

/* Radius of the largest circle inside the outside: in an ellipse or a box it is as wide as the
 * smaller width. */
static double inscribed(const tt_outline *outline)
{
    tt_vec2 corner[TT_TRACE_MOST];
    if (outline->kind == TT_OUTLINE_NONE) return 0.0;
    if (outline->kind != TT_OUTLINE_TRACE) return 0.5 * fmin(outline->wide, outline->deep);
    return tt_polygon_inscribed(corner, corners_of(outline, corner), NULL);
}

double tt_outline_closing_wall(const tt_outline *outline)
{
    return outline->kind == TT_OUTLINE_NUMBERS ? INFINITY : inscribed(outline);
}

/* The inside is the set of points at least a wall from the outside, trimmed or not, so a circle of
 * radius r fits inside it exactly where one of radius r + wall fits inside the outside. */
double tt_outline_bore(const tt_outline *outline, double wall)
{
    return fmax(0.0, 2.0 * (inscribed(outline) - wall));
}
