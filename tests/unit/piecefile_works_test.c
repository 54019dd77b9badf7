/* How a piece is made and set up: resolved values of whole files against SI numbers worked out by
 * hand; tables beside the piece file; the height that a base gives. */
#include "piece/works.h"
#include "pieces.h"

static void near_number(double got, double expected)
{
    assert_near(got, expected, 1e-12 * (1.0 + fabs(expected)));
}

static size_t place(const tt_piece *piece, const char *name)
{
    const size_t i = tt_piece_point(piece, name);
    assert_true(i != TT_NONE);
    return i;
}

static size_t along(const tt_piece *piece, const char *name)
{
    const size_t i = tt_piece_segment(piece, name);
    assert_true(i != TT_NONE);
    return i;
}

static void seams(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/works.yaml", NULL);
    const tt_works *works = piece->works;
    assert_true(works->seams_said && works->seams == TT_SEAM_UNKNOWN);
    assert_int_equal(works->seam.n, 2);
    const tt_seam *hock = &works->seam.at[0], *body = &works->seam.at[1];
    assert_int_equal(hock->at, place(piece, "hock"));
    assert_int_equal(hock->kind, TT_SEAM_FULL);
    assert_int_equal(hock->between[0], TT_NONE);
    assert_string_equal(hock->filler, "rod of our own");
    near_number(piece->metals.at[hock->metal].fact[TT_P_YIELD].value, 110e6);
    assert_int_equal(body->kind, TT_SEAM_PARTIAL);
    near_number(body->efficiency.is, 0.4);
    assert_int_equal(body->between[1], along(piece, "body-crown"));
    assert_ptr_equal(tt_piece_seam(piece, along(piece, "toe-hock"), true), hock);
    assert_ptr_equal(tt_piece_seam(piece, along(piece, "hock-body"), false), hock);
    assert_ptr_equal(tt_piece_seam(piece, along(piece, "hock-body"), true), body);
    assert_null(tt_piece_seam(piece, along(piece, "body-crown"), true));
    assert_int_equal(works->form, TT_MEMBER_TUBE);
    assert_false(works->sealed);
    tt_piece_free(piece);
}

static void joints(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/works.yaml", NULL);
    const tt_works *works = piece->works;
    assert_int_equal(works->splices.n, 1);
    const tt_splice *socket = &works->splices.at[0];
    assert_int_equal(socket->kind, TT_SPLICE_SOCKET);
    assert_int_equal(socket->between[0], along(piece, "toe-hock"));
    near_number(socket->insert, 0.12);
    near_number(socket->pin, 0.012);
    near_number(socket->inner.od, 0.02);
    assert_int_equal(works->ties.n, 2);
    assert_int_equal(works->ties.at[0].kind, TT_TIE_LUG);
    near_number(works->ties.at[0].throat, 0.003);
    near_number(works->ties.at[0].length, 0.04);
    assert_int_equal(works->ties.at[0].count, 2);
    assert_int_equal(works->ties.at[1].kind, TT_TIE_FILL);
    assert_int_equal(works->ties.at[1].count, 1);
    assert_int_equal(works->holes.n, 2);
    assert_true(works->holes.at[0].in_armature && works->holes.at[0].has_angle);
    near_number(works->holes.at[0].angle, 3.14159265358979323846 / 2);
    assert_false(works->holes.at[1].in_armature || works->holes.at[1].has_angle);
    near_number(works->holes.at[1].x, 0.5);
    near_number(works->rack.at[0].member.wall, 0.005);
    assert_int_equal(works->rack.at[0].count, 1);
    assert_int_equal(works->rack.at[1].count, 3);
    near_number(works->rack.at[1].length, 1.2);
    assert_string_equal(piece->metals.at[works->rack.at[1].member.metal].name, "1.4462");
    assert_string_equal(works->handling,
                        "[{lift: {hooks: [body, crown], note: \"gently: two legs\"}}]");
    tt_piece_free(piece);
}

static void joints_in_inches(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/works-us.yaml", NULL);
    const tt_works *works = piece->works;
    assert_int_equal(works->seams, TT_SEAM_NONE);
    assert_int_equal(works->splices.n, 3);
    const tt_splice *weld = &works->splices.at[0], *flange = &works->splices.at[1],
                    *lug = &works->splices.at[2];
    near_number(weld->throat, 0.15 * 0.0254);
    assert_int_equal(flange->bolts, 4);
    assert_string_equal(flange->bolt, "3/8");
    near_number(flange->bolt_circle, 3.5 * 0.0254);
    near_number(flange->diameter, 5 * 0.0254);
    near_number(lug->hole, 0.6 * 0.0254);
    near_number(lug->edge, 0.0254);
    near_number(works->base.anchors.diameter, 0.625 * 0.0254);
    assert_int_equal(works->base.anchors.in, TT_IN_STONE);
    assert_true(works->base.anchors.tested);
    near_number(works->base.anchors.tested_tension, 8 * 4448.2216152605);
    near_number(tt_weighing_net(&works->weighings.at[0]), 66 * 0.45359237);
    tt_piece_free(piece);
}

/* Plate 25 mm and pedestal 600 mm give the height over ground, as a default; plate
 * 7850 x 0.45 x 0.35 x 0.025 and pedestal 3000 x 0.9 x 0.7 x 0.6 the mass. */
