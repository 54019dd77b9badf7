/* Two parts that bend together, each by its share of the forces of the cut, against bars of two
 * materials: tests/cases/model/two-materials.case, which says what the words mean. The mechanics is
 * the same in any units. */
#include "cases.h"
#include "model/parts.h"

/* A cut of one segment: the body as its bronze, the core as its armature. */
typedef struct {
    tt_piece *piece;
    tt_cut cut;
} pair;

static tt_section part_of(const test_case *c, const char *name)
{
    const tt_outline box =
        tt_outline_of(TT_OUTLINE_BOX, case_number(c, name, 0), case_number(c, name, 1));
    return tt_section_off(tt_section_solid(&box, 0.3), 0.0, case_number(c, name, 2));
}

static bool add_metal(tt_piece *piece, double young)
{
    tt_metal metal = {.name = "of the case"};
    metal.fact[TT_P_YOUNG_LOW] = (tt_fact){.value = young, .has = true};
    metal.fact[TT_P_POISSON] = (tt_fact){.value = 0.3, .has = true};
    return tt_list_push(&piece->metals, metal);
}

static pair pair_of(const test_case *c)
{
    pair p = {tt_piece_new(), {.bronze = part_of(c, "body"), .armature = part_of(c, "core")}};
    assert_non_null(p.piece);
    assert_true(add_metal(p.piece, case_number(c, "body_e", 0)));
    assert_true(add_metal(p.piece, case_number(c, "core_e", 0)));
    const tt_segment segment = {.alloy = 0, .armature = {.form = TT_MEMBER_FLAT, .metal = 1}};
    assert_true(tt_list_push(&p.piece->segments, segment));
    tt_cut_share(p.piece, &p.cut);
    return p;
}

/* Normal stress of a part at its top (side 1) or bottom (-1), by its share of the moment. */
static double stress_at(const tt_share *share, const tt_section *part, double moment, int side)
{
    const tt_forces whole = {.my = moment}, own = tt_shared(share, part, &whole);
    const tt_forces f = tt_section_forces(part, &own);
    return f.n / part->area + f.my * side * part->reach_z / part->iy;
}

static double worst(const tt_share *share, const tt_section *part, double moment)
{
    const tt_forces whole = {.my = moment}, own = tt_shared(share, part, &whole);
    return tt_section_stress(part, &own).normal;
}

static double answer(const test_case *c, const tt_cut *cut, const char *name)
{
    const double moment = case_number(c, "moment", 0), deep = case_number(c, "body", 1);
    const double body[2] = {stress_at(&cut->share_bronze, &cut->bronze, moment, -1),
                            stress_at(&cut->share_bronze, &cut->bronze, moment, 1)};
    const double core[2] = {stress_at(&cut->share_armature, &cut->armature, moment, -1),
                            stress_at(&cut->share_armature, &cut->armature, moment, 1)};
    const double inertia = moment * deep / (body[1] - body[0]);
    const struct {
        const char *name;
        double value;
    } known[] = {
        {"body_bottom", body[0]},
        {"body_top", body[1]},
        {"core_bottom", core[0]},
        {"core_top", core[1]},
        {"body_worst", worst(&cut->share_bronze, &cut->bronze, moment)},
        {"core_worst", worst(&cut->share_armature, &cut->armature, moment)},
        {"n", core[1] / body[1]},
        {"inertia", inertia},
        {"width", 12.0 * inertia / (deep * deep * deep)},
        {"neutral", deep * body[0] / (body[0] - body[1])},
    };
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        if (strcmp(known[i].name, name) == 0) return known[i].value;
    }
    fail_msg("no quantity '%s'", name);
    return NAN;
}

/* The two shares make up the whole, and what each is stressed by is of one strain. */
static void run(const test_case *c)
{
    pair p = pair_of(c);
    const tt_forces whole = {.my = case_number(c, "moment", 0)};
    const tt_forces body = tt_shared(&p.cut.share_bronze, &p.cut.bronze, &whole);
    const tt_forces core = tt_shared(&p.cut.share_armature, &p.cut.armature, &whole);
    assert_close(body.my + core.my, whole.my, 1e-12);
    assert_near(body.n + core.n, 0.0, 1e-9 * fabs(whole.my));
    for (int i = 0; i < c->expects; i++) case_expect(c, i, answer(c, &p.cut, c->expect[i].name));
    tt_piece_free(p.piece);
}

static void bars_of_two_materials(void **state)
{
    (void)state;
    assert_int_equal(cases_run("model", "two-materials.case", run), 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(bars_of_two_materials)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
