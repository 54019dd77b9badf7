/* The list of loads together, counted and spelt out by hand from the rules of each basis. */
#include "house.h"

#define PIECE(basis, wind, own)                                                                    \
    "piece: Post\nunits: mm\nbasis: " basis "\nbronze: {alloy: C87300, wall: 4}\n"                 \
    "limbs: {post: [[foot, 0, 0, 0, 300], [top, 0, 0, 1500, 200]]}\n"                              \
    "stands: [{at: foot, held: fixed}]\nsite: {wind: " wind "}\n"                                  \
    "loads:\n"                                                                                     \
    "  - {case: swing, kind: variable, at: top, force: [100 N, 0, 0]}\n"                           \
    "  - {case: lamp, kind: permanent, at: top, force: [0, 0, -50 N]}\n"                           \
    "  - {case: bump, kind: accidental, at: top, force: [0, 300 N, 0]}\n"                          \
    "combinations: [{name: mine, level: strength, sum: {" own "}}]\n"

static size_t of_level(const house *h, tt_level level)
{
    size_t n = 0;
    for (size_t i = 0; i < h->a->combinations.n; i++) n += h->a->combinations.at[i].level == level;
    return n;
}

static const tt_combination *named(const house *h, const char *name)
{
    for (size_t i = 0; i < h->a->combinations.n; i++) {
        if (strcmp(h->a->combinations.at[i].name, name) == 0) return &h->a->combinations.at[i];
    }
    fail_msg("no combination \"%s\"", name);
    return NULL;
}

static double factor_of(const house *h, const tt_combination *together, const char *acting)
{
    double sum = 0.0;
    for (size_t i = 0; i < together->parts; i++) {
        if (strcmp(h->a->actions.cases.at[together->part[i].acting].name, acting) == 0)
            sum += together->part[i].factor;
    }
    return sum;
}

/* eu, risk 2. Strength: 6.10 with G unfavourable and favourable; each with wind leading (36) with
 * or without the own case, with the own case leading with no wind or one of 36, and, unfavourable
 * only, bare: 2 (72 + 37) + 1 = 219; each with the lamp, which is permanent and of another source
 * than the weight, at 1.35 and at 1.00: 438; and 36 of the file's own. */
static void european(void **state)
{
    (void)state;
    house h = house_of(
        PIECE("eu", "{basic_speed: 24 m/s, terrain: II}", "weight: 1.1, wind: 0.7, swing: -0.4"));
    assert_int_equal(of_level(&h, TT_STRENGTH), 438 + 36);
    const tt_combination *c =
        named(&h, "6.10 sup: 1.35 weight + 1.5 wind 90 + 1.5 swing + 1.35 lamp");
    assert_close(c->weight, 1.35, 1e-12);
    assert_close(factor_of(&h, c, "wind 90"), 1.5, 1e-12);
    assert_close(factor_of(&h, c, "lamp"), 1.35, 1e-12);
    named(&h, "6.10 sup: 1.35 weight + 1.5 wind 90 + 1.5 swing + 1 lamp");
    assert_near(factor_of(&h, c, "bump"), 0, 0);
    named(&h, "6.10 sup: 1.35 weight + 1.5 swing + 0.9 wind 350 + 1.35 lamp"); /* 1.5 psi0 = 0.9 */
    named(&h, "6.10 inf: 1 weight + 1.5 wind 0 + 1 lamp");
    named(&h, "6.10 inf: 1 weight + 1.5 wind 0 + 1.35 lamp");
    named(&h, "6.10 EQU: 1.1/0.9 weight + 1.5 wind 180 + 0.9 lamp");
    c = named(&h, "mine (wind 40)");
    assert_close(c->weight, 1.1, 1e-12);
    assert_close(factor_of(&h, c, "swing"), -0.4, 1e-12);
    assert_close(factor_of(&h, c, "wind 40"), 0.7, 1e-12);
    assert_true(of_level(&h, TT_ACCIDENTAL) >= 37);
    assert_true(of_level(&h, TT_SERVICE) > 0 && of_level(&h, TT_EQUILIBRIUM) > 0);
    assert_int_equal(of_level(&h, TT_ALLOWABLE), 0);
    house_close(&h);
}

/* us, strength: (1); (2); 0.9D + 1.6L; (4) with and without L; (5): 1 + 1 + 1 + 72 + 36, each with
 * the lamp at its two factors; and 36 of the file's own. */
static void american(void **state)
{
    (void)state;
    house h = house_of(
        PIECE("us", "{basic_speed: 115 mph, exposure: C}", "weight: 1.1, wind: 0.7, swing: -0.4"));
    named(&h, "(1): 1.4 weight + 1.4 lamp");
    named(&h, "(2): 1.2 weight + 1.6 swing + 1.2 lamp");
    named(&h, "(4): 1.2 weight + 1 wind 270 + 1 swing + 1.2 lamp");
    named(&h, "(4): 1.2 weight + 1 wind 270 + 1.2 lamp");
    named(&h, "(5): 0.9 weight + 1 wind 270 + 0.9 lamp");
    named(&h, "(5): 0.9 weight + 1 wind 270 + 1.2 lamp");
    named(&h, "0.9D + 1.6L: 0.9 weight + 1.6 swing + 1.2 lamp");
    assert_int_equal(of_level(&h, TT_STRENGTH), 2 * (1 + 1 + 1 + 72 + 36) + 36);
    assert_true(of_level(&h, TT_ALLOWABLE) > 0);
    house_close(&h);
}

/* Two own variable cases act at once, in both bases, at full factor. */
static void own_cases_at_once(void **state)
{
    (void)state;
    static const char text[] =
        "piece: Post\nunits: mm\nbasis: %s\nbronze: {alloy: C87300, wall: 4}\n"
        "limbs: {post: [[foot, 0, 0, 0, 300], [top, 0, 0, 1500, 200]]}\n"
        "stands: [{at: foot, held: fixed}]\nsite: {wind: none}\n"
        "loads:\n  - {case: one, kind: variable, at: top, force: [100 N, 0, 0]}\n"
        "  - {case: two, kind: variable, at: top, force: [100 N, 0, 0]}\n";
    char file[1000];
    snprintf(file, sizeof file, text, "us");
    house h = house_of(file);
    named(&h, "(2): 1.2 weight + 1.6 one + 1.6 two");
    house_close(&h);
    snprintf(file, sizeof file, text, "eu");
    h = house_of(file);
    named(&h, "6.10 sup: 1.35 weight + 1.5 one + 1.5 two");
    house_close(&h);
}

static void windless(void **state)
{
    (void)state;
    house h = house_of(PIECE("eu", "none", "weight: 1.1, swing: -0.4"));
    named(&h, "6.10 sup: 1.35 weight + 1.5 swing + 1.35 lamp");
    named(&h, "mine");
    for (size_t i = 0; i < h.a->combinations.n; i++)
        assert_null(strstr(h.a->combinations.at[i].name, "wind"));
    house_close(&h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(european),
        cmocka_unit_test(american),
        cmocka_unit_test(own_cases_at_once),
        cmocka_unit_test(windless),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
