/* Rows of one's own: added, laid over the built-in ones, refused with their place. The figures are
 * invented. */
#include "base/diags.h"
#include "catalogue/catalogue.h"

#include "assert_close.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SOURCE ",MPa,mill certificate 12,2026,heat 4,read\n"
#define REST                                                                                       \
    "figure,DENSITY,7850,kg/m3,trial,,,common practice\n"                                          \
    "figure,YOUNG_EU,210,GPa,trial,,,common practice\n"                                            \
    "figure,YOUNG_US,200,GPa,trial,,,common practice\n"                                            \
    "figure,POISSON,0.3,,trial,,,common practice\n"                                                \
    "figure,EXPANSION,12e-6,1/K,trial,,,common practice\n"

static tt_data *read_text(const char *text, tt_diags *diags)
{
    tt_data *data = NULL;
    /* a copy without a zero behind it: nothing may look there */
    const size_t length = strlen(text);
    char *exact = malloc(length ? length : 1);
    assert_non_null(exact);
    memcpy(exact, text, length);
    const tt_status status = tt_data_read("own.csv", exact, length, diags, &data);
    free(exact);
    assert_int_equal(status == TT_OK, data != NULL);
    assert_int_equal(status, tt_diags_errors(diags) ? TT_E_INPUT : TT_OK);
    return data;
}

static tt_data *good(const char *text)
{
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    tt_data *data = read_text(text, diags);
    if (!data) print_error("%s\n", tt_diags_at(diags, 0)->text);
    assert_non_null(data);
    tt_diags_free(diags);
    return data;
}

static const char own_steel[] = "metal,S355,structural steel of one's own,ReH,steel,no\n" REST
                                "figure,YIELD,390" SOURCE "figure,ULTIMATE,520" SOURCE;

static void a_metal_takes_the_place_of_all_forms(void **state)
{
    (void)state;
    tt_data *own = good(own_steel);
    const tt_metal *metal = tt_metal_named(own, "S355", TT_STEEL);
    assert_near(metal->fact[TT_P_YIELD].value, 390e6, 1e-3);
    assert_string_equal(metal->fact[TT_P_YIELD].source.document, "mill certificate 12");
    assert_int_equal(metal->fact[TT_P_YIELD].source.mark, TT_READ);
    assert_string_equal(metal->at.file, "own.csv");
    assert_int_equal(metal->at.line, 1);
    assert_near(tt_metal_named(NULL, "S355", TT_STEEL)->fact[TT_P_YIELD].value, 355e6, 1e-3);
    size_t named = 0, hidden = 0;
    for (size_t i = 0; i < tt_metals_count(own); i++) {
        const tt_metal *other = tt_metals_at(own, i);
        if (!other) hidden++;
        named += other && strcmp(other->name, "S355") == 0;
    }
    assert_int_equal(named, 1);
    assert_true(hidden >= 2); /* S355 has several built-in forms */
    assert_non_null(tt_metal_named(own, "S235", TT_STEEL));
    assert_null(tt_metal_named(own, "S355", TT_CAST));
    tt_data_free(own);
}

static void a_metal_is_added(void **state)
{
    (void)state;
    tt_data *own = good("metal,Old Rail,steel of a rail,Rp0.2,steel,no\n" REST
                        "form,bar\nfigure,YIELD,300" SOURCE "figure,ULTIMATE,520" SOURCE
                        "form,plate\nfigure,YIELD,280" SOURCE "figure,ULTIMATE,500" SOURCE);
    assert_int_equal(tt_metals_count(own), tt_metals_count(NULL) + 2);
    const tt_metal *metal = tt_metal_named(own, "Old Rail", TT_STEEL);
    assert_string_equal(metal->form, "plate"); /* the lower yield */
    assert_int_equal(metal->at.line, 10);
    assert_null(tt_metal_named(NULL, "Old Rail", TT_STEEL));
    tt_data_free(own);
}

static void a_size_is_added_or_replaced(void **state)
{
    (void)state;
    tt_data *own = good("pipe,1 1/2 SCH40,yard stock,48.1,3.5,mm,,,carbon,callipers,,,read\n"
                        "rod,M17,yard stock,17,2,mm,181.1,mm2,callipers,,,read\n");
    const tt_stock *pipe = tt_stock_named(own, "pipe", "1-1/2 sch 40");
    assert_near(pipe->od, 0.0481, 1e-12);
    assert_string_equal(pipe->at.file, "own.csv");
    assert_near(tt_stock_named(NULL, "pipe", "1 1/2 sch 40")->od, 0.0483, 1e-12);
    assert_near(tt_stock_named(own, "rod", "M17")->pitch, 0.002, 1e-12);
    assert_int_equal(tt_stock_named(own, "rod", "M17")->at.line, 2);
    assert_non_null(tt_stock_named(own, "pipe", "2 sch 40"));
    assert_int_equal(tt_stock_count(own), tt_stock_count(NULL) + 2);
    tt_data_free(own);
}

