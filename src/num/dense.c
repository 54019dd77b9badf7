/* num/dense.c - six by six products and inverse; eigenpairs of a small symmetric matrix. */
#include "num/dense.h"

#include <math.h>
#include <string.h>

tt_mat6 tt_mat6_mul(const tt_mat6 *a, const tt_mat6 *b)
{
    tt_mat6 c = {0};
    for (int i = 0; i < 6; i++) {
        for (int k = 0; k < 6; k++) {
            for (int j = 0; j < 6; j++) c.at[i][j] += a->at[i][k] * b->at[k][j];
        }
    }
    return c;
}

static tt_mat6 transposed(const tt_mat6 *a)
{
    tt_mat6 t;
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) t.at[i][j] = a->at[j][i];
    }
    return t;
}

tt_mat6 tt_mat6_tmul(const tt_mat6 *a, const tt_mat6 *b)
{
    const tt_mat6 t = transposed(a);
    return tt_mat6_mul(&t, b);
}

tt_mat6 tt_mat6_mult(const tt_mat6 *a, const tt_mat6 *b)
{
    const tt_mat6 t = transposed(b);
    return tt_mat6_mul(a, &t);
}

void tt_mat6_add(tt_mat6 *restrict sum, double factor, const tt_mat6 *restrict a)
{
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) sum->at[i][j] += factor * a->at[i][j];
    }
}

void tt_mat6_apply(const tt_mat6 *a, const double x[6], double out[6])
{
    for (int i = 0; i < 6; i++) {
        double sum = out[i];
        for (int j = 0; j < 6; j++) sum += a->at[i][j] * x[j];
        out[i] = sum;
    }
}

void tt_mat6_tapply(const tt_mat6 *a, const double x[6], double out[6])
{
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) out[j] += a->at[i][j] * x[i];
    }
}

static void turn_pair(double *y, double *z, double c, double s)
{
    const double was = *y;
    *y = c * was - s * *z;
    *z = s * was + c * *z;
}

void tt_mat6_turn(tt_mat6 *m, double c, double s)
{
    for (int a = 1; a < 6; a += 3) {
        for (int i = 0; i < 6; i++) turn_pair(&m->at[a][i], &m->at[a + 1][i], c, s);
        for (int i = 0; i < 6; i++) turn_pair(&m->at[i][a], &m->at[i][a + 1], c, s);
    }
}

/* Scales the diagonal to one; a row of infinite diagonal becomes a row of the unit matrix. */
static bool scale_to_one(const tt_mat6 *a, tt_mat6 *c, double scale[6])
{
    for (int i = 0; i < 6; i++) {
        if (!(a->at[i][i] > 0.0)) return false;
        scale[i] = 1.0 / sqrt(a->at[i][i]); /* nil of an infinite one */
    }
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) {
            const bool rigid = scale[i] == 0.0 || scale[j] == 0.0;
            c->at[i][j] = i == j ? 1.0 : rigid ? 0.0 : scale[i] * a->at[i][j] * scale[j];
        }
    }
    return true;
}

/* Cholesky, the lower triangle in place; on the diagonal the inverse of what stands there. */
static bool cholesky(tt_mat6 *c)
{
    for (int j = 0; j < 6; j++) {
        for (int i = j; i < 6; i++) {
            double sum = c->at[i][j];
            for (int k = 0; k < j; k++) sum -= c->at[i][k] * c->at[j][k];
            if (i == j && !(sum > 1e-13)) return false;
            c->at[i][j] = i == j ? 1.0 / sqrt(sum) : sum * c->at[j][j];
        }
    }
    return true;
}

/* row -= factor times done. */
static void take(double *restrict row, double factor, const double *restrict done)
{
    for (int j = 0; j < 6; j++) row[j] -= factor * done[j];
}

static void stretch(double *row, double factor)
{
    for (int j = 0; j < 6; j++) row[j] *= factor;
}

/* Of six right sides together. */
static void cholesky_solve(const tt_mat6 *l, tt_mat6 *x)
{
    for (int i = 0; i < 6; i++) {
        for (int k = 0; k < i; k++) take(x->at[i], l->at[i][k], x->at[k]);
        stretch(x->at[i], l->at[i][i]);
    }
    for (int i = 6; i-- > 0;) {
        for (int k = i + 1; k < 6; k++) take(x->at[i], l->at[k][i], x->at[k]);
        stretch(x->at[i], l->at[i][i]);
    }
}

bool tt_mat6_inverse(const tt_mat6 *a, tt_mat6 *out)
{
    tt_mat6 l, x = {{{1}, {0, 1}, {0, 0, 1}, {0, 0, 0, 1}, {0, 0, 0, 0, 1}, {0, 0, 0, 0, 0, 1}}};
    double scale[6];
    if (!scale_to_one(a, &l, scale) || !cholesky(&l)) return false;
    cholesky_solve(&l, &x);
    for (int j = 0; j < 6; j++) {
        for (int i = 0; i <= j; i++)
            out->at[i][j] = out->at[j][i] = scale[i] * x.at[i][j] * scale[j];
    }
    return true;
}

static double dot(const double *a, const double *b, size_t n)
{
    double sum = 0.0;
    for (size_t i = 0; i < n; i++) sum += a[i] * b[i];
    return sum;
}

/* x becomes v with (1 - v v') x along the first axis; what stands there afterwards is returned.
 * A. S. Householder's mirror, as in Golub & Van Loan, Matrix Computations, sec. 5.1. FROM MEMORY */
