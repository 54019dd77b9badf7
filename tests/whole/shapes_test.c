/* Whole pieces with other outlines: a rectangle that is traced is the box, one that is traced
 * turned is the box that is turned; how bronze and a member beside the axis share; what is not
 * checked. */
#include "house.h"

#include "action/wind.h"
#include "check/parts.h"

#define POST(outline, more)                                                                        \
    "piece: Post\nunits: mm\nbronze: {alloy: C87300, wall: 6}\narmature: {grade: \"1.4462\"}\n"    \
    "points: {foot: [0, 0, 0], knee: [100, 60, 700], crown: [150, 250, 1500]}\n"                   \
    "segments:\n"                                                                                  \
    "  - {name: shank, from: foot, to: knee, " outline more "}\n"                                  \
    "  - {name: thigh, from: knee, to: crown, " outline "}\n"                                      \
    "lumps: [{name: head, at: crown, mass: 12 kg, offset: [30, 20, 80], wind_area: 0.03 m2}]\n"    \
    "stands: [{at: foot, held: fixed}]\nsite: {wind: {basic_speed: 24 m/s, terrain: II}}\n"        \
    "loads: [{case: pull, kind: variable, at: crown, force: [90 N, -40 N, 120 N], "                \
    "moment: [20 N.m, 0, 35 N.m]}]\n"

static void same(double got, double expected, double within, double scale)
{
    if (fabs(got - expected) > within * fabs(expected) + 1e-9 * scale)
        fail_msg("%.10g, not %.10g", got, expected);
}

/* Movements, modes, masses, and every check of both pieces but the ones named. */
static void alike(const char *one, const char *other, double within)
{
    house a = house_of(one), b = house_of(other);
    const tt_findings *f = &a.a->findings, *g = &b.a->findings;
    const size_t crown = tt_piece_point(a.piece, "crown");
    assert_true(a.a->actions.cases.n > 30);
    for (int carry = 0; carry < TT_MODELS; carry++) {
        for (size_t i = 0; i < a.a->actions.cases.n; i++) {
            const double *u = a.a->solution.answer[carry][i].state.move[crown];
            const double *v = b.a->solution.answer[carry][i].state.move[crown];
            const bool wind = a.a->actions.cases.at[i].kind == TT_CASE_WIND; /* by its gust */
            for (int k = 0; k < 6; k++) same(u[k], v[k], wind ? within : 1e-8, 1e-3);
        }
        const tt_modes *m = &a.a->solution.modes[carry], *n = &b.a->solution.modes[carry];
        assert_true(m->n > 1 && m->n == n->n);
        for (size_t i = 0; i < 2; i++) same(m->at[i].frequency, n->at[i].frequency, within, 0.0);
    }
    same(tt_model_mass(a.a->model, TT_HEAVY), tt_model_mass(b.a->model, TT_HEAVY), 1e-9, 0.0);
    assert_int_equal(f->list.n, g->list.n);
    assert_true(f->list.n >= 3);
    for (size_t i = 0; i < f->list.n; i++) {
        assert_string_equal(f->list.at[i].check, g->list.at[i].check);
        /* the peak of the shear flow is that of a thin wall: 0.4 % more, of a small part */
        same(f->list.at[i].use, g->list.at[i].use, 5e-3, 0.0);
    }
    house_close(&a);
    house_close(&b);
}

/* Wind apart, which takes a box and a trace differently: both with one drag of their own. */
#define DRAG ", wind: {drag: 1.7, because: \"to compare\"}"

static void a_traced_rectangle(void **state)
{
    (void)state;
    alike(POST("outline: {trace: [[-60, -40], [60, -40], [60, 40], [-60, 40]]}" DRAG,
               ", armature: {bar: 30}"),
          POST("outline: {box: [120, 80]}" DRAG, ", armature: {bar: 30}"), 1e-9);
}

/* Corners of a 120 x 80 rectangle turned by 30 degrees about x: y' = c y - s z, z' = s y + c z. The
 * frame knows no product of a metre's turning inertia, which moves modes and gusts a little. */
