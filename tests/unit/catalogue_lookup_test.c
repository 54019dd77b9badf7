/* Metals by name, against figures typed from the reference tables; nearest names; stock sizes. */
#include "catalogue/catalogue.h"

#include "assert_close.h"

#include <math.h>
#include <string.h>

typedef struct {
    const char *name;
    double density, yield, ultimate, low, high; /* kg/m3, MPa, MPa, GPa, GPa (steel: eu, us) */
    tt_mark mark;                               /* of the yield */
} row;

/* Sand cast minimums: ASTM B584 and B148, EN 1982, as quoted by the pages or from memory. */
static const row cast[] = {
    {"C83600", 8830, 97, 207, 83, 93.1, TT_READ},
    {"C87200", 8359, 124, 310, 103.4, 103.4, TT_READ},
    {"C87300", 8359, 124, 310, 103.4, 103.4, TT_READ},
    {"C87500", 8276, 165, 414, 106.2, 106.2, TT_READ},
    {"C87600", 8300, 207, 414, 117, 117, TT_FROM_MEMORY},
    {"C87610", 8359, 124, 310, 103, 103, TT_FROM_MEMORY},
    {"C90300", 8802, 124, 276, 96.5, 96.5, TT_READ},
    {"C90500", 8719, 124, 276, 103.4, 103.4, TT_READ},
    {"C92200", 8636, 110, 234, 96.5, 96.5, TT_READ},
    {"C95200", 7640, 172, 448, 103, 103, TT_FROM_MEMORY},
    {"C95400", 7450, 207, 517, 107, 110, TT_FROM_MEMORY},
    {"CC480K", 8700, 130, 250, 95, 95, TT_FROM_MEMORY},
    {"CC483K", 8700, 140, 260, 95, 95, TT_FROM_MEMORY},
    {"CC490K", 8700, 85, 180, 90, 95, TT_READ},
    {"CC491K", 8700, 90, 200, 65, 105, TT_READ},
    {"CC492K", 8700, 130, 230, 90, 96, TT_READ},
    {"CC493K", 8700, 120, 230, 65, 90, TT_FROM_MEMORY},
};

/* The form of lowest yield: EN 10216-5 tube or EN 1993-1-4 Table 2.1 bar; ASTM; EN 10210-1. */
static const row steel[] = {
    {"1.4301", 7900, 190, 500, 200, 193, TT_FROM_MEMORY},
    {"1.4307", 7900, 175, 500, 200, 193, TT_FROM_MEMORY},
    {"1.4401", 8000, 200, 500, 200, 193, TT_FROM_MEMORY},
    {"1.4404", 8000, 190, 490, 200, 193, TT_FROM_MEMORY},
    {"1.4571", 8000, 200, 500, 200, 193, TT_FROM_MEMORY},
    {"1.4462", 7800, 450, 640, 200, 200, TT_FROM_MEMORY},
    {"304", 8000, 205, 515, 200, 193, TT_READ},
    {"304L", 8000, 170, 485, 200, 193, TT_READ},
    {"316L", 8000, 170, 485, 200, 193, TT_READ},
    {"2205", 7800, 450, 655, 200, 200, TT_FROM_MEMORY},
    {"17-4PH H1150", 7800, 725, 930, 196, 196, TT_FROM_MEMORY},
    {"A36", 7850, 250, 400, 210, 200, TT_FROM_MEMORY},
    {"A500 Gr B", 7850, 290, 400, 210, 200, TT_READ},
    {"A53 Gr B", 7850, 240, 415, 210, 200, TT_READ},
    {"S235", 7850, 235, 360, 210, 200, TT_READ},
    {"S275", 7850, 275, 410, 210, 200, TT_READ},
    {"S355", 7850, 355, 470, 210, 200, TT_READ},
};

static void compare(const row *expected, tt_metal_kind kind, tt_property low, tt_property high)
{
    const tt_metal *got = tt_metal_named(expected->name, kind);
    if (!got) print_error("no %s\n", expected->name);
    assert_non_null(got);
    assert_string_equal(got->name, expected->name);
    assert_close(got->fact[TT_P_DENSITY].value, expected->density, 1e-12);
    assert_close(got->fact[TT_P_YIELD].value, expected->yield * 1e6, 1e-12);
    assert_close(got->fact[TT_P_ULTIMATE].value, expected->ultimate * 1e6, 1e-12);
    assert_close(got->fact[low].value, expected->low * 1e9, 1e-12);
    assert_close(got->fact[high].value, expected->high * 1e9, 1e-12);
    assert_int_equal(got->fact[TT_P_YIELD].source.mark, expected->mark);
}

static void figures_are_those_of_the_references(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cast / sizeof *cast; i++) {
        compare(&cast[i], TT_CAST, TT_P_YOUNG_LOW, TT_P_YOUNG_HIGH);
    }
    for (size_t i = 0; i < sizeof steel / sizeof *steel; i++) {
        compare(&steel[i], TT_STEEL, TT_P_YOUNG_EU, TT_P_YOUNG_US);
    }
}

