/* The text result of a hand-made assessment: every section says what it must, in its order, in our
 * own words; the cautions are always there; each refusal of memory ends in TT_E_NOMEM. */
#define FIXTURE_REFUSES
#include "fixture_assessment.h"
#include "base/text.h"
#include "tiptoe/report.h"

#include <ctype.h>
#include <string.h>

/* What a result came to, with every run of blanks as one, so that line breaks do not matter. */
static char got[200000];
static size_t got_n;

static int gather(void *user, const char *bytes, size_t n)
{
    (void)user;
    for (size_t i = 0; i < n && got_n + 1 < sizeof got; i++) {
        const bool blank = isspace((unsigned char)bytes[i]) != 0;
        if (!blank)
            got[got_n++] = bytes[i];
        else if (got_n && got[got_n - 1] != ' ')
            got[got_n++] = ' ';
    }
    got[got_n] = '\0';
    return 0;
}

static void write_it(const fixture *f, const tt_text_options *options)
{
    got_n = 0;
    assert_int_equal(tt_write_text(&f->a, options, gather, NULL), TT_OK);
}

static void has(const char *words)
{
    if (strstr(got, words)) return;
    print_error("lacks: %s\nin: %s\n", words, got);
    fail();
}

static void has_not(const char *words)
{
    if (!strstr(got, words)) return;
    print_error("must not say: %s\nin: %s\n", words, got);
    fail();
}

static void has_in_order(const char *const *words)
{
    const char *at = got;
    for (; *words; words++) {
        const char *found = strstr(at, *words);
        if (!found) print_error("not there, or not in its order: %s\n", *words);
        assert_non_null(found);
        at = found + strlen(*words);
    }
}

static void sections_stand_in_their_order(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, &(tt_text_options){.steps = 1});
    static const char *const order[] = {"tiptoe check: Post with a Knee",
                                        "What was checked holds",
                                        "Weight and balance",
                                        "The tightest places",
                                        "Sway",
                                        "Forces on what holds it",
                                        "Not checked",
                                        "Does not apply",
                                        "What was put in",
                                        "Values with a reason",
                                        "Defaults used",
                                        "Calculation",
                                        "Wind 90",
                                        "Cautions",
                                        NULL};
    has_in_order(order);
    has_not("Forces on the ground");
    f.piece->stands.at[0].sole_n = 3;
    write_it(&f, NULL);
    has("Forces on the ground");
    has_not("what holds");
    has_not("Calculation");
    fixture_close(&f);
}

static void the_verdict_in_one_sentence(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has("What was checked holds; 1 thing was not. Tightest at foot, strength of the bronze: use 83 "
        "% under B "
        "(heavy weight, together), margin 20 %.");
    has_not("It rests on a value");
    f.a.verdict = TT_HOLDS;
    f.a.decided_by_default = "site/damping";
    write_it(&f, NULL);
    has("Holds; tightest at foot, ");
    has("It rests on a value that nobody gave: site/damping, taken as 0.02.");
    f.a.verdict = TT_FALLS_SHORT;
    f.finding[0].holds = false;
    f.finding[0].use = 1.0001;
    f.finding[0].margin = 1 / 1.0001 - 1;
    write_it(&f, NULL);
    has("Falls short: at foot, strength of the bronze: use 101 % under B (heavy weight, together), "
        "margin -1 %.");
    has("Besides, 1 thing was not checked.");
    f.finding[0].has_use = false;
    f.finding[0].why = "there is no strength";
    write_it(&f, NULL);
    has("Falls short: at foot, strength of the bronze under B (heavy weight, together): there is "
        "no strength.");
    f.a.governing = 1;
    f.finding[1].holds = false;
    write_it(&f, NULL);
    has("Falls short: the whole piece, weight: use ");
    f.a.verdict = TT_HOLDS;
    write_it(&f, NULL);
    has("Holds; tightest for the whole piece, weight: use ");
    f.finding[1].where = "crown";
    write_it(&f, NULL);
    has("Holds; tightest at crown, weight: use ");
    f.a.verdict = TT_NOT_CHECKED;
    f.a.governing = TT_NONE;
    f.a.findings.list.n = 0;
    f.unchecked[0].needed = true;
    write_it(&f, NULL);
    has("Nothing could be judged; 2 things were not checked.");
    fixture_close(&f);
}