static void a_traced_rectangle_turned(void **state)
{
    (void)state;
    alike(
        POST("outline: {trace: [[-31.961524227066320, -64.641016151377546], "
             "[71.961524227066320, -4.641016151377546], [31.961524227066320, 64.641016151377546], "
             "[-71.961524227066320, 4.641016151377546]]}" DRAG,
             ", armature: {bar: 30}"),
        POST("outline: {box: [120, 80]}, turn: 30 deg" DRAG, ", armature: {bar: 30}"), 5e-4);
}

/* Without a drag of their own: width by projection alike, force as the coefficients. */
static void the_wind_on_a_trace(void **state)
{
    (void)state;
    house a = house_of(POST("outline: {trace: [[-60, -40], [60, -40], [60, 40], [-60, 40]]}", ""));
    house b = house_of(POST("outline: {box: [120, 80]}", ""));
    for (size_t i = 0; i < a.a->actions.winds; i++)
        same(a.a->actions.wind[i].area, b.a->actions.wind[i].area, 1e-9, 0.0);
    const tt_basis *eu = tt_basis_named("eu");
    assert_close(eu->drag(TT_SHAPE_OTHER, 0.1, 0.1, NULL), 1.8,
                 1e-12); /* decision on coefficients */
    const tt_strip *strip = &a.a->model->strips[0];
    const tt_vec3 wind = {1, 0, 0};
    const tt_wind_cut on = tt_wind_on_strip(eu, &a.piece->segments.at[0], strip, wind);
    assert_close(on.drag, 1.8, 1e-12);
    house_close(&a);
    house_close(&b);
}

/* One strain for both: each part takes N = E A (e0 + z ky - y kz), about the axis with its lever.
 * Bronze and armature together take the whole; what the bronze takes, by hand. */
static void shares_beside_the_axis(void **state)
{
    (void)state;
    house h =
        house_of("piece: P\nunits: mm\nmaterials:\n"
                 "  own bronze: {density: 8500 kg/m3, young: 100 GPa, poisson: 0.25, yield: 150 "
                 "MPa, ultimate: 300 MPa}\n"
                 "  own steel: {density: 7850 kg/m3, young: 200 GPa, poisson: 0.25, yield: 300 "
                 "MPa, ultimate: 500 MPa}\n"
                 "bronze: {alloy: own bronze, wall: 5}\narmature: {grade: own steel}\n"
                 "limbs:\n  leg:\n    rows: [[foot, 0, 0, 0, 100, 100], [hip, 0, 0, 900, 100, "
                 "100]]\n    armature: {tube: [30, 4], offset: [12, -7]}\n"
                 "stands: [{at: foot, held: fixed}]\nsite: {indoors: yes}\n");
    const tt_cut *cut = house_cut(&h, "foot-hip", 0.5);
    for (int i = 0; i < 6; i++) {
        for (int k = 0; k < 6; k++) {
            const double sum = cut->share_bronze.of[i][k] + cut->share_armature.of[i][k];
            assert_near(sum, i == k ? 1.0 : 0.0, 1e-9);
        }
    }
    assert_true(cut->share_bronze.coupled);
    /* strains from N alone: [EA, EAz, -EAy; ...] solved by its three rows by hand */
    const double ab = 100e9 * cut->bronze.area, as = 200e9 * cut->armature.area;
    const double ib = 100e9 * cut->bronze.iy, is = 200e9 * cut->armature.iy, y = 0.012, z = -0.007;
    const double n = 1000.0;
    /* round parts: the moment about the common centre goes by e = lever of the steel alone */
    const double centre_y = as * y / (ab + as), centre_z = as * z / (ab + as);
    const double e0_centre = n / (ab + as);
    /* second moments about the common centre, in the direction of the offset, and across it */
    const double r2 = y * y + z * z, reduced = ab * as / (ab + as);
    const double my = -centre_z * n, mz = centre_y * n; /* of N on the axis, about that centre */
    const double along = ib + is + reduced * r2;        /* bending that strains along the offset */
    const double k = (my * z - mz * y) / along;         /* both moments are along the offset */
    const double bronze = ab * (e0_centre - k * (centre_y * y + centre_z * z) / r2);
    const tt_forces whole = {.n = n};
    const tt_forces part = tt_shared(&cut->share_bronze, &cut->bronze, &whole);
    assert_close(part.n, bronze, 1e-9);
    house_close(&h);
}

