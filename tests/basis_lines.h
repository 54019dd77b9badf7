/* tests/basis_lines.h - what the tests of the bases share: lines of calculation by their symbol,
 * and the comparison of a case with a result and its lines. */
#ifndef TT_TESTS_BASIS_LINES_H
#define TT_TESTS_BASIS_LINES_H

#include "cases.h"
#include "basis/basis.h"

typedef struct {
    tt_pool pool;
    tt_steps steps;
} lines;

static inline tt_steps *lines_open(lines *l)
{
    *l = (lines){0};
    l->steps.pool = &l->pool;
    return &l->steps;
}

static inline void lines_close(lines *l)
{
    assert_false(l->steps.failed);
    tt_list_clear(&l->steps.list);
    tt_pool_clear(&l->pool);
}

/** The value of the last line with this symbol; the test fails when there is none. */
static inline double line_value(const lines *l, const char *symbol)
{
    for (size_t i = l->steps.list.n; i-- > 0;) {
        if (strcmp(l->steps.list.at[i].symbol, symbol) == 0) return l->steps.list.at[i].value;
    }
    print_error("no line of calculation '%s'\n", symbol);
    fail();
    return 0.0;
}

/** Lines are whole, and the last one tells the result. */
static inline void lines_whole(const lines *l, double result)
{
    assert_true(l->steps.list.n > 0);
    for (size_t i = 0; i < l->steps.list.n; i++) {
        const tt_step *step = &l->steps.list.at[i];
        assert_true(step->symbol && *step->symbol && step->unit && step->source.document);
        assert_true(step->formula && *step->formula);
    }
    assert_true(l->steps.list.at[l->steps.list.n - 1].value == result);
}

static inline void expect_lines(const test_case *c, const lines *l, double result)
{
    for (int i = 0; i < c->expects; i++) {
        const char *name = c->expect[i].name;
        case_expect(c, i, strcmp(name, "result") == 0 ? result : line_value(l, name));
    }
}

static inline const tt_basis *case_basis(const test_case *c)
{
    const tt_basis *basis = tt_basis_named(case_word(c, "basis"));
    assert_non_null(basis);
    return basis;
}

#endif
