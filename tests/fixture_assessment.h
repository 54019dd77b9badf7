/* tests/fixture_assessment.h - a small assessment made by hand: a post of two limbs on one stand,
 * weight and one wind, four loads together, a handful of findings. Every figure is round, so that a
 * test can say by head what must come out of it. Not a piece that anybody computed. */
#ifndef TT_TESTS_FIXTURE_ASSESSMENT_H
#define TT_TESTS_FIXTURE_ASSESSMENT_H

#include "assess/assessment.h"
#include "assert_close.h"

enum { F_FOOT, F_KNEE, F_CROWN, F_POINTS };
enum { F_LOWER, F_UPPER, F_SEGMENTS };
enum { F_WIND = TT_PATTERNS, F_CASES };
enum { F_CUTS = 4 };

typedef struct {
    tt_piece *piece;
    tt_model model;
    tt_basis basis;
    tt_assessment a;
    tt_cut cuts[F_CUTS];
    double bronze[F_SEGMENTS][TT_PATTERNS], armature[F_SEGMENTS];
    double move[TT_MODELS][F_CASES][F_POINTS][6], reaction[TT_MODELS][F_CASES][F_POINTS][6];
    tt_forces forces[TT_MODELS][F_CASES][F_CUTS];
    tt_answer answer[TT_MODELS][F_CASES];
    double shape[F_POINTS][6];
    tt_mode mode[TT_MODELS];
    tt_case cases[F_CASES];
    tt_part wind_and_half[2], wind[1];
    tt_combination together[4];
    tt_step step[2];
    const char *assumes[2];
    tt_finding finding[3];
    tt_unchecked unchecked[2];
    tt_inapplicable inapplicable[1];
    size_t order[3];
    tt_vec3 polygon[3];
    tt_wind_direction direction;
} fixture;

static inline void fixture_piece(fixture *f)
{
    tt_piece *p = f->piece = tt_piece_new();
    assert_non_null(p);
    p->name = "Post with a Knee";
    p->file = "post.yaml";
    p->basis = "eu";
    p->edition = "first";
    p->scale = 2.0;
    p->limits.use = (tt_given){.is = 1.0, .low = 1.0, .high = 1.0};
    static const char *const names[F_POINTS] = {"foot", "knee", "crown"};
    for (int i = 0; i < F_POINTS; i++) {
        assert_true(tt_list_push(&p->points, (tt_point){.name = names[i], .at = {0, 0, i}}));
    }
    p->faces = (tt_vec3){1, 0, 0};
    assert_true(tt_list_push(&p->segments, (tt_segment){.name = "foot-knee",
                                                        .to = F_KNEE,
                                                        .faces = {1, 0, 0},
                                                        .armature = {.form = TT_MEMBER_BAR}}));
    assert_true(tt_list_push(
        &p->segments,
        (tt_segment){.name = "knee-crown", .from = F_KNEE, .to = F_CROWN, .faces = {1, 0, 0}}));
    assert_true(tt_list_push(&p->stands, (tt_stand){.at = F_FOOT}));
    assert_true(tt_list_push(&p->origins, (tt_origin){.key = "site/damping",
                                                      .written = "0.02",
                                                      .why = "nobody measured it",
                                                      .kind = TT_ORIGIN_DEFAULT}));
    assert_true(tt_list_push(&p->origins, (tt_origin){.key = "bronze/wall",
                                                      .written = "6 mm",
                                                      .why = "the foundry says so",
                                                      .kind = TT_ORIGIN_FILE}));
    assert_true(tt_list_push(
        &p->origins, (tt_origin){.key = "height", .written = "2 m", .kind = TT_ORIGIN_FILE}));
}

static inline void fixture_model(fixture *f)
{
    f->model =
        (tt_model){.piece = f->piece, .segment_bronze = f->bronze, .segment_armature = f->armature};
    f->model.weight[TT_NOMINAL] = (tt_weight){60, 30, 10};
    f->model.weight[TT_HEAVY] = (tt_weight){80, 30, 10};
    f->model.weight[TT_LIGHT] = (tt_weight){50, 30, 10};
    f->model.centre[TT_NOMINAL] = (tt_vec3){0.05, -0.02, 0.8};
    for (int s = 0; s < F_SEGMENTS; s++)
        f->bronze[s][TT_NOMINAL] = 20 * (s + 1), f->armature[s] = 15;
    for (int c = 0; c < F_CUTS; c++) {
        f->cuts[c] = (tt_cut){.segment = (size_t)c / 2,
                              .x = c % 2,
                              .axes = {{0, 0, 1}, {0, 1, 0}, {-1, 0, 0}},
                              .bore = 0.05};
        f->cuts[c].bronze =
            (tt_section){.area = 0.002, .iy = 1e-6, .iz = 2e-6, .iyz = 3e-8, .j = 4e-6};
    }
    f->model.cuts.at = f->cuts;
    f->model.cuts.n = F_CUTS;
}

