/* section/flow.c - shear flow in a thin closed wall along a polygon, one thickness all round; any
 * one unit of length. A force V along y or z makes dsigma = V f(y, z) a metre of length with f
 * linear, so the flow grows by f along the wall from a value that makes its sum round nil: no
 * twist. Strength of materials. */
#include "section/parts.h"

#include <math.h>

typedef struct {
    const tt_vec2 *corners;
    size_t n;
    double length;
    tt_vec2 centre;
    double yy, zz, yz; /* of the line, about its centre */
} wall_line;

static double edge_length(const wall_line *w, size_t i)
{
    const tt_vec2 a = w->corners[i], b = w->corners[(i + 1) % w->n];
    return hypot(b.x - a.x, b.y - a.y);
}

static wall_line line_of(const tt_vec2 *corners, size_t n)
{
    wall_line w = {.corners = corners, .n = n};
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 a = corners[i], b = corners[(i + 1) % n];
        const double length = edge_length(&w, i);
        w.length += length;
        w.centre.x += length * 0.5 * (a.x + b.x);
        w.centre.y += length * 0.5 * (a.y + b.y);
    }
    w.centre.x /= w.length;
    w.centre.y /= w.length;
    for (size_t i = 0; i < n; i++) {
        const double ay = corners[i].x - w.centre.x, az = corners[i].y - w.centre.y;
        const double by = corners[(i + 1) % n].x - w.centre.x,
                     bz = corners[(i + 1) % n].y - w.centre.y;
        const double third = edge_length(&w, i) / 3.0;
        w.yy += third * (ay * ay + ay * by + by * by);
        w.zz += third * (az * az + az * bz + bz * bz);
        w.yz += third * (ay * az + by * bz + 0.5 * (ay * bz + by * az));
    }
    return w;
}

/* Where the flow is asked for along an edge: start, end and the rise of f between. */
typedef struct {
    double before, first, last, length;
} stretch;

static double flow_at(const stretch *s, double u)
{
    return s->before + s->length * u * (s->first + 0.5 * u * (s->last - s->first));
}

static stretch stretch_at(const wall_line *w, size_t i, const double f[2], double before)
{
    const tt_vec2 a = w->corners[i], b = w->corners[(i + 1) % w->n], c = w->centre;
    return (stretch){before, f[0] * (a.x - c.x) + f[1] * (a.y - c.y),
                     f[0] * (b.x - c.x) + f[1] * (b.y - c.y), edge_length(w, i)};
}

/* Of the flows of both loads along an edge, three Gauss points: exact. */
static double product_of(const stretch *a, double mean_a, const stretch *b, double mean_b)
{
    static const double at[] = {0.11270166537925831, 0.5, 0.88729833462074169};
    static const double weight[] = {5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0};
    double sum = 0.0;
    for (int k = 0; k < 3; k++)
        sum += weight[k] * (flow_at(a, at[k]) - mean_a) * (flow_at(b, at[k]) - mean_b);
    return sum * a->length;
}

static double most_of(const stretch *s, double mean)
{
    const double turn = s->first != s->last ? s->first / (s->first - s->last) : 0.0;
    const double inner = turn > 0.0 && turn < 1.0 ? turn : 0.0;
    return fmax(fmax(fabs(flow_at(s, 0.0) - mean), fabs(flow_at(s, 1.0) - mean)),
                fabs(flow_at(s, inner) - mean));
}

static double mean_of(const wall_line *w, const double f[2])
{
    double mean = 0.0, before = 0.0;
    for (size_t i = 0; i < w->n; i++) {
        const stretch s = stretch_at(w, i, f, before);
        mean += s.length * (before + s.length * (s.first / 3.0 + s.last / 6.0)) / w->length;
        before = flow_at(&s, 1.0);
    }
    return mean;
}

tt_closed_flow tt_shear_of_closed(const tt_vec2 *corners, size_t n)
{
    const wall_line w = line_of(corners, n);
    const double det = w.yy * w.zz - w.yz * w.yz;
    const double f[2][2] = {{w.zz / det, -w.yz / det}, {-w.yz / det, w.yy / det}};
    const double mean[2] = {mean_of(&w, f[0]), mean_of(&w, f[1])};
    double before[2] = {0.0, 0.0}, yy = 0.0, zz = 0.0, yz = 0.0;
    tt_closed_flow out = {0};
    for (size_t i = 0; i < n; i++) {
        const stretch s[2] = {stretch_at(&w, i, f[0], before[0]),
                              stretch_at(&w, i, f[1], before[1])};
        yy += product_of(&s[0], mean[0], &s[0], mean[0]);
        zz += product_of(&s[1], mean[1], &s[1], mean[1]);
        yz += product_of(&s[0], mean[0], &s[1], mean[1]);
        for (int k = 0; k < 2; k++) {
            out.flow[k] = fmax(out.flow[k], most_of(&s[k], mean[k]));
            before[k] = flow_at(&s[k], 1.0);
        }
    }
    /* energy of (Vy, Vz): flexibilities, of which the areas are the inverse */
    const double whole = w.length * (yy * zz - yz * yz);
    out.y = zz / whole;
    out.z = yy / whole;
    out.yz = -yz / whole;
    return out;
}
