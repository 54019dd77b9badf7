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

/* Turns rows p and q by (c, s). */
static void turn(size_t n, double *p, double *q, double c, double s)
{
    for (size_t k = 0; k < n; k++) {
        const double x = p[k], y = q[k];
        p[k] = c * x - s * y;
        q[k] = s * x + c * y;
    }
}

/* C. G. J. Jacobi's rotation, as in Golub & Van Loan, Matrix Computations, sec. 8.5. FROM MEMORY
 * False when there is nothing to take away but rounding. */
static bool annihilate(size_t n, double *a, double *vectors, size_t p, size_t q)
{
    const double off = a[p * n + q], app = a[p * n + p], aqq = a[q * n + q];
    if (!(fabs(off) > 1e-16 * sqrt(fabs(app * aqq)))) return false;
    const double tau = (aqq - app) / (2.0 * off);
    const double t = (tau >= 0.0 ? 1.0 : -1.0) / (fabs(tau) + sqrt(1.0 + tau * tau));
    const double c = 1.0 / sqrt(1.0 + t * t), s = t * c;
    turn(n, a + p * n, a + q * n, c, s);
    turn(n, vectors + p * n, vectors + q * n, c, s);
    a[p * n + p] = app - t * off;
    a[q * n + q] = aqq + t * off;
    a[p * n + q] = a[q * n + p] = 0.0;
    for (size_t k = 0; k < n; k++) { /* the columns are the rows */
        a[k * n + p] = a[p * n + k];
        a[k * n + q] = a[q * n + k];
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
    bool turned = true;
    for (int sweep = 0; sweep < SWEEPS && turned; sweep++) {
        turned = false;
        for (size_t p = 0; p < n; p++) {
            for (size_t q = p + 1; q < n; q++) turned = annihilate(n, a, vectors, p, q) || turned;
        }
    }
    for (size_t i = 0; i < n; i++) values[i] = a[i * n + i];
    sort_descending(n, values, vectors);
}
