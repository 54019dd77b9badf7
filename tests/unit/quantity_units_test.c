/* The factor of every unit against its value typed from the definition. Sources as in
 * quantity/units.def: SI brochure; yard and pound agreement 1959; standard gravity 9.80665 m/s2. */
#include "assert_close.h"
#include "quantity/quantity.h"
#include "quantity/unit.h"

#include <stdio.h>
#include <string.h>

typedef struct {
    const char *symbol;
    tt_kind kind;
    double si;
} factor;

static const factor factors[] = {
    {"mm", TT_Q_LENGTH, 0.001},
    {"cm", TT_Q_LENGTH, 0.01},
    {"dm", TT_Q_LENGTH, 0.1},
    {"m", TT_Q_LENGTH, 1.0},
    {"km", TT_Q_LENGTH, 1000.0},
    {"in", TT_Q_LENGTH, 0.0254},
    {"ft", TT_Q_LENGTH, 0.3048},
    {"kg", TT_Q_MASS, 1.0},
    {"gram", TT_Q_MASS, 0.001},
    {"t", TT_Q_MASS, 1000.0},
    {"lb", TT_Q_MASS, 0.45359237},
    {"s", TT_Q_TIME, 1.0},
    {"min", TT_Q_TIME, 60.0},
    {"h", TT_Q_TIME, 3600.0},
    {"N", TT_Q_FORCE, 1.0},
    {"kN", TT_Q_FORCE, 1000.0},
    {"MN", TT_Q_FORCE, 1000000.0},
    {"lbf", TT_Q_FORCE, 4.4482216152605}, /* 0.45359237 x 9.80665 */
    {"kip", TT_Q_FORCE, 4448.2216152605},
    {"Pa", TT_Q_PRESSURE, 1.0},
    {"kPa", TT_Q_PRESSURE, 1000.0},
    {"MPa", TT_Q_PRESSURE, 1000000.0},
    {"GPa", TT_Q_PRESSURE, 1000000000.0},
    {"psi", TT_Q_PRESSURE, 6894.757293168361}, /* 4.4482216152605 / 0.00064516 */
    {"ksi", TT_Q_PRESSURE, 6894757.293168361},
    {"psf", TT_Q_PRESSURE, 47.88025898033584}, /* 4.4482216152605 / 0.09290304 */
    {"mph", TT_Q_SPEED, 0.44704},
    {"g", TT_Q_ACCELERATION, 9.80665},
    {"Hz", TT_Q_FREQUENCY, 1.0},
    {"rad", TT_Q_ANGLE, 1.0},
    {"deg", TT_Q_ANGLE, 3.14159265358979323846 / 180.0},
    {"K", TT_Q_TEMPERATURE, 1.0},
    {"F", TT_Q_TEMPERATURE, 0.55555555555555556},
};

static const factor products[] = {
    {"m2", TT_Q_AREA, 1.0},
    {"mm2", TT_Q_AREA, 1e-6},
    {"cm2", TT_Q_AREA, 1e-4},
    {"in2", TT_Q_AREA, 0.00064516},
    {"ft2", TT_Q_AREA, 0.09290304},
    {"N.m", TT_Q_MOMENT, 1.0},
    {"kN.m", TT_Q_MOMENT, 1000.0},
    {"N.mm", TT_Q_MOMENT, 0.001},
    {"ft.lbf", TT_Q_MOMENT, 1.3558179483314004},
    {"lbf.in", TT_Q_MOMENT, 0.1129848290276167},
    {"kip.ft", TT_Q_MOMENT, 1355.8179483314004},
    {"kN/m", TT_Q_LINE_FORCE, 1000.0},
    {"lbf/ft", TT_Q_LINE_FORCE, 14.593902937206364},
    {"N/mm", TT_Q_STIFFNESS, 1000.0},
    {"kip/in", TT_Q_STIFFNESS, 175126.83524647637},
    {"kN/m2", TT_Q_PRESSURE, 1000.0},
    {"N/mm2", TT_Q_PRESSURE, 1e6},
    {"lbf/ft2", TT_Q_PRESSURE, 47.88025898033584},
    {"lbf/in2", TT_Q_PRESSURE, 6894.757293168361},
    {"m/s", TT_Q_SPEED, 1.0},
    {"km/h", TT_Q_SPEED, 0.27777777777777778},
    {"ft/s", TT_Q_SPEED, 0.3048},
    {"m/s2", TT_Q_ACCELERATION, 1.0},
    {"m/s/s", TT_Q_ACCELERATION, 1.0},
    {"1/s", TT_Q_FREQUENCY, 1.0},
    {"kg/m3", TT_Q_DENSITY, 1.0},
    {"gram/cm3", TT_Q_DENSITY, 1000.0},
    {"lb/ft3", TT_Q_DENSITY, 16.018463373960142},
    {"lb/in3", TT_Q_DENSITY, 27679.904710203125},
    {"1/K", TT_Q_EXPANSION, 1.0},
    {"1/F", TT_Q_EXPANSION, 1.8},
    {"kg.m2", TT_Q_INERTIA, 1.0},
    {"lb.ft2", TT_Q_INERTIA, 0.04214011009380480},
    {"kN.m/rad", TT_Q_TURN_STIFFNESS, 1000.0},
    {"kN.m/deg", TT_Q_TURN_STIFFNESS, 57295.779513082320877},
};