static void weight_and_centre(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has("Weight 100 kg, by the spread of the bronze 90.0 kg to 120 kg: bronze 60.0 kg, armature "
        "30.0 kg, lumps 10.0 kg.");
    /* 50 mm at scale 2 are 25 mm of the maquette. */
    has("Centre of mass at x = 50.0 mm (25.0 mm on the maquette), y = -20.0 mm (-10.0 mm on the "
        "maquette)");
    has("stands over the sole, 30.0 mm (15.0 mm on the maquette) inside the nearest edge, which "
        "lies towards 270 deg");
    has("Told, not judged: not held down, it would need 150 % of what its weight restores against "
        "tipping, under B.");
    has_not("limit of");
    f.piece->scale = 1.0;
    f.piece->limits.has_mass = true;
    f.piece->limits.mass.is = 95;
    f.a.balance.edge_distance = -0.01;
    write_it(&f, NULL);
    has_not("on the maquette");
    has("Over the limit of 95.0 kg by 5.00 kg.");
    has("stands outside the sole, 10.0 mm beyond the nearest edge");
    f.piece->limits.mass.is = 110;
    write_it(&f, NULL);
    has("Within the limit of 110 kg at the nominal walls, over it by 10.0 kg at the thickest.");
    f.piece->limits.mass.is = 120;
    f.piece->report = TT_IMPERIAL;
    write_it(&f, NULL);
    has("Within the limit of 265 lb."); /* 120 kg / 0.45359237 */
    f.piece->report = TT_METRIC;
    for (int p = 0; p < TT_PATTERNS; p++) f.model.weight[p] = (tt_weight){60, 0, 10};
    write_it(&f, NULL);
    has("Weight 70.0 kg: bronze 60.0 kg, lumps 10.0 kg. Within the limit of 120 kg.");
    for (int p = 0; p < TT_PATTERNS; p++) f.model.weight[p] = (tt_weight){60, 0, 0};
    write_it(&f, NULL);
    has("Weight 60.0 kg, all of it bronze. Within");
    fixture_close(&f);
}

static void sway_and_reactions(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has("Sways most at crown: 2.00 mm level, under S (armature alone).");
    /* Faces +x; 0.8 of 75 kg that can move go along x, 0.1 along y, of 100 kg in all. */
    has("In the softer carry model (armature alone): It sways forward 2.1 times a second, carrying "
        "60 % of the weight. In the stiffer");
    has("In the stiffer one the lowest is 3.5 times a second.");
    has("foot strength 1.62 kN 0 kN 0.150 kN 120 N.m 7.50 N.m"); /* forces in one unit */
    has_not("foot equilibrium");
    f.mode[TT_ALONE].mass_fraction[0] = 0.04; /* and 0.08 along y, the larger: 0.08 * 0.75 */
    f.mode[TT_ALONE].mass_fraction[1] = 0.08;
    write_it(&f, NULL);
    has("It sways aslant 2.1 times a second, carrying 6 % of the weight.");
    f.mode[TT_ALONE].mass_fraction[0] = f.mode[TT_ALONE].mass_fraction[1] = 0;
    write_it(&f, NULL);
    has("It twists 2.1 times a second");
    has_not("they do not add up");
    tt_mode two[2] = {f.mode[TT_ALONE], f.mode[TT_ALONE]};
    two[1].mass_fraction[1] = 0.4;
    f.a.solution.modes[TT_ALONE].at = two;
    f.a.solution.modes[TT_ALONE].n = 2;
    write_it(&f, NULL);
    has("It sways sideways 2.1 times a second, carrying 30 % of the weight. Each share is along "
        "the "
        "direction in which that way of swinging carries most: they do not add up. In the stiffer");
    f.a.sway.move = 0; /* nothing moves: nothing to tell of it */
    write_it(&f, NULL);
    has_not("Sways most");
    f.a.solution.modes[TT_ALONE].n = 0;
    write_it(&f, NULL);
    has_not("Sway ----");
    fixture_close(&f);
}

