/* Sections against published tables and closed forms, tests/cases/section. A name there is a
 * quantity and its unit (iy_cm4); the test turns metres to that unit. */
#include "cases.h"
#include "section/plastic.h"

static const double PI = 3.14159265358979323846;

/* The unit behind the last underscore, with its power, in metres. 1 for a name without a unit. */
static double unit_of(const char *name)
{
    const char *unit = strrchr(name, '_');
    double length = 0.0;
    if (!unit) return 1.0;
    if (strncmp(unit, "_mm", 3) == 0)
        length = 1e-3;
    else if (strncmp(unit, "_cm", 3) == 0)
        length = 1e-2;
    else if (strncmp(unit, "_in", 3) == 0)
        length = 0.0254;
    else if (strcmp(unit, "_mpa") == 0)
        return 1e6;
    else
        return 1.0;
    const int power = unit[3] ? atoi(unit + 3) : 1;
    return pow(length, power);
}

static const case_item *item_of(const test_case *c, const char *what)
{
    for (int i = 0; i < c->ins; i++) {
        const char *name = c->in[i].name;
        const size_t length = strlen(what);
        if (strncmp(name, what, length) == 0 && name[length] == '_') return &c->in[i];
    }
    print_error("%s: case '%s' lacks %s\n", c->file, c->title, what);
    fail();
    return NULL;
}

static double metres(const test_case *c, const char *what)
{
    const case_item *item = item_of(c, what);
    return item->value[0] * unit_of(item->name);
}

/* What a case is about: section and plastic moduli, NAN where the case has none. */
typedef struct {
    tt_section section;
    tt_moduli plastic;
} subject;

static subject tube(double od, double wall, double nu)
{
    const tt_outline outer = tt_outline_of(TT_OUTLINE_ELLIPSE, od, od);
    const tt_outline inner = tt_outline_of(TT_OUTLINE_ELLIPSE, od - 2.0 * wall, od - 2.0 * wall);
    return (subject){tt_section_tube(od, wall, nu), tt_plastic_moduli(&outer, &inner)};
}

/* Corners as y z y z ..., anticlockwise; as a trace. */
static subject trace(const test_case *c)
{
    static tt_pool pool; /* what the last trace stands in */
    const case_item *item = item_of(c, "corners");
    const double solid[2] = {0.0, 0.0}, unit = unit_of(item->name);
    const size_t n = (size_t)item->n / 2;
    tt_vec2 p[CASE_NUMBERS], q[CASE_NUMBERS];
    for (size_t i = 0; i < n; i++) {
        p[i] = (tt_vec2){unit * item->value[2 * i], unit * item->value[2 * i + 1]};
        q[i] = (tt_vec2){-p[i].y, p[i].x}; /* a quarter turn: about the other axis */
    }
    tt_pool_clear(&pool);
    const tt_trace *traced = tt_trace_new(&pool, p, p, n, solid);
    assert_non_null(traced);
    const tt_outline outline = {.kind = TT_OUTLINE_TRACE, .trace = traced};
    const tt_moduli plastic = {tt_plastic_of_polygon(p, n), tt_plastic_of_polygon(q, n)};
    subject found = {tt_section_solid(&outline, 0.3), plastic};
    found.section.at_y += p[0].x - traced->from[0].x; /* of the corners as they are written */
    found.section.at_z += p[0].y - traced->from[0].y;
    found.section.trace = NULL;
    tt_pool_clear(&pool);
    return found;
}

/* A polygon of many corners as a section: no torsion, no shear. */
static subject of_many(const tt_vec2 *p, size_t n)
{
    const tt_plane_moments all = tt_polygon_moments(p, n);
    const double y = all.x / all.area, z = all.y / all.area;
    const tt_plane_moments own = tt_plane_about(&all, y, z);
    tt_section section = {
        .area = own.area, .at_y = y, .at_z = z, .iy = own.yy, .iz = own.xx, .iyz = own.xy};
    for (size_t i = 0; i < n; i++) {
        section.reach_y = fmax(section.reach_y, fabs(p[i].x - y));
        section.reach_z = fmax(section.reach_z, fabs(p[i].y - z));
    }
    return (subject){section, {tt_plastic_of_polygon(p, n), NAN}};
}

/* The piece of a ring between two radii and two angles either side of +y. */
static subject sector(const test_case *c)
{
    enum { ARC = 4000 };
    static tt_vec2 p[2 * ARC];
    const double inner = metres(c, "inner"), outer = metres(c, "outer");
    const double half = case_number(c, "half_angle", 0) * PI / 180.0;
    for (int i = 0; i < ARC; i++) {
        const double angle = half * (2.0 * i / (ARC - 1) - 1.0);
        p[i] = (tt_vec2){outer * cos(angle), outer * sin(angle)};
        p[2 * ARC - 1 - i] = (tt_vec2){inner * cos(angle), inner * sin(angle)};
    }
    return of_many(p, 2 * ARC);
}