/* 45 ksi is 310.264 MPa, 0.302 lb/in3 is 8359.3 kg/m3, 10e-6 1/F is 18e-6 1/K. */
static void inch_units(void **state)
{
    (void)state;
    tt_data *own = good("metal,Y1,a bronze,0.5 % extension under load,cast,no\n"
                        "figure,DENSITY,0.302,lb/in3,trial,,,read\n"
                        "figure,YIELD,18000,psi,trial,,,read\nfigure,ULTIMATE,45,ksi,trial,,,read\n"
                        "figure,YOUNG_LOW,15000,ksi,trial,,,read\n"
                        "figure,YOUNG_HIGH,15000,ksi,trial,,,read\n"
                        "figure,EXPANSION,10e-6,1/F,trial,,,read\n"
                        "figure,POISSON,0.34,,trial,,,read\n"
                        "figure,LEAD,0.5 %,,trial,,,read\nfigure,SEAM,0.8,,trial,,,read\n");
    const tt_fact *fact = tt_metal_named(own, "Y1", TT_CAST)->fact;
    assert_close(fact[TT_P_ULTIMATE].value, 310.264e6, 1e-6);
    assert_close(fact[TT_P_YIELD].value, 124.106e6, 1e-5);
    assert_close(fact[TT_P_DENSITY].value, 0.302 * 27679.9, 1e-6);
    assert_close(fact[TT_P_EXPANSION].value, 18e-6, 1e-12);
    assert_close(fact[TT_P_LEAD].value, 0.005, 1e-12);
    tt_data_free(own);
}

/* As spreadsheets save it: a mark of byte order, CR LF, commas behind short rows, a line of commas,
 * blanks around fields, quotation marks inside, no end of the last line. */
static void as_spreadsheets_write_it(void **state)
{
    (void)state;
    tt_data *own =
        good("\xEF\xBB\xBF# remark,,,,\r\nmaterial, M1 ,\"a \"\"soft\"\" stone, grey\",,,,,\r\n"
             ",,,,,,,\r\n\r\n"
             "figure,DENSITY_LOW,2000,kg/m3,trial,,,common practice,,,,,,,,,,\r\n"
             "figure,DENSITY_HIGH,2100,kg/m3,trial,,,common practice");
    const tt_metal *stone = tt_metal_named(own, "M1", TT_MATERIAL);
    assert_non_null(stone);
    assert_string_equal(stone->title, "a \"soft\" stone, grey");
    assert_int_equal(stone->at.line, 2);
    assert_near(stone->fact[TT_P_DENSITY_HIGH].value, 2100, 1e-9);
    tt_data_free(own);
}

/* The example of data/README.md is one that is taken. */
static void the_example_of_the_page(void **state)
{
    (void)state;
    enum { MOST = 1 << 16 };
    static const char begin[] = "# The bronze as it was poured";
    char *page = calloc(MOST, 1);
    FILE *file = fopen(TT_ROOT "/data/README.md", "rb");
    assert_non_null(page);
    assert_non_null(file);
    assert_in_range(fread(page, 1, MOST - 1, file), 1000, MOST - 2);
    fclose(file);
    char *at = strstr(page, begin), *end = at ? strstr(at, "```") : NULL;
    assert_non_null(end);
    *end = '\0';
    tt_data *own = good(at);
    assert_near(tt_metal_named(own, "C87300", TT_CAST)->fact[TT_P_YIELD].value, 131e6, 1e-3);
    assert_non_null(tt_stock_named(own, "bar", "17"));
    tt_data_free(own);
    free(page);
}

