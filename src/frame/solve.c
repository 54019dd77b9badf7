/* frame/solve.c - load cases: moves, reactions from the untouched equations, end forces. TT_SIDES
 * cases go through the factors together. */
#include "frame/parts.h"
#include "base/alloc.h"

#include <math.h>
#include <string.h>

typedef struct {
    const tt_frame_load *load;
    tt_body_moves moves; /* [bodies] */
    tt_bar_ends *held;   /* [bars] what the load alone does, all nodes held */
    double most[2];      /* largest unknown of the first solution and of its refinement */
} one_case;

typedef struct {
    const tt_frame *frame;
    tt_sides *x, *work;           /* [unknowns] */
    double (*forces)[TT_SIX];     /* [bodies], of one case at a time */
    double (*on_node)[TT_SIX];    /* [nodes] */
    long double (*moved)[TT_SIX]; /* [nodes] */
    one_case side[TT_SIDES];
    size_t sides; /* in use */
} desk;

static bool desk_take(desk *d, const tt_frame *frame)
{
    const size_t bodies = frame->bodies.n, nodes = frame->nodes.n, n = (size_t)frame->unknowns;
    *d = (desk){.frame = frame};
    d->x = tt_alloc(2 * n, sizeof *d->x);
    d->forces = tt_alloc((1 + 2 * TT_SIDES) * bodies + nodes, sizeof *d->forces);
    d->moved = tt_alloc(nodes, sizeof *d->moved);
    d->side[0].held = tt_alloc(TT_SIDES * frame->bars.n, sizeof *d->side->held);
    if (!d->x || !d->forces || !d->moved || !d->side[0].held) return false;
    d->work = d->x + n;
    d->on_node = d->forces + (1 + 2 * TT_SIDES) * bodies;
    for (size_t s = 0; s < TT_SIDES; s++) {
        double(*moves)[TT_SIX] = d->forces + (1 + 2 * s) * bodies;
        d->side[s].held = d->side[0].held + s * frame->bars.n;
        d->side[s].moves = (tt_body_moves){moves, moves + bodies};
    }
    return true;
}

static void desk_free(desk *d)
{
    tt_free(d->x);
    tt_free(d->forces);
    tt_free(d->moved);
    tt_free(d->side[0].held);
}

static void put_load(const tt_frame *frame, const tt_frame_load *load, one_case *c)
{
    c->load = load;
    memset(c->moves.fine, 0, frame->bodies.n * sizeof *c->moves.fine);
    for (size_t i = 0; i < frame->bars.n; i++) c->held[i] = tt_bar_held(frame, load, i);
}

/* Forces of the nodes on all bars and springs, the first time with nothing moved yet. end (NULL:
 * not wanted) takes the section forces at the starts. */
static void push_bars(const desk *d, const one_case *c, bool moves, double (*end)[TT_SIX])
{
    if (moves) tt_long_moves(d->frame, &c->moves, d->moved);
    memset(d->on_node, 0, d->frame->nodes.n * sizeof *d->on_node);
    for (size_t i = 0; i < d->frame->bars.n; i++) {
        const tt_frame_bar *bar = &d->frame->bars.at[i];
        tt_bar_ends ends = c->held[i];
        if (moves) tt_bar_strain(d->frame, bar, d->moved, &ends);
        tt_bar_push_nodes(bar, &ends, d->on_node);
        for (int k = 0; k < TT_SIX && end; k++) end[i][k] = 0.0 - ends.start[k]; /* never -0 */
    }
    if (moves) tt_springs_push(d->frame, d->moved, d->on_node);
}

/* Forces of the bodies on all bars, less the loads on nodes: what the ground must give, and at free
 * unknowns what is out of balance. */
static void needed(const desk *d, const one_case *c, bool moves, double (*end)[TT_SIX])
{
    const tt_frame *frame = d->frame;
    const double(*load)[TT_SIX] = c->load->node;
    push_bars(d, c, moves, end);
    memset(d->forces, 0, frame->bodies.n * sizeof *d->forces);
    for (size_t i = 0; i < frame->nodes.n; i++) {
        double *taken = d->on_node[i];
        for (int k = 0; k < TT_SIX && load; k++) taken[k] -= load[i][k];
        tt_six_brought(tt_arm(frame, i), taken, d->forces[frame->nodes.at[i].body]);
    }
}

