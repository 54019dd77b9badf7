/* Each allocation in turn is refused: every step says so, and nothing is lost. This file stands in
 * for base/alloc.c. */
#include "frame_figure.h"
#include "base/alloc.h"

static long left = -1; /* allocations still granted; negative: all */
static long held_now;

static bool granted(void)
{
    if (left == 0) return false;
    if (left > 0) left--;
    return true;
}

void *tt_alloc(size_t n, size_t size)
{
    if (!granted()) return NULL;
    held_now++;
    return calloc(n ? n : 1, size ? size : 1);
}

void *tt_realloc(void *block, size_t n, size_t size)
{
    if (!granted()) return NULL;
    held_now += !block;
    return realloc(block, n * size);
}

void *tt_free(void *block)
{
    held_now -= block != NULL;
    free(block);
    return NULL;
}

static bool build(tt_frame *frame)
{
    const make_shape rod = {.kind = MAKE_ROUND, .size = {0.05, 0.04}};
    const double none[3] = {0}, spring[TT_SIX] = {1e4, 0, 0, 0, 0, 1e3};
    bool fits = true;
    for (int i = 0; i < 20 && fits; i++)
        fits = tt_frame_add_node(frame, (tt_vec3){0.1 * i, 0.0, i});
    for (size_t i = 0; i + 2 < 20 && fits; i++) {
        tt_bar_section sections[TT_BAR_POINTS];
        const tt_vec3 a = {0.1 * (double)i, 0.0, (double)i}, b = {a.x + 0.1, 0.0, a.z + 1.0};
        const tt_axes axes = make_axes(a, b, (tt_vec3){1.0, 0.0, 0.0});
        for (int k = 0; k < TT_BAR_POINTS; k++) {
            const make_area area = make_area_at(&rod, tt_bar_point[k]);
            sections[k] = make_section(&figure_bronze, &area);
        }
        fits = tt_frame_add_bar(frame, i, i + 1, &axes, sections);
    }
    return fits && tt_frame_add_arm(frame, 18, 19) &&
           tt_frame_add_mass(frame, 19, 5.0, (tt_vec3){0.1, 0.0, 0.0}, none) &&
           tt_frame_hold(frame, 0, make_fixed) && tt_frame_spring(frame, 10, spring);
}

static tt_status all_of_it(void)
{
    tt_pool pool = {0};
    tt_frame_fault fault;
    tt_frame_state state;
    tt_modes modes;
    double node[20][TT_SIX] = {{0}};
    node[19][0] = 1.0;
    const tt_frame_load load = {.node = (const double(*)[TT_SIX])node};
    tt_frame *frame = tt_frame_new();
    tt_status status = frame && build(frame) ? TT_OK : TT_E_NOMEM;
    if (status == TT_OK) status = tt_frame_prepare(frame, &fault);
    if (status == TT_OK) status = tt_frame_solve(frame, &load, &pool, &state);
    if (status == TT_OK) status = tt_frame_modes(frame, 3, 0.0, &pool, &modes);
    tt_frame_free(frame);
    tt_pool_clear(&pool);
    return status;
}

static void every_allocation_refused_in_turn(void **unused)
{
    (void)unused;
    long granted_first = 0;
    for (;; granted_first++) {
        left = granted_first;
        held_now = 0;
        const tt_status status = all_of_it();
        assert_int_equal(held_now, 0);
        if (status == TT_OK) break;
        assert_int_equal(status, TT_E_NOMEM);
        assert_true(granted_first < 1000);
    }
    assert_true(granted_first > 50); /* it did refuse, many times */
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_allocation_refused_in_turn)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
