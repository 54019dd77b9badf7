/* Assembly, factors, refinement, and the naming of a weak pivot. */
#include "num_chain.h"

static void terms_add_up(void **unused)
{
    (void)unused;
    tt_entries e = {0};
    term(&e, 2, 0, 1.0);
    term(&e, 0, 2, 2.0);
    term(&e, 0, 0, 5.0);
    term(&e, 0, 0, 0.5);
    tt_sparse a = matrix_of(&e, 3);
    const double x[3] = {1.0, 10.0, 100.0};
    double y[3];
    assert_int_equal(a.start[3], 5); /* three of the diagonal, two of the pair */
    for (int j = 0; j < 3; j++) {
        for (int k = a.start[j] + 1; k < a.start[j + 1]; k++) assert_true(a.row[k - 1] < a.row[k]);
    }
    tt_sparse_apply(&a, x, y);
    assert_near(y[0], 305.5, 1e-12);
    assert_near(y[1], 0.0, 0.0);
    assert_near(y[2], 3.0, 1e-12);
    assert_near(tt_sparse_diagonal(&a, 0), 5.5, 0.0);
    tt_sparse_free(&a);
}

static void sum_of_two(void **unused)
{
    (void)unused;
    tt_entries e = {0};
    term(&e, 0, 3, 7.0);
    tt_sparse a = chain(4, 1), b = matrix_of(&e, 4), sum;
    const double x[4] = {1.0, 2.0, 3.0, 4.0};
    double of_a[4], of_b[4], of_sum[4];
    assert_int_equal(tt_sparse_sum(&a, -3.0, &b, &sum), TT_OK);
    tt_sparse_apply(&a, x, of_a);
    tt_sparse_apply(&b, x, of_b);
    tt_sparse_apply(&sum, x, of_sum);
    for (int i = 0; i < 4; i++) assert_near(of_sum[i], of_a[i] - 3.0 * of_b[i], 1e-14);
    tt_sparse_free(&a);
    tt_sparse_free(&b);
    tt_sparse_free(&sum);
}

/* A square net of n by n unknowns, held all round, plus something on the diagonal. */
static tt_sparse net(int n, double more)
{
    tt_entries e = {0};
    for (int i = 0; i < n * n; i++) {
        term(&e, i, i, 4.0 + more);
        if (i % n + 1 < n) term(&e, i, i + 1, -1.0);
        if (i + n < n * n) term(&e, i + n, i, -1.0);
    }
    return matrix_of(&e, n * n);
}

static void solves_what_it_multiplied(void **unused)
{
    (void)unused;
    enum { N = 20 };
    tt_sparse a = net(N, 0.0);
    tt_factor f;
    double x[N * N], b[N * N], got[N * N], moved = -1.0;
    for (int i = 0; i < N * N; i++) x[i] = sin(i) + 0.01 * i;
    tt_sparse_apply(&a, x, b);
    assert_int_equal(tt_factor_of(&a, &f), TT_OK);
    assert_int_equal(tt_factor_weak(&f, &a, 1e-11), -1);
    assert_int_equal(tt_factor_negative(&f), 0);
    assert_true(f.start[N * N] < N * N * N / 2); /* the order keeps L thin: by rows it is N^3 */
    assert_int_equal(tt_sparse_solve(&a, &f, b, got, &moved), TT_OK);
    for (int i = 0; i < N * N; i++) assert_near(got[i], x[i], 1e-13);
    assert_true(moved >= 0.0 && moved < 1e-13);
    tt_factor_free(&f);
    tt_sparse_free(&a);
}

/* The product of the pivots is the determinant, n + 1 for the chain. */
static void pivots_give_the_determinant(void **unused)
{
    (void)unused;
    tt_sparse a = chain(30, 1);
    tt_factor f;
    double product = 1.0;
    assert_int_equal(tt_factor_of(&a, &f), TT_OK);
    for (int i = 0; i < 30; i++) product *= f.pivot[i];
    assert_close(product, 31.0, 1e-12);
    tt_factor_free(&f);
    tt_sparse_free(&a);
}

/* D. Hilbert's matrix in whole numbers (times 360360): exact terms, exact right side, and eight
 * figures lost in a plain solution. */
