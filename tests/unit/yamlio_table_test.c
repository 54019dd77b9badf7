/* Tables as text: fields, quotes, remarks, places, what is refused. */
#include "assert_close.h"
#include "yamlio/tree.h"

#include <string.h>

typedef struct {
    tt_pool pool;
    tt_diags *diags;
    tt_node *root;
    tt_status status;
} table;

static table read(const char *text)
{
    table t = {.diags = tt_diags_new(0)};
    tt_diags_about(t.diags, "t.csv", text, strlen(text));
    t.status = tt_table_read(text, strlen(text), &t.pool, t.diags, &t.root);
    return t;
}

static void clear(table *t)
{
    tt_diags_free(t->diags);
    tt_pool_clear(&t->pool);
}

static void expect(const char *text, size_t i, size_t j, const char *field, unsigned line,
                   unsigned column)
{
    table t = read(text);
    assert_int_equal(t.status, TT_OK);
    assert_true(i < t.root->n && j < t.root->child[i]->n);
    const tt_node *node = t.root->child[i]->child[j];
    assert_string_equal(node->text, field);
    assert_int_equal(node->place.line, line);
    assert_int_equal(node->place.column, column);
    assert_true(node->beside && node->kind == TT_SCALAR);
    clear(&t);
}

static void fields(void **state)
{
    (void)state;
    expect("a,b\nc , d d ,e\n", 1, 1, "d d", 2, 5);
    expect("# remark\n\na,b\r\n", 0, 1, "b", 3, 3);
    expect("a;b,c\n", 0, 1, "c", 1, 5); /* a comma in the first line: it divides */
    expect("a;b\n1,5;2\n", 1, 0, "1,5", 2, 1);
    expect("\"x, \"\"y\"\"\",z\n", 0, 0, "x, \"y\"", 1, 1);
    expect("a,,b", 0, 1, "", 1, 3);
    expect("a,b,", 0, 2, "", 1, 5);
    expect("\xEF\xBB\xBF""a,b\n", 0, 0, "a", 1, 1);
    expect("hérisson,b\n", 0, 1, "b", 1, 10); /* columns are characters */
}

static void refuse(const char *text, unsigned number, unsigned line)
{
    table t = read(text);
    assert_int_equal(t.status, TT_E_INPUT);
    assert_null(t.root);
    assert_int_equal(tt_diags_count(t.diags), 1);
    assert_int_equal(tt_diags_at(t.diags, 0)->number, number);
    assert_int_equal(tt_diags_at(t.diags, 0)->place.line, line);
    clear(&t);
}

static void refused(void **state)
{
    (void)state;
    refuse("", 1001, 1);
    refuse("# nothing\n\n", 1001, 1);
    refuse("a,b\n\"c\n", 1451, 2);
    refuse("a,b\n\xFF,c\n", 1002, 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(fields), cmocka_unit_test(refused)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