/* Unknown forces or moves of all bodies, one side of x: to it with the sign changed, and from it.
 */
static void put_side(const desk *d, size_t s)
{
    for (size_t b = 0; b < d->frame->bodies.n; b++) {
        const int *unknown = d->frame->bodies.at[b].unknown;
        for (int k = 0; k < TT_SIX; k++) {
            if (unknown[k] >= 0) d->x[unknown[k]][s] = -d->forces[b][k];
        }
    }
}

static double take_side(const desk *d, size_t s, double (*bodies)[TT_SIX])
{
    double most = 0.0;
    for (size_t b = 0; b < d->frame->bodies.n; b++) {
        const int *unknown = d->frame->bodies.at[b].unknown;
        for (int k = 0; k < TT_SIX; k++) {
            bodies[b][k] = unknown[k] < 0 ? 0.0 : d->x[unknown[k]][s];
            most = fmax(most, fabs(bodies[b][k]));
        }
    }
    return most;
}

/* Moves that take away what is out of balance. Out of balance is taken from the bars, not from the
 * assembled matrix, so that the rounding of its terms (stiff along, soft across) goes too. */
static void correct(desk *d, int step)
{
    for (size_t s = 0; s < d->sides; s++) {
        needed(d, &d->side[s], step > 0, NULL);
        put_side(d, s);
    }
    tt_factor_solve_sides(&d->frame->factor, d->x, d->work);
    for (size_t s = 0; s < d->sides; s++) {
        one_case *c = &d->side[s];
        c->most[step] = take_side(d, s, step ? c->moves.fine : c->moves.rough);
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

static tt_status give(const desk *d, one_case *c, tt_frame_state *state)
{
    const tt_frame *frame = d->frame;
    state->refinement = c->most[0] > 0.0 ? c->most[1] / c->most[0] : 0.0;
    needed(d, c, true, state->end);
    tt_put_reactions(frame, d->forces, state);
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int k = 0; k < TT_SIX; k++) c->moves.rough[b][k] += c->moves.fine[b][k];
    }
    tt_node_moves(frame, c->moves.rough, state->move);
    tt_springs_react(frame, state);
    state->residual = tt_frame_imbalance(frame, c->load, state);
    return all_finite(frame, state) ? TT_OK : TT_E_NOT_FINITE;
}

/* The first solution, then one step of refinement. */
static tt_status solve_sides(desk *d, const tt_frame_load *load, size_t n, tt_frame_state *state)
{
    tt_status status = TT_OK;
    d->sides = n;
    for (size_t s = 0; s < n; s++) put_load(d->frame, &load[s], &d->side[s]);
    correct(d, 0);
    correct(d, 1);
    for (size_t s = 0; s < n && status == TT_OK; s++) status = give(d, &d->side[s], &state[s]);
    return status;
}

static bool take_state(const tt_frame *frame, tt_pool *pool, tt_frame_state *state)
{
    *state = (tt_frame_state){0};
    state->move = tt_pool_take(pool, frame->nodes.n, sizeof *state->move);
    state->reaction = tt_pool_take(pool, frame->nodes.n, sizeof *state->reaction);
    state->end = tt_pool_take(pool, frame->bars.n, sizeof *state->end);
    return state->move && state->reaction && state->end;
}

tt_status tt_frame_solve_all(const tt_frame *frame, const tt_frame_load *load, size_t n,
                             tt_pool *pool, tt_frame_state *state)
{
    desk d;
    bool fits = desk_take(&d, frame);
    for (size_t i = 0; i < n && fits; i++) fits = take_state(frame, pool, &state[i]);
    tt_status status = fits ? TT_OK : TT_E_NOMEM;
    for (size_t i = 0; i < n && status == TT_OK; i += TT_SIDES) {
        const size_t sides = n - i < TT_SIDES ? n - i : TT_SIDES;
        status = solve_sides(&d, load + i, sides, state + i);
    }
    desk_free(&d);
    return status;
}

tt_status tt_frame_solve(const tt_frame *frame, const tt_frame_load *load, tt_pool *pool,
                         tt_frame_state *state)
{
    return tt_frame_solve_all(frame, load, 1, pool, state);
}
