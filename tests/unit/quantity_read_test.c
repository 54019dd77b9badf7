/* Spellings of quantities that are read, with the value by hand arithmetic, and spellings that are
 * refused, with fault, place and a word of the hint. */
#include "assert_close.h"
#include "quantity/quantity.h"

#include <locale.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
    const char *text;
    tt_kind kind;
    double value;
    bool bare;
} good;

static const good goods[] = {
    {"5 mm", TT_Q_LENGTH, 0.005, false},
    {"5mm", TT_Q_LENGTH, 0.005, false},
    {"-5mm", TT_Q_LENGTH, -0.005, false},
    {"+5 mm", TT_Q_LENGTH, 0.005, false},
    {"  5   mm  ", TT_Q_LENGTH, 0.005, false},
    {"14 ft", TT_Q_LENGTH, 4.2672, false},
    {"1e3 mm", TT_Q_LENGTH, 1.0, false},
    {"1E3mm", TT_Q_LENGTH, 1.0, false},
    {"2.5e-3 m", TT_Q_LENGTH, 0.0025, false},
    {"1.65e+0 m", TT_Q_LENGTH, 1.65, false},
    {".5 in", TT_Q_LENGTH, 0.0127, false},
    {"0.50 in", TT_Q_LENGTH, 0.0127, false},
    {"007 mm", TT_Q_LENGTH, 0.007, false},
    {"1/2 in", TT_Q_LENGTH, 0.0127, false},
    {"3/8in", TT_Q_LENGTH, 0.009525, false},
    {"-1/2 in", TT_Q_LENGTH, -0.0127, false},
    {"1 1/2 in", TT_Q_LENGTH, 0.0381, false},
    {"1  1/2in", TT_Q_LENGTH, 0.0381, false},
    {"-1 1/2 in", TT_Q_LENGTH, -0.0381, false},
    {"6 ft", TT_Q_LENGTH, 1.8288, false},
    {"6 ft 2 in", TT_Q_LENGTH, 1.8796, false},
    {"6 ft 2 1/2 in", TT_Q_LENGTH, 1.8923, false},
    {"6ft 2 1/2in", TT_Q_LENGTH, 1.8923, false},
    {"-6 ft 2 1/2 in", TT_Q_LENGTH, -1.8923, false},
    {"0 ft 11.5 in", TT_Q_LENGTH, 0.2921, false},
    {"6 ft 1/2 in", TT_Q_LENGTH, 1.8415, false},
    {"0", TT_Q_LENGTH, 0.0, true},
    {"0.0", TT_Q_FORCE, 0.0, true},
    {"-0", TT_Q_TURN_STIFFNESS, 0.0, true},
    {"0 kN", TT_Q_FORCE, 0.0, false},
    {"0e9999 mm", TT_Q_LENGTH, 0.0, false},
    {"0.4 kN", TT_Q_FORCE, 400.0, false},
    {"2.5 kip", TT_Q_FORCE, 11120.55403815125, false},
    {"1.2 kN/m", TT_Q_LINE_FORCE, 1200.0, false},
    {"-0.2 kN/m", TT_Q_LINE_FORCE, -200.0, false},
    {"30 N.m", TT_Q_MOMENT, 30.0, false},
    {"30 MPa", TT_Q_PRESSURE, 30e6, false},
    {"0.8 kN/m2", TT_Q_PRESSURE, 800.0, false},
    {"115 mph", TT_Q_SPEED, 51.4096, false},
    {"90 km/h", TT_Q_SPEED, 25.0, false},
    {"0.15 g", TT_Q_ACCELERATION, 1.4709975, false},
    {"30 deg", TT_Q_ANGLE, 0.52359877559829887, false},
    {"8360 kg/m3", TT_Q_DENSITY, 8360.0, false},
    {"8.7 g/cm3", TT_Q_DENSITY, 8700.0, false},
    {"8.7 kg/dm3", TT_Q_DENSITY, 8700.0, false},
    {"8.7 t/m3", TT_Q_DENSITY, 8700.0, false},
    {"210 g", TT_Q_MASS, 0.21, false},
    {"3 g.cm2", TT_Q_INERTIA, 3e-7, false},
    {"490 lb/ft3", TT_Q_DENSITY, 7849.0470532404696, false},
    {"10.8e-6 1/K", TT_Q_EXPANSION, 10.8e-6, false},
    {"17e-6 1/K", TT_Q_EXPANSION, 17e-6, false},
    {"2 1/s", TT_Q_FREQUENCY, 2.0, false},
    {"200 kN.m/rad", TT_Q_TURN_STIFFNESS, 200000.0, false},
    {"-27 F", TT_Q_TEMPERATURE, -15.0, false},
    {"0.8", TT_Q_PURE, 0.8, true},
    {"-3", TT_Q_PURE, -3.0, true},
    {"1/100", TT_Q_PURE, 0.01, true},
    {"1 1/4", TT_Q_PURE, 1.25, true},
    {"12 %", TT_Q_PURE, 0.12, false},
    {"12%", TT_Q_PURE, 0.12, false},
    {"-0.5 %", TT_Q_PURE, -0.005, false},
    {"0 %", TT_Q_PURE, 0.0, false},
};

