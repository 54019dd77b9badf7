/* Rigid arms, and what tt_frame_prepare says of frames that cannot stand. */
#include "frame_make.h"

static const make_material bronze = {.e = 1.05e11, .g = 3.9e10, .rho = 8800.0, .shear = 0.9};
static const make_shape rod = {.kind = MAKE_ROUND, .size = {0.04, 0.04}};
static const tt_vec3 spot[] = {
    {0, 0, 0}, {0, 0, 1}, {0.3, 0.2, 1.1}, {0.7, -0.1, 1.4}, {0.9, 0.4, 1.0}};

enum { SPOTS = 5 };

static tt_frame *with_spots(void)
{
    tt_frame *frame = tt_frame_new();
    assert_non_null(frame);
    for (int i = 0; i < SPOTS; i++) assert_true(tt_frame_add_node(frame, spot[i]));
    return frame;
}

static void bar_between(tt_frame *frame, size_t a, size_t b, const make_shape *shape)
{
    make_bar(frame, a, spot[a], b, spot[b], &bronze, shape, 1);
}

/* Mast 0-1, arms 1-2 and 2-3 in a chain, a limb 3-4; or stiff bars in place of the arms. */
static tt_frame *mast_with_limb(const make_shape *instead)
{
    tt_frame *frame = with_spots();
    bar_between(frame, 0, 1, &rod);
    bar_between(frame, 3, 4, &rod);
    if (instead) {
        bar_between(frame, 1, 2, instead);
        bar_between(frame, 2, 3, instead);
    } else {
        assert_true(tt_frame_add_arm(frame, 2, 1) && tt_frame_add_arm(frame, 2, 3));
    }
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

static void arm_is_a_very_stiff_bar(void **unused)
{
    (void)unused;
    const make_shape thick = {.kind = MAKE_ROUND, .size = {2.0, 2.0}}; /* 6e6 times as stiff */
    tt_frame *arms = mast_with_limb(NULL), *bars = mast_with_limb(&thick);
    double node[SPOTS][TT_SIX] = {{0}};
    node[4][2] = -100.0;
    node[4][0] = 30.0;
    node[2][1] = 80.0;
    node[3][5] = 10.0;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_pool pool = {0};
    tt_frame_state a, b;
    assert_int_equal(tt_frame_solve(arms, &load, &pool, &a), TT_OK);
    assert_int_equal(tt_frame_solve(bars, &load, &pool, &b), TT_OK);
    for (int i = 1; i < SPOTS; i++) {
        for (int d = 0; d < TT_SIX; d++) assert_near(a.move[i][d], b.move[i][d], 2e-6 * 0.01);
    }
    for (int d = 0; d < TT_SIX; d++) assert_near(a.reaction[0][d], b.reaction[0][d], 1e-5);
    tt_pool_clear(&pool);
    tt_frame_free(arms);
    tt_frame_free(bars);
}

/* The slaves of a body move as u + theta x r, to rounding; the load may sit on any of them. */
static void arms_carry_exactly(void **unused)
{
    (void)unused;
    tt_frame *frame = mast_with_limb(NULL);
    double far[SPOTS][TT_SIX] = {{0}}, moved[SPOTS][TT_SIX] = {{0}};
    const tt_vec3 f = {50.0, -20.0, -70.0}, r = tt_sub(spot[3], spot[1]), m = tt_cross(r, f);
    const double at_three[TT_SIX] = {f.x, f.y, f.z},
                 at_one[TT_SIX] = {f.x, f.y, f.z, m.x, m.y, m.z};
    memcpy(far[3], at_three, sizeof at_three);
    memcpy(moved[1], at_one, sizeof at_one);
    const tt_frame_load a = {.node = (const double(*)[TT_SIX])far};
    const tt_frame_load b = {.node = (const double(*)[TT_SIX])moved};
    tt_pool pool = {0};
    tt_frame_state s, t;
    assert_int_equal(tt_frame_solve(frame, &a, &pool, &s), TT_OK);
    assert_int_equal(tt_frame_solve(frame, &b, &pool, &t), TT_OK);
    for (int d = 0; d < TT_SIX; d++) assert_near(s.move[4][d], t.move[4][d], 1e-15);
    const tt_vec3 turn = {s.move[1][3], s.move[1][4], s.move[1][5]}, more = tt_cross(turn, r);
    assert_near(s.move[3][0], s.move[1][0] + more.x, 1e-16);
    assert_near(s.move[3][1], s.move[1][1] + more.y, 1e-16);
    assert_near(s.move[3][2], s.move[1][2] + more.z, 1e-16);
    assert_near(s.move[3][4], s.move[1][4], 0.0);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* The held node of a body may be any of it: the ground is there and feels the moment about it. */
static void held_node_is_the_master(void **unused)
{
    (void)unused;
    tt_frame *frame = with_spots();
    assert_true(tt_frame_add_arm(frame, 1, 2) && tt_frame_add_arm(frame, 2, 0));
    assert_true(tt_frame_add_arm(frame, 0, 1)); /* a ring of arms does no harm */
    bar_between(frame, 1, 3, &rod);
    bar_between(frame, 1, 2, &rod); /* inside the body: never strained */
    bar_between(frame, 3, 4, &rod);
    assert_true(tt_frame_hold(frame, 2, make_fixed));
    make_prepare(frame);
    double node[SPOTS][TT_SIX] = {{0}};
    node[4][2] = -100.0;
    node[0][0] = 11.0;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_pool pool = {0};
    tt_frame_state s;
    assert_int_equal(tt_frame_solve(frame, &load, &pool, &s), TT_OK);
    const tt_vec3 a = tt_cross(tt_sub(spot[4], spot[2]), (tt_vec3){0.0, 0.0, -100.0});
    const tt_vec3 b = tt_cross(tt_sub(spot[0], spot[2]), (tt_vec3){11.0, 0.0, 0.0});
    assert_near(s.reaction[2][0], -11.0, 1e-9);
    assert_near(s.reaction[2][2], 100.0, 1e-9);
    assert_near(s.reaction[2][3], -a.x - b.x, 1e-9);
    assert_near(s.reaction[2][4], -a.y - b.y, 1e-9);
    assert_near(s.reaction[2][5], -a.z - b.z, 1e-9);
    for (int d = 0; d < TT_SIX; d++) assert_near(s.end[1][d], 0.0, 1e-12);
    assert_near(s.residual, 0.0, 1e-11);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void two_held_nodes_on_one_body(void **unused)
{
    (void)unused;
    tt_frame *frame = with_spots();
    tt_frame_fault fault;
    bar_between(frame, 0, 4, &rod);
    assert_true(tt_frame_add_arm(frame, 1, 2) && tt_frame_add_arm(frame, 2, 3));
    assert_true(tt_frame_add_arm(frame, 2, 4));
    assert_true(tt_frame_hold(frame, 3, make_fixed) && tt_frame_hold(frame, 1, make_fixed));
    assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_INPUT);
    assert_int_equal(fault.arm_a, 1);
    assert_int_equal(fault.arm_b, 3);
    tt_frame_free(frame);
}

static void loose_part_is_named(void **unused)
{
    (void)unused;
    tt_frame *frame = with_spots();
    tt_frame_fault fault;
    bar_between(frame, 0, 1, &rod);
    bar_between(frame, 4, 3, &rod);
    assert_true(tt_frame_add_arm(frame, 3, 2));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_MECHANISM);
    assert_int_equal(fault.node, 2);
    assert_int_equal(fault.direction, -1);
    assert_int_equal(fault.arm_a, fault.arm_b);
    tt_frame_free(frame);
}

/* A mast of bars, its foot held as given; what prepare finds. */
static tt_frame_fault stand_up(const bool held[TT_SIX])
{
    tt_frame *frame = tt_frame_new();
    tt_frame_fault fault;
    assert_true(frame && tt_frame_add_node(frame, spot[0]) && tt_frame_add_node(frame, spot[1]));
    make_bar(frame, 0, spot[0], 1, spot[1], &bronze, &rod, 7);
    assert_true(tt_frame_hold(frame, 0, held));
    assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_MECHANISM);
    tt_frame_free(frame);
    return fault;
}

