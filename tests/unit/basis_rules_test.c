/* Load factors of both bases, the register of bases, the words for levels. */
#include "basis_lines.h"

enum { MOST = 64 };

static void spoken(const char *name, char *word, size_t size)
{
    snprintf(word, size, "%s", name);
    for (char *at = word; *at; at++) {
        if (*at == ' ') *at = '_';
    }
}

static tt_rule rule_of(const test_case *c)
{
    tt_rule rules[MOST];
    const size_t n = case_basis(c)->rules((int)case_number(c, "risk", 0), rules, MOST);
    for (size_t i = 0; i < n; i++) {
        char word[CASE_WORD];
        spoken(rules[i].name, word, sizeof word);
        if (strcmp(word, case_word(c, "rule")) == 0 &&
            strcmp(tt_level_word(rules[i].level), case_word(c, "level")) == 0) {
            return rules[i];
        }
    }
    print_error("case '%s': no such rule\n", c->title);
    fail();
    return (tt_rule){0};
}

static double factor_of(const tt_rule *rule, const char *name)
{
    const struct {
        const char *name;
        double value;
    } factors[] = {
        {"weight", rule->weight},
        {"restoring", rule->weight_restoring},
        {"lead_wind", rule->lead[TT_CLASS_WIND]},
        {"lead_own", rule->lead[TT_CLASS_OWN_VARIABLE]},
        {"lead_accident", rule->lead[TT_CLASS_OWN_ACCIDENTAL]},
        {"with_wind", rule->with[TT_CLASS_WIND]},
        {"with_own", rule->with[TT_CLASS_OWN_VARIABLE]},
        {"bare", rule->bare},
        {"overturning", rule->overturning_factor},
        {"permanent", rule->permanent[0]},
        {"permanent_helping", rule->permanent[1]},
    };
    for (size_t i = 0; i < sizeof factors / sizeof *factors; i++) {
        if (strcmp(factors[i].name, name) == 0) return factors[i].value;
    }
    print_error("no factor '%s'\n", name);
    fail();
    return 0.0;
}

static void solve_rule(const test_case *c)
{
    assert_string_equal(c->solve, "rule");
    const tt_rule rule = rule_of(c);
    for (int i = 0; i < c->expects; i++) case_expect(c, i, factor_of(&rule, c->expect[i].name));
}

static void factors(void **state)
{
    (void)state;
    assert_int_equal(cases_run("basis", "rules.case", solve_rule), 31);
}

static void check_rule(const tt_rule *rule)
{
    bool leads = false;
    for (int k = 0; k < TT_CLASSES; k++) {
        leads = leads || rule->lead[k] > 0.0;
        assert_true(rule->lead[k] >= 0.0 && rule->with[k] >= 0.0);
    }
    assert_true(leads || rule->bare); /* a rule that can never stand is no rule */
    assert_true(rule->name && *rule->name && rule->source.document);
    assert_true(rule->weight_restoring > 0.0 && rule->weight_restoring <= rule->weight);
    assert_true(rule->level == TT_EQUILIBRIUM || rule->weight_restoring == rule->weight);
    assert_true(rule->overturning_factor >= 1.0);
    assert_true(*tt_level_word(rule->level) != '\0');
}

/* Every level that a basis has stands bare in some rule or leads with something; names differ. */
static void rules_are_whole(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        for (int risk = 1; risk <= 4; risk++) {
            tt_rule rules[MOST];
            const size_t n = tt_basis_at(b)->rules(risk, rules, MOST);
            assert_true(n > 4 && n < MOST);
            for (size_t i = 0; i < n; i++) {
                check_rule(&rules[i]);
                for (size_t j = 0; j < i; j++) {
                    assert_false(rules[i].level == rules[j].level &&
                                 strcmp(rules[i].name, rules[j].name) == 0);
                }
            }
        }
    }
}

/* Each basis has weight alone at strength and equilibrium, a wind with light weight at strength. */
static void nothing_forgotten(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        tt_rule rules[MOST];
        const size_t n = tt_basis_at(b)->rules(2, rules, MOST);
        bool bare[TT_LEVELS] = {0}, wind[TT_LEVELS] = {0}, light = false;
        for (size_t i = 0; i < n; i++) {
            bare[rules[i].level] |= rules[i].bare;
            wind[rules[i].level] |= rules[i].lead[TT_CLASS_WIND] > 0.0;
            light |= rules[i].level == TT_STRENGTH && rules[i].weight <= 1.0 &&
                     rules[i].lead[TT_CLASS_WIND] >= 1.0;
        }
        assert_true(bare[TT_STRENGTH] && bare[TT_EQUILIBRIUM] && bare[TT_SERVICE]);
        assert_true(wind[TT_STRENGTH] && wind[TT_EQUILIBRIUM] && wind[TT_SERVICE]);
        assert_true(light);
    }
}

static void short_of_room(void **state)
{
    (void)state;
    for (size_t b = 0; b < tt_basis_count(); b++) {
        tt_rule rules[MOST] = {0};
        assert_int_equal(tt_basis_at(b)->rules(2, rules, 0), 0);
        assert_null(rules[0].name);
        assert_int_equal(tt_basis_at(b)->rules(2, rules, 3), 3);
        assert_non_null(rules[2].name);
        assert_null(rules[3].name);
    }
}

static void register_of_bases(void **state)
{
    (void)state;
    assert_int_equal(tt_basis_count(), 2);
    for (size_t i = 0; i < tt_basis_count(); i++) {
        const tt_basis *basis = tt_basis_at(i);
        assert_ptr_equal(tt_basis_named(basis->id), basis);
        assert_true(*basis->title && basis->editions[0] && !basis->editions[3]);
        assert_non_null(basis->least_pressure_source.document);
    }
    assert_null(tt_basis_at(2));
    assert_null(tt_basis_named("EU"));
    assert_null(tt_basis_named(NULL));
}

static void words_of_levels(void **state)
{
    (void)state;
    assert_string_equal(tt_level_word(TT_STRENGTH), "strength");
    assert_string_equal(tt_level_word(TT_SEISMIC), "seismic");
    assert_string_equal(tt_level_word(TT_LEVELS), "");
}

/* ASCE 7 29.7: 16 psf, printed there as 0.77 kN/m2. */
static void least_pressure(void **state)
{
    (void)state;
    assert_near(tt_basis_named("us")->least_pressure, 770.0, 5.0);
    assert_true(tt_basis_named("eu")->least_pressure == 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(factors),           cmocka_unit_test(rules_are_whole),
        cmocka_unit_test(nothing_forgotten), cmocka_unit_test(short_of_room),
        cmocka_unit_test(register_of_bases), cmocka_unit_test(words_of_levels),
        cmocka_unit_test(least_pressure),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