static void what_is_missing_and_where_values_come_from(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    static const char *const order[] = {"What the file can give (1)",
                                        "force between bronze and armature, at knee: nobody "
                                        "described it. Demand 12.0 N.m. Give: attach.",
                                        "Told only: the verdict does not hang on it (1)",
                                        "shaking by hand, the whole piece: it can be shaken.",
                                        "balance: it is held down.",
                                        "Values with a reason",
                                        "bronze/wall: 6 mm (the foundry says so)",
                                        "site/damping: 0.02 (nobody measured it)",
                                        NULL};
    has_in_order(order);
    has_not("height: 2 m");
    has_not("What this version does not compute");
    f.unchecked[1].give = NULL; /* with nothing to give it is this version's lack */
    write_it(&f, NULL);
    has("What this version does not compute (1) - force between bronze and armature");
    has_not("What the file can give");
    has_not("Changed on the command line");
    static const char *const set[] = {"bronze/wall=7 mm"};
    f.piece->set = set;
    f.piece->sets = 1;
    write_it(&f, NULL);
    has("Changed on the command line: - bronze/wall=7 mm");
    fixture_close(&f);
}

/* A piece with a bit of everything, by head. */
static void fill(fixture *f)
{
    tt_piece *p = f->piece;
    const tt_source table = {.document = "a table", .mark = TT_READ};
    const tt_source own = {.document = "given in the piece file", .mark = TT_GIVEN};
    tt_metal bronze = {.name = "B1", .title = "a bronze", .form = "", .yield_basis = "at 0.5 %"};
    bronze.fact[TT_P_YIELD] = bronze.fact[TT_P_ULTIMATE] = (tt_fact){124e6, table, true};
    tt_metal steel = {
        .name = "S1", .title = "given in the piece file", .form = "", .kind = TT_STEEL};
    steel.fact[TT_P_YIELD] = (tt_fact){450e6, own, true};
    steel.fact[TT_P_YOUNG_LOW] = (tt_fact){200e9, own, true};
    assert_true(tt_list_push(&p->metals, bronze) && tt_list_push(&p->metals, steel));
    tt_segment *s = p->segments.at;
    s[0].outline = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.06, 0.056);
    s[0].outline_to = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.066, 0.06);
    s[0].wall = s[0].wall_to = (tt_given){.is = 0.005, .low = 0.004, .high = 0.007};
    s[0].surface = (tt_given){.is = 1.15, .low = 1.15, .high = 1.15};
    s[0].extra = (tt_given){.is = 0.1, .low = 0.1, .high = 0.1};
    s[0].armature = (tt_member){.form = TT_MEMBER_TUBE,
                                .od = 0.0337,
                                .wall = 0.004,
                                .od_to = 0.0337,
                                .wall_to = 0.004,
                                .metal = 1,
                                .loss = 0.001};
    s[1].armature = (tt_member){.form = TT_MEMBER_BAR,
                                .od = 0.02,
                                .wall = 0.01,
                                .od_to = 0.016,
                                .wall_to = 0.008,
                                .metal = 1};
    f->cuts[1].bore = 0.042;
    f->cuts[2].bore = f->cuts[3].bore = 0;
    assert_true(tt_list_push(&p->lumps, (tt_lump){.name = "fish",
                                                  .at = F_CROWN,
                                                  .wind_area = 0.012,
                                                  .drag = 1.3,
                                                  .mass = {.is = 0.9, .low = 0.8, .high = 1}}));
    assert_true(tt_list_push(&p->loads, (tt_own_load){.name = "banner",
                                                      .kind = TT_LOAD_VARIABLE,
                                                      .at = F_CROWN,
                                                      .along = TT_NONE,
                                                      .force = {0, 400, 0}}));
    assert_true(tt_list_push(&p->loads, (tt_own_load){.name = "rope",
                                                      .kind = TT_LOAD_ACCIDENTAL,
                                                      .at = TT_NONE,
                                                      .line = {0, 0, -200},
                                                      .between = {0.2, 0.7}}));
    p->site = (tt_site){.base_height = {.is = 0.9}, .damping = {.is = 0.02}};
    p->site.wind = (tt_site_wind){.given = true,
                                  .basic_speed = {.is = 24},
                                  .exposure = 2,
                                  .orography = {.is = 1.1},
                                  .direction_factor = {.is = 1},
                                  .season_factor = {.is = 1},
                                  .air = {.is = 1.25}};
}

