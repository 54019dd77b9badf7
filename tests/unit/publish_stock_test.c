/* The built-in tables in print: every row is there, every figure carries a source that is listed.
 */
#include "base/text.h"
#include "catalogue/catalogue.h"
#include "tiptoe/report.h"
#include "assert_close.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int gather(void *user, const char *bytes, size_t n)
{
    tt_text_add(user, bytes, n);
    return 0;
}

static const char *stock_in(const char *units, const tt_data *own, const char *table,
                            const char *name, tt_text *out)
{
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    tt_text_clear(out);
    assert_int_equal(tt_write_stock(table, name, units, own, diags, gather, out), TT_OK);
    tt_diags_free(diags);
    return tt_text_of(out);
}

static const char *stock_of(const tt_data *own, const char *table, const char *name, tt_text *out)
{
    return stock_in(NULL, own, table, name, out);
}

static const char *stock(const char *table, const char *name, tt_text *out)
{
    return stock_of(NULL, table, name, out);
}

static const char *const tables[] = {"alloys", "steels", "fillers", "materials", "tubes",
                                     "pipes",  "boxes",  "bars",    "flats",     "rods"};
enum { TABLES = sizeof tables / sizeof *tables };

static void the_list_counts_every_row(void **state)
{
    (void)state;
    tt_text out = {0};
    size_t listed = 0;
    for (const char *line = strchr(stock(NULL, NULL, &out), '\n'); line;
         line = strchr(line + 1, '\n')) {
        char name[16];
        size_t rows;
        if (sscanf(line + 1, "%15s %zu", name, &rows) == 2) listed += rows;
    }
    assert_true(listed > 0);
    assert_int_equal(listed, tt_metals_count(NULL) + tt_stock_count(NULL));
    tt_text_clear(&out);
}

static void every_metal_is_in_its_table(void **state)
{
    (void)state;
    tt_text printed[4] = {{0}};
    for (size_t t = 0; t < 4; t++) stock(tables[t], NULL, &printed[t]);
    assert_true(tt_metals_count(NULL) > 0);
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        assert_non_null(strstr(tt_text_of(&printed[metal->kind]), metal->name));
    }
    for (size_t t = 0; t < 4; t++) tt_text_clear(&printed[t]);
}

/* Every "[n]" of a table stands once at the head of a line of its list, with a mark behind it. */
static void every_figure_has_its_source(void **state)
{
    (void)state;
    for (size_t t = 0; t < TABLES; t++) {
        tt_text out = {0};
        const char *text = stock(tables[t], NULL, &out), *list = strstr(text, "\nSources\n");
        size_t seen = 0;
        assert_non_null(list);
        for (const char *at = strchr(text, '['); at && at < list; at = strchr(at + 1, '[')) {
            char item[32];
            snprintf(item, sizeof item, "\n- [%ld] ", strtol(at + 1, NULL, 10));
            assert_non_null(strstr(list, item));
            seen++;
        }
        assert_true(seen > 0);
        tt_text_clear(&out);
    }
}

/* Printed as they stand in the data: a steel's forms each for itself. */
static void a_row_whole(void **state)
{
    (void)state;
    tt_text out = {0};
    const char *text = stock("alloys", "C87300", &out);
    assert_non_null(strstr(text, "silicon bronze, 94Cu-4Si-1Mn"));
    assert_non_null(strstr(text, "Yield is 0.5 % extension under load."));
    assert_non_null(strstr(text, "8359 kg/m3"));
    size_t forms = 0, printed = 0;
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        forms += tt_metals_at(NULL, i)->kind == TT_STEEL &&
                 strcmp(tt_metals_at(NULL, i)->name, "1.4301") == 0;
    }
    for (const char *at = strstr(stock("steels", "1.4301", &out), "Yield is "); at;
         at = strstr(at + 1, "Yield is "))
        printed++;
    assert_true(forms > 1);
    assert_int_equal(printed, forms);
    tt_text_clear(&out);
}

