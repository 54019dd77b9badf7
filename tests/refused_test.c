/* tests/refused_test.c - every verb as the command line runs it, while memory is refused and while
 * streams fail. Linked so that malloc, calloc, realloc and free of this program (not of the C
 * library or of libyaml) are those below. Whatever is refused, the run ends as it would have, or
 * with status 3 and a word of why; nothing is left behind. With an argument every request of every
 * verb, which takes minutes; without one a share of them. */
#define _GNU_SOURCE /* fopencookie */
#include "cli/cli.h"
#include "run_piece.h"

#include <errno.h>

static struct {
    size_t asked, refused; /* requests so far; which of them is refused, 0: none */
    size_t out;            /* blocks taken and not given back */
} memory;

void *__real_malloc(size_t bytes);
void *__real_calloc(size_t n, size_t bytes);
void *__real_realloc(void *block, size_t bytes);
void __real_free(void *block);
void *__wrap_malloc(size_t bytes);
void *__wrap_calloc(size_t n, size_t bytes);
void *__wrap_realloc(void *block, size_t bytes);
void __wrap_free(void *block);

static bool counting;

static bool refuse(void)
{
    if (!counting || ++memory.asked != memory.refused) return false;
    errno = ENOMEM;
    return true;
}

void *__wrap_malloc(size_t bytes)
{
    void *block = refuse() ? NULL : __real_malloc(bytes);
    memory.out += counting && block;
    return block;
}

void *__wrap_calloc(size_t n, size_t bytes)
{
    void *block = refuse() ? NULL : __real_calloc(n, bytes);
    memory.out += counting && block;
    return block;
}

void *__wrap_realloc(void *block, size_t bytes)
{
    void *moved = refuse() ? NULL : __real_realloc(block, bytes);
    memory.out += counting && moved && !block;
    return moved;
}

void __wrap_free(void *block)
{
    memory.out -= counting && block;
    __real_free(block);
}

/* ---- streams that give or take so many bytes and then fail ------------------------------------
 */

typedef struct {
    const char *text; /* to be read */
    size_t n, at, fails_at;
} stream;

static ssize_t give(void *user, char *into, size_t room)
{
    stream *s = user;
    if (s->at >= s->fails_at) {
        errno = EIO;
        return -1;
    }
    size_t n = s->n - s->at;
    n = n < room ? n : room;
    n = n < s->fails_at - s->at ? n : s->fails_at - s->at;
    memcpy(into, s->text + s->at, n);
    s->at += n;
    return (ssize_t)n;
}

static ssize_t take(void *user, const char *from, size_t n)
{
    stream *s = user;
    (void)from;
    if (s->at + n > s->fails_at) {
        errno = EIO;
        return 0; /* of a cookie: an error */
    }
    s->at += n;
    return (ssize_t)n;
}

/* ---- one run ----------------------------------------------------------------------------------
 */

static const char piece[] =
    "piece: Two limbs\n"
    "units: mm\n"
    "bronze: {alloy: C87300, wall: 5}\n"
    "armature: {grade: \"1.4462\"}\n"
    "limbs:\n"
    "  leg: {armature: {tube: [26.9, 2.6]}, rows: [[toe, 0, 0, 0, 60, 52], [hip, 40, 10, 600, 110, "
    "90]]}\n"
    "  arm: [[hip, 60], [hand, 300, 80, 700, 40]]\n"
    "stands: [{at: toe, held: fixed, sole: [[-60, -40], [90, -30], [90, 30], [-60, 40]]}]\n"
    "site: {indoors: yes}\n"
    "weighed: [{segment: toe-hip, bronze: 9 kg}]\n"
    "limits: {mass: 60 kg, sway: 1/100}\n";

enum { MOST_ARGUMENTS = 12, MESSAGE = 4000 };

typedef struct {
    const char *argument[MOST_ARGUMENTS];
    size_t
        step; /* of its requests every so-manieth is refused; of a small piece with patience: all */
} line;

static const line lines[] = {
    {{"check", "-"}, 2},
    {{"check", "-", "--steps", "--set", "bronze/wall=6 mm", "--data",
      TT_ROOT "/tests/cli/data-in-json/mill.csv"},
     11},
    {{"check", "-", "--json", "-"}, 61},
    {{"check", TT_ROOT "/examples/heron.yaml"}, 97},
    {{"weigh", TT_ROOT "/examples/heron.yaml"}, 97},
    {{"check", "-", "--scale", "0"}, 1},
    {{"weigh", "-"}, 2},
    {{"weigh", "-", "--json", "-"}, 2},
    {{"stock"}, 1},
    {{"stock", "alloys"}, 7},
    {{"stock", "tubes", "33.7", "x", "4"}, 3},
    {{"explain"}, 7},
    {{"explain", "wall"}, 3},
    {{"explain", "TT1101"}, 3},
    {{"explain", "no such word"}, 3},
    {{"new", "--for", "pair", "--basis", "us"}, 3},
    {{"--help"}, 1},
    {{"check", "--help"}, 1},
    {{"--version"}, 1},
};
enum { LINES = sizeof lines / sizeof *lines };

