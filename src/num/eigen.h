/* num/eigen.h - lowest eigenpairs of K x = lambda M x, K positive definite with its factors at
 * hand, M semidefinite or of any signs; and the proof by Sturm count that none was missed. */
#ifndef TT_NUM_EIGEN_H
#define TT_NUM_EIGEN_H

#include "num/sparse.h"

#include <stdbool.h>

typedef struct {
    size_t n;      /* pairs, ascending */
    size_t sure;   /* the first `sure` of them have converged: all n */
    bool all;      /* there are no others: M reaches no further */
    double *value; /* [n] lambda */
    double *shape; /* [n * unknowns], one after the other, x' K x = 1 */
} tt_eigen;

/** At least `wanted` converged pairs (fewer when the matrices have fewer, then `all`), to a
 * residual of 1e-6 in the norm of M, so about 1e-12 in lambda. Block Lanczos iteration on
 * inverse(K) M from fixed starting vectors, four of them: of a value that stands more than four
 * times some may be missed, which the proof below tells. TT_E_NOT_CONVERGED, TT_E_NOMEM; free it in
 * any case. */
tt_status tt_eigen_lowest(const tt_factor *factor, const tt_sparse *m, size_t wanted,
                          tt_eigen *out);
/** With `width` starting vectors, 64 at most. */
tt_status tt_eigen_lowest_wide(const tt_factor *factor, const tt_sparse *m, size_t wanted,
                               size_t width, tt_eigen *out);
/** The same of an M that is not semidefinite: its lowest positive lambda, of which there must be
 *  `wanted` (a Sturm count tells): else the search goes on to the end of the space. */
tt_status tt_eigen_critical(const tt_factor *factor, const tt_sparse *m, size_t wanted,
                            tt_eigen *out);
void tt_eigen_free(tt_eigen *eigen);

typedef struct {
    double shift;   /* lambda */
    size_t counted; /* eigenvalues below the shift, from the signs of D of K - shift M */
    size_t found;   /* values below the shift in the list to be proved */
} tt_sturm;

/** How many eigenvalues lie below the shift, which is moved up by a millionth, a few times, when a
 *  pivot is exactly nil. TT_E_ILL_CONDITIONED when that did not help. */
tt_status tt_sturm_count(const tt_sparse *k, const tt_sparse *m, double *shift, size_t *counted);

/** Counts at the shift as above. TT_E_NOT_CONVERGED when the counts differ; proof is filled then
 * too. */
tt_status tt_sturm_prove(const tt_sparse *k, const tt_sparse *m, const double *values, size_t n,
                         double shift, tt_sturm *proof);

#endif