typedef struct {
    const char *text;
    tt_kind kind;
    tt_quantity_fault fault;
    size_t at, length;
    const char *hint; /* must stand in it */
} bad;

#define NUM TT_QUANTITY_NUMBER
#define UNK TT_QUANTITY_UNKNOWN
#define WRO TT_QUANTITY_WRONG
#define LEN TT_Q_LENGTH
static const bad bads[] = {
    {"", LEN, NUM, 0, 0, "a length is due, for example 5 mm"},
    {"   ", LEN, NUM, 3, 0, "a length is due"},
    {"mm", LEN, NUM, 0, 2, "a length is due"},
    {"thick", TT_Q_AREA, NUM, 0, 5, "an area is due, for example 0.02 m2"},
    {"-", LEN, NUM, 1, 0, "a length is due"},
    {"- 5 mm", LEN, NUM, 1, 0, "a length is due"},
    {"--5 mm", LEN, NUM, 1, 2, "a length is due"},
    {"inf", TT_Q_PURE, NUM, 0, 3, "a number is due"},
    {"-inf mm", LEN, NUM, 1, 3, "a length is due"},
    {".inf", TT_Q_PURE, NUM, 0, 4, "a number is due"},
    {"nan", TT_Q_PURE, NUM, 0, 3, "a number is due"},
    {".nan mm", LEN, NUM, 0, 4, "a length is due"},
    {".", TT_Q_PURE, NUM, 0, 1, "a number is due"},
    {"\xE2\x88\x92"
     "5 mm",
     LEN, NUM, 0, 3, "write the minus as -"},
    {"0x10 mm", LEN, NUM, 1, 1, "only decimal numbers"},
    {"0X1p3", TT_Q_PURE, NUM, 1, 1, "only decimal numbers"},
    {"0x1.8p1 mm", LEN, NUM, 1, 1, "only decimal numbers"},
    {"1_000 mm", LEN, NUM, 1, 1, "without marks"},
    {"1,5 mm", LEN, NUM, 1, 1, "decimal point"},
    {"1,000 mm", LEN, NUM, 1, 1, "commas are not read"},
    {"1.5.26", TT_Q_PURE, NUM, 3, 1, "one decimal point"},
    {"1e3.5 mm", LEN, NUM, 3, 1, "one decimal point"},
    {"5. mm", LEN, NUM, 1, 1, "digits behind it"},
    {"30\xC2\xB0", TT_Q_ANGLE, NUM, 2, 2, "write deg"},
    {"35 \xC2\xB0"
     "C",
     TT_Q_TEMPERATURE, NUM, 3, 2, "K for a temperature difference"},
    {"6' 2\"", LEN, NUM, 1, 1, "6 ft 2 1/2 in"},
    {"2\"", LEN, NUM, 1, 1, "write in for the inch mark"},
    {"1 1/2\"", LEN, NUM, 5, 1, "write in for the inch mark"},
    {"1 1/2\xE2\x80\x9D", LEN, NUM, 5, 3, "write in for the inch mark"},
    {"\xE2\x80\x93"
     "160",
     LEN, NUM, 0, 3, "write the minus as -, not as an en dash"},
    {"\xE2\x80\x9C"
     "160\xE2\x80\x9D",
     LEN, NUM, 0, 3, "without curly quotes"},
    {"6\xE2\x80\xB2", LEN, NUM, 1, 3, "6 ft 2 1/2 in"},
    {"1-1/2 in", LEN, NUM, 1, 1, "mixed numbers are written as 1 1/2"},
    {"1\xC2\xBD in", LEN, NUM, 1, 2, "1/2"},
    {"5\xC2\xA0mm", LEN, NUM, 1, 2, "plain blank"},
    {"5\tmm", LEN, NUM, 1, 1, "plain blank"},
    {"1 000 mm", LEN, NUM, 2, 3, "thousands without blanks"},
    {"1 2 mm", LEN, NUM, 2, 1, "one number"},
    {"1.5 1/2 in", LEN, NUM, 4, 3, "one number"},
    {"1 3/2 in", LEN, NUM, 2, 3, "below 1"},
    {"1 2/2 in", LEN, NUM, 2, 3, "below 1"},
    {"1/0 in", LEN, NUM, 0, 3, "none below is 0"},
    {"1 0/0", TT_Q_PURE, NUM, 2, 3, "none below is 0"},
    {"1/2.5 in", LEN, NUM, 0, 5, "whole numbers"},
    {"1/2/3 in", LEN, UNK, 3, 5, "one unit"},
    {"6.5 ft 2 in", LEN, NUM, 0, 11, "whole feet"},
    {"6 ft 12 in", LEN, NUM, 0, 10, "inches below 12"},
    {"6 ft -2 in", LEN, UNK, 2, 8, "only 6 ft 2 1/2 in"},
    {"6 ft 2", LEN, UNK, 5, 1, "behind feet stand inches"},
    {"6 ft 2 mm", LEN, UNK, 5, 4, "behind feet stand inches"},
    {"2 in 6 ft", LEN, UNK, 2, 7, "only 6 ft 2 1/2 in"},
    {"5 m 3 mm", LEN, UNK, 2, 6, "only 6 ft 2 1/2 in"},
    {"5 mm thick", LEN, UNK, 2, 8, "one unit"},
    {"5 N m", TT_Q_MOMENT, UNK, 2, 3, "one unit"},
    {"11111111111111111111111111111111111111111 m", LEN, NUM, 0, 41, "too many digits"},
    {"1650", LEN, TT_QUANTITY_NO_UNIT, 0, 4,
     "write 1650 mm, or say `units: mm` once at the top of the file"},
    {"-0.4", TT_Q_FORCE, TT_QUANTITY_NO_UNIT, 0, 4, "write -0.4 N, or as in 0.4 kN"},
    {"1e-9", TT_Q_ANGLE, TT_QUANTITY_NO_UNIT, 0, 4, "an angle needs its unit"},
    {"30 MPA", TT_Q_PRESSURE, UNK, 3, 3, "write MPa"},
    {"1 Kn", TT_Q_FORCE, UNK, 2, 2, "write kN"},
    {"5 KG", TT_Q_MASS, UNK, 2, 2, "write kg"},
    {"5 KG/m3", TT_Q_DENSITY, UNK, 2, 2, "write kg/m3"},
    {"5 kg/M3", TT_Q_DENSITY, UNK, 5, 1, "write kg/m3"},
    {"5 MM", LEN, UNK, 2, 2, "write mm"},
    {"5 kips", TT_Q_FORCE, UNK, 2, 4, "write kip"},
    {"5 hz", TT_Q_FREQUENCY, UNK, 2, 2, "write Hz"},
    {"5 KSI", TT_Q_PRESSURE, UNK, 2, 3, "write ksi"},
    {"24 ms", TT_Q_SPEED, UNK, 3, 2, "write m/s"},
    {"25 m/sec", TT_Q_SPEED, UNK, 5, 3, "write m/s"},
    {"0.12 ga", LEN, UNK, 5, 2, "gauges are not read"},
    {"24 MS", TT_Q_SPEED, UNK, 3, 2, "write m/s"},
    {"8 kgm3", TT_Q_DENSITY, UNK, 2, 3, "write kg/m3"},
    {"5 ms", TT_Q_MASS, UNK, 2, 2, "no unit of that name; a mass is due"},
    {"5 mn", LEN, UNK, 2, 2, "write mm"},
    {"2 ton", TT_Q_MASS, UNK, 2, 3, "907, 1000 or 1016 kg"},
    {"2 Tons", TT_Q_MASS, UNK, 2, 4, "write t (1000 kg)"},
    {"5 lbs", TT_Q_FORCE, UNK, 2, 3, "lbf for a force"},
    {"5 kgf", TT_Q_FORCE, UNK, 2, 3, "9.80665 N"},
    {"35 C", TT_Q_TEMPERATURE, UNK, 3, 1, "K or F"},
    {"5 Nm", TT_Q_MOMENT, UNK, 2, 2, "write N.m"},
    {"5 kNm/rad", TT_Q_TURN_STIFFNESS, UNK, 2, 3, "write kN.m"},
    {"5 inches", LEN, UNK, 2, 6, "write in"},
    {"490 pcf", TT_Q_DENSITY, UNK, 4, 3, "lb/ft3"},
    {"5 furlong", LEN, UNK, 2, 7, "no unit of that name; a length is due, for example 5 mm"},
    {"5 abcdefghijklmnopqrstuvwxyz", TT_Q_ANGLE, UNK, 2, 26, "an angle is due, for example 30 deg"},
    {"5 mm^2", TT_Q_AREA, UNK, 4, 1, "write mm2"},
    {"5 in^2", TT_Q_AREA, UNK, 4, 1, "write in2"},
    {"300 m\xC2\xB2", TT_Q_AREA, UNK, 5, 1, "write m2"},
    {"8 g/cm\xC2\xB3", TT_Q_DENSITY, UNK, 6, 1, "write g/cm3"},
    {"5 N*m", TT_Q_MOMENT, UNK, 3, 1, "write N.m"},
    {"5 kN-m", TT_Q_MOMENT, UNK, 4, 1, "write kN.m"},
    {"5 N.", TT_Q_FORCE, UNK, 4, 0, "N.m"},
    {"5 /K", TT_Q_EXPANSION, UNK, 2, 1, "1/K"},
    {"5 kN/m.s", TT_Q_FORCE, UNK, 6, 1, "kN/m"},
    {"5 m1", LEN, UNK, 3, 1, "mm2"},
    {"5 m22", TT_Q_AREA, UNK, 4, 1, "mm2"},
    {"5 %%", TT_Q_PURE, UNK, 2, 1, "units are written as"},
    {"5 kN", LEN, WRO, 2, 2, "this is a force; a length is due, for example 5 mm"},
    {"5 mm", TT_Q_FORCE, WRO, 2, 2, "this is a length; a force is due, for example 0.4 kN"},
    {"6 ft 2 in", TT_Q_MASS, WRO, 2, 7, "this is a length; a mass is due"},
    {"5 m2", TT_Q_ACCELERATION, WRO, 2, 2, "this is an area; an acceleration is due"},
    {"5 lb", TT_Q_FORCE, WRO, 2, 2, "lb is mass; write lbf"},
    {"5 lb/in2", TT_Q_PRESSURE, WRO, 2, 6, "lb is mass; write lbf"},
    {"5 ft.lb", TT_Q_MOMENT, WRO, 2, 5, "lb is mass; write lbf"},
    {"5 lbf", TT_Q_MASS, WRO, 2, 3, "lbf is force; write lb"},
    {"5 kg", TT_Q_FORCE, WRO, 2, 2, "1 kg weighs 9.80665 N"},
    {"5 kN", TT_Q_MASS, WRO, 2, 2, "kN is force"},
    {"5 g", TT_Q_FORCE, WRO, 2, 1, "this is an acceleration; a force is due"},
    {"5 g/cm2", TT_Q_DENSITY, WRO, 2, 5, "a density is due"},
    {"5 m4", TT_Q_AREA, WRO, 2, 2, "an area is due, for example 0.02 m2"},
    {"5 m/m", TT_Q_PURE, WRO, 2, 3, "a number is due, for example 0.8"},
    {"5 mm", TT_Q_PURE, WRO, 2, 2, "this is a length; a number is due"},
    {"5 %", LEN, WRO, 2, 1, "a length is due, for example 5 mm"},
    {"1e400 mm", LEN, TT_QUANTITY_RANGE, 0, 5, "larger or smaller"},
    {"1e-400 mm", LEN, TT_QUANTITY_RANGE, 0, 6, "larger or smaller"},
    {"1e999999999999999999999 mm", LEN, TT_QUANTITY_RANGE, 0, 23, "larger or smaller"},
    {"1e308 km", LEN, TT_QUANTITY_RANGE, 0, 8, "larger or smaller"},
    {"-1e-307 mm", LEN, TT_QUANTITY_RANGE, 0, 10, "larger or smaller"},
};

