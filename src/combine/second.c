/* combine/second.c - situations: their first order by superposition, the bound of what second order
 * may change, and those that were solved on the moved frame. */
#include "combine/second.h"
#include "combine/parts.h"

#include "base/alloc.h"

#include <math.h>

#define HALF_ROOT 0.70710678118654752440

static const tt_vec3 compass[TT_LEANS_MOST] = {
    {1, 0, 0},  {HALF_ROOT, HALF_ROOT, 0},   {0, 1, 0},  {-HALF_ROOT, HALF_ROOT, 0},
    {-1, 0, 0}, {-HALF_ROOT, -HALF_ROOT, 0}, {0, -1, 0}, {HALF_ROOT, -HALF_ROOT, 0}};

int tt_leans(const tt_second_order *second, const tt_combination *together)
{
    double x, y;
    if (second->actions->leans.n == 0 || together->imperfection == 0.0) return 0;
    if (together->own) return TT_LEANS_MOST;
    return tt_level_pull(second, together, &x, &y) ? 3 : TT_LEANS_MOST;
}

tt_vec3 tt_lean_way(const tt_second_order *second, const tt_situation *of)
{
    double x, y;
    if (of->lean == TT_UPRIGHT) return (tt_vec3){0, 0, 0};
    if (of->together->own || !tt_level_pull(second, of->together, &x, &y)) return compass[of->lean];
    const tt_vec3 along = tt_unit((tt_vec3){x, y, 0.0});
    const tt_vec3 way[] = {along, {-along.y, along.x, 0.0}, {along.y, -along.x, 0.0}};
    return way[of->lean];
}

/* The two leans of a case, when it has them. */
static void add_leans(const tt_second_order *second, size_t acting, double factor, tt_vec3 way,
                      tt_unit_part *out, size_t *n)
{
    const size_t first = second->lean_of[acting], cases = second->actions->cases.n;
    if (first == TT_NONE || *n + 2 > TT_UNIT_PARTS) return;
    out[(*n)++] = (tt_unit_part){cases + first, factor * way.x};
    out[(*n)++] = (tt_unit_part){cases + first + 1, factor * way.y};
}

size_t tt_situation_units(const tt_second_order *second, const tt_situation *of,
                          tt_unit_part out[TT_UNIT_PARTS])
{
    const tt_combination *together = of->together;
    const tt_vec3 way = tt_scale(tt_lean_way(second, of), together->imperfection);
    size_t n = 0;
    out[n++] = (tt_unit_part){(size_t)of->pattern, together->weight};
    for (size_t i = 0; i < together->parts; i++) {
        out[n++] = (tt_unit_part){together->part[i].acting, together->part[i].factor};
    }
    if (of->lean == TT_UPRIGHT) return n;
    add_leans(second, (size_t)of->pattern, together->weight, way, out, &n);
    for (size_t i = 0; i < together->parts; i++) {
        add_leans(second, together->part[i].acting, together->part[i].factor, way, out, &n);
    }
    return n;
}

const tt_answer *tt_unit_answer(const tt_second_order *second, int carry, size_t unit)
{
    const size_t cases = second->actions->cases.n;
    return unit < cases ? &second->solution->answer[carry][unit]
                        : &second->solution->lean[carry][unit - cases];
}

tt_forces tt_unit_forces(const tt_second_order *second, int carry, size_t unit, const tt_cut *cut)
{
    const tt_answer *answer = tt_unit_answer(second, carry, unit);
    const tt_forces one =
        tt_model_cut_forces(second->model, cut, &answer->state, tt_unit_load(second, unit), carry);
    tt_forces sum = {0};
    tt_forces_add(&sum, &one, answer->sense);
    return sum;
}

tt_forces tt_situation_forces(const tt_second_order *second, int carry, const tt_situation *of,
                              size_t cut)
{
    tt_unit_part part[TT_UNIT_PARTS];
    const size_t n = tt_situation_units(second, of, part);
    tt_forces sum = {0};
    for (size_t i = 0; i < n; i++) {
        const tt_answer *answer = tt_unit_answer(second, carry, part[i].unit);
        tt_forces_add(&sum, &answer->cut[cut], part[i].factor * answer->sense);
    }
    return sum;
}

void tt_situation_move(const tt_second_order *second, int carry, const tt_situation *of,
                       size_t node, double out[6])
{
    tt_unit_part part[TT_UNIT_PARTS];
    const size_t n = tt_situation_units(second, of, part);
    for (int d = 0; d < TT_SIX; d++) out[d] = 0.0;
    for (size_t i = 0; i < n; i++) {
        const tt_answer *answer = tt_unit_answer(second, carry, part[i].unit);
        for (int d = 0; d < TT_SIX; d++)
            out[d] += part[i].factor * answer->sense * answer->state.move[node][d];
    }
}

/* What presses presses a little more by what second order changes. */
static double grown(double pressed)
{
    return pressed < 1.0 ? pressed * (1.0 + 2.0 * pressed / (1.0 - pressed)) : INFINITY;
}

