/* The tables as a whole: enough rows, every figure with its document and inside its band, leaded
 * metals without seams; areas, masses and stress areas that agree with a second formula. */
#include "catalogue/catalogue.h"

#include "assert_close.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static const struct {
    double least, most;
} bands[TT_P_COUNT] = {
#define TT_PROPERTY(id, words, unit, least, most) {least, most},
#include "catalogue/properties.def"
#undef TT_PROPERTY
};

static size_t rows_of(tt_metal_kind kind, bool names)
{
    size_t n = 0;
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        bool counts = metal->kind == kind;
        for (size_t j = 0; names && j < i; j++) {
            const tt_metal *other = tt_metals_at(NULL, j);
            if (other->kind == kind && strcmp(other->name, metal->name) == 0) counts = false;
        }
        n += counts;
    }
    return n;
}

static size_t sizes_of(const char *form)
{
    size_t n = 0;
    for (size_t i = 0; i < tt_stock_count(NULL); i++)
        n += strcmp(tt_stock_at(NULL, i)->form, form) == 0;
    return n;
}

static void there_is_enough(void **state)
{
    (void)state;
    assert_true(rows_of(TT_CAST, true) >= 20);
    assert_true(rows_of(TT_STEEL, true) >= 20);
    assert_true(rows_of(TT_STEEL, false) >= 30); /* by product form */
    assert_true(rows_of(TT_FILLER, true) >= 5);
    assert_true(rows_of(TT_MATERIAL, true) >= 15);
    assert_true(sizes_of("tube") >= 100 && sizes_of("pipe") >= 100 && sizes_of("box") >= 50);
    assert_true(sizes_of("bar") >= 50 && sizes_of("flat") >= 50 && sizes_of("rod") >= 25);
    assert_int_equal(sizes_of("tube") + sizes_of("pipe") + sizes_of("box") + sizes_of("bar") +
                         sizes_of("flat") + sizes_of("rod"),
                     tt_stock_count(NULL));
    assert_null(tt_metals_at(NULL, tt_metals_count(NULL)));
    assert_null(tt_stock_at(NULL, tt_stock_count(NULL)));
}

static void check_source(const tt_source *source)
{
    assert_non_null(source->document);
    assert_true(*source->document != '\0');
    assert_true(source->mark == TT_READ || source->mark == TT_FROM_MEMORY ||
                source->mark == TT_COMMON_PRACTICE);
    /* a figure nobody saw must say at least what it stands on */
    if (source->mark == TT_COMMON_PRACTICE) assert_non_null(source->place);
}

static void every_figure_has_source_and_band(void **state)
{
    (void)state;
    size_t seen = 0;
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        assert_true(*metal->title && metal->form && metal->yield_basis);
        assert_true(metal->kind == TT_MATERIAL || *metal->yield_basis);
        assert_null(metal->at.file);
        for (int p = 0; p < TT_P_COUNT; p++) {
            if (!metal->fact[p].has) continue;
            check_source(&metal->fact[p].source);
            assert_true(metal->fact[p].value >= bands[p].least);
            assert_true(metal->fact[p].value <= bands[p].most);
            seen++;
        }
    }
    assert_true(seen >= 20 * 7);
    for (size_t i = 0; i < tt_stock_count(NULL); i++) check_source(&tt_stock_at(NULL, i)->source);
}

static void every_metal_can_be_used(void **state)
{
    (void)state;
    size_t seen = 0;
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        const tt_fact *fact = metal->fact;
        if (metal->kind != TT_CAST && metal->kind != TT_STEEL) continue;
        assert_true(fact[TT_P_DENSITY].has && fact[TT_P_YIELD].has && fact[TT_P_ULTIMATE].has);
        assert_true(fact[TT_P_POISSON].has);
        assert_true(fact[TT_P_YIELD].value < fact[TT_P_ULTIMATE].value);
        if (metal->kind == TT_CAST) {
            assert_true(fact[TT_P_YOUNG_LOW].has && fact[TT_P_YOUNG_HIGH].has);
            assert_true(fact[TT_P_YOUNG_LOW].value <= fact[TT_P_YOUNG_HIGH].value);
        } else {
            assert_true(fact[TT_P_YOUNG_EU].has && fact[TT_P_YOUNG_US].has &&
                        fact[TT_P_EXPANSION].has);
        }
        seen++;
    }
    assert_true(seen >= 50);
}

/* A minimum is not over what is typical; a filler has a strength, a material its densities. */
static void figures_in_their_order(void **state)
{
    (void)state;
    size_t pairs = 0;
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        const tt_fact *fact = metal->fact;
        if (fact[TT_P_ULTIMATE].has && fact[TT_P_ULTIMATE_TYPICAL].has) {
            assert_true(fact[TT_P_ULTIMATE].value <= fact[TT_P_ULTIMATE_TYPICAL].value);
            assert_true(fact[TT_P_YIELD].value <= fact[TT_P_YIELD_TYPICAL].value);
            pairs++;
        }
        if (metal->kind == TT_FILLER)
            assert_true(fact[TT_P_ULTIMATE].has || fact[TT_P_ULTIMATE_TYPICAL].has);
        if (metal->kind == TT_MATERIAL)
            assert_true(fact[TT_P_DENSITY_LOW].has && fact[TT_P_DENSITY_HIGH].has &&
                        fact[TT_P_DENSITY_LOW].value <= fact[TT_P_DENSITY_HIGH].value);
    }
    assert_true(pairs >= 10);
}