static subject disc(const test_case *c)
{
    enum { ROUND = 8000 };
    static tt_vec2 p[ROUND];
    const double r = 0.5 * metres(c, "od"), turn = case_number(c, "turn", 0) * PI / 180.0;
    for (int i = 0; i < ROUND; i++) {
        const double angle = turn + 2.0 * PI * i / ROUND;
        p[i] = (tt_vec2){r * cos(angle), r * sin(angle)};
    }
    return of_many(p, ROUND);
}

static subject between(const test_case *c, tt_outline_kind kind)
{
    const tt_outline outer = tt_outline_of(kind, metres(c, "wide"), metres(c, "deep"));
    const tt_outline inner = tt_outline_of(kind, metres(c, "inner_wide"), metres(c, "inner_deep"));
    return (subject){tt_section_hollow(&outer, &inner), tt_plastic_moduli(&outer, &inner)};
}

/* The tables' own inner ellipse: a wall less at the ends of the axes. */
static subject ellipse_tube(const test_case *c)
{
    const double wide = metres(c, "wide"), deep = metres(c, "deep"), wall = metres(c, "wall");
    const tt_outline outer = tt_outline_of(TT_OUTLINE_ELLIPSE, wide, deep);
    const tt_outline inner =
        tt_outline_of(TT_OUTLINE_ELLIPSE, wide - 2.0 * wall, deep - 2.0 * wall);
    return (subject){tt_section_ellipse_tube(wide, deep, wall), tt_plastic_moduli(&outer, &inner)};
}

static subject shell_or_solid(const test_case *c)
{
    const double nu = case_number(c, "nu", 0);
    const bool box = strstr(c->solve, "box");
    const tt_outline outline = tt_outline_of(box ? TT_OUTLINE_BOX : TT_OUTLINE_ELLIPSE,
                                             metres(c, "wide"), metres(c, "deep"));
    if (strncmp(c->solve, "solid", 5) == 0)
        return (subject){tt_section_solid(&outline, nu), tt_plastic_moduli(&outline, NULL)};
    assert_int_equal(strncmp(c->solve, "shell", 5), 0);
    return (subject){tt_section_shell(&outline, metres(c, "wall"), nu), {NAN, NAN}};
}

static subject subject_of(const test_case *c)
{
    const char *what = c->solve;
    if (strcmp(what, "tube") == 0)
        return tube(metres(c, "od"), metres(c, "wall"), case_number(c, "nu", 0));
    if (strcmp(what, "box tube") == 0)
        return (subject){tt_section_box_tube(metres(c, "wide"), metres(c, "deep"),
                                             metres(c, "wall"), metres(c, "corner"),
                                             case_number(c, "nu", 0)),
                         {NAN, NAN}};
    if (strcmp(what, "trace") == 0) return trace(c);
    if (strcmp(what, "sector") == 0) return sector(c);
    if (strcmp(what, "disc") == 0) return disc(c);
    if (strcmp(what, "between ellipses") == 0) return between(c, TT_OUTLINE_ELLIPSE);
    if (strcmp(what, "between boxes") == 0) return between(c, TT_OUTLINE_BOX);
    if (strcmp(what, "ellipse tube") == 0) return ellipse_tube(c);
    return shell_or_solid(c);
}

/* Principal second moments and the angle of the larger one's axis from local y, 0..180 degrees. */
static void principal(const tt_section *s, double i[2], double *angle)
{
    const double mean = 0.5 * (s->iy + s->iz), half = 0.5 * (s->iy - s->iz);
    const double most = sqrt(half * half + s->iyz * s->iyz);
    i[0] = mean + most;
    i[1] = mean - most;
    *angle = 0.5 * atan2(-s->iyz, half) * 180.0 / PI;
    if (*angle < 0.0) *angle += 180.0;
}

/* Of a rectangle: J / (long short^3), modulus / (long short^2). */
static double alpha(const tt_section *s)
{
    const double across = 2.0 * fmin(s->reach_y, s->reach_z);
    return s->torsion_modulus / (s->area * across);
}

static double beta(const tt_section *s)
{
    const double across = 2.0 * fmin(s->reach_y, s->reach_z);
    return s->j / (s->area * across * across);
}

static double quantity_of(const subject *of, const tt_stress *stress, const char *name)
{
    const tt_section *s = &of->section;
    double axis[2], angle;
    principal(s, axis, &angle);
    const struct {
        const char *name;
        double value;
    } known[] = {
        {"mass", s->area * 7850.0}, /* steel, as the tables have it */
        {"area", s->area},
        {"i", s->iy},
        {"iy", s->iy},
        {"iz", s->iz},
        {"r", sqrt(s->iy / s->area)},
        {"w", s->iy / s->reach_z},
        {"wy", s->iy / s->reach_z},
        {"wz", s->iz / s->reach_y},
        {"iyz", s->iyz},
        {"imax", axis[0]},
        {"imin", axis[1]},
        {"angle", angle},
        {"at_y", s->at_y},
        {"at_z", s->at_z},
        {"z", of->plastic.y},
        {"zy", of->plastic.y},
        {"zz", of->plastic.z},
        {"shape_factor", of->plastic.y * s->reach_z / s->iy},
        {"j", s->j},
        {"wt", s->torsion_modulus},
        {"k_y", s->shear_y / s->area},
        {"k_z", s->shear_z / s->area},
        {"alpha", alpha(s)},
        {"beta", beta(s)},
        {"normal", stress->normal},
        {"shear", stress->shear},
    };
    const double unit = unit_of(name);
    const char *cut = unit == 1.0 ? NULL : strrchr(name, '_');
    const size_t length = cut ? (size_t)(cut - name) : strlen(name);
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        if (strlen(known[i].name) == length && strncmp(known[i].name, name, length) == 0) {
            return known[i].value / unit;
        }
    }
    print_error("no quantity '%s'\n", name);
    fail();
    return 0.0;
}