static void single_figures(void **state)
{
    (void)state;
    const tt_fact *c873 = tt_metal_named("C87300", TT_CAST)->fact;
    const tt_fact *c491 = tt_metal_named("CC491K", TT_CAST)->fact;
    assert_near(c491[TT_P_EXPANSION].value, 18.2e-6, 1e-15);
    assert_near(c491[TT_P_FATIGUE].value, 75e6, 1e-3);
    assert_near(c491[TT_P_LEAD].value, 0.06, 1e-12);
    assert_string_equal(c491[TT_P_YIELD].source.document, "EN 1982");
    assert_near(c873[TT_P_SEAM].value, 0.8, 1e-12);
    assert_near(c873[TT_P_POISSON].value, 0.34, 1e-12);
    assert_false(tt_metal_named("CC483K", TT_CAST)->fact[TT_P_FATIGUE].has);
    assert_true(tt_metal_named("1.4404", TT_STEEL)->stainless);
    assert_false(tt_metal_named("S355", TT_STEEL)->stainless);
}

/* The minimum of a tube is its own: 190 against 200 of a bar; of 1.4301 the bar is the lower. */
static void the_form_of_lowest_yield(void **state)
{
    (void)state;
    assert_true(strncmp(tt_metal_named("1.4404", TT_STEEL)->form, "tube", 4) == 0);
    assert_true(strncmp(tt_metal_named("1.4301", TT_STEEL)->form, "bar", 3) == 0);
    size_t forms = 0, tubes = 0;
    for (size_t i = 0; i < tt_metals_count(); i++) {
        const tt_metal *metal = tt_metals_at(i);
        if (strcmp(metal->name, "1.4462") != 0) continue;
        forms++;
        if (strncmp(metal->form, "tube", 4) != 0) continue;
        assert_near(metal->fact[TT_P_YIELD].value, 450e6, 1e-3);
        tubes++;
    }
    assert_int_equal(forms, 3);
    assert_int_equal(tubes, 2);
}

static void kinds_are_apart(void **state)
{
    (void)state;
    assert_null(tt_metal_named("C87300", TT_STEEL));
    assert_null(tt_metal_named("1.4404", TT_CAST));
    assert_null(tt_metal_named("c87300", TT_CAST));
    assert_null(tt_metal_named("", TT_CAST));
}

static void nearest_names(void **state)
{
    (void)state;
    assert_string_equal(tt_metal_nearest("c87300", TT_CAST), "C87300");
    assert_string_equal(tt_metal_nearest("CC491", TT_CAST), "CC491K");
    assert_string_equal(tt_metal_nearest("1.4044", TT_STEEL), "1.4404");
    assert_string_equal(tt_metal_nearest("S 355", TT_STEEL), "S355");
    assert_string_equal(tt_metal_nearest("17-4PH H1150", TT_STEEL), "17-4PH H1150");
    assert_null(tt_metal_nearest("plasticine", TT_CAST));
    assert_null(tt_metal_nearest("", TT_STEEL));
}

static const tt_stock *stock_named(const char *name)
{
    for (size_t i = 0; i < tt_stock_count(); i++) {
        if (strcmp(tt_stock_at(i)->name, name) == 0) return tt_stock_at(i);
    }
    print_error("no stock '%s'\n", name);
    fail();
    return NULL;
}

static void stock_sizes(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        double od, wall, mass; /* mm, mm, kg/m */
    } sizes[] = {
        {"33.7 x 4", 33.7, 4.0, 0.0},
        {"48.3 x 5", 48.3, 5.0, 0.0},
        {"60.3 x 2.6", 60.3, 2.6, 3.74},
        {"219.1 x 6.3", 219.1, 6.3, 33.40},
        {"1 1/2 sch 40", 48.3, 3.68, 4.0776}, /* 2.74 lb/ft */
        {"2 xxs", 60.3, 11.07, 13.5572},      /* 9.11 lb/ft */
        {"4 sch 10S", 114.3, 3.05, 0.0},
        {"8 sch 5S", 219.1, 2.77, 0.0},
        {"HSS 2.375 x 0.154", 60.325, 3.9116, 0.0},
        {"bar 20", 20.0, 0.0, 0.0},
        {"bar 1 1/4 in", 31.75, 0.0, 0.0},
    };
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        const tt_stock *got = stock_named(sizes[i].name);
        assert_near(got->od * 1e3, sizes[i].od, 1e-9);
        assert_near(got->wall * 1e3, sizes[i].wall, 1e-9);
        assert_near(got->mass, sizes[i].mass, 5e-5);
    }
}

static void words_and_units(void **state)
{
    (void)state;
    assert_string_equal(tt_property_words(TT_P_POISSON), "Poisson's ratio");
    assert_string_equal(tt_property_unit(TT_P_POISSON), "");
    assert_string_equal(tt_property_unit(TT_P_YIELD), "Pa");
    assert_string_equal(tt_property_unit(TT_P_EXPANSION), "1/K");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(figures_are_those_of_the_references),
        cmocka_unit_test(single_figures),
        cmocka_unit_test(the_form_of_lowest_yield),
        cmocka_unit_test(kinds_are_apart),
        cmocka_unit_test(nearest_names),
        cmocka_unit_test(stock_sizes),
        cmocka_unit_test(words_and_units),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
