/* Use is printed rounded up and margin rounded down, and never so that the figure contradicts the
 * judgement. Expected texts follow from that rule by head. */
#include "compose/parts.h"
#include "fixture_assessment.h"

#include <string.h>

static void use_rounds_up(void **state)
{
    (void)state;
    static const struct {
        double use, allowed;
        bool holds;
        const char *said;
    } rows[] = {
        {0.83, 1, true, "83 %"},
        {0.8301, 1, true, "84 %"},
        {0.29, 1, true, "29 %"},
        {1.1, 1, false, "110 %"},
        {1.0, 1, true, "100 %"},
        {1.0004, 1, false, "101 %"},
        {1 + 1e-12, 1, false, "101 %"},
        {0.999, 1, true, "100 %"},
        {0, 1, true, "0 %"},
        {0.0004, 1, true, "1 %"},
        {9.875, 1, false, "988 %"},
        {12.34, 1, false, "over 1000 %"},
        {12.34, 0.9, false, "over 1000 % of 90 % allowed"},
        {0.895, 0.9, true, "90 % of 90 % allowed"},
        {0.90001, 0.9, false, "91 % of 90 % allowed"},
        {0.95, 0.9, false, "95 % of 90 % allowed"},
        {0.903, 0.905, true, "90.3 % of 90.5 % allowed"},
        {0.906, 0.905, false, "91 % of 90.5 % allowed"},
    };
    tt_report report = {0};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const tt_finding finding = {.has_use = true, .use = rows[i].use, .holds = rows[i].holds};
        assert_string_equal(tt_say_use(&report, &finding, rows[i].allowed), rows[i].said);
    }
    assert_string_equal(tt_say_use(&report, &(tt_finding){.has_use = false}, 1), "none");
    tt_report_clear(&report);
}

static void margin_rounds_down(void **state)
{
    (void)state;
    static const struct {
        double use, margin;
        bool holds;
        const char *said;
    } rows[] = {{0.83, 1 / 0.83 - 1, true, "20 %"},
                {1.23, 1 / 1.23 - 1, false, "-19 %"},
                {1, 0, true, "0 %"},
                {1.0004, -0.0004, false, "-1 %"},
                {1 + 1e-12, -1e-12, false, "-1 %"},
                {0, 0, true, "over 1000 %"},
                {0.05, 19, true, "over 1000 %"},
                {0.5, 1, true, "100 %"}};
    tt_report report = {0};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const tt_finding finding = {
            .has_use = true, .use = rows[i].use, .margin = rows[i].margin, .holds = rows[i].holds};
        assert_string_equal(tt_say_margin(&report, &finding), rows[i].said);
    }
    assert_string_equal(tt_say_margin(&report, &(tt_finding){.has_use = false}), "none");
    tt_report_clear(&report);
}

static void bearings_count_as_a_wind_does(void **state)
{
    (void)state;
    tt_report report = {0};
    assert_string_equal(tt_say_bearing(&report, (tt_vec3){1, 0, 0}), "0 deg");
    assert_string_equal(tt_say_bearing(&report, (tt_vec3){0, 1, 0}), "90 deg");
    assert_string_equal(tt_say_bearing(&report, (tt_vec3){-1, 0, 0}), "180 deg");
    assert_string_equal(tt_say_bearing(&report, (tt_vec3){0, -1, 0}), "270 deg");
    assert_string_equal(tt_say_bearing(&report, (tt_vec3){1, -1e-9, 0}), "0 deg");
    tt_report_clear(&report);
}

