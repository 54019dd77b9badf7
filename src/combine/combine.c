/* combine/combine.c - the basis's rules spread over the cases that there are. For each rule and
 * each class that may lead, each case of that class leads in turn; of the other classes either
 * nothing or one wind, and any of the other own cases, go with it. */
#include "combine/combine.h"

#include "base/text.h"

#include <stdint.h>
#include <stdio.h>
#include <string.h>

enum { RULES = 64, OWN_MOST = 8, PERMANENT_MOST = 4, PARTS_MOST = OWN_MOST + PERMANENT_MOST + 2 };

/* In every combination of the basis: EN 1993-1-1, 5.3.2 (3) a) with both factors at 1, FROM MEMORY;
 * under the American basis the same, a judgement for an armature built by hand. */
static const double sway = 1.0 / 200.0;

typedef struct {
    const tt_piece *piece;
    const tt_actions *actions;
    tt_pool *pool;
    tt_combinations *list;
    char rule[96];        /* how the names of the rule at work begin: "6.10 sup: 1.35 weight" */
    size_t own[OWN_MOST]; /* variable cases of the file */
    size_t owns;
    size_t permanent[PERMANENT_MOST];
    size_t permanents;
    struct {
        double is;
        char words[32];
    } factor; /* the last one that was written */
    bool short_of_memory;
} job;

typedef struct {
    tt_part part[PARTS_MOST];
    size_t n;
} draft;

static void add(draft *to, size_t acting, double factor)
{
    if (factor != 0.0 && to->n < PARTS_MOST) to->part[to->n++] = (tt_part){acting, factor};
}

/* Most factors come again and again: the last one is kept in words. */
static const char *factor_words(job *j, double factor)
{
    if (factor != j->factor.is) {
        snprintf(j->factor.words, sizeof j->factor.words, "%.4g", factor);
        j->factor.is = factor;
    }
    return j->factor.words;
}

/* "6.10 sup: 1.35 weight + 1.5 wind 90"; "1.1/0.9 weight" where it tips and where it restores. */
static char *name_of(job *j, const char *rule, const draft *parts)
{
    tt_text words = {0};
    tt_text_put(&words, rule);
    for (size_t i = 0; i < parts->n; i++) {
        tt_text_put(&words, " + ");
        tt_text_put(&words, factor_words(j, parts->part[i].factor));
        tt_text_put(&words, " ");
        tt_text_put(&words, j->actions->cases.at[parts->part[i].acting].name);
    }
    char *name = words.failed ? NULL : tt_pool_copy(j->pool, tt_text_of(&words), words.n);
    tt_text_clear(&words);
    return name;
}

static void emit_one(job *j, const tt_rule *rule, const draft *all, size_t leading)
{
    tt_combination made = {.level = rule->level,
                           .source = rule->source,
                           .weight = rule->weight,
                           .weight_restoring = rule->weight_restoring,
                           .patterned = true,
                           .overturning_factor = rule->overturning_factor,
                           .imperfection = sway,
                           .leading = leading,
                           .parts = all->n};
    made.name = name_of(j, j->rule, all);
    made.part = tt_pool_take(j->pool, all->n, sizeof *made.part);
    if (!made.name || !made.part || !tt_list_push(j->list, made)) {
        j->short_of_memory = true;
        return;
    }
    memcpy(made.part, all->part, all->n * sizeof *made.part);
}

/* With each own permanent case at its unfavourable or its favourable factor: which is which depends
 * on the cut, so every choice is tried. */
static void emit(job *j, const tt_rule *rule, const draft *parts, size_t leading)
{
    const bool differ = rule->permanent[0] != rule->permanent[1];
    const uint32_t choices = differ ? 1u << j->permanents : 1u;
    for (uint32_t choice = 0; choice < choices; choice++) {
        draft all = *parts;
        for (size_t i = 0; i < j->permanents; i++) {
            add(&all, j->permanent[i], rule->permanent[choice >> i & 1u]);
        }
        emit_one(j, rule, &all, leading);
    }
}

/* The leading case with every choice of own variable cases beside it. */
static void with_own(job *j, const tt_rule *rule, const draft *parts, size_t leading)
{
    const bool goes = rule->with[TT_CLASS_OWN_VARIABLE] != 0.0;
    const uint32_t choices = goes ? 1u << j->owns : 1u;
    for (uint32_t choice = 0; choice < choices; choice++) {
        draft more = *parts;
        bool twice = false;
        for (size_t i = 0; i < j->owns; i++) {
            if (!(choice >> i & 1u)) continue;
            twice = twice || j->own[i] == leading;
            add(&more, j->own[i], rule->with[TT_CLASS_OWN_VARIABLE]);
        }
        if (!twice) emit(j, rule, &more, leading);
    }
}

static void with_wind(job *j, const tt_rule *rule, const draft *parts, size_t leading)
{
    with_own(j, rule, parts, leading);
    if (rule->with[TT_CLASS_WIND] == 0.0) return;
    for (size_t i = 0; i < j->actions->cases.n; i++) {
        if (j->actions->cases.at[i].kind != TT_CASE_WIND) continue;
        draft more = *parts;
        add(&more, i, rule->with[TT_CLASS_WIND]);
        with_own(j, rule, &more, leading);
    }
}

