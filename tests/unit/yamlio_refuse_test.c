/* Every kind of text that is refused: number, place, a word of the message; and that large, deep or
 * self-repeating texts are answered at once. */
#include "assert_close.h"
#include "yamlio/tree.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef struct {
    const char *text;
    tt_number number;
    unsigned line, column, width;
    const char *says; /* in text or hint */
} refusal;

#define YAML TT_D_YAML
static const refusal refusals[] = {
    {"", TT_D_EMPTY, 1, 1, 1, "empty"},
    {"   \n\n", TT_D_EMPTY, 1, 1, 1, "empty"},
    {"# a remark\n", TT_D_EMPTY, 1, 1, 1, "empty"},
    {"---\n...\n", TT_D_EMPTY, 1, 1, 1, "empty"},
    {"\xEF\xBB\xBF", TT_D_EMPTY, 1, 1, 1, "empty"},
    /* UTF-8 and control characters */
    {"a: 1\nb: \xFF\n", TT_D_ENCODING, 2, 4, 1, "0xFF"},
    {"\xC3\xA4: \xC3", TT_D_ENCODING, 1, 4, 1, "0xC3"},
    {"\xC0\x80", TT_D_ENCODING, 1, 1, 1, "0xC0"},
    {"a: \xE0\x80\x80", TT_D_ENCODING, 1, 4, 1, "0xE0"},
    {"a: \xED\xA0\x80", TT_D_ENCODING, 1, 4, 1, "0xED"},
    {"a: \xF4\x90\x80\x80", TT_D_ENCODING, 1, 4, 1, "0xF4"},
    {"a: \xF5\x80\x80\x80", TT_D_ENCODING, 1, 4, 1, "0xF5"},
    {"a: \xE2\x82(", TT_D_ENCODING, 1, 4, 1, "0xE2"},
    {"\xFF\xFE"
     "a",
     TT_D_ENCODING, 1, 1, 1, "UTF-8"},
    {"a: x\x01y", TT_D_ENCODING, 1, 5, 1, "U+0001"},
    {"a: \x1B[31m", TT_D_ENCODING, 1, 4, 1, "U+001B"},
    {"a: \x7F", TT_D_ENCODING, 1, 4, 1, "U+007F"},
    {"a: 1\rb: 2\n", TT_D_ENCODING, 1, 5, 1, "U+000D"},
    {"a: \xC2\x85", TT_D_ENCODING, 1, 4, 1, "U+0085"},
    {"a: \xE2\x80\xA8", TT_D_ENCODING, 1, 4, 1, "U+2028"},
    {"a: \xE2\x80\xAE"
     "b",
     TT_D_ENCODING, 1, 4, 1, "U+202E"},
    {"a: \xEF\xBB\xBF", TT_D_ENCODING, 1, 4, 1, "U+FEFF"},
    {"a: \xEF\xBF\xBF", TT_D_ENCODING, 1, 4, 1, "U+FFFF"},
    {"a: \"\\0\"\n", TT_D_ENCODING, 1, 4, 4, "U+0000"},
    {"a: 1\n\"\\e\": 1\n", TT_D_ENCODING, 2, 1, 4, "U+001B"},
    {"a: \"\\u2028\"\n", TT_D_ENCODING, 1, 4, 8, "U+2028"},
    /* YAML that libyaml does not read */
    {"a:\n\tb: 1\n", YAML, 2, 1, 1, "a tab in the indentation"},
    {"a: 1\n  \tb: 2\n", YAML, 2, 3, 1, "indent with blanks"},
    {"a: [1, 2\n", YAML, 1, 4, 1, "list in brackets is not closed"},
    {"a:\n  b: {c: 1\n", YAML, 2, 6, 1, "keys in braces are not closed"},
    {"a: [1, 2\nb: 3\n", YAML, 2, 2, 1, "begins in line 1"},
    {"a: \"abc\n", YAML, 1, 4, 1, "close the quotes"},
    {"a: 'abc\n---\n", YAML, 2, 1, 1, "a quoted text does not end"},
    {"a: b: c\n", YAML, 1, 5, 1, "in quotes"},
    {"a:\n  b: 1\n c: 2\n", YAML, 3, 2, 1, "one column"},
    {"- 1\nb: 2\n", YAML, 2, 1, 1, "an entry of the list"},
    {"a: @x\n", YAML, 1, 4, 1, "in quotes"},
    {"a: %x\n", YAML, 1, 4, 1, "in quotes"},
    {"a: - 1\n", YAML, 1, 4, 1, "list entry"},
    {"a: \"\\q\"\n", YAML, 1, 5, 1, "escape"},
    {"a: [,]\n", YAML, 1, 5, 1, "a value is expected"},
    {"a: 1\nb: [&x [1], ", YAML, 2, 12, 1, "a value is expected"},
    {"\xC3\xA4: [1,\n\n\n", YAML, 1, 7, 1, "a value is expected"},
    {"a: *\n", YAML, 1, 5, 1, "behind & or *"},
    {"a: 1\nb\nc: 2\n", YAML, 3, 1, 1, "without its colon"},
    {"a: 1\n}\n", YAML, 2, 1, 1, "key is expected"},
    {"[1]\nb: 1\n", YAML, 2, 1, 1, "behind the end"},
    {"%YAML 3.0\n---\na: 1\n", YAML, 1, 1, 1, "version"},
    {"a: !e!x 1\n", YAML, 1, 4, 1, "exclamation mark"},
    /* what we do not read */
    {"a: 1\nb: 2\na: 3\n", TT_D_DUPLICATE_KEY, 3, 1, 1, "`a` in line 3 stands in line 1"},
    {"x: {wall: 1, b: 2, wall: 3}\n", TT_D_DUPLICATE_KEY, 1, 20, 4, "line 1"},
    {"\"a\": 1\na: 2\n", TT_D_DUPLICATE_KEY, 2, 1, 1, "line 1"},
    {"a: 1\n---\nb: 2\n", TT_D_SECOND_DOCUMENT, 2, 1, 1, "second document"},
    {"a: 1\n...\n---\n", TT_D_SECOND_DOCUMENT, 3, 1, 1, "second document"},
    {"? [a]\n: 1\n", YAML, 1, 3, 1, "no plain text"},
    {"{a: 1}: 2\n", YAML, 1, 1, 1, "no plain text"},
    {"a: &x 1\n*x : 2\n", YAML, 2, 1, 2, "no plain text"},
    {"&x a: 1\n", YAML, 1, 4, 1, "an anchor before a key"},
    {"a: !!int 5\n", YAML, 1, 4, 7, "tags"},
    {"a: !own 5\n", YAML, 1, 4, 6, "tags"},
    {"a: !!map {b: 1}\n", YAML, 1, 4, 1, "tags"},
    {"a: !!seq\n  - 1\n", YAML, 1, 4, 1, "tags"},
    {"a: &x {b: 1}\nc:\n  <<: *x\n", YAML, 3, 3, 2, "<<"},
    {"a: *b\n", YAML, 1, 4, 2, "no anchor &b"},
    {"a: &x 1\nb: &x 2\n", YAML, 2, 4, 4, "&x stands twice"},
    {"a: &a [1, *a]\n", TT_D_TOO_MUCH, 1, 11, 2, "inside itself"},
    /* files and characters of another kind */
    {"PK\x03\x04\x14", TT_D_ENCODING, 1, 1, 1, "export the table as CSV"},
    {"%PDF-1.4\n\x01", TT_D_ENCODING, 1, 1, 1, "plain text"},
    {"\xFF\xFEp", TT_D_ENCODING, 1, 1, 1, "UTF-16"},
    {"a: 1\rb: 2\r", TT_D_ENCODING, 1, 1, 1, "CR alone"},
    {"a:\xC2\xA0{b: 1, c: 2}\n", YAML, 1, 3, 1, "a no-break space"},
    {"a: \xE2\x80\x9Cx: y\xE2\x80\x9D\n", YAML, 1, 4, 1, "curly quote"},
    {"a: [1.5, #11]\nb: 1\n", YAML, 1, 10, 1, "# begins a remark"},
    {"a: &a {b: {c: *a}}\n", TT_D_TOO_MUCH, 1, 15, 2, "inside itself"},
};