enum { FACTORS = sizeof factors / sizeof *factors, PRODUCTS = sizeof products / sizeof *products };

static void check(const factor *f)
{
    char text[40];
    snprintf(text, sizeof text, "1 %s", f->symbol);
    const tt_quantity q = tt_quantity_read(text, f->kind, 0.0);
    if (q.fault) print_error("%s: fault %d, %s\n", text, q.fault, q.hint);
    assert_int_equal(q.fault, TT_QUANTITY_OK);
    assert_false(q.bare);
    assert_close(q.value, f->si, 4e-16);
}

static void every_unit(void **state)
{
    (void)state;
    for (int i = 0; i < FACTORS; i++) check(&factors[i]);
}

static void products_and_quotients(void **state)
{
    (void)state;
    for (int i = 0; i < PRODUCTS; i++) {
        char text[40];
        snprintf(text, sizeof text, "1 %s", products[i].symbol);
        const tt_quantity q = tt_quantity_read(text, products[i].kind, 0.0);
        if (q.fault) print_error("%s: fault %d, %s\n", text, q.fault, q.hint);
        assert_int_equal(q.fault, TT_QUANTITY_OK);
        assert_close(q.value, products[i].si, 1e-14);
    }
}

/* The table holds these units and no other: a new one needs its line above. */
static void no_unit_untested(void **state)
{
    (void)state;
    int rows = 0;
    for (const tt_unit_row *row = tt_unit_rows; row->symbol; row++, rows++) {
        int found = 0;
        for (int i = 0; i < FACTORS; i++) found += strcmp(row->symbol, factors[i].symbol) == 0;
        if (found != 1) print_error("unit %s is tested %d times\n", row->symbol, found);
        assert_int_equal(found, 1);
        assert_true(strlen(row->source) > 0);
    }
    assert_int_equal(rows, FACTORS);
}

static void kinds_are_whole(void **state)
{
    (void)state;
    for (int kind = 0; kind < TT_Q_COUNT; kind++) {
        const tt_quantity q = tt_quantity_read(tt_kind_example((tt_kind)kind), (tt_kind)kind, 0.0);
        assert_int_equal(q.fault, TT_QUANTITY_OK);
        assert_true(q.value > 0.0);
        char one[40];
        snprintf(one, sizeof one, "7 %s", tt_kind_si((tt_kind)kind));
        assert_near(tt_quantity_read(one, (tt_kind)kind, 0.0).value, 7.0, 0.0);
        assert_true(strlen(tt_kind_word((tt_kind)kind)) > 0);
    }
}

static void length_units(void **state)
{
    (void)state;
    assert_near(tt_length_unit("mm"), 0.001, 0.0);
    assert_near(tt_length_unit("in"), 0.0254, 0.0);
    assert_near(tt_length_unit("ft"), 0.3048, 0.0);
    assert_near(tt_length_unit("kg"), 0.0, 0.0);
    assert_near(tt_length_unit("m2"), 0.0, 0.0);
    assert_near(tt_length_unit(""), 0.0, 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_unit),       cmocka_unit_test(products_and_quotients),
        cmocka_unit_test(no_unit_untested), cmocka_unit_test(kinds_are_whole),
        cmocka_unit_test(length_units),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