static void compare(const test_case *c)
{
    const subject of = subject_of(c);
    const tt_forces forces = {.n = case_number_or(c, "n", 0.0),
                              .vy = case_number_or(c, "vy", 0.0),
                              .vz = case_number_or(c, "vz", 0.0),
                              .t = case_number_or(c, "t", 0.0),
                              .my = case_number_or(c, "my", 0.0),
                              .mz = case_number_or(c, "mz", 0.0)};
    const tt_stress stress = tt_section_stress(&of.section, &forces);
    for (int i = 0; i < c->expects; i++) {
        case_expect(c, i, quantity_of(&of, &stress, c->expect[i].name));
    }
}

/* A round tube that yields, each number alone or what is left of the moment. */
static double yielding(const test_case *c, const char *name)
{
    const double od = metres(c, "od"), wall = metres(c, "wall"), yield = metres(c, "yield");
    const tt_thin_tube full = tt_thin_tube_of(od, wall, yield);
    if (strcmp(c->solve, "thick tube") == 0) {
        assert_string_equal(name, "mp");
        return tube(od, wall, 0.3).plastic.y * yield;
    }
    const double n = case_number_or(c, "n", 0.0), t = case_number_or(c, "t", 0.0);
    if (strcmp(name, "m_left") == 0)
        return tt_thin_tube_moment(&full, n * full.n, t * full.t) / full.m;
    if (strcmp(name, "np") == 0) return full.n;
    if (strcmp(name, "mp") == 0) return full.m;
    if (strcmp(name, "tp") == 0) return full.t;
    assert_string_equal(name, "vp");
    return full.v;
}

static void compare_yielding(const test_case *c)
{
    for (int i = 0; i < c->expects; i++) case_expect(c, i, yielding(c, c->expect[i].name));
}

static void tubes_of_the_tables(void **state)
{
    (void)state;
    /* 15 + 4 hot finished, 10 cold formed, 18 + 11 pipes */
    assert_int_equal(cases_run("section", "tubes.case", compare), 58);
}

static void boxes(void **state)
{
    (void)state;
    assert_int_equal(cases_run("section", "boxes.case", compare), 5);
}

static void shapes_of_closed_form(void **state)
{
    (void)state;
    assert_true(cases_run("section", "shapes.case", compare) > 20);
}

static void stresses(void **state)
{
    (void)state;
    assert_int_equal(cases_run("section", "stress.case", compare), 6);
}

static void between_two_curves(void **state)
{
    (void)state;
    assert_true(cases_run("section", "hollow.case", compare) >= 15);
}

static void traces(void **state)
{
    (void)state;
    assert_true(cases_run("section", "traces.case", compare) >= 15);
}

static void tubes_that_yield(void **state)
{
    (void)state;
    assert_true(cases_run("section", "plastic-tube.case", compare_yielding) >= 15);
}

/* No section where one curve does not lie inside the other, or they are of two kinds. */
static void not_one_inside_the_other(void **state)
{
    (void)state;
    const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.1, 0.08);
    const tt_outline inner[] = {
        tt_outline_of(TT_OUTLINE_ELLIPSE, 0.1, 0.06), tt_outline_of(TT_OUTLINE_ELLIPSE, 0.09, 0.09),
        tt_outline_of(TT_OUTLINE_ELLIPSE, 0.0, 0.06), tt_outline_of(TT_OUTLINE_BOX, 0.05, 0.05),
        tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0)};
    for (size_t i = 0; i < sizeof inner / sizeof *inner; i++)
        assert_near(tt_section_hollow(&oval, &inner[i]).area, 0.0, 0.0);
    assert_near(tt_section_ellipse_tube(0.1, 0.08, 0.04).area, 0.0, 0.0);
    const tt_outline none = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    assert_near(tt_plastic_moduli(&none, NULL).y, 0.0, 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tubes_of_the_tables),   cmocka_unit_test(boxes),
        cmocka_unit_test(shapes_of_closed_form), cmocka_unit_test(stresses),
        cmocka_unit_test(between_two_curves),    cmocka_unit_test(traces),
        cmocka_unit_test(tubes_that_yield),      cmocka_unit_test(not_one_inside_the_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
