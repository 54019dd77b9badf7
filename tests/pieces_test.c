/* tests/pieces_test.c - whole piece files against closed forms, tables of the reference and a
 * second route: tests/cases/piece/ (every *.case). A case says in `solve` the piece file, in `in
 * set` what changes in it (as --set does; '_' for a blank in the value), and expects numbers at
 * paths of its JSON result (run_piece.h). */
#include "cases.h"
#include "run_piece.h"

/* The result of the case before this one: many cases ask the same piece. */
static struct {
    char asked[2 * CASE_LINE];
    cJSON *tree;
} last;

/* A change of the file: behind its '=' a '_' stands for a blank. */
static void blanks(char *change)
{
    char *value = strchr(change, '=');
    assert_non_null(value);
    for (char *c = value; *c; c++) *c = *c == '_' ? ' ' : *c;
}

static void ask(const test_case *c)
{
    static char change[CASE_ITEMS][CASE_WORD];
    const char *set[CASE_ITEMS];
    char asked[2 * CASE_LINE], path[2 * CASE_LINE];
    int n = snprintf(asked, sizeof asked, "%s", c->solve);
    for (int i = 0; i < c->ins; i++) {
        assert_string_equal(c->in[i].name, "set");
        memcpy(change[i], c->in[i].word, CASE_WORD);
        blanks(change[i]);
        set[i] = change[i];
        n += snprintf(asked + n, sizeof asked - (size_t)n, " %s", change[i]);
        assert_true((size_t)n < sizeof asked);
    }
    if (last.tree && strcmp(asked, last.asked) == 0) return;
    snprintf(path, sizeof path, "%s/tests/pieces/%s", TT_ROOT, c->solve);
    run_text text = run_file(path);
    cJSON_Delete(last.tree);
    last.tree = NULL;
    last.tree = run_piece(c->solve, text.at, &(tt_changes){.set = set, .sets = (size_t)c->ins});
    memcpy(last.asked, asked, sizeof asked);
    free(text.at);
}

static void run(const test_case *c)
{
    ask(c);
    for (int i = 0; i < c->expects; i++)
        case_expect(c, i, run_number(last.tree, c->expect[i].name));
}

static void reference_cases(void **state)
{
    (void)state;
    assert_true(cases_run("piece", "*.case", run) >= 10);
}

static int forget(void **state)
{
    (void)state;
    cJSON_Delete(last.tree);
    last.tree = NULL;
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(reference_cases)};
    return cmocka_run_group_tests(tests, NULL, forget);
}
