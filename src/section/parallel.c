/* section/parallel.c - Gauss quadrature over one quadrant of an ellipse's parallel curve. The
 * variable is v, tan v = sqrt(a / b) tan u, which keeps the singularities of w off the path at
 * great flatness: 1e-10 or better to 100 : 1. */
#include "section/parallel.h"

#include <math.h>

enum { HALF = 8, NODES = 2 * HALF };

/* Gauss-Legendre, 16 nodes: Abramowitz and Stegun, table 25.4, FROM MEMORY, checked by a test that
 * integrates to closed forms. */
static const double NODE[HALF] = {0.0950125098376374, 0.2816035507792589, 0.4580167776572274,
                                  0.6178762444026437, 0.7554044083550030, 0.8656312023878317,
                                  0.9445750230732326, 0.9894009349916499};
static const double WEIGHT[HALF] = {0.1894506104550685, 0.1826034150449236, 0.1691565193950025,
                                    0.1495959888165767, 0.1246289712555339, 0.0951585116824928,
                                    0.0622535239386479, 0.0271524594117541};

static const double ROOT = 0.57735026918962576451; /* 1 / sqrt(3), two Gauss points */
static const double QUARTER_TURN = 1.57079632679489661923;

typedef struct {
    double a, b;
    int panels; /* of NODES nodes each: a limb's ellipse needs one, a blade's four */
} ellipse;

static ellipse ellipse_of(double a, double b)
{
    return (ellipse){a, b, a <= 1.5 * b ? 1 : a <= 4.0 * b ? 2 : 4};
}

/** A point of the ellipse, and the du it stands for. */
typedef struct {
    double v, cos, sin, w, du;
} node;

static node node_at(const ellipse *e, double v, double dv)
{
    const double slope = sqrt(e->a / e->b);
    const double c = slope * cos(v), s = sin(v), n = sqrt(c * c + s * s);
    node at = {.v = v, .cos = c / n, .sin = s / n, .du = dv * slope / (n * n)};
    const double across = e->a * at.sin, along = e->b * at.cos;
    at.w = sqrt(across * across + along * along);
    return at;
}

/* Of panels * NODES nodes between two v, in rising order. */
static node node_of(const ellipse *e, double low, double high, int i)
{
    const double half = 0.5 * (high - low) / e->panels;
    const int k = i % NODES, out = k < HALF ? HALF - 1 - k : k - HALF;
    const int panel = i / NODES;
    const double middle = low + half * (1 + 2 * panel);
    const double v = middle + half * (k < HALF ? -NODE[out] : NODE[out]);
    return node_at(e, v, half * WEIGHT[out]);
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

/* ds along the parallel curve. */
static double stretch(const ellipse *e, const node *at, double depth)
{
    return (at->w - depth * e->a * e->b / (at->w * at->w)) * at->du;
}

/* A point at a depth, with a stretch of the curve there, times `depths` of depth. */
static void add_at(tt_moments *sum, const ellipse *e, const node *at, double depth, double depths)
{
    add(sum, stretch(e, at, depth) * depths, at->cos * (e->a - depth * e->b / at->w),
        at->sin * (e->b - depth * e->a / at->w));
}

/* Two Gauss points a depth are exact: the integrand is of third degree in it. */
static void add_depths(tt_moments *sum, const ellipse *e, const node *at, double depth)
{
    add_at(sum, e, at, 0.5 * depth * (1.0 - ROOT), 0.5 * depth);
    add_at(sum, e, at, 0.5 * depth * (1.0 + ROOT), 0.5 * depth);
}

tt_strip tt_parallel_strip(double a, double b, double depth)
{
    const ellipse e = ellipse_of(a, b);
    const double start = trim(&e, depth);
    tt_strip strip = {.tip = depth};
    for (int i = 0; i < e.panels * NODES; i++) {
        const node at = node_of(&e, start, QUARTER_TURN, i);
        add_depths(&strip.wall, &e, &at, depth);
    }
    if (start <= 0.0) return strip;
    for (int i = 0; i < e.panels * NODES; i++) {
        const node at = node_of(&e, 0.0, start, i);
        add_depths(&strip.trimmed, &e, &at, b * at.w / a);
    }
    strip.tip = a - sqrt((a - b) * (a + b) * (b - depth) * (b + depth)) / b;
    return strip;
}

/* Two Gauss points between neighbours among the nodes: 1e-9 of the whole. */
static void add_stretch(tt_moments *sum, const ellipse *e, double depth, double from, double to)
{
    const double middle = 0.5 * (from + to), half = 0.5 * (to - from);
    const node one = node_at(e, middle - ROOT * half, half);
    const node other = node_at(e, middle + ROOT * half, half);
    add_at(sum, e, &one, depth, 1.0);
    add_at(sum, e, &other, depth, 1.0);
}

/* The flow q = V S / i in a wall of unit thickness, i the second moment of the line, S its first
 * moment from where the flow is nil: for a load along x the end of the major axis, along y of the
 * minor. Energy: V^2 / (2 G As) = integral q^2 / (2 G t) ds, so As = t i^2 / integral S^2 ds.
 * Strength of materials; a closed circle gives half its area. */
tt_midline tt_parallel_line(double a, double b, double depth)
{
    const ellipse e = ellipse_of(a, b);
    const double start = trim(&e, depth);
    tt_midline mid = {.line = {0}};
    for (int i = 0; i < e.panels * NODES; i++) {
        const node at = node_of(&e, start, QUARTER_TURN, i);
        add_at(&mid.line, &e, &at, depth, 1.0);
    }
    tt_moments done = {0};
    double reached = start, flow_x = 0.0, flow_y = 0.0;
    for (int i = 0; i < e.panels * NODES; i++) {
        const node at = node_of(&e, start, QUARTER_TURN, i);
        add_stretch(&done, &e, depth, reached, at.v);
        reached = at.v;
        const double ds = stretch(&e, &at, depth), rest = mid.line.y - done.y;
        flow_x += done.x * done.x * ds;
        flow_y += rest * rest * ds;
    }
    mid.shear_x = mid.line.xx * mid.line.xx / (mid.line.size * flow_x);
    mid.shear_y = mid.line.yy * mid.line.yy / (mid.line.size * flow_y);
    return mid;
}
