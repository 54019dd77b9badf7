/* tests/memory_test.c - allocations refused in turn: of read, assess, text, JSON, each by itself,
 * and of what the program says of itself: words explained, a table, a piece file to begin with.
 * Each one of a piece of two limbs; every 97th of the heron. Of JSON, which asks tens and hundreds
 * of thousands of times, and of the words, fewer; with an argument, which takes minutes, those too.
 * The functions of base/alloc.h below are linked in place of the library's own; whatever is
 * refused, the run ends with TT_E_NOMEM, or well, and gives everything back. */
#include "run_piece.h"

#include "base/alloc.h"
#include "tiptoe/manual.h"
#include "tiptoe/weigh.h"

static struct {
    size_t asked, refused; /* requests so far; which of them is refused, 0: none */
    size_t out;            /* blocks taken and not given back */
} memory;

static bool refuse(void)
{
    return ++memory.asked == memory.refused;
}

void *tt_alloc(size_t n, size_t size)
{
    void *block = refuse() ? NULL : calloc(n ? n : 1, size ? size : 1);
    memory.out += block != NULL;
    return block;
}

void *tt_realloc(void *block, size_t n, size_t size)
{
    if (refuse()) return NULL;
    const size_t bytes = n * size;
    void *moved = realloc(block, bytes > 0 ? bytes : 1);
    memory.out += moved && !block;
    return moved;
}

void *tt_free(void *block)
{
    memory.out -= block != NULL;
    free(block);
    return NULL;
}

static const char two_limbs[] =
    "piece: Two limbs\n"
    "units: mm\n"
    "bronze: {alloy: C87300, wall: 5}\n"
    "armature: {grade: \"1.4462\"}\n"
    "limbs:\n"
    "  leg: {armature: {tube: [26.9, 2.6]}, rows: [[toe, 0, 0, 0, 60, 52], [hip, 40, 10, 600, 110, "
    "90]]}\n"
    "  arm: [[hip, 60], [hand, 300, 80, 700, 40]]\n"
    "lumps: [{name: ball, at: hand, mass: 1 kg, wind_area: 0.01 m2}]\n"
    "stands: [{at: toe, held: fixed, sole: [[-60, -40], [90, -30], [90, 30], [-60, 40]]}]\n"
    "site: {indoors: yes}\n"
    "loads: [{case: rope, kind: variable, along: hip-hand, force_per_length: [0, 0, -0.1 kN/m]}]\n"
    "weighed: [{segment: toe-hip, bronze: 9 kg}, {whole: yes, bronze: 20 kg}]\n"
    "limits: {mass: 60 kg, sway: 1/100, frequency: 1 Hz, use: 0.9}\n";

static int drop(void *user, const char *bytes, size_t n)
{
    size_t *written = user;
    (void)bytes;
    *written += n;
    return 0;
}

typedef tt_status run_fn(tt_diags *diags, size_t *written);

/* What a run works on. */
static struct {
    const char *text;
    size_t length;
    tt_piece *piece;
    tt_assessment *assessment;
} given;

static tt_status read(tt_diags *diags, size_t *written)
{
    tt_piece *piece = NULL;
    const tt_status status = tt_piece_read("piece", given.text, given.length, NULL, diags, &piece);
    tt_piece_free(piece);
    *written += status == TT_OK;
    return status;
}

static tt_status assess(tt_diags *diags, size_t *written)
{
    tt_assessment *assessment = NULL;
    const tt_status status = tt_assess(given.piece, diags, &assessment);
    tt_assessment_free(assessment);
    *written += status == TT_OK;
    return status;
}

static tt_status write_text(tt_diags *diags, size_t *written)
{
    const tt_text_options options = {.steps = 1};
    (void)diags;
    return tt_write_text(given.assessment, &options, drop, written);
}

static tt_status write_json(tt_diags *diags, size_t *written)
{
    (void)diags;
    return tt_write_json(given.assessment, drop, written);
}

