/* Laws that hold for every frame, on an invented figure: reciprocity, turning, superposition,
 * balance, the same bits every time. */
#include "frame_figure.h"
#include "frame/parts.h"

static double work_of(double (*force)[TT_SIX], double (*move)[TT_SIX])
{
    double sum = 0.0;
    for (int i = 0; i < FIGURE_NODES; i++) {
        for (int d = 0; d < TT_SIX; d++) sum += force[i][d] * move[i][d];
    }
    return sum;
}

/* E. Betti, 1872: the forces of one case do on the moves of another what those do on its moves. */
static void reciprocity(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    for (int i = 2; i < FIGURE_NODES; i++) {
        for (int d = 0; d < TT_SIX; d++) {
            double a[FIGURE_NODES][TT_SIX] = {{0}}, b[FIGURE_NODES][TT_SIX] = {{0}};
            a[i][d] = 130.0;
            b[7][0] = 90.0;
            b[6][4] = -17.0;
            b[4][2] = 55.0;
            const tt_frame_state of_a = figure_solve(frame, a, NULL, &pool);
            const tt_frame_state of_b = figure_solve(frame, b, NULL, &pool);
            const double one = work_of(a, of_b.move), other = work_of(b, of_a.move);
            assert_near(one, other, 1e-11 * (fabs(one) + 1e-3));
            assert_true(work_of(a, of_a.move) > 0.0);
        }
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void fill_line(tt_vec3 *line, size_t n, double about_z)
{
    for (size_t i = 0; i < n; i++) {
        const double k = (double)i;
        line[i] = figure_turn((tt_vec3){20.0 * sin(k), 15.0 * cos(2.0 * k), -60.0}, about_z);
    }
}

/* Turning the figure and its loads about the vertical turns moves and reactions, and leaves
 * section forces and frequencies as they were. */
static void turning_about_the_vertical(void **unused)
{
    (void)unused;
    const double turns[] = {0.5, 1.5707963267948966, 2.9};
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    tt_vec3 line[6 * TT_BAR_POINTS];
    assert_int_equal(tt_frame_bars(frame), 6);
    fill_line(line, 6 * TT_BAR_POINTS, 0.0);
    double node[FIGURE_NODES][TT_SIX] = {{0}};
    node[7][0] = 40.0;
    const tt_frame_state s = figure_solve(frame, node, line, &pool);
    tt_modes modes;
    assert_int_equal(tt_frame_modes(frame, 4, 0.0, &pool, &modes), TT_OK);
    for (int k = 0; k < 3; k++) {
        tt_frame *turned = figure_new(turns[k]);
        tt_modes again;
        const tt_vec3 pull = figure_turn((tt_vec3){40.0, 0.0, 0.0}, turns[k]);
        node[7][0] = pull.x;
        node[7][1] = pull.y;
        fill_line(line, 6 * TT_BAR_POINTS, turns[k]);
        const tt_frame_state t = figure_solve(turned, node, line, &pool);
        for (int i = 0; i < FIGURE_NODES; i++) {
            for (int half = 0; half < TT_SIX; half += 3) {
                const double *m = s.move[i] + half, *r = s.reaction[i] + half;
                const tt_vec3 a = figure_turn((tt_vec3){m[0], m[1], m[2]}, turns[k]);
                const tt_vec3 b = figure_turn((tt_vec3){r[0], r[1], r[2]}, turns[k]);
                assert_near(t.move[i][half], a.x, 1e-12);
                assert_near(t.move[i][half + 1], a.y, 1e-12);
                assert_near(t.move[i][half + 2], a.z, 1e-12);
                assert_near(t.reaction[i][half], b.x, 1e-7);
                assert_near(t.reaction[i][half + 1], b.y, 1e-7);
                assert_near(t.reaction[i][half + 2], b.z, 1e-7);
            }
        }
        for (int i = 0; i < 6; i++) {
            for (int d = 0; d < TT_SIX; d++) assert_near(t.end[i][d], s.end[i][d], 1e-7);
        }
        assert_int_equal(tt_frame_modes(turned, 4, 0.0, &pool, &again), TT_OK);
        for (size_t i = 0; i < 4; i++) {
            assert_close(again.at[i].frequency, modes.at[i].frequency, 1e-9);
        }
        tt_frame_free(turned);
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void superposition_and_balance(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.7);
    tt_pool pool = {0};
    tt_vec3 line[6 * TT_BAR_POINTS];
    double node[FIGURE_NODES][TT_SIX] = {{0}};
    fill_line(line, 6 * TT_BAR_POINTS, 0.3);
    for (int i = 0; i < FIGURE_NODES; i++) node[i][i % TT_SIX] = 10.0 + i; /* held ones too */
    const tt_frame_state a = figure_solve(frame, node, NULL, &pool);
    const tt_frame_state b = figure_solve(frame, NULL, line, &pool);
    const tt_frame_state both = figure_solve(frame, node, line, &pool);
    for (int i = 0; i < FIGURE_NODES; i++) {
        for (int d = 0; d < TT_SIX; d++) {
            assert_near(both.move[i][d], a.move[i][d] + b.move[i][d], 1e-14);
            assert_near(both.reaction[i][d], a.reaction[i][d] + b.reaction[i][d], 1e-8);
        }
    }
    assert_true(both.residual > 0.0);
    assert_near(both.residual, 0.0, 1e-11);
    assert_near(both.refinement, 0.0, 1e-11);
    for (int d = 3; d < TT_SIX; d++) assert_near(both.reaction[1][d], 0.0, 0.0);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* And the measures of balance do not divide nil by nil. */
static void no_load_nothing_moves(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    const tt_frame_state s = figure_solve(frame, NULL, NULL, &pool);
    for (int i = 0; i < FIGURE_NODES; i++) {
        for (int d = 0; d < TT_SIX; d++) assert_near(s.move[i][d], 0.0, 0.0);
    }
    assert_near(s.residual, 0.0, 0.0);
    assert_near(s.refinement, 0.0, 0.0);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* A reaction that is one per mille short shows as that, and no less. */
static void imbalance_is_seen(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    double node[FIGURE_NODES][TT_SIX] = {{0}};
    node[5][2] = -1000.0;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_frame_state s = figure_solve(frame, node, NULL, &pool);
    assert_near(s.residual, 0.0, 1e-12);
    s.reaction[0][2] += 1.0;
    assert_close(tt_frame_imbalance(frame, &load, &s), 1e-3, 1e-9);
    s.reaction[0][2] -= 1.0;
    s.reaction[0][3] += 1.0; /* N.m, over 1000 N and the longest arm */
    assert_close(tt_frame_imbalance(frame, &load, &s), 1e-3 / tt_length(figure_spot(7, 0.0)), 1e-9);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void loads_without_number_are_refused(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    double node[FIGURE_NODES][TT_SIX] = {{0}};
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_pool pool = {0};
    tt_frame_state state;
    node[5][1] = INFINITY;
    assert_int_equal(tt_frame_solve(frame, &load, &pool, &state), TT_E_NOT_FINITE);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void same_bits_every_time(void **unused)
{
    (void)unused;
    tt_frame *one = figure_new(0.4), *two = figure_new(0.4);
    tt_pool pool = {0};
    tt_vec3 line[6 * TT_BAR_POINTS];
    fill_line(line, 6 * TT_BAR_POINTS, 0.0);
    const tt_frame_state a = figure_solve(one, NULL, line, &pool);
    const tt_frame_state b = figure_solve(two, NULL, line, &pool);
    const tt_frame_state c = figure_solve(one, NULL, line, &pool);
    assert_memory_equal(a.move, b.move, FIGURE_NODES * sizeof *a.move);
    assert_memory_equal(a.move, c.move, FIGURE_NODES * sizeof *a.move);
    assert_memory_equal(a.end, b.end, 6 * sizeof *a.end);
    tt_pool_clear(&pool);
    tt_frame_free(one);
    tt_frame_free(two);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reciprocity),
        cmocka_unit_test(turning_about_the_vertical),
        cmocka_unit_test(superposition_and_balance),
        cmocka_unit_test(no_load_nothing_moves),
        cmocka_unit_test(imbalance_is_seen),
        cmocka_unit_test(loads_without_number_are_refused),
        cmocka_unit_test(same_bits_every_time),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
