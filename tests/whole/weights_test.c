/* `weigh` and `check` tell one weight: where the centre of mass lies, and what is over the limit.
 * By hand: density 8359 kg/m3 of C87300, the armature's from its record. */
#include "house.h"

#include "piece/ledger.h"

static const double pi = 3.14159265358979323846;

/* A post of 1.5 m, 100 mm round, wall 5 mm, level towards y; in it a flat of 40 x 12 mm, 10 mm
 * aside and 20 mm towards the front, which is up. */
#define POST(rest)                                                                                 \
    "piece: P\nunits: mm\n"                                                                        \
    "bronze: {alloy: C87300, wall: {is: 5, low: 4, high: 7}, surface: 1, extra: 0}\n"              \
    "armature: {grade: \"1.4462\"}\n"                                                              \
    "limbs: {post: {rows: [[foot, 0, 0, 0, 100, 100], [head, 0, 1500, 0, 100, 100]], faces: +z,\n" \
    "  armature: {flat: [40, 12], offset: [10, 20]}}}\n"                                           \
    "stands: [{at: foot, held: fixed}]\n" rest

static void near_vector(tt_vec3 got, tt_vec3 expected)
{
    assert_near(got.x, expected.x, 1e-9);
    assert_near(got.y, expected.y, 1e-9);
    assert_near(got.z, expected.z, 1e-9);
}

/* Local x is +y, z is +z, so y = z cross x is -x: the flat lies at x = -10, z = 20 mm. */
static void centre_of(const char *text, double bronze)
{
    house h = house_of(text);
    tt_weights *weights = NULL;
    assert_int_equal(tt_weigh(h.piece, &weights), TT_OK);
    const size_t metal = h.piece->segments.at[0].armature.metal;
    const double flat = h.piece->metals.at[metal].fact[TT_P_DENSITY].value * 0.04 * 0.012 * 1.5;
    const double share = flat / (bronze + flat);
    const tt_vec3 by_hand = {-0.010 * share, 0.75, 0.020 * share};
    near_vector(weights->centre, by_hand);
    near_vector(h.a->model->centre[TT_NOMINAL], by_hand);
    assert_near(weights->ledger.total.is, bronze + flat, 1e-9);
    tt_weights_free(weights);
    house_close(&h);
}

static void centre(void **state)
{
    (void)state;
    centre_of(POST(""), 8359 * pi * (0.1 * 0.005 - 0.005 * 0.005) * 1.5);
    centre_of(POST("weighed: [{segment: foot-head, bronze: 25 kg}]\n"), 25.0);
}

static void limit(const char *text, int over)
{
    house h = house_of(text);
    tt_weights *weights = NULL;
    assert_int_equal(tt_weigh(h.piece, &weights), TT_OK);
    size_t n = 0;
    for (size_t i = 0; i < h.a->findings.list.n; i++) {
        const tt_finding *finding = &h.a->findings.list.at[i];
        if (strcmp(finding->check, "mass") != 0) continue;
        assert_int_equal(finding->holds, !over);
        n++;
    }
    assert_int_equal(n, 1);
    assert_int_equal(tt_weights_over(weights), over);
    tt_weights_free(weights);
    house_close(&h);
}

/* The heavy end: the wall of 7 mm, and 3 % more than the 25 kg on the scales; the armature is
 * exact. */
static void limits(void **state)
{
    (void)state;
    house h = house_of(POST(""));
    const size_t metal = h.piece->segments.at[0].armature.metal;
    const double flat = h.piece->metals.at[metal].fact[TT_P_DENSITY].value * 0.04 * 0.012 * 1.5;
    const double heavy = 8359 * pi * (0.1 * 0.007 - 0.007 * 0.007) * 1.5 + flat;
    house_close(&h);
    char text[1200];
    snprintf(text, sizeof text, POST("limits: {mass: %.10g kg}\n"), heavy - 0.01);
    limit(text, 1);
    snprintf(text, sizeof text, POST("limits: {mass: %.10g kg}\n"), heavy + 0.01);
    limit(text, 0);
    snprintf(text, sizeof text,
             POST("weighed: [{segment: foot-head, bronze: 25 kg}]\nlimits: {mass: %.10g kg}\n"),
             25.74 + flat);
    limit(text, 1);
    snprintf(text, sizeof text,
             POST("weighed: [{segment: foot-head, bronze: 25 kg}]\nlimits: {mass: %.10g kg}\n"),
             25.76 + flat);
    limit(text, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(centre), cmocka_unit_test(limits)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
