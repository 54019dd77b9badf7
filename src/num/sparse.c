/* num/sparse.c - assembly of sparse symmetric matrices from terms, and their products. */
#include "num/sparse.h"
#include "base/alloc.h"

#include <string.h>

typedef struct {
    int index;
    double value;
} cell;

typedef struct {
    cell *by_row, *by_col;
    int *row_start, *col_start; /* [n + 2]: filled one place ahead, then shifted by use */
} sorter;

static void count(const tt_entries *entries, int n, int *start)
{
    for (int i = 0; i < n; i++) start[i + 2]++; /* the diagonal, always there */
    for (size_t e = 0; e < entries->n; e++) {
        const tt_entry *t = &entries->at[e];
        start[t->row + 2]++;
        if (t->row != t->col) start[t->col + 2]++;
    }
    for (int i = 0; i < n; i++) start[i + 2] += start[i + 1];
}

static void put(cell *cells, int *start, int bucket, int index, double value)
{
    cells[start[bucket + 1]++] = (cell){index, value};
}

/* By rows first, then by columns: within a column the rows then ascend, equal ones in the order in
 * which they were given. */
static void sort(const tt_entries *entries, int n, sorter *s)
{
    for (int i = 0; i < n; i++) put(s->by_row, s->row_start, i, i, 0.0);
    for (size_t e = 0; e < entries->n; e++) {
        const tt_entry *t = &entries->at[e];
        put(s->by_row, s->row_start, t->row, t->col, t->value);
        if (t->row != t->col) put(s->by_row, s->row_start, t->col, t->row, t->value);
    }
    for (int i = 0; i < n; i++) {
        for (int k = s->row_start[i]; k < s->row_start[i + 1]; k++) {
            put(s->by_col, s->col_start, s->by_row[k].index, i, s->by_row[k].value);
        }
    }
}

/* Adds up equal places. */
static void merge(const sorter *s, tt_sparse *out)
{
    int m = 0;
    for (int j = 0; j < out->n; j++) {
        out->start[j] = m;
        for (int k = s->col_start[j]; k < s->col_start[j + 1]; k++) {
            const cell c = s->by_col[k];
            if (m > out->start[j] && out->row[m - 1] == c.index) {
                out->value[m - 1] += c.value;
            } else {
                out->row[m] = c.index;
                out->value[m++] = c.value;
            }
        }
    }
    out->start[out->n] = m;
}

static tt_status room(int n, size_t nonzeros, tt_sparse *out)
{
    *out = (tt_sparse){.n = n};
    out->start = tt_alloc((size_t)n + 1, sizeof *out->start);
    out->row = tt_realloc(NULL, nonzeros, sizeof *out->row); /* all of it will be filled */
    out->value = tt_realloc(NULL, nonzeros, sizeof *out->value);
    if (out->start && out->row && out->value) return TT_OK;
    tt_sparse_free(out);
    return TT_E_NOMEM;
}

tt_status tt_sparse_of(const tt_entries *entries, int n, tt_sparse *out)
{
    const size_t most = 2 * entries->n + (size_t)n, starts = (size_t)n + 2;
    sorter s = {tt_realloc(NULL, most, sizeof(cell)), tt_realloc(NULL, most, sizeof(cell)),
                tt_alloc(starts, sizeof(int)), tt_alloc(starts, sizeof(int))};
    tt_status status = room(n, most, out);
    if (!s.by_row || !s.by_col || !s.row_start || !s.col_start) status = TT_E_NOMEM;
    if (status == TT_OK) {
        count(entries, n, s.row_start);
        memcpy(s.col_start, s.row_start, starts * sizeof(int));
        sort(entries, n, &s);
        merge(&s, out);
    } else {
        tt_sparse_free(out);
    }
    tt_free(s.by_row);
    tt_free(s.by_col);
    tt_free(s.row_start);
    tt_free(s.col_start);
    return status;
}

void tt_sparse_free(tt_sparse *matrix)
{
    tt_free(matrix->start);
    tt_free(matrix->row);
    tt_free(matrix->value);
    *matrix = (tt_sparse){0};
}

/* One column of a + factor * b at place m of out; the place after it is returned. */
static int sum_column(const tt_sparse *a, double factor, const tt_sparse *b, int j, tt_sparse *out,
                      int m)
{
    int p = a->start[j], q = b->start[j];
    while (p < a->start[j + 1] || q < b->start[j + 1]) {
        const int r = p < a->start[j + 1] ? a->row[p] : a->n;
        const int s = q < b->start[j + 1] ? b->row[q] : b->n;
        out->row[m] = r < s ? r : s;
        out->value[m] = 0.0;
        if (r <= s) out->value[m] += a->value[p++];
        if (s <= r) out->value[m] += factor * b->value[q++];
        m++;
    }
    return m;
}

tt_status tt_sparse_sum(const tt_sparse *a, double factor, const tt_sparse *b, tt_sparse *out)
{
    const tt_status status = room(a->n, (size_t)(a->start[a->n] + b->start[b->n]), out);
    if (status != TT_OK) return status;
    for (int j = 0; j < a->n; j++) {
        out->start[j + 1] = sum_column(a, factor, b, j, out, out->start[j]);
    }
    return TT_OK;
}

double tt_sparse_diagonal(const tt_sparse *matrix, int unknown)
{
    int k = matrix->start[unknown];
    while (matrix->row[k] != unknown) k++;
    return matrix->value[k];
}

void tt_sparse_apply(const tt_sparse *matrix, const double *x, double *out)
{
    for (int j = 0; j < matrix->n; j++) {
        double sum = 0.0;
        for (int k = matrix->start[j]; k < matrix->start[j + 1]; k++) {
            sum += matrix->value[k] * x[matrix->row[k]];
        }
        out[j] = sum;
    }
}

void tt_sparse_apply_sides(const tt_sparse *matrix, tt_sides *x, tt_sides *out)
{
    for (int j = 0; j < matrix->n; j++) {
        tt_sides sum = {0};
        for (int k = matrix->start[j]; k < matrix->start[j + 1]; k++) {
            const double *at = x[matrix->row[k]];
            for (int s = 0; s < TT_SIDES; s++) sum[s] += matrix->value[k] * at[s];
        }
        memcpy(out[j], sum, sizeof sum);
    }
}
