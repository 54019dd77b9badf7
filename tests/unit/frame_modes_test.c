/* Vibration against the reference cases: tests/cases/frame/modes*.case. */
#include "frame_make.h"

static double answer(const tt_modes *modes, const char *name)
{
    size_t i = 0;
    char axis = 0;
    if (sscanf(name, "frequency_%zu", &i) == 1) return modes->at[i - 1].frequency;
    if (sscanf(name, "omega_%zu", &i) == 1) return modes->at[i - 1].frequency * 2.0 * PI;
    if (sscanf(name, "mass_%c_%zu", &axis, &i) == 2) {
        return modes->at[i - 1].mass_fraction[axis - 'x'] * modes->free_mass[axis - 'x'];
    }
    print_error("unknown expectation '%s'\n", name);
    fail();
    return 0.0;
}

static void run(const test_case *c)
{
    make_case *made = make_of_case(c);
    tt_pool pool = {0};
    tt_modes modes;
    const size_t least = (size_t)case_number(c, "least", 0);
    assert_int_equal(tt_frame_modes(made->frame, least, 0.0, &pool, &modes), TT_OK);
    assert_true(modes.n >= least);
    assert_int_equal(modes.proof.counted, modes.n);
    assert_int_equal(modes.proof.found, modes.n);
    for (int i = 0; i < c->expects; i++) case_expect(c, i, answer(&modes, c->expect[i].name));
    tt_pool_clear(&pool);
    make_case_free(made);
}

static void reference_cases(void **unused)
{
    (void)unused;
    print_message("%d cases\n", cases_run("frame", "modes*.case", run));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(reference_cases)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
