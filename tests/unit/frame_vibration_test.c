/* What the list of modes promises: mass shares, when to stop, the proof, shapes, total mass. */
#include "frame_figure.h"

static double share(const tt_modes *modes, int along)
{
    double sum = 0.0;
    for (size_t i = 0; i < modes->n; i++) sum += modes->at[i].mass_fraction[along];
    return sum;
}

static tt_modes modes_of(const tt_frame *frame, size_t least, double up_to, tt_pool *pool)
{
    tt_modes modes;
    assert_int_equal(tt_frame_modes(frame, least, up_to, pool, &modes), TT_OK);
    assert_int_equal(modes.proof.counted, modes.n);
    assert_int_equal(modes.proof.found, modes.n);
    return modes;
}

/* Every mode there is moves every kilogram that can move: 6 unknowns at each of the free bodies. */
static void all_modes_move_all_the_mass(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    const tt_modes modes = modes_of(frame, 1000, 0.0, &pool);
    assert_int_equal(modes.n,
                     5 * 6 + 3); /* hips, breast, head with lamp, tail; a pinned foot turns */
    for (int d = 0; d < 3; d++) {
        assert_close(share(&modes, d), 1.0, 1e-8);
        assert_true(modes.free_mass[d] < tt_frame_mass(frame, NULL));
        assert_true(modes.free_mass[d] > 0.8 * tt_frame_mass(frame, NULL));
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* With no limit in Hz: until 0.9 each way, and not one mode more. */
static void stops_at_nine_tenths(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    tt_modes modes = modes_of(frame, 1, INFINITY, &pool);
    bool short_of = false;
    for (int d = 0; d < 3; d++) assert_true(share(&modes, d) >= 0.9);
    modes.n--;
    for (int d = 0; d < 3; d++) short_of = short_of || share(&modes, d) < 0.9;
    assert_true(short_of);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* The uniform cantilever has .613, .801, .866, .8992, .919 of its mass in 1 to 5 modes (D-03); many
 * bars, so that the share of the foot does not lift the fourth over .9. */
static void nine_tenths_of_a_cantilever(void **unused)
{
    (void)unused;
    const make_shape thin = {.kind = MAKE_PLAIN, .size = {1.0, 1e-8, 1e-8, 1e-8}};
    const make_material m = {.e = 1e8, .g = 1e8, .rho = 1.0};
    const bool flat[TT_SIX] = {true, true, false, true, false, true};
    const tt_vec3 a = {0, 0, 0}, b = {1, 0, 0};
    tt_frame *frame = tt_frame_new();
    tt_pool pool = {0};
    assert_true(frame && tt_frame_add_node(frame, a) && tt_frame_add_node(frame, b));
    make_bar(frame, 0, a, 1, b, &m, &thin, 400);
    for (size_t i = 0; i < 401; i++) assert_true(tt_frame_hold(frame, i, i ? flat : make_fixed));
    make_prepare(frame);
    const tt_modes modes = modes_of(frame, 1, INFINITY, &pool);
    assert_int_equal(modes.n, 5);
    assert_near(modes.free_mass[0], 0.0, 0.0);
    assert_near(modes.at[0].mass_fraction[0], 0.0, 0.0);
    assert_close(modes.free_mass[2], 1.0, 0.001); /* all but what sits on the foot */
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void stops_at_a_frequency(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    const tt_modes many = modes_of(frame, 12, 0.0, &pool);
    assert_int_equal(many.n, 12);
    for (size_t i = 1; i < 12; i++) assert_true(many.at[i].frequency >= many.at[i - 1].frequency);
    const double between = 0.5 * (many.at[2].frequency + many.at[3].frequency);
    const tt_modes few = modes_of(frame, 1, between, &pool);
    assert_true(share(&many, 2) < 0.9 || few.n == 3); /* the mass rule does not cut in before */
    assert_int_equal(few.n, 3);
    for (size_t i = 0; i < 3; i++) assert_close(few.at[i].frequency, many.at[i].frequency, 1e-9);
    assert_int_equal(modes_of(frame, 5, between, &pool).n, 5);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* The square of the frequency is the Rayleigh quotient: twice the least iterations change nothing.
 */
static void accuracy_of_frequencies(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    const tt_modes few = modes_of(frame, 3, 0.0, &pool), all = modes_of(frame, 1000, 0.0, &pool);
    for (size_t i = 0; i < 3; i++) {
        assert_close(pow(few.at[i].frequency, 2), pow(all.at[i].frequency, 2), 1e-9);
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

static void largest_move_is_one(void **unused)
{
    (void)unused;
    tt_frame *frame = figure_new(0.0);
    tt_pool pool = {0};
    const tt_modes modes = modes_of(frame, 6, 0.0, &pool);
    for (size_t m = 0; m < modes.n; m++) {
        double most = 0.0;
        for (int i = 0; i < FIGURE_NODES; i++) {
            const double *s = modes.at[m].shape[i];
            most = fmax(most, sqrt(s[0] * s[0] + s[1] * s[1] + s[2] * s[2]));
        }
        assert_close(most, 1.0, 1e-12);
        for (int d = 0; d < TT_SIX; d++) assert_near(modes.at[m].shape[0][d], 0.0, 0.0);
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* Mass and centre by the closed forms of a cone and by hand. */
static void total_mass_and_centre(void **unused)
{
    (void)unused;
    const make_shape cone = {.kind = MAKE_ROUND, .size = {0.2, 0.1}};
    const double none[3] = {0}, length = 2.0;
    tt_frame *frame = tt_frame_new();
    const tt_vec3 a = {1.0, 2.0, 3.0}, b = {1.0, 2.0, 3.0 + length};
    assert_true(frame && tt_frame_add_node(frame, a) && tt_frame_add_node(frame, b));
    make_bar(frame, 0, a, 1, b, &figure_bronze, &cone, 1);
    assert_true(tt_frame_add_mass(frame, 1, 100.0, (tt_vec3){0.5, 0.0, -1.0}, none));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    /* truncated cone: volume pi h (R^2 + R r + r^2) / 3, centre h (R^2 + 2 R r + 3 r^2) / (4 (...))
     */
    const double big = 0.1, small = 0.05, sum = big * big + big * small + small * small;
    const double mass = 8800.0 * PI * length * sum / 3.0;
    const double up = length * (big * big + 2.0 * big * small + 3.0 * small * small) / (4.0 * sum);
    tt_vec3 centre;
    assert_close(tt_frame_mass(frame, &centre), mass + 100.0, 1e-12);
    assert_close(centre.x, (mass * 1.0 + 100.0 * 1.5) / (mass + 100.0), 1e-12);
    assert_close(centre.y, 2.0, 1e-12);
    assert_close(centre.z, (mass * (3.0 + up) + 100.0 * 4.0) / (mass + 100.0), 1e-12);
    tt_frame_free(frame);
}

/* A massless mast with one mass on an arm beside its top: a point mass moves three ways, so three
 * modes, though the frame has 18 unknowns. Along the mast sqrt(EA/mL), across by the closed form.
 */
static tt_frame *lollipop(tt_vec3 offset)
{
    make_material light = figure_bronze;
    const make_shape rod = {.kind = MAKE_ROUND, .size = {0.05, 0.05}};
    const double none[3] = {0};
    const tt_vec3 a = {0, 0, 0}, b = {0, 0, 1.5};
    light.rho = 0.0;
    light.shear = 0.0;
    tt_frame *frame = tt_frame_new();
    assert_true(frame && tt_frame_add_node(frame, a) && tt_frame_add_node(frame, b));
    make_bar(frame, 0, a, 1, b, &light, &rod, 3);
    assert_true(tt_frame_add_mass(frame, 1, 20.0, offset, none));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

static void massless_unknowns(void **unused)
{
    (void)unused;
    tt_frame *frame = lollipop((tt_vec3){0});
    tt_pool pool = {0};
    const tt_modes modes = modes_of(frame, 9, 0.0, &pool);
    const double ei = 1.05e11 * PI * pow(0.05, 4) / 64.0, ea = 1.05e11 * PI * pow(0.05, 2) / 4.0;
    assert_int_equal(modes.n, 3);
    for (size_t i = 0; i < 2; i++) {
        assert_close(modes.at[i].frequency, sqrt(3.0 * ei / (20.0 * pow(1.5, 3))) / (2.0 * PI),
                     1e-9);
    }
    assert_close(modes.at[2].frequency, sqrt(ea / (20.0 * 1.5)) / (2.0 * PI), 1e-9);
    for (int d = 0; d < 3; d++) {
        assert_close(modes.free_mass[d], 20.0, 1e-9);
        assert_close(share(&modes, d), 1.0, 1e-9);
    }
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* Beside the top, across the arm: bending L^3/3EI of the mast and its twist under the arm, a^2
 * L/GJ, in series (that direction stands alone by symmetry). */
static void mass_beside_the_node(void **unused)
{
    (void)unused;
    tt_frame *frame = lollipop((tt_vec3){0.4, 0.0, 0.0});
    tt_pool pool = {0};
    const tt_modes modes = modes_of(frame, 9, 0.0, &pool);
    const double ei = 1.05e11 * PI * pow(0.05, 4) / 64.0, gj = 3.9e10 * PI * pow(0.05, 4) / 32.0;
    const double give = pow(1.5, 3) / (3.0 * ei) + 0.4 * 0.4 * 1.5 / gj;
    const double expected = 1.0 / sqrt(20.0 * give) / (2.0 * PI);
    double nearest = INFINITY;
    assert_int_equal(modes.n, 3);
    for (size_t i = 0; i < 3; i++)
        nearest = fmin(nearest, fabs(modes.at[i].frequency / expected - 1.0));
    assert_near(nearest, 0.0, 1e-9);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

/* A massless mast that carries a rod across its top: a bar between two arms, or one rigid mass with
 * the inertia of a cylinder. */
static tt_frame *mast_with_rod(bool as_bar)
{
    make_material light = figure_bronze;
    const make_shape rod = {.kind = MAKE_ROUND, .size = {0.05, 0.05}};
    const tt_vec3 at[] = {{0, 0, 0}, {0, 0, 1.5}, {0.1, -0.2, 1.6}, {0.1, 0.6, 1.6}};
    const double length = 0.8, area = PI * 0.05 * 0.05 / 4.0, i4 = PI * pow(0.05, 4) / 64.0;
    const double mass = 8800.0 * area * length;
    const double across = mass * length * length / 12.0 + 8800.0 * i4 * length;
    const double inertia[3] = {across, 2.0 * 8800.0 * i4 * length, across};
    tt_frame *frame = tt_frame_new();
    assert_non_null(frame);
    for (int i = 0; i < 4; i++) assert_true(tt_frame_add_node(frame, at[i]));
    light.rho = 0.0;
    make_bar(frame, 0, at[0], 1, at[1], &light, &rod, 2);
    assert_true(tt_frame_add_arm(frame, 1, 2) && tt_frame_add_arm(frame, 1, 3));
    if (as_bar)
        make_bar(frame, 2, at[2], 3, at[3], &figure_bronze, &rod, 1);
    else
        assert_true(tt_frame_add_mass(frame, 2, mass, (tt_vec3){0.0, 0.4, 0.0}, inertia));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    return frame;
}

static void bar_inside_a_body_is_a_rigid_mass(void **unused)
{
    (void)unused;
    tt_frame *bar = mast_with_rod(true), *mass = mast_with_rod(false);
    tt_pool pool = {0};
    const tt_modes a = modes_of(bar, 9, 0.0, &pool), b = modes_of(mass, 9, 0.0, &pool);
    assert_int_equal(a.n, 6);
    assert_int_equal(b.n, 6);
    for (size_t i = 0; i < 6; i++) assert_close(a.at[i].frequency, b.at[i].frequency, 1e-9);
    tt_pool_clear(&pool);
    tt_frame_free(bar);
    tt_frame_free(mass);
}

static void no_mass_no_modes(void **unused)
{
    (void)unused;
    make_material light = figure_bronze;
    const make_shape rod = {.kind = MAKE_ROUND, .size = {0.05, 0.05}};
    const tt_vec3 a = {0, 0, 0}, b = {0, 0, 1};
    tt_frame *frame = tt_frame_new();
    tt_pool pool = {0};
    light.rho = 0.0;
    assert_true(frame && tt_frame_add_node(frame, a) && tt_frame_add_node(frame, b));
    make_bar(frame, 0, a, 1, b, &light, &rod, 2);
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    make_prepare(frame);
    assert_int_equal(modes_of(frame, 3, 33.0, &pool).n, 0);
    assert_near(tt_frame_mass(frame, NULL), 0.0, 0.0);
    tt_pool_clear(&pool);
    tt_frame_free(frame);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(all_modes_move_all_the_mass),
        cmocka_unit_test(stops_at_nine_tenths),
        cmocka_unit_test(nine_tenths_of_a_cantilever),
        cmocka_unit_test(stops_at_a_frequency),
        cmocka_unit_test(accuracy_of_frequencies),
        cmocka_unit_test(largest_move_is_one),
        cmocka_unit_test(total_mass_and_centre),
        cmocka_unit_test(massless_unknowns),
        cmocka_unit_test(mass_beside_the_node),
        cmocka_unit_test(bar_inside_a_body_is_a_rigid_mass),
        cmocka_unit_test(no_mass_no_modes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
