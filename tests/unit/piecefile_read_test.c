/* Resolved values of whole files against SI numbers worked out by hand from what is written. */
#include "pieces.h"

static const double pi = 3.14159265358979323846;

static void near3(tt_vec3 got, double x, double y, double z)
{
    assert_near(got.x, x, 1e-12);
    assert_near(got.y, y, 1e-12);
    assert_near(got.z, z, 1e-12);
}

static void near_given(const tt_given *got, double is, double low, double high)
{
    assert_near(got->is, is, 1e-12 * fabs(is) + 1e-15);
    assert_near(got->low, low, 1e-12 * fabs(is) + 1e-15);
    assert_near(got->high, high, 1e-12 * fabs(is) + 1e-15);
    assert_true(got->origin > 0);
}

static void near_outline(tt_outline got, tt_outline_kind kind, double wide, double deep)
{
    assert_int_equal(got.kind, kind);
    assert_near(got.wide, wide, 1e-9);
    assert_near(got.deep, deep, 1e-9);
}

static tt_piece *every;

static int open_every(void **state)
{
    (void)state;
    every = tt_test_piece("tests/pieces/every-key.yaml", NULL);
    return every ? 0 : 1;
}

static int close_every(void **state)
{
    (void)state;
    every = tt_piece_free(every);
    return 0;
}

static void head(void **state)
{
    (void)state;
    assert_string_equal(every->name, "Heron with a Fish");
    assert_string_equal(every->revision, "B");
    assert_string_equal(every->date, "2026-11-25");
    assert_string_equal(every->basis, "eu");
    assert_string_equal(every->edition, "EN 1990:2002");
    assert_string_equal(every->file, "test.yaml");
    assert_int_equal(every->risk, 3);
    assert_near(every->scale, 3, 1e-15);
    assert_near(every->height, 1.65, 1e-12); /* 550 mm three times */
    assert_int_equal(every->report, TT_METRIC);
    assert_int_equal(every->inspection, TT_RADIOGRAPH);
    assert_int_equal(every->origins.at[every->basis_origin].kind, TT_ORIGIN_FILE);
    assert_int_equal(every->origins.at[every->edition_origin].place.line, 9);
}

static void places(void **state)
{
    (void)state;
    assert_int_equal(every->points.n, 20);
    near3(tt_test_place(every, "toe"), 0, 0, 0);
    near3(tt_test_place(every, "hock"), -0.015, 0.06, 0.618);
    near3(tt_test_place(every, "beak"), 0.42, 0.06, 1.599);
    near3(tt_test_place(every, "fork"), -0.6, 0, 0);
    assert_int_equal(every->limbs.n, 6);
    assert_string_equal(every->limbs.at[1].name, "neck");
    assert_int_equal(every->limbs.at[1].first, 2);
    assert_int_equal(every->limbs.at[1].count, 2);
    assert_int_equal(every->limbs.at[1].joins, TT_NONE);
    assert_int_equal(every->limbs.at[4].joins, tt_piece_point(every, "toe"));
    assert_int_equal(every->arms.n, 4); /* two of `rigid`, two of `joins` */
    assert_int_equal(every->arms.at[2].a, tt_piece_point(every, "toe"));
    assert_int_equal(every->arms.at[2].b, tt_piece_point(every, "fork"));
}

