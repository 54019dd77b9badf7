/* The tables as a whole: enough rows, every figure with its document and inside its band, leaded
 * metals without seams, masses that agree with area times density. */
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

static size_t names(tt_metal_kind kind)
{
    size_t n = 0;
    for (size_t i = 0; i < tt_metals_count(); i++) {
        const tt_metal *metal = tt_metals_at(i);
        bool first = metal->kind == kind;
        for (size_t j = 0; j < i; j++) {
            if (strcmp(tt_metals_at(j)->name, metal->name) == 0) first = false;
        }
        n += first;
    }
    return n;
}

static void there_is_enough(void **state)
{
    (void)state;
    assert_true(names(TT_CAST) >= 10);
    assert_true(names(TT_STEEL) >= 10);
    assert_true(tt_stock_count() >= 60);
    assert_null(tt_metals_at(tt_metals_count()));
    assert_null(tt_stock_at(tt_stock_count()));
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
    for (size_t i = 0; i < tt_metals_count(); i++) {
        const tt_metal *metal = tt_metals_at(i);
        assert_true(*metal->title && *metal->yield_basis && metal->form);
        for (int p = 0; p < TT_P_COUNT; p++) {
            if (!metal->fact[p].has) continue;
            check_source(&metal->fact[p].source);
            assert_true(metal->fact[p].value >= bands[p].least);
            assert_true(metal->fact[p].value <= bands[p].most);
            seen++;
        }
    }
    assert_true(seen >= 20 * 7);
    for (size_t i = 0; i < tt_stock_count(); i++) check_source(&tt_stock_at(i)->source);
}

static void every_metal_can_be_used(void **state)
{
    (void)state;
    for (size_t i = 0; i < tt_metals_count(); i++) {
        const tt_fact *fact = tt_metals_at(i)->fact;
        assert_true(fact[TT_P_DENSITY].has && fact[TT_P_YIELD].has && fact[TT_P_ULTIMATE].has);
        assert_true(fact[TT_P_POISSON].has);
        assert_true(fact[TT_P_YIELD].value < fact[TT_P_ULTIMATE].value);
        if (tt_metals_at(i)->kind == TT_CAST) {
            assert_true(fact[TT_P_YOUNG_LOW].has && fact[TT_P_YOUNG_HIGH].has);
            assert_true(fact[TT_P_YOUNG_LOW].value <= fact[TT_P_YOUNG_HIGH].value);
        } else {
            assert_true(fact[TT_P_YOUNG_EU].has && fact[TT_P_YOUNG_US].has &&
                        fact[TT_P_EXPANSION].has);
        }
    }
}

/* Silicon and aluminium bronze 0.8, tin bronze with at most 1 % lead 0.6, over 1 % lead 0. */
static void lead_forbids_a_seam(void **state)
{
    (void)state;
    size_t leaded = 0, sound = 0;
    for (size_t i = 0; i < tt_metals_count(); i++) {
        const tt_metal *metal = tt_metals_at(i);
        if (metal->kind != TT_CAST) continue;
        assert_true(metal->fact[TT_P_LEAD].has && metal->fact[TT_P_SEAM].has);
        const double seam = metal->fact[TT_P_SEAM].value;
        assert_int_equal(metal->fact[TT_P_SEAM].source.mark, TT_COMMON_PRACTICE);
        if (metal->fact[TT_P_LEAD].value > 0.01) {
            assert_near(seam, 0.0, 0.0);
            leaded++;
        } else {
            assert_near(seam, strncmp(metal->title, "tin", 3) == 0 ? 0.6 : 0.8, 1e-12);
            sound++;
        }
    }
    assert_true(leaded >= 5 && sound >= 5);
}

static double area_of(const tt_stock *stock)
{
    const double bore = stock->wall > 0.0 ? stock->od - 2.0 * stock->wall : 0.0;
    return pi / 4.0 * (stock->od * stock->od - bore * bore);
}

static void masses_agree_with_area(void **state)
{
    (void)state;
    size_t printed = 0;
    for (size_t i = 0; i < tt_stock_count(); i++) {
        const tt_stock *stock = tt_stock_at(i);
        assert_true(stock->od > 0.0 && stock->wall >= 0.0 && stock->wall < stock->od / 2.0);
        assert_true((strcmp(stock->form, "bar") == 0) == (stock->wall <= 0.0));
        if (stock->mass <= 0.0) continue;
        assert_close(area_of(stock) * 7930.0, stock->mass,
                     0.02); /* all printed masses are stainless */
        printed++;
    }
    assert_true(printed >= 60);
}

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
        const tt_stock *found = NULL;
        for (size_t i = 0; i < tt_stock_count(); i++) {
            if (strcmp(tt_stock_at(i)->name, pipes[k].name) == 0) found = tt_stock_at(i);
        }
        assert_non_null(found);
        assert_near(area_of(found) * 7850.0, pipes[k].mass, 0.006);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(there_is_enough),
        cmocka_unit_test(every_figure_has_source_and_band),
        cmocka_unit_test(every_metal_can_be_used),
        cmocka_unit_test(lead_forbids_a_seam),
        cmocka_unit_test(masses_agree_with_area),
        cmocka_unit_test(schedule_40_weighs_as_tabulated),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
