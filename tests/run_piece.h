/* tests/run_piece.h - a piece file through the whole library, and the way into its JSON result.
 *
 * A path is steps with '/' between them: the key of a map, or the number of a list entry. Behind a
 * key, in brackets, which entry of the list is meant: words that one of its texts (name, at,
 * segment, check, symbol ...) is, or KEY=WORDS, or KEY=NUMBER; several with commas, all of them
 * true of it. Where a case file allows no blank, '_' stands for one.
 *
 *     models[together]/cases[own]/displacements[tip]/move_m/2
 *     models[together]/cases[own]/forces[segment=toe-hip,x=0.5]/moment_y_Nm
 *
 * FIRST//SECOND is the first number over the second. A truth value counts 1 or 0. */
#ifndef TT_TESTS_RUN_PIECE_H
#define TT_TESTS_RUN_PIECE_H

#include "tiptoe/assess.h"
#include "tiptoe/report.h"

#include "assert_close.h"

#include <cjson/cJSON.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
    char *at;
    size_t n, room;
} run_text;

static inline int run_take(void *user, const char *bytes, size_t n)
{
    run_text *to = user;
    if (to->n + n + 1 > to->room) {
        const size_t room = 2 * (to->room + n + 1);
        char *more = realloc(to->at, room);
        if (!more) return 1;
        to->at = more;
        to->room = room;
    }
    memcpy(to->at + to->n, bytes, n);
    to->n += n;
    to->at[to->n] = '\0';
    return 0;
}

/** The bytes of a file; the caller frees them. The test fails when it cannot be read. */
static inline run_text run_file(const char *path)
{
    run_text text = {0};
    char part[4096];
    FILE *in = fopen(path, "rb");
    if (!in) {
        print_error("%s cannot be read\n", path);
        fail();
    }
    for (size_t n = 1; in && n > 0;) {
        n = fread(part, 1, sizeof part, in);
        assert_int_equal(run_take(&text, part, n), 0);
    }
    if (in) fclose(in);
    return text;
}

static inline void run_tell(const tt_diags *diags)
{
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        char line[1024];
        tt_diag_print(tt_diags_at(diags, i), line, sizeof line);
        print_error("%s", line);
    }
}

/** Reads, assesses, writes as JSON, reads that. The test fails where one of them does not succeed.
 *  The caller deletes the tree. */
static inline cJSON *run_piece(const char *name, const char *text, const tt_changes *changes)
{
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    tt_assessment *assessment = NULL;
    run_text json = {0};
    tt_status status = tt_piece_read(name, text, strlen(text), changes, diags, &piece);
    if (status == TT_OK) status = tt_assess(piece, diags, &assessment);
    if (status == TT_OK) status = tt_write_json(assessment, run_take, &json);
    if (status != TT_OK) {
        run_tell(diags);
        print_error("%s: %s\n", name, tt_status_text(status));
    }
    tt_assessment_free(assessment);
    tt_piece_free(piece);
    tt_diags_free(diags);
    assert_int_equal(status, TT_OK);
    cJSON *tree = cJSON_Parse(json.at);
    free(json.at);
    assert_non_null(tree);
    return tree;
}

/* ---- paths ---- */

static inline bool run_same_words(const char *a, const char *b, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        if (!a[i] || (a[i] != b[i] && !(a[i] == ' ' && b[i] == '_'))) return false;
    }
    return a[n] == '\0';
}

/* One condition "KEY=WORDS", "KEY=NUMBER" or "WORDS" of n characters on an entry. */
static inline bool run_meets(const cJSON *entry, const char *text, size_t n)
{
    const char *equals = memchr(text, '=', n);
    const char *words = equals ? equals + 1 : text;
    const size_t key = equals ? (size_t)(equals - text) : 0, length = n - (size_t)(words - text);
    const cJSON *member;
    cJSON_ArrayForEach(member, entry)
    {
        if (equals && !run_same_words(member->string, text, key)) continue;
        if (cJSON_IsString(member) && run_same_words(member->valuestring, words, length))
            return true;
        if (equals && cJSON_IsNumber(member) &&
            fabs(member->valuedouble - strtod(words, NULL)) < 1e-9)
            return true;
    }
    return false;
}

static inline bool run_meets_all(const cJSON *entry, const char *text, size_t n)
{
    for (size_t at = 0, length; at < n; at += length + 1) {
        const char *comma = memchr(text + at, ',', n - at);
        length = comma ? (size_t)(comma - text) - at : n - at;
        if (!run_meets(entry, text + at, length)) return false;
    }
    return true;
}

static inline const cJSON *run_entry(const cJSON *list, const char *text, size_t n)
{
    const cJSON *entry;
    cJSON_ArrayForEach(entry, list)
    {
        if (run_meets_all(entry, text, n)) return entry;
    }
    return NULL;
}

static inline const cJSON *run_step(const cJSON *at, const char *step, size_t n)
{
    char key[64];
    const char *bracket = memchr(step, '[', n);
    const size_t length = bracket ? (size_t)(bracket - step) : n;
    snprintf(key, sizeof key, "%.*s", (int)length, step);
    at = cJSON_IsArray(at) ? cJSON_GetArrayItem(at, atoi(key))
                           : cJSON_GetObjectItemCaseSensitive(at, key);
    return bracket && at ? run_entry(at, bracket + 1, n - length - 2) : at;
}

/* Ends at the first '/' outside brackets, or at the end. */
static inline size_t run_step_length(const char *path)
{
    size_t n = 0;
    for (int deep = 0; path[n] && (deep > 0 || path[n] != '/'); n++) {
        deep += (path[n] == '[') - (path[n] == ']');
    }
    return n;
}

/** What stands at a path, until its end or a "//"; NULL: nothing. *end: where it stopped. */
static inline const cJSON *run_find(const cJSON *at, const char *path, const char **end)
{
    for (;;) {
        const size_t n = run_step_length(path);
        at = at ? run_step(at, path, n) : NULL;
        path += n;
        if (*path != '/' || path[1] == '/') break;
        path++;
    }
    if (end) *end = path;
    return at;
}

/** The number at a path; the test fails when there is none. */
static inline double run_number(const cJSON *tree, const char *path)
{
    const char *end;
    const cJSON *found = run_find(tree, path, &end);
    if (!cJSON_IsNumber(found) && !cJSON_IsBool(found)) {
        print_error("no number at %s\n", path);
        fail();
    }
    if (!found) return NAN;
    const double value = cJSON_IsNumber(found) ? found->valuedouble
                         : cJSON_IsTrue(found) ? 1.0
                                               : 0.0;
    return *end == '/' ? value / run_number(tree, end + 2) : value;
}

#endif