static void limb_segments(void **state)
{
    (void)state;
    const tt_segment *s = tt_test_segment(every, "toe-hock");
    near_outline(s->outline, TT_OUTLINE_ELLIPSE, 0.138, 0.12);
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 0.174, 0.15);
    near_given(&s->wall, 0.007, 0.0056, 0.00875); /* 0.8 and 1.25 of 7 mm; walls are not scaled */
    near_given(&s->surface, 1.2, 1.2, 1.2);
    near_given(&s->extra, 0.05, 0.05, 0.05);
    near_given(&s->casting_quality, 0.9, 0.9, 0.9);
    assert_near(s->neck_quality, 0.9, 1e-15); /* it has a reason */
    assert_string_equal(every->origins.at[s->casting_quality.origin].why,
                        "penetrant and radiograph, by the foundry");
    near3(s->faces, sqrt(0.5), sqrt(0.5), 0);
    assert_string_equal(every->metals.at[s->alloy].name, "C87300");
    assert_int_equal(s->limb, 0);
    assert_int_equal(s->place_in_limb, 0);
    s = tt_test_segment(every, "hock-body");
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 0.15, 0.15); /* girth 50 pi mm, three times */
    near_given(&s->wall, 0.006, 0.0048, 0.0075);
    assert_int_equal(s->place_in_limb, 1);
}

static void what_a_limb_says(void **state)
{
    (void)state;
    const tt_segment *s = tt_test_segment(every, "body-throat");
    near_outline(s->outline, TT_OUTLINE_ELLIPSE, 0.15, 0.15); /* of the leg that made the place */
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 0.18 / pi, 0.18 / pi);
    near_given(&s->wall, 0.005, 0.004, 0.007);
    near_given(&s->surface, 1.1, 1.1, 1.1);
    near_given(&s->extra, 0.08, 0.04, 0.12);
    near_given(&s->casting_quality, 0.7, 0.7, 0.7);
    assert_near(s->neck_quality, 0, 0); /* no reason: at necks the inspection decides */
    assert_string_equal(every->metals.at[s->alloy].name, "C87600");
    assert_int_equal(s->wind, TT_WIND_NONE);
    near3(s->faces, 1, 0, 0);
    s = tt_test_segment(every, "knee-claw");
    near_outline(s->outline, TT_OUTLINE_ELLIPSE, 0.114 / pi, 0.114 / pi); /* a girth of its own */
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 0.06, 0.036);
    assert_true(s->solid);
    near_outline(tt_test_segment(every, "hip-knee")->outline_to, TT_OUTLINE_ELLIPSE, 0.12 / pi,
                 0.12 / pi);
    near_outline(tt_test_segment(every, "fork-bough")->outline, TT_OUTLINE_NONE, 0, 0);
}

static void long_form(void **state)
{
    (void)state;
    const tt_segment *s = tt_test_segment(every, "bill");
    assert_int_equal(s->limb, TT_NONE);
    near_outline(s->outline, TT_OUTLINE_ELLIPSE, 0.045, 0.036);
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 0.018, 0.018);
    near_given(&s->wall, 0.0025, 0.002, 0.003125);
    near_given(&s->wall_to, 0.002, 0.0018, 0.002); /* one end given: the other is `is` */
    assert_near(s->turn, pi / 6, 1e-12);
    assert_near(s->turn_to, pi / 4, 1e-12);
    assert_int_equal(s->wind, TT_WIND_OWN_DRAG);
    assert_near(s->drag, 1.2, 1e-15);
    assert_string_equal(s->drag_because, "a cone");
    s = tt_test_segment(every, "tail end");
    near_outline(s->outline, TT_OUTLINE_BOX, 0.09, 0.03);
    near_outline(s->outline_to, TT_OUTLINE_BOX, 0.06, 0.024);
    near3(s->faces, 0, 0, 1);
    assert_int_equal(s->armature.form, TT_MEMBER_NONE);
    s = tt_test_segment(every, "tail");
    /* Perimeter of an ellipse after Ramanujan, 1914: 180 mm about, 36 mm deep. */
    const double a = s->outline.wide / 2, b = s->outline.deep / 2;
    assert_near(b, 0.018, 1e-12);
    assert_close(pi * (3 * (a + b) - sqrt((3 * a + b) * (a + 3 * b))), 0.18, 1e-4);
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 2 * a, 2 * b);
}