static void what_was_put_in(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    fill(&f);
    write_it(&f, NULL);
    static const char *const order[] = {
        "What was put in",
        "Computed by tiptoe ",
        "from post.yaml. Basis: a basis (first), risk 2, scale 2.",
        "Wind: basic speed 24 m/s (mean of ten minutes, once in 50 years), terrain II, orography "
        "1.1,",
        "Site: outdoors, z = 0 lies 900 mm above the ground; damping 0.02",
        "Bronze: B1 (a bronze), f_y 124 MPa (at 0.5 %), f_u 124 MPa [a table, read]; wall 5 mm (4 "
        "mm to "
        "7 mm); surface 1.15; extra 10 %; castings looked at only.",
        "Armature: S1 (given in the piece file), f_y 450 MPa, modulus 200 GPa; 1 mm of its wall "
        "taken as "
        "lost to rust.",
        "The segments, all in mm",
        "foot-knee 60 x 56 66 x 60 5 (4-7) tube 33.7 x 4 42",
        "knee-crown none none none bar 20 to 16 none",
        "fish crown 0.9 kg (0.8 kg to 1 kg) 0.012 m2 1.3",
        "a mass that is given does not follow the scale, while wind areas and offsets do.",
        "foot fixed no",
        "banner variable crown y 400 N none",
        "rope accidental foot-knee, 0.2 to 0.7 of it z -200 N/m none",
        "Defaults used",
        NULL};
    has_in_order(order);
    f.piece->scale = 1.0;
    f.piece->file = "-";
    f.piece->report = TT_IMPERIAL;
    write_it(&f, NULL);
    has_not("follow the scale");
    has("from standard input. Basis");
    has("The segments, all in inches");
    has("foot-knee 2.362 x 2.205 2.598 x 2.362 0.1969 (0.1575-0.2756) tube 1.327 x 0.1575 1.654");
    f.piece->file = "a\033[2Jb\377";
    f.piece->segments.at[1].outline = f.piece->segments.at[0].outline;
    f.piece->segments.at[1].outline_to = f.piece->segments.at[0].outline;
    f.piece->segments.at[1].solid = true;
    f.piece->segments.at[1].extra = (tt_given){.is = 0.04, .low = 0.04, .high = 0.12};
    write_it(&f, NULL);
    has("from a?[2Jb?. Basis");
    has("extra from 4 % to 12 %, by segment");
    has(" solid bar ");
    fixture_close(&f);
}