static void base(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/works.yaml", NULL);
    const tt_base *base = &piece->works->base;
    const tt_origin *origin = &piece->origins.at[piece->site.base_height.origin];
    near_number(piece->site.base_height.is, 0.625);
    assert_int_equal(origin->kind, TT_ORIGIN_DEFAULT);
    assert_string_equal(origin->written, "625.0 mm");
    assert_string_equal(origin->why, "plate and pedestal");
    const double steel = piece->metals.at[base->plate.metal].fact[TT_P_DENSITY].value;
    near_number(tt_base_mass(piece), steel * 0.45 * 0.35 * 0.025 + 3000 * 0.9 * 0.7 * 0.6);
    assert_int_equal(base->anchors.n, 4);
    near_number(base->anchors.at[2].y, 0.13);
    near_number(base->anchors.diameter, 0.016);
    near_number(base->anchors.standoff, 0.01);
    near_number(base->grout, 0.02);
    near_number(base->concrete.strength, 30e6);
    assert_true(base->concrete.uncracked);
    near_number(base->footing.bearing, 150e3);
    near_number(base->footing.friction, 0.45);
    tt_piece_free(piece);
    const char *const set[] = {"site/base_height=0.4 m"};
    piece = tt_test_piece("tests/pieces/works.yaml", &(tt_changes){.set = set, .sets = 1});
    near_number(piece->site.base_height.is, 0.4);
    tt_piece_free(piece);
}

/* ---- tables beside --------------------------------------------------------------------------- */

static int beside(void *user, const char *name, tt_sink *sink, void *to)
{
    if (strcmp(name, "scales.csv") != 0) return 1;
    return sink(to, user, strlen(user));
}

#define LEG(rest)                                                                                  \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\n"                                      \
    "limbs: {leg: [[toe, 0, 0, 0, 150], [knee, 0, 0, 300, 150], [hip, 0, 0, 620, 200]]}\n"         \
    "stands: [{at: toe, held: fixed}]\n" rest

static tt_status read_table(const char *table, tt_diags *diags, tt_piece **piece)
{
    static const char text[] = LEG("weighed: scales.csv\npanels: {P1: [knee-hip]}\n");
    const tt_changes changes = {.neighbour = beside, .neighbour_user = (void *)table};
    return tt_piece_read("p.yaml", text, strlen(text), &changes, diags, piece);
}

static void table(void **state)
{
    (void)state;
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    const tt_status status = read_table("# spring\nsegment;panel;wax;bronze;tare;day;by\n"
                                        "toe-knee;;0.42 kg;;;2026-03-02;foundry\n"
                                        ";P1;;6 kg;2 kg;;\"the; crane\"\n",
                                        diags, &piece);
    if (status != TT_OK) tt_test_print(diags);
    assert_int_equal(status, TT_OK);
    const tt_works *works = piece->works;
    assert_int_equal(works->weighings.n, 2);
    assert_true(works->weighings.at[0].wax);
    near_number(works->weighings.at[0].mass.is, 0.42);
    assert_string_equal(works->weighings.at[0].by, "foundry");
    assert_int_equal(works->weighings.at[1].what, TT_WEIGHED_PANEL);
    near_number(tt_weighing_net(&works->weighings.at[1]), 4);
    assert_string_equal(works->weighings.at[1].by, "the; crane");
    tt_piece_free(piece);
    tt_diags_free(diags);
}

static void refuse_table(const char *text, unsigned number, unsigned line, unsigned column)
{
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    assert_int_equal(read_table(text, diags, &piece), TT_E_INPUT);
    assert_null(piece);
    assert_int_equal(tt_diags_count(diags), 1);
    const tt_diag *diag = tt_diags_at(diags, 0);
    if (diag->number != number || diag->place.line != line || diag->place.column != column)
        tt_test_print(diags);
    assert_string_equal(diag->file, "scales.csv");
    assert_int_equal(diag->number, number);
    assert_int_equal(diag->place.line, line);
    assert_int_equal(diag->place.column, column);
    assert_non_null(diag->shown);
    tt_diags_free(diags);
}

/* Told with the table's own name, line and column. */
static void bad_tables(void **state)
{
    (void)state;
    refuse_table("segment,bronze\ntoe-knee,9\n", 1101, 2, 10);
    refuse_table("segment,bronze\ntoe-knee,9 m\n", 1102, 2, 12);
    refuse_table("segment,bronze\n\ntoe-kneee,9 kg\n", 1301, 3, 1);
    refuse_table("segment,bronze,tare\ntoe-knee, 2 kg,3 kg\n", 1452, 2, 11);
    refuse_table("segment,bronze\ntoe-knee,9 kg,x\n", 1451, 2, 15);
    refuse_table("segment,bronce\ntoe-knee,9 kg\n", 1451, 1, 9);
    refuse_table("segment,bronze,bronze\ntoe-knee,9 kg,\n", 1451, 1, 16);
    refuse_table("segment,bronze\n", 1451, 1, 1);
    refuse_table("segment,bronze\n\"toe-knee,9 kg\n", 1451, 2, 1);
    refuse_table("segment,bronze\n,9 kg\n", 1203, 2, 1);
    refuse_table("segment;bronze\ntoe-knee;6,5 kg\nknee-hip;7,5 kg\n", 1451, 2, 10);
    refuse_table("segment,bronze\ntoe-knee,\"6,5 kg\"\n", 1451, 2, 10);
    refuse_table("# nothing\n", 1001, 1, 1);
    refuse_table("segment,bronze,day\ntoe-knee,9 kg,2.3.2026\n", 1204, 2, 15);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(seams), cmocka_unit_test(joints), cmocka_unit_test(joints_in_inches),
        cmocka_unit_test(base),  cmocka_unit_test(table),  cmocka_unit_test(bad_tables)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