/* A wind that grows by 10 Pa a metre, and no gusts. */
static inline double fixture_pressure(const tt_wind_site *site, double z, tt_steps *steps)
{
    static const tt_source book = {.document = "a book", .mark = TT_FROM_MEMORY};
    (void)site;
    tt_step_add(steps, "q", "10 z", 10.0 * z, "Pa", &book, "10*%.0f", z);
    return 10.0 * z;
}

static inline double fixture_gust(const tt_wind_site *site, const tt_wind_body *body,
                                  tt_steps *steps)
{
    (void)site;
    (void)body;
    (void)steps;
    return 1.0;
}

/* The stand takes 1000, 1200, 900 N of weight; the wind gives 100 N and 40 N.m, twice the moment
 * when both share; the crown goes 2 mm, or 1 mm. */
static inline void fixture_solution(fixture *f)
{
    static const double down[TT_PATTERNS] = {1000, 1200, 900};
    for (int m = 0; m < TT_MODELS; m++) {
        for (int c = 0; c < TT_PATTERNS; c++) f->reaction[m][c][F_FOOT][2] = down[c];
        f->reaction[m][F_WIND][F_FOOT][0] = -100;
        f->reaction[m][F_WIND][F_FOOT][4] = m == TT_ALONE ? -40 : -80;
        f->reaction[m][F_WIND][F_FOOT][5] = 5;
        f->move[m][F_WIND][F_CROWN][0] = m == TT_ALONE ? 0.002 : 0.001;
        for (int c = 0; c < F_CASES; c++) {
            for (int k = 0; k < F_CUTS; k++) f->forces[m][c][k].n = -10.0 * (c + 1) - k;
            f->answer[m][c] =
                (tt_answer){.state = {.move = f->move[m][c], .reaction = f->reaction[m][c]},
                            .cut = f->forces[m][c],
                            .sense = 1};
        }
        f->a.solution.answer[m] = f->answer[m];
        f->shape[F_CROWN][0] = 1;
        f->mode[m] = (tt_mode){.frequency = m == TT_ALONE ? 2.06 : 3.5,
                               .mass_fraction = {0.8, 0.1, 0},
                               .shape = f->shape};
        f->a.solution.modes[m] = (tt_modes){.at = &f->mode[m], .n = 1, .free_mass = {75, 75, 75}};
        f->a.proof.modes[m] = (tt_mode_proof){.shift = 500, .counted = 1, .found = 1};
    }
}

static inline void fixture_loads(fixture *f)
{
    static const char *const names[F_CASES] = {"weight", "weight", "weight", "wind 90"};
    for (int c = 0; c < F_CASES; c++)
        f->cases[c] = (tt_case){.name = names[c],
                                .kind = c < F_WIND ? TT_CASE_WEIGHT : TT_CASE_WIND,
                                .direction = c < F_WIND ? 0 : 90};
    f->a.actions.cases.at = f->cases;
    f->a.actions.cases.n = F_CASES;
    f->direction = (tt_wind_direction){
        .direction = 90, .gust = 1.1, .body = {.frequency = 2.06}, .force = {0, 100, 0}};
    f->a.actions.wind = &f->direction;
    f->a.actions.winds = 1;
    f->wind_and_half[0] = (tt_part){F_WIND, 1.0};
    f->wind_and_half[1] = (tt_part){F_WIND, 0.5};
    f->wind[0] = (tt_part){F_WIND, 1.0};
    const tt_source source = {
        .document = "a standard", .edition = "1999", .place = "table 1", .mark = TT_READ};
    f->together[0] = (tt_combination){.name = "A",
                                      .level = TT_STRENGTH,
                                      .source = source,
                                      .weight = 1.35,
                                      .patterned = true,
                                      .leading = TT_NONE};
    f->together[1] = (tt_combination){.name = "B",
                                      .level = TT_STRENGTH,
                                      .source = source,
                                      .weight = 1.0,
                                      .part = f->wind_and_half,
                                      .parts = 2,
                                      .patterned = true,
                                      .leading = F_WIND};
    f->together[2] = (tt_combination){.name = "S",
                                      .level = TT_SERVICE,
                                      .source = source,
                                      .weight = 1.0,
                                      .part = f->wind,
                                      .parts = 1,
                                      .leading = F_WIND};
    f->together[3] = (tt_combination){.name = "mine",
                                      .level = TT_ACCIDENTAL,
                                      .source = source,
                                      .weight = 0.5,
                                      .own = true,
                                      .leading = TT_NONE};
    f->a.combinations.at = f->together;
    f->a.combinations.n = 4;
}