static void armature(void **state)
{
    (void)state;
    const tt_member *m = &tt_test_segment(every, "toe-hock")->armature;
    assert_int_equal(m->form, TT_MEMBER_TUBE);
    assert_near(m->od, 0.0337, 1e-15); /* not scaled */
    assert_near(m->wall, 0.004, 1e-15);
    assert_near(m->od_to, 0.0337, 1e-15);
    assert_near(m->loss, 0.0005, 1e-15);
    assert_near(m->wall_factor, 0.95, 1e-15);
    const tt_metal *steel = &every->metals.at[m->metal];
    assert_string_equal(steel->name, "mill cert bar");
    assert_int_equal(steel->kind, TT_STEEL);
    assert_int_equal(steel->fact[TT_P_DENSITY].source.mark, TT_GIVEN);
    assert_near(steel->fact[TT_P_DENSITY].value, 7810, 1e-9);
    assert_near(steel->fact[TT_P_YOUNG_EU].value, 201e9, 1);
    assert_near(steel->fact[TT_P_YOUNG_HIGH].value, 201e9, 1);
    assert_near(steel->fact[TT_P_YIELD].value, 760e6, 1);
    assert_near(steel->fact[TT_P_EXPANSION].value, 10.8e-6, 1e-15);
    m = &tt_test_segment(every, "tail")->armature;
    assert_near(m->od_to, 0.0213, 1e-15);
    assert_near(m->wall_to, 0.0026, 1e-15);
    m = &tt_test_segment(every, "staff")->armature;
    assert_int_equal(m->form, TT_MEMBER_BAR);
    assert_near(m->od, 0.016, 1e-15);
    assert_near(m->wall, 0.008, 1e-15);
    assert_near(m->wall_factor, 1, 1e-15); /* a bar has no wall */
    assert_int_equal(tt_test_segment(every, "staff")->alloy, TT_NONE);
    assert_int_equal(every->metals.n, 7); /* two bronzes, this, two of the rack, plate, granite */
}

static void lumps_and_stands(void **state)
{
    (void)state;
    const tt_lump *fish = &every->lumps.at[0], *cape = &every->lumps.at[1];
    assert_int_equal(every->lumps.n, 2);
    assert_int_equal(fish->at, tt_piece_point(every, "beak"));
    near_given(&fish->mass, 3.5, 3.5, 4); /* not scaled */
    near3(fish->offset, 0, 0.06, -0.039);
    assert_near(fish->wind_area, 0.018, 1e-15); /* 2000 mm2 nine times */
    assert_near(fish->drag, 1.3, 1e-15);
    assert_near(fish->inertia[1], 0.2, 1e-15);
    const double density = tt_metal_named(NULL, "C87300", TT_CAST)->fact[TT_P_DENSITY].value;
    near_given(&cape->mass, 0.36 * 0.005 * density, 0.36 * 0.004 * density, 0.36 * 0.007 * density);
    assert_near(cape->drag, 0, 0);
    assert_int_equal(every->stands.n, 4);
    assert_int_equal(every->stands.at[0].held, TT_HELD_FIXED);
    assert_int_equal(every->stands.at[0].sole_n, 4);
    near3(every->stands.at[0].sole[0], -0.06, -0.039, 0);
    near3(every->stands.at[0].sole[2], 0.09, 0.03, 0);
    assert_null(every->stands.at[1].sole);
}

static void how_stands_are_held(void **state)
{
    (void)state;
    static const bool ways[][6] = {{1, 1, 1, 1, 1, 1}, {1, 1, 0, 0, 0, 1}, {0}, {1, 1, 1, 0, 0, 0}};
    static const double springs[][6] = {
        {0}, {0, 0, 9e5, 2e5, 0, 0}, {9e4, 8e4, 0, 0, 3e3, 2e3}, {0}};
    for (size_t i = 0; i < 4; i++) {
        const tt_stand *stand = &every->stands.at[i];
        for (int d = 0; d < 6; d++) {
            assert_int_equal(stand->way[d], ways[i][d]);
            assert_near(stand->spring[d].is, springs[i][d], 1e-6);
            assert_int_equal(stand->spring[d].origin != 0, springs[i][d] > 0);
        }
    }
    assert_int_equal(every->stands.at[1].held, TT_HELD_IN_PART);
    assert_int_equal(every->stands.at[3].held, TT_HELD_RESTS);
    assert_near(every->stands.at[3].friction.is, 0.4, 1e-15);
    const tt_origin *pulled = &every->origins.at[every->stands.at[2].spring[1].origin];
    assert_string_equal(pulled->key, "stands/tip/held/spring/move_y");
    assert_string_equal(pulled->why, "pulled");
}

