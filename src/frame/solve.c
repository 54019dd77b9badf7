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

/* Forces of the bodies on all bars, less the loads on nodes: what the ground must give, and at free
 * unknowns what is out of balance. end (NULL: not wanted) takes the section forces at the starts.
 */
static void needed(const tt_frame *frame, const tt_frame_load *load, const tt_body_moves *moves,
                   double (*forces)[TT_SIX], double (*end)[TT_SIX])
{
    memset(forces, 0, frame->bodies.n * sizeof *forces);
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        const tt_line line = tt_bar_line(frame, load, i);
        double moved[TT_SIX];
        tt_bar_moved(frame, bar, moves, moved);
        const tt_bar_ends ends = tt_bar_end_forces(bar, moved, &line);
        const tt_mat6 a = tt_bar_to_local(frame, bar, 0), b = tt_bar_to_local(frame, bar, 1);
        tt_mat6_tapply(&a, ends.start, forces[tt_bar_body(frame, bar, 0)]);
        tt_mat6_tapply(&b, ends.end, forces[tt_bar_body(frame, bar, 1)]);
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

typedef struct {
    double *x, *work;         /* [unknowns] */
    tt_body_moves moves;      /* [bodies] */
    double (*forces)[TT_SIX]; /* [bodies] */
} desk;

static bool desk_take(const tt_frame *frame, desk *d)
{
    const size_t n = (size_t)frame->unknowns, bodies = frame->bodies.n;
    d->x = tt_alloc(2 * n, sizeof *d->x);
    d->forces = tt_alloc(3 * bodies, sizeof *d->forces);
    if (!d->x || !d->forces) return false;
    d->work = d->x + n;
    d->moves = (tt_body_moves){d->forces + bodies, d->forces + 2 * bodies};
    return true;
}

/* Moves that take away what is out of balance; the largest of them. */
static double correct(const tt_frame *frame, const tt_frame_load *load, const desk *d,
                      double (*into)[TT_SIX])
{
    double most = 0.0;
    needed(frame, load, &d->moves, d->forces, NULL);
    tt_gather(frame, d->forces, d->x);
    for (int i = 0; i < frame->unknowns; i++) d->x[i] = -d->x[i];
    tt_factor_solve(&frame->factor, d->x, d->x, d->work);
    for (int i = 0; i < frame->unknowns; i++) most = fmax(most, fabs(d->x[i]));
    tt_spread(frame, d->x, into);
    return most;
}

/* The first solution, then one step of refinement. Out of balance is taken from the bars, not from
 * the assembled matrix, so that the rounding of its terms (stiff along, soft across) goes too. */
static tt_status solve_on(const tt_frame *frame, const tt_frame_load *load, const desk *d,
                          tt_frame_state *state)
{
    const double rough = correct(frame, load, d, d->moves.rough);
    const double fine = correct(frame, load, d, d->moves.fine);
    state->refinement = rough > 0.0 ? fine / rough : 0.0;
    needed(frame, load, &d->moves, d->forces, state->end);
    put_reactions(frame, d->forces, state);
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int k = 0; k < TT_SIX; k++) d->moves.rough[b][k] += d->moves.fine[b][k];
    }
    tt_node_moves(frame, d->moves.rough, state->move);
    state->residual = tt_frame_imbalance(frame, load, state);
    return all_finite(frame, state) ? TT_OK : TT_E_NOT_FINITE;
}

tt_status tt_frame_solve(const tt_frame *frame, const tt_frame_load *load, tt_pool *pool,
                         tt_frame_state *state)
{
    desk d = {0};
    tt_status status = TT_E_NOMEM;
    if (take_state(frame, pool, state) && desk_take(frame, &d)) {
        status = solve_on(frame, load, &d, state);
    }
    tt_free(d.x);
    tt_free(d.forces);
    return status;
}