/* Texts of the quantities that went in: with no digit more than it takes. */
static void given_values_as_they_were_given(void **state)
{
    (void)state;
    static const struct {
        double value;
        const char *unit;
        tt_unit_system system;
        const char *said;
    } rows[] = {{0.06, "m", TT_METRIC, "60 mm"},
                {0.0337, "m", TT_METRIC, "33.7 mm"},
                {24, "m/s", TT_METRIC, "24 m/s"},
                {115 * 0.44704, "m/s", TT_IMPERIAL, "115 mph"},
                {1.2 * 0.0254, "m", TT_IMPERIAL, "1.2 in"},
                {0.06, "m", TT_IMPERIAL, "2.362 in"}, /* 2.36220472... */
                {1.0 / 3.0, "", TT_METRIC, "0.3333"},
                {0, "m", TT_METRIC, "0 mm"}};
    tt_report report = {0};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_string_equal(
            tt_say_exactly(&report, rows[i].value, rows[i].unit, rows[i].system, 1), rows[i].said);
    }
    const tt_given wall = {.is = 0.005, .low = 0.004, .high = 0.007};
    const tt_given extra = {.is = 0.1, .low = 0.1, .high = 0.1};
    assert_string_equal(tt_say_spread(&report, &wall, "m", TT_METRIC), "5 mm (4 mm to 7 mm)");
    assert_string_equal(tt_say_spread(&report, &extra, "%", TT_METRIC), "10 %");
    assert_false(report.not_finite);
    tt_say_exactly(&report, NAN, "m", TT_METRIC, 1);
    assert_true(report.not_finite);
    tt_report_clear(&report);
}

static void winds_are_tied_to_their_number(void **state)
{
    (void)state;
    tt_report report = {0};
    assert_string_equal(tt_say_tied(&report, "6.10 sup: 1.35 weight + 1.5 wind 290"),
                        "6.10 sup: 1.35 weight + 1.5" TT_TIE "wind" TT_TIE "290");
    assert_string_equal(tt_say_tied(&report, "E2 (wind 90)"), "E2 (wind" TT_TIE "90)");
    assert_string_equal(tt_say_tied(&report, "no wind here, wind"), "no wind here, wind");
    assert_string_equal(tt_say_tied(&report, "wind 0"), "wind" TT_TIE "0");
    tt_report_clear(&report);
}

static void checks_have_words(void **state)
{
    (void)state;
    assert_string_equal(tt_say_check("member.buckling"), "buckling of a limb");
    assert_string_equal(tt_say_check("no such name"), "no such name");
    assert_true(tt_checks_count() > 0);
    for (size_t i = 0; i < tt_checks_count(); i++) {
        assert_string_equal(tt_say_check(tt_checks_at(i)->name), tt_checks_at(i)->title);
    }
}

/* Worst of all by head. Strength: A = 1.35 weight, B = weight + 1.5 wind, each with heavy (1200)
 * and light (900) weight. */
static void worst_of_all(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    tt_press worst = tt_press_of(&f.a, 0, TT_STRENGTH);
    assert_true(worst.any);
    assert_close(worst.down, 1.35 * 1200, 1e-12);
    assert_near(worst.up, 0, 0);
    assert_close(worst.level, 150.0, 1e-12);
    assert_close(worst.tilt, 1.5 * 80, 1e-12); /* in the worse carry model */
    assert_close(worst.twist, 7.5, 1e-12);
    worst = tt_press_of(&f.a, 0, TT_SERVICE); /* not patterned: nominal weight alone */
    assert_close(worst.down, 1000.0, 1e-12);
    assert_false(tt_press_of(&f.a, 0, TT_SEISMIC).any);
    f.reaction[TT_ALONE][F_WIND][F_FOOT][2] = -1000; /* lifts: 900 - 1500 */
    assert_close(tt_press_of(&f.a, 0, TT_STRENGTH).up, 600.0, 1e-12);
    fixture_close(&f);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(use_rounds_up), cmocka_unit_test(margin_rounds_down),
        cmocka_unit_test(bearings_count_as_a_wind_does), cmocka_unit_test(checks_have_words),
        cmocka_unit_test(given_values_as_they_were_given),
        cmocka_unit_test(winds_are_tied_to_their_number),
        cmocka_unit_test(worst_of_all)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
