/* assess/assess.c - the whole judgement, in the order in which data flows: model, weight, modes,
 * wind, combinations, solution, checks, verdict. */
#include "assess/assessment.h"
#include "assess/parts.h"
#include "base/alloc.h"
#include "base/diags.h"

#include <math.h>

static void say_failure(const tt_assessment *a, tt_status status, const tt_frame_fault *fault,
                        tt_diags *diags)
{
    static const tt_place nowhere = {0, 0, 0};
    tt_pool pool = {0};
    if (status == TT_E_MECHANISM && a->model) {
        const char *place = tt_model_node_words(a->model, &pool, fault->node);
        tt_assessment_mechanism(a->piece, place ? place : "?", fault->direction, diags);
    } else if (status == TT_E_INPUT && a->model && fault->arm_a != fault->arm_b) {
        const char *one = tt_model_node_words(a->model, &pool, fault->arm_a);
        const char *two = tt_model_node_words(a->model, &pool, fault->arm_b);
        tt_complain(
            diags, TT_D_ARM_SHARES, nowhere,
            "let one of them carry, or make what lies between a segment",
            "the stands at \"%s\" and \"%s\" sit on one rigid arm: how they share cannot be told",
            one ? one : "?", two ? two : "?");
    } else if (status == TT_E_INPUT) {
        tt_complain(diags, TT_D_CONTRADICTION, nowhere,
                    "put loads that always act together into one case",
                    "more than 8 variable or 4 permanent loads of its own: not every choice of "
                    "them can be tried");
    } else if (tt_status_who(status) == TT_WHO_MODEL) {
        tt_complain(diags, TT_D_ANALYSIS, nowhere,
                    "look for a limb that is much stiffer or longer than its neighbours",
                    "the analysis could not be finished: %s", tt_status_text(status));
    }
    tt_pool_clear(&pool);
}

static tt_status swing(tt_assessment *a)
{
    enum { LEAST = 3 };
    const double up_to = 33.0; /* Hz: decision on modes */
    tt_status status = TT_OK;
    for (int carry = 0; carry < TT_MODELS && status == TT_OK; carry++) {
        status = tt_frame_modes(a->model->frame[carry], LEAST, up_to, &a->pool,
                                &a->solution.modes[carry]);
        a->proof.modes[carry] = a->solution.modes[carry].proof;
    }
    return status;
}

/* The carry model whose lowest frequency is lower: what the gust factor uses. */
static const tt_modes *softer(const tt_assessment *a)
{
    const tt_modes *alone = &a->solution.modes[TT_ALONE],
                   *together = &a->solution.modes[TT_TOGETHER];
    if (alone->n == 0 || together->n == 0) return alone;
    return alone->at[0].frequency <= together->at[0].frequency ? alone : together;
}

static tt_status load(tt_assessment *a)
{
    tt_status status = tt_actions_weight(a->model, &a->actions);
    if (status == TT_OK) status = tt_actions_own(a->model, &a->actions);
    if (status == TT_OK) status = tt_actions_lean(a->model, &a->actions);
    if (status == TT_OK) status = tt_actions_wind(a->model, a->basis, softer(a), &a->actions);
    if (status == TT_OK)
        status = tt_combine(a->piece, &a->actions, a->basis, &a->pool, &a->combinations);
    if (status == TT_OK) status = tt_solve_cases(a->model, &a->actions, &a->pool, &a->solution);
    if (status == TT_OK)
        status =
            tt_second_order_new(a->model, &a->actions, &a->combinations, &a->solution, &a->second);
    return status;
}

static tt_check_input input_of(const tt_assessment *a)
{
    return (tt_check_input){a->piece,         a->model,     a->basis, &a->actions,
                            &a->combinations, &a->solution, a->second};
}

void tt_assessment_lines(const tt_assessment *a, const tt_finding *finding, tt_steps *steps)
{
    const tt_check_input in = input_of(a);
    tt_finding_lines(&in, finding, steps);
}

static tt_status judge(tt_assessment *a)
{
    const tt_check_input in = input_of(a);
    tt_status status = TT_OK;
    for (size_t i = 0; i < tt_checks_count() && status == TT_OK; i++) {
        status = tt_checks_at(i)->run(&in, &a->findings);
    }
    if (status == TT_OK) status = tt_balance_find(&in, &a->pool, &a->balance);
    if (status == TT_OK) status = tt_sway_find(&in, &a->sway);
    if (status == TT_OK) status = tt_unchecked_find(&in, &a->findings);
    if (status == TT_OK) status = tt_assessment_show(a);
    if (status == TT_OK) status = tt_assessment_prove(a);
    if (status == TT_OK) status = tt_assessment_govern(a);
    return status;
}

tt_status tt_assess(const tt_piece *piece, tt_diags *diags, tt_assessment **out)
{
    *out = NULL;
    tt_assessment *a = tt_alloc(1, sizeof *a);
    if (!a) return TT_E_NOMEM;
    tt_frame_fault fault = {.direction = -1};
    a->piece = piece;
    a->basis = tt_basis_named(piece->basis);
    a->governing = TT_NONE;
    tt_status status = a->basis ? tt_model_new(piece, &a->model, &fault) : TT_E_INPUT;
    if (status == TT_OK) status = swing(a);
    if (status == TT_OK) status = load(a);
    if (status == TT_OK) status = judge(a);
    if (status == TT_OK) {
        *out = a;
        return TT_OK;
    }
    say_failure(a, status, &fault, diags);
    tt_assessment_free(a);
    return status;
}

tt_assessment *tt_assessment_free(tt_assessment *a)
{
    if (!a) return NULL;
    tt_findings_clear(&a->findings);
    tt_second_order_free(a->second);
    for (int carry = 0; carry < TT_MODELS; carry++) tt_list_clear(&a->shown[carry]);
    tt_list_clear(&a->combinations);
    tt_actions_clear(&a->actions);
    tt_model_free(a->model);
    tt_pool_clear(&a->pool);
    return tt_free(a);
}

tt_verdict tt_assessment_verdict(const tt_assessment *a)
{
    return a->verdict;
}