/* What rests without friction slides; a stand in words holds what its word says. */
static void rests_and_words(void **state)
{
    (void)state;
    static const char *const words[] = {"fixed", "pinned", "rests", "{rests: {}}"};
    static const int held[] = {6, 3, 1, 1};
    for (int i = 0; i < 4; i++) {
        char text[400];
        snprintf(text, sizeof text,
                 "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\n"
                 "limbs: {leg: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]}\n"
                 "stands: [{at: toe, held: %s}, {at: hip, held: pinned}]\n",
                 words[i]);
        tt_piece *piece = tt_test_piece_of(text, NULL);
        int n = 0;
        for (int d = 0; d < 6; d++) n += piece->stands.at[0].way[d];
        assert_int_equal(n, held[i]);
        assert_true(piece->stands.at[0].way[2]);
        tt_piece_free(piece);
    }
}

static void site_and_limits(void **state)
{
    (void)state;
    const tt_site *site = &every->site;
    assert_false(site->indoors);
    assert_true(site->open_to_public);
    near_given(&site->base_height, 0.9, 0.9, 0.9); /* not scaled */
    near_given(&site->damping, 0.012, 0.012, 0.012);
    assert_true(site->wind.given);
    near_given(&site->wind.basic_speed, 24, 24, 24);
    assert_int_equal(site->wind.exposure, 3);
    near_given(&site->wind.orography, 1.1, 1.1, 1.1);
    near_given(&site->wind.direction_factor, 0.9, 0.9, 0.9);
    near_given(&site->wind.season_factor, 0.95, 0.95, 0.95);
    near_given(&site->wind.air, 1.226, 1.226, 1.226);
    const tt_limits *limits = &every->limits;
    assert_true(limits->has_mass && limits->has_sway && limits->has_frequency);
    near_given(&limits->mass, 140, 140, 140);
    near_given(&limits->sway, 0.01, 0.01, 0.01);
    near_given(&limits->frequency, 1.5, 1.5, 1.5);
    near_given(&limits->use, 0.9, 0.9, 0.9);
}

static const tt_waiting *waits(const char *check, const char *where)
{
    for (size_t i = 0; i < every->waiting.n; i++)
        if (strcmp(every->waiting.at[i].check, check) == 0 &&
            strcmp(every->waiting.at[i].where, where) == 0)
            return &every->waiting.at[i];
    fail_msg("%s at %s does not wait", check, where);
    return NULL;
}

static void what_waits_for_its_check(void **state)
{
    (void)state;
    const tt_segment *bill = tt_test_segment(every, "bill"),
                     *shank = tt_test_segment(every, "toe-hock");
    assert_true(bill->open && bill->climbable && !shank->open && !shank->climbable);
    near_given(&shank->seam_along, 0.8, 0.8, 0.8);
    assert_int_equal(shank->wind, TT_WIND_BY_CODE);
    assert_string_equal(shank->drag_because, "a smooth shank");
    assert_true(every->lumps.at[1].plate && !every->lumps.at[0].plate);
    assert_string_equal(waits("open.shell", "bill")->key, "segments/bill/open");
    assert_string_equal(waits("seam.along", "toe-hock")->key, "segments/toe-hock/seam_along");
    assert_string_equal(waits("wind.drag", "toe-hock")->key, "segments/toe-hock/wind");
    assert_string_equal(waits("wind.flats", "cape")->key, "lumps/cape/plate");
    assert_string_equal(waits("sliding", "claw")->key, "stands/claw/held/rests/friction");
    assert_string_equal(waits("combination", "E3")->key, "combinations/E3/sum/quake x");
    assert_string_equal(waits("combination", "E4")->key, "combinations/E4/sum/ice");
    near_given(&every->combinations.at[3].imperfection, 1.0 / 200, 1.0 / 200, 1.0 / 200);
    assert_true(waits("open.shell", "bill")->needed && !waits("people", "bill")->needed);
    assert_false(waits("wind.drag", "the whole piece")->needed); /* the roughness */
}

