/* combine/solve.c - every unit case in both carry models, and superposition. */
#include "combine/parts.h"

#include <math.h>

static tt_status cut_one(const tt_model *model, int carry, const tt_frame_load *load, tt_pool *pool,
                         tt_answer *answer)
{
    answer->cut = tt_pool_take(pool, model->cuts.n, sizeof *answer->cut);
    if (!answer->cut) return TT_E_NOMEM;
    for (size_t i = 0; i < model->cuts.n; i++) {
        answer->cut[i] =
            tt_model_cut_forces(model, &model->cuts.at[i], &answer->state, load, carry);
    }
    return TT_OK;
}

/* The first n cases in one carry model; load and state: room for n. */
static tt_status solve_model(const tt_model *model, int carry, const tt_frame_load *load, size_t n,
                             tt_frame_state *state, tt_pool *pool, tt_answer *answer)
{
    tt_status status = tt_frame_solve_all(model->frame[carry], load, n, pool, state);
    for (size_t i = 0; i < n && status == TT_OK; i++) {
        answer[i].state = state[i];
        answer[i].sense = 1.0;
        status = cut_one(model, carry, &load[i], pool, &answer[i]);
    }
    return status;
}

/* How many cases stand before the first that is another's negative: those are all at the end. */
static size_t to_solve(const tt_actions *actions)
{
    size_t n = 0;
    while (n < actions->cases.n && actions->cases.at[n].against == TT_NONE) n++;
    return n;
}

static void keep_worst(const tt_answer *all, size_t n, tt_solution *solution)
{
    for (size_t i = 0; i < n; i++) {
        solution->residual = fmax(solution->residual, all[i].state.residual);
        solution->refinement = fmax(solution->refinement, all[i].state.refinement);
    }
}

/* The cases that are solved, then the leans. */
static tt_status solve_all(const tt_model *model, const tt_actions *actions, int carry,
                           const tt_frame_load *load, tt_frame_state *state, tt_pool *pool,
                           tt_solution *solution)
{
    const size_t n = actions->cases.n, solved = to_solve(actions), leans = actions->leans.n;
    tt_answer *all = tt_pool_take(pool, n + leans, sizeof *all);
    if (!all) return TT_E_NOMEM;
    solution->answer[carry] = all;
    solution->lean[carry] = all + n;
    tt_status status = solve_model(model, carry, load, solved, state, pool, all);
    if (status == TT_OK)
        status = solve_model(model, carry, load + solved, leans, state, pool, all + n);
    if (status != TT_OK) return status;
    keep_worst(all, solved, solution);
    keep_worst(all + n, leans, solution);
    for (size_t i = solved; i < n; i++) {
        all[i] = all[actions->cases.at[i].against];
        all[i].sense = -1.0;
    }
    return TT_OK;
}

tt_status tt_solve_cases(const tt_model *model, const tt_actions *actions, tt_pool *pool,
                         tt_solution *solution)
{
    const size_t solved = to_solve(actions), loads = solved + actions->leans.n;
    tt_frame_load *load = tt_pool_take(pool, loads, sizeof *load);
    tt_frame_state *state = tt_pool_take(pool, loads, sizeof *state);
    tt_status status = load && state ? TT_OK : TT_E_NOMEM;
    if (status != TT_OK) return status;
    for (size_t i = 0; i < solved; i++) load[i] = actions->cases.at[i].on;
    for (size_t i = solved; i < loads; i++) load[i] = actions->leans.at[i - solved].on;
    for (int carry = 0; carry < TT_MODELS && status == TT_OK; carry++) {
        status = solve_all(model, actions, carry, load, state, pool, solution);
    }
    return status;
}

void tt_forces_add(tt_forces *sum, const tt_forces *more, double factor)
{
    sum->n += factor * more->n;
    sum->vy += factor * more->vy;
    sum->vz += factor * more->vz;
    sum->t += factor * more->t;
    sum->my += factor * more->my;
    sum->mz += factor * more->mz;
}

tt_forces tt_answer_forces(const tt_answer *answer, size_t cut)
{
    tt_forces sum = {0};
    tt_forces_add(&sum, &answer->cut[cut], answer->sense);
    return sum;
}

static void add_six(double out[6], const double more[6], double factor)
{
    for (int i = 0; i < 6; i++) out[i] += factor * more[i];
}

void tt_superpose_reaction(const tt_solution *solution, int carry, const tt_combination *together,
                           int pattern, size_t node, double out[6])
{
    const tt_answer *answer = solution->answer[carry];
    for (int i = 0; i < 6; i++) out[i] = 0.0;
    add_six(out, answer[pattern].state.reaction[node], together->weight);
    for (size_t i = 0; i < together->parts; i++) {
        const tt_answer *part = &answer[together->part[i].acting];
        add_six(out, part->state.reaction[node], together->part[i].factor * part->sense);
    }
}
