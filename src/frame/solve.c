/* frame/solve.c - one load case: moves, reactions from the untouched equations, end forces. */
#include "frame/parts.h"
#include "base/alloc.h"

#include <math.h>
#include <string.h>

void tt_spread(const tt_frame *frame, const double *unknowns, double (*bodies)[TT_SIX])
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int d = 0; d < TT_SIX; d++) {
            const int u = frame->bodies.at[b].unknown[d];
            bodies[b][d] = u < 0 ? 0.0 : unknowns[u];
        }
    }
}

void tt_gather(const tt_frame *frame, double (*bodies)[TT_SIX], double *unknowns)
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int d = 0; d < TT_SIX; d++) {
            const int u = frame->bodies.at[b].unknown[d];
            if (u >= 0) unknowns[u] = bodies[b][d];
        }
    }
}

void tt_node_moves(const tt_frame *frame, double (*bodies)[TT_SIX], double (*nodes)[TT_SIX])
{
    for (size_t i = 0; i < frame->nodes.n; i++) {
        const tt_mat6 rigid = tt_node_of_body(frame, i);
        memset(nodes[i], 0, sizeof nodes[i]);
        tt_mat6_apply(&rigid, bodies[frame->nodes.at[i].body], nodes[i]);
    }
}

/* How much more the end of a bar moves than the start carries it; local. */
static void relative_move(const tt_frame *frame, const tt_frame_bar *bar, double (*bodies)[TT_SIX],
                          double out[TT_SIX])
{
    double start[TT_SIX] = {0}, taken[TT_SIX] = {0};
    const tt_mat6 a = tt_bar_to_local(frame, bar, 0), b = tt_bar_to_local(frame, bar, 1);
    const tt_mat6 whole = tt_rigid((tt_vec3){bar->length, 0.0, 0.0});
    memset(out, 0, TT_SIX * sizeof *out);
    tt_mat6_apply(&b, bodies[tt_bar_body(frame, bar, 1)], out);
    tt_mat6_apply(&a, bodies[tt_bar_body(frame, bar, 0)], start);
    tt_mat6_apply(&whole, start, taken);
    for (int d = 0; d < TT_SIX; d++) out[d] -= taken[d];
}

/* Forces of the bodies on all bars, less the loads on nodes: what the ground must give.
 * bodies NULL: nothing moves. end (NULL: not wanted) takes the section forces at the starts. */
static void needed(const tt_frame *frame, const tt_frame_load *load, double (*bodies)[TT_SIX],
                   double (*forces)[TT_SIX], double (*end)[TT_SIX])
{
    memset(forces, 0, frame->bodies.n * sizeof *forces);
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        const size_t p = tt_bar_body(frame, bar, 0), q = tt_bar_body(frame, bar, 1);
        const tt_line line = tt_bar_line(frame, load, i);
        double moved[TT_SIX] = {0};
        if (bodies && p != q) relative_move(frame, bar, bodies, moved);
        const tt_bar_ends ends = tt_bar_end_forces(bar, moved, &line);
        const tt_mat6 a = tt_bar_to_local(frame, bar, 0), b = tt_bar_to_local(frame, bar, 1);
        tt_mat6_tapply(&a, ends.start, forces[p]);
        tt_mat6_tapply(&b, ends.end, forces[q]);
        for (int d = 0; d < TT_SIX && end; d++) end[i][d] = -ends.start[d];
    }
    for (size_t i = 0; i < frame->nodes.n && load->node; i++) {
        double taken[TT_SIX];
        for (int d = 0; d < TT_SIX; d++) taken[d] = -load->node[i][d];
        const tt_mat6 rigid = tt_node_of_body(frame, i);
        tt_mat6_tapply(&rigid, taken, forces[frame->nodes.at[i].body]);
    }
}

static void put_reactions(const tt_frame *frame, double (*forces)[TT_SIX], tt_frame_state *state)
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        const tt_frame_body *body = &frame->bodies.at[b];
        for (int d = 0; d < TT_SIX; d++) {
            if (body->unknown[d] < 0) state->reaction[body->master][d] = forces[b][d];
        }
    }
}

static bool all_finite(const tt_frame *frame, const tt_frame_state *state)
{
    double sum = 0.0;
    for (size_t i = 0; i < frame->nodes.n; i++) {
        for (int d = 0; d < TT_SIX; d++) sum += state->move[i][d] + state->reaction[i][d];
    }
    for (size_t i = 0; i < frame->bars.n; i++) {
        for (int d = 0; d < TT_SIX; d++) sum += state->end[i][d];
    }
    return isfinite(sum);
}

static bool take_state(const tt_frame *frame, tt_pool *pool, tt_frame_state *state)
{
    *state = (tt_frame_state){0};
    state->move = tt_pool_take(pool, frame->nodes.n, sizeof *state->move);
    state->reaction = tt_pool_take(pool, frame->nodes.n, sizeof *state->reaction);
    state->end = tt_pool_take(pool, frame->bars.n, sizeof *state->end);
    return state->move && state->reaction && state->end;
}

static tt_status solve_with(const tt_frame *frame, const tt_frame_load *load, double *rhs,
                            double *x, double (*bodies)[TT_SIX], double (*forces)[TT_SIX],
                            tt_frame_state *state)
{
    needed(frame, load, NULL, forces, NULL);
    tt_gather(frame, forces, rhs);
    for (int i = 0; i < frame->unknowns; i++) rhs[i] = -rhs[i];
    const tt_status status =
        tt_sparse_solve(&frame->stiffness, &frame->factor, rhs, x, &state->refinement);
    if (status != TT_OK) return status;
    tt_spread(frame, x, bodies);
    tt_node_moves(frame, bodies, state->move);
    needed(frame, load, bodies, forces, state->end);
    put_reactions(frame, forces, state);
    state->residual = tt_frame_imbalance(frame, load, state);
    return all_finite(frame, state) ? TT_OK : TT_E_NOT_FINITE;
}

tt_status tt_frame_solve(const tt_frame *frame, const tt_frame_load *load, tt_pool *pool,
                         tt_frame_state *state)
{
    const size_t n = (size_t)frame->unknowns;
    double *vectors = tt_alloc(2 * n, sizeof *vectors);
    double(*bodies)[TT_SIX] = tt_alloc(2 * frame->bodies.n, sizeof *bodies);
    tt_status status = TT_E_NOMEM;
    if (take_state(frame, pool, state) && vectors && bodies) {
        status =
            solve_with(frame, load, vectors, vectors + n, bodies, bodies + frame->bodies.n, state);
    }
    tt_free(vectors);
    tt_free(bodies);
    return status;
}