static void reads(void **state)
{
    (void)state;
    const size_t n = sizeof goods / sizeof *goods;
    assert_true(n >= 30);
    for (size_t i = 0; i < n; i++) {
        const tt_quantity q = tt_quantity_read(goods[i].text, goods[i].kind, 0.0);
        if (q.fault) print_error("\"%s\": fault %d, %s\n", goods[i].text, q.fault, q.hint);
        assert_int_equal(q.fault, TT_QUANTITY_OK);
        assert_int_equal(q.bare, goods[i].bare);
        assert_near(q.value, goods[i].value, 1e-15 * fabs(goods[i].value));
        assert_false(q.value == 0.0 && signbit(q.value));
    }
}

static void refuses(void **state)
{
    (void)state;
    const size_t n = sizeof bads / sizeof *bads;
    assert_true(n >= 40);
    for (size_t i = 0; i < n; i++) {
        const bad *b = &bads[i];
        const tt_quantity q = tt_quantity_read(b->text, b->kind, 0.0);
        const bool same = q.fault == b->fault && q.at == b->at && q.length == b->length &&
                          strstr(q.hint, b->hint) && q.value == 0.0;
        if (!same)
            print_error("\"%s\": fault %d at %zu+%zu: %s; due %d at %zu+%zu: %s\n", b->text,
                        q.fault, q.at, q.length, q.hint, b->fault, b->at, b->length, b->hint);
        assert_true(same);
        assert_true(q.at + q.length <= strlen(b->text));
        assert_true(strlen(q.hint) + 1 < sizeof q.hint); /* not cut off */
        const char *example = strstr(q.hint, ", for example ");
        assert_int_equal(q.plain, example ? (size_t)(example - q.hint) : strlen(q.hint));
    }
}