/* Pinned: it may fall in x or y or spin; it cannot move along z. */
static void pinned_mast_falls(void **unused)
{
    (void)unused;
    const bool pinned[TT_SIX] = {true, true, true, false, false, false};
    const tt_frame_fault fault = stand_up(pinned);
    assert_true(fault.node < 8);
    assert_true(fault.direction >= 0 && fault.direction <= 5);
    assert_int_not_equal(fault.direction, 2);
}

/* Each direction left free alone is the one that is named, anywhere on the mast. */
static void the_free_direction_is_named(void **unused)
{
    (void)unused;
    for (int d = 0; d < TT_SIX; d++) {
        bool held[TT_SIX] = {true, true, true, true, true, true};
        held[d] = false;
        const tt_frame_fault fault = stand_up(held);
        /* a foot free to turn about x lets the mast move along y, and about y along x */
        const int moves = d == 3 ? 1 : d == 4 ? 0 : d;
        assert_true(fault.direction == d || fault.direction == moves);
    }
}

/* Five springs and nothing held: what the sixth would hold is named. */
static void the_direction_without_a_spring_is_named(void **unused)
{
    (void)unused;
    for (int free = 0; free < TT_SIX; free++) {
        double stiffness[TT_SIX] = {1e5, 1e5, 1e5, 1e4, 1e4, 1e4};
        tt_frame *frame = tt_frame_new();
        tt_frame_fault fault;
        assert_true(frame && tt_frame_add_node(frame, spot[0]) &&
                    tt_frame_add_node(frame, spot[1]));
        make_bar(frame, 0, spot[0], 1, spot[1], &bronze, &rod, 3);
        stiffness[free] = 0.0;
        assert_true(tt_frame_spring(frame, 0, stiffness));
        assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_MECHANISM);
        if (free < 3) assert_int_equal(fault.direction, free);
        if (free >= 3) assert_true(fault.direction >= 0);
        tt_frame_free(frame);
    }
}