static void refinement_mends_what_factors_lose(void **unused)
{
    (void)unused;
    enum { N = 7 };
    tt_entries e = {0};
    const double x[N] = {3, -1, 4, -1, 5, -9, 2};
    double b[N], plain[N], got[N], work[N], moved, lost = 0.0, left = 0.0;
    for (int i = 0; i < N; i++) {
        for (int j = i; j < N; j++) term(&e, i, j, 360360.0 / (i + j + 1));
    }
    tt_sparse a = matrix_of(&e, N);
    tt_factor f;
    tt_sparse_apply(&a, x, b);
    assert_int_equal(tt_factor_of(&a, &f), TT_OK);
    tt_factor_solve(&f, b, plain, work);
    assert_int_equal(tt_sparse_solve(&a, &f, b, got, &moved), TT_OK);
    for (int i = 0; i < N; i++) {
        lost = fmax(lost, fabs(plain[i] - x[i]));
        left = fmax(left, fabs(got[i] - x[i]));
    }
    assert_true(lost > 1e-12);
    assert_true(left < 1e-3 * lost);
    assert_close(moved, lost / 9.0, 0.01);
    tt_factor_free(&f);
    tt_sparse_free(&a);
}

/* Two chains, the second held nowhere: its last pivot is rounding. */
static void weak_pivot_is_named(void **unused)
{
    (void)unused;
    enum { N = 7 };
    tt_entries e = {0};
    for (int i = 0; i < 2 * N; i++) {
        const double k = 1.0 + 0.1 * i;
        if (i == 0) term(&e, 0, 0, k);
        if (i == 0 || i == N) continue;
        term(&e, i, i, k);
        term(&e, i - 1, i - 1, k);
        term(&e, i, i - 1, -k);
    }
    tt_sparse a = matrix_of(&e, 2 * N);
    tt_factor f;
    assert_true(tt_factor_of(&a, &f) != TT_E_NOMEM);
    assert_true(tt_factor_weak(&f, &a, 1e-11) >= N);
    tt_factor_free(&f);
    tt_sparse_free(&a);
}

static void pivot_of_nil_is_named(void **unused)
{
    (void)unused;
    tt_entries e = {0};
    term(&e, 0, 0, 1.0);
    term(&e, 2, 2, 1.0);
    tt_sparse a = matrix_of(&e, 3);
    tt_factor f;
    assert_int_equal(tt_factor_of(&a, &f), TT_E_ILL_CONDITIONED);
    assert_int_equal(tt_factor_weak(&f, &a, 1e-11), 1);
    tt_factor_free(&f);
    tt_sparse_free(&a);
}

static void negative_pivots_count_eigenvalues(void **unused)
{
    (void)unused;
    enum { N = 40 };
    tt_sparse a = chain(N, 1);
    for (int k = 1; k < N; k++) {
        tt_entries e = {0};
        for (int i = 0; i < N; i++) term(&e, i, i, 1.0);
        tt_sparse one = matrix_of(&e, N), shifted;
        tt_factor f;
        const double shift = 0.45 * chain_value(N, k) + 0.55 * chain_value(N, k + 1);
        assert_int_equal(tt_sparse_sum(&a, -shift, &one, &shifted), TT_OK);
        assert_int_equal(tt_factor_of(&shifted, &f), TT_OK);
        assert_int_equal(tt_factor_negative(&f), k);
        tt_factor_free(&f);
        tt_sparse_free(&one);
        tt_sparse_free(&shifted);
    }
    tt_sparse_free(&a);
}

static void nothing_to_solve(void **unused)
{
    (void)unused;
    tt_entries e = {0};
    tt_sparse a = matrix_of(&e, 0);
    tt_factor f;
    double moved = 1.0, none = 0.0;
    assert_int_equal(tt_factor_of(&a, &f), TT_OK);
    assert_int_equal(tt_factor_weak(&f, &a, 1e-11), -1);
    assert_int_equal(tt_sparse_solve(&a, &f, &none, &none, &moved), TT_OK);
    assert_near(moved, 0.0, 0.0);
    tt_factor_free(&f);
    tt_sparse_free(&a);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(terms_add_up),
        cmocka_unit_test(sum_of_two),
        cmocka_unit_test(solves_what_it_multiplied),
        cmocka_unit_test(pivots_give_the_determinant),
        cmocka_unit_test(refinement_mends_what_factors_lose),
        cmocka_unit_test(weak_pivot_is_named),
        cmocka_unit_test(pivot_of_nil_is_named),
        cmocka_unit_test(negative_pivots_count_eigenvalues),
        cmocka_unit_test(nothing_to_solve),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