/* Silicon and aluminium bronze 0.8, tin bronze with at most 1 % lead 0.6; over 1 % lead, or leaded
 * on purpose, 0. */
static void lead_forbids_a_seam(void **state)
{
    (void)state;
    size_t leaded = 0, sound = 0;
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        if (metal->kind != TT_CAST) continue;
        assert_true(metal->fact[TT_P_LEAD].has && metal->fact[TT_P_SEAM].has);
        const double seam = metal->fact[TT_P_SEAM].value;
        assert_int_equal(metal->fact[TT_P_SEAM].source.mark, TT_COMMON_PRACTICE);
        if (metal->fact[TT_P_LEAD].value > 0.01 || strncmp(metal->title, "leaded", 6) == 0) {
            assert_near(seam, 0.0, 0.0);
            leaded++;
        } else {
            assert_near(seam, strncmp(metal->title, "tin", 3) == 0 ? 0.6 : 0.8, 1e-12);
            sound++;
        }
    }
    assert_true(leaded >= 5 && sound >= 5);
}

/* ---- sizes, by a second formula: strips across the outline ---- */

/* How wide a rectangle with corners of radius r is at the height y over its middle; a circle is a
 * square whose corners meet. */
static double chord(double wide, double deep, double r, double y)
{
    const double straight = deep / 2.0 - r;
    if (fabs(y) >= deep / 2.0) return 0.0;
    if (fabs(y) <= straight) return wide;
    const double up = fabs(y) - straight;
    return wide - 2.0 * r + 2.0 * sqrt(r * r - up * up);
}

static double strips(double wide, double deep, double r, bool second)
{
    enum { STRIPS = 4000 };
    double sum = 0.0;
    for (int i = 0; i < STRIPS; i++) {
        const double y = deep * ((i + 0.5) / STRIPS - 0.5);
        sum += chord(wide, deep, r, y) * (second ? y * y : 1.0) * deep / STRIPS;
    }
    return sum;
}

static double by_strips(const tt_stock *stock, bool second)
{
    const bool round = stock->deep <= 0.0;
    const double deep = round ? stock->od : stock->deep, less = 2.0 * stock->wall;
    const double out = round ? stock->od / 2.0 : stock->corner;
    const double in = round ? out - stock->wall : stock->corner_in;
    const double whole = strips(stock->od, deep, out, second);
    return stock->wall > 0.0 ? whole - strips(stock->od - less, deep - less, in, second) : whole;
}

/* Area and second moment of every size: within 0.1 % of the strips. */
static void areas_agree_with_strips(void **state)
{
    (void)state;
    size_t seen = 0;
    for (size_t i = 0; i < tt_stock_count(NULL); i++) {
        const tt_stock *stock = tt_stock_at(NULL, i);
        const double least = stock->deep > 0.0 ? fmin(stock->od, stock->deep) : stock->od;
        assert_true(stock->od > 0.0 && stock->wall >= 0.0 && stock->wall < least / 2.0);
        assert_close(tt_stock_area(stock), by_strips(stock, false), 1e-3);
        assert_close(tt_stock_inertia(stock, false), by_strips(stock, true), 1e-3);
        tt_stock turned = *stock;
        turned.od = stock->deep > 0.0 ? stock->deep : stock->od;
        turned.deep = stock->deep > 0.0 ? stock->od : 0.0;
        assert_close(tt_stock_inertia(stock, true), by_strips(&turned, true), 1e-3);
        seen++;
    }
    assert_true(seen >= 400);
}

/* Every printed mass: carbon steel 7850 kg/m3 within 1 %, stainless steel 7930 kg/m3 within 2 %. */
static void masses_agree_with_area(void **state)
{
    (void)state;
    size_t carbon = 0, stainless = 0;
    for (size_t i = 0; i < tt_stock_count(NULL); i++) {
        const tt_stock *stock = tt_stock_at(NULL, i);
        if (stock->mass <= 0.0) continue;
        const double area = by_strips(stock, false);
        assert_close(area * (stock->stainless ? 7930.0 : 7850.0), stock->mass,
                     stock->stainless ? 0.02 : 0.01);
        *(stock->stainless ? &stainless : &carbon) += 1;
    }
    assert_true(carbon >= 100 && stainless >= 60);
}

/* Metric: the circle of the mean of pitch and minor diameter; inch: pitch diameter less 3/8 of the
 * height of the thread. Printed to three digits: within 0.5 %. */
