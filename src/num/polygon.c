/* num/polygon.c - plane polygons in plain coordinates, in any one unit of length. */
#include "num/polygon.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

static tt_vec2 from_to(tt_vec2 a, tt_vec2 b)
{
    return (tt_vec2){b.x - a.x, b.y - a.y};
}

static double cross(tt_vec2 a, tt_vec2 b)
{
    return a.x * b.y - a.y * b.x;
}

/* How far `at` lies to the left of the line from a to b. */
static double left_of(tt_vec2 a, tt_vec2 b, tt_vec2 at)
{
    const tt_vec2 along = from_to(a, b);
    const double length = hypot(along.x, along.y);
    return length > 0.0 ? cross(along, from_to(a, at)) / length : 0.0;
}

static int by_x_then_y(const void *a, const void *b)
{
    const tt_vec2 *p = a, *q = b;
    if (p->x != q->x) return p->x < q->x ? -1 : 1;
    return (p->y > q->y) - (p->y < q->y);
}

static double extent(const tt_vec2 *p, size_t n)
{
    double reach = 0.0;
    for (size_t i = 1; i < n; i++) reach = fmax(reach, hypot(p[i].x - p[0].x, p[i].y - p[0].y));
    return reach;
}

/* Sorted points of which each differs from the one before by more than `near`. */
static size_t distinct(tt_vec2 *p, size_t n, double near)
{
    size_t kept = n ? 1 : 0;
    for (size_t i = 1; i < n; i++) {
        if (hypot(p[i].x - p[kept - 1].x, p[i].y - p[kept - 1].y) > near) p[kept++] = p[i];
    }
    return kept;
}

/* A. M. Andrew, Inf. Process. Lett. 9 (1979) 216: a chain turns left at each corner. FROM MEMORY */
static size_t extend(tt_vec2 *hull, size_t m, size_t floor, tt_vec2 at, double near)
{
    while (m > floor && left_of(hull[m - 2], at, hull[m - 1]) > -near) m--;
    hull[m++] = at;
    return m;
}

size_t tt_hull(const tt_vec2 *points, size_t n, tt_vec2 *hull)
{
    if (n == 0) return 0;
    tt_vec2 *sorted = hull + n + 1;
    memcpy(sorted, points, n * sizeof *points);
    qsort(sorted, n, sizeof *sorted, by_x_then_y);
    const double near = 1e-12 * extent(sorted, n);
    n = distinct(sorted, n, near);
    size_t m = 0;
    for (size_t i = 0; i < n; i++) m = extend(hull, m, 1, sorted[i], near);
    const size_t floor = m;
    for (size_t i = n - 1; i-- > 0;) m = extend(hull, m, floor, sorted[i], near);
    return m > 1 ? m - 1 : m;
}

static tt_vec2 mean(const tt_vec2 *p, size_t n)
{
    tt_vec2 sum = {0.0, 0.0};
    for (size_t i = 0; i < n; i++) sum = (tt_vec2){sum.x + p[i].x, sum.y + p[i].y};
    return n ? (tt_vec2){sum.x / (double)n, sum.y / (double)n} : sum;
}

double tt_polygon_area(const tt_vec2 *corners, size_t n, tt_vec2 *centroid)
{
    const tt_vec2 middle = mean(corners, n);
    double twice = 0.0, mx = 0.0, my = 0.0;
    for (size_t i = 0; i < n; i++) { /* triangles from the middle, which keeps the sums small */
        const tt_vec2 a = from_to(middle, corners[i]), b = from_to(middle, corners[(i + 1) % n]);
        const double part = cross(a, b);
        twice += part;
        mx += part * (a.x + b.x);
        my += part * (a.y + b.y);
    }
    if (centroid) *centroid = middle;
    if (centroid && twice != 0.0) {
        *centroid = (tt_vec2){middle.x + mx / (3.0 * twice), middle.y + my / (3.0 * twice)};
    }
    return 0.5 * twice;
}

static double from_segment(tt_vec2 a, tt_vec2 b, tt_vec2 at)
{
    const tt_vec2 along = from_to(a, b), to = from_to(a, at);
    const double square = along.x * along.x + along.y * along.y;
    const double t = square > 0.0 ? (along.x * to.x + along.y * to.y) / square : 0.0;
    const double s = fmin(fmax(t, 0.0), 1.0);
    return hypot(to.x - s * along.x, to.y - s * along.y);
}

double tt_convex_distance(const tt_vec2 *corners, size_t n, tt_vec2 at, size_t *edge)
{
    double nearest = INFINITY;
    bool inside = n > 2;
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 a = corners[i], b = corners[(i + 1) % n];
        const double distance = from_segment(a, b, at);
        inside = inside && left_of(a, b, at) >= 0.0;
        if (distance < nearest) {
            nearest = distance;
            if (edge) *edge = i;
        }
    }
    return inside ? nearest : -nearest;
}

/* Cuts away what lies less than `by` to the left of a-b. I. E. Sutherland, G. W. Hodgman,
 * Commun. ACM 17 (1974) 32, for one edge. FROM MEMORY */
static size_t cut(const tt_vec2 *p, size_t n, tt_vec2 a, tt_vec2 b, double by, tt_vec2 *out)
{
    size_t m = 0;
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 here = p[i], next = p[(i + 1) % n];
        const double d = left_of(a, b, here) - by, e = left_of(a, b, next) - by;
        if (d >= 0.0) out[m++] = here;
        if ((d > 0.0 && e < 0.0) || (d < 0.0 && e > 0.0)) {
            const double t = d / (d - e);
            out[m++] = (tt_vec2){here.x + t * (next.x - here.x), here.y + t * (next.y - here.y)};
        }
    }
    return m;
}

size_t tt_convex_inset(const tt_vec2 *corners, size_t n, double by, tt_vec2 *out)
{
    if (n < 3) return 0;
    tt_vec2 *spare = out + 2 * n;
    size_t m = n;
    memcpy(out, corners, n * sizeof *out);
    for (size_t i = 0; i < n && m > 0; i++) {
        m = cut(out, m, corners[i], corners[(i + 1) % n], by, spare);
        m = distinct(spare, m, 1e-12 * extent(corners, n));
        memcpy(out, spare, m * sizeof *out);
    }
    return m < 3 ? 0 : m;
}

double tt_convex_width(const tt_vec2 *corners, size_t n)
{
    double least = n > 2 ? INFINITY : 0.0;
    for (size_t i = 0; i < n && n > 2; i++) {
        double widest = 0.0;
        for (size_t j = 0; j < n; j++) {
            widest = fmax(widest, left_of(corners[i], corners[(i + 1) % n], corners[j]));
        }
        least = fmin(least, widest);
    }
    return least;
}