static void bare_lengths(void **state)
{
    (void)state;
    tt_quantity q = tt_quantity_read("1650", TT_Q_LENGTH, 0.001);
    assert_int_equal(q.fault, TT_QUANTITY_OK);
    assert_true(q.bare);
    assert_near(q.value, tt_quantity_read("1650 mm", TT_Q_LENGTH, 0.0).value, 0.0);
    assert_near(q.value, 1.65, 1e-15);
    q = tt_quantity_read("-1 1/2", TT_Q_LENGTH, 0.0254);
    assert_near(q.value, -0.0381, 1e-17);
    assert_true(q.bare);
    q = tt_quantity_read("2 m", TT_Q_LENGTH, 0.001);
    assert_near(q.value, 2.0, 0.0);
    assert_false(q.bare);
    assert_near(tt_quantity_read("3", TT_Q_PURE, 0.001).value, 3.0, 0.0);
}

/* Decimal numbers come out as the compiler reads them, to the last bit. */
static void last_bit(void **state)
{
    (void)state;
    assert_near(tt_quantity_read("0.1", TT_Q_PURE, 0.0).value, 0.1, 0.0);
    assert_near(tt_quantity_read("123.456e-7", TT_Q_PURE, 0.0).value, 123.456e-7, 0.0);
    assert_near(tt_quantity_read("2.2250738585072014e-308", TT_Q_PURE, 0.0).value,
                2.2250738585072014e-308, 0.0);
    assert_near(tt_quantity_read("1.7976931348623157e308", TT_Q_PURE, 0.0).value,
                1.7976931348623157e308, 0.0);
    assert_near(tt_quantity_read("9007199254740993.0", TT_Q_PURE, 0.0).value, 9007199254740992.0,
                0.0);
}

/* Where the machine has a locale with a decimal comma, it has no say. */
static void locale_has_no_say(void **state)
{
    (void)state;
    const char *const names[] = {"de_DE.UTF-8", "fr_FR.UTF-8", "de_DE", "fr_FR"};
    size_t i = 0;
    while (i < 4 && !setlocale(LC_ALL, names[i])) i++;
    if (i == 4) skip();
    assert_string_equal(localeconv()->decimal_point, ",");
    const tt_quantity q = tt_quantity_read("1.5 mm", TT_Q_LENGTH, 0.0);
    tt_text out = {0};
    tt_quantity_write(&out, 0.0015, TT_Q_LENGTH, TT_METRIC, 3);
    setlocale(LC_ALL, "C");
    assert_near(q.value, 0.0015, 1e-18);
    assert_string_equal(tt_text_of(&out), "1.50 mm");
    tt_text_clear(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads),
        cmocka_unit_test(refuses),
        cmocka_unit_test(last_bit),
        cmocka_unit_test(bare_lengths),
        cmocka_unit_test(locale_has_no_say),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