/* A lengthwise seam that counts under a half leaves the shell open. */
static void seam_along(void **state)
{
    (void)state;
    static const struct {
        const char *said;
        bool open;
    } cases[] = {{"seam_along: 0.49", true},
                 {"seam_along: 0.5", false},
                 {"open: no", false},
                 {"open: yes, seam_along: 1", true}};
    for (size_t i = 0; i < 4; i++) {
        char text[400];
        snprintf(text, sizeof text,
                 "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\n"
                 "limbs: {leg: {rows: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]], %s}}\n"
                 "stands: [{at: toe, held: fixed}]\n",
                 cases[i].said);
        tt_piece *piece = tt_test_piece_of(text, NULL);
        assert_int_equal(piece->segments.at[0].open, cases[i].open);
        tt_piece_free(piece);
    }
}

static void acts_of_the_site(void **state)
{
    (void)state;
    const tt_site *site = &every->site;
    const tt_site_quake *quake = &site->earthquake;
    assert_true(quake->load.given && !quake->load.ruled_out);
    near_given(&quake->ag, 1.4709975, 1.4709975, 1.4709975); /* 0.15 times 9.80665 */
    assert_int_equal(quake->ground, 2);
    assert_int_equal(quake->type, 2);
    near_given(&quake->q, 2, 2, 2);
    assert_int_equal(quake->method, 1);
    assert_true(quake->rigid && quake->detailing && quake->on_building);
    near_given(&quake->building_at, 12, 12, 12); /* not scaled */
    near_given(&quake->building_roof, 20, 20, 20);
    assert_int_equal(quake->site_class, -1);
    near_given(&site->people.climb, 1200, 1200, 1200);
    near_given(&site->people.push, 400, 400, 400);
    near_given(&site->people.reach, 2.4, 2.4, 2.4); /* not scaled */
    assert_int_equal(site->people.count, 2);
    near_given(&site->ice.thickness, 0.01, 0.01, 0.01);
    near_given(&site->ice.wind, 15, 15, 15);
    near_given(&site->snow.ground, 800, 800, 800);
    near_given(&site->heat.bronze[0], 20, 20, 20); /* 36 F are 20 K */
    near_given(&site->heat.armature[0], 12, 12, 12);
    near_given(&site->heat.bronze[1], -27, -27, -27);
    near_given(&site->heat.armature[1], -10, -10, -10);
    assert_string_equal(every->origins.at[site->heat.armature[1].origin].why, "a frost");
    assert_true(site->fills);
    assert_int_equal(site->wind.speed_is, TT_SPEED_MEAN);
    near_given(&site->wind.once_in, 100, 100, 100);
    near_given(&site->wind.surface_roughness, 2e-4, 2e-4, 2e-4);
}

