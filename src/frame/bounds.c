/* frame/bounds.c - what second order surely does not pass: buckling factors by the pivots, energies
 * of loads and moves, and how far an energy reaches. SI. */
#include "frame/second.h"
#include "base/alloc.h"
#include "frame/parts.h"

#include <math.h>
#include <string.h>

static const double enough = 100.0;

/* Whether K + factor * K_g has positive pivots only. */
static tt_status stands(const tt_frame *frame, const tt_sparse *geometric, double factor,
                        bool *positive)
{
    tt_factor factors = {0};
    const tt_status status = tt_factor_moved(frame, geometric, factor, &factors, positive);
    tt_factor_free(&factors);
    return status;
}

/* Lord Rayleigh's quotient after a few steps of the power method on - inverse(K) K_g: a guess of
 * the lowest factor, never below it; `enough` where the shape found is not pressed. */
static tt_status guess(const tt_frame *frame, const tt_sparse *geometric, double sign,
                       double *factor)
{
    enum { STEPS = 5 };
    const size_t n = (size_t)frame->unknowns;
    double *x = tt_alloc(3 * n, sizeof *x);
    *factor = enough;
    if (!x) return TT_E_NOMEM;
    double *y = x + n, *work = y + n;
    for (size_t i = 0; i < n; i++)
        x[i] = (double)(i * 7 % 11) - 4.7; /* no pattern that a frame has */
    for (int step = 0; step < STEPS; step++) {
        tt_sparse_apply(geometric, x, y);
        tt_factor_solve(&frame->factor, y, x, work);
        const double energy = tt_product(x, y, n), scale = energy > 0.0 ? 1.0 / sqrt(energy) : 0.0;
        for (size_t i = 0; i < n; i++) x[i] *= -sign * scale;
    }
    tt_sparse_apply(geometric, x, y); /* x' K x = 1 */
    const double pressed = -sign * tt_product(x, y, n);
    if (pressed * enough > 1.0) *factor = 1.0 / pressed;
    tt_free(x);
    return TT_OK;
}

/* `enough`, or the first of a falling row of factors from a little under the guess. */
static tt_status prove_least(const tt_frame *frame, const tt_sparse *geometric, double sign,
                             double *least)
{
    bool positive = false;
    double from = 0.0;
    *least = enough;
    tt_status status = stands(frame, geometric, sign * enough, &positive);
    if (status == TT_OK && !positive) status = guess(frame, geometric, sign, &from);
    for (double s = 0.95 * from; status == TT_OK && !positive && s > 1.0; s *= 0.7) {
        *least = s;
        status = stands(frame, geometric, sign * s, &positive);
    }
    if (!positive) *least = 0.0;
    return status;
}

tt_status tt_frame_least(const tt_frame *frame, const tt_frame_load *load,
                         const tt_frame_state *state, double least[2])
{
    tt_sparse geometric = {0};
    least[0] = least[1] = 0.0;
    tt_status status = tt_assemble_geometric(frame, load, state, 1.0, &geometric);
    if (status == TT_OK) status = prove_least(frame, &geometric, 1.0, &least[0]);
    if (status == TT_OK) status = prove_least(frame, &geometric, -1.0, &least[1]);
    tt_sparse_free(&geometric);
    return status;
}

size_t tt_frame_unknowns(const tt_frame *frame)
{
    return (size_t)frame->unknowns;
}

tt_status tt_frame_condense(const tt_frame *frame, const tt_frame_load *load, double *out)
{
    double(*sum)[TT_SIX] = tt_alloc(frame->nodes.n + frame->bodies.n, sizeof *sum);
    if (!sum) return TT_E_NOMEM;
    double(*bodies)[TT_SIX] = sum + frame->nodes.n;
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_bar_ends held = tt_bar_held(frame, load, i);
        tt_bar_push_nodes(&frame->bars.at[i], &held, sum);
    }
    for (size_t i = 0; i < frame->nodes.n; i++) {
        for (int d = 0; d < TT_SIX; d++) {
            sum[i][d] = (load->node ? load->node[i][d] : 0.0) - sum[i][d];
        }
        tt_six_brought(tt_arm(frame, i), sum[i], bodies[frame->nodes.at[i].body]);
    }
    tt_gather(frame, bodies, out);
    tt_free(sum);
    return TT_OK;
}

void tt_frame_moves(const tt_frame *frame, const tt_frame_state *state, double *out)
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        const tt_frame_body *body = &frame->bodies.at[b];
        for (int d = 0; d < TT_SIX; d++) {
            if (body->unknown[d] >= 0) out[body->unknown[d]] = state->move[body->master][d];
        }
    }
}

/* The forces at a place are A times those at the end, the reach A K_e A': K is at least B' K_e B, B
 * what strains the bar. */
void tt_frame_reach(const tt_frame *frame, size_t index, double x, tt_mat6 *reach)
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const double arm = (1.0 - x) * bar->length;
    *reach = bar->end_stiffness;
    for (int k = 0; k < TT_SIX; k++) {
        reach->at[4][k] -= arm * reach->at[2][k];
        reach->at[5][k] += arm * reach->at[1][k];
    }
    for (int k = 0; k < TT_SIX; k++) {
        reach->at[k][4] -= arm * reach->at[k][2];
        reach->at[k][5] += arm * reach->at[k][1];
    }
}

/* e' inverse(K) e towards x and y: towards any way between it is at most their sum. */
tt_status tt_frame_soft(const tt_frame *frame, size_t node, double *most)
{
    const size_t n = (size_t)frame->unknowns;
    double *load = tt_alloc(3 * n, sizeof *load), sum = 0.0;
    double(*bodies)[TT_SIX] = tt_alloc(frame->bodies.n, sizeof *bodies);
    for (int d = 0; d < 2 && load && bodies; d++) {
        double force[TT_SIX] = {0};
        force[d] = 1.0;
        memset(bodies, 0, frame->bodies.n * sizeof *bodies);
        tt_six_brought(tt_arm(frame, node), force, bodies[frame->nodes.at[node].body]);
        tt_gather(frame, bodies, load);
        tt_factor_solve(&frame->factor, load, load + n, load + 2 * n);
        sum += tt_product(load, load + n, n);
    }
    const bool fits = load && bodies;
    tt_free(load);
    tt_free(bodies);
    *most = sqrt(fmax(sum, 0.0));
    if (!fits) return TT_E_NOMEM;
    return isfinite(sum) ? TT_OK : TT_E_NOT_FINITE;
}
