/* Where a seam is possible and where the bronze is a neck, on a small figure counted by hand. */
#include "house.h"

static const char figure[] =
    "piece: Small Figure\nunits: mm\nbronze: {alloy: C87300, wall: 4}\n"
    "limbs:\n"
    "  leg: [[ball, 0, 0, 0, 300], [ankle, 0, 0, 100, 160], [knee, 0, 0, 500, 240], [hip, 0, 0, "
    "900, 330]]\n"
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
    assert_true(house_cut(&h, "knee-hip", 1)->seam_possible); /* the trunk starts here */
    assert_true(house_cut(&h, "hip-chest", 0)->seam_possible);
    assert_true(house_cut(&h, "hip-chest", 1)->seam_possible); /* the arm's rigid arm leaves it */
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
    assert_true(house_cut(&h, "ball-ankle", 0)->neck); /* a limb's end at a stand */
    assert_true(house_cut(&h, "ball-ankle", 1)->neck); /* the ankle, from both sides */
    assert_true(house_cut(&h, "ankle-knee", 0)->neck);
    assert_false(house_cut(&h, "ankle-knee", 0.5)->neck);
    assert_false(house_cut(&h, "ankle-knee", 1)->neck);
    assert_false(
        house_cut(&h, "shoulder-hand", 1)->neck); /* thinnest at its end, but no stand there */
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

static size_t warnings_of(const char *row)
{
    char text[400];
    snprintf(text, sizeof text,
             "piece: Leg\nunits: mm\nbronze: {alloy: C87300, wall: 4}\n"
             "limbs: {leg: [[toe, 0, 0, 0, 150], %s, [hip, 0, 0, 900, 160]]}\n"
             "stands: [{at: toe, held: fixed}]\n",
             row);
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("leg.yaml", text, strlen(text), NULL, diags, &piece), TT_OK);
    size_t asked = 0;
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        asked +=
            tt_diags_at(diags, i)->number == 1305 && tt_diags_at(diags, i)->severity == TT_WARNING;
    }
    tt_piece_free(piece);
    tt_diags_free(diags);
    return asked;
}

/* A comma for a point makes a girth row look like one of wide and deep: it is asked about. */
static void comma_in_a_row(void **state)
{
    (void)state;
    assert_int_equal(warnings_of("[knee, -10,5, 0, 500, 170]"), 1);
    assert_int_equal(
        warnings_of("[knee, -10, 500, 0, 170]") + warnings_of("[knee, 0, 40, 500, 170]"), 0);
    assert_int_equal(warnings_of("[knee, -10.5, 0, 500, 170, 160]"), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(seams),
        cmocka_unit_test(necks),
        cmocka_unit_test(leaded_seam),
        cmocka_unit_test(comma_in_a_row),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