static tt_status weigh(tt_diags *diags, size_t *written)
{
    tt_weights *weights = NULL;
    (void)diags;
    tt_status status = tt_weigh(given.piece, &weights);
    if (status == TT_OK) status = tt_write_weights_text(weights, NULL, drop, written);
    if (status == TT_OK) status = tt_write_weights_json(weights, drop, written);
    tt_weights_free(weights);
    return status;
}

static tt_status of_itself(tt_diags *diags, size_t *written)
{
    static const char *const words[] = {NULL, "wall", "sway", "armature", "TT1101"};
    const tt_start_options options = {.what = "pair", .units = "in"};
    tt_status status = tt_write_start(&options, diags, drop, written);
    for (size_t i = 0; status == TT_OK && i < sizeof words / sizeof *words; i++)
        status = tt_write_explain(words[i], diags, drop, written);
    if (status == TT_OK) status = tt_write_stock("alloys", NULL, NULL, NULL, diags, drop, written);
    return status;
}

/* The k-th request refused; k = 0: none. */
static tt_status run(run_fn *what, size_t k, size_t *written)
{
    memory.asked = 0;
    memory.refused = k;
    tt_diags *diags = tt_diags_new(0);
    const tt_status status = diags ? what(diags, written) : TT_E_NOMEM;
    tt_diags_free(diags);
    return status;
}

/* Of the step-th requests. A run that ends well although something was refused has written no less.
 */
static void refused_in_turn(run_fn *what, size_t step)
{
    const size_t before = memory.out;
    size_t whole = 0, refused = 0;
    assert_int_equal(run(what, 0, &whole), TT_OK);
    assert_true(whole > 0);
    assert_int_equal(memory.out, before);
    const size_t all = memory.asked;
    for (size_t k = 1; k <= all; k += step) {
        size_t written = 0;
        const tt_status status = run(what, k, &written);
        const bool good = status == TT_E_NOMEM || (status == TT_OK && written == whole);
        if (!good || memory.out != before)
            print_error("request %zu of %zu refused: %s, %zu blocks left, %zu of %zu bytes\n", k,
                        all, tt_status_text(status), memory.out - before, written, whole);
        assert_true(good);
        assert_int_equal(memory.out, before);
        refused += status == TT_E_NOMEM;
    }
    assert_true(refused > 0);
}

static void refused_of_piece(const char *text, size_t length, size_t step, size_t json_step)
{
    memory.refused = memory.out = 0;
    tt_diags *diags = tt_diags_new(0);
    given.text = text;
    given.length = length;
    assert_int_equal(tt_piece_read("piece", text, length, NULL, diags, &given.piece), TT_OK);
    assert_int_equal(tt_assess(given.piece, diags, &given.assessment), TT_OK);
    refused_in_turn(read, step);
    refused_in_turn(assess, step);
    refused_in_turn(write_text, step);
    refused_in_turn(weigh, step);
    refused_in_turn(write_json, json_step);
    tt_assessment_free(given.assessment);
    tt_piece_free(given.piece);
    tt_diags_free(diags);
    assert_int_equal(memory.out, 0);
}

static bool patient;

static void of_two_limbs(void **state)
{
    (void)state;
    refused_of_piece(two_limbs, sizeof two_limbs - 1, 1, patient ? 1 : 11);
}

static void of_the_heron(void **state)
{
    static char text[1 << 14];
    FILE *file = fopen(TT_ROOT "/examples/heron.yaml", "rb");
    (void)state;
    assert_non_null(file);
    const size_t length = fread(text, 1, sizeof text, file);
    fclose(file);
    assert_true(length > 1000 && length < sizeof text);
    refused_of_piece(text, length, 97, patient ? 97 : 97 * 31);
}

static void of_what_it_says_of_itself(void **state)
{
    (void)state;
    memory.out = 0;
    refused_in_turn(of_itself, patient ? 1 : 13);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(of_two_limbs),
                                       cmocka_unit_test(of_the_heron),
                                       cmocka_unit_test(of_what_it_says_of_itself)};
    (void)argv;
    patient = argc > 1;
    return cmocka_run_group_tests(tests, NULL, NULL);
}
