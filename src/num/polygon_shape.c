/* num/polygon_shape.c - integrals, distances and the largest circle of a polygon that may be
 * concave, in any one unit of length. */
#include "num/polygon_shape.h"

#include <math.h>

static double cross(tt_vec2 a, tt_vec2 b)
{
    return a.x * b.y - a.y * b.x;
}

static tt_vec2 from_to(tt_vec2 a, tt_vec2 b)
{
    return (tt_vec2){b.x - a.x, b.y - a.y};
}

void tt_plane_add(tt_plane_moments *sum, double factor, const tt_plane_moments *more)
{
    sum->area += factor * more->area;
    sum->x += factor * more->x;
    sum->y += factor * more->y;
    sum->xx += factor * more->xx;
    sum->yy += factor * more->yy;
    sum->xy += factor * more->xy;
}

tt_plane_moments tt_plane_about(const tt_plane_moments *of, double x, double y)
{
    return (tt_plane_moments){.area = of->area,
                              .x = of->x - x * of->area,
                              .y = of->y - y * of->area,
                              .xx = of->xx - 2.0 * x * of->x + x * x * of->area,
                              .yy = of->yy - 2.0 * y * of->y + y * y * of->area,
                              .xy = of->xy - x * of->y - y * of->x + x * y * of->area};
}

/* Triangles from the first corner, each about it: what keeps the sums small. */
tt_plane_moments tt_polygon_moments(const tt_vec2 *corners, size_t n)
{
    tt_plane_moments sum = {0};
    for (size_t i = 1; i + 1 < n; i++) {
        const tt_vec2 a = from_to(corners[0], corners[i]), b = from_to(corners[0], corners[i + 1]);
        const double twice = cross(a, b);
        const tt_plane_moments part = {
            .area = twice / 2.0,
            .x = twice * (a.x + b.x) / 6.0,
            .y = twice * (a.y + b.y) / 6.0,
            .xx = twice * (a.x * a.x + a.x * b.x + b.x * b.x) / 12.0,
            .yy = twice * (a.y * a.y + a.y * b.y + b.y * b.y) / 12.0,
            .xy = twice * (2.0 * (a.x * a.y + b.x * b.y) + a.x * b.y + b.x * a.y) / 24.0};
        tt_plane_add(&sum, 1.0, &part);
    }
    return n ? tt_plane_about(&sum, -corners[0].x, -corners[0].y) : sum;
}

/* Square of the distance. */
static double from_edge(tt_vec2 a, tt_vec2 b, tt_vec2 at)
{
    const tt_vec2 along = from_to(a, b), to = from_to(a, at);
    const double square = along.x * along.x + along.y * along.y;
    const double t = square > 0.0 ? (along.x * to.x + along.y * to.y) / square : 0.0;
    const double s = t < 0.0 ? 0.0 : t > 1.0 ? 1.0 : t;
    const double x = to.x - s * along.x, y = to.y - s * along.y;
    return x * x + y * y;
}

/* Does a ray to the right of `at` cross the edge? */
static bool passes(tt_vec2 a, tt_vec2 b, tt_vec2 at)
{
    if ((a.y > at.y) == (b.y > at.y)) return false;
    return at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x);
}

double tt_polygon_distance(const tt_vec2 *corners, size_t n, tt_vec2 at)
{
    double nearest = INFINITY;
    bool inside = false;
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 a = corners[i], b = corners[i + 1 < n ? i + 1 : 0];
        const double square = from_edge(a, b, at);
        if (square < nearest) nearest = square;
        if (passes(a, b, at)) inside = !inside;
    }
    return inside ? sqrt(nearest) : -sqrt(nearest);
}

double tt_polygon_extent(const tt_vec2 *corners, size_t n, tt_vec2 way)
{
    double least = INFINITY, most = -INFINITY;
    for (size_t i = 0; i < n; i++) {
        const double at = corners[i].x * way.x + corners[i].y * way.y;
        least = fmin(least, at);
        most = fmax(most, at);
    }
    return n ? most - least : 0.0;
}

double tt_polygon_perimeter(const tt_vec2 *corners, size_t n)
{
    double length = 0.0;
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 along = from_to(corners[i], corners[(i + 1) % n]);
        length += hypot(along.x, along.y);
    }
    return length;
}

static double side(tt_vec2 a, tt_vec2 b, tt_vec2 at)
{
    return cross(from_to(a, b), from_to(a, at));
}

