/* What the iteration of num/eigen.c rests on: vectors that stay orthonormal, values that stand many
 * times, several right-hand sides, small eigenproblems of every size. */
#include "num/dense.h"
#include "num/eigen.h"
#include "num_chain.h"

#include <string.h>

static tt_sparse masses(int n)
{
    tt_entries e = {0};
    for (int i = 0; i < n; i++) term(&e, i, i, 1.0 + (i % 7) * 0.3);
    return matrix_of(&e, n);
}

/* Of many vectors each is orthogonal in K to all others, to rounding. */
static void orthonormal_to_the_last(void **unused)
{
    (void)unused;
    enum { N = 150, WANTED = 40 };
    tt_sparse k = chain(N, 1), m = masses(N);
    tt_factor factor;
    tt_eigen found;
    double y[N];
    assert_int_equal(tt_factor_of(&k, &factor), TT_OK);
    assert_int_equal(tt_eigen_lowest(&factor, &m, WANTED, &found), TT_OK);
    assert_true(found.sure >= WANTED);
    for (int i = 0; i < WANTED; i++) {
        tt_sparse_apply(&k, found.shape + i * N, y);
        for (int j = 0; j < WANTED; j++) {
            double product = 0.0;
            for (int r = 0; r < N; r++) product += y[r] * found.shape[j * N + r];
            assert_near(product, i == j ? 1.0 : 0.0, 2e-13);
        }
    }
    tt_eigen_free(&found);
    tt_factor_free(&factor);
    tt_sparse_free(&k);
    tt_sparse_free(&m);
}

/* Seven equal chains: with seven starting vectors every value is found seven times. */
static void values_that_stand_often(void **unused)
{
    (void)unused;
    enum { N = 20, CHAINS = 7, ALL = N * CHAINS };
    tt_sparse k = chain(N, CHAINS), m = chain(1, ALL); /* masses of two */
    tt_factor factor;
    tt_eigen found;
    tt_sturm proof;
    assert_int_equal(tt_factor_of(&k, &factor), TT_OK);
    assert_int_equal(tt_eigen_lowest_wide(&factor, &m, 2 * CHAINS, CHAINS, &found), TT_OK);
    assert_true(found.sure >= 2 * CHAINS);
    for (int i = 0; i < 2 * CHAINS; i++) {
        assert_close(2.0 * found.value[i], chain_value(N, i / CHAINS + 1), 1e-11);
    }
    const double shift = found.value[2 * CHAINS - 1] * 1.01;
    assert_int_equal(tt_sturm_prove(&k, &m, found.value, found.n, shift, &proof), TT_OK);
    assert_int_equal(proof.counted, 2 * CHAINS);
    tt_eigen_free(&found);
    tt_factor_free(&factor);
    tt_sparse_free(&k);
    tt_sparse_free(&m);
}

/* One value that stands thirty times: four vectors see it four times and lead nowhere else, so that
 * others must be taken, until there are none. */
static void one_value_only(void **unused)
{
    (void)unused;
    enum { N = 30 };
    const size_t wanted[] = {6, N, 3 * N};
    tt_sparse k = chain(1, N), m = chain(1, N);
    tt_factor factor;
    assert_int_equal(tt_factor_of(&k, &factor), TT_OK);
    for (int i = 0; i < 3; i++) {
        tt_eigen found;
        assert_int_equal(tt_eigen_lowest(&factor, &m, wanted[i], &found), TT_OK);
        assert_true(found.sure >= (wanted[i] < N ? wanted[i] : N) && found.n <= N);
        for (size_t c = 0; c < found.n; c++) assert_close(found.value[c], 1.0, 1e-12);
        tt_eigen_free(&found);
    }
    tt_factor_free(&factor);
    tt_sparse_free(&k);
    tt_sparse_free(&m);
}

/* The same bits as one by one. */
static void sides_together(void **unused)
{
    (void)unused;
    enum { N = 31 };
    tt_sparse k = chain(N, 1);
    tt_factor factor;
    double b[TT_SIDES][N], x[N], y[N], work[N];
    tt_sides many[N], product[N], space[N];
    assert_int_equal(tt_factor_of(&k, &factor), TT_OK);
    for (int i = 0; i < N; i++) {
        for (int s = 0; s < TT_SIDES; s++) many[i][s] = b[s][i] = cos(i * (s + 2.0)) + s;
    }
    tt_sparse_apply_sides(&k, many, product);
    tt_factor_solve_sides(&factor, many, space);
    for (int s = 0; s < TT_SIDES; s++) {
        tt_sparse_apply(&k, b[s], y);
        tt_factor_solve(&factor, b[s], x, work);
        for (int i = 0; i < N; i++) {
            assert_near(many[i][s], x[i], 0.0);
            assert_near(product[i][s], y[i], 0.0);
        }
    }
    tt_factor_free(&factor);
    tt_sparse_free(&k);
}

/* a x = value x, x of length one, values descending and summing to the trace; the matrices fall
 * apart for some sizes and have values of both signs. */
static void eigenpairs_of_every_size(void **unused)
{
    (void)unused;
    enum { MOST = 25 };
    for (size_t n = 1; n <= MOST; n++) {
        double a[MOST * MOST], copy[MOST * MOST], value[MOST], vector[MOST * MOST], trace = 0.0;
        for (size_t i = 0; i < n * n; i++) {
            const double r = (double)(i / n), c = (double)(i % n);
            a[i] = n % 3 == 0 && fabs(r - c) > 2.0 ? 0.0 : sin(r * c + 1.0) + cos(r + c);
        }
        memcpy(copy, a, sizeof a);
        for (size_t i = 0; i < n; i++) trace += a[i * n + i];
        tt_eigenpairs(n, a, value, vector);
        for (size_t k = 0; k < n; k++) {
            double length = 0.0;
            for (size_t i = 0; i < n; i++) {
                double sum = 0.0;
                for (size_t j = 0; j < n; j++) sum += copy[i * n + j] * vector[k * n + j];
                assert_near(sum, value[k] * vector[k * n + i], 1e-13);
                length += vector[k * n + i] * vector[k * n + i];
            }
            assert_close(length, 1.0, 1e-13);
            assert_true(k == 0 || value[k] <= value[k - 1]);
            trace -= value[k];
        }
        assert_near(trace, 0.0, 1e-12);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(orthonormal_to_the_last),  cmocka_unit_test(values_that_stand_often),
        cmocka_unit_test(one_value_only),           cmocka_unit_test(sides_together),
        cmocka_unit_test(eigenpairs_of_every_size),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
