/* section/parallel.c - Gauss quadrature over one quadrant of an ellipse's parallel curve. The angle
 * is v, tan v = sqrt(a / b) tan u, which keeps the singularities of w off the path at great
 * flatness, and the variable h = tan(v / 2), 0 to 1, with which its sine and cosine are rational:
 * 1e-10 or better to 100 : 1. */
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

/* A limb's ellipse needs one panel of NODES nodes, a blade's four. */
static int panels_of(double a, double b)
{
    return a <= 1.5 * b ? 1 : a <= 4.0 * b ? 2 : 4;
}

static tt_ellipse_node node_at(double a, double b, double slope, double h, double dh)
{
    const double dv = 2.0 * dh / (1.0 + h * h);
    const double c = slope * (1.0 - h * h) / (1.0 + h * h), s = 2.0 * h / (1.0 + h * h);
    const double n = sqrt(c * c + s * s);
    tt_ellipse_node at = {.h = h, .cos = c / n, .sin = s / n, .du = dv * slope / (n * n)};
    const double across = a * at.sin, along = b * at.cos;
    at.w = sqrt(across * across + along * along);
    return at;
}

/* Of panels * NODES nodes between two h, in rising order. */
static tt_ellipse_node node_of(double a, double b, double slope, double low, double half, int i)
{
    const int k = i % NODES, out = k < HALF ? HALF - 1 - k : k - HALF, panel = i / NODES;
    const double middle = low + half * (1 + 2 * panel);
    const double h = middle + half * (k < HALF ? -NODE[out] : NODE[out]);
    return node_at(a, b, slope, h, half * WEIGHT[out]);
}

static void fill(tt_quadrant *q, double low)
{
    const int panels = panels_of(q->a, q->b);
    q->low = low;
    q->n = panels * NODES;
    for (int i = 0; i < q->n; i++) {
        q->node[i] = node_of(q->a, q->b, q->slope, low, 0.5 * (1.0 - low) / panels, i);
    }
}

void tt_quadrant_of(double a, double b, tt_quadrant *q)
{
    q->a = a;
    q->b = b;
    q->slope = sqrt(a / b);
    fill(q, 0.0);
}

/* Where the curve at this depth leaves the major axis: w = depth a / b. 0: at its end, untrimmed.
 */
static double trim(const tt_quadrant *e, double depth)
{
    const double a = e->a, b = e->b;
    if (depth * a <= b * b) return 0.0;
    const double sine = sqrt((depth * a - b * b) * (depth * a + b * b));
    const double across = sqrt(a / b) * sine, along = a * sqrt((b - depth) * (b + depth));
    return across / (sqrt(across * across + along * along) + along);
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
static double stretch(const tt_quadrant *e, const tt_ellipse_node *at, double depth)
{
    return (at->w - depth * e->a * e->b / (at->w * at->w)) * at->du;
}

/* A point at a depth, with a stretch of the curve there, times `depths` of depth. */
static void add_at(tt_moments *sum, const tt_quadrant *e, const tt_ellipse_node *at, double depth,
                   double depths)
{
    add(sum, stretch(e, at, depth) * depths, at->cos * (e->a - depth * e->b / at->w),
        at->sin * (e->b - depth * e->a / at->w));
}

/* Two Gauss points a depth are exact: the integrand is of third degree in it. */
static void add_depths(tt_moments *sum, const tt_quadrant *e, const tt_ellipse_node *at,
                       double depth)
{
    add_at(sum, e, at, 0.5 * depth * (1.0 - ROOT), 0.5 * depth);
    add_at(sum, e, at, 0.5 * depth * (1.0 + ROOT), 0.5 * depth);
}

/* The nodes from where the curve at this depth begins: the quadrant's own when it is not trimmed.
 */
static const tt_quadrant *from_start(const tt_quadrant *q, double depth, tt_quadrant *own)
{
    const double start = trim(q, depth);
    if (start <= 0.0) return q;
    own->a = q->a;
    own->b = q->b;
    own->slope = q->slope;
    fill(own, start);
    return own;
}

tt_strip tt_parallel_strip(const tt_quadrant *q, double depth)
{
    tt_quadrant own;
    const tt_quadrant *full = from_start(q, depth, &own);
    const double a = q->a, b = q->b;
    tt_strip strip = {.tip = depth};
    for (int i = 0; i < full->n; i++) add_depths(&strip.wall, q, &full->node[i], depth);
    if (full->low <= 0.0) return strip;
    for (int i = 0; i < q->n; i++) {
        const tt_ellipse_node at =
            node_of(a, b, q->slope, 0.0, 0.5 * full->low / (q->n / NODES), i);
        add_depths(&strip.trimmed, q, &at, b * at.w / a);
    }
    strip.tip = a - sqrt((a - b) * (a + b) * (b - depth) * (b + depth)) / b;
    return strip;
}

/* Two Gauss points between neighbours among the nodes: 1e-9 of the whole. */
static void add_stretch(tt_moments *sum, const tt_quadrant *e, double depth, double from, double to)
{
    const double middle = 0.5 * (from + to), half = 0.5 * (to - from);
    const tt_ellipse_node one = node_at(e->a, e->b, e->slope, middle - ROOT * half, half);
    const tt_ellipse_node other = node_at(e->a, e->b, e->slope, middle + ROOT * half, half);
    add_at(sum, e, &one, depth, 1.0);
    add_at(sum, e, &other, depth, 1.0);
}

tt_moments tt_parallel_line(const tt_quadrant *q, double depth)
{
    tt_quadrant own;
    tt_moments line = {0};
    const tt_quadrant *full = from_start(q, depth, &own);
    for (int i = 0; i < full->n; i++) add_at(&line, q, &full->node[i], depth, 1.0);
    return line;
}

/* The flow q = V S / i in a wall of unit thickness, i the second moment of the line, S its first
 * moment from where the flow is nil: for a load along x the end of the major axis, along y of the
 * minor. Energy: V^2 / (2 G As) = integral q^2 / (2 G t) ds, so As = t i^2 / integral S^2 ds.
 * Strength of materials; a closed circle gives half its area. */
tt_shear_flow tt_parallel_flow(const tt_quadrant *q, double depth, const tt_moments *line)
{
    tt_quadrant own;
    const tt_quadrant *full = from_start(q, depth, &own);
    tt_moments done = {0};
    double reached = full->low, flow_x = 0.0, flow_y = 0.0;
    for (int i = 0; i < full->n; i++) {
        const tt_ellipse_node *at = &full->node[i];
        add_stretch(&done, q, depth, reached, at->h);
        reached = at->h;
        const double ds = stretch(q, at, depth), rest = line->y - done.y;
        flow_x += done.x * done.x * ds;
        flow_y += rest * rest * ds;
    }
    return (tt_shear_flow){line->xx * line->xx / (line->size * flow_x),
                           line->yy * line->yy / (line->size * flow_y)};
}
