/* check/checks/stability.c - by how much the loads together must grow for the piece to buckle: the
 * lowest factor of any, in the softer carry model, as 1 / factor against 1 / 3. */
#include "check/parts.h"

#include <math.h>

static const char name[] = "stability";
static const double least_allowed = 3.0; /* decision: under 3 falls short; JUDGEMENT */
enum { LOOKED_AT = 3 };                  /* situations solved in any case, the likeliest first */

static const char *const assumes[] = {
    "factors under 3 fall short, from 3 to 10 second order matters: a judgement of this program",
    "linear buckling of the described piece, supports as written; imperfections are in the forces",
    NULL};

typedef struct {
    tt_situation of;
    int carry;
    double least; /* surely not below */
} candidate;

typedef TT_LIST(candidate) candidates;

static tt_status collect(const tt_check_input *in, candidates *list)
{
    for (size_t i = 0; i < in->combinations->n; i++) {
        const tt_combination *together = &in->combinations->at[i];
        if (together->level != TT_STRENGTH && together->level != TT_ACCIDENTAL) continue;
        for (int k = 0; k < 2 * TT_MODELS; k++) {
            candidate one = {.of = {together, k / TT_MODELS ? TT_LIGHT : TT_HEAVY, TT_UPRIGHT},
                             .carry = k % TT_MODELS};
            one.least = tt_situation_least(in->second, one.carry, &one.of);
            if (!tt_list_push(list, one)) return TT_E_NOMEM;
        }
    }
    return TT_OK;
}

/* The one that may buckle soonest comes next. */
static void bring_next(candidates *list, size_t from)
{
    for (size_t i = from + 1; i < list->n; i++) {
        if (list->at[i].least >= list->at[from].least) continue;
        const candidate moved = list->at[i];
        list->at[i] = list->at[from];
        list->at[from] = moved;
    }
}

typedef struct {
    const candidate *worst; /* NULL: nothing is pressed */
    double factor;
    double others; /* those not looked at surely stay over this */
} found;

/* The likeliest few, then all of which it is not certain that they hold. */
static tt_status search(const tt_check_input *in, candidates *list, found *out)
{
    *out = (found){.factor = INFINITY, .others = INFINITY};
    for (size_t i = 0; i < list->n; i++) {
        bring_next(list, i);
        const candidate *one = &list->at[i];
        const bool certain = one->least >= fmin(least_allowed, out->factor);
        if ((i >= LOOKED_AT && certain) || one->least >= out->factor) {
            out->others = one->least;
            return TT_OK;
        }
        tt_pool pool = {0};
        tt_buckling buckling;
        const tt_status status =
            tt_situation_buckling(in->second, one->carry, &one->of, 1, &pool, &buckling);
        const double factor = buckling.n ? buckling.at[0].factor : INFINITY;
        tt_pool_clear(&pool);
        if (status != TT_OK) return status;
        if (factor >= out->factor) continue;
        out->factor = factor;
        out->worst = one;
    }
    return TT_OK;
}

static tt_status tell(const tt_check_input *in, const found *most, tt_findings *out)
{
    const candidate *worst = most->worst;
    const tt_situation of =
        tt_likeliest_lean(in->second, worst->carry, worst->of.together, worst->of.pattern);
    const tt_exact *leaning = tt_situation_exact(in->second, worst->carry, &of);
    if (!leaning) return tt_second_failed(in->second);
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "a", "lowest factor f with (K + f K_g) x = 0", most->factor, "",
                tt_source_of(TT_S_linear_buckling), NULL);
    if (isfinite(most->others))
        tt_step_add(&steps, "a_others", "1/sum of factor/a of each unit case, not below",
                    most->others, "", tt_source_of(TT_S_linear_buckling), NULL);
    tt_finding finding = tt_finding_of(in, name, 1.0, most->factor, "", NULL);
    finding.holds = most->factor >= least_allowed;
    finding.margin = most->factor / least_allowed - 1.0;
    finding.where = "the whole piece";
    finding.combination = worst->of.together->name;
    finding.pattern = tt_pattern_name[worst->of.pattern];
    finding.model = tt_model_name[worst->carry];
    finding.assumes = assumes;
    finding.exact = leaning;
    return tt_finding_add(out, finding, &steps) ? TT_OK : TT_E_NOMEM;
}

/* What turns too far for the theory is told. */
static bool tell_turning(const tt_check_input *in, tt_findings *out)
{
    const tt_exact *most = NULL;
    for (size_t i = 0; i < tt_exacts(in->second); i++) {
        const tt_exact *exact = tt_exact_at(in->second, i);
        if (exact->second.buckles || exact->second.most_turn < TT_SMALL_TURN) continue;
        if (!most || exact->second.most_turn > most->second.most_turn) most = exact;
    }
    if (!most) return true;
    const tt_unchecked entry = {
        .check = "large turns",
        .where = "the whole piece",
        .why = tt_pool_format(
            &out->pool, "it turns by %.2f rad under %s: second order with small turns is left",
            most->second.most_turn, most->of.together->name),
        .give = "a stiffer piece, or an analysis with large turns",
        .needed = true,
        .has_demand = true,
        .demand = most->second.most_turn,
        .unit = "rad"};
    return entry.why && tt_unchecked_add(out, entry);
}

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    candidates list = {0};
    found most = {.worst = NULL};
    tt_status status = collect(in, &list);
    if (status == TT_OK) status = search(in, &list, &most);
    if (status == TT_OK && !tell_turning(in, out)) status = TT_E_NOMEM;
    if (status == TT_OK && most.worst) status = tell(in, &most, out);
    if (status == TT_OK && !most.worst &&
        !tt_inapplicable_add(out, name, "nothing is pressed: it cannot buckle"))
        status = TT_E_NOMEM;
    tt_list_clear(&list);
    return status;
}

const tt_check tt_check_stability = {
    .name = name,
    .title = "buckling of the whole",
    .explain =
        "Loads that press a slender limb, or bend a thin flat one, make it give way sideways when "
        "they grow by the buckling factor. It is solved for the loads together that are likeliest "
        "to buckle the piece, and bounded for all others: the factor of loads together is not "
        "under 1 / sum(factor / a), a being the factor of each unit case by itself. Under 3 it "
        "falls short; from 3 to 10 what leaning adds to the forces matters. The use is 1 / factor. "
        "The signs of the pivots of K + f K_g, just below and just above, prove that no lower "
        "factor was missed.",
    .source = TT_S_linear_buckling,
    .run = run};