static void stress_areas_agree_with_the_thread(void **state)
{
    (void)state;
    size_t metric = 0, inch = 0;
    for (size_t i = 0; i < tt_stock_count(NULL); i++) {
        const tt_stock *rod = tt_stock_at(NULL, i);
        assert_true((strcmp(rod->form, "rod") == 0) == (rod->pitch > 0.0));
        if (rod->pitch <= 0.0) continue;
        const double height = sqrt(3.0) / 2.0 * rod->pitch;
        const double pitch_diameter = rod->od - 0.75 * height;
        const double minor = pitch_diameter - 2.0 * (17.0 / 24.0 - 3.0 / 8.0) * height;
        const bool is_metric = rod->name[0] == 'M';
        const double across =
            is_metric ? (pitch_diameter + minor) / 2.0 : pitch_diameter - 3.0 / 8.0 * height;
        assert_close(rod->area, pi / 4.0 * across * across, 5e-3);
        assert_close(tt_thread_area(rod->od, rod->pitch, !is_metric), pi / 4.0 * across * across,
                     1e-4);
        *(is_metric ? &metric : &inch) += 1;
    }
    assert_true(metric >= 10 && inch >= 10);
}

/* ---- sizes, as tables print them ---- */

/* Pipe of schedule 40: area of nominal wall x 7850 kg/m3, as tabulated to 0.01 kg/m. */
static void schedule_40_weighs_as_tabulated(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        double mass;
    } pipes[] = {
        {"1/8 sch 40", 0.37},   {"1/4 sch 40", 0.63},   {"3/8 sch 40", 0.84},
        {"1/2 sch 40", 1.27},   {"3/4 sch 40", 1.69},   {"1 sch 40", 2.50},
        {"1 1/4 sch 40", 3.39}, {"1 1/2 sch 40", 4.05}, {"2 sch 40", 5.44},
        {"2 1/2 sch 40", 8.63}, {"3 sch 40", 11.29},    {"3 1/2 sch 40", 13.57},
        {"4 sch 40", 16.08},    {"5 sch 40", 21.77},    {"6 sch 40", 28.26},
        {"8 sch 40", 42.55},
    };
    for (size_t k = 0; k < sizeof pipes / sizeof *pipes; k++) {
        const tt_stock *found = tt_stock_named(NULL, "pipe", pipes[k].name);
        assert_non_null(found);
        assert_near(tt_stock_area(found) * 7850.0, pipes[k].mass, 0.006);
    }
}

/* Half of the last printed digit. */
static void same_digits(double value, double printed, double half)
{
    if (fabs(value - printed) > half * 1.0001) print_error("%.6g is not %.6g\n", value, printed);
    assert_near(value, printed, half * 1.0001);
}

/* Round: hot finished sections as printed in a table of EN 10210-2 sizes. Square: EN 10210-2 and
 * EN 10219-2, from memory. cm2, cm4; half of the last digit. */
static void sections_as_tabulated(void **state)
{
    (void)state;
    static const struct {
        const char *form, *name;
        double area, half_area, inertia, half_inertia;
    } rows[] = {
        {"tube", "21.3 x 2.6", 1.53, 0.005, 0.681, 0.0005},
        {"tube", "26.9 x 3.2", 2.38, 0.005, 1.70, 0.005},
        {"tube", "33.7 x 4", 3.73, 0.005, 4.19, 0.005},
        {"tube", "42.4 x 2.6", 3.25, 0.005, 6.46, 0.005},
        {"tube", "48.3 x 3.2", 4.53, 0.005, 11.6, 0.05},
        {"tube", "114.3 x 6.3", 21.4, 0.05, 313, 0.5},
        {"tube", "168.3 x 10", 49.7, 0.05, 1560, 5},
        {"box", "50 x 50 x 3", 5.41, 0.005, 19.5, 0.05},
        {"box", "100 x 100 x 5", 18.4, 0.05, 271, 0.5},
        {"box", "100 x 100 x 5 hot", 18.7, 0.05, 279, 0.5},
        {"box", "50 x 50 x 5 hot", 8.73, 0.005, 28.9, 0.05},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const tt_stock *found = tt_stock_named(NULL, rows[k].form, rows[k].name);
        if (!found) print_error("no %s\n", rows[k].name);
        assert_non_null(found);
        same_digits(tt_stock_area(found) * 1e4, rows[k].area, rows[k].half_area);
        same_digits(tt_stock_inertia(found, false) * 1e8, rows[k].inertia, rows[k].half_inertia);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(there_is_enough),
        cmocka_unit_test(every_figure_has_source_and_band),
        cmocka_unit_test(every_metal_can_be_used),
        cmocka_unit_test(lead_forbids_a_seam),
        cmocka_unit_test(figures_in_their_order),
        cmocka_unit_test(areas_agree_with_strips),
        cmocka_unit_test(masses_agree_with_area),
        cmocka_unit_test(stress_areas_agree_with_the_thread),
        cmocka_unit_test(schedule_40_weighs_as_tabulated),
        cmocka_unit_test(sections_as_tabulated),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
