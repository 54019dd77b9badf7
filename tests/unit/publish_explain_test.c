/* explain: everything that can be asked is explained, what it says of a key is what the key table
 * says, faults and cures of diagnostics are told and not told by the reader, and an unknown word
 * gets the nearest. */
#include "base/text.h"
#include "catalogue/catalogue.h"
#include "compose/explain.h"
#include "piecefile/keys.h"
#include "tiptoe/manual.h"
#include "assert_close.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int gather(void *user, const char *bytes, size_t n)
{
    tt_text_add(user, bytes, n);
    return 0;
}

/* What is said, every run of blanks as one, so that line breaks do not matter. */
static const char *explained(const char *word, tt_status expected, tt_text *out)
{
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    tt_text_clear(out);
    const tt_status status = tt_write_explain(word, diags, gather, out);
    if (status != expected) fail_msg("explain %s: status %d", word ? word : "", (int)status);
    if (status == TT_E_INPUT) {
        assert_int_equal(tt_diags_errors(diags), 1);
        assert_int_equal(tt_diags_at(diags, 0)->number, 1506);
        tt_text_put(out, tt_diags_at(diags, 0)->hint);
    }
    tt_diags_free(diags);
    size_t n = 0;
    for (size_t i = 0; i < out->n; i++) {
        const bool blank = out->at[i] == ' ' || out->at[i] == '\n';
        if (!blank || (n && out->at[n - 1] != ' ')) out->at[n++] = blank ? ' ' : out->at[i];
    }
    if (out->at) out->at[n] = '\0';
    return tt_text_of(out);
}

static void has(const char *word, const char *said, const tt_text *out)
{
    if (!strstr(tt_text_of(out), said))
        fail_msg("explain %s lacks `%s`:\n%s", word ? word : "", said, tt_text_of(out));
}

static void says(const char *word, const char *const *said)
{
    tt_text out = {0};
    explained(word, TT_OK, &out);
    for (; *said; said++) has(word, *said, &out);
    tt_text_clear(&out);
}

#define SAYS(word, ...) says(word, (const char *const[]){__VA_ARGS__, NULL})

static void every_word_is_explained(void **state)
{
    (void)state;
    tt_words all = {0};
    tt_text out = {0};
    assert_true(tt_explain_words(&all));
    assert_true(all.n > 100);
    for (size_t i = 0; i < all.n; i++) {
        explained(all.at[i], TT_OK, &out);
        if (out.n < 80) fail_msg("little is said of %s", all.at[i]);
    }
    tt_list_clear(&all);
    tt_text_clear(&out);
}

static void every_number_is_explained(void **state)
{
    (void)state;
    static const unsigned numbers[] = {
#define TT_NUMBER(number, name, title, cure) number,
#include "base/numbers.def"
#undef TT_NUMBER
    };
    tt_text out = {0};
    assert_true(sizeof numbers / sizeof *numbers > 40);
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        char word[16];
        snprintf(word, sizeof word, "TT%u", numbers[i]);
        explained(word, TT_OK, &out);
        has(word, "a diagnostic", &out);
    }
    SAYS("tt1101", "TT1101, a diagnostic: a quantity without its unit", "wind: {basic_speed: 24,");
    explained("TT9999", TT_E_INPUT, &out);
    explained("11012", TT_E_INPUT, &out);
    tt_text_clear(&out);
}

static void a_key_says_what_its_row_says(void **state)
{
    (void)state;
    SAYS("bronze/wall", "`bronze/wall`", "length, may be bare; spread", "from 0.01 mm to 200 m",
         "0.8 and 1.25 of it", "leaves it as written", "`wall: 5 mm`");
    SAYS("site/wind/air", "density, with its unit", "from 0.5 kg/m3 to 2 kg/m3", "`1.25 kg/m3`",
         "recommended value", "basis: eu only");
    SAYS("kd", "basis: us only", "`1.0`");
    SAYS("casting_quality", "needs one above 0.8", "from 0.01 to 1");
    SAYS("limbs/*/wind/drag", "needs one always");
    SAYS("skin", "multiplies it twice");
    SAYS("sole", "three corners or more", "multiplies it;");
    SAYS("held", "`fixed`, `pinned` or `rests`", "it must be there");
    SAYS("risk", "whole number, 1 to 4", "`2`, ordinary consequences");
    SAYS("outline", "keys of an outline: `round`, `oval`");
    SAYS("handling", "kept as it is written");
}

