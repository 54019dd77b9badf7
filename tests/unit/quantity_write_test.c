/* Values written in a reader's units: the unit chosen, the digits, and back again. */
#include "assert_close.h"
#include "quantity/quantity.h"

#include <string.h>

typedef struct {
    double value;
    tt_kind kind;
    tt_unit_system system;
    int digits;
    const char *text;
} writing;

static const writing writings[] = {
    {0.0125, TT_Q_LENGTH, TT_METRIC, 3, "12.5 mm"},
    {0.0125, TT_Q_LENGTH, TT_IMPERIAL, 3, "0.492 in"}, /* 12.5 / 25.4 = 0.49213 */
    {1.65, TT_Q_LENGTH, TT_METRIC, 3, "1.65 m"},
    {0.999, TT_Q_LENGTH, TT_METRIC, 3, "999 mm"},
    {0.9996, TT_Q_LENGTH, TT_METRIC, 3, "1.00 m"}, /* not 1000 mm */
    {1.0, TT_Q_LENGTH, TT_METRIC, 1, "1 m"},
    {-0.005, TT_Q_LENGTH, TT_METRIC, 3, "-5.00 mm"},
    {0.0, TT_Q_LENGTH, TT_METRIC, 3, "0 mm"},
    {-0.0, TT_Q_FORCE, TT_METRIC, 3, "0 N"},
    {0.9144, TT_Q_LENGTH, TT_IMPERIAL, 3, "3.00 ft"},
    {0.889, TT_Q_LENGTH, TT_IMPERIAL, 3, "35.0 in"},
    {12345.0, TT_Q_LENGTH, TT_METRIC, 3, "12300 m"},
    {0.00456, TT_Q_AREA, TT_METRIC, 3, "4560 mm2"},
    {0.04, TT_Q_AREA, TT_METRIC, 2, "0.040 m2"},
    {0.00064516, TT_Q_AREA, TT_IMPERIAL, 2, "1.0 in2"},
    {0.18580608, TT_Q_AREA, TT_IMPERIAL, 2, "2.0 ft2"},
    {142.4, TT_Q_MASS, TT_METRIC, 3, "142 kg"},
    {0.45359237, TT_Q_MASS, TT_IMPERIAL, 4, "1.000 lb"},
    {400.0, TT_Q_FORCE, TT_METRIC, 3, "400 N"},
    {1234.5, TT_Q_FORCE, TT_METRIC, 3, "1.23 kN"},
    {999.9, TT_Q_FORCE, TT_METRIC, 3, "1.00 kN"},
    {-2500.0, TT_Q_FORCE, TT_METRIC, 2, "-2.5 kN"},
    {444.82216152605, TT_Q_FORCE, TT_IMPERIAL, 3, "100 lbf"},
    {11120.55403815125, TT_Q_FORCE, TT_IMPERIAL, 3, "2.50 kip"},
    {30.0, TT_Q_MOMENT, TT_METRIC, 3, "30.0 N.m"},
    {2100.0, TT_Q_MOMENT, TT_METRIC, 3, "2.10 kN.m"},
    {135.58179483314004, TT_Q_MOMENT, TT_IMPERIAL, 3, "100 ft.lbf"},
    {200e6, TT_Q_PRESSURE, TT_METRIC, 3, "200 MPa"},
    {200e9, TT_Q_PRESSURE, TT_METRIC, 3, "200 GPa"},
    {640.0, TT_Q_PRESSURE, TT_METRIC, 3, "640 Pa"},
    {1450.0, TT_Q_PRESSURE, TT_METRIC, 3, "1.45 kPa"},
    {1197.0064745083960, TT_Q_PRESSURE, TT_IMPERIAL, 3, "25.0 psf"},
    {689475.7293168361, TT_Q_PRESSURE, TT_IMPERIAL, 3, "100 psi"},
    {248211262.554061, TT_Q_PRESSURE, TT_IMPERIAL, 3, "36.0 ksi"},
    {24.0, TT_Q_SPEED, TT_METRIC, 2, "24 m/s"},
    {51.4096, TT_Q_SPEED, TT_IMPERIAL, 3, "115 mph"},
    {1.4709975, TT_Q_ACCELERATION, TT_METRIC, 3, "1.47 m/s2"},
    {1.4709975, TT_Q_ACCELERATION, TT_IMPERIAL, 2, "0.15 g"},
    {0.52359877559829887, TT_Q_ANGLE, TT_METRIC, 2, "30 deg"},
    {8360.0, TT_Q_DENSITY, TT_METRIC, 4, "8360 kg/m3"},
    {7849.0470532404696, TT_Q_DENSITY, TT_IMPERIAL, 3, "490 lb/ft3"},
    {17e-6, TT_Q_EXPANSION, TT_METRIC, 2, "17e-6 1/K"},
    {10.8e-6, TT_Q_EXPANSION, TT_METRIC, 3, "10.8e-6 1/K"},
    {200000.0, TT_Q_TURN_STIFFNESS, TT_METRIC, 3, "200 kN.m/rad"},
    {35.0, TT_Q_TEMPERATURE, TT_METRIC, 2, "35 K"},
    {35.0, TT_Q_TEMPERATURE, TT_IMPERIAL, 2, "63 F"},
    {0.8, TT_Q_PURE, TT_METRIC, 2, "0.80"},
    {0.0123456, TT_Q_PURE, TT_METRIC, 3, "0.0123"},
    {1.0 / 3.0, TT_Q_PURE, TT_METRIC, 0, "0.3"},
};

