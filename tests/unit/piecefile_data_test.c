/* A piece read with a table of one's own: its rows are used, and each is told once with its line.
 */
#include "pieces.h"

static const char table[] = "# two metals and a bar; the figures are invented\n"
                            "metal,1.4462,duplex steel of one's own,Rp0.2,steel,yes\n"
                            "figure,DENSITY,7800,kg/m3,trial,,,common practice\n"
                            "figure,YIELD,480,MPa,mill certificate 9,2026,heat 3,read\n"
                            "figure,ULTIMATE,700,MPa,mill certificate 9,2026,heat 3,read\n"
                            "figure,YOUNG_EU,200,GPa,trial,,,common practice\n"
                            "figure,YOUNG_US,200,GPa,trial,,,common practice\n"
                            "figure,POISSON,0.3,,trial,,,common practice\n"
                            "figure,EXPANSION,13e-6,1/K,trial,,,common practice\n"
                            "metal,Bell Bronze,bronze of an old bell,Rp0.2,cast,no\n"
                            "figure,DENSITY,8650,kg/m3,scales,,,read\n"
                            "figure,YIELD,140,MPa,trial,,,common practice\n"
                            "figure,ULTIMATE,200,MPa,trial,,,common practice\n"
                            "figure,YOUNG_LOW,90,GPa,trial,,,common practice\n"
                            "figure,YOUNG_HIGH,100,GPa,trial,,,common practice\n"
                            "figure,POISSON,0.34,,trial,,,common practice\n"
                            "figure,LEAD,0,,trial,,,common practice\n"
                            "figure,SEAM,0,,trial,,,common practice\n"
                            "bar,bar 17,yard stock,17,,mm,,,,callipers,,,read\n";

static tt_data *own_data(void)
{
    tt_diags *diags = tt_diags_new(0);
    tt_data *data = NULL;
    assert_int_equal(tt_data_read("own.csv", table, sizeof table - 1, diags, &data), TT_OK);
    tt_diags_free(diags);
    return data;
}

static const tt_metal *metal_of(const tt_piece *piece, const char *name)
{
    for (size_t i = 0; i < piece->metals.n; i++)
        if (strcmp(piece->metals.at[i].name, name) == 0) return &piece->metals.at[i];
    fail_msg("the piece has no %s", name);
    return NULL;
}

static void own_rows_are_used_and_told(void **state)
{
    (void)state;
    tt_data *data = own_data();
    const char *const sets[] = {"bronze/alloy=Bell Bronze"};
    const tt_changes changes = {.set = sets, .sets = 1, .data = data};
    tt_piece *piece = tt_test_piece("tests/pieces/heron.yaml", &changes);
    assert_near(metal_of(piece, "1.4462")->fact[TT_P_YIELD].value, 480e6, 1e-3);
    assert_near(metal_of(piece, "Bell Bronze")->fact[TT_P_DENSITY].value, 8650, 1e-9);
    assert_ptr_equal(piece->data, data);
    size_t steel = 0, bronze = 0, all = 0;
    for (size_t i = 0; i < piece->origins.n; i++) {
        const tt_origin *origin = &piece->origins.at[i];
        if (origin->kind != TT_ORIGIN_DATA) continue;
        all++;
        steel += strcmp(origin->key, "armature/grade") == 0 && origin->place.line == 2 &&
                 strcmp(origin->written, "1.4462") == 0 &&
                 strcmp(origin->why, "mill certificate 9 (read)") == 0;
        bronze += strcmp(origin->key, "bronze/alloy") == 0 && origin->place.line == 10 &&
                  strcmp(origin->written, "Bell Bronze") == 0;
    }
    assert_int_equal(steel, 1);
    assert_int_equal(bronze, 1);
    assert_int_equal(all, 2); /* the bar is not used */
    tt_piece_free(piece);
    tt_data_free(data);
}

static void without_it_nothing_is_told(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/heron.yaml", NULL);
    assert_near(metal_of(piece, "1.4462")->fact[TT_P_YIELD].value, 450e6, 1e-3);
    assert_null(piece->data);
    for (size_t i = 0; i < piece->origins.n; i++)
        assert_int_not_equal(piece->origins.at[i].kind, TT_ORIGIN_DATA);
    tt_piece_free(piece);
}

/* A slip in the name of an own metal finds it. */
static void own_names_are_near_too(void **state)
{
    (void)state;
    tt_data *data = own_data();
    const char *const sets[] = {"bronze/alloy=Bell Bronce"};
    const tt_changes changes = {.set = sets, .sets = 1, .data = data};
    char *text = tt_test_text("tests/pieces/heron.yaml");
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("h", text, strlen(text), &changes, diags, &piece), TT_E_INPUT);
    assert_int_equal(tt_diags_at(diags, 0)->number, 1301);
    assert_non_null(strstr(tt_diags_at(diags, 0)->hint, "Bell Bronze"));
    tt_diags_free(diags);
    tt_data_free(data);
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(own_rows_are_used_and_told),
                                       cmocka_unit_test(without_it_nothing_is_told),
                                       cmocka_unit_test(own_names_are_near_too)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
