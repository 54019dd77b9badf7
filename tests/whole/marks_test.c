/* Where a seam is possible and where the bronze is a neck, on a small figure counted by hand. */
#include "house.h"

static const char figure[] =
    "piece: Small Figure\nunits: mm\nbronze: {alloy: C87300, wall: 4}\n"
    "limbs:\n"
    "  leg: [[ball, 0, 0, 0, 300], [ankle, 0, 0, 100, 160], [knee, 0, 0, 500, 240], [hip, 0, 0, 900, 330]]\n"
    "  trunk: [[hip], [chest, 0, 0, 1400, 420]]\n"
    "  arm: {rows: [[shoulder, 0, 250, 1400, 200], [hand, 0, 700, 1400, 130]], joins: chest}\n"
    "segments:\n"
    "  - {name: staff, from: hand, to: tip, outline: {round: 30}, wall: 4}\n"
    "points: {tip: [0, 700, 2000]}\n"
    "stands: [{at: ball, held: fixed}]\n";

static void seams(void **state)
{
    (void)state;
    house h = house_of(figure);
    assert_false(house_cut(&h, "ball-ankle", 0)->seam_possible); /* at the stand */
    assert_false(house_cut(&h, "ball-ankle", 1)->seam_possible); /* inside a limb: one casting */
    assert_false(house_cut(&h, "ankle-knee", 0)->seam_possible);
    assert_true(house_cut(&h, "knee-hip", 1)->seam_possible);    /* the trunk starts here */
    assert_true(house_cut(&h, "hip-chest", 0)->seam_possible);
    assert_true(house_cut(&h, "hip-chest", 1)->seam_possible);   /* the arm's rigid arm leaves it */
    assert_true(house_cut(&h, "shoulder-hand", 0)->seam_possible); /* joins by an arm */
    assert_true(house_cut(&h, "shoulder-hand", 1)->seam_possible); /* the staff shares the hand */
    assert_true(house_cut(&h, "staff", 0)->seam_possible);
    assert_false(house_cut(&h, "staff", 1)->seam_possible);
    house_close(&h);
}

static void necks(void **state)
{
    (void)state;
    house h = house_of(figure);
    assert_true(house_cut(&h, "ball-ankle", 0)->neck);  /* a limb's end at a stand */
    assert_true(house_cut(&h, "ball-ankle", 1)->neck);  /* the ankle, from both sides */
    assert_true(house_cut(&h, "ankle-knee", 0)->neck);
    assert_false(house_cut(&h, "ankle-knee", 0.5)->neck);
    assert_false(house_cut(&h, "ankle-knee", 1)->neck);
    assert_false(house_cut(&h, "shoulder-hand", 1)->neck); /* thinnest at its end, but no stand there */
    house_close(&h);
}

/* A leaded alloy's seam counts nothing: the bronze falls short there without a use, and the default
 * that decides it is the seam that nobody described. */
static void leaded_seam(void **state)
{
    (void)state;
    char text[sizeof figure];
    memcpy(text, figure, sizeof figure);
    memcpy(strstr(text, "C87300"), "C83600", 6);
    house h = house_of(text);
    assert_int_equal(tt_assessment_verdict(h.a), TT_FALLS_SHORT);
    const tt_finding *worst = &h.a->findings.list.at[h.a->governing];
    assert_string_equal(worst->check, "strength.bronze");
    assert_false(worst->has_use);
    assert_false(worst->holds);
    assert_string_equal(h.a->decided_by_default, "seams");
    house_close(&h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(seams),
        cmocka_unit_test(necks),
        cmocka_unit_test(leaded_seam),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