static void unknown_names_get_the_nearest(void **state)
{
    (void)state;
    static const char *const asked[][3] = {
        {"alloys", "C87330", "C87300"},
        {"stels", NULL, "steels"},
        {"gold", NULL, "lists the tables"},
        {"1.4404", NULL, "write tiptoe stock steels \"1.4404\""},
        {"M16", NULL, "write tiptoe stock rods \"M16\""},
        {"pipes", "1 1/2 sch 41", "1 1/2 sch 40"},
        {"flats", "2 x 1/2", "did you mean \"2 x 1/2 in\"?"},
        {"tubes", "no such tube", "tiptoe stock tubes lists them"}};
    for (size_t i = 0; i < sizeof asked / sizeof *asked; i++) {
        tt_text out = {0};
        tt_diags *diags = tt_diags_new(0);
        assert_int_equal(tt_write_stock(asked[i][0], asked[i][1], NULL, NULL, diags, gather, &out),
                         TT_E_INPUT);
        assert_int_equal(out.n, 0);
        assert_int_equal(tt_diags_errors(diags), 1);
        assert_int_equal(tt_diags_at(diags, 0)->number, 1301);
        assert_non_null(strstr(tt_diags_at(diags, 0)->hint, asked[i][2]));
        tt_diags_free(diags);
        tt_text_clear(&out);
    }
}

/* Typed from the sizes: 48.3 x 3.68 mm, 5.16 cm2, 12.925 cm4, 5.352 cm3; M16 157 mm2 read; 50 x 10:
 * 5 cm2, on edge 10.42, laid flat 0.417 cm4. A leaded alloy has no seam. */
static void rows_as_a_fabricator_asks(void **state)
{
    (void)state;
    static const char *const asked[][4] = {
        {"pipes", "1-1/2in schedule 40", "5.159 cm2", "12.93 cm4"},
        {"pipes", "1 1/2 std", "5.352 cm3", "computed from the nominal size"},
        {"rods", "m16", "157 mm2", "(read)"},
        {"flats", "50x10", "10.42 cm4", "0.4167 cm4"},
        {"boxes", "100 x 100 x 5", "14.4 kg/m", "EN 10219-2, carbon steel."},
        {"fillers", "ERCuSi-A", "345 MPa", "0.02 %"},
        {"fillers", "ERCuSn-A", "240 MPa", "Not known: "},
        {"materials", "granite", "10.3 MPa", "ASTM C615"},
        {"alloys", "C83600", "6 %", "no weld is counted on"},
    };
    for (size_t i = 0; i < sizeof asked / sizeof *asked; i++) {
        tt_text out = {0};
        const char *text = stock(asked[i][0], asked[i][1], &out);
        for (size_t k = 2; k < 4; k++) {
            if (!strstr(text, asked[i][k])) print_error("%s lacks %s\n", asked[i][1], asked[i][k]);
            assert_non_null(strstr(text, asked[i][k]));
        }
        tt_text_clear(&out);
    }
}

