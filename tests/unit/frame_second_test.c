/* States of second order against the reference cases: tests/cases/frame/second*.case; and that
 * forces balance on the moved frame. */
#include "frame_make.h"

#include "frame/second.h"

typedef struct {
    const make_case *made;
    tt_frame_load load;
    tt_second_state second;
} solved;

static double answer(const solved *s, const char *name)
{
    make_place at;
    double forces[TT_SIX];
    if (strcmp(name, "buckles") == 0) return s->second.buckles;
    if (strcmp(name, "small_turns") == 0) return s->second.most_turn < TT_SMALL_TURN;
    if (!make_place_of(s->made, name, &at)) return make_answer(&s->second.state, name);
    const tt_frame_cut cut = tt_frame_cut_at(at.x);
    tt_second_section(s->made->frame, &s->second, &s->load, at.bar, &cut, forces);
    return forces[at.force];
}

static void run(const test_case *c)
{
    make_case *made = make_of_case(c);
    tt_pool pool = {0};
    tt_frame_state first;
    solved s = {.made = made, .load = make_load(made)};
    assert_int_equal(tt_frame_solve(made->frame, &s.load, &pool, &first), TT_OK);
    assert_int_equal(tt_frame_second(made->frame, &s.load, &first, false, &pool, &s.second), TT_OK);
    for (int i = 0; i < c->expects; i++) case_expect(c, i, answer(&s, c->expect[i].name));
    if (!s.second.buckles) assert_near(s.second.state.residual, 0.0, 1e-6);
    tt_pool_clear(&pool);
    make_case_free(made);
}

static void reference_cases(void **unused)
{
    (void)unused;
    print_message("%d cases\n", cases_run("frame", "second*.case", run));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(reference_cases)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