static inline void fixture_findings(fixture *f)
{
    const tt_source memory = {.document = "a book", .mark = TT_FROM_MEMORY};
    f->step[0] = (tt_step){"sigma", "N/A", "1200/0.002", "Pa", 600000, memory};
    f->step[1] = (tt_step){"W", NULL, NULL, "m3", 1e-6, memory};
    f->assumes[0] = "it stands still";
    f->finding[0] = (tt_finding){.check = "strength.bronze",
                                 .where = "at foot",
                                 .segment = F_LOWER,
                                 .x = 0,
                                 .combination = "B",
                                 .pattern = "heavy",
                                 .model = "together",
                                 .demand = 83e6,
                                 .resistance = 100e6,
                                 .unit = "Pa",
                                 .has_use = true,
                                 .use = 0.83,
                                 .margin = 1 / 0.83 - 1,
                                 .holds = true,
                                 .assumes = f->assumes,
                                 .steps = f->step,
                                 .steps_n = 2};
    f->finding[1] = (tt_finding){.check = "mass",
                                 .where = "the whole piece",
                                 .segment = TT_NONE,
                                 .demand = 100,
                                 .resistance = 200,
                                 .unit = "kg",
                                 .has_use = true,
                                 .use = 0.5,
                                 .margin = 1,
                                 .holds = true};
    f->finding[2] = (tt_finding){.check = "strength.armature",
                                 .where = "at knee",
                                 .segment = F_UPPER,
                                 .x = 1,
                                 .combination = "A",
                                 .pattern = "light",
                                 .model = "armature alone",
                                 .demand = 0,
                                 .resistance = 100e6,
                                 .unit = "Pa",
                                 .has_use = true,
                                 .use = 0,
                                 .margin = 0,
                                 .holds = true};
    f->a.findings.list.at = f->finding;
    f->a.findings.list.n = 3;
    for (size_t i = 0; i < 3; i++) f->order[i] = i;
    f->a.order = f->order;
    f->unchecked[0] =
        (tt_unchecked){.check = "shaking", .where = "the whole piece", .why = "it can be shaken"};
    f->unchecked[1] = (tt_unchecked){.check = "transfer",
                                     .where = "at knee",
                                     .why = "nobody described it",
                                     .give = "attach",
                                     .needed = true,
                                     .has_demand = true,
                                     .demand = 12,
                                     .unit = "N.m"};
    f->a.findings.unchecked.at = f->unchecked;
    f->a.findings.unchecked.n = 2;
    f->inapplicable[0] = (tt_inapplicable){"balance", "it is held down"};
    f->a.findings.inapplicable.at = f->inapplicable;
    f->a.findings.inapplicable.n = 1;
}

static inline void fixture_open(fixture *f)
{
    *f = (fixture){0};
    f->basis = (tt_basis){
        .id = "eu", .title = "a basis", .pressure = fixture_pressure, .gust = fixture_gust};
    fixture_piece(f);
    fixture_model(f);
    fixture_solution(f);
    fixture_loads(f);
    fixture_findings(f);
    f->a.piece = f->piece;
    f->a.basis = &f->basis;
    f->a.model = &f->model;
    f->polygon[1] = (tt_vec3){1, 0, 0};
    f->polygon[2] = (tt_vec3){0, 1, 0};
    f->a.balance = (tt_balance){.applies = true,
                                .polygon = f->polygon,
                                .polygon_n = 3,
                                .drawn_in = 0.005,
                                .edge_distance = 0.03,
                                .edge_way = {0, -1, 0},
                                .use = 1.5,
                                .combination = "B"};
    f->a.sway = (tt_sway){.together = &f->together[2],
                          .move = 0.002,
                          .height = 2.0,
                          .point = F_CROWN,
                          .carry = TT_ALONE,
                          .pattern = TT_HEAVY};
    f->a.verdict = TT_NOT_CHECKED;
    f->a.governing = 0;
}

static inline void fixture_close(fixture *f)
{
    tt_piece_free(f->piece);
}

/* ---- memory that refuses ----------------------------------------------------------------------
 */

#ifdef FIXTURE_REFUSES
#include "base/alloc.h"
#include <stdlib.h>

/* This file's own pair stands in place of base/alloc.c: the n-th request from now is refused. */
static long refuse_after = -1;

static int refused(void)
{
    return refuse_after >= 0 && refuse_after-- == 0;
}

void *tt_alloc(size_t n, size_t size)
{
    return refused() ? NULL : calloc(n ? n : 1, size ? size : 1);
}

void *tt_realloc(void *block, size_t n, size_t size)
{
    return refused() ? NULL : realloc(block, n > 0 && size > 0 ? n * size : 1);
}

void *tt_free(void *block)
{
    free(block);
    return NULL;
}
#endif

#endif