/* The ground in the other way of each basis. */
static void the_ground(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/ground-eu.yaml", NULL);
    near_given(&piece->site.earthquake.soil, 1.15, 1.15, 1.15);
    near_given(&piece->site.earthquake.tb, 0.2, 0.2, 0.2);
    near_given(&piece->site.earthquake.tc, 0.6, 0.6, 0.6);
    near_given(&piece->site.earthquake.td, 2, 2, 2);
    near_given(&piece->site.earthquake.q, 1.5, 1.5, 1.5);
    assert_int_equal(piece->site.earthquake.ground, -1);
    assert_int_equal(piece->site.earthquake.method, 0);
    tt_piece_free(piece);
    piece = tt_test_piece("tests/pieces/ground-us.yaml", NULL);
    near_given(&piece->site.earthquake.sds, 1, 1, 1);
    near_given(&piece->site.earthquake.sd1, 0.6, 0.6, 0.6);
    assert_int_equal(piece->site.earthquake.row, 1);
    assert_int_equal(piece->site.wind.hill, TT_HILL_NONE);
    near_given(&piece->site.wind.orography, 1.2, 1.2, 1.2);
    tt_piece_free(piece);
}

static void loads_and_combinations(void **state)
{
    (void)state;
    assert_int_equal(every->loads.n, 4);
    const tt_own_load *banner = &every->loads.at[0], *rope = &every->loads.at[2];
    assert_int_equal(banner->kind, TT_LOAD_VARIABLE);
    assert_int_equal(banner->along, TT_NONE);
    near3(banner->force, 0, 400, 0);
    near3(banner->moment, 0, 0, 30);
    assert_int_equal(rope->kind, TT_LOAD_ACCIDENTAL);
    assert_int_equal(rope->at, TT_NONE);
    assert_string_equal(every->segments.at[rope->along].name, "toe-hock");
    near3(rope->line, 0, 0, -200);
    assert_near(rope->between[0], 0.2, 1e-15);
    assert_near(every->loads.at[3].between[1], 1, 0);
    assert_int_equal(every->combinations.n, 4);
    for (size_t i = 0; i < 4; i++) assert_int_equal(every->combinations.at[i].waits, i > 1);
    near_given(&every->combinations.at[3].imperfection, 0.005, 0.005, 0.005);
    assert_int_equal(every->combinations.at[0].imperfection.origin, 0);
    const tt_own_combination *e1 = &every->combinations.at[0];
    assert_int_equal(e1->level, 0); /* strength is the first of the levels, accidental the fifth */
    assert_int_equal(every->combinations.at[1].level, 4);
    assert_int_equal(e1->terms, 3);
    assert_string_equal(e1->term[2].name, "wind 90");
    assert_near(e1->term[1].factor, 1.6, 1e-15);
}

/* Nothing of the file is left to a default but the spread of walls that have none. */
static void few_defaults(void **state)
{
    (void)state;
    static const char *const told[] = {"bronze/wall", "seams", "lumps/wind_area"};
    for (size_t i = 1; i < every->origins.n; i++) {
        if (every->origins.at[i].kind != TT_ORIGIN_DEFAULT) continue;
        bool known = false;
        for (size_t k = 0; k < 3; k++)
            known = known || strcmp(every->origins.at[i].key, told[k]) == 0;
        if (!known) fail_msg("%s is taken as a default", every->origins.at[i].key);
    }
}

/* 2100 / 600 = 3.5 */
static void maquette(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/maquette.yaml", NULL);
    assert_near(piece->scale, 3.5, 1e-12);
    near3(tt_test_place(piece, "hip"), -0.042, 0.049, 0.882);
    const tt_segment *s = tt_test_segment(piece, "ball-ankle");
    near_outline(s->outline, TT_OUTLINE_ELLIPSE, 0.217 / pi, 0.217 / pi);
    near_given(&s->wall, 0.005, 0.004, 0.00625);
    const tt_lump *rest = &piece->lumps.at[0];
    near_given(&rest->mass, 38, 38, 38);
    near3(rest->offset, 0.0105, -0.063, 0.3605);
    assert_near(rest->wind_area, 0.49, 1e-12); /* 0.04 m2 times 12.25 */
    near3(piece->stands.at[0].sole[1], 0.1575, -0.035, 0);
    tt_piece_free(piece);
    const tt_changes twice = {.scale = "2"};
    piece = tt_test_piece("tests/pieces/maquette.yaml", &twice);
    near3(tt_test_place(piece, "hip"), -0.024, 0.028, 0.504);
    assert_near(piece->lumps.at[0].wind_area, 0.16, 1e-12);
    tt_piece_free(piece);
}

