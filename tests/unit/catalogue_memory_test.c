/* Each allocation is refused in turn: reading a table of one's own comes to TT_E_NOMEM, leaks
 * nothing, gives no rows, until it succeeds. Leaks and stray accesses are caught by the sanitizers.
 */
#include "base/alloc.h"
#include "catalogue/catalogue.h"

#include "assert_close.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

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

static void every_allocation(const char *text, tt_status last)
{
    for (long k = 0;; k++) {
        left = LONG_MAX;
        tt_diags *diags = tt_diags_new(0);
        tt_data *data = NULL;
        left = k;
        refusals = 0;
        const tt_status status = tt_data_read("own.csv", text, strlen(text), diags, &data);
        left = LONG_MAX;
        assert_int_equal(status == TT_OK, data != NULL);
        tt_data_free(data);
        tt_diags_free(diags);
        if (refusals == 0) {
            assert_int_equal(status, last);
            assert_true(k >= 3);
            return;
        }
        if (status != TT_E_NOMEM) fail_msg("allocation %ld: status %d", k, (int)status);
    }
}

static void good_and_bad(void **state)
{
    (void)state;
    static const char bar[] = "bar,bar 7,yard,7,,mm,,,,callipers,,,read\n";
    static const char stone[] = "material,M1,a stone\n"
                                "figure,DENSITY_LOW,2000,kg/m3,trial,,,read\n"
                                "figure,DENSITY_HIGH,2000,kg/m3,trial,,,read\n";
    static const char twice[] = "bar,bar 7,yard,7,,mm,,,,callipers,,,read\n"
                                "bar,bar 7,yard,7,,mm,,,,callipers,,,sure\n";
    every_allocation(bar, TT_OK);
    every_allocation(stone, TT_OK);
    every_allocation(twice, TT_E_INPUT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(good_and_bad)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