/* A path, its end, any name for a star; each row of the table once, with all its places. */
static void keys_are_found_by_the_end_of_their_path(void **state)
{
    (void)state;
    tt_text out = {0};
    SAYS("wall", "`bronze/wall`, `limbs/*/wall`, `segments/*/wall`");
    explained("limbs/left leg/wall", TT_OK, &out);
    has("limbs/left leg/wall", "`limbs/*/wall`", &out);
    assert_null(strstr(out.at, "`bronze/wall`"));
    SAYS("wind/terrain", "`site/wind/terrain`");
    SAYS("mass", "`lumps/*/mass`", "`limits/mass`", "mass, a check: weight");
    SAYS("wind", "wind, a word of the results", "`site/wind`", "`limbs/*/wind`, `segments/*/wind`");
    explained("bronze/terrain", TT_E_INPUT, &out);
    has("bronze/terrain", "did you mean `terrain`?", &out);
    tt_text_clear(&out);
}

static void words_and_checks_are_explained(void **state)
{
    (void)state;
    SAYS("margin", "less one");
    SAYS("armature alone", "the armature takes everything");
    SAYS("strength.bronze", "von Mises", "Source: assumption of this program (common practice)");
    SAYS("strength of the armature", "strength.armature, a check");
    SAYS("stability", "no check of this version computes it");
}

/* What newcomers asked for and did not find. */
static void words_that_were_asked_for_are_known(void **state)
{
    (void)state;
    static const char *const asked[] = {
        "fixed",          "pinned",       "aslant",    "EQU",     "6.10",
        "6.10 sup",       "heavy weight", "heavy",     "light",   "centre of mass",
        "wind 270",       "weigh",        "data",      "--data",  "metal",
        "figure",         "tube",         "size",      "quality", "crane",
        "lift",           "local",        "axes",      "asd",     "lrfd",
        "armature alone", "together",     "stainless", "rack",    "YIELD"};
    tt_text out = {0};
    for (size_t i = 0; i < sizeof asked / sizeof *asked; i++) {
        explained(asked[i], TT_OK, &out);
        if (out.n < 150) fail_msg("little is said of %s: %s", asked[i], tt_text_of(&out));
    }
    explained("wind east", TT_E_INPUT, &out);
    tt_text_clear(&out);
    SAYS("held", "fixed (neither moves nor turns", "pinned (does not move, turns freely)");
    SAYS("terrain", "0 open sea", "III villages", "IV towns");
    SAYS("exposure", "B towns", "C open country", "D flat open land");
    SAYS("basic_speed", "national annex", "local building office");
    SAYS("strength", "strength.armature", "strength.bronze");
    SAYS("skin", "surface and extra are not added");
    SAYS("seams/*/between", "beside `at`, which is needed too", "two names in brackets");
    SAYS("margin", "from half use on");
    SAYS("inspection", "from half use on");
}

static void what_is_not_in_this_version_is_no_verb(void **state)
{
    (void)state;
    tt_text out = {0};
    SAYS("rack", "choosing the armature is not in this version: kept, not used");
    SAYS("armature/form", "choosing the armature is not in this version");
    SAYS("size", "not in this version");
    static const char *const asked[] = {"rack", "armature", "form"};
    for (size_t i = 0; i < sizeof asked / sizeof *asked; i++) {
        explained(asked[i], TT_OK, &out);
        has(asked[i], "choosing the armature is not in this version", &out);
        assert_null(strstr(out.at, "left to `size`"));
    }
    tt_text_clear(&out);
}

/* The maquette's own size is no full size. */
static void the_sizes_that_make_the_scale_do_not_follow_it(void **state)
{
    (void)state;
    static const char *const sizes[] = {"scale/measured", "scale/wanted"};
    tt_text out = {0};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        explained(sizes[i], TT_OK, &out);
        has(sizes[i], "`wanted` over `measured`", &out);
        assert_null(strstr(out.at, "leaves it as written"));
    }
    tt_text_clear(&out);
}