static bool unchecked(const house *h, const char *check, const char *where)
{
    for (size_t i = 0; i < h->a->findings.unchecked.n; i++) {
        const tt_unchecked *u = &h->a->findings.unchecked.at[i];
        if (strcmp(u->check, check) == 0 && (!where || strcmp(u->where, where) == 0))
            return u->needed;
    }
    return false;
}

#define LEG(armature, basis)                                                                       \
    "piece: P\nunits: mm\nbasis: " basis "\nbronze: {alloy: C87300, wall: 5}\n"                    \
    "armature: {grade: \"1.4404\"}\nlimbs:\n  leg:\n    rows: [[foot, 0, 0, 0, 400], [knee, 0, "   \
    "0, "                                                                                          \
    "400, 400], [hip, 0, 0, 900, 400]]\n    armature: " armature "\n"                              \
    "stands: [{at: foot, held: fixed}]\nsite: {indoors: yes}\n"

/* us: Lb d / t^2 = 900 * 40 / t^2 against 0.08 E/Fy, E/Fy about 1000: 80 at the thickness of 21 mm.
 * eu: slenderness against 0.4; a square flat of 40 is stout, one of 40 x 6 is not. */
static void flats_that_topple(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        bool told;
    } cases[] = {{LEG("{flat: [40, 6]}", "eu"), true},
                 {LEG("{flat: [40, 40]}", "eu"), false},
                 {LEG("{flat: [40, 6]}", "us"), true},
                 {LEG("{flat: [40, 30]}", "us"), false},
                 {LEG("{box: [40, 20, 3]}", "eu"), false}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        house h = house_of(cases[i].text);
        assert_int_equal(unchecked(&h, "member.lateral", "foot-knee"), cases[i].told);
        assert_false(unchecked(&h, "member.lateral", "knee-hip")); /* one run, told once */
        house_close(&h);
    }
}

static void left_to_size(void **state)
{
    (void)state;
    house h = house_of(LEG("choose", "eu"));
    assert_true(unchecked(&h, "armature", "foot-knee"));
    assert_true(unchecked(&h, "armature", "knee-hip"));
    assert_false(unchecked(&h, "splices", NULL));
    assert_true(h.a->model->weight[TT_NOMINAL].armature == 0.0);
    house_close(&h);
    house one = house_of(LEG("{bar: 20, through: [foot, hip]}", "eu"));
    assert_false(unchecked(&one, "splices", NULL)); /* one member */
    assert_false(unchecked(&one, "armature", NULL));
    house_close(&one);
    house two = house_of(LEG("{bar: 20}", "eu"));
    assert_true(unchecked(&two, "splices", NULL));
    house_close(&two);
}

static const tt_finding *fit_of(const house *h)
{
    for (size_t i = 0; i < h->a->findings.list.n; i++) {
        if (strcmp(h->a->findings.list.at[i].check, "fit") == 0) return &h->a->findings.list.at[i];
    }
    fail_msg("no fit");
    return NULL;
}

/* Girth 400: 127.3 wide; high wall 6.25: radius 57.41 inside. Needed: the diagonal and 6 mm; free:
 * twice that radius less the offset. */
static void fit_where_the_member_lies(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        double need, room;
    } cases[] = {
        {LEG("{bar: 30, offset: [12, -16]}", "eu"), 0.036, 2.0 * (0.0574120 - 0.020)},
        {LEG("{box: [40, 30, 3]}", "eu"), 0.056, 2.0 * 0.0574120},
        {LEG("{flat: [60, 80], offset: [0, 10]}", "eu"), 0.106, 2.0 * (0.0574120 - 0.010)}};
    for (size_t i = 0; i < 3; i++) {
        house h = house_of(cases[i].text);
        const tt_finding *fit = fit_of(&h);
        assert_close(fit->demand, cases[i].need, 1e-9);
        assert_close(fit->resistance, cases[i].room, 1e-5);
        assert_int_equal(fit->holds, cases[i].need <= cases[i].room);
        house_close(&h);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_traced_rectangle),       cmocka_unit_test(a_traced_rectangle_turned),
        cmocka_unit_test(the_wind_on_a_trace),      cmocka_unit_test(shares_beside_the_axis),
        cmocka_unit_test(flats_that_topple),        cmocka_unit_test(left_to_size),
        cmocka_unit_test(fit_where_the_member_lies)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
