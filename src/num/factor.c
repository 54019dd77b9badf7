/* num/factor.c - L D L' with the approximate minimum degree order, solution and refinement.
 * LDL and AMD work in arrays given to them here, so that all memory goes through base/alloc.h. */
#include "num/sparse.h"
#include "base/alloc.h"

#include <amd.h>
#include <ldl.h>
#include <math.h>
#include <string.h>

/* The pattern without its diagonal, as amd_2 wants it; returns its length. */
static int pattern(const tt_sparse *a, int *start, int *length, int *index)
{
    int m = 0;
    for (int j = 0; j < a->n; j++) {
        start[j] = m;
        for (int k = a->start[j]; k < a->start[j + 1]; k++) {
            if (a->row[k] != j) index[m++] = a->row[k];
        }
        length[j] = m - start[j];
    }
    return m;
}

static tt_status choose_order(const tt_sparse *a, int *order)
{
    const int n = a->n, spare = a->start[n] + a->start[n] / 5 + n + 1;
    const size_t each = (size_t)n;
    int *w = tt_alloc(8 * each, sizeof *w);
    int *index = tt_alloc((size_t)spare, sizeof *index);
    if (w && index) {
        const int used = pattern(a, w, w + each, index);
        amd_2(n, w, index, w + each, spare, used, w + 2 * each, w + 3 * each, order, w + 4 * each,
              w + 5 * each, w + 6 * each, w + 7 * each, NULL, NULL);
    }
    const tt_status status = w && index ? TT_OK : TT_E_NOMEM;
    tt_free(w);
    tt_free(index);
    return status;
}

static tt_status symbolic(const tt_sparse *a, tt_factor *f, int *flag)
{
    const tt_status status = choose_order(a, f->order);
    if (status != TT_OK) return status;
    ldl_symbolic(a->n, a->start, a->row, f->start, f->parent, f->count, flag, f->order, f->place);
    f->row = tt_alloc((size_t)f->start[a->n], sizeof *f->row);
    f->value = tt_alloc((size_t)f->start[a->n], sizeof *f->value);
    return f->row && f->value ? TT_OK : TT_E_NOMEM;
}

static tt_status numeric(const tt_sparse *a, tt_factor *f, int *flag, int *nodes, double *y)
{
    f->done = ldl_numeric(a->n, a->start, a->row, a->value, f->start, f->parent, f->count, f->row,
                          f->value, f->pivot, y, nodes, flag, f->order, f->place);
    return f->done == a->n ? TT_OK : TT_E_ILL_CONDITIONED;
}

static tt_status room(int unknowns, tt_factor *f)
{
    const size_t n = (size_t)unknowns;
    *f = (tt_factor){.n = unknowns};
    f->order = tt_alloc(n, sizeof(int));
    f->place = tt_alloc(n, sizeof(int));
    f->start = tt_alloc(n + 1, sizeof(int));
    f->parent = tt_alloc(n, sizeof(int));
    f->count = tt_alloc(n, sizeof(int));
    f->pivot = tt_alloc(n, sizeof(double));
    const int *const got[] = {f->order, f->place, f->start, f->parent, f->count};
    for (size_t i = 0; i < sizeof got / sizeof *got; i++) {
        if (!got[i]) return TT_E_NOMEM;
    }
    return f->pivot ? TT_OK : TT_E_NOMEM;
}

tt_status tt_factor_of(const tt_sparse *matrix, tt_factor *out)
{
    const size_t n = (size_t)matrix->n;
    tt_status status = room(matrix->n, out);
    if (status != TT_OK || n == 0) return status;
    int *flag = tt_alloc(n, sizeof *flag);
    int *nodes = tt_alloc(n, sizeof *nodes);
    double *y = tt_alloc(n, sizeof *y);
    if (!flag || !nodes || !y) status = TT_E_NOMEM;
    if (status == TT_OK) status = symbolic(matrix, out, flag);
    if (status == TT_OK) status = numeric(matrix, out, flag, nodes, y);
    tt_free(flag);
    tt_free(nodes);
    tt_free(y);
    return status;
}