static int class_of(const tt_case *acting)
{
    if (acting->kind == TT_CASE_WIND) return TT_CLASS_WIND;
    if (acting->kind != TT_CASE_OWN || acting->load == TT_LOAD_PERMANENT) return -1;
    return acting->load == TT_LOAD_VARIABLE ? TT_CLASS_OWN_VARIABLE : TT_CLASS_OWN_ACCIDENTAL;
}

static void begin_names(job *j, const tt_rule *rule)
{
    char restoring[32] = "";
    if (rule->weight_restoring != rule->weight)
        snprintf(restoring, sizeof restoring, "/%.4g", rule->weight_restoring);
    snprintf(j->rule, sizeof j->rule, "%s: %.4g%s weight", rule->name, rule->weight, restoring);
}

static void spread_rule(job *j, const tt_rule *rule)
{
    const draft nothing = {.n = 0};
    begin_names(j, rule);
    if (rule->bare) emit(j, rule, &nothing, TT_NONE);
    for (size_t i = 0; i < j->actions->cases.n; i++) {
        const int class = class_of(&j->actions->cases.at[i]);
        if (class < 0 || rule->lead[class] == 0.0) continue;
        draft parts = nothing;
        add(&parts, i, rule->lead[class]);
        if (class == TT_CLASS_WIND)
            with_own(j, rule, &parts, i);
        else
            with_wind(j, rule, &parts, i);
    }
}

static size_t case_named(const tt_actions *actions, const char *name)
{
    for (size_t i = 0; i < actions->cases.n; i++) {
        if (strcmp(actions->cases.at[i].name, name) == 0) return i;
    }
    return TT_NONE;
}

/* One of the file's own, with `wind` (when it is in it) taken as the given case. */
static void own_one(job *j, const tt_own_combination *own, size_t wind)
{
    tt_combination made = {.level = (tt_level)own->level,
                           .own = true,
                           .patterned = true,
                           .source = {"given in the piece file", NULL, NULL, TT_GIVEN},
                           .overturning_factor = 1.0,
                           .imperfection = own->imperfection.origin ? own->imperfection.is : 0.0,
                           .leading = TT_NONE};
    double largest = 0.0;
    made.part = tt_pool_take(j->pool, own->terms, sizeof *made.part);
    made.name = wind == TT_NONE ? own->name
                                : tt_pool_format(j->pool, "%s (%s)", own->name,
                                                 j->actions->cases.at[wind].name);
    if (!made.part || !made.name) {
        j->short_of_memory = true;
        return;
    }
    for (size_t i = 0; i < own->terms; i++) {
        const tt_term *term = &own->term[i];
        const bool any_wind = strcmp(term->name, "wind") == 0;
        const size_t acting = any_wind ? wind : case_named(j->actions, term->name);
        if (strcmp(term->name, "weight") == 0)
            made.weight += term->factor;
        else if (acting != TT_NONE)
            made.part[made.parts++] = (tt_part){acting, term->factor};
        if (acting != TT_NONE && acting >= TT_PATTERNS && term->factor > largest) {
            largest = term->factor;
            made.leading = acting;
        }
    }
    made.weight_restoring = made.weight;
    if (!tt_list_push(j->list, made)) j->short_of_memory = true;
}

static void own_combination(job *j, const tt_own_combination *own)
{
    bool any_wind = false;
    for (size_t i = 0; i < own->terms; i++)
        any_wind = any_wind || strcmp(own->term[i].name, "wind") == 0;
    if (!any_wind || j->actions->winds == 0) {
        own_one(j, own, TT_NONE);
        return;
    }
    for (size_t i = 0; i < j->actions->cases.n; i++) {
        if (j->actions->cases.at[i].kind == TT_CASE_WIND) own_one(j, own, i);
    }
}

/* Own cases by kind; false when there are too many to try every choice of them. */
static bool sort_own(job *j)
{
    for (size_t i = TT_PATTERNS; i < j->actions->cases.n; i++) {
        const tt_case *acting = &j->actions->cases.at[i];
        const bool permanent = acting->kind == TT_CASE_OWN && acting->load == TT_LOAD_PERMANENT;
        if (permanent && j->permanents == PERMANENT_MOST) return false;
        if (permanent) j->permanent[j->permanents++] = i;
        if (class_of(acting) != TT_CLASS_OWN_VARIABLE) continue;
        if (j->owns == OWN_MOST) return false;
        j->own[j->owns++] = i;
    }
    return true;
}

tt_status tt_combine(const tt_piece *piece, const tt_actions *actions, const tt_basis *basis,
                     tt_pool *pool, tt_combinations *list)
{
    job j = {.piece = piece, .actions = actions, .pool = pool, .list = list};
    tt_rule rules[RULES];
    if (!sort_own(&j)) return TT_E_INPUT;
    const size_t n = basis->rules(piece->risk, rules, RULES);
    for (size_t i = 0; i < n; i++) spread_rule(&j, &rules[i]);
    for (size_t i = 0; i < piece->combinations.n; i++)
        if (!piece->combinations.at[i].waits) own_combination(&j, &piece->combinations.at[i]);
    return j.short_of_memory ? TT_E_NOMEM : TT_OK;
}
