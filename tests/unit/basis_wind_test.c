/* Pressures, gust factors and drag of both bases: reference cases, and what must hold of all. */
#include "basis_lines.h"

static int exposure_of(const test_case *c)
{
    const char word = case_word(c, "exposure")[0];
    return word >= 'A' ? word : (int)case_number(c, "exposure", 0);
}

/* in hill: kind 1 ridge, 2 escarpment, 3 round; H, Lh, x in m. */
static tt_hill hill_of(const test_case *c)
{
    return (tt_hill){(tt_hill_shape)case_number_or(c, "hill", 0.0),
                     case_number_or(c, "hill_height", 0.0), case_number_or(c, "half_length", 1.0),
                     case_number_or(c, "from_crest", 0.0)};
}

static tt_wind_site site_of(const test_case *c)
{
    return (tt_wind_site){
        .basic_speed = case_number(c, "speed", 0),
        .exposure = exposure_of(c),
        .orography = case_number_or(c, "orography", 1.0),
        .direction_factor = case_number_or(c, "direction_factor", 1.0),
        .season_factor = case_number_or(c, "season_factor", 1.0),
        .air = case_number_or(c, "air", 1.25),
        .directionality = case_number_or(c, "directionality", 1.0),
        .elevation = case_number_or(c, "elevation", 0.0),
        .edition = (int)case_number_or(c, "edition", 16.0),
        .once_in = case_number_or(c, "once_in", 0.0),
        .service = case_number_or(c, "service", 0.0) > 0.0,
        .hill = hill_of(c),
    };
}

static tt_wind_body body_of(const test_case *c)
{
    return (tt_wind_body){
        .height = case_number(c, "height", 0),
        .base_height = case_number_or(c, "base", 0.0),
        .breadth = case_number(c, "breadth", 0),
        .depth = case_number_or(c, "depth", 0.0),
        .frequency = case_number(c, "frequency", 0),
        .log_decrement = case_number(c, "decrement", 0),
        .drag_area_modal = case_number_or(c, "drag_area", 0.0),
        .mass_modal = case_number_or(c, "mass", 0.0),
    };
}

static void expect_pressure(const test_case *c, int i, const lines *l, double q)
{
    const char *name = c->expect[i].name;
    case_expect(c, i,
                strcmp(name, "stagnation") == 0 ? q / line_value(l, "Kz") : line_value(l, name));
}

static void solve_pressure(const test_case *c)
{
    assert_string_equal(c->solve, "pressure");
    const tt_wind_site site = site_of(c);
    lines l;
    const double q = case_basis(c)->pressure(&site, case_number(c, "z", 0), lines_open(&l));
    lines_whole(&l, q);
    assert_true(q == case_basis(c)->pressure(&site, case_number(c, "z", 0), NULL));
    for (int i = 0; i < c->expects; i++) expect_pressure(c, i, &l, q);
    const double wrong =
        case_number_or(c, "wrong", 0.0); /* a printed figure known to be in error */
    if (wrong > 0.0) assert_true(fabs(q - wrong) > 0.03 * wrong);
    lines_close(&l);
}

static void solve_gust(const test_case *c)
{
    assert_string_equal(c->solve, "gust");
    const tt_wind_site site = site_of(c);
    const tt_wind_body body = body_of(c);
    lines l;
    const double factor = case_basis(c)->gust(&site, &body, lines_open(&l));
    lines_whole(&l, factor);
    assert_true(factor == case_basis(c)->gust(&site, &body, NULL));
    expect_lines(c, &l, factor);
    lines_close(&l);
}

static void solve_kz(const test_case *c)
{
    assert_string_equal(c->solve, "kz");
    for (int i = 0; i < c->expects; i++) {
        const tt_wind_site site = {.basic_speed = 50.0,
                                   .exposure = c->expect[i].name[0],
                                   .orography = 1.0,
                                   .directionality = 1.0,
                                   .edition = (int)case_number(c, "edition", 0)};
        lines l;
        tt_basis_named("us")->pressure(&site, 0.3048 * case_number(c, "feet", 0), lines_open(&l));
        case_expect(c, i, line_value(&l, "Kz"));
        lines_close(&l);
    }
}

