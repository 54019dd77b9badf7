/* num/lanczos.h - the iteration behind num/eigen.h; for that module only. */
#ifndef TT_NUM_LANCZOS_H
#define TT_NUM_LANCZOS_H

#include "num/eigen.h"

/** The inner product in which vectors are orthonormal: M must be semidefinite for its own. */
typedef enum { TT_INNER_M, TT_INNER_K } tt_inner;

/** Pairs of K x = lambda M x with the largest 1 / lambda, which is positive; as
 * tt_eigen_lowest_wide. */
tt_status tt_lanczos(const tt_sparse *m, const tt_factor *factor, tt_inner inner, size_t wanted,
                     size_t width, tt_eigen *out);

#endif
