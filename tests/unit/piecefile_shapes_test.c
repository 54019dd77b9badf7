/* Outlines and members as they are read: traces inline and from a file, rounded boxes, numbers;
 * boxes, flats, pipes, offsets, members through places, members left to `size`. */
#include "pieces.h"

#define HEAD                                                                                       \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\narmature: {grade: \"1.4462\"}\n"
#define POINTS "points: {toe: [0, 0, 0], hip: [0, 0, 620]}\nstands: [{at: toe, held: fixed}]\n"
#define SEGMENT(outline)                                                                           \
    HEAD POINTS "segments:\n  - name: leg\n    from: toe\n    to: hip\n" outline

static const double L_AREA = 2400e-6;

/* The centroid of the angle drawn from its corner is (23.75, 48.75): the corner goes to minus that.
 */
static void inline_trace(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of(
        SEGMENT("    solid: yes\n    outline: {trace: [[0, 0], [100, 0], [100, 10], [10, 10], [10, "
                "150], [0, 150]]}\n"),
        NULL);
    const tt_segment *s = tt_test_segment(piece, "leg");
    assert_int_equal(s->outline.kind, TT_OUTLINE_TRACE);
    assert_int_equal(s->outline.trace->n, 6);
    assert_near(s->outline.trace->from[0].x, -0.02375, 1e-12);
    assert_near(s->outline.trace->from[0].y, -0.04875, 1e-12);
    assert_close(tt_outline_area(&s->outline), L_AREA, 1e-12);
    assert_near(s->outline.wide, 0.1, 1e-12);
    assert_near(s->outline.deep, 0.15, 1e-12);
    tt_piece_free(piece);
}

/* Clockwise, with the first corner named again at its end, under a scale of two. */
static void trace_round_the_other_way(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of(
        "scale: 2\n" SEGMENT("    outline: {trace: [[0, 0], [0, 60], [40, 60], [40, 0], [0, 0]]}\n"
                             "    outline_to: {trace: [[0, 0], [0, 40], [30, 40], [30, 0]]}\n"),
        NULL);
    const tt_segment *s = tt_test_segment(piece, "leg");
    const tt_outline middle = tt_segment_outline(s, 0.5);
    assert_int_equal(s->outline.trace->n, 4);
    assert_close(tt_outline_area(&s->outline), 0.08 * 0.12, 1e-12);
    assert_close(tt_outline_area(&s->outline_to), 0.06 * 0.08, 1e-12);
    assert_close(tt_outline_area(&middle), 0.07 * 0.10, 1e-12);
    assert_near(s->wall.is, 0.005, 1e-15);
    tt_piece_free(piece);
}

/* ---- a trace from a file ---- */

typedef struct {
    const char *name, *text;
    int asked;
} shelf;

static int take(void *user, const char *name, tt_sink *sink, void *to)
{
    shelf *s = user;
    s->asked++;
    return strcmp(name, s->name) != 0 || sink(to, s->text, strlen(s->text)) != 0;
}

static void trace_of_a_file(void **state)
{
    (void)state;
    shelf s = {"ankle.csv",
               "\xEF\xBB\xBF# traced from the ankle\r\n0, 0\r\n\n100, 0\n100 , 10\n10,10\n"
               "1 cm, 15 cm\n0,150",
               0};
    tt_piece *piece = tt_test_piece_of(SEGMENT("    solid: yes\n    outline: {trace: ankle.csv}\n"),
                                       &(tt_changes){.neighbour = take, .neighbour_user = &s});
    assert_int_equal(s.asked, 1);
    assert_close(tt_outline_area(&tt_test_segment(piece, "leg")->outline), L_AREA, 1e-12);
    tt_piece_free(piece);
}

static void fault_of_a_file(const char *name, const char *text, const char *file, unsigned number,
                            unsigned line, const char *shown)
{
    shelf s = {name, text, 0};
    const char *piece_text = SEGMENT("    outline: {trace: ankle.csv}\n");
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("p.yaml", piece_text, strlen(piece_text),
                                   &(tt_changes){.neighbour = take, .neighbour_user = &s}, diags,
                                   &piece),
                     TT_E_INPUT);
    if (tt_diags_errors(diags) != 1) tt_test_print(diags);
    assert_int_equal(tt_diags_errors(diags), 1);
    const tt_diag *d = tt_diags_at(diags, 0);
    assert_int_equal(d->number, number);
    assert_int_equal(d->place.line, line);
    assert_string_equal(d->file, file);
    assert_non_null(strstr(d->shown, shown));
    tt_diags_free(diags);
}

