/* Every file of tests/bad is refused with exactly the errors, number and line, that its first line
 * states: "# expect: TT1101 line 7, TT1203 line 9". */
#include "pieces.h"

#include <dirent.h>

enum { MOST = 60 };
typedef struct {
    unsigned number, line;
} error;

static int by_line(const void *a, const void *b)
{
    const error *x = a, *y = b;
    if (x->line != y->line) return x->line < y->line ? -1 : 1;
    return x->number < y->number ? -1 : x->number > y->number;
}

static size_t expected(const char *name, const char *text, error out[MOST])
{
    size_t n = 0;
    const char *end = strchr(text, '\n'), *at = text;
    if (strncmp(text, "# expect: ", 10) != 0 || !end) fail_msg("%s states no error", name);
    while ((at = strstr(at, "TT")) != NULL && at < end && n < MOST) {
        if (sscanf(at, "TT%u line %u", &out[n].number, &out[n].line) != 2)
            fail_msg("%s: TT1234 line 5 is how an error is stated", name);
        n++;
        at += 2;
    }
    if (n == 0) fail_msg("%s states no error", name);
    qsort(out, n, sizeof *out, by_line);
    return n;
}

static size_t found(const tt_diags *diags, error out[MOST])
{
    size_t n = 0;
    for (size_t i = 0; i < tt_diags_count(diags) && n < MOST; i++) {
        const tt_diag *diag = tt_diags_at(diags, i);
        if (diag->severity != TT_ERROR) continue;
        out[n++] = (error){diag->number, diag->place.line};
        assert_true(diag->place.column > 0 && diag->place.width > 0);
        const bool yaml = diag->number < 1100 && diag->number != 1001 && diag->number != 1005;
        if (!yaml) assert_non_null(diag->hint);
        assert_string_equal(diag->file, "bad.yaml");
        assert_non_null(diag->shown);
    }
    qsort(out, n, sizeof *out, by_line);
    return n;
}

static void check(const char *name)
{
    char path[300];
    error want[MOST], got[MOST];
    snprintf(path, sizeof path, "tests/bad/%.250s", name);
    char *text = tt_test_text(path);
    const size_t wanted = expected(name, text, want);
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = (tt_piece *)text; /* must not stay */
    const tt_status status = tt_piece_read("bad.yaml", text, strlen(text), NULL, diags, &piece);
    const size_t n = found(diags, got);
    if (n != wanted || memcmp(want, got, n * sizeof *got) != 0) {
        tt_test_print(diags);
        fail_msg("%s: the errors are not those that it states", name);
    }
    assert_int_equal(status, TT_E_INPUT);
    assert_null(piece);
    tt_diags_free(diags);
    free(text);
}

static void every_bad_file(void **state)
{
    (void)state;
    DIR *folder = opendir(TT_ROOT "/tests/bad");
    assert_non_null(folder);
    size_t files = 0;
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        const char *dot = strrchr(entry->d_name, '.');
        if (!dot || strcmp(dot, ".yaml") != 0) continue;
        check(entry->d_name);
        files++;
    }
    closedir(folder);
    assert_true(files >= 25);
}

static tt_diag first_error(const char *text, tt_diags *diags)
{
    tt_piece *piece;
    assert_int_equal(tt_piece_read("f.yaml", text, strlen(text), NULL, diags, &piece), TT_E_INPUT);
    assert_true(tt_diags_errors(diags) > 0);
    return *tt_diags_at(diags, 0);
}

/* The caret stands under the guilty unit, the hint names the nearest key, the place of a name. */
static void carets_and_hints(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        unsigned line, column, width;
        const char *hint;
    } cases[] = {
        {"piece: P\nbronze: {wall: 60 furlong}\n", 2, 19, 7, "mm"},
        {"piece: P\nbronze: {wal: 6 mm}\n", 2, 10, 3, "did you mean `wall`?"},
        {"piece: P\nunits: mm\nlimbs: {leg: [[toe, 0, 0, 0, 90], [hip, 0, 0, 600, 90]]}\n"
         "stands: [{at: tow, held: fixed}]\n",
         4, 15, 3, "did you mean `toe`?"},
        {"piece: P\nstands: [{at: tow, held: pined}]\n", 2, 26, 5, "it reads: fixed, pinned"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        tt_diags *diags = tt_diags_new(0);
        first_error(cases[i].text, diags);
        bool seen = false;
        for (size_t k = 0; k < tt_diags_count(diags); k++) {
            const tt_diag *d = tt_diags_at(diags, k);
            seen |= d->place.line == cases[i].line && d->place.column == cases[i].column &&
                    d->place.width == cases[i].width && strstr(d->hint, cases[i].hint);
        }
        if (!seen) tt_test_print(diags);
        assert_true(seen);
        tt_diags_free(diags);
    }
}

