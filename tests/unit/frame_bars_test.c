/* One bar and its sections: points, line loads, couplings, splitting. */
#include "frame_make.h"

static const make_material steel = {.e = 2.1e11, .g = 8.1e10, .rho = 7850.0, .shear = 0.5};
static const make_shape flat = {.kind = MAKE_PLAIN, .size = {2e-3, 4e-6, 1.5e-6, 2.5e-6}};
static const tt_vec3 foot = {0.3, -0.2, 0.1}, head = {1.4, 0.9, 1.7};
static const double lateral[TT_SIX] = {300.0, -200.0, 150.0, 20.0, 35.0, -15.0};

static void points_integrate_to_degree_eleven(void **unused)
{
    (void)unused;
    for (int degree = 0; degree <= 11; degree++) {
        double sum = 0.0;
        for (int i = 0; i < TT_BAR_POINTS; i++) {
            sum += tt_bar_weight[i] * pow(tt_bar_point[i], degree);
        }
        assert_near(sum, 1.0 / (degree + 1), 2e-16);
    }
}

/* A bar from foot (held) to head with a load that is a polynomial of degree 3 along it. */
typedef struct {
    tt_frame *frame;
    tt_pool pool;
    tt_vec3 *force, *moment;
    double (*node)[TT_SIX];
    tt_frame_load load;
    tt_frame_state state;
} loaded;

static tt_vec3 force_at(double t)
{
    return (tt_vec3){100.0 - 50.0 * t * t, 40.0 + 300.0 * t - 90.0 * t * t * t, -200.0 * t};
}

static tt_vec3 moment_at(double t)
{
    return (tt_vec3){5.0 * t, 7.0, -9.0 * t * t};
}

static loaded solve_bar(const make_material *material, const make_shape *shape, int pieces)
{
    loaded s = {.frame = tt_frame_new()};
    assert_true(s.frame && tt_frame_add_node(s.frame, foot) && tt_frame_add_node(s.frame, head));
    make_bar(s.frame, 0, foot, 1, head, material, shape, pieces);
    assert_true(tt_frame_hold(s.frame, 0, make_fixed));
    make_prepare(s.frame);
    const size_t n = tt_frame_bars(s.frame) * TT_BAR_POINTS;
    s.force = calloc(n, sizeof *s.force);
    s.moment = calloc(n, sizeof *s.moment);
    s.node = calloc(tt_frame_nodes(s.frame), sizeof *s.node);
    assert_true(s.force && s.moment && s.node);
    for (size_t i = 0; i < n; i++) {
        const double t = ((double)(i / TT_BAR_POINTS) + tt_bar_point[i % TT_BAR_POINTS]) / pieces;
        s.force[i] = force_at(t);
        s.moment[i] = moment_at(t);
    }
    memcpy(s.node[1], lateral, sizeof lateral);
    s.load = (tt_frame_load){s.force, s.moment, (const double(*)[TT_SIX])s.node, NULL};
    assert_int_equal(tt_frame_solve(s.frame, &s.load, &s.pool, &s.state), TT_OK);
    return s;
}

static void release(loaded *s)
{
    tt_frame_free(s->frame);
    tt_pool_clear(&s->pool);
    free(s->force);
    free(s->moment);
    free(s->node);
}

/* Integrals of the polynomials by hand: 100 - 50/3, 40 + 150 - 90/4, -100 per metre. */
static void reactions_balance_line_loads(void **unused)
{
    (void)unused;
    loaded s = solve_bar(&steel, &flat, 1);
    const double length = tt_length(tt_sub(head, foot));
    const double sum[3] = {100.0 - 50.0 / 3.0, 190.0 - 22.5, -100.0};
    for (int d = 0; d < 3; d++) {
        assert_close(s.state.reaction[0][d], -sum[d] * length - lateral[d], 1e-12);
    }
    assert_near(s.state.residual, 0.0, 1e-12);
    release(&s);
}

