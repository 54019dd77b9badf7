/* Seams that the file names: which cuts they stand at, and what bronze and armature take there. */
#include "check/parts.h"
#include "house.h"

#define FIGURE(seams)                                                                              \
    "piece: Small Figure\nunits: mm\nbronze: {alloy: C87300, wall: 4}\n"                           \
    "armature: {grade: \"1.4462\"}\n"                                                              \
    "limbs:\n"                                                                                     \
    "  leg: {rows: [[ball, 0, 0, 0, 300], [ankle, 0, 0, 100, 260], [knee, 0, 0, 500, 280]],\n"     \
    "    armature: {tube: [33.7, 4]}}\n"                                                           \
    "  trunk: [[knee, 280], [chest, 100, 0, 900, 420]]\n"                                          \
    "stands: [{at: ball, held: fixed}]\n"                                                          \
    "loads: [{case: banner, kind: variable, at: chest, force: [300 N, 0, 0]}]\n" seams

static bool unknown_told(const house *h)
{
    for (size_t i = 0; i < h->a->findings.unchecked.n; i++)
        if (strcmp(h->a->findings.unchecked.at[i].check, "seams") == 0) return true;
    return false;
}

static double seam_of(const house *h, const char *segment, double x)
{
    const tt_check_input in = house_input(h);
    return tt_seam_at(&in, house_cut(h, segment, x));
}

/* Nothing said: 0.8 of the table where the trunk starts, and it is told. */
static void not_named(void **state)
{
    (void)state;
    house h = house_of(FIGURE(""));
    assert_near(seam_of(&h, "ankle-knee", 1), 0.8, 1e-15);
    assert_near(seam_of(&h, "ball-ankle", 1), 1.0, 1e-15);
    assert_true(unknown_told(&h));
    house_close(&h);
}

/* A seam inside a limb counts where it is named; a joint cast in one counts whole. */
static void named(void **state)
{
    (void)state;
    house h = house_of(FIGURE("seams:\n  - {at: ankle, bronze: full, filler: ERCuSi-A}\n"
                              "  - {at: knee, bronze: none, because: \"cast in one\"}\n"));
    assert_near(seam_of(&h, "ball-ankle", 1), 0.8, 1e-15);
    assert_near(seam_of(&h, "ankle-knee", 0), 0.8, 1e-15);
    assert_near(seam_of(&h, "ankle-knee", 1), 1.0, 1e-15);
    assert_near(seam_of(&h, "knee-chest", 0), 1.0, 1e-15);
    assert_false(unknown_told(&h));
    house_close(&h);
    h = house_of(FIGURE("seams: [{default: full, filler: ERCuSi-A}]\n"));
    assert_near(seam_of(&h, "ankle-knee", 1), 0.8, 1e-15);
    assert_false(unknown_told(&h));
    house_close(&h);
    h = house_of(FIGURE("seams: [{at: ankle, bronze: unknown}, {default: full}]\n"));
    assert_true(unknown_told(&h));
    house_close(&h);
}

static tt_forces on(const house *h, const tt_cut *cut, int carry, bool armature)
{
    const tt_check_input in = house_input(h);
    const tt_loaded_cut at = {
        &in, cut, carry, {.n = 1, .vy = 2, .vz = 3, .t = 4, .my = 5, .mz = 6}};
    return armature ? tt_on_armature(&at) : tt_on_bronze(&at);
}

/* At a seam that counts nothing the armature takes all in both carry models, the bronze nothing;
 * beside it the two share. */
static void counts_nothing(void **state)
{
    (void)state;
    house h = house_of(FIGURE("seams: [{at: ankle, bronze: partial, efficiency: 0}]\n"));
    const tt_cut *dead = house_cut(&h, "ankle-knee", 0), *whole = house_cut(&h, "ankle-knee", 0.5);
    assert_near(seam_of(&h, "ankle-knee", 0), 0, 0);
    for (int carry = 0; carry < TT_MODELS; carry++) {
        assert_near(on(&h, dead, carry, true).my, 5, 0);
        assert_near(on(&h, dead, carry, true).n, 1, 0);
        assert_near(on(&h, dead, carry, false).my, 0, 0);
        assert_near(on(&h, dead, carry, false).t, 0, 0);
    }
    assert_true(on(&h, whole, TT_TOGETHER, true).my < 5);
    assert_true(on(&h, whole, TT_TOGETHER, false).my > 0);
    bool told = false;
    for (size_t i = 0; i < h.a->findings.unchecked.n; i++) {
        const tt_unchecked *entry = &h.a->findings.unchecked.at[i];
        told |= strcmp(entry->check, "transfer") == 0 && strstr(entry->where, "at ankle") &&
                entry->needed;
    }
    assert_true(told);
    house_close(&h);
}

/* Without an armature such a seam falls short; the file said it, so that no default decides. */
static void nothing_carries(void **state)
{
    (void)state;
    house h = house_of(
        "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 4}\n"
        "limbs: {leg: [[ball, 0, 0, 0, 300], [ankle, 0, 0, 100, 260], [knee, 0, 0, 500, 280]]}\n"
        "stands: [{at: ball, held: fixed}]\n"
        "seams: [{at: ankle, bronze: partial, efficiency: 0}]\n");
    const tt_finding *worst = &h.a->findings.list.at[h.a->governing];
    assert_int_equal(tt_assessment_verdict(h.a), TT_FALLS_SHORT);
    assert_string_equal(worst->check, "strength.bronze");
    assert_false(worst->has_use);
    assert_string_equal(worst->why, "the seam here counts nothing");
    assert_null(h.a->decided_by_default);
    house_close(&h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(not_named), cmocka_unit_test(named),
                                       cmocka_unit_test(counts_nothing),
                                       cmocka_unit_test(nothing_carries)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