static bool meet(tt_vec2 a, tt_vec2 b, tt_vec2 c, tt_vec2 d)
{
    const double ca = side(c, d, a), cb = side(c, d, b), ac = side(a, b, c), ad = side(a, b, d);
    if (((ca > 0.0) != (cb > 0.0)) && ((ac > 0.0) != (ad > 0.0)) && ca != 0.0 && cb != 0.0 &&
        ac != 0.0 && ad != 0.0)
        return true;
    return (ca == 0.0 && from_edge(c, d, a) == 0.0) || (cb == 0.0 && from_edge(c, d, b) == 0.0) ||
           (ac == 0.0 && from_edge(a, b, c) == 0.0) || (ad == 0.0 && from_edge(a, b, d) == 0.0);
}

/* Neighbours share a corner: they meet elsewhere only when the second runs back along the first. */
static bool turns_back(tt_vec2 a, tt_vec2 corner, tt_vec2 b)
{
    const tt_vec2 in = from_to(a, corner), out = from_to(corner, b);
    return cross(in, out) == 0.0 && in.x * out.x + in.y * out.y < 0.0;
}

bool tt_polygon_crossing(const tt_vec2 *corners, size_t n, size_t *one, size_t *other)
{
    for (size_t i = 0; i < n; i++) {
        for (size_t j = i + 1; j < n; j++) {
            const tt_vec2 a = corners[i], b = corners[(i + 1) % n];
            const tt_vec2 c = corners[j], d = corners[(j + 1) % n];
            const bool next = j == i + 1, last = i == 0 && j + 1 == n;
            const bool bad = next   ? turns_back(a, b, d)
                             : last ? turns_back(c, a, b)
                                    : meet(a, b, c, d);
            if (!bad) continue;
            *one = i;
            *other = j;
            return true;
        }
    }
    return false;
}

/* ---- the largest circle: squares that may hold a better centre are quartered ---- */

typedef struct {
    const tt_vec2 *corners;
    size_t n;
    double radius;
    tt_vec2 centre;
} search;

static void look(search *s, tt_vec2 at, double distance)
{
    if (distance <= s->radius) return;
    s->radius = distance;
    s->centre = at;
}

static void quarter(search *s, tt_vec2 middle, double half, int depth)
{
    enum { DEEPEST = 24 };
    const double distance = tt_polygon_distance(s->corners, s->n, middle);
    look(s, middle, distance);
    if (depth == DEEPEST || distance + half * 1.4142135623730951 <= s->radius * 1.001) return;
    for (int k = 0; k < 4; k++) {
        const tt_vec2 at = {middle.x + (k & 1 ? 0.5 : -0.5) * half,
                            middle.y + (k & 2 ? 0.5 : -0.5) * half};
        quarter(s, at, 0.5 * half, depth + 1);
    }
}

/* Uphill from the best so far, in smaller and smaller steps. */
static void climb(search *s, double step)
{
    enum { WAYS = 24 };
    while (step > 1e-9 * s->radius) {
        const double before = s->radius;
        const tt_vec2 from = s->centre;
        for (int k = 0; k < WAYS; k++) {
            const double angle = 6.283185307179586 * k / WAYS;
            const tt_vec2 at = {from.x + step * cos(angle), from.y + step * sin(angle)};
            look(s, at, tt_polygon_distance(s->corners, s->n, at));
        }
        if (s->radius <= before) step *= 0.5;
    }
}

double tt_polygon_inscribed(const tt_vec2 *corners, size_t n, tt_vec2 *centre)
{
    enum { GRID = 12 };
    const tt_plane_moments whole = tt_polygon_moments(corners, n);
    search s = {corners, n, 0.0, {0.0, 0.0}};
    if (!(whole.area > 0.0)) return 0.0;
    const tt_vec2 middle = {whole.x / whole.area, whole.y / whole.area};
    double reach = 0.0;
    for (size_t i = 0; i < n; i++)
        reach = fmax(reach, fmax(fabs(corners[i].x - middle.x), fabs(corners[i].y - middle.y)));
    s.radius = 1e-9 * reach;
    look(&s, middle, tt_polygon_distance(corners, n, middle));
    for (int i = 1; i < 2 * GRID; i += 2) { /* a good one first lets most squares be passed over */
        for (int k = 1; k < 2 * GRID; k += 2) {
            const tt_vec2 at = {middle.x + reach * (i - GRID) / GRID,
                                middle.y + reach * (k - GRID) / GRID};
            look(&s, at, tt_polygon_distance(corners, n, at));
        }
    }
    quarter(&s, middle, reach, 0);
    climb(&s, 0.01 * s.radius);
    if (centre) *centre = s.centre;
    return s.radius;
}