static void faults_of_a_file(void **state)
{
    (void)state;
    fault_of_a_file("knee.csv", "0, 0\n", "p.yaml", 1450, 11, "trace: ankle.csv");
    fault_of_a_file("ankle.csv", "0, 0\n9, 0, 4\n9, 9\n0, 9\n", "ankle.csv", 1416, 2, "9, 0, 4");
    fault_of_a_file("ankle.csv", "0, 0\n9 9\n", "ankle.csv", 1416, 2, "9 9");
    fault_of_a_file("ankle.csv", "0, 0\n9, x\n9, 9\n", "ankle.csv", 1104, 2, "9, x");
    fault_of_a_file("ankle.csv", "0, 0\n9, 0\n9, 9 kg\n", "ankle.csv", 1102, 3, "9 kg");
    fault_of_a_file("ankle.csv", "0, 0\n9, 0\n", "ankle.csv", 1412, 1, "0, 0");
    fault_of_a_file("ankle.csv", "0,0\n9,0\n0,5\n9,5\n", "ankle.csv", 1413, 4, "9,5");
}

/* ---- boxes with corners, numbers ---- */

static void box_with_corners(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of(SEGMENT("    outline: {box: [60, 40], corner: 8}\n"
                                               "    outline_to: {box: [50, 30]}\n"),
                                       NULL);
    const tt_segment *s = tt_test_segment(piece, "leg");
    const double lack = 4.0 - 3.14159265358979323846;
    assert_int_equal(s->outline.kind, TT_OUTLINE_TRACE);
    assert_near(s->outline.corner, 0.008, 1e-15);
    assert_close(tt_outline_area(&s->outline), 0.06 * 0.04 - lack * 64e-6, 4e-4);
    assert_close(tt_outline_area(&s->outline_to), 0.05 * 0.03, 1e-12);
    tt_piece_free(piece);
}

static void own_numbers(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of(
        SEGMENT("    outline:\n      numbers: {area: 4 in2, iy: 3 in4, iz: 2 in4, j: 3.5 in4, iyz: "
                "-1 in4, reach_y: 45, reach_z: 50, width_y: 80, width_z: 90, shear_z: 1200 mm2}\n"),
        NULL);
    const tt_segment *s = tt_test_segment(piece, "leg");
    const double inch4 = 0.0254 * 0.0254 * 0.0254 * 0.0254;
    const tt_section section = tt_section_solid(&s->outline, 0.3);
    assert_close(section.area, 4.0 * 0.0254 * 0.0254, 1e-12);
    assert_close(section.iy, 3.0 * inch4, 1e-12);
    assert_close(section.iyz, -inch4, 1e-12);
    assert_close(section.shear_z, 1200e-6, 1e-12);
    assert_near(s->surface.is, 1.0, 0.0); /* true area */
    assert_close(tt_segment_bronze(piece, s, 0.5, 0),
                 section.area * 1.1 * piece->metals.at[s->alloy].fact[TT_P_DENSITY].value, 1e-12);
    tt_piece_free(piece);
}

/* ---- members ---- */

static tt_member member_of(const char *written)
{
    char text[600];
    snprintf(text, sizeof text,
             HEAD "limbs:\n  leg:\n    rows: [[toe, 0, 0, 0, 350], [hip, 0, 0, 620, 350]]\n"
                  "    armature: %s\nstands: [{at: toe, held: fixed}]\n",
             written);
    tt_piece *piece = tt_test_piece_of(text, NULL);
    const tt_member member = tt_test_segment(piece, "toe-hip")->armature;
    tt_piece_free(piece);
    return member;
}

