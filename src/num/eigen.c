/* num/eigen.c - block (subspace) iteration with Rayleigh-Ritz in the inner product of K.
 * With A = inverse(K) M, A x = mu x and mu = 1 / lambda: the lowest lambda are the largest mu, and
 * what M does not reach has mu = 0 and stays out of the way.
 * K.-J. Bathe, Finite Element Procedures, 1996, sec. 11.6. FROM MEMORY */
#include "num/eigen.h"
#include "base/alloc.h"
#include "num/dense.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

enum { MOST_ITERATIONS = 300 };
static const double residual_limit = 1e-6;
static const double nothing = 1e-13; /* of the largest: rounding, not a direction */

typedef struct {
    const tt_sparse *k, *m;
    const tt_factor *factor;
    size_t rows, cols;  /* unknowns, vectors in the block */
    double *x, *y, *z;  /* [cols][rows]: the block; M x, then K z; inverse(K) M x */
    double *h, *q, *mu; /* projected A, its vectors and values, descending */
    double *work;       /* [rows] */
} block;

static double dot(const double *a, const double *b, size_t n)
{
    double sum = 0.0;
    for (size_t i = 0; i < n; i++) sum += a[i] * b[i];
    return sum;
}

static void subtract(double *a, double factor, const double *b, size_t n)
{
    for (size_t i = 0; i < n; i++) a[i] -= factor * b[i];
}

static void scale(double *a, double factor, size_t n)
{
    for (size_t i = 0; i < n; i++) a[i] *= factor;
}

static size_t smaller(size_t a, size_t b)
{
    return a < b ? a : b;
}

/* Fixed numbers in -1..1 without pattern: the finalizer of a 32-bit hash (MurmurHash3). FROM MEMORY
 */
static double scattered(size_t i)
{
    uint32_t h = (uint32_t)i * 0x9e3779b9u + 0x7f4a7c15u;
    h = (h ^ (h >> 16)) * 0x85ebca6bu;
    h = (h ^ (h >> 13)) * 0xc2b2ae35u;
    return (double)(h ^ (h >> 16)) / 2147483648.0 - 1.0;
}

static bool block_take(block *b, size_t cols)
{
    const size_t cells = b->rows * cols;
    b->cols = cols;
    b->x = tt_alloc(cells, sizeof(double));
    b->y = tt_alloc(cells, sizeof(double));
    b->z = tt_alloc(cells, sizeof(double));
    b->h = tt_alloc(cols * cols, sizeof(double));
    b->q = tt_alloc(cols * cols, sizeof(double));
    b->mu = tt_alloc(cols, sizeof(double));
    b->work = tt_alloc(b->rows, sizeof(double));
    if (!b->x || !b->y || !b->z || !b->h || !b->q || !b->mu || !b->work) return false;
    for (size_t i = 0; i < cells; i++) b->x[i] = scattered(i);
    return true;
}

static void block_free(block *b)
{
    tt_free(b->x);
    tt_free(b->y);
    tt_free(b->z);
    tt_free(b->h);
    tt_free(b->q);
    tt_free(b->mu);
    tt_free(b->work);
}

/* y = M x, z = inverse(K) y */
static void iterate(block *b)
{
    for (size_t c = 0; c < b->cols; c++) {
        double *y = b->y + c * b->rows;
        tt_sparse_apply(b->m, b->x + c * b->rows, y);
        tt_factor_solve(b->factor, y, b->z + c * b->rows, b->work);
    }
}

/* |A x - mu x| / mu of vector c in the norm of K: A x is z, K z is y, x' K x is one. */
static double residual(const block *b, size_t c)
{
    const double *z = b->z + c * b->rows, *y = b->y + c * b->rows;
    const double square = dot(z, y, b->rows) - b->mu[c] * b->mu[c];
    return sqrt(fmax(square, 0.0)) / b->mu[c];
}

static size_t converged(const block *b)
{
    size_t sure = 0;
    while (sure < b->cols && b->mu[sure] > 0.0) {
        /* solving leaves about 1e-15 of the largest in every vector */
        const double floor = 1e-14 * b->mu[0] / b->mu[sure];
        if (residual(b, sure) > fmax(residual_limit, floor)) break;
        sure++;
    }
    return sure;
}

/* Takes from vector c what lies along the kept ones (twice, for rounding). Its length in K. */
static double clear_of(block *b, size_t kept, double *z, double *y)
{
    for (int pass = 0; pass < 2; pass++) {
        for (size_t j = 0; j < kept; j++) {
            const double along = dot(z, b->y + j * b->rows, b->rows);
            subtract(z, along, b->z + j * b->rows, b->rows);
            subtract(y, along, b->y + j * b->rows, b->rows);
        }
    }
    return sqrt(fmax(dot(z, y, b->rows), 0.0));
}