/* The file of tests/bad has an error whose words and hint hold these, and not those. */
static void hints_of_files(void **state)
{
    (void)state;
    static const struct {
        const char *file, *text, *hint, *not ;
    } cases[] = {
        {"units_missing", "3 more lengths have none",
         "write 5 mm, or say `units: mm` once at the top of the file", " m,"},
        {"scale_with_comma", "`1,800 mm` is not a number", "commas are not read", "1234"},
        {"scale_with_decimal_comma", "`1,8 m` is not a number", "commas are not read", "1234"},
        {"mass_with_comma", "`3,5 kg` is not a number", "as in `mass: 140 kg`", "1234"},
        {"scale_wanted_in_wrong_unit", "wanted 1.8 mm is smaller than measured 400 mm",
         "did you mean 1.8 m?", "maquette"},
        {"scale_below_one", "wanted 600 mm is smaller than measured 2.1 m",
         "measured is the size of the maquette", "did you mean"},
        {"speed_in_ms", "24 ms", "write m/s; as in `basic_speed: 24 m/s`", "mm"},
        {"sway_with_unit", "15 mm", "a ratio is due, for example 1/100", "0.8"},
        {"grade_missing", "grade", "at the top of the file: armature: {grade: \"1.4462\"}", "add,"},
        {"grade_in_limb", "`grade` is not a key",
         "all members have one grade: it goes into `armature`", "tube"},
        {"grade_unknown", "not a steel", "`tiptoe stock steels` lists them", "alloys"},
        {"grade_of_other_form", "S355J2H", "did you mean `S355`? `tiptoe stock steels`", "S235"},
        {"alloy_unknown", "not an alloy", "`tiptoe stock alloys` lists them", "steels"},
        {"bronze_misspelt", "bronz", "`bronze`", "wall"},
        {"place_by_a_part", "foot", "did you mean `ball of foot`?", "hip"},
        {"girth_negative", "`girth` is positive; `-44` is not", "[toe, 0, 0, 0, 46 mm]", "0.01"},
        {"wide_nil", "`wide` is positive; `0` is not", "46 mm, 40 mm", "0.01"},
        {"wide_nil", "`deep` is positive; `-40` is not", "46 mm, 40 mm", "0.01"},
        {"wall_nil", "`wall` is positive; `0` is not", "wall: 5 mm", "0.01"},
        {"empty", "empty", "README", "second"},
        {"second_document", "second document", "a file of its own", "README"},
        {"alloy_by_its_title", "`silicon bronze` is not", "did you mean `C87200`, `C87300` or",
         "name"},
        {"grade_by_its_title", "`S31603` is not", "did you mean `316L`?", "name one"},
        {"basis_in_capitals", "`US`", "write us; it reads: eu, us", "terrain"},
        {"units_inch", "`inch`", "write in", "mm"},
        {"scale_as_ratio", "`1:3.6`", "write 3.6", "kN"},
        {"row_without_girth", "`ankle` has no girth", "[ankle, -8, 0, 50, GIRTH]", "outline"},
        {"row_without_name", "no name", "begins with a name: [NAME, -8, 0, 50, 138]", "girth"},
        {"row_with_a_comma_too_many", "1 to 6", "write -7.5", "10.5"},
        {"segment_the_other_way_round", "hip-toe", "did you mean `toe-hip`?", "hip-toe"},
        {"place_with_letters_swapped", "`teo`", "did you mean `toe`?", "rows"},
        {"held_welded", "`welded`", "write fixed; it reads: fixed, pinned, rests", "yes"},
        {"flag_true", "`false`", "write no; it reads", "true"},
        {"weight_at_the_top", "`weight`", "limits: {mass: 60 kg}", "height"},
        {"wall_at_the_top", "`wall`", "it goes into `bronze`: {wall: 5 mm}", "mean"},
        {"pipe_by_its_outside", "1.66 sch 80",
         "1.66 in is the outside of 1 1/4: write 1 1/4 sch 80", "mean"},
        {"tube_of_a_gauge", "`11 ga`", "gauges are not read: write the wall", "N.m"},
        {"tube_with_a_remark", "# begins a remark", "close the bracket", "comma"},
        {"grade_in_a_member", "`grade`", "all members have one grade", "mean"},
        {"through_a_limb_further_down", "`toe` is no place of this limb",
         "its places: palm, wrist, hip", "move"},
        {"through_another_limb", "`head` is no place of this limb", "write both as one limb",
         "move"},
        {"efficiency_as_per_cent", "efficiency", "did you mean 40 %?", "0.4"},
        {"share_as_a_number", "not_in_wax", "did you mean 5 %?", "3."},
        {"part_hangs_on_nothing", "`tail` hangs on nothing",
         "begin `bird` with a place that exists, such as - [hip], or say joins: hip", "rigid"},
        {"row_of_seven", "1 to 6 entries", "[name, x, y, z, girth]", "armature"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char path[200];
        snprintf(path, sizeof path, "tests/bad/%.100s.yaml", cases[i].file);
        char *text = tt_test_text(path);
        tt_diags *diags = tt_diags_new(0);
        first_error(text, diags);
        bool seen = false;
        for (size_t k = 0; k < tt_diags_count(diags); k++) {
            const tt_diag *d = tt_diags_at(diags, k);
            seen |= strstr(d->text, cases[i].text) && strstr(d->hint, cases[i].hint) &&
                    (!cases[i].not [0] || !strstr(d->hint, cases[i].not ));
            assert_int_equal(d->severity, TT_ERROR); /* nothing is warned of at a wrong scale */
        }
        if (!seen) tt_test_print(diags);
        if (!seen) fail_msg("%s: no such words", cases[i].file);
        tt_diags_free(diags);
        free(text);
    }
}

/* Under bare words no hint shows a value that its own key refuses; a number without a unit gets the
 * one of the key's example, when that makes an acceptable value. */
static void examples_of_the_key(void **state)
{
    (void)state;
    static const struct {
        const char *text, *hint;
    } cases[] = {
        {"bronze: {surface: x}", "a number is due; as in `surface: 1.15`"},
        {"site: {wind: {air: x}}", "a density is due; as in `air: 1.25 kg/m3`"},
        {"site: {wind: {air: 1.2}}", "write 1.2 kg/m3; as in `air: 1.25 kg/m3`"},
        {"materials: {bar: {young: 200}}", "write 200 GPa; as in `young: 200 GPa`"},
        {"materials: {bar: {young: 200000}}", "write 200000 MPa; as in `young: 200 GPa`"},
        {"materials: {bar: {young: 2}}", "write 2 GPa"},
        {"materials: {bar: {young: 5e13}}", "write its unit, as in `young: 200 GPa`"},
        {"materials: {bar: {yield: 5 kg}}", "as in `yield: 450 MPa`"},
        {"loads: [{case: a, force: [0, 3, 0]}]", "write 3 kN or 3 N, whichever is meant; as in"},
        {"units: in\nlumps: [{name: a, mass: 900}]", "write 900 lb (or 900 kg, if that is meant)"},
        {"basis: us\nlumps: [{name: a, mass: 900}]", "write 900 lb (or 900 kg, if that is meant)"},
        {"units: in\nloads: [{case: a, force: [100, 0, 0]}]", "write 100 lbf (or 100 kN,"},
        {"units: in\nlumps: [{name: a, skin: 300}]", "write 300 in2 or 300 ft2, whichever"},
        {"units: mm\nlumps: [{name: a, skin: 300}]",
         "write 300 m2, 300 cm2 or 300 mm2, whichever is meant"},
        {"basis: us\nsite: {wind: {basic_speed: 115}}",
         "write 115 mph (or 115 km/h, if that is meant); as in"},
        {"site: {wind: {basic_speed: 24}}", "write 24 m/s or 24 km/h, whichever is meant"},
        {"basis: us\nheight: 65", "write 65 in (or 65 mm, if that is meant), or say `units: in`"},
        {"units: in\nbronze: {wall: x}", "a length is due; as in `wall: 0.20 in`"},
        {"units: in\narmature: {loss: -1}", "for example: loss: 0.039 in"},
        {"seams: [{at: a, bronze: partial, efficiency: 40}]", "did you mean 40 %?"},
        {"scale: {measured: 400, wanted: 1800 mm}", "write 400 mm, or say `units: mm`"},
        {"scale: {measured: 400 mm, wanted: 1800}", "write 1800 mm, or say `units: mm`"},
        {"scale: {measured: 400 mm, wanted: 1.8}", "write 1.8 m, or say `units: mm`"},
        {"units: {report: metric}\nheight: 1650", "write 1650 mm, or say `length: mm` in `units`"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[200];
        snprintf(text, sizeof text, "%s\n", cases[i].text);
        tt_diags *diags = tt_diags_new(0);
        first_error(text, diags);
        bool seen = false;
        for (size_t k = 0; k < tt_diags_count(diags); k++)
            seen |= strstr(tt_diags_at(diags, k)->hint, cases[i].hint) != NULL;
        if (!seen) tt_test_print(diags);
        if (!seen) fail_msg("%s: no such hint", cases[i].text);
        tt_diags_free(diags);
    }
}

static void warns(const char *text, unsigned number, unsigned line)
{
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("f.yaml", text, strlen(text), NULL, diags, &piece), TT_OK);
    if (number) {
        assert_int_equal(tt_diags_count(diags), 1);
        assert_int_equal(tt_diags_at(diags, 0)->severity, TT_WARNING);
        assert_int_equal(tt_diags_at(diags, 0)->number, number);
        assert_int_equal(tt_diags_at(diags, 0)->place.line, line);
    } else {
        assert_int_equal(tt_diags_count(diags), 0);
    }
    tt_piece_free(piece);
    tt_diags_free(diags);
}

#define LEG(rows, rest)                                                                            \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\nlimbs:\n  leg:\n" rows                 \
    "stands: [{at: toe, held: fixed}]\n" rest
#define PLAIN "    - [toe, 0, 0, 0, 150]\n    - [hip, 0, 0, 620, 200]\n"

/* atan(300 / 620) = 25.8 degrees from +z lies outside the band of 15 to 25, atan(250 / 620) = 22.0
 * inside; +x is nowhere near. */
static void warnings_of_axes_and_wind(void **state)
{
    (void)state;
    warns(LEG(PLAIN, ""), 0, 0);
    warns(LEG("    - [toe, 0, 0, 0, 9, 9]\n    - [hip, 0, 0, 620, 9, 9]\n", ""), 1406, 7);
    warns(LEG("    - [toe, 0, 0, 0, 60, 40]\n    - [hip, 0, 0, 620, 60, 40]\n",
              "faces: [1, 0, 2.5]\n"),
          1409, 7);
    warns(
        LEG("    - [toe, 0, 0, 0, 60, 40]\n    - [hip, 0, 0, 620, 60, 40]\n", "faces: [1, 0, 2]\n"),
        0, 0);
    warns(LEG("    - [toe, 0, 0, 0, 60, 60]\n    - [hip, 0, 0, 620, 60, 60]\n",
              "faces: [1, 0, 2.5]\n"),
          0, 0);
    warns(LEG(PLAIN, "site:\n  wind: {basic_speed: 40 m/s, terrain: 0}\n"), 0, 0);
    warns(LEG(PLAIN, "site:\n  wind: {basic_speed: 41 m/s, terrain: 0, speed_is: mean}\n"), 0, 0);
    warns(LEG(PLAIN, "basis: us\nsite:\n  wind: {basic_speed: 85 mph, exposure: B}\n"), 0, 0);
    warns(LEG(PLAIN,
              "basis: us\nsite:\n  wind: {basic_speed: 70 mph, exposure: B, speed_is: service}\n"),
          0, 0);
}

/* The table holds 17-4PH as bar only, A36 as bar or plate, 1.4404 as tube, bar and plate. */
#define INSIDE(grade, member)                                                                      \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\narmature: {grade: " grade "}\n"        \
    "limbs:\n  leg:\n    armature: " member "\n    rows:\n" PLAIN                                  \
    "stands: [{at: toe, held: fixed}]\nsite: {indoors: yes}\n"
static void warnings_of_grades(void **state)
{
    (void)state;
    warns(INSIDE("17-4PH H1150", "{bar: 20}"), 0, 0);
    warns(INSIDE("17-4PH H1150", "{tube: [26.9, 3.2]}"), 1470, 4);
    warns(INSIDE("17-4PH H1150", "{box: [20, 20, 2]}"), 1470, 4);
    warns(INSIDE("A36", "{flat: [20, 5]}"), 0, 0);
    warns(INSIDE("A36", "{tube: [26.9, 3.2]}"), 1470, 4);
    warns(INSIDE("\"1.4404\"", "{box: [20, 20, 2]}"), 0, 0);
}

#define WITH(bronze, rows, rest)                                                                   \
    "units: mm\n" bronze "\nlimbs:\n  leg:\n" rows "stands: [{at: toe, held: fixed}]\n" rest
#define FIVE "piece: P\nbronze: {alloy: C87300, wall: 5}"

/* What can be and hardly ever is: told once, where it stands; and beside each what is let be. */
static void warnings_of_doubt(void **state)
{
    (void)state;
    warns(WITH("piece: P\nbronze: {alloy: C87300, wall: 0.5}", PLAIN, ""), 1109, 3);
    warns(WITH("piece: P\nbronze: {alloy: C87300, wall: 2}", PLAIN, ""), 0, 0);
    warns(WITH("piece: P\nbronze: {alloy: C87300, wall: 5, extra: 2}", PLAIN, ""), 1109, 3);
    warns(WITH("piece: P\nbronze: {alloy: C87300, wall: 5, extra: 200 %}", PLAIN, ""), 0, 0);
    warns(WITH("piece: P\nbronze: {alloy: C87300, wall: 5, extra: 0.2}", PLAIN, ""), 0, 0);
    warns(WITH(FIVE,
               "    - [toe, 0, 0, 0, 150]\n    - [ankle, 0, 0, 60, 15]\n"
               "    - [hip, 0, 0, 620, 200]\n",
               "segments:\n"
               "  - {name: toe-ankle, wall: 2}\n  - {name: ankle-hip, wall: 2}\n"),
          1109, 7);
    warns(WITH(FIVE,
               "    - [toe, 0, 0, 0, 15]\n    - [ankle, 0, 0, 60, 150]\n"
               "    - [hip, 0, 0, 620, 200]\n",
               "segments: [{name: toe-ankle, wall: 2}]\n"),
          0, 0);
    warns(WITH("piece: Dancer #3\nbronze: {alloy: C87300, wall: 5}", PLAIN, ""), 1111, 2);
    warns(WITH("piece: \"Dancer #3\"\nbronze: {alloy: C87300, wall: 5}", PLAIN, ""), 0, 0);
    warns(WITH("piece: Dancer #the third\nbronze: {alloy: C87300, wall: 5}", PLAIN, ""), 0, 0);
    warns(WITH("piece: \xE2\x80\x9C"
               "Dancer\xE2\x80\x9D\nbronze: {alloy: C87300, wall: 5}",
               PLAIN, ""),
          1110, 2);
    warns(WITH("piece: Heron\xE2\x80\x99s Leg\nbronze: {alloy: C87300, wall: 5}", PLAIN, ""), 0, 0);
    warns(WITH(FIVE, PLAIN, "scale: {measured: 62, wanted: 2000}\n"), 1408, 9);
    warns(WITH(FIVE, PLAIN, "scale: {measured: 600, wanted: 2000}\n"), 0, 0);
    warns(WITH(FIVE, PLAIN, "basis: us\nsite:\n  wind: {basic_speed: 230 mph, exposure: B}\n"),
          1435, 11);
    warns(WITH(FIVE, PLAIN, "basis: us\nsite:\n  wind: {basic_speed: 195 mph, exposure: B}\n"), 0,
          0);
}

/* The bronze at large fills two segments: told once, with how many more. */
static void warnings_of_walls(void **state)
{
    (void)state;
    warns(WITH("piece: P\nbronze: {alloy: C87300, wall: 30}",
               "    - [toe, 0, 0, 0, 50]\n    - [ankle, 0, 0, 60, 50]\n"
               "    - [hip, 0, 0, 620, 50]\n",
               ""),
          1406, 7);
}

#define OWN(use, density, young, yield)                                                            \
    "piece: P\nunits: mm\nmaterials:\n  own:\n    density: " density "\n    young: " young         \
    "\n    poisson: 0.3\n    yield: " yield "\n    ultimate: 600 MPa\n" use "\n"
#define AS_BRONZE                                                                                  \
    "bronze: {alloy: own, wall: 5}\nlimbs:\n  leg:\n" PLAIN "stands: [{at: toe, held: fixed}]"
#define AS_STEEL                                                                                   \
    "bronze: {alloy: C87300, wall: 5}\narmature: {grade: own, loss: 1}\nlimbs:\n  leg:\n"          \
    "    rows: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]\n    armature: {bar: 20}\n"            \
    "stands: [{at: toe, held: fixed}]"

static void warnings_of_metals(void **state)
{
    (void)state;
    warns(OWN(AS_BRONZE, "8300 kg/m3", "103 GPa", "120 MPa"), 0, 0);
    warns(OWN(AS_BRONZE, "836 kg/m3", "103 GPa", "120 MPa"), 1109, 5);
    warns(OWN(AS_BRONZE, "8300 kg/m3", "200 GPa", "120 MPa"), 1109, 6);
    warns(OWN(AS_BRONZE, "8300 kg/m3", "103 GPa", "12 MPa"), 1109, 8);
    warns(OWN(AS_STEEL, "7800 kg/m3", "200 GPa", "350 MPa"), 0, 0);
    warns(OWN(AS_STEEL, "9000 kg/m3", "200 GPa", "350 MPa"), 1109, 5);
    warns(OWN(AS_STEEL, "7800 kg/m3", "29 GPa", "350 MPa"), 1109, 6);
}

#define TUBE(size)                                                                                 \
    "piece: P\nunits: in\nbronze: {alloy: C87300, wall: 0.2}\narmature: {grade: 2205}\nlimbs:\n"   \
    "  leg:\n    rows: [[toe, 0, 0, 0, 9], [hip, 0, 0, 30, 9]]\n    armature: {tube: " size "}\n"  \
    "stands: [{at: toe, held: fixed}]\n"

/* 1 1/4 is the nominal size of a pipe that is 1.660 in outside, with 0.191 in as its sch 80 wall.
 */
static void warnings_of_nominal_sizes(void **state)
{
    (void)state;
    warns(TUBE("[1.25, 0.191]"), 1109, 8);
    warns(TUBE("[1.25, 0.12]"), 0, 0);
    warns(TUBE("[1.66, 0.191]"), 0, 0);
}

#define LEANING(more)                                                                              \
    LEG("    - [toe, 0, 0, 0, 60, 60]\n    - [hip, 0, 0, 620, 60, 40]\n", "faces: " more "\n")

/* Upright it may look along x or y, and both that are proposed are let be; where something is
 * wrong nothing is said of it. */
static void faces_that_are_proposed(void **state)
{
    (void)state;
    static const char text[] = LEANING("[1, 0, 2.5]"), wrong[] = LEANING("[1, 0, 2.5]\nhigth: 9");
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("f.yaml", text, strlen(text), NULL, diags, &piece), TT_OK);
    assert_int_equal(tt_diags_count(diags), 1);
    assert_string_equal(tt_diags_at(diags, 0)->hint, "say which way its deep, 40 mm at `hip`, "
                                                     "looks: faces: +x, or faces: +y");
    tt_diags_free(diags);
    tt_piece_free(piece);
    warns(LEANING("+x"), 0, 0);
    warns(LEANING("+y"), 0, 0);
    diags = tt_diags_new(0);
    first_error(wrong, diags);
    for (size_t i = 0; i < tt_diags_count(diags); i++)
        assert_int_not_equal(tt_diags_at(diags, i)->number, 1409);
    tt_diags_free(diags);
}