static void each_refusal(void **state)
{
    (void)state;
    const size_t n = sizeof refusals / sizeof *refusals;
    assert_true(n > 0);
    for (size_t i = 0; i < n; i++) {
        const refusal *r = &refusals[i];
        tt_pool pool = {0};
        tt_node *root = (tt_node *)&pool;
        tt_diags *diags = tt_diags_new(0);
        tt_diags_about(diags, "bad.yaml", r->text, strlen(r->text));
        const tt_status status = tt_tree_read(r->text, strlen(r->text), &pool, diags, &root);
        assert_int_equal(status, TT_E_INPUT);
        assert_null(root);
        assert_int_equal(tt_diags_errors(diags), 1);
        size_t first = 0; /* an error may have a warning of a character beside it */
        while (tt_diags_at(diags, first)->severity != TT_ERROR) first++;
        const tt_diag *d = tt_diags_at(diags, first);
        const bool same = d->number == r->number && d->place.line == r->line &&
                          d->place.column == r->column && d->place.width == r->width &&
                          (strstr(d->text, r->says) || (d->hint && strstr(d->hint, r->says)));
        if (!same)
            print_error("\"%s\": TT%u %u:%u+%u %s (%s); due TT%d %u:%u+%u %s\n", r->text, d->number,
                        d->place.line, d->place.column, d->place.width, d->text,
                        d->hint ? d->hint : "", r->number, r->line, r->column, r->width, r->says);
        assert_true(same);
        tt_diags_free(diags);
        tt_pool_clear(&pool);
    }
}