/* z becomes orthonormal in K with y = K z; what adds no direction is left out. */
static void orthonormalize(block *b)
{
    const size_t bytes = b->rows * sizeof(double);
    double longest = 0.0;
    size_t kept = 0;
    for (size_t c = 0; c < b->cols; c++) {
        const double square = dot(b->z + c * b->rows, b->y + c * b->rows, b->rows);
        longest = fmax(longest, sqrt(fmax(square, 0.0)));
    }
    for (size_t c = 0; c < b->cols; c++) {
        double *z = b->z + kept * b->rows, *y = b->y + kept * b->rows;
        if (kept != c) {
            memcpy(z, b->z + c * b->rows, bytes);
            memcpy(y, b->y + c * b->rows, bytes);
        }
        const double length = clear_of(b, kept, z, y);
        if (!(length > nothing * longest)) continue;
        scale(z, 1.0 / length, b->rows);
        scale(y, 1.0 / length, b->rows);
        kept++;
    }
    b->cols = kept;
}

/* Rayleigh-Ritz: h = z' M z, then x = z q. */
static void project(block *b)
{
    const size_t n = b->cols;
    for (size_t j = 0; j < n; j++) {
        tt_sparse_apply(b->m, b->z + j * b->rows, b->work);
        for (size_t i = 0; i <= j; i++) {
            b->h[i * n + j] = b->h[j * n + i] = dot(b->z + i * b->rows, b->work, b->rows);
        }
    }
    tt_jacobi(n, b->h, b->mu, b->q);
    memset(b->x, 0, n * b->rows * sizeof(double));
    for (size_t j = 0; j < n; j++) {
        for (size_t i = 0; i < n; i++) {
            subtract(b->x + j * b->rows, -b->q[j * n + i], b->z + i * b->rows, b->rows);
        }
    }
}

static tt_status give(const block *b, size_t sure, bool all, tt_eigen *out)
{
    while (out->n < b->cols && b->mu[out->n] > nothing * b->mu[0]) out->n++;
    out->sure = smaller(sure, out->n);
    out->all = all;
    out->value = tt_alloc(out->n, sizeof *out->value);
    out->shape = tt_alloc(out->n * b->rows, sizeof *out->shape);
    if (!out->value || !out->shape) return TT_E_NOMEM;
    for (size_t i = 0; i < out->n; i++) out->value[i] = 1.0 / b->mu[i];
    memcpy(out->shape, b->x, out->n * b->rows * sizeof *out->shape);
    return TT_OK;
}

/* The block is as good as all there is when M fills less than the block, or the block everything.
 */
static tt_status converge(block *b, size_t wanted, tt_eigen *out)
{
    const size_t width = b->cols;
    for (int i = 0; i < MOST_ITERATIONS; i++) {
        iterate(b);
        const size_t sure = i > 0 ? converged(b) : 0;
        size_t real = 0;
        while (i > 0 && real < b->cols && b->mu[real] > nothing * b->mu[0]) real++;
        const bool all = real < width || width == b->rows;
        if (i > 0 && sure >= smaller(wanted, real)) return give(b, sure, all && sure >= real, out);
        orthonormalize(b);
        project(b);
    }
    return TT_E_NOT_CONVERGED;
}

tt_status tt_eigen_lowest(const tt_sparse *k, const tt_factor *factor, const tt_sparse *m,
                          size_t wanted, tt_eigen *out)
{
    block b = {.k = k, .m = m, .factor = factor, .rows = (size_t)k->n};
    const size_t width = wanted < 8 ? wanted + 8 : 2 * wanted;
    *out = (tt_eigen){0};
    tt_status status = TT_E_NOMEM;
    if (block_take(&b, smaller(width, b.rows))) status = converge(&b, wanted, out);
    block_free(&b);
    return status;
}

void tt_eigen_free(tt_eigen *eigen)
{
    tt_free(eigen->value);
    tt_free(eigen->shape);
    *eigen = (tt_eigen){0};
}

/* J. J. Sylvester's law of inertia: D of K - shift M has as many negative entries as there are
 * eigenvalues below the shift. */
static tt_status count_below(const tt_sparse *k, const tt_sparse *m, tt_sturm *proof)
{
    tt_sparse shifted = {0};
    tt_factor factor = {0};
    tt_status status = tt_sparse_sum(k, -proof->shift, m, &shifted);
    if (status == TT_OK) status = tt_factor_of(&shifted, &factor);
    if (status == TT_OK) proof->counted = tt_factor_negative(&factor);
    tt_factor_free(&factor);
    tt_sparse_free(&shifted);
    return status;
}

tt_status tt_sturm_prove(const tt_sparse *k, const tt_sparse *m, const double *values, size_t n,
                         double shift, tt_sturm *proof)
{
    *proof = (tt_sturm){.shift = shift};
    tt_status status = count_below(k, m, proof);
    for (int i = 0; i < 4 && status == TT_E_ILL_CONDITIONED; i++) {
        proof->shift *= 1.000001;
        status = count_below(k, m, proof);
    }
    for (size_t i = 0; i < n; i++) proof->found += values[i] < proof->shift;
    if (status == TT_E_NOMEM) return status;
    return status == TT_OK && proof->counted == proof->found ? TT_OK : TT_E_NOT_CONVERGED;
}
