/* num/sparse.h - sparse symmetric matrices: assembly, L D L' factors with the signs of D kept,
 * solution with one step of refinement. Both triangles are stored, by columns, rows ascending. */
#ifndef TT_NUM_SPARSE_H
#define TT_NUM_SPARSE_H

#include "tiptoe/status.h"

#include <stddef.h>

/** A term of a matrix; off the diagonal it stands for (row, col) and (col, row). Terms add up. */
typedef struct {
    int row, col;
    double value;
} tt_entry;

typedef struct {
    tt_entry *at;
    size_t n, cap;
} tt_entries; /* see base/list.h */

typedef struct {
    int n;         /* unknowns */
    int *start;    /* [n + 1] */
    int *row;      /* [start[n]] */
    double *value; /* [start[n]] */
} tt_sparse;

/** TT_E_NOMEM, or an n by n matrix with every diagonal entry present. out is overwritten. */
tt_status tt_sparse_of(const tt_entries *entries, int n, tt_sparse *out);
/** a + factor * b, the same size. */
tt_status tt_sparse_sum(const tt_sparse *a, double factor, const tt_sparse *b, tt_sparse *out);
void tt_sparse_free(tt_sparse *matrix);

double tt_sparse_diagonal(const tt_sparse *matrix, int unknown);
/** out = matrix * x, another array than x. */
void tt_sparse_apply(const tt_sparse *matrix, const double *x, double *out);

typedef struct {
    int n, done;        /* done < n: stopped at a pivot of exactly nil */
    int *order, *place; /* pivot k is unknown order[k]; place is the inverse */
    int *start, *parent, *count, *row;
    double *value, *pivot; /* L without its ones, and D in the order of pivots */
} tt_factor;

/** L D L' of the matrix in a fill-reducing order. TT_E_NOMEM, or TT_E_ILL_CONDITIONED when a pivot
 * is exactly nil (order and done then say which). Free it in either case. */
tt_status tt_factor_of(const tt_sparse *matrix, tt_factor *out);
void tt_factor_free(tt_factor *factor);

/** The unknown of the first pivot (in elimination order) that is not above `limit` times its own
 *  diagonal; -1 when all are. */
int tt_factor_weak(const tt_factor *factor, const tt_sparse *matrix, double limit);
/** How many pivots are negative: the number of negative eigenvalues (Sylvester). */
size_t tt_factor_negative(const tt_factor *factor);

/** x = inverse * b; work: [n], another array; b may be x. */
void tt_factor_solve(const tt_factor *factor, const double *b, double *x, double *work);

/** Several right-hand sides together: side s of unknown i stands at [i][s]. Each gets the bits that
 *  it would get alone. */
enum { TT_SIDES = 4 };
typedef double tt_sides[TT_SIDES];
/** x becomes inverse * x; work: [n]. */
void tt_factor_solve_sides(const tt_factor *factor, tt_sides *x, tt_sides *work);
/** out = matrix * x, another array than x. */
void tt_sparse_apply_sides(const tt_sparse *matrix, tt_sides *x, tt_sides *out);

/** As tt_factor_solve with one step of refinement on a residual in long double. moved (NULL: not
 * wanted): the largest change of an x over the largest x. b must not be x. */
tt_status tt_sparse_solve(const tt_sparse *matrix, const tt_factor *factor, const double *b,
                          double *x, double *moved);

#endif
