/* tests/unit/num_chain.h - matrices whose answers are known: chains of springs and masses. */
#ifndef TT_TESTS_NUM_CHAIN_H
#define TT_TESTS_NUM_CHAIN_H

#include "assert_close.h"
#include "base/list.h"
#include "num/sparse.h"

#define PI 3.14159265358979323846

static inline void term(tt_entries *e, int row, int col, double value)
{
    assert_true(tt_list_push(e, (tt_entry){row, col, value}));
}

static inline tt_sparse matrix_of(tt_entries *e, int n)
{
    tt_sparse out;
    assert_int_equal(tt_sparse_of(e, n, &out), TT_OK);
    tt_list_clear(e);
    return out;
}

/* `chains` chains of n unknowns each, held at both ends, springs of one:
 * lambda = 2 - 2 cos(k pi / (n + 1)) with unit masses. */
static inline tt_sparse chain(int n, int chains)
{
    tt_entries e = {0};
    for (int c = 0; c < chains; c++) {
        for (int i = 0; i < n; i++) {
            term(&e, c * n + i, c * n + i, 2.0);
            if (i + 1 < n) term(&e, c * n + i, c * n + i + 1, -1.0);
        }
    }
    return matrix_of(&e, n * chains);
}

static inline double chain_value(int n, int k)
{
    const double s = sin(k * PI / (2.0 * (n + 1)));
    return 4.0 * s * s;
}

#endif
