/* combine/bounds.c - before any situation is solved: level pulls, energies between unit cases, and
 * buckling factors that are surely not reached. N, J. */
#include "combine/parts.h"

#include "base/alloc.h"

#include <math.h>

bool tt_level_pull(const tt_second_order *second, const tt_combination *together, double *x,
                   double *y)
{
    *x = *y = 0.0;
    for (size_t i = 0; i < together->parts; i++) {
        const double *pull = second->pull[together->part[i].acting];
        *x += together->part[i].factor * pull[0];
        *y += together->part[i].factor * pull[1];
    }
    return hypot(*x, *y) > 1e-6 * second->weight;
}

double tt_energy(const tt_second_order *second, int carry, size_t a, size_t b)
{
    const double sense =
        tt_unit_answer(second, carry, a)->sense * tt_unit_answer(second, carry, b)->sense;
    return sense * second->bounds[carry].energy[second->row[a] * second->rows + second->row[b]];
}

const tt_frame_load *tt_unit_load(const tt_second_order *second, size_t unit)
{
    const size_t cases = second->actions->cases.n;
    return unit < cases ? &second->actions->cases.at[unit].on
                        : &second->actions->leans.at[unit - cases].on;
}

static bool is_first(const tt_second_order *second, size_t unit)
{
    return unit >= second->actions->cases.n || second->actions->cases.at[unit].against == TT_NONE;
}

static bool index_units(tt_second_order *second)
{
    const tt_actions *actions = second->actions;
    const size_t cases = actions->cases.n, units = cases + actions->leans.n;
    second->lean_of = tt_pool_take(&second->pool, cases, sizeof *second->lean_of);
    second->row = tt_pool_take(&second->pool, units, sizeof *second->row);
    second->pull = tt_pool_take(&second->pool, cases, sizeof *second->pull);
    if (!second->lean_of || !second->row || !second->pull) return false;
    for (size_t i = 0; i < cases; i++) second->lean_of[i] = TT_NONE;
    for (size_t i = actions->leans.n; i > 0; i--)
        second->lean_of[actions->leans.at[i - 1].of] = i - 1;
    for (size_t i = 0; i < units; i++) {
        second->row[i] =
            is_first(second, i) ? second->rows++ : second->row[actions->cases.at[i].against];
    }
    return true;
}

static void pulls(tt_second_order *second)
{
    for (size_t i = 0; i < second->actions->cases.n; i++) {
        tt_vec3 force, moment;
        tt_case_resultant(second->model, &second->actions->cases.at[i], (tt_vec3){0, 0, 0}, &force,
                          &moment);
        second->pull[i][0] = force.x;
        second->pull[i][1] = force.y;
        if (i < TT_PATTERNS) second->weight = fmax(second->weight, fabs(force.z));
    }
}

static tt_status energies(tt_second_order *second, int carry)
{
    const tt_frame *frame = second->model->frame[carry];
    const size_t n = tt_frame_unknowns(frame), rows = second->rows;
    const size_t units = second->actions->cases.n + second->actions->leans.n;
    double *energy = tt_pool_take(&second->pool, rows * rows, sizeof *energy);
    double *load = tt_alloc(2 * rows * n, sizeof *load);
    double *moves = load ? load + rows * n : NULL;
    tt_status status = energy && load ? TT_OK : TT_E_NOMEM;
    for (size_t i = 0; i < units && status == TT_OK; i++) {
        if (!is_first(second, i)) continue;
        status = tt_frame_condense(frame, tt_unit_load(second, i), load + second->row[i] * n);
        tt_frame_moves(frame, &tt_unit_answer(second, carry, i)->state, moves + second->row[i] * n);
    }
    for (size_t i = 0; i < rows && status == TT_OK; i++) {
        for (size_t k = 0; k <= i; k++) {
            energy[i * rows + k] = energy[k * rows + i] =
                tt_product(load + i * n, moves + k * n, n);
        }
    }
    second->bounds[carry].energy = energy;
    tt_free(load);
    return status;
}

/* One unit case, as it is and turned round; for one that is another's negative the two are there
 * already. */
static tt_status press_one(tt_second_order *second, int carry, size_t unit)
{
    double(*press)[2] = second->bounds[carry].press, least[2];
    const size_t cases = second->actions->cases.n;
    const size_t with = unit < cases ? second->actions->cases.at[unit].against : TT_NONE;
    if (with != TT_NONE) {
        press[unit][0] = press[with][1];
        press[unit][1] = press[with][0];
        return TT_OK;
    }
    const tt_status status = tt_frame_least(second->model->frame[carry], tt_unit_load(second, unit),
                                            &tt_unit_answer(second, carry, unit)->state, least);
    for (int k = 0; k < 2; k++) press[unit][k] = least[k] > 0.0 ? 1.0 / least[k] : INFINITY;
    return status;
}

static tt_status presses(tt_second_order *second, int carry)
{
    const size_t cases = second->actions->cases.n, units = cases + second->actions->leans.n;
    tt_bounds *bounds = &second->bounds[carry];
    bounds->press = tt_pool_take(&second->pool, units, sizeof *bounds->press);
    tt_status status = bounds->press ? TT_OK : TT_E_NOMEM;
    for (size_t i = 0; i < units && status == TT_OK; i++) {
        status = press_one(second, carry, i);
    }
    return status;
}

static tt_status drifts(tt_second_order *second, int carry)
{
    const tt_combinations *all = second->combinations;
    tt_known *known =
        tt_pool_take(&second->pool, all->n * TT_PATTERNS * TT_KNOWN_LEANS, sizeof *known);
    second->known[carry] = known;
    double(*drift)[TT_PATTERNS] = tt_pool_take(&second->pool, all->n, sizeof *drift);
    second->bounds[carry].drift = drift;
    for (size_t i = 0; i < all->n && drift; i++) {
        const int leans = tt_leans(second, &all->at[i]);
        for (int p = 0; p < TT_PATTERNS; p++) {
            for (int k = leans ? 0 : TT_UPRIGHT; k < leans; k++) {
                const tt_situation of = {&all->at[i], p, k};
                drift[i][p] = fmax(drift[i][p], tt_situation_drift(second, carry, &of));
            }
        }
    }
    return drift && known ? TT_OK : TT_E_NOMEM;
}

double tt_most_drift(const tt_second_order *second, int carry, const tt_combination *together,
                     int pattern)
{
    return second->bounds[carry].drift[together - second->combinations->at][pattern];
}

void tt_second_reach(const tt_second_order *second, int carry, const tt_cut *cut, tt_mat6 *reach)
{
    tt_frame_reach(second->model->frame[carry], cut->bar, cut->bar_x, reach);
    if (cut->sin_turn != 0.0) tt_mat6_turn(reach, cut->cos_turn, -cut->sin_turn);
}

tt_status tt_second_order_new(const tt_model *model, const tt_actions *actions,
                              const tt_combinations *combinations, const tt_solution *solution,
                              tt_second_order **out)
{
    tt_second_order *second = tt_alloc(1, sizeof *second);
    *out = second;
    if (!second) return TT_E_NOMEM;
    second->model = model;
    second->actions = actions;
    second->combinations = combinations;
    second->solution = solution;
    tt_status status = index_units(second) ? TT_OK : TT_E_NOMEM;
    if (status == TT_OK) pulls(second);
    for (int carry = 0; carry < TT_MODELS && status == TT_OK; carry++) {
        status = energies(second, carry);
        if (status == TT_OK) status = presses(second, carry);
        if (status == TT_OK) status = drifts(second, carry);
    }
    return status;
}
