/* num/lanczos.c - block Lanczos iteration, every vector cleared of all before it. With A =
 * inverse(K) M, A x = mu x and mu = 1 / lambda: the lowest positive lambda are the largest mu, and
 * what M does not reach has mu = 0 and stays out of the way. The inner product is that of M, or,
 * where M is not semidefinite, that of K; K is never multiplied (K z is what z was solved from):
 * its terms are so uneven that rounding would drown the soft ones. G. H. Golub & C. F. Van Loan,
 * Matrix Computations, ch. on Lanczos methods. FROM MEMORY */
#include "num/lanczos.h"
#include "base/alloc.h"
#include "num/dense.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

enum { WIDEST = 64, MOST_VECTORS = 2000 };
static const double residual_limit = 1e-6;
static const double nothing = 1e-13; /* of the whole, or of the largest: rounding */

typedef struct {
    const tt_sparse *m;
    const tt_factor *factor;
    size_t rows, width;       /* unknowns; vectors that a block begins with */
    size_t n, from, cap;      /* basis: vectors, the first of its newest block, room */
    size_t coming;            /* vectors of the next block, which stand behind the basis */
    bool all;                 /* there is no next block: nothing else to be reached */
    tt_inner inner;           /* which of the two the inner product is */
    double *z, *y;            /* [cap][rows] orthonormal, and M z or K z */
    double *h;                /* [cap (cap + 1) / 2] A in the basis, upper triangle by columns */
    double r[WIDEST][WIDEST]; /* A on the newest block leads this much into the next */
    double *along;            /* [2 cap] what a vector had along those before it, and of one pass */
    size_t numbers;           /* scattered ones used */
    double *q, *mu;           /* [n][n] vectors and [n] values of h, descending */
    tt_sides *in, *out;       /* [rows] */
} lanczos;

