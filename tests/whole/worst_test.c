/* The worst cut of a segment, found by bounds, is the worst of all: against brute force over every
 * cut, carry model, combination, weight and way of leaning, each of second order, on pieces made at
 * random from a fixed seed. */
#include "house.h"

#include "check/parts.h"

static double random_between(unsigned *seed, double low, double high)
{
    *seed = *seed * 1664525u + 1013904223u;
    return low + (high - low) * (double)(*seed >> 8) / (double)(1u << 24);
}

static void write_piece(unsigned *seed, char *text, size_t size)
{
    const bool eu = *seed & 0x8000u;
    const char *kind = eu ? "variable" : "accidental";
    const double a = random_between(seed, 70, 160), b = random_between(seed, 70, 160);
    const double x = random_between(seed, -300, 300), y = random_between(seed, -300, 300);
    snprintf(
        text, size,
        "piece: Random\nunits: mm\nbasis: %s\nbronze: {alloy: C87300, wall: %.1f}\narmature: "
        "{grade: \"1.4462\"}\n"
        "limbs:\n  leg: {rows: [[foot, 0, 0, 0, %.0f, %.0f], [knee, %.0f, %.0f, 700, %.0f, %.0f], "
        "[hip, %.0f, %.0f, 1300, 150, 120]], armature: {bar: 25}}\n"
        "  arm: [[hip], [hand, %.0f, %.0f, 1500, 80, 60]]\n"
        "stands: [{at: foot, held: fixed}]\nsite: {wind: {basic_speed: %s}}\n"
        "loads: [{case: pull, kind: %s, at: hand, force: [%.0f N, %.0f N, %.0f N]},\n"
        "  {case: pull, kind: %s, along: knee-hip, force_per_length: [0, %.0f N/m, 20 N/m], "
        "between: [0.2, 0.7]}]\n",
        eu ? "eu" : "us", random_between(seed, 3, 8), a, b, x, y, b, a, x / 2, y / 3, y * 2, x * 2,
        eu ? "26 m/s, terrain: III" : "110 mph, exposure: B", kind, random_between(seed, -400, 400),
        random_between(seed, -400, 400), random_between(seed, -400, 400), kind,
        random_between(seed, -300, 300));
}

/* Any norm of the section forces will do: here one that no check uses. */
static double stress_of(const tt_loaded_cut *at)
{
    if (at->carry == TT_TOGETHER && at->cut->segment == 2) return -1.0; /* not asked there */
    const tt_forces *f = &at->whole;
    return fabs(f->n) / 7.0 + sqrt(f->my * f->my + 3.0 * f->mz * f->mz + 0.5 * f->t * f->t) +
           fabs(f->vy) / 11.0;
}

static double use_of(const tt_loaded_cut *at, double stress)
{
    return stress > 50.0 && at->cut->neck ? stress / 100.0 : stress / 130.0;
}

static const tt_judged_part part = {
    stress_of, use_of, {[TT_STRENGTH] = true, [TT_ACCIDENTAL] = true}};

static double use_of_exact(const tt_check_input *in, const tt_exact *exact, size_t cut)
{
    tt_loaded_cut at = {.in = in, .cut = &in->model->cuts.at[cut], .carry = exact->carry};
    if (exact->second.buckles) return INFINITY;
    at.whole = tt_exact_strain_forces(in->second, exact, at.cut);
    const double stress = stress_of(&at);
    return stress < 0.0 ? -1.0 : use_of(&at, stress);
}

/* Every situation solved on the moved frame, whether it may govern or not; those that the search
 * solved are there already, and cost nothing. */
static double worst_of_situation(const tt_check_input *in, size_t segment, int carry,
                                 const tt_situation *of)
{
    const tt_exact *exact = tt_situation_exact(in->second, carry, of);
    double worst = -1.0;
    assert_non_null(exact);
    for (size_t c = in->model->first_cut[segment]; c < in->model->first_cut[segment + 1]; c++)
        worst = fmax(worst, use_of_exact(in, exact, c));
    return worst;
}

static double brute_force(const tt_check_input *in, size_t segment, const bool *levels)
{
    double worst = -1.0;
    for (size_t i = 0; i < in->combinations->n; i++) {
        const tt_combination *together = &in->combinations->at[i];
        const int leans = tt_leans(in->second, together);
        if (!levels[together->level]) continue;
        for (int k = 0; k < TT_MODELS * 2; k++) {
            for (int lean = leans ? 0 : TT_UPRIGHT; lean < leans; lean++) {
                const tt_situation of = {together, k / 2 ? TT_LIGHT : TT_HEAVY, lean};
                worst = fmax(worst, worst_of_situation(in, segment, k % 2, &of));
            }
        }
    }
    return worst;
}

static void bounds_change_no_maximum(void **state)
{
    (void)state;
    static const bool levels[TT_LEVELS] = {[TT_STRENGTH] = true, [TT_ACCIDENTAL] = true};
    unsigned seed = 20261125u;
    for (int i = 0; i < 20; i++) {
        char text[2000];
        write_piece(&seed, text, sizeof text);
        house h = house_of(text);
        const tt_check_input in = house_input(&h);
        for (size_t s = 0; s < h.piece->segments.n; s++) {
            tt_worst worst;
            assert_int_equal(tt_worst_of(&in, s, &part, 0.0, &worst), TT_OK);
            const double all = brute_force(&in, s, levels);
            assert_true(worst.any);
            assert_true(worst.use >= all * (1.0 - 1e-12)); /* the step between cuts may add to it */
            assert_true(worst.use <= all * 1.02);
            const tt_loaded_cut at = {&in, &worst.cut, worst.carry, worst.whole};
            assert_close(use_of(&at, stress_of(&at)), worst.use, 1e-12);
        }
        house_close(&h);
    }
}

/* The same at a cut that lies between the model's own: by the frame, not by interpolation. */
static void forces_between_cuts(void **state)
{
    (void)state;
    house h = house_of("piece: Post\nunits: mm\nbronze: {alloy: C87300, wall: 4}\n"
                       "limbs: {post: [[foot, 0, 0, 0, 300], [top, 0, 0, 2000, 300]]}\n"
                       "stands: [{at: foot, held: fixed}]\n"
                       "loads: [{case: pull, kind: variable, at: top, force: [100 N, 0, 0]}]\n");
    const tt_cut cut = tt_model_cut_at(h.a->model, 0, 0.37);
    const tt_forces f = tt_unit_forces(h.a->second, TT_ALONE, TT_PATTERNS, &cut);
    /* The front is +x, so local z is global +x. On the face that looks up acts what is above: the
     * force along +z, and 1.26 m of x cross 100 N of z: -126 N.m about y. */
    assert_near(f.vz, 100.0, 1e-9);
    assert_near(f.my, -126.0, 1e-9);
    assert_near(f.mz, 0.0, 1e-9);
    assert_near(f.n, 0.0, 1e-9);
    house_close(&h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bounds_change_no_maximum),
        cmocka_unit_test(forces_between_cuts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
