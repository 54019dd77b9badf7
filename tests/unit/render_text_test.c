/* Text from a document: wrapping by characters, columns, bold, lines of calculation. */
#include "render/render.h"
#include "assert_close.h"

#include <string.h>

static const char *written(const tt_report *report, size_t width, bool bold, tt_text *out)
{
    tt_text_clear(out);
    assert_int_equal(tt_render_text(report, &(tt_text_style){width, bold}, out), TT_OK);
    return tt_text_of(out);
}

static void words_wrap_and_numbers_keep_their_unit(void **state)
{
    (void)state;
    tt_report report = {0};
    tt_text out = {0};
    tt_report_say(&report, "it moves by 12 mm here");
    /* "it moves by 12" would fit 14 columns: the number waits for its unit. */
    assert_string_equal(written(&report, 14, false, &out), "it moves by\n12 mm here\n");
    assert_string_equal(written(&report, 96, false, &out), "it moves by 12 mm here\n");
    /* A word longer than the line is broken, a number with its unit between the two. */
    assert_string_equal(written(&report, 3, false, &out), "it\nmov\nes\nby\n12\nmm\nher\ne\n");
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void tied_words_stay_together(void **state)
{
    (void)state;
    tt_report report = {0};
    tt_text out = {0};
    tt_report_say(&report, "1.35 weight + 1.5" TT_TIE "wind" TT_TIE "290 (heavy)");
    /* "1.35 weight + 1.5 wind" is 22 wide, "+ 1.5 wind 290" 14. */
    assert_string_equal(written(&report, 22, false, &out), "1.35 weight\n+ 1.5 wind 290 (heavy)\n");
    assert_string_equal(written(&report, 15, false, &out),
                        "1.35 weight\n+ 1.5 wind 290\n(heavy)\n");
    assert_string_equal(written(&report, 96, false, &out), "1.35 weight + 1.5 wind 290 (heavy)\n");
    tt_report_clear(&report);
    tt_text_clear(&out);
}

/* Characters on the longest line. */
static size_t widest(const char *text)
{
    size_t most = 0;
    for (const char *at = text; *at;) {
        const size_t bytes = strcspn(at, "\n"), width = tt_text_width(at, bytes);
        if (width > most) most = width;
        at += bytes + (at[bytes] == '\n');
    }
    return most;
}

static void long_words_keep_to_the_width(void **state)
{
    (void)state;
    static const tt_column columns[] = {{"where", TT_LEFT}, {"what", TT_LEFT}, {"use", TT_RIGHT}};
    char name[301] = {0};
    for (size_t i = 0; i < 150; i++) memcpy(name + 2 * i, "\303\266", 2);
    tt_report report = {0};
    tt_text out = {0};
    tt_report_heading(&report, 1, name);
    tt_report_say(&report, name);
    tt_report_table(&report, columns, 3);
    tt_report_row(&report, (const char *const[]){name, "strength", "7 %"});
    tt_report_list(&report, TT_BLOCK_LIST);
    tt_report_item(&report, name);
    for (size_t width = 30; width <= 96; width += 11) {
        const char *text = written(&report, width, false, &out);
        assert_int_equal(widest(text), width);
        size_t letters = 0, rest = 0;
        for (const char *c = text; *c; c++) {
            letters += *c == '\303' && c[1] == '\266';
            rest += *c == '\266' && c[-1] != '\303';
        }
        assert_int_equal(letters, 4 * 150); /* none is lost, none is cut in two */
        assert_int_equal(rest, 0);
    }
    tt_report_clear(&report);
    tt_text_clear(&out);
}

/* No line begins with a comma, a word is cut behind a hyphen where it has one, and a narrow column
 * keeps its words whole while another has room to give. */
static void lines_break_where_words_do(void **state)
{
    (void)state;
    static const tt_column columns[] = {
        {"where", TT_LEFT}, {"what", TT_LEFT}, {"loads together", TT_LEFT}};
    static const char *const cells[] = {"elbow-underside, the other", "strength of the armature",
                                        "one two three four five six seven eight nine ten"};
    tt_report report = {0};
    tt_text out = {0};
    tt_report_say(&report, "shoulder, the other");
    assert_string_equal(written(&report, 8, false, &out), "shoulde\nr, the\nother\n");
    tt_report_clear(&report);
    tt_report_say(&report, "elbow-underside");
    assert_string_equal(written(&report, 10, false, &out), "elbow-\nunderside\n");
    tt_report_clear(&report);
    tt_report_table(&report, columns, 3);
    tt_report_row(&report, cells);
    /* 16 for "elbow-underside,", twice 12 for the rest, twice 2 between: 44 */
    for (size_t width = 44; width < 90; width++) {
        const char *text = written(&report, width, false, &out);
        assert_non_null(strstr(text, "elbow-underside,"));
        assert_null(strstr(text, "\n,"));
        assert_true(widest(text) <= width);
    }
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void bold_only_when_asked(void **state)
{
    (void)state;
    tt_report report = {0};
    tt_text out = {0};
    tt_report_paragraph(&report);
    tt_report_run(&report, false, "Holds; tightest ");
    tt_report_run(&report, true, "at the knee");
    tt_report_run(&report, false, ", use 83 %.");
    assert_string_equal(written(&report, 96, false, &out),
                        "Holds; tightest at the knee, use 83 %.\n");
    assert_string_equal(written(&report, 96, true, &out),
                        "Holds; tightest \033[1mat the knee\033[0m, use 83 %.\n");
    /* The marks take no room: the first line is exactly 28 wide. */
    assert_string_equal(written(&report, 28, true, &out),
                        "Holds; tightest \033[1mat the knee\033[0m,\nuse 83 %.\n");
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void columns_align_by_characters(void **state)
{
    (void)state;
    static const tt_column columns[] = {{"where", TT_LEFT}, {"use", TT_RIGHT}};
    tt_report report = {0};
    tt_text out = {0};
    tt_report_table(&report, columns, 2);
    tt_report_row(&report,
                  (const char *const[]){"K\303\266nigin", "5 %"}); /* 7 characters, 8 bytes */
    tt_report_row(&report, (const char *const[]){"ankle", "120 %"});
    assert_string_equal(written(&report, 96, false, &out), "where      use\n"
                                                           "-------  -----\n"
                                                           "K\303\266nigin    5 %\n"
                                                           "ankle    120 %\n");
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void a_wide_table_wraps_its_left_columns(void **state)
{
    (void)state;
    static const tt_column columns[] = {{"where", TT_LEFT}, {"what", TT_LEFT}, {"use", TT_RIGHT}};
    tt_report report = {0};
    tt_text out = {0};
    tt_report_table(&report, columns, 3);
    tt_report_row(&report, (const char *const[]){"ankle", "strength of the armature", "7 %"});
    /* 5 + 2 + 12 + 2 + 3 = 24 */
    assert_string_equal(written(&report, 24, false, &out), "where  what          use\n"
                                                           "-----  ------------  ---\n"
                                                           "ankle  strength of   7 %\n"
                                                           "       the armature\n");
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void a_line_of_calculation(void **state)
{
    (void)state;
    const tt_step steps[] = {
        {"sigma", "N/A", "1200/0.002", "Pa", 600000, {"a book", "1999", "page 3", TT_READ}},
        {"q", NULL, NULL, "", 0.25, {"a rule", NULL, NULL, TT_COMMON_PRACTICE}}};
    tt_report report = {0};
    tt_text out = {0};
    tt_report_steps(&report, steps, 2);
    assert_string_equal(written(&report, 96, false, &out),
                        "    sigma = N/A = 1200/0.002 = 600000 Pa [a book, 1999, page 3, read]\n"
                        "    q = 0.2500 [a rule, common practice]\n");
    /* A source goes to the next line whole when it fits there. */
    assert_string_equal(written(&report, 50, false, &out),
                        "    sigma = N/A = 1200/0.002 = 600000 Pa\n"
                        "        [a book, 1999, page 3, read]\n"
                        "    q = 0.2500 [a rule, common practice]\n");
    /* A bracket is no unit: the number does not wait for it. */
    assert_non_null(strstr(written(&report, 37, false, &out),
                           "    q = 0.2500\n        [a rule, common practice]\n"));
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void headings_lists_and_the_room_between(void **state)
{
    (void)state;
    tt_report report = {0};
    tt_text out = {0};
    tt_report_heading(&report, 1, "A");
    tt_report_say(&report, "b");
    tt_report_heading(&report, 2, "CC");
    tt_report_list(&report, TT_BLOCK_CAUTIONS);
    tt_report_item(&report, "one two");
    tt_report_item(&report, "three");
    assert_string_equal(written(&report, 7, false, &out),
                        "A\n=\nb\n\nCC\n--\n- one\n  two\n- three\n");
    tt_report_clear(&report);
    tt_text_clear(&out);
}

/* Any width ends, and nothing of the text is lost. */
static void nothing_is_lost_at_any_width(void **state)
{
    (void)state;
    static const tt_column columns[] = {{"one", TT_LEFT}, {"two", TT_LEFT}, {"use", TT_RIGHT}};
    const char *text = "a 1 2 3 b\303\266 4.5 mm - 7";
    tt_report report = {0};
    tt_text out = {0};
    tt_report_table(&report, columns, 3);
    tt_report_row(&report, (const char *const[]){text, "", "1 %"});
    tt_report_row(&report, (const char *const[]){"", text, ""});
    tt_report_list(&report, TT_BLOCK_LIST);
    tt_report_item(&report, "");
    tt_report_item(&report, text);
    for (size_t width = 1; width < 60; width++) {
        size_t letters = 0;
        for (const char *c = written(&report, width, false, &out); *c; c++) letters += *c == 'b';
        assert_int_equal(letters, 3);
        assert_non_null(strstr(tt_text_of(&out), "- \n- a"));
    }
    tt_report_clear(&report);
    tt_text_clear(&out);
}

static void a_document_that_is_not_whole_is_refused(void **state)
{
    (void)state;
    tt_report report = {.failed = true};
    tt_text out = {0};
    assert_int_equal(tt_render_text(&report, &(tt_text_style){96, false}, &out), TT_E_NOMEM);
    tt_text_clear(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(words_wrap_and_numbers_keep_their_unit),
                                       cmocka_unit_test(tied_words_stay_together),
                                       cmocka_unit_test(long_words_keep_to_the_width),
                                       cmocka_unit_test(lines_break_where_words_do),
                                       cmocka_unit_test(bold_only_when_asked),
                                       cmocka_unit_test(columns_align_by_characters),
                                       cmocka_unit_test(a_wide_table_wraps_its_left_columns),
                                       cmocka_unit_test(a_line_of_calculation),
                                       cmocka_unit_test(headings_lists_and_the_room_between),
                                       cmocka_unit_test(nothing_is_lost_at_any_width),
                                       cmocka_unit_test(a_document_that_is_not_whole_is_refused)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
