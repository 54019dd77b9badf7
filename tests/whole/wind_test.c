/* Wind on limbs and lumps against the rule written out by hand: force per length =
 * q G cf b (sin g w + sin^2 g cos g c). Expected values are built from the law, not from the code.
 */
#include "house.h"

static house leaning(const char *wind, double x, double y, double z, const char *lump)
{
    char text[1000];
    snprintf(text, sizeof text,
             "piece: Rod\nunits: mm\nbasis: %s\nbronze: {alloy: C87300, wall: 4}\n"
             "segments: [{name: rod, from: a, to: b, outline: {round: 80}}]\n"
             "points: {a: [0, 0, 0], b: [%.17g, %.17g, %.17g]}\n"
             "stands: [{at: a, held: fixed}]\nsite: {wind: {basic_speed: %s}}\n%s",
             strstr(wind, "mph") ? "us" : "eu", x, y, z, wind, lump);
    return house_of(text);
}

static const char european[] = "24 m/s, terrain: II";

/* Below zmin the pressure is one: qp = (1 + 7 Iv) rho vm^2 / 2 with ln(2/0.05), EN
 * 1991-1-4 4.2-4.5. */
static double pressure(void)
{
    const double ln = log(2.0 / 0.05), vm = 0.19 * ln * 24.0;
    return (1.0 + 7.0 / ln) * 0.5 * 1.25 * vm * vm;
}

static void by_the_law(const house *h, tt_vec3 axis, double length)
{
    const tt_vec3 a = tt_unit(axis);
    for (size_t i = 0; i < h->a->actions.winds; i++) {
        const tt_wind_direction *wind = &h->a->actions.wind[i];
        const double t = wind->direction * atan(1.0) / 45.0, cosine = cos(t) * a.x + sin(t) * a.y;
        const tt_vec3 w = {cos(t), sin(t), 0};
        const double g = acos(fmin(1.0, fabs(cosine)));
        const tt_vec3 n = tt_sub(w, tt_scale(a, cosine)); /* of length sin g */
        tt_vec3 c = tt_sub(tt_scale(n, sin(g) > 0 ? 1.0 / sin(g) : 0.0), tt_scale(w, sin(g)));
        const double size = tt_length(c);
        if (size > 0) c = tt_scale(c, 1.0 / size);
        const tt_vec3 f = tt_add(tt_scale(w, sin(g)), tt_scale(c, sin(g) * sin(g) * cos(g)));
        const double q = pressure() * wind->gust * 1.2 * 0.08 * length;
        assert_near(wind->force.x, q * f.x, 1e-7 * q);
        assert_near(wind->force.y, q * f.y, 1e-7 * q);
        assert_near(wind->force.z, q * f.z, 1e-7 * q);
    }
}

static void on_leaning_rods(void **state)
{
    (void)state;
    static const tt_vec3 rods[] = {
        {0, 0, 1500}, {900, 0, 1200}, {700, 500, 900}, {-400, 300, 1100}, {1100, 200, 0}};
    for (size_t i = 0; i < sizeof rods / sizeof *rods; i++) {
        house h = leaning(european, rods[i].x, rods[i].y, rods[i].z, "");
        assert_int_equal(h.a->actions.winds, 36);
        by_the_law(&h, rods[i], tt_length(rods[i]) / 1000.0);
        house_close(&h);
    }
}

static void end_on_nothing(void **state)
{
    (void)state;
    house h = leaning(european, 1200, 0, 0, "");
    assert_near(tt_length(h.a->actions.wind[0].force), 0.0, 1e-9);
    assert_near(tt_length(h.a->actions.wind[18].force), 0.0, 1e-9);
    assert_true(tt_length(h.a->actions.wind[9].force) > 50.0);
    house_close(&h);
}

/* A lump's force acts at the lump: 0.3 m over the tip and 0.2 m to the side of a plumb rod. */
static void lump_at_its_place(void **state)
{
    (void)state;
    house bare = leaning(european, 0, 0, 1200, "");
    house h = leaning(european, 0, 0, 1200,
                      "lumps: [{name: lamp, at: b, mass: 1 kg, offset: [0, 200, 300], wind_area: "
                      "0.05 m2, drag: 1.4}]\n");
    tt_vec3 force, moment, without, none;
    for (size_t i = 0; i < h.a->actions.cases.n; i++) {
        const tt_case *acting = &h.a->actions.cases.at[i];
        if (strcmp(acting->name, "wind 0") != 0) continue;
        tt_case_resultant(h.a->model, acting, (tt_vec3){0, 0, 0}, &force, &moment);
        tt_case_resultant(bare.a->model, &bare.a->actions.cases.at[i], (tt_vec3){0, 0, 0}, &without,
                          &none);
        const double gust = h.a->actions.wind[0].gust / bare.a->actions.wind[0].gust;
        const double lump = pressure() * h.a->actions.wind[0].gust * 1.4 * 0.05;
        assert_close(force.x - without.x * gust, lump, 1e-7);
        assert_close(moment.y - none.y * gust, lump * 1.5, 1e-7); /* y = z cross x */
        assert_close(moment.z - none.z * gust, -lump * 0.2, 1e-7);
    }
    house_close(&h);
    house_close(&bare);
}

/* ASCE 7 29.7: never under 16 psf on the area across the wind. At 85 mph in exposure B a rod of 80
 * mm would take q Gf 1.2; where that is under 16 psf = 766.1 Pa, 766.1 Pa times 0.08 m times its
 * length. */
static void american_least(void **state)
{
    (void)state;
    house h = leaning("85 mph, exposure: B", 0, 0, 400, "");
    const double speed = 85 * 0.44704, kz = 2.01 * pow(4.572 / 365.76, 2.0 / 7.0);
    const tt_wind_direction *wind = &h.a->actions.wind[0];
    const double taken = 0.613 * kz * speed * speed * wind->gust * 1.2;
    assert_close(wind->force.x, fmax(taken, 766.1) * 0.08 * 0.4, 2e-4);
    assert_true(taken < 766.1); /* else this case shows nothing */
    house_close(&h);
}

/* Nothing jumps as a rod leans from plumb to level. */
static void continuous_in_lean(void **state)
{
    (void)state;
    double before[3] = {0};
    for (int lean = 0; lean <= 90; lean++) {
        const double a = lean * atan(1.0) / 45.0;
        house h = leaning(european, 1000 * sin(a), 0, 1000 * cos(a), "");
        const tt_wind_direction *wind = &h.a->actions.wind[3];
        const double now[] = {wind->force.x / wind->gust, wind->force.y / wind->gust,
                              wind->force.z / wind->gust};
        for (int k = 0; k < 3 && lean > 0; k++) assert_near(now[k], before[k], 2.0); /* of 50 N */
        memcpy(before, now, sizeof before);
        house_close(&h);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(on_leaning_rods),    cmocka_unit_test(end_on_nothing),
        cmocka_unit_test(lump_at_its_place),  cmocka_unit_test(american_least),
        cmocka_unit_test(continuous_in_lean),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
