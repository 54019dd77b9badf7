/* Stands that cannot hold a piece, in words; stands that lift; loads together that are left out. */
#include "house.h"

#define LEG(stands)                                                                                \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\nlimbs:\n"                              \
    "  leg: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]\n"                                        \
    "  other: [[hip], [heel, 0, 400, 0, 150]]\n"                                                   \
    "stands: " stands "\n"

static void expect_words(const char *text, const char *words, const char *hint)
{
    tt_piece *piece = tt_test_piece_of(text, NULL);
    tt_assessment *a = NULL;
    tt_diags *diags = tt_diags_new(0);
    assert_int_equal(tt_assess(piece, diags, &a), TT_E_MECHANISM);
    assert_null(a);
    assert_int_equal(tt_diags_count(diags), 1);
    const tt_diag *d = tt_diags_at(diags, 0);
    if (!strstr(d->text, words) || strcmp(d->hint, hint) != 0) tt_test_print(diags);
    assert_non_null(strstr(d->text, words));
    assert_string_equal(d->hint, hint);
    assert_int_equal(d->number, 3001);
    tt_diags_free(diags);
    tt_piece_free(piece);
}

/* Two pinned feet on a line along y: it turns about that line. */
static void what_would_hold_it(void **state)
{
    (void)state;
    expect_words(LEG("[{at: toe, held: pinned}, {at: heel, held: pinned}]"),
                 "at the stand \"toe\" it is free to turn about y",
                 "this would hold it: {at: toe, held: {move: [x, y, z], turn: [y]}}");
    expect_words(LEG("[{at: toe, held: pinned}]"), "at the stand \"toe\" it is free to turn, so",
                 "this would hold it: {at: toe, held: fixed}");
    expect_words(LEG("[{at: toe, held: rests}]"),
                 "at the stand \"toe\" it is free to move and turn",
                 "this would hold it: {at: toe, held: fixed}");
    expect_words(
        LEG("[{at: toe, held: {move: [x, z], turn: [x, y], spring: {turn_z: 9 kN.m/rad}}}]"),
        "at the stand \"toe\" it is free to move along y",
        "this would hold it: {at: toe, held: {move: [x, y, z], turn: [x, y], spring: {turn_z: 9 "
        "kN.m/rad}}}");
}

static const tt_unchecked *unchecked(const house *h, const char *check, const char *where)
{
    for (size_t i = 0; i < h->a->findings.unchecked.n; i++) {
        const tt_unchecked *u = &h->a->findings.unchecked.at[i];
        if (strcmp(u->check, check) == 0 && strcmp(u->where, where) == 0) return u;
    }
    return NULL;
}

/* A level bar that rests on its end and turns about y on its second place, 1 m on; F at the tip, 3
 * m on. Moments about the second place: the first is pulled by 1.5 w + 2 F. */
#define BAR(force)                                                                                 \
    "piece: P\nunits: mm\n"                                                                        \
    "materials: {b: {density: 8000 kg/m3, young: 100 GPa, poisson: 0.25, yield: 150 MPa, "         \
    "ultimate: 400 MPa}}\n"                                                                        \
    "bronze: {alloy: b, wall: 5, surface: 1, extra: 0}\nlimbs:\n"                                  \
    "  bar: {solid: yes, rows: [[end, 0, 0, 0, 40, 40], [edge, 1000, 0, 0, 40, 40], "              \
    "[tip, 3000, 0, 0, 40, 40]]}\n"                                                                \
    "stands:\n  - {at: end, held: rests}\n"                                                        \
    "  - {at: edge, held: {move: [x, y, z], turn: [x, z]}}\n"                                      \
    "site: {indoors: yes}\n"                                                                       \
    "loads: [{case: pull, kind: variable, at: tip, force: [0, 0, " force "]}]\n"

static void what_lifts(void **state)
{
    (void)state;
    const double w = 8000.0 * 3.14159265358979323846 * 0.02 * 0.02 * 9.80665, F = 100.0;
    house h = house_of(BAR("-100 N"));
    const tt_unchecked *lifts = unchecked(&h, "lifting", "end");
    assert_non_null(lifts);
    assert_true(lifts->needed && lifts->has_demand);
    /* EN 1990 6.10: 1.35 weight and 1.5 of the variable load */
    assert_close(lifts->demand, 1.35 * 1.5 * w + 1.5 * 2.0 * F, 1e-9);
    assert_non_null(strstr(lifts->why, "this stand lifts under 6.10 sup: 1.35 weight + 1.5 pull"));
    assert_null(unchecked(&h, "sliding", "end"));
    house_close(&h);
    h = house_of("piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\n"
                 "limbs: {leg: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]}\n"
                 "stands: [{at: toe, held: rests}, {at: hip, held: {move: [x, y], turn: [x, y, "
                 "z]}}]\nsite: {indoors: yes}\n");
    assert_null(unchecked(&h, "lifting", "toe")); /* all of its weight stands on it */
    house_close(&h);
}

/* A combination with a load that is not computed is left out whole, and told. */
static void left_out(void **state)
{
    (void)state;
    house h = house_of(LEG(
        "[{at: toe, held: fixed}]") "combinations:\n"
                                    "  - {name: with, level: strength, sum: {weight: 1.35, heat: "
                                    "1.5}}\n"
                                    "  - {name: without, level: strength, sum: {weight: 1.35}}\n");
    size_t own = 0;
    for (size_t i = 0; i < h.a->combinations.n; i++) {
        if (!h.a->combinations.at[i].own) continue;
        assert_string_equal(h.a->combinations.at[i].name, "without");
        own++;
    }
    assert_int_equal(own, 1);
    const tt_unchecked *told = unchecked(&h, "combination", "with");
    assert_non_null(told);
    assert_true(told->needed);
    assert_non_null(strstr(told->why, "combinations/with/sum/heat"));
    assert_null(unchecked(&h, "combination", "without"));
    house_close(&h);
}

/* A load that is given and not computed stands once, in place of what asks for it. */
static void one_row_each(void **state)
{
    (void)state;
    house h = house_of(LEG("[{at: toe, held: fixed}]") "site: {earthquake: {ag: 1 m/s2, ground: A, "
                                                       "type: 1}, snow: none}\n");
    size_t rows = 0;
    for (size_t i = 0; i < h.a->findings.unchecked.n; i++)
        rows += strcmp(h.a->findings.unchecked.at[i].check, "earthquake") == 0;
    assert_int_equal(rows, 1);
    const tt_unchecked *quake = unchecked(&h, "earthquake", "the whole piece");
    assert_non_null(strstr(quake->why, "site/earthquake: "));
    assert_null(unchecked(&h, "snow", "the whole piece"));
    assert_non_null(strstr(unchecked(&h, "ice", "the whole piece")->why, "says nothing"));
    house_close(&h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_would_hold_it),
                                       cmocka_unit_test(what_lifts), cmocka_unit_test(left_out),
                                       cmocka_unit_test(one_row_each)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