#define MAQUETTE(mass) LEG(PLAIN, "scale: 2\nlumps: [{name: fish, at: hip, mass: 2 kg},\n" mass)

/* Is line 7 asked about? A row that lies askew for a comma may be warned of for its axes too. */
static bool comma_asked(const char *ankle)
{
    char text[400];
    snprintf(text, sizeof text,
             LEG("    - [toe, 0, 0, 0, 150]\n    - %s\n    - [hip, 0, 0, 620, 200]\n", ""), ankle);
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("f.yaml", text, strlen(text), NULL, diags, &piece), TT_OK);
    size_t n = 0;
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        const tt_diag *d = tt_diags_at(diags, i);
        if (d->number != 1305) continue;
        n++;
        assert_int_equal(d->severity, TT_WARNING);
        assert_int_equal(d->place.line, 7);
        assert_non_null(strstr(d->text, "comma"));
    }
    assert_true(n <= 1);
    tt_piece_free(piece);
    tt_diags_free(diags);
    return n == 1;
}

/* Among rows with a girth, one of six entries: a comma is likely between -10 and 5, and where the
 * blanks show it; 60 wide and 56 deep, meant so, are left alone. */
static void warnings_of_rows(void **state)
{
    (void)state;
    assert_true(comma_asked("[ankle, -10,5, 0, 220, 150]"));
    assert_true(comma_asked("[ankle, -10, 5, 0, 220, 150]"));
    assert_true(comma_asked("[ankle, 0, 0, 220,5, 150]"));
    assert_true(comma_asked("[ankle, 0, 0, 220, 150,5]"));
    assert_false(comma_asked("[ankle, 0, 0, 220, 60, 56]"));
    assert_false(comma_asked("[ankle,0,0,220,60,56]"));
    assert_false(comma_asked("[ankle, 0, 0, 220, 150]"));
}

