/* --set and --scale: what they change, and how a wrong one is told. */
#include "pieces.h"

static const char file[] = "tests/pieces/heron.yaml";

static tt_piece *with(const char *set)
{
    const char *const sets[] = {set};
    return tt_test_piece(file, &(tt_changes){.set = sets, .sets = 1});
}

static void values_of_the_file(void **state)
{
    (void)state;
    tt_piece *piece = with("bronze/wall=6");
    const tt_segment *s = tt_test_segment(piece, "hock-body");
    assert_near(s->wall.is, 0.006, 1e-15); /* `units` of the file count in --set too */
    const tt_origin *origin = &piece->origins.at[s->wall.origin];
    assert_int_equal(origin->kind, TT_ORIGIN_SET);
    assert_string_equal(origin->written, "6");
    assert_string_equal(origin->key, "bronze/wall");
    assert_int_equal(piece->sets, 1);
    assert_string_equal(piece->set[0], "bronze/wall=6");
    tt_piece_free(piece);
    piece = with("bronze/wall={is: 6 mm, low: 5 mm, high: 8 mm}");
    assert_near(tt_test_segment(piece, "hock-body")->wall.high, 0.008, 1e-15);
    tt_piece_free(piece);
    piece = with("site/wind/orography=1.3");
    assert_near(piece->site.wind.orography.is, 1.3, 1e-15);
    tt_piece_free(piece);
    piece = with("height=1.6 m"); /* was not there */
    assert_near(piece->height, 1.6, 1e-15);
    tt_piece_free(piece);
}

static void segments(void **state)
{
    (void)state;
    tt_piece *piece = with("segments/hock-body/armature={tube: [42.4, 4]}"); /* made by a limb */
    assert_near(tt_test_segment(piece, "hock-body")->armature.od, 0.0424, 1e-15);
    assert_near(tt_test_segment(piece, "toe-hock")->armature.od, 0.0337, 1e-15);
    tt_piece_free(piece);
    piece = with("segments/toe-hock/surface=1.3"); /* has an entry already */
    assert_near(tt_test_segment(piece, "toe-hock")->surface.is, 1.3, 1e-15);
    assert_near(tt_test_segment(piece, "toe-hock")->wall.is, 0.007, 1e-15);
    tt_piece_free(piece);
    piece = with("segments/bill/wall=3"); /* the long form */
    assert_near(tt_test_segment(piece, "bill")->wall.is, 0.003, 1e-15);
    tt_piece_free(piece);
    piece = with("segments/bill/outline/oval/0=50");
    assert_near(tt_test_segment(piece, "bill")->outline.wide, 0.05, 1e-15);
    tt_piece_free(piece);
}

static void lists(void **state)
{
    (void)state;
    tt_piece *piece = with("lumps/fish/mass=4 kg");
    assert_near(piece->lumps.at[0].mass.is, 4, 1e-15);
    tt_piece_free(piece);
    piece = with("stands/toe/held=pinned");
    assert_int_equal(piece->stands.at[0].held, TT_HELD_PINNED);
    tt_piece_free(piece);
    piece = with("stands/0/held=pinned");
    assert_int_equal(piece->stands.at[0].held, TT_HELD_PINNED);
    tt_piece_free(piece);
    piece = with("stands/+={at: crown, held: pinned}");
    assert_int_equal(piece->stands.n, 2);
    assert_int_equal(piece->stands.at[1].at, tt_piece_point(piece, "crown"));
    tt_piece_free(piece);
    piece = with("loads/+={case: gull, kind: variable, at: crown, force: [0, 0, -20 N]}");
    assert_int_equal(piece->loads.n, 1); /* the list was not there */
    assert_near(piece->loads.at[0].force.z, -20, 1e-12);
    tt_piece_free(piece);
}

static void limbs(void **state)
{
    (void)state;
    tt_piece *piece = with("limbs/neck/wall=7"); /* a plain list of rows */
    assert_near(tt_test_segment(piece, "body-crown")->wall.is, 0.007, 1e-15);
    assert_near(tt_test_segment(piece, "hock-body")->wall.is, 0.005, 1e-15);
    tt_piece_free(piece);
    piece = with("limbs/left leg/rows/1/3=640");
    assert_near(tt_test_place(piece, "hock").z, 0.64, 1e-15);
    tt_piece_free(piece);
    piece = with("limbs/neck/1/1=310");
    assert_near(tt_test_place(piece, "crown").x, 0.31, 1e-15);
    tt_piece_free(piece);
    piece = with("limbs/neck/crown=[crown, 320, 100, 1500, 60, 50]"); /* a row by its place */
    assert_near(tt_test_place(piece, "crown").x, 0.32, 1e-15);
    assert_near(tt_test_segment(piece, "body-crown")->outline_to.wide, 0.06, 1e-15);
    tt_piece_free(piece);
    piece = with("limbs/neck/crown/3=1510");
    assert_near(tt_test_place(piece, "crown").z, 1.51, 1e-15);
    tt_piece_free(piece);
    piece = with("limbs/left leg/hock=[hock, 0, 60, 630, 58, 50]"); /* beside other keys */
    assert_near(tt_test_place(piece, "hock").z, 0.63, 1e-15);
    assert_int_equal(tt_test_segment(piece, "hock-body")->armature.form, TT_MEMBER_TUBE);
    tt_piece_free(piece);
    piece = with("limbs/left leg/rows/hock/3=640");
    assert_near(tt_test_place(piece, "hock").z, 0.64, 1e-15);
    tt_piece_free(piece);
    piece = with("limbs/left leg/hock/3=650");
    assert_near(tt_test_place(piece, "hock").z, 0.65, 1e-15);
    tt_piece_free(piece);
}

