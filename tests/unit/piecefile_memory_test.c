/* Each allocation is refused in turn: reading comes to TT_E_NOMEM, leaks nothing, gives no piece,
 * until it succeeds. Leaks and stray accesses are caught by the sanitizers. */
#include "base/alloc.h"
#include "pieces.h"

#include <limits.h>

static long left;     /* allocations until the one that is refused */
static long refusals; /* so far */

static bool refused(void)
{
    if (left-- != 0) return false;
    refusals++;
    return true;
}

void *tt_alloc(size_t n, size_t size)
{
    return refused() ? NULL : calloc(n ? n : 1, size ? size : 1);
}

void *tt_realloc(void *block, size_t n, size_t size)
{
    return refused() ? NULL : realloc(block, n && size ? n * size : 1);
}

void *tt_free(void *block)
{
    free(block);
    return NULL;
}

/* `last` is what reading comes to when nothing is refused. Each allocation, or with `few` those
 * further and further apart: a traced section costs the most of a reading, refused or not. */
static void some_allocations(const char *name, const tt_changes *changes, tt_status last, bool few)
{
    char *text = tt_test_text(name);
    for (long k = 0;; k += few ? 1 + k / 8 : 1) {
        left = LONG_MAX;
        tt_diags *diags = tt_diags_new(0);
        tt_piece *piece = NULL;
        left = k;
        refusals = 0;
        const tt_status status = tt_piece_read(name, text, strlen(text), changes, diags, &piece);
        left = LONG_MAX;
        assert_int_equal(status == TT_OK, piece != NULL);
        tt_piece_free(piece);
        tt_diags_free(diags);
        if (refusals == 0) {
            assert_int_equal(status, last);
            assert_true(k > 20);
            break;
        }
        if (status != TT_E_NOMEM) fail_msg("%s, allocation %ld: status %d", name, k, (int)status);
    }
    free(text);
}

static void every_allocation(const char *name, const tt_changes *changes, tt_status last)
{
    some_allocations(name, changes, last, false);
}

static void good(void **state)
{
    (void)state;
    const char *const sets[] = {"limbs/neck/wall=7", "lumps/fish/wind_area=0.02 m2"};
    const tt_changes changes = {.set = sets, .sets = 2, .scale = "3", .rewritable = 1};
    some_allocations("tests/pieces/every-key.yaml", &changes, TT_OK, true);
    every_allocation("tests/pieces/heron.yaml", NULL, TT_OK);
    every_allocation("tests/pieces/works.yaml", NULL, TT_OK);
    every_allocation("tests/pieces/works-us.yaml", NULL, TT_OK);
}

/* With an own row in use, which is told. */
static void own_data(void **state)
{
    (void)state;
    static const char table[] = "metal,C87300,melt 7,Rp0.2,cast,no\n"
                                "figure,DENSITY,8359,kg/m3,trial,,,read\n"
                                "figure,YIELD,120,MPa,trial,,,read\n"
                                "figure,ULTIMATE,300,MPa,trial,,,read\n"
                                "figure,YOUNG_LOW,100,GPa,trial,,,read\n"
                                "figure,YOUNG_HIGH,100,GPa,trial,,,read\n"
                                "figure,POISSON,0.34,,trial,,,read\n"
                                "figure,LEAD,0,,trial,,,read\nfigure,SEAM,0.8,,trial,,,read\n";
    left = LONG_MAX;
    tt_diags *diags = tt_diags_new(0);
    tt_data *data = NULL;
    assert_int_equal(tt_data_read("own.csv", table, sizeof table - 1, diags, &data), TT_OK);
    tt_diags_free(diags);
    const tt_changes changes = {.data = data};
    every_allocation("tests/pieces/heron.yaml", &changes, TT_OK);
    tt_data_free(data);
}

static void bad(void **state)
{
    (void)state;
    every_allocation("tests/bad/part_hangs_on_nothing.yaml", NULL, TT_E_INPUT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(good), cmocka_unit_test(own_data),
                                       cmocka_unit_test(bad)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