/* Moment about the foot: force times t along the bar, integrated by hand. */
static void reaction_moment_of_line_loads(void **unused)
{
    (void)unused;
    loaded s = solve_bar(&steel, &flat, 1);
    const tt_vec3 along = tt_sub(head, foot);
    const double length = tt_length(along);
    const tt_vec3 first = {50.0 - 12.5, 20.0 + 100.0 - 18.0, -200.0 / 3.0};
    const tt_vec3 twist = {2.5, 7.0, -3.0}, tip = {lateral[0], lateral[1], lateral[2]};
    tt_vec3 sum = tt_scale(tt_add(tt_cross(along, first), twist), length);
    sum = tt_add(sum, tt_add(tt_cross(along, tip), (tt_vec3){lateral[3], lateral[4], lateral[5]}));
    const double limit = 1e-12 * tt_length(sum);
    assert_near(s.state.reaction[0][3], -sum.x, limit);
    assert_near(s.state.reaction[0][4], -sum.y, limit);
    assert_near(s.state.reaction[0][5], -sum.z, limit);
    release(&s);
}

/* At the free head the section forces are the load there, turned into the bar's axes. */
static void section_forces_reach_the_head(void **unused)
{
    (void)unused;
    loaded s = solve_bar(&steel, &flat, 1);
    const tt_axes axes = make_axes(foot, head, make_up(foot, head));
    const tt_vec3 f = tt_to_local(&axes, (tt_vec3){lateral[0], lateral[1], lateral[2]});
    const tt_vec3 m = tt_to_local(&axes, (tt_vec3){lateral[3], lateral[4], lateral[5]});
    const double expected[TT_SIX] = {f.x, f.y, f.z, m.x, m.y, m.z};
    double out[TT_SIX];
    tt_frame_section(s.frame, &s.state, &s.load, 0, 1.0, out);
    for (int d = 0; d < TT_SIX; d++) assert_near(out[d], expected[d], 1e-10);
    tt_frame_section(s.frame, &s.state, &s.load, 0, 0.0, out);
    assert_memory_equal(out, s.state.end[0], sizeof out);
    release(&s);
}

/* The same bar from its other end: x and z turn round, y stays; so do the face and its forces. */
static void both_ends_agree(void **unused)
{
    (void)unused;
    static const double sign[TT_SIX] = {1.0, -1.0, 1.0, 1.0, -1.0, 1.0};
    loaded s = solve_bar(&steel, &flat, 1);
    tt_frame *turned = tt_frame_new();
    assert_true(turned && tt_frame_add_node(turned, foot) && tt_frame_add_node(turned, head));
    tt_axes axes = make_axes(foot, head, make_up(foot, head));
    axes = (tt_axes){tt_scale(axes.x, -1.0), axes.y, tt_scale(axes.z, -1.0)};
    tt_bar_section sections[TT_BAR_POINTS];
    tt_vec3 force[TT_BAR_POINTS], moment[TT_BAR_POINTS];
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const make_area area = make_area_at(&flat, 0.0);
        sections[i] = make_section(&steel, &area);
        force[i] = s.force[TT_BAR_POINTS - 1 - i];
        moment[i] = s.moment[TT_BAR_POINTS - 1 - i];
    }
    assert_true(tt_frame_add_bar(turned, 1, 0, &axes, sections));
    assert_true(tt_frame_hold(turned, 0, make_fixed));
    make_prepare(turned);
    const tt_frame_load load = {force, moment, (const double(*)[TT_SIX])s.node, NULL};
    tt_frame_state state;
    assert_int_equal(tt_frame_solve(turned, &load, &s.pool, &state), TT_OK);
    for (int d = 0; d < TT_SIX; d++) {
        assert_near(state.move[1][d], s.state.move[1][d], 1e-12 * fabs(s.state.move[1][d]) + 1e-15);
    }
    for (int k = 0; k <= 10; k++) {
        double one[TT_SIX], other[TT_SIX];
        tt_frame_section(s.frame, &s.state, &s.load, 0, k / 10.0, one);
        tt_frame_section(turned, &state, &load, 0, 1.0 - k / 10.0, other);
        for (int d = 0; d < TT_SIX; d++) assert_near(other[d], sign[d] * one[d], 1e-9);
    }
    tt_frame_free(turned);
    release(&s);
}

static void compare_split(const make_material *m, const make_shape *shape, int pieces, double limit)
{
    loaded one = solve_bar(m, shape, 1), many = solve_bar(m, shape, pieces);
    for (int d = 0; d < TT_SIX; d++) {
        assert_close(many.state.move[1][d], one.state.move[1][d], limit);
        assert_close(many.state.reaction[0][d], one.state.reaction[0][d], 1e-10);
    }
    double at_one[TT_SIX], at_many[TT_SIX];
    tt_frame_section(one.frame, &one.state, &one.load, 0, 0.55, at_one);
    const size_t piece = (size_t)(0.55 * pieces);
    const double within = 0.55 * pieces - (double)piece;
    tt_frame_section(many.frame, &many.state, &many.load, piece, within, at_many);
    for (int d = 0; d < TT_SIX; d++) assert_near(at_many[d], at_one[d], 1e-8);
    release(&one);
    release(&many);
}