/* 1 / a of the situation, and of its forces turned round. */
void tt_pressing_of(const tt_second_order *second, int carry, const tt_unit_part *part, size_t n,
                    double out[2])
{
    out[0] = out[1] = 0.0;
    for (size_t i = 0; i < n; i++) {
        const double *press = second->bounds[carry].press[part[i].unit], factor = part[i].factor;
        out[0] += fabs(factor) * press[factor < 0.0];
        out[1] += fabs(factor) * press[factor >= 0.0];
    }
}

double tt_situation_least(const tt_second_order *second, int carry, const tt_situation *of)
{
    tt_unit_part part[TT_UNIT_PARTS];
    double press[2];
    tt_pressing_of(second, carry, part, tt_situation_units(second, of, part), press);
    return press[0] > 0.0 ? 1.0 / press[0] : INFINITY;
}

double tt_situation_pressed(const tt_second_order *second, int carry, const tt_situation *of)
{
    tt_unit_part part[TT_UNIT_PARTS];
    double press[2];
    tt_pressing_of(second, carry, part, tt_situation_units(second, of, part), press);
    return grown(press[0]);
}

double tt_energy_of(const tt_second_order *second, int carry, const tt_unit_part *part, size_t n)
{
    double sum = 0.0;
    for (size_t i = 0; i < n; i++) {
        for (size_t k = 0; k <= i; k++) {
            const double both = part[i].factor * part[k].factor *
                                tt_energy(second, carry, part[i].unit, part[k].unit);
            sum += i == k ? both : 2.0 * both;
        }
    }
    return fmax(sum, 0.0);
}

tt_situation tt_likeliest_lean(const tt_second_order *second, int carry,
                               const tt_combination *together, int pattern)
{
    const int leans = tt_leans(second, together);
    tt_situation most = {together, pattern, leans ? 0 : TT_UPRIGHT};
    double largest = -1.0;
    for (int k = 0; k < leans; k++) {
        const tt_situation of = {together, pattern, k};
        tt_unit_part part[TT_UNIT_PARTS];
        const size_t n = tt_situation_units(second, &of, part);
        const double energy = tt_energy_of(second, carry, part, n);
        if (energy <= largest * (1.0 + 1e-9)) continue;
        largest = energy;
        most = of;
    }
    return most;
}

double tt_situation_drift(const tt_second_order *second, int carry, const tt_situation *of)
{
    tt_unit_part part[TT_UNIT_PARTS];
    const size_t n = tt_situation_units(second, of, part);
    double press[2];
    tt_pressing_of(second, carry, part, n, press);
    const double p = grown(press[0]), q = press[1];
    if (!(p < 1.0)) return INFINITY;
    return sqrt(tt_energy_of(second, carry, part, n)) * fmax(p / (1.0 - p), q / (1.0 + q));
}

tt_known *tt_known_of(const tt_second_order *second, int carry, const tt_situation *of)
{
    const size_t row = (size_t)(of->together - second->combinations->at) * TT_PATTERNS;
    const size_t lean = of->lean == TT_UPRIGHT ? 0 : 1 + (size_t)of->lean;
    return &second->known[carry][(row + (size_t)of->pattern) * TT_KNOWN_LEANS + lean];
}

const tt_exact *tt_situation_exact(tt_second_order *second, int carry, const tt_situation *of)
{
    tt_known *known = tt_known_of(second, carry, of);
    if (known->exact || second->failed != TT_OK) return known->exact;
    tt_exact *exact = tt_pool_take(&second->pool, 1, sizeof *exact);
    if (exact) *exact = (tt_exact){.of = *of, .carry = carry};
    second->failed = exact ? tt_exact_solve(second, exact) : TT_E_NOMEM;
    if (second->failed == TT_OK && !tt_list_push(&second->exact, exact))
        second->failed = TT_E_NOMEM;
    if (second->failed == TT_OK) known->exact = exact;
    return known->exact;
}

tt_status tt_second_failed(const tt_second_order *second)
{
    return second->failed;
}

size_t tt_exacts(const tt_second_order *second)
{
    return second->exact.n;
}

const tt_exact *tt_exact_at(const tt_second_order *second, size_t i)
{
    return second->exact.at[i];
}

tt_forces tt_exact_strain_forces(const tt_second_order *second, const tt_exact *exact,
                                 const tt_cut *cut)
{
    double f[TT_SIX];
    tt_second_section_turned(second->model->frame[exact->carry], &exact->second, &exact->load,
                             cut->bar, &cut->on_bar, f);
    return tt_model_into_cut(cut, f);
}

tt_forces tt_exact_forces(const tt_second_order *second, const tt_exact *exact, const tt_cut *cut)
{
    double f[TT_SIX];
    tt_second_section(second->model->frame[exact->carry], &exact->second, &exact->load, cut->bar,
                      &cut->on_bar, f);
    return tt_model_into_cut(cut, f);
}

tt_second_order *tt_second_order_free(tt_second_order *second)
{
    if (!second) return NULL;
    tt_list_clear(&second->exact);
    tt_pool_clear(&second->pool);
    return tt_free(second);
}