static void what_was_said_of_the_wind(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has("Wind: nothing was said of it, and none was computed.");
    f.piece->site.wind =
        (tt_site_wind){.ruled_out = true, .none_because = "a hall stands round it"};
    write_it(&f, NULL);
    has("Wind: none, ruled out: a hall stands round it.");
    f.piece->site.indoors = true;
    write_it(&f, NULL);
    has("Wind: none, the piece stands indoors.");
    f.piece->site = (tt_site){.wind = {.given = true,
                                       .basic_speed = {.is = 115 * 0.44704},
                                       .exposure = 'C',
                                       .orography = {.is = 1},
                                       .directionality = {.is = 0.85}}};
    f.piece->report = TT_IMPERIAL;
    f.basis.id = "us";
    write_it(&f, NULL);
    has("Wind: basic speed 115 mph (gust of 3 s, strength level), exposure C, orography 1, "
        "directionality "
        "0.85, level with the sea.");
    fixture_close(&f);
}

/* No line ends inside "1.5 wind 290", wherever it stands. */
static int look_for_broken_winds(void *user, const char *bytes, size_t n)
{
    size_t *seen = user;
    for (const char *at = strstr(bytes, "wind"); at && at < bytes + n;
         at = strstr(at + 4, "wind")) {
        const bool named = at[4] == ' ' && isdigit((unsigned char)at[5]);
        const char *next = at + 4;
        while (*next && isspace((unsigned char)*next)) next++;
        if (at[4] == '\n') assert_false(isdigit((unsigned char)*next));
        if (named && at > bytes) assert_true(at[-1] == ' ' || at[-1] == '(');
        *seen += named;
    }
    assert_null(memchr(bytes, 3, n));
    return 0;
}

static void winds_are_never_broken(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    f.finding[0].combination = f.together[1].name = "6.10 sup: 1.35 weight + 1.5 wind 290";
    f.together[2].name = "1 weight + 1 wind 290";
    f.a.balance.combination = "1.1/0.9 weight + 1.5 wind 290";
    f.a.sway.together = &f.together[2];
    for (int width = 60; width < 140; width++) {
        size_t seen = 0;
        assert_int_equal(tt_write_text(&f.a, &(tt_text_options){.steps = 1, .width = width},
                                       look_for_broken_winds, &seen),
                         TT_OK);
        assert_int_equal(seen, 6); /* verdict, balance, table, its note, sway, calculation */
    }
    fixture_close(&f);
}

static void steps_when_asked_for(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has_not("sigma = N/A");
    write_it(&f, &(tt_text_options){.steps = 1});
    has("Holds: demand 83.0 MPa, resistance 100 MPa, use 83 %, under B (heavy weight, together).");
    has("assumes: it stands still");
    has("sigma = N/A = 1200/0.002 = 600000 Pa [a book, from memory]");
    f.direction.area = 0.25;
    f.direction.body.height = 2.0;
    write_it(&f, &(tt_text_options){.steps = 1});
    has("Wind 90 Pushes with 100 N in all, on 0.250 m2 across it. q = 10 z = 10*2 = 20.00 Pa [a "
        "book, from memory] n1 = 2.060 Hz [assumption of this program, of the ways of swinging");
    has("count as one; else the first, common practice] Cautions");
    fixture_close(&f);
}

/* Outdoors and without a word of the wind: that comes first, or behind what falls short. */
static void without_wind_the_first_line_says_so(void **state)
{
    (void)state;
    static const char only[] = "Only its weight and its own loads were checked: no wind was given, "
                               "and it stands outdoors.";
    fixture f;
    fixture_open(&f);
    f.piece->site = (tt_site){.indoors = false};
    write_it(&f, NULL);
    has("============================== Only its weight and its own loads were checked: no wind was "
        "given, and it stands outdoors. What was checked holds");
    f.a.verdict = TT_FALLS_SHORT;
    write_it(&f, NULL);
    has("============================== Falls short: ");
    has(only);
    f.piece->site.indoors = true;
    write_it(&f, NULL);
    has_not(only);
    f.piece->site = (tt_site){.wind = {.ruled_out = true}};
    write_it(&f, NULL);
    has_not(only);
    f.piece->site = (tt_site){.wind = {.given = true}};
    write_it(&f, NULL);
    has_not(only);
    fixture_close(&f);
}