static tt_shape shape_of(const test_case *c)
{
    static const char *const words[] = {"round", "oval", "box", "other"};
    for (int i = 0; i < 4; i++) {
        if (strcmp(words[i], case_word(c, "shape")) == 0) return (tt_shape)i;
    }
    fail();
    return TT_SHAPE_OTHER;
}

static void solve_drag(const test_case *c)
{
    assert_string_equal(c->solve, "drag");
    const double across = case_number(c, "across", 0), along = case_number(c, "along", 0);
    lines l;
    const double c_f = case_basis(c)->drag(shape_of(c), across, along, lines_open(&l));
    lines_whole(&l, c_f);
    expect_lines(c, &l, c_f);
    lines_close(&l);
}

static void pressures(void **state)
{
    (void)state;
    assert_int_equal(cases_run("basis", "eu-pressure.case", solve_pressure), 19);
    assert_int_equal(cases_run("basis", "us-pressure.case", solve_pressure), 12);
    assert_int_equal(cases_run("basis", "us-kz.case", solve_kz), 20);
}

static void gusts(void **state)
{
    (void)state;
    assert_int_equal(cases_run("basis", "eu-gust.case", solve_gust), 11);
    assert_int_equal(cases_run("basis", "us-gust.case", solve_gust), 8);
    assert_int_equal(cases_run("basis", "us-gust-table.case", solve_gust), 18);
}

static void drags(void **state)
{
    (void)state;
    assert_int_equal(cases_run("basis", "drag.case", solve_drag), 14);
}

/* ---- what must hold of all ------------------------------------------------------------------ */

static tt_wind_site site_for(const tt_basis *basis, int exposure, double speed)
{
    const bool eu = strcmp(basis->id, "eu") == 0;
    return (tt_wind_site){.basic_speed = speed,
                          .exposure = eu ? exposure : "BCDDD"[exposure],
                          .orography = 1.0,
                          .direction_factor = 1.0,
                          .season_factor = 1.0,
                          .air = 1.25,
                          .directionality = 1.0,
                          .edition = 16};
}

static const tt_wind_body figure = {.height = 2.6,
                                    .base_height = 0.8,
                                    .breadth = 0.45,
                                    .depth = 0.5,
                                    .frequency = 2.0,
                                    .log_decrement = 0.02,
                                    .drag_area_modal = 0.6,
                                    .mass_modal = 90.0};

static void pressure_rises(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        const tt_basis *basis = tt_basis_at(b);
        for (int exposure = 0; exposure < 5; exposure++) {
            const tt_wind_site site = site_for(basis, exposure, 30.0);
            const tt_wind_site twice = site_for(basis, exposure, 60.0);
            double below = 0.0;
            for (double z = 0.0; z < 60.0; z += 0.25) {
                const double q = basis->pressure(&site, z, NULL);
                assert_true(q > 100.0 && q >= below);
                assert_close(basis->pressure(&twice, z, NULL), 4.0 * q, 1e-12);
                below = q;
            }
            assert_true(below > 1.2 * basis->pressure(&site, 0.0, NULL));
        }
    }
}

static void open_ground_is_windier(void **state)
{
    (void)state;
    const tt_basis *eu = tt_basis_named("eu"), *us = tt_basis_named("us");
    for (int exposure = 1; exposure < 5; exposure++) {
        const tt_wind_site open = site_for(eu, exposure - 1, 25.0),
                           built = site_for(eu, exposure, 25.0);
        assert_true(eu->pressure(&open, 4.0, NULL) > eu->pressure(&built, 4.0, NULL));
    }
    for (int exposure = 1; exposure < 3; exposure++) {
        const tt_wind_site built = site_for(us, exposure - 1, 50.0),
                           open = site_for(us, exposure, 50.0);
        assert_true(us->pressure(&open, 4.0, NULL) > us->pressure(&built, 4.0, NULL));
    }
}

