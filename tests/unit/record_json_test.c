/* The JSON result of a hand-made assessment, read back by cJSON: keys in the order of the contract,
 * figures by head; numbers that read back equal; a number that is none stops it. */
#include "record/put.h"
#include "fixture_assessment.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- numbers ----------------------------------------------------------------------------------
 */

static void number_is(double value, const char *expected)
{
    char text[32];
    assert_true(tt_record_number(value, text));
    assert_string_equal(text, expected);
}

static void the_fewest_digits_that_read_back(void **state)
{
    (void)state;
    number_is(0.1, "0.1");
    number_is(0.1 + 0.2, "0.30000000000000004"); /* 17 digits are needed, 16 read back 0.3 */
    number_is(5e-324, "4.94065645841247e-324");
    number_is(100, "100");
    number_is(-0.0, "0");
    number_is(1e21, "1e+21");
    number_is(-2.5, "-2.5");
    char text[32];
    assert_false(tt_record_number(NAN, text));
    assert_false(tt_record_number(INFINITY, text));
    assert_false(tt_record_number(-INFINITY, text));
}

/* 15 digits at least, 17 at most, and 15 or 16 only when they suffice: for a spread of bit
 * patterns. */
static void any_double_reads_back(void **state)
{
    (void)state;
    uint64_t bits = 88172645463325252u;
    size_t seen = 0;
    for (int i = 0; i < 200000; i++) {
        double value;
        char text[32], fewer[400];
        bits ^= bits << 13, bits ^= bits >> 7, bits ^= bits << 17;
        memcpy(&value, &bits, sizeof value);
        if (!isfinite(value)) continue;
        seen++;
        assert_true(tt_record_number(value, text));
        assert_true(strtod(text, NULL) == value);
        size_t digits = 0;
        for (const char *c = text; *c && *c != 'e'; c++) digits += *c >= '0' && *c <= '9';
        if (digits > 15) {
            snprintf(fewer, sizeof fewer, "%.*g", (int)digits - 1, value);
            assert_true(strtod(fewer, NULL) != value || fabs(value) < 1);
        }
    }
    assert_true(seen > 190000);
}

