/* Each request for memory is refused in turn: the answer is TT_E_NOMEM, and nothing stays behind.
 * Ours is counted in place of base/alloc.c; libyaml's by taking malloc's place, which the address
 * sanitizer does not allow. */
#include "assert_close.h"
#include "base/alloc.h"
#include "yamlio/tree.h"

#include <stdlib.h>
#include <string.h>

#if defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED
#endif
#elif defined(__SANITIZE_ADDRESS__)
#define SANITIZED
#endif

/* volatile: the compiler takes it that malloc and free touch no variable of ours */
static volatile bool armed;     /* while a tree is read */
static volatile long left_ours; /* requests until one is refused */
static volatile long left_yaml;
static volatile long held; /* blocks taken and not given back */

void *tt_alloc(size_t n, size_t size)
{
    const bool was = armed;
    if (left_ours-- == 0) return NULL;
    armed = false;
    void *block = calloc(n ? n : 1, size ? size : 1);
    armed = was;
    held += block != NULL;
    return block;
}

void *tt_realloc(void *block, size_t n, size_t size)
{
    const bool was = armed;
    if (left_ours-- == 0) return NULL;
    armed = false;
    void *grown = realloc(block, n * size + 1);
    armed = was;
    held += grown && !block;
    return grown;
}

void *tt_free(void *block)
{
    const bool was = armed;
    armed = false;
    held -= block != NULL;
    free(block);
    armed = was;
    return NULL;
}

#ifndef SANITIZED
void *__libc_malloc(size_t size);
void *__libc_realloc(void *block, size_t size);
void __libc_free(void *block);

void *malloc(size_t size)
{
    if (armed && left_yaml-- == 0) return NULL;
    held += armed;
    return __libc_malloc(size);
}

void *realloc(void *block, size_t size)
{
    if (armed && left_yaml-- == 0) return NULL;
    held += armed && !block;
    return __libc_realloc(block, size);
}

void free(void *block)
{
    held -= armed && block;
    __libc_free(block);
}
#endif

static const char good[] =
    "a: &x {b: [1, 2, \"three\"], c: long\n  text}\nd: *x\ng: >\n  long\n  text\ne: 'f'\n";
static const char wrong[] = "a: 1\na: 2\nb: &y !!int 3\nc: [1\nd: 4\n";

static tt_status once(const char *text, long ours, long yaml)
{
    left_ours = -1;
    tt_pool pool = {0};
    tt_node *root = NULL;
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    tt_diags_about(diags, "m.yaml", text, strlen(text));
    left_ours = ours;
    left_yaml = yaml;
    armed = true;
    const tt_status status = tt_tree_read(text, strlen(text), &pool, diags, &root);
    armed = false;
    assert_true((status == TT_OK) == (root != NULL));
    tt_diags_free(diags);
    tt_pool_clear(&pool);
    assert_int_equal(held, 0);
    held = 0;
    return status;
}

/* Runs until one request more than are made may pass; returns how many were refused. */
static long each_refused(const char *text, tt_status whole, bool ours)
{
    long i = 0;
    while (i < 100000) {
        const tt_status status = once(text, ours ? i : -1, ours ? -1 : i);
        if (status == whole) break;
        assert_int_equal(status, TT_E_NOMEM);
        i++;
    }
    assert_true(i < 100000);
    return i;
}

static void ours_refused(void **state)
{
    (void)state;
    assert_int_equal(once(good, -1, -1), TT_OK);
    assert_int_equal(once(wrong, -1, -1), TT_E_INPUT);
    assert_true(each_refused(good, TT_OK, true) >= 3);
    assert_true(each_refused(wrong, TT_E_INPUT, true) >= 3);
}

static void yaml_refused(void **state)
{
    (void)state;
#ifdef SANITIZED
    skip();
#else
    assert_true(each_refused(good, TT_OK, false) > 20);
    assert_true(each_refused(wrong, TT_E_INPUT, false) > 20);
#endif
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ours_refused),
        cmocka_unit_test(yaml_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