/* A bar inside a body strains nothing, and its rounding must not pass for a support. */
static void a_bar_inside_a_body_holds_nothing(void **unused)
{
    (void)unused;
    tt_frame *frame = with_spots();
    tt_frame_fault fault;
    const bool pinned[TT_SIX] = {true, true, true, false, false, false};
    for (size_t i = 0; i + 1 < SPOTS; i++) {
        assert_true(tt_frame_add_arm(frame, i, i + 1));
        bar_between(frame, i, i + 1, &rod);
    }
    assert_true(tt_frame_hold(frame, 2, pinned));
    assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_MECHANISM);
    assert_int_equal(fault.node, 2);
    assert_true(fault.direction >= 3);
    tt_frame_free(frame);
}

static void a_slope_does_not_hide_it(void **unused)
{
    (void)unused;
    tt_frame *frame = with_spots();
    tt_frame_fault fault;
    const bool pinned[TT_SIX] = {true, true, true, false, false, false};
    bar_between(frame, 0, 2, &rod);
    bar_between(frame, 2, 3, &rod);
    bar_between(frame, 3, 4, &rod);
    assert_true(tt_frame_add_arm(frame, 1, 0));
    assert_true(tt_frame_hold(frame, 0, pinned) && tt_frame_hold(frame, 4, pinned));
    assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_MECHANISM); /* swings about 0-4 */
    assert_true(fault.direction >= 0);
    tt_frame_free(frame);
}

static void sections_without_stiffness_are_refused(void **unused)
{
    (void)unused;
    const make_shape hinge = {.kind = MAKE_PLAIN, .size = {1e-3, 0.0, 1e-6, 1e-6}};
    tt_frame *frame = with_spots();
    tt_frame_fault fault;
    for (size_t i = 0; i + 1 < SPOTS; i++) bar_between(frame, i, i + 1, i == 2 ? &hinge : &rod);
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    assert_int_equal(tt_frame_prepare(frame, &fault), TT_E_ILL_CONDITIONED);
    assert_int_equal(fault.node, 2);
    tt_frame_free(frame);
}

/* Held everywhere there is nothing to solve, and the ground takes the load as it comes. */
static void all_held(void **unused)
{
    (void)unused;
    tt_frame *frame = with_spots();
    for (size_t i = 0; i < SPOTS; i++) assert_true(tt_frame_hold(frame, i, make_fixed));
    bar_between(frame, 0, 1, &rod);
    make_prepare(frame);
    double node[SPOTS][TT_SIX] = {{0}};
    node[3][1] = 7.0;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_pool pool = {0};
    tt_frame_state s;
    tt_modes modes;
    assert_int_equal(tt_frame_solve(frame, &load, &pool, &s), TT_OK);
    assert_near(s.reaction[3][1], -7.0, 0.0);
    assert_int_equal(tt_frame_modes(frame, 3, 33.0, &pool, &modes), TT_OK);
    assert_int_equal(modes.n, 0);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(arm_is_a_very_stiff_bar),
        cmocka_unit_test(arms_carry_exactly),
        cmocka_unit_test(held_node_is_the_master),
        cmocka_unit_test(two_held_nodes_on_one_body),
        cmocka_unit_test(loose_part_is_named),
        cmocka_unit_test(pinned_mast_falls),
        cmocka_unit_test(the_free_direction_is_named),
        cmocka_unit_test(the_direction_without_a_spring_is_named),
        cmocka_unit_test(a_bar_inside_a_body_holds_nothing),
        cmocka_unit_test(a_slope_does_not_hide_it),
        cmocka_unit_test(sections_without_stiffness_are_refused),
        cmocka_unit_test(all_held),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