static void splitting_changes_nothing(void **unused)
{
    (void)unused;
    const make_shape cone = {.kind = MAKE_ROUND, .size = {0.08, 0.05}};
    const make_material rigid = {.e = 1e11, .g = 4e10, .rho = 8800.0};
    compare_split(&steel, &flat, 3, 1e-9);
    compare_split(&steel, &flat, 10, 1e-9);
    compare_split(&rigid, &cone, 3, 1e-6);
    compare_split(&rigid, &cone, 10, 1e-6);
}

/* Section strains of an axis from those of one that lies (y, z) away: plane sections. */
static void shift_section(tt_bar_section *s, double y, double z)
{
    double t[TT_SIX][TT_SIX] = {{0}}, k[TT_SIX][TT_SIX] = {{0}};
    for (int i = 0; i < TT_SIX; i++) t[i][i] = 1.0;
    t[0][4] = z;
    t[0][5] = -y;
    t[1][3] = -z;
    t[2][3] = y;
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) {
            for (int r = 0; r < TT_SIX; r++) k[i][j] += t[r][i] * s->stiffness[r][r] * t[r][j];
        }
    }
    memcpy(s->stiffness, k, sizeof k);
    s->mass_y = y;
    s->mass_z = z;
}

enum { Y_OFF = 0, Z_OFF = 1 };
static const double off[2] = {0.04, -0.07};

/* Nodes 0, 1 on the axis; the matter lies beside it. by_arms: as a plain bar between arms. */
static tt_frame *beside(bool by_arms)
{
    tt_frame *frame = tt_frame_new();
    const tt_axes axes = make_axes(foot, head, make_up(foot, head));
    const tt_vec3 side = tt_to_global(&axes, (tt_vec3){0.0, off[Y_OFF], off[Z_OFF]});
    assert_true(frame && tt_frame_add_node(frame, foot) && tt_frame_add_node(frame, head));
    const make_area area = make_area_at(&flat, 0.0);
    tt_bar_section sections[TT_BAR_POINTS];
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        sections[i] = make_section(&steel, &area);
        if (!by_arms) shift_section(&sections[i], off[Y_OFF], off[Z_OFF]);
    }
    if (by_arms) {
        assert_true(tt_frame_add_node(frame, tt_add(foot, side)));
        assert_true(tt_frame_add_node(frame, tt_add(head, side)));
        assert_true(tt_frame_add_arm(frame, 0, 2) && tt_frame_add_arm(frame, 3, 1));
    }
    assert_true(tt_frame_add_bar(frame, by_arms ? 2 : 0, by_arms ? 3 : 1, &axes, sections));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

/* Coupling terms of the section against the algebra of arms: moves, and frequencies with the mass
 * beside the axis. */
static void couplings_are_arms(void **unused)
{
    (void)unused;
    tt_frame *coupled = beside(false), *arms = beside(true);
    double node[4][TT_SIX] = {{0}};
    memcpy(node[1], lateral, sizeof lateral);
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_pool pool = {0};
    tt_frame_state a, b;
    tt_modes m, n;
    assert_int_equal(tt_frame_solve(coupled, &load, &pool, &a), TT_OK);
    assert_int_equal(tt_frame_solve(arms, &load, &pool, &b), TT_OK);
    for (int d = 0; d < TT_SIX; d++) {
        assert_close(a.move[1][d], b.move[1][d], 1e-11);
        assert_close(a.reaction[0][d], b.reaction[0][d], 1e-11);
    }
    assert_int_equal(tt_frame_modes(coupled, 6, 0.0, &pool, &m), TT_OK);
    assert_int_equal(tt_frame_modes(arms, 6, 0.0, &pool, &n), TT_OK);
    assert_int_equal(m.n, 6);
    for (size_t i = 0; i < 6; i++) assert_close(m.at[i].frequency, n.at[i].frequency, 1e-9);
    tt_vec3 at, other;
    assert_close(tt_frame_mass(coupled, &at), tt_frame_mass(arms, &other), 1e-13);
    assert_near(tt_length(tt_sub(at, other)), 0.0, 1e-12);
    tt_pool_clear(&pool);
    tt_frame_free(coupled);
    tt_frame_free(arms);
}