/* A host with a decimal comma, or a sign of two bytes, gets a point all the same. */
static void the_locale_has_no_say(void **state)
{
    (void)state;
    static const char *const rows[][2] = {{"0,25", "0.25"},
                                          {"-1,5e-07", "-1.5e-07"},
                                          {"3\331\25314", "3.14"},
                                          {"1.5", "1.5"},
                                          {"12e+20", "12e+20"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char text[32];
        snprintf(text, sizeof text, "%s", rows[i][0]);
        tt_record_point(text);
        assert_string_equal(text, rows[i][1]);
    }
}

/* ---- the result -------------------------------------------------------------------------------
 */

static cJSON *result_of(const fixture *f)
{
    tt_text text = {0};
    assert_int_equal(tt_record_json(&f->a, &text), TT_OK);
    cJSON *read = cJSON_Parse(tt_text_of(&text));
    tt_text_clear(&text);
    assert_non_null(read);
    return read;
}

/* "models/0/cases/1/name" */
static const cJSON *at(const cJSON *from, const char *path)
{
    char word[64];
    for (const char *rest = path; from && *rest;) {
        const size_t n = strcspn(rest, "/");
        snprintf(word, sizeof word, "%.*s", (int)n, rest);
        from = cJSON_IsArray(from) ? cJSON_GetArrayItem(from, atoi(word))
                                   : cJSON_GetObjectItemCaseSensitive(from, word);
        rest += rest[n] ? n + 1 : n;
    }
    if (!from) print_error("no %s\n", path);
    assert_non_null(from);
    return from;
}

static void is_number(const cJSON *from, const char *path, double expected)
{
    assert_true(cJSON_IsNumber(at(from, path)));
    tt_close(at(from, path)->valuedouble, expected, 1e-12 * fabs(expected), path, __FILE__,
             __LINE__);
}

static void is_text(const cJSON *from, const char *path, const char *expected)
{
    assert_true(cJSON_IsString(at(from, path)));
    assert_string_equal(at(from, path)->valuestring, expected);
}

static void is_null(const cJSON *from, const char *path)
{
    assert_true(cJSON_IsNull(at(from, path)));
}

static void has_count(const cJSON *from, const char *path, int expected)
{
    assert_int_equal(cJSON_GetArraySize(at(from, path)), expected);
}

/* Keys in this order; others may stand between them. */
static void keys_are(const cJSON *object, const char *keys)
{
    const cJSON *child = object->child;
    size_t seen = 0;
    for (const char *rest = keys; *rest; rest += strspn(rest, " "), seen++) {
        const size_t n = strcspn(rest, " ");
        while (child && (strlen(child->string) != n || strncmp(child->string, rest, n) != 0))
            child = child->next;
        if (!child) print_error("not there, or not in its order: %.*s\n", (int)n, rest);
        assert_non_null(child);
        rest += n;
    }
    assert_true(seen > 0);
}

static void keys_of_the_contract(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    cJSON *r = result_of(&f);
    keys_are(r, "schema program input piece revision basis edition scale verdict "
                "decided_by_default governing mass "
                "centre_of_mass_m balance sections models actions checks not_checked "
                "not_applicable defaults remedies "
                "matters proof cautions");
    keys_are(at(r, "input"), "file sha256 set");
    keys_are(at(r, "governing"), "check where segment x combination model use margin");
    keys_are(at(r, "mass"), "total_kg low_kg high_kg limit_kg lumps_kg base_kg parts");
    keys_are(at(r, "mass/parts/0"), "segment bronze_kg armature_kg source estimated_kg");
    keys_are(at(r, "sections/0"), "segment x local_y local_z bronze armature bore_m");
    keys_are(at(r, "sections/0/bronze"), "area_m2 iy_m4 iz_m4 iyz_m4 j_m4");
    keys_are(at(r, "models/0"), "name cases combinations buckling modes");
    keys_are(at(r, "models/0/cases/0"), "name reactions displacements forces");
    keys_are(at(r, "models/0/cases/0/reactions/0"), "at force_N moment_Nm");
    keys_are(at(r, "models/0/cases/0/displacements/0"), "at move_m turn_rad");
    keys_are(at(r, "models/0/cases/0/forces/0"),
             "segment x axial_N shear_y_N shear_z_N torsion_Nm moment_y_Nm moment_z_Nm");
    keys_are(at(r, "models/0/modes/0"), "frequency_Hz mass_fraction shape");
    keys_are(at(r, "actions"), "wind earthquake people");
    keys_are(at(r, "checks/0"), "check where segment x combination model demand resistance unit "
                                "use margin holds assumes steps");
    keys_are(at(r, "checks/0/steps/0"), "symbol formula numbers value unit source read");
    keys_are(at(r, "not_checked/0"), "check where needed why give demand");
    keys_are(at(r, "not_applicable/0"), "check why");
    keys_are(at(r, "defaults/0"), "key value why");
    keys_are(at(r, "combination_list/0"), "name level sum source pruned_by");
    keys_are(at(r, "proof"), "equilibrium refinement energy mass_kg sturm pivots_negative");
    keys_are(at(r, "proof/sturm/0"), "of below above");
    cJSON_Delete(r);
    fixture_close(&f);
}

static void head_mass_and_balance(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    cJSON *r = result_of(&f);
    is_text(r, "schema", "tiptoe-check/1");
    is_text(r, "verdict", "not checked");
    is_null(r, "revision");
    is_null(r, "decided_by_default");
    is_number(r, "scale", 2);
    is_number(r, "governing/use", 0.83);
    is_number(r, "mass/total_kg", 100);
    is_number(r, "mass/low_kg", 90);
    is_number(r, "mass/high_kg", 120);
    is_null(r, "mass/limit_kg");
    is_number(r, "mass/parts/1/bronze_kg", 40);
    is_number(r, "centre_of_mass_m/1", -0.02);
    has_count(r, "balance/polygon_m", 3);
    has_count(r, "balance/polygon_m/1", 2);
    is_number(r, "balance/edge_distance_m", 0.03);
    has_count(r, "sections", F_CUTS);
    is_number(r, "sections/0/bronze/iyz_m4", 3e-8);
    has_count(r, "defaults", 1);
    is_text(r, "defaults/0/key", "site/damping");
    cJSON_Delete(r);
    f.a.verdict = TT_HOLDS;
    f.a.governing = TT_NONE;
    f.a.balance.applies = false;
    f.piece->limits.has_mass = true;
    f.piece->limits.mass.is = 95;
    r = result_of(&f);
    is_text(r, "verdict", "holds");
    is_null(r, "governing");
    has_count(r, "balance/polygon_m", 0);
    is_null(r, "balance/edge_distance_m");
    is_number(r, "mass/limit_kg", 95);
    cJSON_Delete(r);
    fixture_close(&f);
}

static void cases_loads_together_and_modes(void **state)
{
    (void)state;
    static const char *const names[F_CASES] = {"weight", "weight heavy", "weight light", "wind 90"};
    fixture f;
    fixture_open(&f);
    cJSON *r = result_of(&f);
    has_count(r, "models", 2);
    has_count(r, "models/0/cases", F_CASES);
    for (int i = 0; i < F_CASES; i++)
        assert_string_equal(at(cJSON_GetArrayItem(at(r, "models/1/cases"), i), "name")->valuestring,
                            names[i]);
    has_count(r, "models/0/cases/0/displacements", F_POINTS);
    has_count(r, "models/0/cases/0/forces", F_CUTS);
    is_number(r, "models/0/cases/3/displacements/2/move_m/0", 0.002);
    is_number(r, "models/1/cases/3/reactions/0/moment_Nm/1", -80);
    /* Nothing is solved on the moved frame here; the weight's row is always there. */
    has_count(r, "models/0/combinations", 0);
    has_count(r, "models/0/buckling", 1);
    is_text(r, "models/0/buckling/0/combination", "weight");
    is_text(r, "models/0/buckling/0/pattern", "nominal");
    assert_true(cJSON_IsNull(at(r, "models/0/buckling/0/factor")));
    is_number(r, "combination_list/1/sum/wind 90", 1.5); /* 1.0 and 0.5 of the same case */
    is_number(r, "models/0/modes/0/mass_fraction/0", 0.8 * 75 / 100); /* of the whole mass */
    is_number(r, "models/0/modes/0/shape/2/move_m/0", 1);
    has_count(r, "combination_list", 4);
    is_text(r, "combination_list/2/level", "service");
    is_text(r, "combination_list/0/source", "a standard, 1999, table 1");
    cJSON_Delete(r);
    fixture_close(&f);
}

static void checks_and_what_is_missing(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    f.finding[1].has_use = false;
    f.finding[1].holds = false;
    f.finding[1].why = "there is no strength";
    cJSON *r = result_of(&f);
    has_count(r, "checks", 3);
    is_text(r, "checks/0/segment", "foot-knee");
    is_number(r, "checks/0/x", 0);
    is_text(r, "checks/0/assumes/0", "it stands still");
    is_text(r, "checks/0/steps/0/read", "from memory");
    is_null(r, "checks/0/steps/1/formula");
    assert_true(cJSON_IsTrue(at(r, "checks/0/holds")));
    is_null(r, "checks/1/use");
    is_null(r, "checks/1/margin");
    is_null(r, "checks/1/segment");
    is_null(r, "checks/1/combination");
    is_text(r, "checks/1/why", "there is no strength");
    assert_true(cJSON_IsFalse(at(r, "checks/1/holds")));
    is_number(r, "checks/2/use", 0);
    is_null(r, "checks/2/margin"); /* nothing acts: no bound */
    is_null(r, "not_checked/0/demand");
    assert_true(cJSON_IsTrue(at(r, "not_checked/1/needed")));
    is_number(r, "not_checked/1/demand", 12);
    is_text(r, "not_checked/1/unit", "N.m");
    size_t n = 0;
    for (const char *const *caution = tt_cautions(); *caution; caution++, n++) {
        assert_string_equal(cJSON_GetArrayItem(at(r, "cautions"), (int)n)->valuestring, *caution);
    }
    assert_true(n >= 18);
    has_count(r, "cautions", (int)n);
    cJSON_Delete(r);
    fixture_close(&f);
}

static void a_number_that_is_none_stops_it(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    double *const spots[] = {
        &f.model.centre[TT_NOMINAL].x, &f.finding[0].use, &f.step[0].value,
        &f.forces[1][3][2].n,          &f.a.proof.energy, &f.mode[0].frequency};
    for (size_t i = 0; i < sizeof spots / sizeof *spots; i++) {
        for (int k = 0; k < 2; k++) {
            const double before = *spots[i];
            tt_text text = {0};
            *spots[i] = k ? NAN : INFINITY;
            assert_int_equal(tt_record_json(&f.a, &text), TT_E_NOT_FINITE);
            *spots[i] = before;
            tt_text_clear(&text);
        }
    }
    cJSON_Delete(result_of(&f));
    fixture_close(&f);
}

static void the_same_bytes_again(void **state)
{
    (void)state;
    fixture f;
    tt_text one = {0}, two = {0};
    fixture_open(&f);
    assert_int_equal(tt_record_json(&f.a, &one), TT_OK);
    assert_int_equal(tt_record_json(&f.a, &two), TT_OK);
    assert_string_equal(tt_text_of(&one), tt_text_of(&two));
    /* By this beginning the command line knows a file of its own. */
    assert_memory_equal(tt_text_of(&one), "{\"schema\": \"tiptoe-", 19);
    tt_text_clear(&one);
    tt_text_clear(&two);
    fixture_close(&f);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_fewest_digits_that_read_back),
                                       cmocka_unit_test(any_double_reads_back),
                                       cmocka_unit_test(the_locale_has_no_say),
                                       cmocka_unit_test(keys_of_the_contract),
                                       cmocka_unit_test(head_mass_and_balance),
                                       cmocka_unit_test(cases_loads_together_and_modes),
                                       cmocka_unit_test(checks_and_what_is_missing),
                                       cmocka_unit_test(a_number_that_is_none_stops_it),
                                       cmocka_unit_test(the_same_bytes_again)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
