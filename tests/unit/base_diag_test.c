/* Diagnostics: order of place, the limit, and how one is printed. */
#include "assert_close.h"
#include "base/diags.h"

#include <stdio.h>
#include <string.h>

static const char text[] = "piece: A\nwall: 6\tkN\r\nnämen: \x1b[31m x\n";

static tt_diags *with_text(void)
{
    tt_diags *diags = tt_diags_new(3);
    assert_non_null(diags);
    tt_diags_about(diags, "a.yaml", text, sizeof text - 1);
    return diags;
}

static void sorted_by_place(void **state)
{
    (void)state;
    tt_diags *diags = with_text();
    tt_complain(diags, TT_D_SHAPE, ((tt_place){3, 1, 1}), NULL, "third");
    tt_complain(diags, TT_D_UNIT_WRONG, ((tt_place){2, 9, 2}), NULL, "second");
    tt_complain(diags, TT_D_UNIT_WRONG, ((tt_place){2, 7, 1}), NULL, "first %d", 1);
    tt_complain(diags, TT_D_UNIT_WRONG, ((tt_place){1, 1, 1}), NULL, "too many");
    assert_int_equal(tt_diags_errors(diags), 4);
    assert_int_equal(tt_diags_count(diags), 3);
    assert_string_equal(tt_diags_at(diags, 0)->text, "first 1");
    assert_string_equal(tt_diags_at(diags, 1)->text, "second");
    assert_string_equal(tt_diags_at(diags, 2)->text, "third");
    tt_diags_free(diags);
}

static void printed_with_a_caret(void **state)
{
    (void)state;
    char got[400];
    tt_diags *diags = with_text();
    tt_complain(diags, TT_D_UNIT_WRONG, ((tt_place){2, 9, 2}), "write a length", "a force");
    const size_t n = tt_diag_print(tt_diags_at(diags, 0), got, sizeof got);
    assert_string_equal(got, "a.yaml:2:9: error TT1102: a force\n"
                             "      2 | wall: 6\tkN\n"
                             "        |        \t^~\n"
                             "        write a length\n");
    assert_int_equal(n, strlen(got));
    char little[10];
    assert_int_equal(tt_diag_print(tt_diags_at(diags, 0), little, sizeof little), n);
    assert_string_equal(little, "a.yaml:2:");
    tt_diags_free(diags);
}

/* Columns count characters; control characters of the file are not passed on. */
static void plain_on_a_terminal(void **state)
{
    (void)state;
    char got[400];
    tt_diags *diags = with_text();
    tt_complain(diags, TT_D_ENCODING, ((tt_place){3, 8, 1}), NULL, "a control character");
    tt_diag_print(tt_diags_at(diags, 0), got, sizeof got);
    assert_null(strchr(got, 0x1b));
    assert_non_null(strstr(got, "\n        |        ^\n"));
    tt_diags_free(diags);
}

/* Of a line without end only the beginning is shown, and only where the place is in it. */
static void long_lines_are_cut(void **state)
{
    (void)state;
    static char line[100001], got[2000];
    memset(line, 'a', sizeof line - 1);
    tt_diag diag = {
        .text = "x", .shown = line, .place = {1, 3, 1}, .severity = TT_ERROR, .number = 1002};
    assert_true(tt_diag_print(&diag, got, sizeof got) < sizeof got);
    assert_non_null(strstr(got, "\n        |   ^\n"));
    diag.place.column = 60000;
    assert_true(tt_diag_print(&diag, got, sizeof got) < 100);
    assert_null(strstr(got, "aaa"));
}

/* Bytes that are not UTF-8 (table of RFC 3629, FROM MEMORY) and C1 controls do not reach a
 * terminal. */
static void only_text_on_a_terminal(void **state)
{
    (void)state;
    static const char *const rows[][2] = {{"n\303\244men", "n\303\244men"}, /* two bytes */
                                          {"\342\202\254", "\342\202\254"}, /* three */
                                          {"\360\237\220\246!", "\360\237\220\246!"}, /* four */
                                          {"a\200b", "a?b"}, /* a lone continuation */
                                          {"a\303", "a?"},   /* cut off */
                                          {"\303(", "?("},
                                          {"\300\257", "??"},           /* overlong */
                                          {"\340\200\257", "???"},      /* overlong */
                                          {"\360\200\200\257", "????"}, /* overlong */
                                          {"\355\240\200", "???"},      /* a surrogate */
                                          {"\364\220\200\200", "????"}, /* over U+10FFFF */
                                          {"\302\233"
                                           "2J",
                                           "?2J"},                    /* U+009B */
                                          {"\302\240x", "\302\240x"}, /* U+00A0 */
                                          {"\233"
                                           "2J",
                                           "?2J"},
                                          {"\033[2J\177\t", "?[2J?\t"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char got[100], expected[100];
        tt_diag_print(
            &(tt_diag){.file = rows[i][0], .text = "x", .severity = TT_ERROR, .number = 1002}, got,
            sizeof got);
        snprintf(expected, sizeof expected, "%s: error TT1002: x\n", rows[i][1]);
        assert_string_equal(got, expected);
    }
}

/* Every number stands once and has a title and a cure. */
static void numbers_are_told(void **state)
{
    (void)state;
    unsigned last = 0, n = 0;
#define TT_NUMBER(number, name, title, cure)                                                       \
    assert_true((number) > last);                                                                  \
    last = (number);                                                                               \
    assert_non_null(tt_number_title(number));                                                      \
    assert_true(strlen(tt_number_cure(number)) > 3);                                               \
    n++;
#include "base/numbers.def"
#undef TT_NUMBER
    assert_true(n > 30);
    assert_null(tt_number_title(9999));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sorted_by_place),     cmocka_unit_test(printed_with_a_caret),
        cmocka_unit_test(plain_on_a_terminal), cmocka_unit_test(only_text_on_a_terminal),
        cmocka_unit_test(long_lines_are_cut),  cmocka_unit_test(numbers_are_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