/* A margin that is less than the use says (here 1/0.83 - 1 = 0.204 against 0.1) is marked. */
static void a_margin_of_a_neck_is_marked(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has_not("%* ");
    has_not("lower casting quality");
    f.finding[0].margin = 0.1;
    write_it(&f, NULL);
    has("margin 10 %, which counts the lower casting quality of a neck from half use on.");
    has("83 % 10 %* ");
    has("* The margin counts the lower casting quality of a neck, which holds from half use on.");
    f.finding[0].check = "fit"; /* its margin has a rule of its own */
    write_it(&f, NULL);
    has_not("lower casting quality");
    fixture_close(&f);
}

/* 0.0889 m where 0.05095 m are: 3.5 in, 2.00591 in. */
static void what_does_not_go_in_says_by_how_much(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    f.a.verdict = TT_FALLS_SHORT;
    f.finding[0] = (tt_finding){.check = "fit",
                                .where = "at knee",
                                .segment = F_UPPER,
                                .demand = 0.0889,
                                .resistance = 0.050950,
                                .unit = "m",
                                .has_use = true,
                                .use = 0.0889 / 0.050950,
                                .margin = 0.050950 / 0.0889 - 1.0};
    f.piece->report = TT_IMPERIAL;
    write_it(&f, NULL);
    has("Falls short: at knee, fit of the armature: needs 3.50 in, has 2.01 in.");
    write_it(&f, &(tt_text_options){.width = 200});
    has("at knee fit of the armature: needs 3.50 in, has 2.01 in none none");
    has_not("-43 %");
    f.finding[0].holds = true;
    f.finding[0].use = 0.9;
    f.finding[0].margin = 1.0 / 0.9 - 1.0;
    write_it(&f, NULL);
    has("fit of the armature: use 90 %");
    fixture_close(&f);
}

static void a_use_beyond_all_measure(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    f.a.verdict = TT_FALLS_SHORT;
    f.finding[0].holds = false;
    f.finding[0].use = 21.908;
    f.finding[0].margin = 1.0 / 21.908 - 1.0;
    write_it(&f, NULL);
    has("strength of the bronze: use over 1000 % under B");
    f.finding[0].use = 9.999;
    write_it(&f, NULL);
    has("strength of the bronze: use 1000 % under B");
    fixture_close(&f);
}

static void the_design_that_was_asked_for_and_not_done(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has_not("asd");
    f.piece->method = 1;
    write_it(&f, NULL);
    has("The file asks for asd: this version does not compute it, and the steel was judged by "
        "lrfd. Weight and balance");
    fixture_close(&f);
}

/* A round post: two ways of swinging that differ in nothing but the direction. */
static void two_ways_of_a_round_post_are_one(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    tt_mode two[2] = {f.mode[TT_ALONE], f.mode[TT_ALONE]};
    for (int k = 0; k < 2; k++) two[0].mass_fraction[k] = two[1].mass_fraction[k] = 0.4;
    f.a.solution.modes[TT_ALONE].at = two;
    f.a.solution.modes[TT_ALONE].n = 2;
    write_it(&f, NULL);
    /* (0.4 + 0.4) of the 75 kg of 100 kg that can move */
    has("It sways both ways 2.1 times a second, carrying 60 % of the weight. In the stiffer");
    has_not("aslant");
    has_not("they do not add up");
    two[1].frequency *= 1.2;
    write_it(&f, NULL);
    has("It sways aslant 2.1 times a second, carrying 30 % of the weight. It sways aslant ");
    has_not("both ways");
    fixture_close(&f);
}

