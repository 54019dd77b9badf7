/* Buckling factors against the reference cases: tests/cases/frame/buckling*.case; and that pivots
 * prove them. */
#include "frame_make.h"

#include "frame/second.h"

static double answer(const tt_buckling *found, const char *name)
{
    size_t i = 0;
    if (sscanf(name, "factor_%zu", &i) == 1) {
        assert_true(i >= 1 && i <= found->n);
        return found->at[i - 1].factor;
    }
    if (strcmp(name, "factors") == 0) return (double)found->under;
    print_error("unknown expectation '%s'\n", name);
    fail();
    return 0.0;
}

static void run(const test_case *c)
{
    enum { WANTED = 4 };
    make_case *made = make_of_case(c);
    tt_pool pool = {0};
    tt_frame_state first;
    tt_buckling found;
    const tt_frame_load load = make_load(made);
    assert_int_equal(tt_frame_solve(made->frame, &load, &pool, &first), TT_OK);
    assert_int_equal(tt_frame_buckling(made->frame, &load, &first, WANTED, &pool, &found), TT_OK);
    for (int i = 0; i < c->expects; i++) case_expect(c, i, answer(&found, c->expect[i].name));
    if (found.n) assert_int_equal(found.at[0].below, 0);
    if (found.n) assert_true(found.at[0].above > 0);
    tt_pool_clear(&pool);
    make_case_free(made);
}

static void reference_cases(void **unused)
{
    (void)unused;
    print_message("%d cases\n", cases_run("frame", "buckling*.case", run));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(reference_cases)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
