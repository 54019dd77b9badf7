/* A bar whose two ends stand on one body: it weighs, it takes its load, nothing strains it. And
 * several cases at once against one by one. */
#include "frame_figure.h"
#include "frame/parts.h"

enum { NODES = 5 };
static const make_shape thick = {.kind = MAKE_ROUND, .size = {0.9, 0.7}};

/* Mast, arms from its head to two hands, limb from the first; with a thick bar between the hands or
 * not. */
static tt_frame *mast(bool inside)
{
    static const make_shape thin = {.kind = MAKE_ROUND, .size = {0.03, 0.02}};
    static const tt_vec3 spot[] = {
        {0, 0, 0}, {0.13, 0.07, 1.1}, {0.71, 0.37, 1.3}, {1.3, 0.9, 1.7}, {0.33, -0.81, 0.97}};
    tt_frame *frame = tt_frame_new();
    assert_non_null(frame);
    for (size_t i = 0; i < NODES; i++) assert_true(tt_frame_add_node(frame, spot[i]));
    make_bar(frame, 0, spot[0], 1, spot[1], &figure_bronze, &thin, 1);
    make_bar(frame, 2, spot[2], 3, spot[3], &figure_bronze, &thin, 1);
    if (inside) make_bar(frame, 2, spot[2], 4, spot[4], &figure_bronze, &thick, 1);
    assert_true(tt_frame_add_arm(frame, 2, 1) && tt_frame_add_arm(frame, 4, 1));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

static void nothing_strains_it(void **unused)
{
    (void)unused;
    tt_frame *with = mast(true), *without = mast(false);
    double node[NODES][TT_SIX] = {{0}};
    tt_pool pool = {0};
    node[3][0] = 31.0;
    node[3][2] = -77.0;
    node[2][4] = 13.0;
    const tt_frame_state state = figure_solve(with, node, NULL, &pool);
    assert_true(fabs(state.move[3][0]) > 1e-3);
    for (int d = 0; d < TT_SIX; d++) assert_near(state.end[2][d], 0.0, 0.0);
    const tt_sparse *a = &with->stiffness, *b = &without->stiffness;
    assert_int_equal(a->n, b->n);
    assert_int_equal(a->start[a->n], b->start[b->n]);
    assert_memory_equal(a->value, b->value, (size_t)a->start[a->n] * sizeof *a->value);
    assert_true(tt_frame_mass(with, NULL) > 10.0 * tt_frame_mass(without, NULL));
    tt_pool_clear(&pool);
    tt_frame_free(with);
    tt_frame_free(without);
}

/* Weight on it comes to the ground like any other. */
static void it_takes_its_load(void **unused)
{
    (void)unused;
    tt_frame *frame = mast(true);
    tt_vec3 line[3 * TT_BAR_POINTS] = {{0, 0, 0}};
    tt_pool pool = {0};
    for (int i = 2 * TT_BAR_POINTS; i < 3 * TT_BAR_POINTS; i++) line[i].z = -500.0;
    const tt_frame_state state = figure_solve(frame, NULL, line, &pool);
    const double length = tt_length((tt_vec3){0.71 - 0.33, 0.37 + 0.81, 1.3 - 0.97});
    assert_close(state.reaction[0][2], 500.0 * length, 1e-12);
    assert_near(state.residual, 0.0, 1e-12);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* The same bits, for more cases than go through the factors together. */
static void all_at_once_as_one_by_one(void **unused)
{
    (void)unused;
    enum { CASES = TT_SIDES + 3, BARS = 6 };
    tt_frame *frame = figure_new(0.2);
    double node[CASES][FIGURE_NODES][TT_SIX];
    tt_frame_load load[CASES];
    tt_frame_state all[CASES];
    tt_pool pool = {0};
    for (int c = 0; c < CASES; c++) {
        for (int i = 0; i < FIGURE_NODES * TT_SIX; i++) {
            node[c][i / TT_SIX][i % TT_SIX] = sin(1.0 + i * (c + 1.0));
        }
        load[c] = (tt_frame_load){.node = (const double(*)[TT_SIX])node[c]};
    }
    assert_int_equal(tt_frame_solve_all(frame, load, CASES, &pool, all), TT_OK);
    for (int c = 0; c < CASES; c++) {
        const tt_frame_state one = figure_solve(frame, node[c], NULL, &pool);
        assert_memory_equal(one.move, all[c].move, FIGURE_NODES * sizeof *one.move);
        assert_memory_equal(one.reaction, all[c].reaction, FIGURE_NODES * sizeof *one.reaction);
        assert_memory_equal(one.end, all[c].end, BARS * sizeof *one.end);
        assert_near(one.residual, all[c].residual, 0.0);
        assert_near(one.refinement, all[c].refinement, 0.0);
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* Equal posts side by side: every frequency as often as twice their number, more often than the
 * search has starting vectors. */
static void many_equal_posts(void **unused)
{
    (void)unused;
    enum { POSTS = 5, PIECES = 3 };
    static const make_shape post = {.kind = MAKE_ROUND, .size = {0.05, 0.03}};
    tt_frame *frame = tt_frame_new();
    tt_pool pool = {0};
    tt_modes modes;
    assert_non_null(frame);
    for (size_t i = 0; i < POSTS; i++) {
        const size_t foot = tt_frame_nodes(frame);
        const tt_vec3 from = {(double)i, 0.0, 0.0}, to = {(double)i, 0.0, 2.0};
        assert_true(tt_frame_add_node(frame, from) && tt_frame_add_node(frame, to));
        make_bar(frame, foot, from, foot + 1, to, &figure_bronze, &post, PIECES);
        assert_true(tt_frame_hold(frame, foot, make_fixed));
    }
    make_prepare(frame);
    assert_int_equal(tt_frame_modes(frame, 1, 0.0, &pool, &modes), TT_OK);
    assert_int_equal(modes.n, 2 * POSTS);
    assert_int_equal(modes.proof.counted, 2 * POSTS);
    for (size_t i = 1; i < modes.n; i++) {
        assert_close(modes.at[i].frequency, modes.at[0].frequency, 1e-9);
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_strains_it),
        cmocka_unit_test(it_takes_its_load),
        cmocka_unit_test(all_at_once_as_one_by_one),
        cmocka_unit_test(many_equal_posts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