/* A mass does not follow the scale: told once, and not where a reason says that it is meant so. */
static void warnings_of_lumps(void **state)
{
    (void)state;
    warns(MAQUETTE("  {name: reed, at: toe, mass: 1 kg}]\n"), 1408, 10);
    warns(LEG(PLAIN, "scale: 1\nlumps: [{name: fish, at: hip, mass: 2 kg}]\n"), 0, 0);
    warns(LEG(PLAIN, "scale: 2\nlumps: [{name: fish, at: hip, skin: 0.1 m2}]\n"), 0, 0);
    warns(LEG(PLAIN, "scale: 2\nlumps: [{name: fish, at: hip,\n"
                     "  mass: {is: 2 kg, because: \"of the full size\"}}]\n"),
          0, 0);
}

#define DEEP "    - [toe, 0, 0, -400, 150]\n    - [hip, 0, 0, 220, 200]\n"
#define WIND "wind: {basic_speed: 24 m/s, terrain: II}"

static void warnings_of_heights(void **state)
{
    (void)state;
    warns(LEG(DEEP, "site: {" WIND "}\n"), 1430, 6);
    warns(LEG(DEEP, "site: {base_height: 0.9 m, " WIND "}\n"), 0, 0);
    warns(LEG(DEEP, "site: {wind: none}\n"), 0, 0);
    warns(LEG(DEEP, ""), 0, 0);
    warns(LEG(PLAIN, "site: {" WIND "}\n"), 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_bad_file),
                                       cmocka_unit_test(carets_and_hints),
                                       cmocka_unit_test(hints_of_files),
                                       cmocka_unit_test(examples_of_the_key),
                                       cmocka_unit_test(warnings_of_axes_and_wind),
                                       cmocka_unit_test(warnings_of_grades),
                                       cmocka_unit_test(warnings_of_rows),
                                       cmocka_unit_test(warnings_of_lumps),
                                       cmocka_unit_test(warnings_of_doubt),
                                       cmocka_unit_test(faces_that_are_proposed),
                                       cmocka_unit_test(warnings_of_walls),
                                       cmocka_unit_test(warnings_of_metals),
                                       cmocka_unit_test(warnings_of_nominal_sizes),
                                       cmocka_unit_test(warnings_of_heights)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
