/* Linear statics against the reference cases: tests/cases/frame/statics*.case. */
#include "frame_make.h"

typedef struct {
    const make_case *made;
    tt_frame_load load;
    tt_frame_state state;
} solved;

static double section_at(const solved *s, size_t bar, double x, int k)
{
    const size_t first = s->made->first[bar], pieces = s->made->first[bar + 1] - first;
    const double along = x * (double)pieces;
    size_t piece = (size_t)along;
    if (piece >= pieces) piece = pieces - 1;
    double forces[TT_SIX];
    tt_frame_section(s->made->frame, &s->state, &s->load, first + piece, along - (double)piece,
                     forces);
    return forces[k];
}

static double answer(const solved *s, const char *name)
{
    size_t i = 0;
    int d = 0;
    if (sscanf(name, "move_%zu_%d", &i, &d) == 2) return s->state.move[i][d];
    if (sscanf(name, "reaction_%zu_%d", &i, &d) == 2) return s->state.reaction[i][d];
    if (sscanf(name, "start_%zu_%d", &i, &d) == 2) return section_at(s, i, 0.0, d);
    if (sscanf(name, "end_%zu_%d", &i, &d) == 2) return section_at(s, i, 1.0, d);
    if (sscanf(name, "middle_%zu_%d", &i, &d) == 2) return section_at(s, i, 0.5, d);
    if (sscanf(name, "at375_%zu_%d", &i, &d) == 2) return section_at(s, i, 0.375, d);
    print_error("unknown expectation '%s'\n", name);
    fail();
    return 0.0;
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
