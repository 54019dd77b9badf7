/* tests/memory_test.c - allocations of a whole run refused in turn: read, assess, text, JSON; then
 * of what the program says of itself: words explained, a table, a piece file to begin with. The
 * first sixteen each, later ones in steps of a sixteenth (there are tens of thousands).
 * The functions of base/alloc.h below are linked in place of the library's own; whatever is
 * refused, the run ends with TT_E_NOMEM, or well, and gives everything back. */
#include "run_piece.h"

#include "base/alloc.h"
#include "tiptoe/manual.h"

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

static const char text[] =
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
    "site: {wind: {basic_speed: 24 m/s, terrain: II}}\n"
    "loads: [{case: rope, kind: variable, along: hip-hand, force_per_length: [0, 0, -0.1 kN/m]}]\n"
    "limits: {mass: 60 kg, sway: 1/100, frequency: 1 Hz, use: 0.9}\n";

static int drop(void *user, const char *bytes, size_t n)
{
    size_t *written = user;
    (void)bytes;
    *written += n;
    return 0;
}

typedef tt_status run_fn(tt_diags *diags, size_t *written);

static tt_status judged(tt_diags *diags, size_t *written)
{
    const tt_text_options options = {.steps = 1};
    tt_piece *piece = NULL;
    tt_assessment *assessment = NULL;
    tt_status status = tt_piece_read("two limbs", text, sizeof text - 1, NULL, diags, &piece);
    if (status == TT_OK) status = tt_assess(piece, diags, &assessment);
    if (status == TT_OK) status = tt_write_text(assessment, &options, drop, written);
    if (status == TT_OK) status = tt_write_json(assessment, drop, written);
    tt_assessment_free(assessment);
    tt_piece_free(piece);
    return status;
}

static tt_status of_itself(tt_diags *diags, size_t *written)
{
    static const char *const words[] = {NULL, "wall", "sway", "armature", "TT1101"};
    const tt_start_options options = {.what = "pair", .units = "in"};
    tt_status status = tt_write_start(&options, diags, drop, written);
    for (size_t i = 0; status == TT_OK && i < sizeof words / sizeof *words; i++)
        status = tt_write_explain(words[i], diags, drop, written);
    if (status == TT_OK) status = tt_write_stock("alloys", NULL, diags, drop, written);
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

/* A run that ends well although something was refused has written no less. */
static void refused_in_turn(run_fn *what)
{
    size_t whole = 0, refused = 0;
    assert_int_equal(run(what, 0, &whole), TT_OK);
    assert_true(whole > 10000);
    assert_int_equal(memory.out, 0);
    const size_t all = memory.asked;
    assert_true(all > 100);
    for (size_t k = 1; k <= all; k += 1 + k / 16) {
        size_t written = 0;
        const tt_status status = run(what, k, &written);
        const bool good = status == TT_E_NOMEM || (status == TT_OK && written == whole);
        if (!good || memory.out != 0)
            print_error(
                "request %zu of %zu refused: %s, %zu blocks left, %zu of %zu bytes written\n", k,
                all, tt_status_text(status), memory.out, written, whole);
        assert_true(good);
        assert_int_equal(memory.out, 0);
        refused += status == TT_E_NOMEM;
    }
    assert_true(refused > 50);
}

static void of_a_judgement(void **state)
{
    (void)state;
    refused_in_turn(judged);
}

static void of_what_it_says_of_itself(void **state)
{
    (void)state;
    refused_in_turn(of_itself);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(of_a_judgement),
                                       cmocka_unit_test(of_what_it_says_of_itself)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
