/* tests/cases.h - reads reference cases (tests/cases/README.md) and compares what a test got with
 * what the case expects. When the variable TT_VERIFICATION names a file, a line is appended to it
 * for each comparison: case, source, name, expected, got, tolerance; docs/verification.md is made
 * from those lines. */
#ifndef TT_TESTS_CASES_H
#define TT_TESTS_CASES_H

#include "assert_close.h"

#include <glob.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { CASE_ITEMS = 128, CASE_NUMBERS = 32, CASE_WORD = 192, CASE_LINE = 1024 };

typedef struct {
    char name[CASE_WORD];
    double value[CASE_NUMBERS];
    char word[CASE_WORD]; /* the first entry as written, for words */
    int n;
} case_item;

typedef struct {
    char file[CASE_LINE], title[CASE_LINE], source[CASE_LINE], solve[CASE_LINE];
    case_item in[CASE_ITEMS], expect[CASE_ITEMS];
    double within[CASE_ITEMS];
    bool relative[CASE_ITEMS];
    int ins, expects;
} test_case;

typedef void case_fn(const test_case *tested);

static inline const case_item *case_find(const test_case *c, const char *name)
{
    for (int i = 0; i < c->ins; i++) {
        if (strcmp(c->in[i].name, name) == 0) return &c->in[i];
    }
    return NULL;
}

/** The k-th number of an input; the test fails when it is not there. */
static inline double case_number(const test_case *c, const char *name, int k)
{
    const case_item *item = case_find(c, name);
    if (!item || k >= item->n) {
        print_error("%s: case '%s' lacks input '%s' number %d\n", c->file, c->title, name, k);
        fail();
    }
    return item ? item->value[k] : 0.0;
}

static inline double case_number_or(const test_case *c, const char *name, double otherwise)
{
    const case_item *item = case_find(c, name);
    return item && item->n ? item->value[0] : otherwise;
}

static inline const char *case_word(const test_case *c, const char *name)
{
    const case_item *item = case_find(c, name);
    return item ? item->word : "";
}

static inline void case_log(const test_case *c, int i, double got)
{
    const char *path = getenv("TT_VERIFICATION");
    FILE *out = path ? fopen(path, "a") : NULL;
    if (!out) return;
    fprintf(out, "%s\t%s\t%s\t%.6g\t%.6g\t%g%s\n", c->title, c->source, c->expect[i].name,
            c->expect[i].value[0], got, c->within[i], c->relative[i] ? " %" : "");
    fclose(out);
}

/** Compares the expectation of this name; every expectation must be asked for by its test. */
static inline void case_expect(const test_case *c, int i, double got)
{
    const double expected = c->expect[i].value[0];
    const double limit = c->relative[i] ? fabs(expected) * c->within[i] / 100.0 : c->within[i];
    case_log(c, i, got);
    if (fabs(got - expected) <= limit) return;
    print_error("%s: case '%s': %s: got %.10g, expected %.10g within %.3g\n", c->file, c->title,
                c->expect[i].name, got, expected, limit);
    fail();
}

static inline void case_numbers(char *text, case_item *item)
{
    snprintf(item->word, sizeof item->word, "%.*s", (int)strcspn(text, " \t"), text);
    for (char *end = text; item->n < CASE_NUMBERS; text = end) {
        const double value = strtod(text, &end);
        if (end == text) break;
        item->value[item->n++] = value;
    }
}

static inline char *case_next(char **line)
{
    char *word = *line + strspn(*line, " \t");
    char *end = word + strcspn(word, " \t");
    if (*end) *end++ = '\0';
    *line = end + strspn(end, " \t");
    return word;
}

static inline void case_line(test_case *c, const char *key, char *rest)
{
    if (strcmp(key, "case") == 0) snprintf(c->title, sizeof c->title, "%s", rest);
    else if (strcmp(key, "source") == 0) snprintf(c->source, sizeof c->source, "%s", rest);
    else if (strcmp(key, "solve") == 0) snprintf(c->solve, sizeof c->solve, "%s", rest);
    else if (strcmp(key, "in") == 0 && c->ins < CASE_ITEMS) {
        case_item *item = &c->in[c->ins++];
        snprintf(item->name, sizeof item->name, "%s", case_next(&rest));
        case_numbers(rest, item);
    } else if (strcmp(key, "expect") == 0 && c->expects < CASE_ITEMS) {
        case_item *item = &c->expect[c->expects];
        snprintf(item->name, sizeof item->name, "%s", case_next(&rest));
        case_numbers(rest, item);
        const char *within = strstr(rest, "within");
        if (!item->n || !within) {
            print_error("%s: case '%s': expectation without number or tolerance\n", c->file, c->title);
            fail();
        }
        c->within[c->expects] = within ? strtod(within + 6, NULL) : 0.0;
        c->relative[c->expects++] = strchr(rest, '%') != NULL;
    } else {
        print_error("%s: unknown word '%s'\n", c->file, key);
        fail();
    }
}

static inline int case_finish(test_case *c, case_fn *run)
{
    if (!c->title[0]) return 0;
    if (!c->source[0] || !c->expects) {
        print_error("%s: case '%s' has no source or expects nothing\n", c->file, c->title);
        fail();
    }
    run(c);
    return 1;
}

static inline int case_file(const char *path, case_fn *run)
{
    FILE *in = fopen(path, "r");
    assert_non_null(in);
    test_case *c = calloc(1, sizeof *c);
    assert_non_null(c);
    char line[CASE_LINE];
    int ran = 0;
    snprintf(c->file, sizeof c->file, "%s", path);
    while (fgets(line, sizeof line, in)) {
        line[strcspn(line, "\r\n")] = '\0';
        char *rest = line;
        if (rest[strspn(rest, " \t")] == '\0' || line[0] == '#') continue;
        const char *key = case_next(&rest);
        if (strcmp(key, "case") == 0) {
            ran += case_finish(c, run);
            memset(c, 0, sizeof *c);
            snprintf(c->file, sizeof c->file, "%s", path);
        }
        case_line(c, key, rest);
    }
    ran += case_finish(c, run);
    free(c);
    fclose(in);
    return ran;
}

/** Runs every case of tests/cases/<area>/<pattern>; fails when there is none. Returns how many. */
static inline int cases_run(const char *area, const char *pattern, case_fn *run)
{
    char path[CASE_LINE];
    snprintf(path, sizeof path, "%s/tests/cases/%s/%s", TT_ROOT, area, pattern);
    glob_t found = {0};
    int ran = 0;
    if (glob(path, 0, NULL, &found) == 0) {
        for (size_t i = 0; i < found.gl_pathc; i++) ran += case_file(found.gl_pathv[i], run);
    }
    globfree(&found);
    if (ran == 0) print_error("no case found: %s\n", path);
    assert_true(ran > 0);
    return ran;
}

#endif
