/* section/torsion.c - St-Venant torsion of a solid polygon by the boundary element method.
 *
 * Prandtl's function phi = psi - p with p = c^2, c the coordinate along the smaller principal
 * axis of the section, and psi harmonic, psi = p on the edge. Then J = integral of |grad phi|^2
 * = 4 I_c - closed integral of p dpsi/dn (Green's first identity), without a difference of near
 * equals for a slender section. dpsi/dn is constant on each element, elements are finer towards the
 * corners; Green's third identity at their middles gives it; integrals over elements are exact.
 * Twice as many elements and Richardson's step for an error that
 * falls with their square; what that moved is the error told: 1e-4 or better against rectangles up
 * to 10 : 1, triangle and ellipse, 2e-3 for an angle of legs 10 and 15 times as long as thick. */
#include "base/alloc.h"
#include "section/parts.h"

#include <math.h>

enum { COARSE = 160 }; /* elements round the section; more where it has more edges */

typedef struct {
    tt_vec2 a, b;
} element;

typedef struct {
    size_t n;
    element *element;
    double *matrix, *flux; /* [n * n], [n] */
    tt_vec2 way;           /* unit: c = way . place */
} job;

static double dot(tt_vec2 a, tt_vec2 b)
{
    return a.x * b.x + a.y * b.y;
}

static tt_vec2 less(tt_vec2 a, tt_vec2 b)
{
    return (tt_vec2){a.x - b.x, a.y - b.y};
}

static double length_of(tt_vec2 along)
{
    return sqrt(dot(along, along));
}

static size_t parts_of(tt_vec2 a, tt_vec2 b, double whole, size_t refined)
{
    const double length = length_of(less(b, a));
    if (length <= 1e-9 * whole) return 0;
    const double parts = floor(COARSE * length / whole + 0.5);
    return refined * (size_t)fmax(parts, 1.0);
}

/* From corner a to corner b in `parts` elements, finer towards both. */
static size_t divide(tt_vec2 a, tt_vec2 b, size_t parts, element *out)
{
    tt_vec2 last = a;
    for (size_t k = 1; k <= parts; k++) {
        const double u = 0.5 * (1.0 - cos(PI * (double)k / (double)parts));
        const tt_vec2 next = {a.x + u * (b.x - a.x), a.y + u * (b.y - a.y)};
        out[k - 1] = (element){last, k < parts ? next : b};
        last = next;
    }
    return parts;
}

/* What an element gives at a place `at`: of its flux, and of the function p on it. `self`: the
 * place is its own middle. -2 pi times Green's function is ln r. */
static void influence(const job *j, const element *e, tt_vec2 at, bool self, double *of_flux,
                      double *of_value)
{
    const tt_vec2 along = less(e->b, e->a), to = less(e->a, at);
    const double length = length_of(along);
    const tt_vec2 t = {along.x / length, along.y / length};
    const double s1 = dot(to, t), s2 = s1 + length;
    const double d = self ? 0.0 : to.x * t.y - to.y * t.x; /* (place on it - at) . outward normal */
    const double r1 = d * d + s1 * s1, r2 = d * d + s2 * s2;
    const double angle = self ? 0.0 : atan2(d * length, d * d + s1 * s2);
    const double log1 = log(r1), log2 = log(r2);
    *of_flux = -(0.5 * (s2 * log2 - s1 * log1) - length + d * angle) / (2.0 * PI);
    /* p = (foot + slope s)^2 along the element, s from the foot of the perpendicular */
    const double slope = dot(t, j->way), foot = dot(e->a, j->way) - s1 * slope;
    *of_value = -(foot * foot * angle + foot * slope * d * (log2 - log1) +
                  slope * slope * d * (length - d * angle)) /
                (2.0 * PI);
}

static void fill(job *j)
{
    for (size_t i = 0; i < j->n; i++) {
        const element *own = &j->element[i];
        const tt_vec2 at = {0.5 * (own->a.x + own->b.x), 0.5 * (own->a.y + own->b.y)};
        const double c = dot(at, j->way);
        double right = 0.5 * c * c;
        for (size_t k = 0; k < j->n; k++) {
            double of_value;
            influence(j, &j->element[k], at, i == k, &j->matrix[i * j->n + k], &of_value);
            right += of_value;
        }
        j->flux[i] = right;
    }
}

