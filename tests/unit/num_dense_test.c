/* Six by six inverse; all eigenpairs of a matrix whose values are known. */
#include "assert_close.h"
#include "num/dense.h"

#include <stdlib.h>

#define PI 3.14159265358979323846

/* Positive definite, rows of very different size. */
static tt_mat6 uneven(void)
{
    const double size[6] = {1e5, 1e9, 1.0, 1e-4, 30.0, 1e3};
    tt_mat6 a;
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) {
            const double c = i == j ? 1.0 : 0.3 / (1.0 + abs(i - j));
            a.at[i][j] = size[i] * c * size[j];
        }
    }
    return a;
}

static void inverse_of_uneven(void **unused)
{
    (void)unused;
    const tt_mat6 a = uneven();
    tt_mat6 inverse;
    assert_true(tt_mat6_inverse(&a, &inverse));
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) {
            double sum = 0.0;
            for (int k = 0; k < 6; k++) sum += a.at[i][k] * inverse.at[k][j];
            const double size = sqrt(a.at[i][i] / a.at[j][j]);
            assert_near(sum / size, i == j ? 1.0 : 0.0, 1e-13);
        }
    }
}

static void infinite_is_rigid(void **unused)
{
    (void)unused;
    tt_mat6 a = {0}, inverse;
    for (int i = 0; i < 6; i++) a.at[i][i] = i + 1.0;
    a.at[0][5] = a.at[5][0] = 2.0;
    a.at[1][1] = INFINITY;
    assert_true(tt_mat6_inverse(&a, &inverse));
    for (int j = 0; j < 6; j++) assert_near(inverse.at[1][j], 0.0, 0.0);
    /* of {{1, 2}, {2, 6}}: {{3, -1}, {-1, 0.5}} */
    assert_close(inverse.at[0][0], 3.0, 1e-14);
    assert_close(inverse.at[0][5], -1.0, 1e-14);
    assert_close(inverse.at[5][5], 0.5, 1e-14);
}

static void refuses_what_has_no_inverse(void **unused)
{
    (void)unused;
    tt_mat6 a = {0}, inverse;
    for (int i = 0; i < 6; i++) a.at[i][i] = 1.0;
    a.at[2][2] = 0.0;
    assert_false(tt_mat6_inverse(&a, &inverse));
    a.at[2][2] = 1.0;
    a.at[2][3] = a.at[3][2] = 1.0; /* two equal rows */
    assert_false(tt_mat6_inverse(&a, &inverse));
    a.at[2][3] = a.at[3][2] = 2.0; /* indefinite */
    assert_false(tt_mat6_inverse(&a, &inverse));
    a.at[2][3] = a.at[3][2] = NAN;
    assert_false(tt_mat6_inverse(&a, &inverse));
}

static void products(void **unused)
{
    (void)unused;
    tt_mat6 a = {0}, b = {0};
    double out[6] = {10.0}, back[6] = {0};
    const double x[6] = {1, 2, 0, 0, 0, 0};
    a.at[0][1] = 3.0;
    b.at[1][4] = 5.0;
    const tt_mat6 ab = tt_mat6_mul(&a, &b), aa = tt_mat6_tmul(&a, &a), ba = tt_mat6_mult(&a, &a);
    assert_near(ab.at[0][4], 15.0, 0.0);
    assert_near(aa.at[1][1], 9.0, 0.0);
    assert_near(aa.at[0][0], 0.0, 0.0);
    assert_near(ba.at[0][0], 9.0, 0.0);
    tt_mat6_apply(&a, x, out);
    tt_mat6_tapply(&a, x, back);
    assert_near(out[0], 16.0, 0.0);
    assert_near(back[1], 3.0, 0.0);
}

/* Second differences: 2 - 2 cos(k pi / (n + 1)), in any textbook. */
static void eigenpairs_of_second_differences(void **unused)
{
    (void)unused;
    enum { N = 25 };
    double a[N * N] = {0}, copy[N * N], value[N], vector[N * N];
    for (int i = 0; i < N; i++) {
        a[i * N + i] = 2.0;
        if (i + 1 < N) a[i * N + i + 1] = a[(i + 1) * N + i] = -1.0;
    }
    for (int i = 0; i < N * N; i++) copy[i] = a[i];
    tt_eigenpairs(N, a, value, vector);
    for (int k = 0; k < N; k++) {
        assert_near(value[k], 2.0 - 2.0 * cos((N - k) * PI / (N + 1)), 1e-13);
        double length = 0.0;
        for (int i = 0; i < N; i++) {
            double sum = 0.0;
            for (int j = 0; j < N; j++) sum += copy[i * N + j] * vector[k * N + j];
            assert_near(sum, value[k] * vector[k * N + i], 1e-13);
            length += vector[k * N + i] * vector[k * N + i];
        }
        assert_close(length, 1.0, 1e-13);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(inverse_of_uneven),
        cmocka_unit_test(infinite_is_rigid),
        cmocka_unit_test(refuses_what_has_no_inverse),
        cmocka_unit_test(products),
        cmocka_unit_test(eigenpairs_of_second_differences),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
