/* Pools, lists, growing texts, edit distance. */
#include "assert_close.h"
#include "base/alloc.h"
#include "base/list.h"
#include "base/pool.h"
#include "base/text.h"

#include <stdalign.h>
#include <stdlib.h>
#include <string.h>

static void pool_holds(void **state)
{
    (void)state;
    tt_pool pool = {0};
    char *texts[300];
    for (int i = 0; i < 300; i++) {
        texts[i] = tt_pool_format(&pool, "%d %0*d", i, 1 + i % 90, 0);
        double *more = tt_pool_take(&pool, 3, sizeof *more);
        assert_non_null(texts[i]);
        assert_int_equal((uintptr_t)more % alignof(max_align_t), 0);
        assert_true(more[0] == 0.0 && more[2] == 0.0);
    }
    for (int i = 0; i < 300; i++) assert_int_equal(atoi(texts[i]), i);
    unsigned char *large = tt_pool_take(&pool, 100000, 1);
    assert_non_null(large);
    assert_int_equal(large[99999], 0);
    assert_null(tt_pool_take(&pool, SIZE_MAX / 2, 16));
    tt_pool_clear(&pool);
    assert_null(pool.newest);
}

static void list_grows(void **state)
{
    (void)state;
    TT_LIST(int) list = {0};
    for (int i = 0; i < 1000; i++) assert_true(tt_list_push(&list, i * 7));
    assert_int_equal(list.n, 1000);
    for (int i = 0; i < 1000; i++) assert_int_equal(list.at[i], i * 7);
    tt_list_clear(&list);
    assert_null(list.at);
    assert_int_equal(list.cap, 0);
}

static void text_grows(void **state)
{
    (void)state;
    tt_text text = {0};
    assert_string_equal(tt_text_of(&text), "");
    for (int i = 0; i < 500; i++) tt_text_format(&text, "%d,", i % 10);
    tt_text_fill(&text, '-', 3);
    assert_int_equal(text.n, 1003);
    assert_string_equal(tt_text_of(&text) + 998, "9,---");
    tt_text_clear(&text);
    assert_int_equal(tt_text_width("n\xc3\xa4men", 6), 5);
}

/* Distances counted by hand. */
static void words_apart(void **state)
{
    (void)state;
    assert_int_equal(tt_text_distance("ankle", "ankle", 3), 0);
    assert_int_equal(tt_text_distance("ankle", "ancle", 3), 1);
    assert_int_equal(tt_text_distance("wall", "wal", 3), 1);
    assert_int_equal(tt_text_distance("wall", "walls", 3), 1);
    assert_int_equal(tt_text_distance("kitten", "sitting", 3), 3);
    assert_int_equal(tt_text_distance("knee", "elbow", 3), 4);
    assert_int_equal(tt_text_distance("", "ab", 3), 2);
}

static void no_overflow(void **state)
{
    (void)state;
    assert_null(tt_realloc(NULL, SIZE_MAX, 2));
    void *nothing = tt_alloc(0, 0);
    assert_non_null(nothing);
    assert_null(tt_free(nothing));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pool_holds),  cmocka_unit_test(list_grows),  cmocka_unit_test(text_grows),
        cmocka_unit_test(words_apart), cmocka_unit_test(no_overflow),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