static double mirror(double *x, size_t n)
{
    const double length = sqrt(dot(x, x, n)), off = dot(x + 1, x + 1, n - 1);
    if (!(off > 0.0)) {
        const double first = x[0];
        memset(x, 0, n * sizeof *x);
        return first;
    }
    const double to = x[0] > 0.0 ? -length : length;
    x[0] -= to;
    const double unit = sqrt(2.0 / (x[0] * x[0] + off));
    for (size_t i = 0; i < n; i++) x[i] *= unit;
    return to;
}

/* (1 - v v') A (1 - v v') of the n by n matrix in rows of `step`: A - v w' - w v', with p = A v and
 * w = p - v (v' p) / 2. */
static void reflect(double *a, size_t step, size_t n, const double *v, double *w)
{
    for (size_t i = 0; i < n; i++) w[i] = dot(a + i * step, v, n);
    const double half = 0.5 * dot(v, w, n);
    for (size_t i = 0; i < n; i++) w[i] -= half * v[i];
    for (size_t i = 0; i < n; i++) {
        for (size_t j = 0; j < n; j++) a[i * step + j] -= v[i] * w[j] + w[i] * v[j];
    }
}

/* a = Q T Q' with T of three diagonals: d on the diagonal, e[i] between i and i + 1, which ends up
 * at the start of a. The rows of vectors become the columns of Q. */
static void to_three_diagonals(size_t n, double *a, double *d, double *vectors)
{
    for (size_t k = 0; k + 1 < n; k++) {
        double *v = a + k * n + k + 1;
        d[k] = a[k * n + k];
        a[k * n + k] = mirror(v, n - k - 1);
        reflect(a + (k + 1) * (n + 1), n, n - k - 1, v, vectors);
    }
    if (n > 0) d[n - 1] = a[n * n - 1];
    memset(vectors, 0, n * n * sizeof *vectors);
    for (size_t i = 0; i < n; i++) vectors[i * n + i] = 1.0;
    for (size_t k = n; k-- > 1;) {
        const double *v = a + (k - 1) * n + k;
        for (size_t i = k; i < n; i++) {
            double *row = vectors + i * n + k;
            const double along = dot(v, row, n - k);
            for (size_t j = 0; j < n - k; j++) row[j] -= along * v[j];
        }
    }
    for (size_t k = 0; k + 1 < n; k++) a[k] = a[k * n + k];
}

/* Turns two rows: p becomes c p - s q, q becomes s p + c q. */
static void turn(size_t n, double *p, double *q, double c, double s)
{
    for (size_t k = 0; k < n; k++) {
        const double x = p[k], y = q[k];
        p[k] = c * x - s * y;
        q[k] = s * x + c * y;
    }
}

/* One implicit QL step on the part l..m that hangs together, shifted by the eigenvalue of the two
 * by two at its top. H. Bowdler, R. S. Martin, C. Reinsch, J. H. Wilkinson, Numerische Mathematik
 * 11, 1968. FROM MEMORY */
static void ql_step(size_t n, size_t l, size_t m, double *d, double *e, double *vectors)
{
    const double half = (d[l + 1] - d[l]) / (2.0 * e[l]), root = hypot(half, 1.0);
    double g = d[m] - d[l] + e[l] / (half + (half < 0.0 ? -root : root));
    double s = 1.0, c = 1.0, p = 0.0;
    for (size_t i = m; i-- > l;) {
        const double f = s * e[i], b = c * e[i], r = hypot(f, g);
        if (i + 1 < m) e[i + 1] = r;
        if (r == 0.0) { /* it falls apart here */
            d[i + 1] -= p;
            return;
        }
        s = f / r;
        c = g / r;
        g = d[i + 1] - p;
        const double t = (d[i] - g) * s + 2.0 * c * b;
        p = s * t;
        d[i + 1] = g + p;
        g = c * t - b;
        turn(n, vectors + i * n, vectors + (i + 1) * n, c, s);
    }
    d[l] -= p;
    e[l] = g;
}

/* The last of the rows that hang together with row l. */
static size_t end_of_part(size_t n, size_t l, const double *d, const double *e)
{
    size_t m = l;
    while (m + 1 < n && fabs(e[m]) > 1e-16 * (fabs(d[m]) + fabs(d[m + 1]))) m++;
    return m;
}

static void swap(double *a, double *b, size_t n)
{
    for (size_t k = 0; k < n; k++) {
        const double held = a[k];
        a[k] = b[k];
        b[k] = held;
    }
}

static void sort_descending(size_t n, double *values, double *vectors)
{
    for (size_t i = 0; i + 1 < n; i++) {
        size_t best = i;
        for (size_t j = i + 1; j < n; j++) {
            if (values[j] > values[best]) best = j;
        }
        if (best == i) continue;
        swap(values + i, values + best, 1);
        swap(vectors + i * n, vectors + best * n, n);
    }
}

void tt_eigenpairs(size_t n, double *a, double *values, double *vectors)
{
    enum { STEPS = 60 };
    to_three_diagonals(n, a, values, vectors);
    for (size_t l = 0; l < n; l++) {
        for (int i = 0; i < STEPS; i++) {
            const size_t m = end_of_part(n, l, values, a);
            if (m == l) break;
            ql_step(n, l, m, values, a, vectors);
        }
    }
    sort_descending(n, values, vectors);
}

/* Four sums side by side, as the machine may add them. */
double tt_product(const double *a, const double *b, size_t n)
{
    double sum[4] = {0};
    size_t i = 0;
    for (; i + 4 <= n; i += 4) {
        for (size_t k = 0; k < 4; k++) sum[k] += a[i + k] * b[i + k];
    }
    for (; i < n; i++) sum[0] += a[i] * b[i];
    return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}
