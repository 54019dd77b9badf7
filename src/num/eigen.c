/* num/eigen.c - lowest eigenpairs by the iteration of num/lanczos.c, and their proof. */
#include "num/lanczos.h"
#include "base/alloc.h"

enum { WIDTH = 4 };

tt_status tt_eigen_lowest_wide(const tt_factor *factor, const tt_sparse *m, size_t wanted,
                               size_t width, tt_eigen *out)
{
    return tt_lanczos(m, factor, TT_INNER_M, wanted, width, out);
}

tt_status tt_eigen_lowest(const tt_factor *factor, const tt_sparse *m, size_t wanted, tt_eigen *out)
{
    return tt_eigen_lowest_wide(factor, m, wanted, WIDTH, out);
}

tt_status tt_eigen_critical(const tt_factor *factor, const tt_sparse *m, size_t wanted,
                            tt_eigen *out)
{
    return tt_lanczos(m, factor, TT_INNER_K, wanted, WIDTH, out);
}

void tt_eigen_free(tt_eigen *eigen)
{
    tt_free(eigen->value);
    tt_free(eigen->shape);
    *eigen = (tt_eigen){0};
}

/* J. J. Sylvester's law of inertia: D of K - shift M has as many negative entries as there are
 * eigenvalues below the shift. */
static tt_status count_below(const tt_sparse *k, const tt_sparse *m, double shift, size_t *counted)
{
    tt_sparse shifted = {0};
    tt_factor factor = {0};
    tt_status status = tt_sparse_sum(k, -shift, m, &shifted);
    if (status == TT_OK) status = tt_factor_of(&shifted, &factor);
    if (status == TT_OK) *counted = tt_factor_negative(&factor);
    tt_factor_free(&factor);
    tt_sparse_free(&shifted);
    return status;
}

tt_status tt_sturm_count(const tt_sparse *k, const tt_sparse *m, double *shift, size_t *counted)
{
    *counted = 0;
    tt_status status = count_below(k, m, *shift, counted);
    for (int i = 0; i < 4 && status == TT_E_ILL_CONDITIONED; i++) {
        *shift *= 1.000001;
        status = count_below(k, m, *shift, counted);
    }
    return status;
}

tt_status tt_sturm_prove(const tt_sparse *k, const tt_sparse *m, const double *values, size_t n,
                         double shift, tt_sturm *proof)
{
    *proof = (tt_sturm){.shift = shift};
    const tt_status status = tt_sturm_count(k, m, &proof->shift, &proof->counted);
    for (size_t i = 0; i < n; i++) proof->found += values[i] < proof->shift;
    if (status == TT_E_NOMEM) return status;
    return status == TT_OK && proof->counted == proof->found ? TT_OK : TT_E_NOT_CONVERGED;
}