void tt_factor_free(tt_factor *factor)
{
    tt_free(factor->order);
    tt_free(factor->place);
    tt_free(factor->start);
    tt_free(factor->parent);
    tt_free(factor->count);
    tt_free(factor->row);
    tt_free(factor->value);
    tt_free(factor->pivot);
    *factor = (tt_factor){0};
}

int tt_factor_weak(const tt_factor *factor, const tt_sparse *matrix, double limit)
{
    for (int k = 0; k < factor->done; k++) {
        const int unknown = factor->order[k];
        /* written so that what is not a number counts as weak */
        if (!(factor->pivot[k] > limit * tt_sparse_diagonal(matrix, unknown))) return unknown;
    }
    return factor->done < factor->n ? factor->order[factor->done] : -1;
}

size_t tt_factor_negative(const tt_factor *factor)
{
    size_t negative = 0;
    for (int k = 0; k < factor->done; k++) negative += factor->pivot[k] < 0.0;
    return negative;
}

void tt_factor_solve(const tt_factor *factor, const double *b, double *x, double *work)
{
    const int n = factor->n;
    for (int k = 0; k < n; k++) work[k] = b[factor->order[k]];
    ldl_lsolve(n, work, factor->start, factor->row, factor->value);
    ldl_dsolve(n, work, factor->pivot);
    ldl_ltsolve(n, work, factor->start, factor->row, factor->value);
    for (int k = 0; k < n; k++) x[factor->order[k]] = work[k];
}

static void lower_sides(const tt_factor *f, tt_sides *x)
{
    for (int j = 0; j < f->n; j++) {
        tt_sides done;
        memcpy(done, x[j], sizeof done);
        for (int k = f->start[j]; k < f->start[j + 1]; k++) {
            const double by = f->value[k];
            double *to = x[f->row[k]];
            for (int s = 0; s < TT_SIDES; s++) to[s] -= by * done[s];
        }
    }
}

static void upper_sides(const tt_factor *f, tt_sides *x)
{
    for (int j = f->n - 1; j >= 0; j--) {
        tt_sides sum;
        memcpy(sum, x[j], sizeof sum);
        for (int k = f->start[j]; k < f->start[j + 1]; k++) {
            const double *done = x[f->row[k]];
            for (int s = 0; s < TT_SIDES; s++) sum[s] -= f->value[k] * done[s];
        }
        memcpy(x[j], sum, sizeof sum);
    }
}

void tt_factor_solve_sides(const tt_factor *factor, tt_sides *x, tt_sides *work)
{
    for (int k = 0; k < factor->n; k++) memcpy(work[k], x[factor->order[k]], sizeof *work);
    lower_sides(factor, work);
    for (int k = 0; k < factor->n; k++) {
        const double pivot = factor->pivot[k];
        for (int s = 0; s < TT_SIDES; s++) work[k][s] /= pivot;
    }
    upper_sides(factor, work);
    for (int k = 0; k < factor->n; k++) memcpy(x[factor->order[k]], work[k], sizeof *work);
}

static void residual(const tt_sparse *a, const double *b, const double *x, double *out)
{
    for (int j = 0; j < a->n; j++) {
        long double sum = b[j];
        for (int k = a->start[j]; k < a->start[j + 1]; k++) {
            sum -= (long double)a->value[k] * (long double)x[a->row[k]];
        }
        out[j] = (double)sum;
    }
}

static double largest(const double *x, int n)
{
    double most = 0.0;
    for (int i = 0; i < n; i++) most = fmax(most, fabs(x[i]));
    return most;
}

tt_status tt_sparse_solve(const tt_sparse *matrix, const tt_factor *factor, const double *b,
                          double *x, double *moved)
{
    const int n = matrix->n;
    double *r = tt_alloc(2 * (size_t)n, sizeof *r);
    if (!r) return TT_E_NOMEM;
    tt_factor_solve(factor, b, x, r + n);
    residual(matrix, b, x, r);
    tt_factor_solve(factor, r, r, r + n);
    for (int i = 0; i < n; i++) x[i] += r[i];
    const double size = largest(x, n);
    if (moved) *moved = size > 0.0 ? largest(r, n) / size : 0.0;
    tt_free(r);
    return TT_OK;
}