/* A faster sway feels less, as long as the air does not damp the slow one; no step at any
 * frequency; never under the least value. */
static void gust_falls_smoothly(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        const tt_basis *basis = tt_basis_at(b);
        const bool eu = strcmp(basis->id, "eu") == 0;
        const tt_wind_site site = site_for(basis, 1, eu ? 26.0 : 50.0);
        const double least = eu ? 1.0 : 0.85;
        tt_wind_body body = figure;
        body.drag_area_modal = 0.0;
        double before = 0.0;
        for (double n = 0.3; n < 50.0; n *= 1.001) {
            body.frequency = n;
            const double factor = basis->gust(&site, &body, NULL);
            assert_true(factor >= least && factor < 4.0);
            if (before > 0.0) assert_near(factor, before, 0.002);
            if (before > 0.0 && n > 1.0) assert_true(factor <= before);
            before = factor;
        }
        body.frequency = 60.0;
        assert_true(basis->gust(&site, &body, NULL) < before);
    }
}

static void gust_rises_with_speed(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        const tt_basis *basis = tt_basis_at(b);
        double below = 0.0;
        for (double speed = 15.0; speed < 60.0; speed += 1.0) {
            const tt_wind_site site = site_for(basis, 1, speed);
            const double factor = basis->gust(&site, &figure, NULL);
            assert_true(factor >= below);
            below = factor;
        }
        assert_true(below > 1.05);
    }
}

static void damping_calms(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        const tt_basis *basis = tt_basis_at(b);
        const tt_wind_site site = site_for(basis, 1, 40.0);
        tt_wind_body calm = figure, light = figure;
        calm.log_decrement = 0.1;
        light.drag_area_modal = 0.0;
        const double factor = basis->gust(&site, &figure, NULL);
        assert_true(basis->gust(&site, &calm, NULL) < factor);
        assert_true(basis->gust(&site, &light, NULL) > factor);
    }
}

/* A piece at the edge of sense still gets a figure. */
static void odd_bodies(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        const tt_basis *basis = tt_basis_at(b);
        const tt_wind_site site = site_for(basis, 2, 40.0);
        tt_wind_body none = figure, point = figure, slow = figure;
        none.frequency = -1.0;
        point.breadth = point.depth = point.mass_modal = 0.0;
        slow.frequency = 1e-6;
        assert_true(basis->gust(&site, &none, NULL) < 1.01);
        assert_true(isfinite(basis->gust(&site, &point, NULL)));
        assert_true(isfinite(basis->gust(&site, &slow, NULL)));
        for (int shape = 0; shape < 4; shape++) {
            assert_true(isfinite(basis->drag((tt_shape)shape, 0.1, 0.0, NULL)));
            assert_true(isfinite(basis->drag((tt_shape)shape, 0.0, 0.1, NULL)));
        }
    }
}

/* Drag has no step as an outline grows wider, and stays within the bounds of its figures. */
static void drag_is_smooth(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        for (int shape = 0; shape < 4; shape++) {
            double before = tt_basis_at(b)->drag((tt_shape)shape, 0.01, 1.0, NULL);
            for (double across = 0.01; across < 20.0; across *= 1.01) {
                const double c_f = tt_basis_at(b)->drag((tt_shape)shape, across, 1.0, NULL);
                assert_near(c_f, before, 0.02);
                assert_true(c_f >= 0.9 - 1e-12 && c_f <= 2.4 + 1e-12);
                before = c_f;
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pressures),
        cmocka_unit_test(gusts),
        cmocka_unit_test(drags),
        cmocka_unit_test(pressure_rises),
        cmocka_unit_test(open_ground_is_windier),
        cmocka_unit_test(gust_falls_smoothly),
        cmocka_unit_test(gust_rises_with_speed),
        cmocka_unit_test(damping_calms),
        cmocka_unit_test(odd_bodies),
        cmocka_unit_test(drag_is_smooth),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