static void writes(void **state)
{
    (void)state;
    const size_t n = sizeof writings / sizeof *writings;
    assert_true(n > 0);
    for (size_t i = 0; i < n; i++) {
        const writing *w = &writings[i];
        tt_text out = {0};
        tt_quantity_write(&out, w->value, w->kind, w->system, w->digits);
        assert_string_equal(tt_text_of(&out), w->text);
        tt_text_clear(&out);
    }
}

static void back_again(double value, tt_kind kind, tt_unit_system system, int digits)
{
    tt_text out = {0};
    tt_quantity_write(&out, value, kind, system, digits);
    const tt_quantity q = tt_quantity_read(tt_text_of(&out), kind, 0.0);
    if (q.fault) print_error("%s: %s\n", tt_text_of(&out), q.hint);
    assert_int_equal(q.fault, TT_QUANTITY_OK);
    /* half a unit of the last digit, and the rounding of the factors */
    assert_close(q.value, value, 0.5 * pow(10.0, 1 - digits) + 1e-14);
    tt_text_clear(&out);
}

/* 1.234567 x 10^e in every kind, both systems: what is written reads back within its digits. */
static void round_trip(void **state)
{
    (void)state;
    const int digits[] = {1, 3, 6, 17};
    for (int kind = 0; kind < TT_Q_COUNT; kind++) {
        for (int e = -9; e <= 12; e++) {
            for (size_t k = 0; k < sizeof digits / sizeof *digits; k++) {
                const double value = (e % 2 ? -1.234567 : 9.9961234) * pow(10.0, e);
                back_again(value, (tt_kind)kind, TT_METRIC, digits[k]);
                back_again(value, (tt_kind)kind, TT_IMPERIAL, digits[k]);
            }
        }
    }
}

static void not_finite(void **state)
{
    (void)state;
    const double values[] = {INFINITY, -INFINITY, NAN};
    for (size_t i = 0; i < 3; i++) {
        tt_text out = {0};
        tt_quantity_write(&out, values[i], TT_Q_FORCE, TT_METRIC, 3);
        assert_string_equal(tt_text_of(&out), "not a finite number");
        tt_text_clear(&out);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(writes),
        cmocka_unit_test(round_trip),
        cmocka_unit_test(not_finite),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