static void units_of_a_report_in_inches(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    f.piece->report = TT_IMPERIAL;
    f.finding[0].demand = 4.875e5;      /* 70.7 psi */
    f.finding[0].resistance = 66.12e6;  /* 9.59 ksi */
    write_it(&f, &(tt_text_options){.steps = 1});
    has("demand 0.0707 ksi, resistance 9.59 ksi");
    /* 1620 N, 150 N over 4.4482 N; 120 N.m, 7.5 N.m over 1.35582 N.m */
    has("364 lbf 0 lbf 33.7 lbf 88.5 ft.lbf 5.53 ft.lbf");
    f.piece->report = TT_METRIC;
    write_it(&f, NULL);
    has_not("= 0.0394 in");
    tt_origin loss = {.key = "armature/loss", .written = "1 mm", .kind = TT_ORIGIN_DEFAULT};
    assert_true(tt_list_push(&f.piece->origins, loss));
    f.piece->report = TT_IMPERIAL;
    write_it(&f, NULL);
    has("armature/loss: 1 mm = 0.0394 in"); /* 1/25.4 */
    fixture_close(&f);
}

static void a_pipe_has_its_own_name(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    fill(&f);
    write_it(&f, NULL);
    has("tube 33.7 x 4");
    tt_origin pipe = {
        .key = "armature", .written = "pipe 1 1/4 sch 80S", .kind = TT_ORIGIN_FILE};
    assert_true(tt_list_push(&f.piece->origins, pipe));
    f.piece->segments.at[0].armature.origin = (unsigned)f.piece->origins.n - 1;
    write_it(&f, NULL);
    has("5 (4-7) pipe 1 1/4 sch 80S 42");
    has_not("tube 33.7 x 4");
    fixture_close(&f);
}

static void the_number_behind_a_wind_is_a_direction(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    write_it(&f, NULL);
    has_not("The number behind a wind");
    f.finding[0].combination = "(4): 1.2 weight + 1 wind 120";
    write_it(&f, NULL);
    has("The number behind a wind is its direction: wind 120 blows towards 120 deg; 0 deg is +x, 90 "
        "deg is +y.");
    fixture_close(&f);
}

static void cautions_are_always_there(void **state)
{
    (void)state;
    static const tt_verdict verdicts[] = {TT_HOLDS, TT_FALLS_SHORT, TT_NOT_CHECKED};
    static const tt_text_options options[] = {{0}, {.steps = 1}, {.bold = 1}, {.width = 40}};
    for (size_t i = 0; i < 12; i++) {
        fixture f;
        fixture_open(&f);
        f.a.verdict = verdicts[i % 3];
        write_it(&f, &options[i / 3]);
        size_t n = 0;
        for (const char *const *caution = tt_cautions(); *caution; caution++, n++) has(*caution);
        assert_true(n >= 18);
        fixture_close(&f);
    }
}

static bool says(const char *word)
{
    const size_t n = strlen(word);
    for (const char *at = strstr(got, word); at; at = strstr(at + 1, word)) {
        if ((at == got || !isalpha((unsigned char)at[-1])) && !isalpha((unsigned char)at[n]))
            return true;
    }
    return false;
}

static void never_these_words(void **state)
{
    (void)state;
    static const char *const words[] = {
        "safe",   "Safe", "unsafe", "pass",     "passes", "fail",         "fails",
        "failed", "OK",   "ok",     "approved", "unity",  "\342\234\223", "\342\234\227"};
    fixture f;
    fixture_open(&f);
    write_it(&f, &(tt_text_options){.steps = 1});
    assert_true(says("holds"));
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        if (says(words[i])) print_error("says %s\n", words[i]);
        assert_false(says(words[i]));
    }
    fixture_close(&f);
}

static int stop(void *user, const char *bytes, size_t n)
{
    (void)user;
    (void)bytes;
    (void)n;
    return 1;
}

static void a_sink_that_stops(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    assert_int_equal(tt_write_text(&f.a, NULL, stop, NULL), TT_E_WRITE);
    assert_int_equal(tt_write_json(&f.a, stop, NULL), TT_E_WRITE);
    fixture_close(&f);
}