/* A shear stiffness 1e12 times its own gives what an infinite one gives. */
static void very_stiff_in_shear(void **unused)
{
    (void)unused;
    make_material stiff = steel, rigid = steel;
    stiff.shear = 1e12;
    rigid.shear = 0.0;
    loaded a = solve_bar(&stiff, &flat, 1), b = solve_bar(&rigid, &flat, 1);
    for (int d = 0; d < TT_SIX; d++) {
        assert_close(a.state.move[1][d], b.state.move[1][d], 1e-10);
    }
    release(&a);
    release(&b);
}

static tt_frame *mast_of_many(tt_vec3 top, const make_material *m, int pieces)
{
    const make_shape thin = {.kind = MAKE_ROUND, .size = {0.01, 0.01}};
    tt_frame *frame = tt_frame_new();
    assert_true(frame && tt_frame_add_node(frame, (tt_vec3){0}) && tt_frame_add_node(frame, top));
    make_bar(frame, 0, (tt_vec3){0}, 1, top, m, &thin, pieces);
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

/* Very stiff along, very soft across, at a slope, in many short bars: the terms of the assembled
 * matrix lose eight figures, the answer must not. P L^3/3EI + P L/kGA across, P L/EA along. */
static void slender_mast_of_many_bars(void **unused)
{
    (void)unused;
    enum { PIECES = 200 };
    const make_material m = {.e = 1e11, .g = 4e10, .rho = 8800.0, .shear = 0.9};
    const tt_vec3 top = {1.7, 1.1, 3.3}, pull = {10.0, 0.0, 0.0}, along = tt_unit(top);
    tt_frame *frame = mast_of_many(top, &m, PIECES);
    double(*node)[TT_SIX] = calloc(tt_frame_nodes(frame), sizeof *node);
    assert_non_null(node);
    node[1][0] = pull.x;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_pool pool = {0};
    tt_frame_state s;
    assert_int_equal(tt_frame_solve(frame, &load, &pool, &s), TT_OK);
    const double d = 0.01, l = tt_length(top), ei = 1e11 * PI * d * d * d * d / 64.0;
    const double area = PI * d * d / 4.0, axial = tt_dot(pull, along);
    const tt_vec3 across = tt_sub(pull, tt_scale(along, axial));
    const double soft = l * l * l / (3.0 * ei) + l / (0.9 * 4e10 * area);
    const tt_vec3 move = tt_add(tt_scale(across, soft), tt_scale(along, axial * l / (1e11 * area)));
    assert_close(s.move[1][0], move.x, 1e-11);
    assert_close(s.move[1][2], move.z, 1e-11);
    assert_near(s.residual, 0.0, 1e-11);
    assert_true(s.refinement > 1e-10 && s.refinement < 1e-5);
    free(node);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* The same mast upright, where stiff and soft do not mix, swings alike. */
static void slender_mast_swings_alike_at_a_slope(void **unused)
{
    (void)unused;
    const make_material m = {.e = 1e11, .g = 4e10, .rho = 8800.0, .shear = 0.9};
    const tt_vec3 top = {1.7, 1.1, 3.3};
    tt_frame *slope = mast_of_many(top, &m, 100);
    tt_frame *upright = mast_of_many((tt_vec3){0.0, 0.0, tt_length(top)}, &m, 100);
    tt_pool pool = {0};
    tt_modes a, b;
    assert_int_equal(tt_frame_modes(slope, 8, 0.0, &pool, &a), TT_OK);
    assert_int_equal(tt_frame_modes(upright, 8, 0.0, &pool, &b), TT_OK);
    for (int i = 0; i < 8; i++) assert_close(a.at[i].frequency, b.at[i].frequency, 5e-10);
    tt_pool_clear(&pool);
    tt_frame_free(slope);
    tt_frame_free(upright);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(points_integrate_to_degree_eleven),
        cmocka_unit_test(reactions_balance_line_loads),
        cmocka_unit_test(reaction_moment_of_line_loads),
        cmocka_unit_test(section_forces_reach_the_head),
        cmocka_unit_test(both_ends_agree),
        cmocka_unit_test(splitting_changes_nothing),
        cmocka_unit_test(couplings_are_arms),
        cmocka_unit_test(very_stiff_in_shear),
        cmocka_unit_test(slender_mast_of_many_bars),
        cmocka_unit_test(slender_mast_swings_alike_at_a_slope),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
