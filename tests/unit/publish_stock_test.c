/* The built-in tables in print: every row is there, every figure carries a source that is listed.
 */
#include "base/text.h"
#include "catalogue/catalogue.h"
#include "tiptoe/report.h"
#include "assert_close.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int gather(void *user, const char *bytes, size_t n)
{
    tt_text_add(user, bytes, n);
    return 0;
}

static const char *stock(const char *table, const char *name, tt_text *out)
{
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    tt_text_clear(out);
    assert_int_equal(tt_write_stock(table, name, diags, gather, out), TT_OK);
    tt_diags_free(diags);
    return tt_text_of(out);
}

static void the_list_counts_every_row(void **state)
{
    (void)state;
    tt_text out = {0};
    size_t listed = 0;
    for (const char *line = strchr(stock(NULL, NULL, &out), '\n'); line;
         line = strchr(line + 1, '\n')) {
        char name[16];
        size_t rows;
        if (sscanf(line + 1, "%15s %zu", name, &rows) == 2) listed += rows;
    }
    assert_true(listed > 0);
    assert_int_equal(listed, tt_metals_count() + tt_stock_count());
    tt_text_clear(&out);
}

static void every_metal_is_in_its_table(void **state)
{
    (void)state;
    tt_text alloys = {0}, steels = {0};
    stock("alloys", NULL, &alloys);
    stock("steels", NULL, &steels);
    assert_true(tt_metals_count() > 0);
    for (size_t i = 0; i < tt_metals_count(); i++) {
        const tt_metal *metal = tt_metals_at(i);
        const tt_text *table = metal->kind == TT_CAST ? &alloys : &steels;
        assert_non_null(strstr(tt_text_of(table), metal->name));
    }
    tt_text_clear(&alloys);
    tt_text_clear(&steels);
}

/* Every "[n]" of a table stands once at the head of a line of its list, with a mark behind it. */
static void every_figure_has_its_source(void **state)
{
    (void)state;
    static const char *const tables[] = {"alloys", "steels", "tubes", "bars"};
    for (size_t t = 0; t < 4; t++) {
        tt_text out = {0};
        const char *text = stock(tables[t], NULL, &out), *list = strstr(text, "\nSources\n");
        size_t seen = 0;
        assert_non_null(list);
        for (const char *at = strchr(text, '['); at && at < list; at = strchr(at + 1, '[')) {
            char item[32];
            snprintf(item, sizeof item, "\n- [%ld] ", strtol(at + 1, NULL, 10));
            assert_non_null(strstr(list, item));
            seen++;
        }
        assert_true(seen > 0);
        tt_text_clear(&out);
    }
}

/* Printed as they stand in the data: a steel's forms each for itself. */
static void a_row_whole(void **state)
{
    (void)state;
    tt_text out = {0};
    const char *text = stock("alloys", "C87300", &out);
    assert_non_null(strstr(text, "silicon bronze, 94Cu-4Si-1Mn"));
    assert_non_null(strstr(text, "Yield is 0.5 % extension under load."));
    assert_non_null(strstr(text, "8359 kg/m3"));
    size_t forms = 0, printed = 0;
    for (size_t i = 0; i < tt_metals_count(); i++) {
        forms += tt_metals_at(i)->kind == TT_STEEL && strcmp(tt_metals_at(i)->name, "1.4301") == 0;
    }
    for (const char *at = strstr(stock("steels", "1.4301", &out), "Yield is "); at;
         at = strstr(at + 1, "Yield is "))
        printed++;
    assert_true(forms > 1);
    assert_int_equal(printed, forms);
    tt_text_clear(&out);
}

static void unknown_names_get_the_nearest(void **state)
{
    (void)state;
    static const char *const asked[][3] = {
        {"alloys", "C87330", "C87300"},
        {"stels", NULL, "steels"},
        {"gold", NULL, "lists the tables"},
        {"tubes", "no such tube", "tiptoe stock tubes lists them"}};
    for (size_t i = 0; i < 4; i++) {
        tt_text out = {0};
        tt_diags *diags = tt_diags_new(0);
        assert_int_equal(tt_write_stock(asked[i][0], asked[i][1], diags, gather, &out), TT_E_INPUT);
        assert_int_equal(out.n, 0);
        assert_int_equal(tt_diags_errors(diags), 1);
        assert_int_equal(tt_diags_at(diags, 0)->number, 1301);
        assert_non_null(strstr(tt_diags_at(diags, 0)->hint, asked[i][2]));
        tt_diags_free(diags);
        tt_text_clear(&out);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_list_counts_every_row), cmocka_unit_test(every_metal_is_in_its_table),
        cmocka_unit_test(every_figure_has_its_source), cmocka_unit_test(a_row_whole),
        cmocka_unit_test(unknown_names_get_the_nearest)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
