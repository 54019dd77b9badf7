/* num/dense.h - small dense symmetric matrices: products and inverse of six by six, and all
 * eigenpairs of one of a few dozen. */
#ifndef TT_NUM_DENSE_H
#define TT_NUM_DENSE_H

#include <stdbool.h>
#include <stddef.h>

typedef struct {
    double at[6][6];
} tt_mat6;

tt_mat6 tt_mat6_mul(const tt_mat6 *a, const tt_mat6 *b);  /* a b */
tt_mat6 tt_mat6_tmul(const tt_mat6 *a, const tt_mat6 *b); /* a' b */
tt_mat6 tt_mat6_mult(const tt_mat6 *a, const tt_mat6 *b); /* a b' */
void tt_mat6_add(tt_mat6 *restrict sum, double factor, const tt_mat6 *restrict a);
void tt_mat6_apply(const tt_mat6 *a, const double x[6], double out[6]);  /* out += a x */
void tt_mat6_tapply(const tt_mat6 *a, const double x[6], double out[6]); /* out += a' x */

/** R m R', R turning y and z (the second and third of each three) about x: c y - s z, s y + c z. */
void tt_mat6_turn(tt_mat6 *m, double c, double s);

/** Inverse of a symmetric positive definite matrix whose rows may differ by any factor; an infinite
 *  diagonal gives a row and column of nil. False when not positive definite to 1e-13. */
bool tt_mat6_inverse(const tt_mat6 *a, tt_mat6 *out);

/** Sum of a[i] b[i]. */
double tt_product(const double *a, const double *b, size_t n);

/** All eigenpairs of a symmetric matrix a[n*n] (destroyed): values descending, vectors[j*n..] the
 *  unit vector of value j. */
void tt_eigenpairs(size_t n, double *a, double *values, double *vectors);

#endif