/* 48.3 mm and 3.68 mm over 25.4; 5.352 cm3 over 16.387; 124 MPa over 6.895 are 18 ksi. */
static void lists_in_inches(void **state)
{
    (void)state;
    tt_text out = {0};
    const char *text = stock_in("in", NULL, "pipes", NULL, &out);
    assert_non_null(strstr(text, ", in3"));
    assert_non_null(strstr(text, "lb/ft"));
    assert_null(strstr(text, " mm"));
    const char *row = strstr(text, "\n1 1/2 sch 40 ");
    assert_non_null(row);
    char line[200];
    snprintf(line, sizeof line, "%.*s", (int)strcspn(row + 1, "\n"), row + 1);
    static const char *const figures[] = {" 1.902 ", " 0.1449 ", " 0.3266 "};
    for (size_t i = 0; i < 3; i++)
        if (!strstr(line, figures[i])) fail_msg("%s lacks %s", line, figures[i]);
    for (size_t t = 4; t < TABLES - 1; t++) {
        text = stock_in("in", NULL, tables[t], NULL, &out);
        assert_non_null(strstr(text, " in3"));
        assert_non_null(strstr(text, " lb/ft"));
    }
    assert_non_null(strstr(stock_in("in", NULL, "rods", NULL, &out), " in2"));
    assert_non_null(strstr(stock_in("in", NULL, "alloys", NULL, &out), "18.0 ksi"));
    assert_null(strstr(stock_in("mm", NULL, "alloys", NULL, &out), "ksi"));
    tt_diags *diags = tt_diags_new(0);
    assert_int_equal(tt_write_stock("pipes", NULL, "cm", NULL, diags, gather, &out), TT_E_INPUT);
    assert_int_equal(tt_diags_errors(diags), 1);
    tt_diags_free(diags);
    tt_text_clear(&out);
}

/* A size alone lists all there is of it, and nothing else. */
static void a_size_lists_its_rows(void **state)
{
    (void)state;
    static const char *const sizes[] = {"1 1/4", "1-1/4"};
    for (size_t i = 0; i < 2; i++) {
        tt_text out = {0};
        const char *text = stock("pipes", sizes[i], &out);
        assert_non_null(strstr(text, "\n1 1/4 sch 40"));
        assert_non_null(strstr(text, "\n1 1/4 sch 80"));
        assert_null(strstr(text, "\n1 1/2 sch"));
        assert_null(strstr(text, "\n1 sch"));
        tt_text_clear(&out);
    }
    tt_text out = {0};
    assert_non_null(strstr(stock("steels", "316l", &out), "tiptoe stock: steels 316L"));
    assert_non_null(strstr(stock("alloys", "c87300", &out), "tiptoe stock: alloys C87300"));
    tt_text_clear(&out);
}

static void own_rows_are_marked(void **state)
{
    (void)state;
    static const char table[] = "rod,M16,yard stock,16,2,mm,156,mm2,callipers,,,read\n"
                                "material,whale bone,bone of a whale\n"
                                "figure,DENSITY_LOW,1200,kg/m3,scales,,,read\n"
                                "figure,DENSITY_HIGH,1900,kg/m3,scales,,,read\n";
    tt_diags *diags = tt_diags_new(0);
    tt_data *own = NULL;
    assert_int_equal(tt_data_read("own.csv", table, sizeof table - 1, diags, &own), TT_OK);
    tt_text out = {0};
    const char *text = stock_of(own, "rods", NULL, &out);
    assert_non_null(strstr(text, "M16 (own)"));
    assert_null(strstr(text, "157 mm2"));
    assert_non_null(strstr(text, "Own data: own.csv, SHA-256 "));
    assert_non_null(strstr(text, "M20 "));
    text = stock_of(own, "rods", "M16", &out);
    assert_non_null(strstr(text, "156 mm2"));
    assert_non_null(strstr(text, "Own data: own.csv, line 1."));
    assert_non_null(strstr(text, "callipers (read)"));
    assert_non_null(strstr(stock_of(own, "materials", NULL, &out), "whale bone (own)"));
    assert_null(strstr(stock("materials", NULL, &out), "(own)"));
    tt_data_free(own);
    tt_diags_free(diags);
    tt_text_clear(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_list_counts_every_row),
                                       cmocka_unit_test(every_metal_is_in_its_table),
                                       cmocka_unit_test(every_figure_has_its_source),
                                       cmocka_unit_test(a_row_whole),
                                       cmocka_unit_test(unknown_names_get_the_nearest),
                                       cmocka_unit_test(rows_as_a_fabricator_asks),
                                       cmocka_unit_test(lists_in_inches),
                                       cmocka_unit_test(a_size_lists_its_rows),
                                       cmocka_unit_test(own_rows_are_marked)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
