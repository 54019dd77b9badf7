/* Design strengths of armature steel and of bronze. */
#include "basis_lines.h"

static double bronze(const test_case *c, tt_steps *steps)
{
    return tt_bronze_strength(case_number(c, "f_y", 0), case_number(c, "f_u", 0),
                              case_number(c, "quality", 0), case_number(c, "seam", 0), steps);
}

static double steel(const test_case *c, tt_steps *steps)
{
    return case_basis(c)->steel_strength(case_number(c, "f_y", 0), case_number(c, "f_u", 0),
                                         case_number(c, "stainless", 0) > 0.0, steps);
}

static void solve_strength(const test_case *c)
{
    const bool cast = strcmp(c->solve, "bronze") == 0;
    if (!cast) assert_string_equal(c->solve, "steel");
    lines l;
    tt_steps *steps = lines_open(&l);
    const double strength = cast ? bronze(c, steps) : steel(c, steps);
    lines_whole(&l, strength);
    assert_true(strength == (cast ? bronze(c, NULL) : steel(c, NULL)));
    expect_lines(c, &l, strength);
    lines_close(&l);
}

static void strengths(void **state)
{
    (void)state;
    assert_int_equal(cases_run("basis", "strength.case", solve_strength), 7);
}

/* No standard stands behind the bronze rule, and the lines say so. */
static void bronze_names_no_standard(void **state)
{
    (void)state;
    lines l;
    tt_bronze_strength(120e6, 310e6, 0.8, 0.8, lines_open(&l));
    assert_int_equal(l.steps.list.n, 2);
    for (size_t i = 0; i < l.steps.list.n; i++) {
        assert_int_equal(l.steps.list.at[i].source.mark, TT_COMMON_PRACTICE);
    }
    lines_close(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(strengths),
        cmocka_unit_test(bronze_names_no_standard),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
