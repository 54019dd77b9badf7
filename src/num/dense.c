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

void tt_mat6_add(tt_mat6 *sum, double factor, const tt_mat6 *a)
{
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) sum->at[i][j] += factor * a->at[i][j];
    }
}

void tt_mat6_apply(const tt_mat6 *a, const double x[6], double out[6])
{
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) out[i] += a->at[i][j] * x[j];
    }
}

void tt_mat6_tapply(const tt_mat6 *a, const double x[6], double out[6])
{
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) out[j] += a->at[i][j] * x[i];
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

/* Cholesky, the lower triangle in place. */
static bool cholesky(tt_mat6 *c)
{
    for (int j = 0; j < 6; j++) {
        for (int i = j; i < 6; i++) {
            double sum = c->at[i][j];
            for (int k = 0; k < j; k++) sum -= c->at[i][k] * c->at[j][k];
            if (i == j && !(sum > 1e-13)) return false;
            c->at[i][j] = i == j ? sqrt(sum) : sum / c->at[j][j];
        }
    }
    return true;
}

static void cholesky_solve(const tt_mat6 *l, double x[6])
{
    for (int i = 0; i < 6; i++) {
        for (int k = 0; k < i; k++) x[i] -= l->at[i][k] * x[k];
        x[i] /= l->at[i][i];
    }
    for (int i = 6; i-- > 0;) {
        for (int k = i + 1; k < 6; k++) x[i] -= l->at[k][i] * x[k];
        x[i] /= l->at[i][i];
    }
}

bool tt_mat6_inverse(const tt_mat6 *a, tt_mat6 *out)
{
    tt_mat6 l;
    double scale[6];
    if (!scale_to_one(a, &l, scale) || !cholesky(&l)) return false;
    for (int j = 0; j < 6; j++) {
        double x[6] = {0};
        x[j] = 1.0;
        cholesky_solve(&l, x);
        for (int i = 0; i <= j; i++) out->at[i][j] = out->at[j][i] = scale[i] * x[i] * scale[j];
    }
    return true;
}

/* Turns rows p and q of an n by n matrix by (c, s); step and stride choose rows or columns. */
static void turn(size_t n, double *p, double *q, size_t stride, double c, double s)
{
    for (size_t k = 0; k < n; k++) {
        const double x = p[k * stride], y = q[k * stride];
        p[k * stride] = c * x - s * y;
        q[k * stride] = s * x + c * y;
    }
}

/* C. G. J. Jacobi's rotation, as in Golub & Van Loan, Matrix Computations, sec. 8.5. FROM MEMORY */
static void annihilate(size_t n, double *a, double *vectors, size_t p, size_t q)
{
    const double off = a[p * n + q];
    if (off == 0.0) return;
    const double tau = (a[q * n + q] - a[p * n + p]) / (2.0 * off);
    const double t = (tau >= 0.0 ? 1.0 : -1.0) / (fabs(tau) + sqrt(1.0 + tau * tau));
    const double c = 1.0 / sqrt(1.0 + t * t), s = t * c;
    turn(n, a + p * n, a + q * n, 1, c, s);
    turn(n, a + p, a + q, n, c, s);
    turn(n, vectors + p * n, vectors + q * n, 1, c, s);
    a[p * n + q] = a[q * n + p] = 0.0;
}

static bool diagonal_enough(size_t n, const double *a)
{
    for (size_t p = 0; p < n; p++) {
        for (size_t q = p + 1; q < n; q++) {
            if (fabs(a[p * n + q]) > 1e-16 * sqrt(fabs(a[p * n + p] * a[q * n + q]))) return false;
        }
    }
    return true;
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

void tt_jacobi(size_t n, double *a, double *values, double *vectors)
{
    enum { SWEEPS = 40 };
    memset(vectors, 0, n * n * sizeof *vectors);
    for (size_t i = 0; i < n; i++) vectors[i * n + i] = 1.0;
    for (int sweep = 0; sweep < SWEEPS && !diagonal_enough(n, a); sweep++) {
        for (size_t p = 0; p < n; p++) {
            for (size_t q = p + 1; q < n; q++) annihilate(n, a, vectors, p, q);
        }
    }
    for (size_t i = 0; i < n; i++) values[i] = a[i * n + i];
    sort_descending(n, values, vectors);
}
