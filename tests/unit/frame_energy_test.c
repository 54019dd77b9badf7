/* Work of the loads and strain energy: closed forms of a cantilever, and one figure by two routes.
 */
#include "frame_figure.h"

enum { PIECES = 3 };
static const double length = 1.7;
static const make_material metal = {.e = 2.0e11, .g = 8.0e10, .rho = 7850.0, .shear = 0.6};
static const make_shape rod = {.kind = MAKE_PLAIN, .size = {1.2e-3, 9e-8, 2e-7, 2.5e-7}};

static tt_frame *cantilever(void)
{
    const tt_vec3 from = {0.2, 0.1, 0.5}, to = {0.2 + length, 0.1, 0.5};
    tt_frame *frame = tt_frame_new();
    assert_non_null(frame);
    assert_true(tt_frame_add_node(frame, from) && tt_frame_add_node(frame, to));
    make_bar(frame, 0, from, 1, to, &metal, &rod, PIECES);
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

/* The same, its foot on a spring about y. */
static tt_frame *on_a_spring(double k)
{
    const tt_vec3 from = {0.2, 0.1, 0.5}, to = {0.2 + length, 0.1, 0.5};
    const bool held[TT_SIX] = {true, true, true, true, false, true};
    const double stiffness[TT_SIX] = {0, 0, 0, 0, k, 0};
    tt_frame *frame = tt_frame_new();
    assert_non_null(frame);
    assert_true(tt_frame_add_node(frame, from) && tt_frame_add_node(frame, to));
    make_bar(frame, 0, from, 1, to, &metal, &rod, PIECES);
    assert_true(tt_frame_hold(frame, 0, held) && tt_frame_spring(frame, 0, stiffness));
    make_prepare(frame);
    return frame;
}

static void expect_energy(const tt_frame *frame, const tt_frame_load *load, double expected)
{
    tt_pool pool = {0};
    tt_frame_state state;
    double work = 0.0, strain = 0.0;
    assert_int_equal(tt_frame_solve(frame, load, &pool, &state), TT_OK);
    assert_int_equal(tt_frame_energy(frame, load, &state, &work, &strain), TT_OK);
    assert_close(work, expected, 1e-11);
    assert_close(strain, expected, 1e-11);
    tt_pool_clear(&pool);
}

/* P^2 L^3 / (6 E I) + P^2 L / (2 G As) */
static void force_at_the_tip(void **unused)
{
    (void)unused;
    tt_frame *frame = cantilever();
    double node[PIECES + 1][TT_SIX] = {{0}};
    const double p = 130.0, ei = metal.e * rod.size[1], ga = metal.g * metal.shear * rod.size[0];
    node[1][2] = -p;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    expect_energy(frame, &load, p * p * pow(length, 3) / (6.0 * ei) + p * p * length / (2.0 * ga));
    tt_frame_free(frame);
}

/* The same, and P^2 L^2 / 2k in the spring. */
static void foot_on_a_spring(void **unused)
{
    (void)unused;
    const double p = 130.0, k = 4.1e4, ei = metal.e * rod.size[1],
                 ga = metal.g * metal.shear * rod.size[0];
    tt_frame *frame = on_a_spring(k);
    double node[PIECES + 1][TT_SIX] = {{0}};
    node[1][2] = -p;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    expect_energy(frame, &load,
                  p * p * pow(length, 3) / (6.0 * ei) + p * p * length / (2.0 * ga) +
                      p * p * length * length / (2.0 * k));
    tt_frame_free(frame);
}

/* w^2 L^5 / (40 E I) + w^2 L^3 / (6 G As) */
static void uniform_load(void **unused)
{
    (void)unused;
    tt_frame *frame = cantilever();
    tt_vec3 line[PIECES * TT_BAR_POINTS];
    const double w = 90.0, ei = metal.e * rod.size[2], ga = metal.g * metal.shear * rod.size[0];
    for (int i = 0; i < PIECES * TT_BAR_POINTS; i++) line[i] = (tt_vec3){0.0, w, 0.0};
    const tt_frame_load load = {.line_force = line};
    expect_energy(frame, &load,
                  w * w * pow(length, 5) / (40.0 * ei) + w * w * pow(length, 3) / (6.0 * ga));
    tt_frame_free(frame);
}

/* Twist by a uniform line moment: m^2 L^3 / (6 G J) */
static void uniform_twist(void **unused)
{
    (void)unused;
    tt_frame *frame = cantilever();
    tt_vec3 line[PIECES * TT_BAR_POINTS];
    const double m = 12.0, gj = metal.g * rod.size[3];
    for (int i = 0; i < PIECES * TT_BAR_POINTS; i++) line[i] = (tt_vec3){m, 0.0, 0.0};
    const tt_frame_load load = {.line_moment = line};
    expect_energy(frame, &load, m * m * pow(length, 3) / (6.0 * gj));
    tt_frame_free(frame);
}

/* B. P. E. Clapeyron: both are one, on a figure with arms under loads of every kind; and they part
 * when a movement or a section force is not the frame's own. */
static void work_is_strain_energy(void **unused)
{
    (void)unused;
    enum { BARS = 6, POINTS = BARS * TT_BAR_POINTS };
    tt_frame *frame = figure_new(0.8);
    tt_vec3 force[POINTS], moment[POINTS];
    double node[FIGURE_NODES][TT_SIX], work = 0.0, strain = 0.0;
    assert_int_equal(tt_frame_bars(frame), BARS);
    for (int i = 0; i < POINTS; i++) {
        force[i] = (tt_vec3){70.0 * sin(3.0 * i), 55.0 * cos(5.0 * i), -80.0 + 9.0 * sin(i)};
        moment[i] = (tt_vec3){4.0 * cos(i), -6.0 * sin(2.0 * i), 3.0};
    }
    for (int i = 0; i < FIGURE_NODES * TT_SIX; i++)
        node[i / TT_SIX][i % TT_SIX] = 40.0 * sin(7.0 * i);
    const tt_frame_load load = {force, moment, (const double(*)[TT_SIX])node, NULL};
    tt_pool pool = {0};
    tt_frame_state state;
    assert_int_equal(tt_frame_solve(frame, &load, &pool, &state), TT_OK);
    assert_int_equal(tt_frame_energy(frame, &load, &state, &work, &strain), TT_OK);
    assert_true(strain > 0.0);
    assert_close(work, strain, 1e-9);
    state.move[5][0] *= 1.001;
    assert_int_equal(tt_frame_energy(frame, &load, &state, &work, &strain), TT_OK);
    assert_true(fabs(work - strain) > 1e-6 * strain);
    state.move[5][0] /= 1.001;
    state.end[4][5] *= 1.001;
    assert_int_equal(tt_frame_energy(frame, &load, &state, &work, &strain), TT_OK);
    assert_true(fabs(work - strain) > 1e-6 * strain);
    state.end[4][5] = NAN;
    assert_int_equal(tt_frame_energy(frame, &load, &state, &work, &strain), TT_E_NOT_FINITE);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(force_at_the_tip),      cmocka_unit_test(foot_on_a_spring),
        cmocka_unit_test(uniform_load),          cmocka_unit_test(uniform_twist),
        cmocka_unit_test(work_is_strain_energy),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