static void members(void **state)
{
    (void)state;
    tt_member m = member_of("{box: [40, 30, 3], offset: [0, -4]}");
    assert_int_equal(m.form, TT_MEMBER_BOX);
    assert_near(m.od, 0.04, 1e-15);
    assert_near(m.deep_to, 0.03, 1e-15);
    assert_near(m.wall_factor, 1.0, 0.0);
    /* corners of 6 mm outside, 3 mm inside */
    assert_close(tt_member_area(&m, 0.0), 384e-6 - (4.0 - 3.14159265358979323846) * (36e-6 - 9e-6), 1e-12);
    assert_close(tt_member_girdle(&m, 1.0), 0.05, 1e-12);
    assert_near(tt_member_off(&m, 0.7).y, -0.004, 1e-15);
    m = member_of("{flat: [40, 10]}");
    assert_int_equal(m.form, TT_MEMBER_FLAT);
    assert_close(tt_member_area(&m, 0.0), 400e-6, 1e-12);
    /* 1 1/2 in: 1.900 x 0.145 in, ASME B36.10 (READ) */
    m = member_of("{pipe: 1 1/2 sch 40}");
    assert_int_equal(m.form, TT_MEMBER_TUBE);
    assert_close(m.od, 1.9 * 0.0254, 2e-3);
    assert_close(m.wall, 0.145 * 0.0254, 2e-3);
    m = member_of("choose");
    assert_int_equal(m.form, TT_MEMBER_NONE);
    assert_true(m.choose);
}

static void choose_at_the_head(void **state)
{
    (void)state;
    tt_piece *piece =
        tt_test_piece_of("piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\narmature: choose\n"
                         "limbs:\n  leg: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]\n"
                         "  arm:\n    rows: [[hip], [hand, 0, 0, 900, 90]]\n    armature: none\n"
                         "stands: [{at: toe, held: fixed}]\n",
                         NULL);
    assert_true(tt_test_segment(piece, "toe-hip")->armature.choose);
    assert_false(tt_test_segment(piece, "hip-hand")->armature.choose);
    tt_piece_free(piece);
}

static void through_places(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of(
        HEAD "limbs:\n  leg:\n    rows: [[toe, 0, 0, 0, 150], [hock, 0, 0, 300, 150], [knee, 0, 0, "
             "500, 150], [hip, 0, 0, 620, 150], [rib, 0, 0, 800, 150]]\n"
             "    armature: {tube: [33.7, 4], through: [hock, knee, hip]}\n"
             "segments: [{name: hip-rib, armature: {bar: 20}}]\n"
             "stands: [{at: toe, held: fixed}]\n",
        NULL);
    assert_int_equal(tt_test_segment(piece, "toe-hock")->armature.form, TT_MEMBER_NONE);
    assert_int_equal(tt_test_segment(piece, "hock-knee")->armature.form, TT_MEMBER_TUBE);
    assert_int_equal(tt_test_segment(piece, "knee-hip")->armature.form, TT_MEMBER_TUBE);
    assert_int_equal(tt_test_segment(piece, "hip-rib")->armature.form, TT_MEMBER_BAR);
    const size_t run = tt_test_segment(piece, "hock-knee")->armature.run;
    assert_true(run > 0);
    assert_int_equal(tt_test_segment(piece, "knee-hip")->armature.run, run);
    assert_int_equal(tt_test_segment(piece, "hip-rib")->armature.run, 0);
    tt_piece_free(piece);
}

/* A wall that fills the outline: solid, with the warning that it does. */
static void wall_that_closes(void **state)
{
    (void)state;
    const char *text = SEGMENT("    wall: 21\n    outline: {trace: [[0, 0], [40, 0], [40, 60], [0, "
                               "60]]}\n");
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(tt_piece_read("p.yaml", text, strlen(text), NULL, diags, &piece), TT_OK);
    bool seen = false;
    for (size_t i = 0; i < tt_diags_count(diags); i++)
        seen |=
            tt_diags_at(diags, i)->number == 1406 && tt_diags_at(diags, i)->severity == TT_WARNING;
    assert_true(seen);
    assert_true(tt_test_segment(piece, "leg")->solid);
    tt_piece_free(piece);
    tt_diags_free(diags);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(inline_trace),     cmocka_unit_test(trace_round_the_other_way),
        cmocka_unit_test(trace_of_a_file),  cmocka_unit_test(faults_of_a_file),
        cmocka_unit_test(box_with_corners), cmocka_unit_test(own_numbers),
        cmocka_unit_test(members),          cmocka_unit_test(choose_at_the_head),
        cmocka_unit_test(through_places),   cmocka_unit_test(wall_that_closes)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
