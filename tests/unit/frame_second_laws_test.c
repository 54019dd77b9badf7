/* Laws of second order on an invented heron: small loads give first order, what second order adds
 * goes with the square of the loads, bars hand on to each other what they carry on the moved frame,
 * turning the whole changes nothing, and bounds are not passed. */
#include "frame_figure.h"

#include "frame/second.h"

typedef struct {
    tt_frame *frame;
    tt_pool pool;
    double node[FIGURE_NODES][TT_SIX];
    double lever[FIGURE_NODES][3][3];
    tt_frame_load load;
    tt_frame_state first;
} desk;

static void push(desk *d, size_t node, tt_vec3 force, double about_z)
{
    const tt_vec3 f = figure_turn(force, about_z);
    d->node[node][0] += f.x;
    d->node[node][1] += f.y;
    d->node[node][2] += f.z;
}

/* Weights on the breast, the head and the lamp, a push at the tail; `size` times. */
static void open_desk(desk *d, double size, double about_z)
{
    *d = (desk){.frame = figure_new(about_z)};
    push(d, 4, (tt_vec3){0.0, 0.0, -900.0 * size}, about_z);
    push(d, 5, (tt_vec3){20.0 * size, 30.0 * size, -80.0 * size}, about_z);
    push(d, 6, (tt_vec3){-10.0 * size, 60.0 * size, -50.0 * size}, about_z);
    push(d, 7, (tt_vec3){0.0, 5.0 * size, -40.0 * size}, about_z);
    d->load = (tt_frame_load){.node = (const double(*)[TT_SIX])d->node};
    assert_int_equal(tt_frame_solve(d->frame, &d->load, &d->pool, &d->first), TT_OK);
}

static void close_desk(desk *d)
{
    tt_pool_clear(&d->pool);
    tt_frame_free(d->frame);
}

static tt_second_state solve(desk *d)
{
    tt_second_state second;
    assert_int_equal(tt_frame_second(d->frame, &d->load, &d->first, false, &d->pool, &second),
                     TT_OK);
    assert_false(second.buckles);
    return second;
}

/* What second order adds to the move of the head, along y. */
static double added(double size)
{
    desk d;
    open_desk(&d, size, 0.0);
    const tt_second_state second = solve(&d);
    const double more = second.state.move[5][1] - d.first.move[5][1];
    close_desk(&d);
    return more;
}

static void square_of_the_loads(void **unused)
{
    (void)unused;
    const double one = added(1e-3), two = added(2e-3);
    assert_true(fabs(one) > 0.0);
    assert_close(two / one, 4.0, 2e-3);
}

/* Section forces of a bar's end, or start, in global axes. */
static void handed(const desk *d, const tt_second_state *second, size_t bar, double x, size_t a,
                   size_t b, double out[TT_SIX])
{
    const tt_frame_cut cut = tt_frame_cut_at(x);
    double f[TT_SIX];
    const tt_axes axes =
        make_axes(figure_spot(a, 0.0), figure_spot(b, 0.0), (tt_vec3){-1.0, 0.3, 0.2});
    tt_second_section(d->frame, second, &d->load, bar, &cut, f);
    const tt_vec3 force = tt_to_global(&axes, (tt_vec3){f[0], f[1], f[2]});
    const tt_vec3 moment = tt_to_global(&axes, (tt_vec3){f[3], f[4], f[5]});
    const double six[TT_SIX] = {force.x, force.y, force.z, moment.x, moment.y, moment.z};
    memcpy(out, six, sizeof six);
}

/* At the hip 2 meet the leg (its end), the body and the tail (the tail's end); nothing is loaded
 * there. Forces by equilibrium from the far ends on the moved bars. */
static void bars_hand_on(void **unused)
{
    (void)unused;
    desk d;
    open_desk(&d, 0.05, 0.0);
    const tt_second_state second = solve(&d);
    double leg[TT_SIX], body[TT_SIX], tail[TT_SIX];
    handed(&d, &second, 0, 1.0, 0, 2, leg);
    handed(&d, &second, 2, 0.0, 2, 4, body);
    handed(&d, &second, 5, 1.0, 6, 2, tail);
    for (int k = 0; k < TT_SIX; k++) {
        const double size = k < 3 ? 50.0 : 20.0; /* N, N.m: of what is carried */
        assert_near(leg[k] + tail[k], body[k], 2e-5 * size);
    }
    close_desk(&d);
}

static double lowest_factor(double about_z)
{
    desk d;
    tt_buckling found;
    open_desk(&d, 1.0, about_z);
    assert_int_equal(tt_frame_buckling(d.frame, &d.load, &d.first, 1, &d.pool, &found), TT_OK);
    assert_int_equal(found.n, 1);
    const double factor = found.at[0].factor;
    close_desk(&d);
    return factor;
}

static void turned_whole(void **unused)
{
    (void)unused;
    const double factor = lowest_factor(0.0);
    assert_true(factor > 1.0);
    assert_close(lowest_factor(0.7), factor, 1e-8);
    desk a, b;
    open_desk(&a, 1.0, 0.0);
    open_desk(&b, 1.0, 0.7);
    const tt_second_state one = solve(&a), two = solve(&b);
    const tt_vec3 u = {one.state.move[5][0], one.state.move[5][1], one.state.move[5][2]};
    const tt_vec3 v = figure_turn(u, 0.7);
    const double size = tt_length(u);
    assert_near(two.state.move[5][0], v.x, 1e-6 * size);
    assert_near(two.state.move[5][1], v.y, 1e-6 * size);
    assert_near(two.state.move[5][2], v.z, 1e-6 * size);
    close_desk(&a);
    close_desk(&b);
}

static void bounds_are_not_passed(void **unused)
{
    (void)unused;
    desk d;
    double least[2], change, of_bar[16];
    open_desk(&d, 1.0, 0.0);
    const double factor = lowest_factor(0.0);
    assert_int_equal(tt_frame_least(d.frame, &d.load, &d.first, least), TT_OK);
    assert_true(least[0] > 1.0 && least[0] <= factor);
    assert_int_equal(tt_frame_first_change(d.frame, &d.load, &d.first, &change, of_bar), TT_OK);
    const tt_second_state second = solve(&d);
    for (size_t bar = 0; bar < tt_frame_bars(d.frame); bar++) {
        const tt_frame_cut middle = tt_frame_cut_at(0.5);
        double one[TT_SIX], two[TT_SIX];
        tt_mat6 reach;
        tt_frame_cut_section(d.frame, &d.first, &d.load, bar, &middle, one);
        tt_second_section_turned(d.frame, &second, &d.load, bar, &middle, two);
        tt_frame_reach(d.frame, bar, 0.5, &reach);
        for (int k = 0; k < TT_SIX; k++) {
            const double rest = change / least[0] / (1.0 - 1.0 / least[0]);
            const double most = sqrt(reach.at[k][k]) * (of_bar[bar] + 1.5 * rest);
            assert_true(fabs(two[k] - one[k]) <= 1.02 * most); /* forces grow by 2 % themselves */
        }
    }
    close_desk(&d);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(square_of_the_loads), cmocka_unit_test(bars_hand_on),
        cmocka_unit_test(turned_whole), cmocka_unit_test(bounds_are_not_passed)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