static void all_in_one_pass(void **state)
{
    (void)state;
    const char *text = "a: 1\na: 2\na: !!int 3\nb: {<<: {x: 1, x: 2}}\nc: *none\n";
    tt_pool pool = {0};
    tt_node *root = NULL;
    tt_diags *diags = tt_diags_new(0);
    tt_diags_about(diags, NULL, text, strlen(text));
    assert_int_equal(tt_tree_read(text, strlen(text), &pool, diags, &root), TT_E_INPUT);
    const unsigned numbers[] = {TT_D_YAML, TT_D_YAML, TT_D_DUPLICATE_KEY, TT_D_YAML};
    const unsigned lines[] = {3, 4, 4, 5};
    assert_int_equal(tt_diags_count(diags), 4);
    for (size_t i = 0; i < 4; i++) {
        assert_int_equal(tt_diags_at(diags, i)->number, numbers[i]);
        assert_int_equal(tt_diags_at(diags, i)->place.line, lines[i]);
    }
    tt_diags_free(diags);
    tt_pool_clear(&pool);
}

/* Number of the first error, or 0 when it was read. Work that grows with the size takes a fraction
 * of a second, work that grows with its square minutes: ten seconds tell them apart anywhere. */
static unsigned answer(const char *text, size_t length, size_t *bytes)
{
    tt_pool pool = {0};
    tt_node *root = NULL;
    tt_diags *diags = tt_diags_new(0);
    tt_diags_about(diags, "big.yaml", text, length);
    const clock_t start = clock();
    const tt_status status = tt_tree_read(text, length, &pool, diags, &root);
    assert_true((double)(clock() - start) / CLOCKS_PER_SEC < 10.0);
    assert_true(status == TT_OK || tt_diags_errors(diags) > 0);
    assert_true((status == TT_OK) == (root != NULL));
    const unsigned number = status == TT_OK ? 0 : tt_diags_at(diags, 0)->number;
    if (bytes) *bytes = pool.bytes;
    tt_diags_free(diags);
    tt_pool_clear(&pool);
    return number;
}

/* `unit` repeated to about `length` bytes between `before` and `after`. */
static char *repeated(const char *before, const char *unit, const char *after, size_t length)
{
    const size_t step = strlen(unit), n = length / step;
    char *text = malloc(strlen(before) + n * step + strlen(after) + 1);
    assert_non_null(text);
    char *at = text + sprintf(text, "%s", before);
    for (size_t i = 0; i < n; i++, at += step) memcpy(at, unit, step);
    strcpy(at, after);
    return text;
}

static unsigned answer_repeated(const char *before, const char *unit, const char *after,
                                size_t length)
{
    char *text = repeated(before, unit, after, length);
    const unsigned number = answer(text, strlen(text), NULL);
    free(text);
    return number;
}

/* Ten levels of ten aliases each would be 10^10 values. */
static void alias_bomb(void **state)
{
    (void)state;
    char text[4096] = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n", *at = text + strlen(text);
    for (int i = 1; i <= 10; i++) {
        at += sprintf(at, "a%d: &a%d [", i, i);
        for (int k = 0; k < 10; k++) at += sprintf(at, "%s*a%d", k ? ", " : "", i - 1);
        at += sprintf(at, "]\n");
    }
    size_t bytes = 0;
    assert_int_equal(answer(text, strlen(text), &bytes), TT_D_TOO_MUCH);
    assert_true(bytes < 64u * 1024 * 1024);
}

static void deep(const char *open, const char *close, int levels, unsigned number)
{
    char text[2048] = "";
    for (int i = 0; i < levels; i++) strcat(text, open);
    strcat(text, "1");
    for (int i = 0; i < levels; i++) strcat(text, close);
    assert_int_equal(answer(text, strlen(text), NULL), number);
}

