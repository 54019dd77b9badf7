/* Lowest eigenpairs against chains of known frequencies; the Sturm count against a wrong list. */
#include "num/eigen.h"
#include "num_chain.h"

static tt_sparse diagonal(int n, int every)
{
    tt_entries e = {0};
    for (int i = 0; i < n; i++) {
        if (i % every == 0) term(&e, i, i, 1.0);
    }
    return matrix_of(&e, n);
}

typedef struct {
    tt_sparse k, m;
    tt_factor factor;
    tt_eigen found;
} problem;

static problem solve(tt_sparse k, tt_sparse m, size_t wanted)
{
    problem p = {.k = k, .m = m};
    assert_int_equal(tt_factor_of(&p.k, &p.factor), TT_OK);
    assert_int_equal(tt_eigen_lowest(&p.factor, &p.m, wanted, &p.found), TT_OK);
    return p;
}

static void release(problem *p)
{
    tt_eigen_free(&p->found);
    tt_factor_free(&p->factor);
    tt_sparse_free(&p->k);
    tt_sparse_free(&p->m);
}

static void chain_of_masses(void **unused)
{
    (void)unused;
    enum { N = 200 };
    problem p = solve(chain(N, 1), diagonal(N, 1), 12);
    assert_true(p.found.sure >= 12);
    assert_false(p.found.all);
    for (int i = 0; i < 12; i++) assert_close(p.found.value[i], chain_value(N, i + 1), 1e-10);
    double y[N], norm = 0.0, error = 0.0;
    const double *x = p.found.shape + 11 * N;
    tt_sparse_apply(&p.k, x, y);
    for (int i = 0; i < N; i++) {
        norm += x[i] * y[i];
        error = fmax(error, fabs(y[i] - p.found.value[11] * x[i]) / sqrt(p.found.value[11]));
    }
    assert_close(norm, 1.0, 1e-10);
    assert_near(error, 0.0, 1e-4);
    release(&p);
}

/* Three equal chains: every value three times. */
static void repeated_values(void **unused)
{
    (void)unused;
    enum { N = 30 };
    problem p = solve(chain(N, 3), diagonal(3 * N, 1), 9);
    tt_sturm proof;
    assert_true(p.found.sure >= 9);
    for (int i = 0; i < 9; i++) assert_close(p.found.value[i], chain_value(N, i / 3 + 1), 1e-10);
    const double shift = p.found.value[8] * 1.0001;
    assert_int_equal(tt_sturm_prove(&p.k, &p.m, p.found.value, p.found.n, shift, &proof), TT_OK);
    assert_int_equal(proof.counted, 9);
    release(&p);
}

/* Masses on every third unknown only: ten values, then no more. */
static void massless_unknowns(void **unused)
{
    (void)unused;
    enum { N = 29, MASSES = 10 };
    problem p = solve(chain(N, 1), diagonal(N, 3), 15);
    tt_sturm proof;
    assert_true(p.found.all);
    assert_int_equal(p.found.n, MASSES);
    assert_int_equal(p.found.sure, MASSES);
    double sum = 0.0; /* of 1 / lambda: the trace of inverse(K) M, with (i + 1) (N - i) / (N + 1) */
    for (int i = 0; i < N; i += 3) sum += (i + 1.0) * (N - i) / (N + 1.0);
    for (int i = 0; i < MASSES; i++) sum -= 1.0 / p.found.value[i];
    assert_near(sum, 0.0, 1e-11);
    assert_int_equal(tt_sturm_prove(&p.k, &p.m, p.found.value, p.found.n, 1e6, &proof), TT_OK);
    assert_int_equal(proof.counted, MASSES);
    release(&p);
}

static void all_of_a_small_one(void **unused)
{
    (void)unused;
    problem p = solve(chain(5, 1), diagonal(5, 1), 40);
    assert_true(p.found.all);
    assert_int_equal(p.found.n, 5);
    for (int i = 0; i < 5; i++) assert_close(p.found.value[i], chain_value(5, i + 1), 1e-12);
    release(&p);
}

static void no_mass_at_all(void **unused)
{
    (void)unused;
    tt_entries none = {0};
    problem p = solve(chain(12, 1), matrix_of(&none, 12), 3);
    assert_true(p.found.all);
    assert_int_equal(p.found.n, 0);
    release(&p);
}

static void same_bits_every_time(void **unused)
{
    (void)unused;
    problem a = solve(chain(50, 2), diagonal(100, 1), 6),
            b = solve(chain(50, 2), diagonal(100, 1), 6);
    assert_int_equal(a.found.n, b.found.n);
    assert_memory_equal(a.found.value, b.found.value, a.found.n * sizeof(double));
    assert_memory_equal(a.found.shape, b.found.shape, a.found.n * 100 * sizeof(double));
    release(&a);
    release(&b);
}

/* A list with one value missing, or one too many, is not proved. */
static void wrong_lists_are_not_proved(void **unused)
{
    (void)unused;
    enum { N = 60 };
    problem p = solve(chain(N, 1), diagonal(N, 1), 6);
    tt_sturm proof;
    const double *v = p.found.value, shift = 0.5 * (v[4] + v[5]);
    const double missing[] = {v[0], v[1], v[3], v[4], v[5]};
    const double twice[] = {v[0], v[1], v[1], v[2], v[3], v[4], v[5]};
    assert_int_equal(tt_sturm_prove(&p.k, &p.m, v, 6, shift, &proof), TT_OK);
    assert_int_equal(proof.counted, 5);
    assert_int_equal(tt_sturm_prove(&p.k, &p.m, missing, 5, shift, &proof), TT_E_NOT_CONVERGED);
    assert_int_equal(proof.counted, 5);
    assert_int_equal(proof.found, 4);
    assert_int_equal(tt_sturm_prove(&p.k, &p.m, twice, 7, shift, &proof), TT_E_NOT_CONVERGED);
    assert_int_equal(proof.found, 6);
    release(&p);
}

/* A shift that makes a pivot exactly nil is moved, and counts all the same. */
static void shift_on_a_pivot(void **unused)
{
    (void)unused;
    tt_sparse k = chain(1, 3), m = diagonal(3, 1); /* three times lambda = 2 */
    const double values[] = {2.0, 2.0, 2.0};
    tt_sturm proof;
    assert_int_equal(tt_sturm_prove(&k, &m, values, 3, 2.0, &proof), TT_OK);
    assert_true(proof.shift > 2.0 && proof.shift < 2.0001);
    assert_int_equal(proof.counted, 3);
    tt_sparse_free(&k);
    tt_sparse_free(&m);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(chain_of_masses),
        cmocka_unit_test(repeated_values),
        cmocka_unit_test(massless_unknowns),
        cmocka_unit_test(all_of_a_small_one),
        cmocka_unit_test(no_mass_at_all),
        cmocka_unit_test(same_bits_every_time),
        cmocka_unit_test(wrong_lists_are_not_proved),
        cmocka_unit_test(shift_on_a_pivot),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
