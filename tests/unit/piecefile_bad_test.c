/* Every file of tests/bad is refused with exactly the errors, number and line, that its first line
 * states: "# expect: TT1101 line 7, TT1203 line 9". */
#include "pieces.h"

#include <dirent.h>

enum { MOST = 60 };
typedef struct {
    unsigned number, line;
} error;

static int by_line(const void *a, const void *b)
{
    const error *x = a, *y = b;
    if (x->line != y->line) return x->line < y->line ? -1 : 1;
    return x->number < y->number ? -1 : x->number > y->number;
}

static size_t expected(const char *name, const char *text, error out[MOST])
{
    size_t n = 0;
    const char *end = strchr(text, '\n'), *at = text;
    if (strncmp(text, "# expect: ", 10) != 0 || !end) fail_msg("%s states no error", name);
    while ((at = strstr(at, "TT")) != NULL && at < end && n < MOST) {
        if (sscanf(at, "TT%u line %u", &out[n].number, &out[n].line) != 2)
            fail_msg("%s: TT1234 line 5 is how an error is stated", name);
        n++;
        at += 2;
    }
    if (n == 0) fail_msg("%s states no error", name);
    qsort(out, n, sizeof *out, by_line);
    return n;
}

static size_t found(const tt_diags *diags, error out[MOST])
{
    size_t n = 0;
    for (size_t i = 0; i < tt_diags_count(diags) && n < MOST; i++) {
        const tt_diag *diag = tt_diags_at(diags, i);
        if (diag->severity != TT_ERROR) continue;
        out[n++] = (error){diag->number, diag->place.line};
        assert_true(diag->place.column > 0 && diag->place.width > 0);
        if (diag->number >= 1100) assert_non_null(diag->hint); /* below: the YAML itself */
        assert_string_equal(diag->file, "bad.yaml");
        assert_non_null(diag->shown);
    }
    qsort(out, n, sizeof *out, by_line);
    return n;
}

static void check(const char *name)
{
    char path[300];
    error want[MOST], got[MOST];
    snprintf(path, sizeof path, "tests/bad/%.250s", name);
    char *text = tt_test_text(path);
    const size_t wanted = expected(name, text, want);
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = (tt_piece *)text; /* must not stay */
    const tt_status status = tt_piece_read("bad.yaml", text, strlen(text), NULL, diags, &piece);
    const size_t n = found(diags, got);
    if (n != wanted || memcmp(want, got, n * sizeof *got) != 0) {
        tt_test_print(diags);
        fail_msg("%s: the errors are not those that it states", name);
    }
    assert_int_equal(status, TT_E_INPUT);
    assert_null(piece);
    tt_diags_free(diags);
    free(text);
}

static void every_bad_file(void **state)
{
    (void)state;
    DIR *folder = opendir(TT_ROOT "/tests/bad");
    assert_non_null(folder);
    size_t files = 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        const char *dot = strrchr(entry->d_name, '.');
        if (!dot || strcmp(dot, ".yaml") != 0) continue;
        check(entry->d_name);
        files++;
    }
    closedir(folder);
    assert_true(files >= 25);
}

static tt_diag first_error(const char *text, tt_diags *diags)
{
    tt_piece *piece;
    assert_int_equal(tt_piece_read("f.yaml", text, strlen(text), NULL, diags, &piece), TT_E_INPUT);
    assert_true(tt_diags_errors(diags) > 0);
    return *tt_diags_at(diags, 0);
}

/* The caret stands under the guilty unit, the hint names the nearest key, the place of a name. */
static void carets_and_hints(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        unsigned line, column, width;
        const char *hint;
    } cases[] = {
        {"piece: P\nbronze: {wall: 60 furlong}\n", 2, 19, 7, "mm"},
        {"piece: P\nbronze: {wal: 6 mm}\n", 2, 10, 3, "did you mean `wall`?"},
        {"piece: P\nunits: mm\nlimbs: {leg: [[toe, 0, 0, 0, 90], [hip, 0, 0, 600, 90]]}\n"
         "stands: [{at: tow, held: fixed}]\n",
         4, 15, 3, "did you mean `toe`?"},
        {"piece: P\nstands: [{at: tow, held: pined}]\n", 2, 26, 5, "it reads: fixed, pinned"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        tt_diags *diags = tt_diags_new(0);
        first_error(cases[i].text, diags);
        bool seen = false;
        for (size_t k = 0; k < tt_diags_count(diags); k++) {
            const tt_diag *d = tt_diags_at(diags, k);
            seen |= d->place.line == cases[i].line && d->place.column == cases[i].column &&
                    d->place.width == cases[i].width && strstr(d->hint, cases[i].hint);
        }
        if (!seen) tt_test_print(diags);
        assert_true(seen);
        tt_diags_free(diags);
    }
}

static void warns(const char *text, unsigned number, unsigned line)
{
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("f.yaml", text, strlen(text), NULL, diags, &piece), TT_OK);
    if (number) {
        assert_int_equal(tt_diags_count(diags), 1);
        assert_int_equal(tt_diags_at(diags, 0)->severity, TT_WARNING);
        assert_int_equal(tt_diags_at(diags, 0)->number, number);
        assert_int_equal(tt_diags_at(diags, 0)->place.line, line);
    } else {
        assert_int_equal(tt_diags_count(diags), 0);
    }
    tt_piece_free(piece);
    tt_diags_free(diags);
}

#define LEG(rows, rest)                                                                            \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\nlimbs:\n  leg:\n" rows                 \
    "stands: [{at: toe, held: fixed}]\n" rest
#define PLAIN "    - [toe, 0, 0, 0, 150]\n    - [hip, 0, 0, 620, 200]\n"

/* atan(300 / 620) = 25.8 degrees from +z lies outside the band of 15 to 25, atan(250 / 620) = 22.0
 * inside; +x is nowhere near. */
static void warnings(void **state)
{
    (void)state;
    warns(LEG(PLAIN, ""), 0, 0);
    warns(LEG("    - [toe, 0, 0, 0, 9, 9]\n    - [hip, 0, 0, 620, 9, 9]\n", ""), 1406, 7);
    warns(LEG("    - [toe, 0, 0, 0, 60, 40]\n    - [hip, 0, 0, 620, 60, 40]\n",
              "faces: [1, 0, 2.5]\n"),
          1409, 7);
    warns(
        LEG("    - [toe, 0, 0, 0, 60, 40]\n    - [hip, 0, 0, 620, 60, 40]\n", "faces: [1, 0, 2]\n"),
        0, 0);
    warns(LEG("    - [toe, 0, 0, 0, 60, 60]\n    - [hip, 0, 0, 620, 60, 60]\n",
              "faces: [1, 0, 2.5]\n"),
          0, 0);
    warns(LEG(PLAIN, "site:\n  wind: {basic_speed: 41 m/s, terrain: 0}\n"), 1105, 10);
    warns(LEG(PLAIN, "site:\n  wind: {basic_speed: 40 m/s, terrain: 0}\n"), 0, 0);
    warns(LEG(PLAIN, "basis: us\nsite:\n  wind: {basic_speed: 84 mph, exposure: B}\n"), 1105, 11);
    warns(LEG(PLAIN, "basis: us\nsite:\n  wind: {basic_speed: 85 mph, exposure: B}\n"), 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_bad_file),
                                       cmocka_unit_test(carets_and_hints),
                                       cmocka_unit_test(warnings)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