static void inches(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece("tests/pieces/every-key-us.yaml", NULL);
    assert_string_equal(piece->basis, "us");
    assert_string_equal(piece->edition, "7-22");
    assert_int_equal(piece->report, TT_IMPERIAL);
    assert_near(piece->height, 74.5 * 0.0254, 1e-12);
    near3(tt_test_place(piece, "knee"), 0.0635, 0, 0.4572);
    near3(tt_test_place(piece, "hip"), 0.0254, -0.0762, 0.9144);
    const tt_segment *s = tt_test_segment(piece, "ankle-knee");
    near_outline(s->outline, TT_OUTLINE_ELLIPSE, 9 * 0.0254 / pi, 9 * 0.0254 / pi);
    near_outline(s->outline_to, TT_OUTLINE_ELLIPSE, 0.1143, 0.127);
    near_given(&s->wall, 0.0047625, 0.00381, 0.005953125);
    assert_near(s->armature.od, 0.04826, 1e-12);
    assert_near(s->armature.wall, 0.003683, 1e-12);
    assert_near(s->armature.wall_factor, 0.93, 1e-15); /* default of the American basis */
    const tt_site_wind *wind = &piece->site.wind;
    near_given(&wind->basic_speed, 51.4096, 51.4096, 51.4096); /* 115 times 0.44704 */
    assert_int_equal(wind->exposure, 'C');
    near_given(&wind->directionality, 0.95, 0.95, 0.95);
    near_given(&wind->elevation, 1524, 1524, 1524);
    assert_int_equal(wind->hill, TT_HILL_ESCARPMENT);
    near_given(&wind->hill_height, 30.48, 30.48, 30.48);
    near_given(&wind->hill_half_length, 76.2, 76.2, 76.2);
    near_given(&wind->hill_from_crest, 15.24, 15.24, 15.24);
    assert_near(wind->orography.is, 1, 0); /* the shape says it */
    assert_int_equal(wind->orography.origin, 0);
    assert_int_equal(wind->speed_is, TT_SPEED_GUST);
    const tt_site_quake *quake = &piece->site.earthquake;
    near_given(&quake->ss, 1.5, 1.5, 1.5);
    near_given(&quake->s1, 0.6, 0.6, 0.6);
    assert_int_equal(quake->site_class, 4); /* CD */
    assert_int_equal(quake->row, 0);
    assert_int_equal(quake->q.origin, 0);
    near_given(&piece->lumps.at[0].mass, 0.90718474, 0.90718474, 0.90718474);
    near_given(&piece->limits.mass, 181.436948, 181.436948, 181.436948);
    tt_piece_free(piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(head),
                                       cmocka_unit_test(places),
                                       cmocka_unit_test(limb_segments),
                                       cmocka_unit_test(what_a_limb_says),
                                       cmocka_unit_test(long_form),
                                       cmocka_unit_test(armature),
                                       cmocka_unit_test(lumps_and_stands),
                                       cmocka_unit_test(how_stands_are_held),
                                       cmocka_unit_test(rests_and_words),
                                       cmocka_unit_test(site_and_limits),
                                       cmocka_unit_test(loads_and_combinations),
                                       cmocka_unit_test(acts_of_the_site),
                                       cmocka_unit_test(what_waits_for_its_check),
                                       cmocka_unit_test(seam_along),
                                       cmocka_unit_test(the_ground),
                                       cmocka_unit_test(few_defaults),
                                       cmocka_unit_test(maquette),
                                       cmocka_unit_test(inches)};
    return cmocka_run_group_tests(tests, open_every, close_every);
}