/* The lines of what `explain data` shows that stand in by four: its example. */
static void example_of(const char *said, tt_text *to)
{
    for (const char *at = said; at && *at; at = strchr(at, '\n') ? strchr(at, '\n') + 1 : NULL)
        if (strncmp(at, "    ", 4) == 0)
            tt_text_format(to, "%.*s\n", (int)strcspn(at + 4, "\n"), at + 4);
}

static void the_example_of_a_data_table_is_read(void **state)
{
    (void)state;
    tt_text said = {0}, table = {0};
    tt_data *data = NULL;
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    assert_int_equal(tt_write_explain("data", diags, gather, &said), TT_OK);
    example_of(tt_text_of(&said), &table);
    if (tt_data_read("own.csv", tt_text_of(&table), table.n, diags, &data) != TT_OK)
        fail_msg("%s", tt_diags_at(diags, 0)->text);
    assert_int_equal(tt_diags_count(diags), 0);
    assert_int_equal(data->metals.n, 1);
    assert_int_equal(data->stock.n, 2);
    assert_near(data->metals.at[0].fact[TT_P_YIELD].value, 131e6, 1.0);
    assert_near(data->stock.at[1].wall, 0.003, 1e-9);
    tt_data_free(data);
    tt_diags_free(diags);
    tt_text_clear(&said);
    tt_text_clear(&table);
}

static void kinds_and_properties_that_it_tells_are_all(void **state)
{
    (void)state;
    static const char *const properties[] = {
#define TT_PROPERTY(id, words, unit, least, most) #id " " words " ",
#include "catalogue/properties.def"
#undef TT_PROPERTY
        NULL};
    says("data", properties);
    SAYS("data", "`metal,name,title,what the yield is,cast | steel,stainless: yes | no`",
         "`figure,property,value,unit,document,edition,place,mark`",
         "`rod,name,series,diameter,pitch,unit,stress area,its unit,document,edition,place,mark`",
         "`read`", "`from memory`", "`common practice`");
}

static void an_unknown_word_gets_the_nearest(void **state)
{
    (void)state;
    tt_text out = {0};
    explained("marign", TT_E_INPUT, &out);
    has("marign", "did you mean `margin`?", &out);
    explained("walll", TT_E_INPUT, &out);
    has("walll", "did you mean `wall`?", &out);
    explained("zebra crossing", TT_E_INPUT, &out);
    has("zebra crossing", "lists what can be asked", &out);
    explained("", TT_E_INPUT, &out);
    tt_text_clear(&out);
}

static void alone_it_lists_all(void **state)
{
    (void)state;
    says(NULL, (const char *const[]){"falls short, not checked", "strength.armature", "TT1101",
                                     "- wind: `basic_speed`, `terrain`", NULL});
}

/* ---- faults and cures ---- */

static const char *const lines[] = {"piece: A Leg",
                                    "units: mm",
                                    "bronze: {alloy: C87300, wall: 5}",
                                    "armature: {grade: \"1.4462\"}",
                                    "limbs: {leg: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]}",
                                    "stands: [{at: toe, held: fixed}]"};

/* The piece with `line` in the place of the line with its key, or behind it all. */
static void make(const char *line, tt_text *out)
{
    const size_t key = strcspn(line, ":") + 1;
    bool placed = false;
    tt_text_clear(out);
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        const bool here = strncmp(lines[i], line, key) == 0;
        placed |= here;
        tt_text_format(out, "%s\n", here ? line : lines[i]);
    }
    if (!placed) tt_text_format(out, "%s\n", line);
}

/* Reads and judges it; is the number among what is told, and is an error? */
static bool told(const char *line, unsigned number, size_t *errors)
{
    tt_text text = {0};
    tt_piece *piece = NULL;
    tt_assessment *assessment = NULL;
    tt_diags *diags = tt_diags_new(0);
    assert_non_null(diags);
    make(line, &text);
    if (tt_piece_read("piece.yaml", text.at, text.n, NULL, diags, &piece) == TT_OK)
        tt_assess(piece, diags, &assessment);
    bool found = false;
    for (size_t i = 0; i < tt_diags_count(diags); i++)
        found |= tt_diags_at(diags, i)->number == number;
    *errors = tt_diags_errors(diags);
    tt_assessment_free(assessment);
    tt_piece_free(piece);
    tt_diags_free(diags);
    tt_text_clear(&text);
    return found;
}