static void depth(void **state)
{
    (void)state;
    deep("[", "]", 64, 0);
    deep("[", "]", 65, TT_D_TOO_DEEP);
    deep("{a: ", "}", 64, 0);
    deep("{a: ", "}", 65, TT_D_TOO_DEEP);
    deep("- ", "", 65, TT_D_TOO_DEEP);
    char text[1024] = "a: &x ";
    for (int i = 0; i < 40; i++) strcat(text, "[");
    for (int i = 0; i < 40; i++) strcat(text, "]");
    strcat(text, "\nb: ");
    char *second = text + strlen(text);
    for (int i = 0; i < 23; i++) strcat(text, "[");
    strcat(text, "*x");
    for (int i = 0; i < 23; i++) strcat(text, "]");
    assert_int_equal(answer(text, strlen(text), NULL), 0); /* 1 + 23 + 40 levels */
    memmove(second + 1, second, strlen(second) + 1);
    strcat(text, "]");
    assert_int_equal(answer(text, strlen(text), NULL), TT_D_TOO_DEEP);
}

static void large_texts(void **state)
{
    (void)state;
    const size_t most = 4u * 1024 * 1024;
    assert_int_equal(answer_repeated("", "#", "", most + 1), TT_D_TOO_MUCH);
    assert_int_equal(answer_repeated("a: 1\n", "#", "\n", most - 6), 0);
    assert_int_equal(answer_repeated("", "- 1\n", "", 4 * 99998), 0);
    assert_int_equal(answer_repeated("", "- 1\n", "", 4 * 100000), TT_D_TOO_MUCH);
    assert_int_equal(answer_repeated("", "[", "", most), TT_D_TOO_DEEP);
    assert_int_equal(answer_repeated("", "{a: ", "", most), TT_D_TOO_DEEP);
    assert_int_equal(answer_repeated("", "? ", "", most), TT_D_YAML);
    assert_int_equal(answer_repeated("a: ", "&", "", most - 5), TT_D_YAML);
    assert_int_equal(answer_repeated("a: \"", "x", "\"", most - 5), 0);
    assert_int_equal(answer_repeated("a: >\n", "  x\n", "", most - 5), 0);
}

/* As many keys as are read at all, in falling order, and the first once more. */
static void many_keys(void **state)
{
    (void)state;
    enum { KEYS = 90000 };
    char *text = malloc(KEYS * 12u + 32), *at = text;
    assert_non_null(text);
    for (int i = KEYS; i > 0; i--) at += sprintf(at, "k%d: 1\n", i);
    assert_int_equal(answer(text, strlen(text), NULL), 0);
    sprintf(at, "k%d: 1\n", KEYS);
    assert_int_equal(answer(text, strlen(text), NULL), TT_D_DUPLICATE_KEY);
    free(text);
}

static void many_anchors(void **state)
{
    (void)state;
    char *text = malloc(1001u * 16), *at = text;
    assert_non_null(text);
    for (int i = 0; i < 1000; i++) at += sprintf(at, "- &a%d 1\n", i);
    assert_int_equal(answer(text, strlen(text), NULL), 0);
    sprintf(at, "- &b 1\n");
    assert_int_equal(answer(text, strlen(text), NULL), TT_D_TOO_MUCH);
    free(text);
}

/* A zero byte inside a text of known length. */
static void zero_byte(void **state)
{
    (void)state;
    assert_int_equal(answer("a: 1\0b: 2", 9, NULL), TT_D_ENCODING);
    assert_int_equal(answer(NULL, 0, NULL), TT_D_EMPTY);
}

/* Every second byte is zero: UTF-16 without its mark. */
static void wide_text(void **state)
{
    (void)state;
    static const char text[] = {'p', 0, 'i', 0, 'e', 0, 'c', 0, 'e', 0, ':', 0};
    tt_pool pool = {0};
    tt_node *root = NULL;
    tt_diags *diags = tt_diags_new(0);
    tt_diags_about(diags, NULL, text, sizeof text);
    assert_int_equal(tt_tree_read(text, sizeof text, &pool, diags, &root), TT_E_INPUT);
    assert_int_equal(tt_diags_count(diags), 1);
    assert_int_equal(tt_diags_at(diags, 0)->number, TT_D_ENCODING);
    assert_string_equal(tt_diags_at(diags, 0)->hint, "save it as UTF-8");
    tt_diags_free(diags);
    tt_pool_clear(&pool);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_refusal), cmocka_unit_test(all_in_one_pass),
        cmocka_unit_test(alias_bomb),   cmocka_unit_test(depth),
        cmocka_unit_test(large_texts),  cmocka_unit_test(many_keys),
        cmocka_unit_test(many_anchors), cmocka_unit_test(zero_byte),
        cmocka_unit_test(wide_text),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
