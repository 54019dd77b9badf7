/* Linear statics against the reference cases: tests/cases/frame/statics*.case. */
#include "frame_make.h"

typedef struct {
    const make_case *made;
    tt_frame_load load;
    tt_frame_state state;
} solved;

static double answer(const solved *s, const char *name)
{
    make_place at;
    double forces[TT_SIX];
    if (!make_place_of(s->made, name, &at)) return make_answer(&s->state, name);
    tt_frame_section(s->made->frame, &s->state, &s->load, at.bar, at.x, forces);
    return forces[at.force];
}

static void run(const test_case *c)
{
    make_case *made = make_of_case(c);
    tt_pool pool = {0};
    solved s = {.made = made,
                .load = {.line_force = made->line, .node = (const double(*)[TT_SIX])made->force}};
    assert_int_equal(tt_frame_solve(made->frame, &s.load, &pool, &s.state), TT_OK);
    for (int i = 0; i < c->expects; i++) case_expect(c, i, answer(&s, c->expect[i].name));
    assert_near(s.state.residual, 0.0, 1e-10);
    assert_near(s.state.refinement, 0.0, 1e-7);
    tt_pool_clear(&pool);
    make_case_free(made);
}

static void reference_cases(void **unused)
{
    (void)unused;
    print_message("%d cases\n", cases_run("frame", "statics*.case", run));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(reference_cases)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