static void faults_are_told_and_cures_are_not(void **state)
{
    (void)state;
    static const struct {
        unsigned number;
        const char *fault, *cure;
    } faults[] = {
#define TT_FAULT(number, fault, cure) {number, fault, cure},
#include "compose/faults.def"
#undef TT_FAULT
    };
    assert_true(sizeof faults / sizeof *faults >= 20);
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
        size_t errors;
        if (!told(faults[i].fault, faults[i].number, &errors))
            fail_msg("TT%u is not told of %s", faults[i].number, faults[i].fault);
        told(faults[i].cure, faults[i].number, &errors);
        if (errors) fail_msg("the cure of TT%u has an error: %s", faults[i].number, faults[i].cure);
    }
}

/* ---- the key table, where it says a thing twice or must say it ---- */

static void units_of_length_are_those_of_the_unit_table(void **state)
{
    (void)state;
    static const char *const units[] = {
#define TT_UNIT(symbol, m, kg, s, k, rad, factor, source)                                          \
    (m) == 1 && (kg) == 0 && (s) == 0 && (k) == 0 && (rad) == 0 ? (symbol) : NULL,
#include "quantity/units.def"
#undef TT_UNIT
    };
    const tt_key *key = tt_key_named(&tt_root_map, "units");
    size_t n = 0;
    for (size_t i = 0; i < sizeof units / sizeof *units; i++)
        if (units[i]) assert_string_equal(key->words[n++], units[i]);
    assert_true(n > 0);
    assert_null(key->words[n]);
}

static void every_key_says_how_it_is_written(void **state)
{
    (void)state;
    tt_maps all = {.n = 0};
    size_t n = 0;
    assert_true(tt_maps_gather(&all, &tt_root_map));
    for (size_t m = 0; m < all.n; m++)
        for (size_t k = 0; k < m; k++)
            assert_string_not_equal(all.map[m]->title, all.map[k]->title);
    for (size_t m = 0; m < all.n; m++)
        for (const tt_map *part = all.map[m]; part; part = part->also)
            for (size_t i = 0; i < part->n; i++, n++) {
                const tt_key *key = &part->key[i];
                const unsigned forms = tt_key_forms(key);
                if (!key->doc) fail_msg("%s has no doc", key->name);
                if (!key->example) fail_msg("%s has no example", key->name);
                if (forms & TT_FORM_WORD && !tt_key_words(key))
                    fail_msg("%s has no words", key->name);
                if (forms & TT_FORM_MAP && !key->map) fail_msg("%s has no map", key->name);
                if (forms & TT_FORM_COUNT && !(key->least < key->most))
                    fail_msg("%s counts without bounds", key->name);
            }
    assert_true(n > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_word_is_explained),
        cmocka_unit_test(every_number_is_explained),
        cmocka_unit_test(a_key_says_what_its_row_says),
        cmocka_unit_test(keys_are_found_by_the_end_of_their_path),
        cmocka_unit_test(words_and_checks_are_explained),
        cmocka_unit_test(words_that_were_asked_for_are_known),
        cmocka_unit_test(what_is_not_in_this_version_is_no_verb),
        cmocka_unit_test(the_sizes_that_make_the_scale_do_not_follow_it),
        cmocka_unit_test(the_example_of_a_data_table_is_read),
        cmocka_unit_test(kinds_and_properties_that_it_tells_are_all),
        cmocka_unit_test(an_unknown_word_gets_the_nearest),
        cmocka_unit_test(alone_it_lists_all),
        cmocka_unit_test(faults_are_told_and_cures_are_not),
        cmocka_unit_test(units_of_length_are_those_of_the_unit_table),
        cmocka_unit_test(every_key_says_how_it_is_written),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