static void a_number_that_is_none_stops_it(void **state)
{
    (void)state;
    fixture f;
    fixture_open(&f);
    double *const spots[] = {
        &f.model.centre[TT_NOMINAL].x, &f.finding[0].use,        &f.finding[0].demand,
        &f.finding[0].margin,          &f.step[0].value,         &f.unchecked[1].demand,
        &f.a.balance.edge_distance,    &f.model.weight[0].bronze};
    for (size_t i = 0; i < sizeof spots / sizeof *spots; i++) {
        const double before = *spots[i];
        *spots[i] = NAN;
        got_n = 0;
        assert_int_equal(tt_write_text(&f.a, &(tt_text_options){.steps = 1}, gather, NULL),
                         TT_E_NOT_FINITE);
        assert_int_equal(got_n, 0);
        *spots[i] = before;
    }
    write_it(&f, NULL);
    fixture_close(&f);
}

typedef tt_status write_fn(const fixture *f);

static tt_status text_of(const fixture *f)
{
    return tt_write_text(&f->a, &(tt_text_options){.steps = 1}, gather, NULL);
}

static tt_status json_of(const fixture *f)
{
    return tt_write_json(&f->a, gather, NULL);
}

static tt_status stock_of(const fixture *f)
{
    (void)f;
    refuse_after += refuse_after >= 0 ? 1 : 0; /* the list of diagnostics itself */
    tt_diags *diags = tt_diags_new(0);
    const tt_status status = tt_write_stock("alloys", NULL, NULL, NULL, diags, gather, NULL);
    tt_diags_free(diags);
    return status;
}

/* Refuses the first request, then the second, and so on, until nothing is refused any more. */
static void refuse_each(write_fn *write)
{
    fixture f;
    fixture_open(&f);
    long refusals = 0;
    for (tt_status status = TT_E_NOMEM; status == TT_E_NOMEM; refusals++) {
        got_n = 0;
        refuse_after = refusals;
        status = write(&f);
        const bool refused_one = refuse_after < 0;
        refuse_after = -1;
        assert_int_equal(status, refused_one ? TT_E_NOMEM : TT_OK);
        assert_int_equal(got_n > 0, !refused_one);
    }
    assert_true(refusals > 10);
    fixture_close(&f);
}

static void each_refusal_of_memory(void **state)
{
    (void)state;
    refuse_each(text_of);
    refuse_each(json_of);
    refuse_each(stock_of);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(sections_stand_in_their_order),
                                       cmocka_unit_test(the_verdict_in_one_sentence),
                                       cmocka_unit_test(weight_and_centre),
                                       cmocka_unit_test(sway_and_reactions),
                                       cmocka_unit_test(what_is_missing_and_where_values_come_from),
                                       cmocka_unit_test(what_was_put_in),
                                       cmocka_unit_test(what_was_said_of_the_wind),
                                       cmocka_unit_test(winds_are_never_broken),
                                       cmocka_unit_test(steps_when_asked_for),
                                       cmocka_unit_test(without_wind_the_first_line_says_so),
                                       cmocka_unit_test(a_margin_of_a_neck_is_marked),
                                       cmocka_unit_test(what_does_not_go_in_says_by_how_much),
                                       cmocka_unit_test(a_use_beyond_all_measure),
                                       cmocka_unit_test(the_design_that_was_asked_for_and_not_done),
                                       cmocka_unit_test(two_ways_of_a_round_post_are_one),
                                       cmocka_unit_test(units_of_a_report_in_inches),
                                       cmocka_unit_test(a_pipe_has_its_own_name),
                                       cmocka_unit_test(the_number_behind_a_wind_is_a_direction),
                                       cmocka_unit_test(cautions_are_always_there),
                                       cmocka_unit_test(never_these_words),
                                       cmocka_unit_test(a_sink_that_stops),
                                       cmocka_unit_test(a_number_that_is_none_stops_it),
                                       cmocka_unit_test(each_refusal_of_memory)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
