/* combine/exact.c - one situation on the moved frame: its loads put together, first order from
 * superposition as the start. */
#include "combine/parts.h"

#include <math.h>

static tt_vec3 *lines_of(tt_pool *pool, const tt_model *model)
{
    return tt_pool_take(pool, model->bars.n * TT_BAR_POINTS, sizeof(tt_vec3));
}

static void add_lines(tt_vec3 *sum, const tt_vec3 *more, double factor, size_t n)
{
    for (size_t i = 0; i < n && more; i++) sum[i] = tt_add(sum[i], tt_scale(more[i], factor));
}

static void add_numbers(double *sum, const double *more, double factor, size_t n)
{
    for (size_t i = 0; i < n && more; i++) sum[i] += factor * more[i];
}

/* Arrays of a load and of a state, to be added to. */
typedef struct {
    tt_vec3 *force, *moment;
    double (*node)[TT_SIX], (*lever)[3][3];
    tt_frame_state first;
} sums;

static bool take(tt_pool *pool, const tt_model *model, const tt_frame_load *like, sums *s)
{
    *s = (sums){.force = lines_of(pool, model),
                .moment = like->line_moment ? lines_of(pool, model) : NULL,
                .node = tt_pool_take(pool, model->nodes, sizeof *s->node),
                .lever = like->lever ? tt_pool_take(pool, model->nodes, sizeof *s->lever) : NULL};
    s->first.move = tt_pool_take(pool, model->nodes, sizeof *s->first.move);
    s->first.reaction = tt_pool_take(pool, model->nodes, sizeof *s->first.reaction);
    s->first.end = tt_pool_take(pool, model->bars.n, sizeof *s->first.end);
    return s->force && s->node && (s->moment || !like->line_moment) && (s->lever || !like->lever) &&
           s->first.move && s->first.reaction && s->first.end;
}

static void add(const tt_second_order *second, int carry, const tt_unit_part *part, sums *s)
{
    const size_t bars = second->model->bars.n, nodes = second->model->nodes;
    const tt_answer *answer = tt_unit_answer(second, carry, part->unit);
    const tt_frame_load *load = tt_unit_load(second, part->unit);
    const double factor = part->factor * answer->sense;
    add_lines(s->force, load->line_force, factor, bars * TT_BAR_POINTS);
    if (s->moment) add_lines(s->moment, load->line_moment, factor, bars * TT_BAR_POINTS);
    add_numbers(&s->node[0][0], &load->node[0][0], factor, nodes * TT_SIX);
    if (s->lever) add_numbers(&s->lever[0][0][0], &load->lever[0][0][0], factor, nodes * 9);
    add_numbers(&s->first.move[0][0], &answer->state.move[0][0], factor, nodes * TT_SIX);
    add_numbers(&s->first.reaction[0][0], &answer->state.reaction[0][0], factor, nodes * TT_SIX);
    add_numbers(&s->first.end[0][0], &answer->state.end[0][0], factor, bars * TT_SIX);
}

static tt_status put_together(const tt_second_order *second, int carry, const tt_situation *of,
                              tt_pool *pool, tt_frame_load *load, tt_frame_state *first)
{
    tt_unit_part part[TT_UNIT_PARTS];
    const size_t n = tt_situation_units(second, of, part);
    sums s;
    if (!take(pool, second->model, tt_unit_load(second, 0), &s)) return TT_E_NOMEM;
    for (size_t i = 0; i < n; i++) add(second, carry, &part[i], &s);
    *load = (tt_frame_load){.line_force = s.force,
                            .line_moment = s.moment,
                            .node = (const double(*)[TT_SIX])s.node,
                            .lever = (const double(*)[3][3])s.lever};
    *first = s.first;
    return TT_OK;
}

tt_status tt_exact_solve(tt_second_order *second, tt_exact *exact)
{
    tt_frame_state first;
    const bool stands = isfinite(tt_situation_drift(second, exact->carry, &exact->of));
    tt_status status =
        put_together(second, exact->carry, &exact->of, &second->pool, &exact->load, &first);
    if (status == TT_OK)
        status = tt_frame_second(second->model->frame[exact->carry], &exact->load, &first, stands,
                                 &second->pool, &exact->second);
    if (status != TT_E_NOT_CONVERGED) return status;
    exact->second.buckles = true; /* no place of rest was found */
    return TT_OK;
}

/* What the first correction of loads together moves without their lean; kept. */
static const tt_known *first_change(tt_second_order *second, int carry, const tt_situation *of)
{
    tt_pool pool = {0};
    tt_frame_load load;
    tt_frame_state first;
    tt_known *known = tt_known_of(second, carry, of);
    if (known->of_bar) return known;
    double *of_bar = tt_pool_take(&second->pool, second->model->bars.n, sizeof *of_bar);
    tt_status status = of_bar ? put_together(second, carry, of, &pool, &load, &first) : TT_E_NOMEM;
    if (status == TT_OK)
        status = tt_frame_first_change(second->model->frame[carry], &load, &first, &known->change,
                                       of_bar);
    tt_pool_clear(&pool);
    if (status == TT_OK) known->of_bar = of_bar;
    if (status != TT_OK) second->failed = status;
    return status == TT_OK ? known : NULL;
}

/* With A = inverse(K) K_g second order moves inverse(1 + A) d, d the first correction: beside d
 * itself at most |A| / (1 - 1/a) of it. With the lean l beside the loads c, d is that of c, what
 * K_g of l does to the moves of c, and what K_g of both does to those of l. */
double tt_situation_drift_closer(tt_second_order *second, int carry, const tt_situation *of,
                                 size_t bar)
{
    const tt_situation upright = {of->together, of->pattern, TT_UPRIGHT};
    const double pressed = tt_situation_pressed(second, carry, of);
    tt_unit_part part[TT_UNIT_PARTS];
    double whole[2], leant[2];
    if (!(pressed < 1.0)) return INFINITY;
    const size_t n = tt_situation_units(second, of, part), straight = 1 + of->together->parts;
    const tt_known *known = first_change(second, carry, &upright);
    if (!known) return INFINITY;
    tt_pressing_of(second, carry, part, n, whole);
    tt_pressing_of(second, carry, part + straight, n - straight, leant);
    const double most = fmax(pressed, fmax(whole[0], whole[1])), lean = fmax(leant[0], leant[1]);
    const double by_lean = lean * sqrt(tt_energy_of(second, carry, part, straight)) +
                           most * sqrt(tt_energy_of(second, carry, part + straight, n - straight));
    const double here = bar == TT_NONE ? known->change : known->of_bar[bar];
    return here + by_lean + most / (1.0 - pressed) * (known->change + by_lean);
}

tt_status tt_situation_buckling(const tt_second_order *second, int carry, const tt_situation *of,
                                size_t wanted, tt_pool *pool, tt_buckling *out)
{
    tt_pool own = {0};
    tt_frame_load load;
    tt_frame_state first;
    *out = (tt_buckling){.n = 0};
    tt_status status = put_together(second, carry, of, &own, &load, &first);
    if (status == TT_OK)
        status = tt_frame_buckling(second->model->frame[carry], &load, &first, wanted, pool, out);
    tt_pool_clear(&own);
    return status;
}