static void swap_rows(job *j, size_t a, size_t b)
{
    for (size_t c = 0; a != b && c < j->n; c++) {
        const double kept = j->matrix[a * j->n + c];
        j->matrix[a * j->n + c] = j->matrix[b * j->n + c];
        j->matrix[b * j->n + c] = kept;
    }
    const double kept = j->flux[a];
    j->flux[a] = j->flux[b];
    j->flux[b] = kept;
}

/* Gauss with partial pivoting; flux: right side in, solution out. */
static void solve(job *j)
{
    const size_t n = j->n;
    for (size_t k = 0; k < n; k++) {
        size_t best = k;
        for (size_t i = k + 1; i < n; i++) {
            if (fabs(j->matrix[i * n + k]) > fabs(j->matrix[best * n + k])) best = i;
        }
        swap_rows(j, k, best);
        for (size_t i = k + 1; i < n; i++) {
            const double factor = j->matrix[i * n + k] / j->matrix[k * n + k];
            double *row = &j->matrix[i * n];
            const double *pivot = &j->matrix[k * n];
            for (size_t c = k + 1; c < n; c++) row[c] -= factor * pivot[c];
            j->flux[i] -= factor * j->flux[k];
        }
    }
    for (size_t i = n; i-- > 0;) {
        for (size_t c = i + 1; c < n; c++) j->flux[i] -= j->matrix[i * n + c] * j->flux[c];
        j->flux[i] /= j->matrix[i * n + i];
    }
}

/* Closed integral of p dpsi/dn. */
static double energy(const job *j)
{
    double sum = 0.0;
    for (size_t i = 0; i < j->n; i++) {
        const element *e = &j->element[i];
        const double a = dot(e->a, j->way), b = dot(e->b, j->way);
        const double length = length_of(less(e->b, e->a));
        sum += j->flux[i] * length * (a * a + a * b + b * b) / 3.0;
    }
    return sum;
}

static bool with_elements(const tt_vec2 *p, size_t n, size_t refined, job *j, double *out)
{
    const double whole = tt_polygon_perimeter(p, n);
    size_t count = 0;
    for (size_t i = 0; i < n; i++) count += parts_of(p[i], p[(i + 1) % n], whole, refined);
    j->element = tt_alloc(count, sizeof *j->element);
    j->matrix = tt_alloc(count * count, sizeof *j->matrix);
    j->flux = tt_alloc(count, sizeof *j->flux);
    const bool fits = j->element && j->matrix && j->flux;
    for (size_t i = 0; fits && i < n; i++) {
        const tt_vec2 b = p[(i + 1) % n];
        j->n += divide(p[i], b, parts_of(p[i], b, whole, refined), &j->element[j->n]);
    }
    if (fits) {
        fill(j);
        solve(j);
        *out = energy(j);
    }
    tt_free(j->element);
    tt_free(j->matrix);
    tt_free(j->flux);
    return fits;
}

/* Centred, and so small that no ring of elements is of the one size at which the method fails. */
static double prepare(const tt_vec2 *corners, size_t n, tt_vec2 *out, tt_plane_moments *own)
{
    const tt_plane_moments whole = tt_polygon_moments(corners, n);
    const double scale = 1.0 / tt_polygon_perimeter(corners, n);
    for (size_t i = 0; i < n; i++)
        out[i] = (tt_vec2){scale * (corners[i].x - whole.x / whole.area),
                           scale * (corners[i].y - whole.y / whole.area)};
    *own = tt_polygon_moments(out, n);
    return scale;
}

bool tt_torsion_of_solid(const tt_vec2 *corners, size_t n, double *j, double *error)
{
    tt_vec2 p[TT_TRACE_MOST];
    tt_plane_moments own;
    const double scale = prepare(corners, n, p, &own);
    /* the axis along which the section reaches least: c is measured along it */
    const double angle = 0.5 * atan2(2.0 * own.xy, own.xx - own.yy) + 0.5 * PI;
    const tt_vec2 way = {cos(angle), sin(angle)};
    const double least =
        way.x * way.x * own.xx + 2.0 * way.x * way.y * own.xy + way.y * way.y * own.yy;
    double coarse = 0.0, fine = 0.0;
    job first = {.way = way}, second = {.way = way};
    if (!with_elements(p, n, 1, &first, &coarse) || !with_elements(p, n, 2, &second, &fine))
        return false;
    const double best = 4.0 * least - fine - (fine - coarse) / 3.0;
    *error = fabs(fine - coarse) / 3.0 / best;
    *j = best / (scale * scale * scale * scale);
    return true;
}
