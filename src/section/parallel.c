/* section/parallel.c - Gauss quadrature over one quadrant of an ellipse's parallel curve. The
 * variable is v, tan v = sqrt(a / b) tan u, which keeps the singularities of w off the path at
 * great flatness: 1e-10 or better to 100 : 1. */
#include "section/parallel.h"

#include <math.h>

enum { HALF = 8, NODES = 2 * HALF, PANELS = 4 };

/* Gauss-Legendre, 16 nodes: Abramowitz and Stegun, table 25.4, FROM MEMORY, checked by a test that
 * integrates to closed forms. */
static const double NODE[HALF] = {0.0950125098376374, 0.2816035507792589, 0.4580167776572274,
                                  0.6178762444026437, 0.7554044083550030, 0.8656312023878317,
                                  0.9445750230732326, 0.9894009349916499};
static const double WEIGHT[HALF] = {0.1894506104550685, 0.1826034150449236, 0.1691565193950025,
                                    0.1495959888165767, 0.1246289712555339, 0.0951585116824928,
                                    0.0622535239386479, 0.0271524594117541};

static const double QUARTER_TURN = 1.57079632679489661923;

typedef struct {
    double a, b;
} ellipse;

/** A point of the ellipse, and the du it stands for. */
typedef struct {
    double cos, sin, w, du;
} node;

static node node_of(const ellipse *e, double low, double high, int i)
{
    const double half = 0.5 * (high - low);
    const int k = i % HALF;
    const double v = low + half * (1.0 + (i < HALF ? -NODE[k] : NODE[k]));
    const double slope = sqrt(e->a / e->b);
    const double c = slope * cos(v), s = sin(v), n = hypot(c, s);
    node at = {.cos = c / n, .sin = s / n, .du = half * WEIGHT[k] * slope / (n * n)};
    at.w = hypot(e->a * at.sin, e->b * at.cos);
    return at;
}

/* Where the curve at this depth leaves the major axis: w = depth a / b. 0: at its end, untrimmed.
 */
static double trim(const ellipse *e, double depth)
{
    const double a = e->a, b = e->b;
    if (depth * a <= b * b) return 0.0;
    const double sine = sqrt((depth * a - b * b) * (depth * a + b * b));
    const double cosine = a * sqrt((b - depth) * (b + depth));
    return atan2(sqrt(a / b) * sine, cosine);
}

static void add(tt_moments *sum, double size, double x, double y)
{
    sum->size += size;
    sum->x += x * size;
    sum->y += y * size;
    sum->xx += x * x * size;
    sum->yy += y * y * size;
}

/* A point at a depth, with a stretch of the curve there, times `depths` of depth. */
static void add_at(tt_moments *sum, const ellipse *e, const node *at, double depth, double depths)
{
    const double ds = (at->w - depth * e->a * e->b / (at->w * at->w)) * at->du;
    add(sum, ds * depths, at->cos * (e->a - depth * e->b / at->w),
        at->sin * (e->b - depth * e->a / at->w));
}

/* Two Gauss points a depth are exact: the integrand is of third degree in it. */
static void add_depths(tt_moments *sum, const ellipse *e, const node *at, double depth)
{
    const double root = 0.57735026918962576451; /* 1 / sqrt(3) */
    add_at(sum, e, at, 0.5 * depth * (1.0 - root), 0.5 * depth);
    add_at(sum, e, at, 0.5 * depth * (1.0 + root), 0.5 * depth);
}

tt_strip tt_parallel_strip(double a, double b, double depth)
{
    const ellipse e = {a, b};
    const double start = trim(&e, depth);
    tt_strip strip = {.tip = depth};
    for (int i = 0; i < PANELS * NODES; i++) {
        const double from = (double)(i / NODES) / PANELS, to = (double)(i / NODES + 1) / PANELS;
        const double rest = QUARTER_TURN - start;
        const node wall = node_of(&e, start + rest * from, start + rest * to, i % NODES);
        const node gone = node_of(&e, start * from, start * to, i % NODES);
        add_depths(&strip.wall, &e, &wall, depth);
        add_depths(&strip.trimmed, &e, &gone, b * gone.w / a);
    }
    if (start > 0.0) {
        const double across = sqrt((a - b) * (a + b) * (b - depth) * (b + depth)) / b;
        strip.tip = a - across;
    }
    return strip;
}

static tt_moments line_between(const ellipse *e, double depth, double low, double high)
{
    tt_moments sum = {0};
    for (int i = 0; i < NODES; i++) {
        const node at = node_of(e, low, high, i);
        add_at(&sum, e, &at, depth, 1.0);
    }
    return sum;
}

static void add_moments(tt_moments *sum, const tt_moments *more)
{
    sum->size += more->size;
    sum->x += more->x;
    sum->y += more->y;
    sum->xx += more->xx;
    sum->yy += more->yy;
}

/* The flow q = V S / i in a wall of unit thickness, i the second moment of the line, S its first
 * moment from where the flow is nil: for a load along x the end of the major axis, along y of the
 * minor. Energy: V^2 / (2 G As) = integral q^2 / (2 G t) ds, so As = t i^2 / integral S^2 ds.
 * Strength of materials; a closed circle gives half its area. */
tt_midline tt_parallel_line(double a, double b, double depth)
{
    const ellipse e = {a, b};
    const double start = trim(&e, depth), step = (QUARTER_TURN - start) / PANELS;
    tt_midline mid = {.line = {0}};
    for (int k = 0; k < PANELS; k++) {
        const tt_moments part = line_between(&e, depth, start + k * step, start + (k + 1) * step);
        add_moments(&mid.line, &part);
    }
    tt_moments done = {0};
    double flow_x = 0.0, flow_y = 0.0;
    for (int k = 0; k < PANELS; k++) {
        const double low = start + k * step, high = low + step;
        for (int i = 0; i < NODES; i++) {
            const node at = node_of(&e, low, high, i);
            const double v = atan2(sqrt(a / b) * at.sin, at.cos);
            const tt_moments part = line_between(&e, depth, low, v);
            const double ds = (at.w - depth * a * b / (at.w * at.w)) * at.du;
            const double x = done.x + part.x, y = mid.line.y - done.y - part.y;
            flow_x += x * x * ds;
            flow_y += y * y * ds;
        }
        const tt_moments part = line_between(&e, depth, low, high);
        add_moments(&done, &part);
    }
    mid.shear_x = mid.line.xx * mid.line.xx / (mid.line.size * flow_x);
    mid.shear_y = mid.line.yy * mid.line.yy / (mid.line.size * flow_y);
    return mid;
}
