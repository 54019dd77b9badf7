/* Sections against published tables and closed forms, tests/cases/section. A name there is a
 * quantity and its unit (iy_cm4); the test turns metres to that unit. */
#include "cases.h"
#include "section/section.h"

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

static double metres(const test_case *c, const char *what)
{
    for (int i = 0; i < c->ins; i++) {
        const char *name = c->in[i].name;
        const size_t length = strlen(what);
        if (strncmp(name, what, length) == 0 && name[length] == '_') {
            return c->in[i].value[0] * unit_of(name);
        }
    }
    print_error("%s: case '%s' lacks %s\n", c->file, c->title, what);
    fail();
    return 0.0;
}

static tt_section section_of(const test_case *c)
{
    const double nu = case_number(c, "nu", 0);
    if (strcmp(c->solve, "tube") == 0) {
        return tt_section_tube(metres(c, "od"), metres(c, "wall"), nu);
    }
    if (strcmp(c->solve, "box tube") == 0)
        return tt_section_box_tube(metres(c, "wide"), metres(c, "deep"), metres(c, "wall"),
                                   metres(c, "corner"), nu);
    const bool box = strstr(c->solve, "box");
    const tt_outline outline = tt_outline_of(box ? TT_OUTLINE_BOX : TT_OUTLINE_ELLIPSE,
                                             metres(c, "wide"), metres(c, "deep"));
    if (strncmp(c->solve, "solid", 5) == 0) return tt_section_solid(&outline, nu);
    assert_int_equal(strncmp(c->solve, "shell", 5), 0);
    return tt_section_shell(&outline, metres(c, "wall"), nu);
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

static double quantity_of(const tt_section *s, const tt_stress *stress, const char *name)
{
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
    const tt_section section = section_of(c);
    const tt_forces forces = {.vy = case_number_or(c, "vy", 0.0),
                              .vz = case_number_or(c, "vz", 0.0),
                              .my = case_number_or(c, "my", 0.0),
                              .mz = case_number_or(c, "mz", 0.0)};
    const tt_stress stress = tt_section_stress(&section, &forces);
    for (int i = 0; i < c->expects; i++) {
        case_expect(c, i, quantity_of(&section, &stress, c->expect[i].name));
    }
}

static void tubes_of_the_tables(void **state)
{
    (void)state;
    /* 15 + 4 hot finished, 10 cold formed, 18 pipes */
    assert_int_equal(cases_run("section", "tubes.case", compare), 47);
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
    assert_int_equal(cases_run("section", "stress.case", compare), 5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tubes_of_the_tables),
        cmocka_unit_test(boxes),
        cmocka_unit_test(shapes_of_closed_form),
        cmocka_unit_test(stresses),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