/* a -= sum of factor[j] times vector j of `many`, eight rows at a time. */
static void subtract(double *a, size_t n, const double *factor, size_t k, const double *many)
{
    enum { ROWS = 8 };
    size_t i = 0;
    for (; i + ROWS <= n; i += ROWS) {
        double rest[ROWS];
        memcpy(rest, a + i, sizeof rest);
        for (size_t j = 0; j < k; j++) {
            for (size_t r = 0; r < ROWS; r++) rest[r] -= factor[j] * many[j * n + i + r];
        }
        memcpy(a + i, rest, sizeof rest);
    }
    for (; i < n; i++) {
        for (size_t j = 0; j < k; j++) a[i] -= factor[j] * many[j * n + i];
    }
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

static bool larger(double **at, size_t n)
{
    double *more = tt_realloc(*at, n, sizeof **at);
    if (more) *at = more;
    return more != NULL;
}

/* Room for one more block behind the basis. */
static bool reserve(lanczos *b)
{
    const size_t need = b->n + b->width;
    if (need <= b->cap) return true;
    const size_t cap = need < 32 ? 32 : 2 * need;
    if (!larger(&b->z, cap * b->rows) || !larger(&b->y, cap * b->rows) ||
        !larger(&b->h, cap * (cap + 1) / 2) || !larger(&b->along, 2 * cap)) {
        return false;
    }
    b->cap = cap;
    return true;
}

static void lanczos_free(lanczos *b)
{
    tt_free(b->z);
    tt_free(b->y);
    tt_free(b->h);
    tt_free(b->along);
    tt_free(b->q);
    tt_free(b->mu);
    tt_free(b->in);
    tt_free(b->out);
}

/* k vectors of `from`, side by side; none where there are fewer than sides. */
static void pack(const lanczos *b, const double *from, size_t k)
{
    for (size_t s = 0; s < TT_SIDES; s++) {
        for (size_t i = 0; i < b->rows; i++) b->in[i][s] = s < k ? from[s * b->rows + i] : 0.0;
    }
}

static void unpack(const lanczos *b, tt_sides *sides, size_t k, double *to)
{
    for (size_t s = 0; s < k; s++) {
        for (size_t i = 0; i < b->rows; i++) to[s * b->rows + i] = sides[i][s];
    }
}

/* z = inverse(K) y of k vectors; z and y may be one. */
static void solve(const lanczos *b, const double *y, size_t k, double *z)
{
    for (size_t c = 0; c < k; c += TT_SIDES) {
        const size_t sides = smaller(k - c, TT_SIDES);
        pack(b, y + c * b->rows, sides);
        tt_factor_solve_sides(b->factor, b->in, b->out);
        unpack(b, b->in, sides, z + c * b->rows);
    }
}

/* Takes from the vector that is to be number `place` what lies along those before it (twice, for
 * rounding); y becomes M z, or stays K z. Its length. */
static double clear_of(lanczos *b, size_t place)
{
    double *z = b->z + place * b->rows, *y = b->y + place * b->rows, *part = b->along + b->cap;
    memset(b->along, 0, place * sizeof *b->along);
    for (int pass = 0; pass < 2; pass++) {
        for (size_t j = 0; j < place; j++) {
            part[j] = tt_product(z, b->y + j * b->rows, b->rows);
            b->along[j] += part[j];
        }
        subtract(z, b->rows, part, place, b->z);
        if (b->inner == TT_INNER_K) subtract(y, b->rows, part, place, b->y);
    }
    if (b->inner == TT_INNER_M) tt_sparse_apply(b->m, z, y);
    return sqrt(fmax(tt_product(z, y, b->rows), 0.0));
}

/* What A on vector c of the newest block has along the basis, and along the block that comes. */
static void record(lanczos *b, size_t c, double length)
{
    const size_t column = b->from + c;
    memcpy(b->h + column * (column + 1) / 2, b->along, (column + 1) * sizeof *b->h);
    for (size_t j = 0; j < b->coming; j++) b->r[j][c] = b->along[b->n + j];
    b->r[b->coming][c] = length;
}

/* Of k vectors z behind the basis, those that add a direction become the block that comes. They are
 * A times the newest block, or times scattered ones: fresh, and nothing to be recorded. */
static void admit(lanczos *b, size_t k, bool fresh)
{
    b->coming = 0;
    memset(b->r, 0, b->width * sizeof *b->r);
    for (size_t c = 0; c < k; c++) {
        const size_t place = b->n + b->coming;
        double *z = b->z + place * b->rows, *y = b->y + place * b->rows;
        memmove(z, b->z + (b->n + c) * b->rows, b->rows * sizeof *z);
        memmove(y, b->y + (b->n + c) * b->rows, b->rows * sizeof *y);
        const double rest = clear_of(b, place);
        const double whole = sqrt(rest * rest + tt_product(b->along, b->along, place));
        const bool adds = place < b->rows && rest > nothing * whole; /* the space may be full */
        if (!fresh) record(b, c, adds ? rest : 0.0);
        if (!adds) continue;
        scale(z, 1.0 / rest, b->rows);
        scale(y, 1.0 / rest, b->rows);
        b->coming++;
    }
}

static void scatter(lanczos *b)
{
    double *x = b->z + b->n * b->rows, *y = b->y + b->n * b->rows;
    for (size_t i = 0; i < b->width * b->rows; i++) x[i] = scattered(b->numbers++);
    for (size_t c = 0; c < b->width; c++) tt_sparse_apply(b->m, x + c * b->rows, y + c * b->rows);
    solve(b, y, b->width, x);
    admit(b, b->width, true);
    b->all = b->coming == 0;
}

static void step(lanczos *b)
{
    b->from = b->n;
    b->n += b->coming;
}

/* A times the newest block, behind the basis. */
static void advance(const lanczos *b)
{
    const size_t k = b->n - b->from;
    const double *z = b->z + b->from * b->rows, *y = b->y + b->from * b->rows;
    double *next = b->y + b->n * b->rows;
    for (size_t c = 0; c < k && b->inner == TT_INNER_K; c++) {
        tt_sparse_apply(b->m, z + c * b->rows, next + c * b->rows);
    }
    solve(b, b->inner == TT_INNER_K ? next : y, k, b->z + b->n * b->rows);
}

/* Rayleigh-Ritz: the eigenpairs of A in the basis. */
static tt_status project(lanczos *b)
{
    const size_t n = b->n;
    if (!larger(&b->q, 2 * n * n) || !larger(&b->mu, n)) return TT_E_NOMEM;
    double *h = b->q + n * n;
    for (size_t j = 0; j < n; j++) {
        for (size_t i = 0; i <= j; i++) h[i * n + j] = h[j * n + i] = b->h[j * (j + 1) / 2 + i];
    }
    tt_eigenpairs(n, h, b->mu, b->q);
    return TT_OK;
}

/* |A x - mu x| of pair c: what leads out of the basis. */
static double residual(const lanczos *b, size_t c)
{
    const double *q = b->q + c * b->n + b->from;
    double square = 0.0;
    for (size_t j = 0; j < b->coming; j++) {
        double sum = 0.0;
        for (size_t k = 0; k < b->n - b->from; k++) sum += b->r[j][k] * q[k];
        square += sum * sum;
    }
    return sqrt(square);
}

static size_t converged(const lanczos *b)
{
    size_t sure = 0;
    while (sure < b->n && b->mu[sure] > nothing * b->mu[0] &&
           residual(b, sure) <= residual_limit * b->mu[sure]) {
        sure++;
    }
    return sure;
}

/* x = A z q, better than z q, and clear of what M does not see. */
static void sharpen(const lanczos *b, size_t sure, double *x)
{
    for (size_t c = 0; c < sure; c++) {
        double *of = x + c * b->rows;
        subtract(of, b->rows, b->q + c * b->n, b->n, b->y);
    }
    solve(b, x, sure, x);
}

/* x' K x = 1. */
static void shapes(const lanczos *b, size_t sure, double *x)
{
    if (b->inner == TT_INNER_K) {
        for (size_t c = 0; c < sure; c++) {
            subtract(x + c * b->rows, b->rows, b->q + c * b->n, b->n, b->z);
        }
        return;
    }
    sharpen(b, sure, x);
    for (size_t c = 0; c < sure; c++) {
        double *of = x + c * b->rows, square = 0.0;
        for (size_t j = 0; j < b->n; j++) {
            square -= b->q[c * b->n + j] * tt_product(of, b->y + j * b->rows, b->rows);
        }
        scale(of, 1.0 / sqrt(square), b->rows);
    }
}

static tt_status give(const lanczos *b, size_t sure, tt_eigen *out)
{
    out->all = b->all;
    out->value = tt_alloc(sure, sizeof *out->value);
    out->shape = tt_alloc(sure * b->rows, sizeof *out->shape);
    if (!out->value || !out->shape) return TT_E_NOMEM;
    out->n = out->sure = sure;
    for (size_t c = 0; c < sure; c++) out->value[c] = 1.0 / b->mu[c];
    shapes(b, sure, out->shape);
    return TT_OK;
}

static tt_status iterate(lanczos *b, size_t wanted, tt_eigen *out)
{
    size_t look = 4 * wanted; /* vectors at which to see whether it is enough */
    if (!reserve(b)) return TT_E_NOMEM;
    scatter(b);
    while (b->n < MOST_VECTORS) {
        step(b);
        if (!reserve(b)) return TT_E_NOMEM;
        advance(b);
        admit(b, b->n - b->from, false);
        if (b->coming == 0) scatter(b);
        if (!b->all && b->n < look) continue;
        if (project(b) != TT_OK) return TT_E_NOMEM;
        const size_t sure = converged(b);
        if (b->all || sure >= wanted) return give(b, sure, out);
        look = b->n + b->n / 6;
    }
    return TT_E_NOT_CONVERGED;
}

tt_status tt_lanczos(const tt_sparse *m, const tt_factor *factor, tt_inner inner, size_t wanted,
                     size_t width, tt_eigen *out)
{
    const size_t rows = (size_t)m->n;
    lanczos b = {
        .m = m, .factor = factor, .inner = inner, .rows = rows, .width = smaller(width, WIDEST)};
    *out = (tt_eigen){0};
    tt_status status = TT_E_NOMEM;
    b.in = tt_alloc(rows, sizeof *b.in);
    b.out = tt_alloc(rows, sizeof *b.out);
    if (b.in && b.out) status = iterate(&b, wanted, out);
    lanczos_free(&b);
    return status;
}