static void several_and_escapes(void **state)
{
    (void)state;
    const char *const sets[] = {"lumps/+={name: a/b=c, at: crown, mass: 1 kg}",
                                "lumps/a\\/b\\=c/mass=2 kg"};
    tt_piece *piece = tt_test_piece(file, &(tt_changes){.set = sets, .sets = 2});
    assert_int_equal(piece->lumps.n, 2);
    assert_near(piece->lumps.at[1].mass.is, 2, 1e-15);
    tt_piece_free(piece);
}

/* An error in an option is told in the option's own text. */
static void wrong(const char *set, unsigned number, unsigned column, const char *hint)
{
    const char *const sets[] = {set};
    char *text = tt_test_text(file);
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read(file, text, strlen(text), &(tt_changes){.set = sets, .sets = 1},
                                   diags, &piece),
                     TT_E_INPUT);
    assert_null(piece);
    assert_int_equal(tt_diags_count(diags), 1);
    const tt_diag *diag = tt_diags_at(diags, 0);
    assert_string_equal(diag->file, "--set");
    assert_string_equal(diag->shown, set);
    assert_int_equal(diag->number, number);
    assert_int_equal(diag->place.line, 1);
    assert_int_equal(diag->place.column, column);
    assert_non_null(strstr(diag->hint, hint));
    tt_diags_free(diags);
    free(text);
}

static void wrong_options(void **state)
{
    (void)state;
    wrong("bronze/wal=6", 1201, 8, "`wall`");
    wrong("bronze/wall=6 kN", 1102, 15, "length");
    wrong("bronze/wall", 1505, 1, "bronze/wall=6 mm");
    wrong("=6", 1505, 1, "bronze/wall=6 mm");
    wrong("bronze/wall=", 1505, 1, "bronze/wall=6 mm");
    wrong("lumps/fih/mass=4 kg", 1505, 7, "`fish`");
    wrong("segments/hock-bodi/wall=6", 1301, 10, "`hock-body`");
    wrong("segments/bill/from/x=2", 1505, 20, "KEY={...}");
    wrong("stands/+={at: crwn, held: fixed}", 1301, 15, "`crown`");
    wrong("limbs/neck/crown=60", 1505, 12, "limbs/neck/crown=[crown, x, y, z, 60], or crown/4=60");
    wrong("limbs/left leg/hock=60", 1505, 16, "limbs/left leg/hock=[hock, x, y, z, 60]");
    wrong("limbs/neck/crow/3=60", 1505, 12, "`crown`");
    wrong("limbs/left legg/armature=none", 1505, 7, "did you mean `left leg`?");
    wrong("limbs/left leg/armature/bar=33 mm", 1206, 25, "armature={bar: 33 mm}");
    wrong("limits={mass: 3,5 kg}", 1104, 16, "commas are not read");
}

static void wrong_scale(const char *scale, unsigned number, const char *hint)
{
    char *text = tt_test_text(file);
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(
        tt_piece_read(file, text, strlen(text), &(tt_changes){.scale = scale}, diags, &piece),
        TT_E_INPUT);
    assert_int_equal(tt_diags_count(diags), 1);
    assert_string_equal(tt_diags_at(diags, 0)->file, "--scale");
    assert_int_equal(tt_diags_at(diags, 0)->number, number);
    assert_non_null(strstr(tt_diags_at(diags, 0)->hint, hint));
    assert_null(strstr(tt_diags_at(diags, 0)->hint, "0.8"));
    tt_diags_free(diags);
    free(text);
}

static void scale(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece(file, &(tt_changes){.scale = "1.25"});
    assert_near(tt_test_place(piece, "crown").z, 1.875, 1e-12);
    assert_near(tt_test_segment(piece, "toe-hock")->wall.is, 0.007, 1e-15);
    tt_piece_free(piece);
    wrong_scale("0.5", 1408, "a maquette grows by 1 to 1000, as in `--scale 3.5`");
    wrong_scale("1:3.6", 1104, "write 3.6");
    wrong_scale("1/4", 1408, "write 4");
    wrong_scale("1001", 1408, "1 to 1000");
    wrong_scale("big", 1104, "a number is due; a maquette grows by 1 to 1000, as in `--scale 3.5`");
    wrong_scale("3,5", 1104, "commas are not read");
    wrong_scale("", 1104, "`--scale 3.5`");
}

/* Keys that are kept are set like all others. */
static void of_the_site(void **state)
{
    (void)state;
    const char *set[] = {
        "site/people/climb=2 kN", "site/earthquake={ag: 1 m/s2, ground: B, type: 2}",
        "stands/0/held={move: [x, y, z], turn: [x, z], spring: {turn_y: 5 kN.m/rad}}"};
    const tt_changes changes = {.set = set, .sets = 3};
    tt_piece *piece = tt_test_piece("tests/pieces/maquette.yaml", &changes);
    assert_near(piece->site.people.climb.is, 2000, 1e-9);
    assert_int_equal(piece->origins.at[piece->site.people.climb.origin].kind, TT_ORIGIN_SET);
    assert_near(piece->site.people.push.is, 500, 1e-9);
    assert_near(piece->site.earthquake.ag.is, 1, 1e-12);
    assert_near(piece->stands.at[0].spring[4].is, 5000, 1e-9);
    assert_true(piece->stands.at[0].way[0] && !piece->stands.at[0].way[4]);
    tt_piece_free(piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_the_site),   cmocka_unit_test(values_of_the_file),
        cmocka_unit_test(segments),      cmocka_unit_test(lists),
        cmocka_unit_test(limbs),         cmocka_unit_test(several_and_escapes),
        cmocka_unit_test(wrong_options), cmocka_unit_test(scale)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