typedef struct {
    int status;
    size_t written;
    char said[MESSAGE];
} outcome;

/* in_fails, out_fails: after so many bytes; SIZE_MAX: never. */
static outcome run(const line *of, size_t refused, size_t in_fails, size_t out_fails)
{
    char *argv[MOST_ARGUMENTS + 2] = {(char[]){"tiptoe"}};
    int argc = 1;
    for (; of->argument[argc - 1]; argc++) argv[argc] = (char *)(uintptr_t)of->argument[argc - 1];
    outcome got = {0};
    stream in = {piece, sizeof piece - 1, 0, in_fails}, out = {NULL, 0, 0, out_fails};
    FILE *input = fopencookie(&in, "r", (cookie_io_functions_t){.read = give}),
         *output = fopencookie(&out, "w", (cookie_io_functions_t){.write = take}),
         *error = fmemopen(got.said, sizeof got.said, "w");
    assert_true(input && output && error);
    memory.asked = memory.out = 0;
    memory.refused = refused;
    counting = true;
    got.status = tt_cli_run(argc, argv, (tt_streams){input, output, error});
    counting = false;
    fclose(input);
    fclose(output);
    fclose(error);
    got.written = out.at;
    return got;
}

static void tell(const line *of, const char *what, size_t at, const outcome *got)
{
    fprintf(stderr, "tiptoe");
    for (size_t i = 0; of->argument[i]; i++) fprintf(stderr, " %s", of->argument[i]);
    fprintf(stderr, ": %s %zu: status %d, %zu bytes, %zu blocks left; said: %s\n", what, at,
            got->status, got->written, memory.out, got->said);
}

static bool patient;

/* A run that was refused memory says so with status 3, or is the same as one that was not. */
static void memory_is_refused(void **state)
{
    (void)state;
    size_t told = 0;
    for (size_t l = 0; l < LINES; l++) {
        const outcome whole = run(&lines[l], 0, SIZE_MAX, SIZE_MAX);
        const size_t all = memory.asked, left = memory.out;
        if (left) tell(&lines[l], "nothing refused of", all, &whole);
        assert_int_equal(left, 0);
        for (size_t k = 1; k <= all; k += patient && lines[l].step < 97 ? 1 : lines[l].step) {
            const outcome got = run(&lines[l], k, SIZE_MAX, SIZE_MAX);
            const bool said = got.status == 3 && strstr(got.said, "memory");
            const bool same = got.status == whole.status && got.written == whole.written;
            if ((!said && !same) || memory.out) tell(&lines[l], "refused request", k, &got);
            assert_true(said || same);
            assert_int_equal(memory.out, 0);
            told += said;
        }
    }
    assert_true(told > 100);
}

static void reading_fails(void **state)
{
    (void)state;
    for (size_t l = 0; l < LINES; l++) {
        if (!lines[l].argument[1] || strcmp(lines[l].argument[1], "-") != 0) continue;
        for (size_t k = 0; k < sizeof piece; k += 97) {
            const outcome got = run(&lines[l], 0, k, SIZE_MAX);
            const bool said = got.status >= 2 && got.status <= 3 && got.said[0] && !got.written;
            if (!said || memory.out) tell(&lines[l], "reading failed at", k, &got);
            assert_true(said);
            assert_int_equal(memory.out, 0);
        }
    }
}

static void writing_fails(void **state)
{
    (void)state;
    size_t tried = 0;
    for (size_t l = 0; l < LINES; l++) {
        const outcome whole = run(&lines[l], 0, SIZE_MAX, SIZE_MAX);
        for (size_t k = 0; k < whole.written; k += 1 + whole.written / 5) {
            const outcome got = run(&lines[l], 0, SIZE_MAX, k);
            const bool said = got.status == 3 && strstr(got.said, "written");
            if (!said || memory.out) tell(&lines[l], "writing failed at", k, &got);
            assert_true(said);
            assert_int_equal(memory.out, 0);
            tried++;
        }
    }
    assert_true(tried > LINES);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(memory_is_refused),
                                       cmocka_unit_test(reading_fails),
                                       cmocka_unit_test(writing_fails)};
    (void)argv;
    patient = argc > 1;
    return cmocka_run_group_tests(tests, NULL, NULL);
}
