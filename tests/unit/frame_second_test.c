/* States of second order against the reference cases: tests/cases/frame/second*.case; and that
 * forces balance on the moved frame. */
#include "frame_make.h"

#include "frame/second.h"

typedef struct {
    const make_case *made;
    tt_frame_load load;
    tt_second_state second;
} solved;

static double section_at(const solved *s, size_t bar, double x, int k)
{
    const size_t first = s->made->first[bar], pieces = s->made->first[bar + 1] - first;
    const double along = x * (double)pieces;
    size_t piece = (size_t)along;
    if (piece >= pieces) piece = pieces - 1;
    const tt_frame_cut cut = tt_frame_cut_at(along - (double)piece);
    double forces[TT_SIX];
    tt_second_section(s->made->frame, &s->second, &s->load, first + piece, &cut, forces);
    return forces[k];
}

static double answer(const solved *s, const char *name)
{
    size_t i = 0;
    int d = 0;
    if (strcmp(name, "buckles") == 0) return s->second.buckles;
    if (strcmp(name, "small_turns") == 0) return s->second.most_turn < TT_SMALL_TURN;
    if (sscanf(name, "move_%zu_%d", &i, &d) == 2) return s->second.state.move[i][d];
    if (sscanf(name, "reaction_%zu_%d", &i, &d) == 2) return s->second.state.reaction[i][d];
    if (sscanf(name, "start_%zu_%d", &i, &d) == 2) return section_at(s, i, 0.0, d);
    if (sscanf(name, "end_%zu_%d", &i, &d) == 2) return section_at(s, i, 1.0, d);
    if (sscanf(name, "middle_%zu_%d", &i, &d) == 2) return section_at(s, i, 0.5, d);
    print_error("unknown expectation '%s'\n", name);
    fail();
    return 0.0;
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