/* number, line, column, text of the one fault */
static const struct {
    const char *text;
    unsigned number, line, column;
    const char *hint; /* a part of it; NULL: any */
} faults[] = {
    {"", 1616, 0, 0, "data/README.md"},
    {"# nothing but a remark\n", 1616, 0, 0, NULL},
    {"wire,3,mm\n", 1601, 1, 1, "data/README.md"},
    {"tube;40 x 4;yard;40;4;mm;;;carbon;trial;;;read\n", 1601, 1, 1, "commas"},
    {"\nbar,bar 7,yard,7,,mm,,,,callipers,,\n", 1602, 2, 1, NULL},
    {"bar,bar 7,yard,7 mm,,mm,,,,callipers,,,read\n", 1603, 1, 16, NULL},
    {"bar,bar 7,yard,0x7,,mm,,,,callipers,,,read\n", 1603, 1, 16, "decimal"},
    {"bar,bar 7,yard,7,,furlong,,,,callipers,,,read\n", 1604, 1, 19, "mm or in"},
    {"bar,bar 7,yard,7,,mm,,,,,,,read\n", 1605, 1, 25, "certificate"},
    {"bar,bar 7,yard,7,,mm,,,,callipers,,,sure\n", 1605, 1, 37, "from memory"},
    {"tube,40 x 4,yard,40,4,mm,,,,callipers,,,read\n", 1606, 1, 28, NULL},
    {"form,bar\n", 1614, 1, 1, "metal"},
    {"bar,\"bar 7,yard,7,,mm,,,,callipers,,,read\n", 1615, 1, 5, "twice"},
    {"bar,b\xC3\xA4r 7,yard,-7,,mm,,,,callipers,,,read\n", 1612, 1, 16, NULL},
    {"bar,b\xE4r 7,yard,7,,mm,,,,callipers,,,read\n", 1615, 1, 6, "UTF-8"},
    {"bar,bar 7,yard,7,,mm,,,,callipers,,,read\nbar,7 mm,yard,7,,mm,,,,callipers,,,read\n", 1609, 2,
     5, NULL},
    {"material,M1,a stone\nfigure,DENSITY_LOW,2000,kg/m3,trial,,,read\n", 1610, 1, 10, "whole"},
    {"metal,M1,head with a fault,Rp0.2,steel\nfigure,YIELD,300" SOURCE "figure,YIELD,310" SOURCE,
     1602, 1, 1, NULL},
};

static void faults_have_their_place(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
        tt_diags *diags = tt_diags_new(0);
        assert_null(read_text(faults[i].text, diags));
        const tt_diag *first = tt_diags_at(diags, 0);
        if (tt_diags_errors(diags) != 1 || first->number != faults[i].number ||
            first->place.column != faults[i].column)
            print_error("fault %zu: TT%u at %u:%u, %s\n", i, first->number, first->place.line,
                        first->place.column, first->text);
        assert_int_equal(tt_diags_errors(diags), 1);
        assert_int_equal(first->number, faults[i].number);
        assert_int_equal(first->place.line, faults[i].line);
        assert_int_equal(first->place.column, faults[i].column);
        assert_string_equal(first->file, "own.csv");
        assert_non_null(tt_number_title(first->number));
        if (faults[i].line) assert_non_null(first->shown);
        if (faults[i].hint) assert_non_null(strstr(first->hint, faults[i].hint));
        tt_diags_free(diags);
    }
}

static void all_faults_at_once(void **state)
{
    (void)state;
    tt_diags *diags = tt_diags_new(0);
    assert_null(read_text("bar,bar 7,yard,7,,mm,,,,callipers,,,sure\nwire,3,mm\n"
                          "metal,M1,a steel,Rp0.2,rusty,no\n" REST "figure,YIELD,300" SOURCE,
                          diags));
    const unsigned expected[] = {1605, 1601, 1606};
    assert_int_equal(tt_diags_errors(diags), 3);
    for (size_t i = 0; i < 3; i++) assert_int_equal(tt_diags_at(diags, i)->number, expected[i]);
    tt_diags_free(diags);
}

/* More rows than anybody has are not worked through. */
static void an_endless_table_is_refused(void **state)
{
    (void)state;
    enum { ROWS = 5000, LONGEST = 80 };
    char *text = calloc(ROWS, LONGEST);
    assert_non_null(text);
    size_t n = 0;
    for (int i = 0; i < ROWS; i++)
        n += (size_t)snprintf(text + n, LONGEST, "bar,bar %d mm,yard,%d,,mm,,,,callipers,,,read\n",
                              i + 1, i + 1);
    tt_diags *diags = tt_diags_new(0);
    assert_null(read_text(text, diags));
    assert_int_equal(tt_diags_at(diags, 0)->number, 1615);
    tt_diags_free(diags);
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_metal_takes_the_place_of_all_forms),
        cmocka_unit_test(a_metal_is_added),
        cmocka_unit_test(a_size_is_added_or_replaced),
        cmocka_unit_test(inch_units),
        cmocka_unit_test(as_spreadsheets_write_it),
        cmocka_unit_test(the_example_of_the_page),
        cmocka_unit_test(faults_have_their_place),
        cmocka_unit_test(all_faults_at_once),
        cmocka_unit_test(an_endless_table_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
