/* frame/second.c - a load case of second order: forces out of balance on the moved frame are
 * corrected with the factors of K, or of K + K_g where that does not gain; SI.
 *
 * Bars: elastic forces on their ends, and what their section forces do by turning with them
 * (frame/geometric.c), the section forces being those of the same state. */
#include "frame/second.h"
#include "base/alloc.h"
#include "frame/parts.h"

#include <float.h>
#include <math.h>
#include <string.h>

static const double within = 1e-7;
enum { MOST_STEPS = 60 };

typedef struct {
    const tt_frame *frame;
    const tt_frame_load *load;
    tt_bar_ends *held;        /* [bars] */
    double (*start)[TT_SIX];  /* [bars] section forces of the state, at the start */
    double (*lean)[TT_SIX];   /* [bars] of the last step, at the start */
    double (*strain)[TT_SIX]; /* [bars * points] */
    double (*rough)[TT_SIX];  /* [bodies] moves, and the last correction of them */
    double (*fine)[TT_SIX];
    double (*forces)[TT_SIX];     /* [bodies] out of balance */
    double (*on_node)[TT_SIX];    /* [nodes] */
    long double (*moved)[TT_SIX]; /* [nodes] */
    double *x, *work, *spare;     /* [unknowns] */
    tt_factor own;                /* of K + K_g */
    const tt_factor *by;
} desk;

static bool desk_take(desk *d)
{
    const tt_frame *frame = d->frame;
    const size_t bars = frame->bars.n, bodies = frame->bodies.n;
    d->held = tt_alloc(bars, sizeof *d->held);
    d->start = tt_alloc(bars * (2 + TT_BAR_POINTS), sizeof *d->start);
    d->rough = tt_alloc(3 * bodies + frame->nodes.n, sizeof *d->rough);
    d->moved = tt_alloc(frame->nodes.n, sizeof *d->moved);
    d->x = tt_alloc(3 * (size_t)frame->unknowns, sizeof *d->x);
    if (!d->held || !d->start || !d->rough || !d->moved || !d->x) return false;
    d->lean = d->start + bars;
    d->strain = d->lean + bars;
    d->fine = d->rough + bodies;
    d->forces = d->fine + bodies;
    d->on_node = d->forces + bodies;
    d->work = d->x + frame->unknowns;
    d->spare = d->work + frame->unknowns;
    return true;
}

static void desk_free(desk *d)
{
    tt_free(d->held);
    tt_free(d->start);
    tt_free(d->rough);
    tt_free(d->moved);
    tt_free(d->x);
    tt_factor_free(&d->own);
}

static void turn_of(const desk *d, const tt_frame_bar *bar, double out[3])
{
    const long double *t = d->moved[bar->from] + 3;
    const tt_vec3 turn =
        tt_to_local(&bar->axes, (tt_vec3){(double)t[0], (double)t[1], (double)t[2]});
    out[0] = turn.x;
    out[1] = turn.y;
    out[2] = turn.z;
}

/* A moment that works on the turns is the moment of space M and M x theta / 2. */
static void to_space(const double turn[3], double m[3])
{
    const tt_vec3 t = {turn[0], turn[1], turn[2]}, was = {m[0], m[1], m[2]};
    const tt_vec3 more = tt_scale(tt_cross(t, was), 0.5);
    m[0] += more.x;
    m[1] += more.y;
    m[2] += more.z;
}

/* Section forces at the start: those of space. */
static void put_start(const tt_bar_ends *ends, const double lean[TT_SIX], const double turn[3],
                      double start[TT_SIX])
{
    for (int k = 0; k < TT_SIX; k++) start[k] = 0.0 - ends->start[k] - lean[k];
    to_space(turn, start + 3);
}

/* Forces of the nodes on a bar; its strains and section forces. What turns are the forces that
 * balance with the lean of the step before. */
static tt_bar_ends ends_of(desk *d, size_t index)
{
    const tt_frame_bar *bar = &d->frame->bars.at[index];
    double(*strain)[TT_SIX] = d->strain + index * TT_BAR_POINTS, *start = d->start[index];
    double turn[3], elastic[TT_SIX], *leant = d->lean[index];
    tt_bar_ends ends = d->held[index];
    tt_bar_strain(d->frame, bar, d->moved, &ends);
    for (int k = 0; k < TT_SIX; k++) elastic[k] = -ends.start[k];
    turn_of(d, bar, turn);
    put_start(&ends, leant, turn, start);
    const tt_bar_forces of_strain = tt_forces_at_points(d->frame, d->load, index, elastic);
    const tt_bar_forces turning = tt_forces_at_points(d->frame, d->load, index, start);
    tt_bar_strained(bar, &of_strain, strain);
    const tt_bar_ends lean = tt_bar_lean(bar, &d->frame->points, &turning, turn, strain);
    put_start(&ends, lean.start, turn, start);
    for (int k = 0; k < TT_SIX; k++) {
        ends.start[k] += lean.start[k];
        ends.end[k] += lean.end[k];
        leant[k] = lean.start[k];
    }
    return ends;
}

/* Of a node to its body: what it gives to bars and springs less its load, and what forces at arms
 * do by turning. */
static void to_body(const desk *d, size_t node)
{
    const tt_frame *frame = d->frame;
    double *taken = d->on_node[node], *body = d->forces[frame->nodes.at[node].body];
    double lever[3][3], turn[TT_SIX], moment[TT_SIX] = {0};
    for (int k = 0; k < TT_SIX && d->load->node; k++) taken[k] -= d->load->node[node][k];
    for (int k = 0; k < TT_SIX; k++) turn[k] = k < 3 ? 0.0 : (double)d->moved[node][k];
    tt_node_lever(frame, d->load, node, taken, lever);
    const tt_mat6 m = tt_lever_matrix((const double(*)[3])lever);
    tt_mat6_apply(&m, turn, moment);
    tt_six_brought(tt_arm(frame, node), taken, body);
    for (int k = 3; k < TT_SIX; k++) body[k] += moment[k];
}

/* What is out of balance under the moves: the forces that the bodies would have to be given. */
static void needed(desk *d)
{
    const tt_frame *frame = d->frame;
    tt_long_moves(frame, &(tt_body_moves){d->rough, d->fine}, d->moved);
    memset(d->on_node, 0, frame->nodes.n * sizeof *d->on_node);
    memset(d->forces, 0, frame->bodies.n * sizeof *d->forces);
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_bar_ends ends = ends_of(d, i);
        tt_bar_push_nodes(&frame->bars.at[i], &ends, d->on_node);
    }
    tt_springs_push(frame, d->moved, d->on_node);
    for (size_t i = 0; i < frame->nodes.n; i++) to_body(d, i);
}

/* Adds the step to the moves, of which the rough part takes what it can hold; largest move. */
static double move(desk *d, double (*step)[TT_SIX])
{
    double most = 0.0;
    for (size_t b = 0; b < d->frame->bodies.n; b++) {
        for (int k = 0; k < TT_SIX; k++) {
            const double more = d->fine[b][k] + step[b][k], sum = d->rough[b][k] + more;
            d->fine[b][k] = d->rough[b][k] - sum + more;
            d->rough[b][k] = sum;
            most = fmax(most, fabs(sum));
        }
    }
    return most;
}

/* One correction; how much it moved over how much all has moved. */
static double correct(desk *d)
{
    const int n = d->frame->unknowns;
    double step = 0.0;
    needed(d);
    tt_gather(d->frame, d->forces, d->x);
    for (int i = 0; i < n; i++) d->x[i] = -d->x[i];
    tt_factor_solve(d->by, d->x, d->x, d->work);
    for (int i = 0; i < n; i++) step = fmax(step, fabs(d->x[i]));
    tt_spread(d->frame, d->x, d->forces);
    const double all = move(d, d->forces);
    return all > 0.0 ? step / all : 0.0;
}

/* The factors of K + K_g of a state; whether all its pivots are positive. */
static tt_status factor_second(const tt_frame *frame, const tt_frame_load *load,
                               const tt_frame_state *state, tt_factor *factor, bool *positive)
{
    tt_sparse geometric = {0};
    tt_factor_free(factor);
    tt_status status = tt_assemble_geometric(frame, load, state, 1.0, &geometric);
    *positive = false;
    if (status == TT_OK) status = tt_factor_moved(frame, &geometric, 1.0, factor, positive);
    tt_sparse_free(&geometric);
    return status;
}

/* Corrections with the factors of K gain by the buckling factor each; where that is too little,
 * with those of K + K_g. */
static tt_status iterate(desk *d, const tt_frame_state *first, tt_second_state *out)
{
    double last = INFINITY;
    bool positive = true;
    for (out->steps = 1; out->steps <= MOST_STEPS; out->steps++) {
        const double step = correct(d);
        out->state.refinement = step;
        if (!isfinite(step)) return TT_E_NOT_FINITE;
        if (step < within) return TT_OK;
        if (step > 0.5 * last && d->by == &d->frame->factor) {
            const tt_status status = factor_second(d->frame, d->load, first, &d->own, &positive);
            out->buckles = !positive;
            if (status != TT_OK || out->buckles) return status;
            d->by = &d->own;
        }
        last = step;
    }
    return TT_E_NOT_CONVERGED;
}

static bool take(const desk *d, tt_pool *pool, tt_second_state *out)
{
    const size_t nodes = d->frame->nodes.n, bars = d->frame->bars.n;
    out->state.move = tt_pool_take(pool, nodes, sizeof *out->state.move);
    out->state.reaction = tt_pool_take(pool, nodes, sizeof *out->state.reaction);
    out->state.end = tt_pool_take(pool, bars, sizeof *out->state.end);
    out->strain = tt_pool_take(pool, bars * TT_BAR_POINTS, sizeof *out->strain);
    return out->state.move && out->state.reaction && out->state.end && out->strain;
}

/* Largest of what is still out of balance at a free unknown, forces and moments each over the
 * largest that acts. */
static double out_of_balance(const desk *d)
{
    double left[2] = {0}, all[2] = {DBL_MIN, DBL_MIN};
    for (size_t b = 0; b < d->frame->bodies.n; b++) {
        const int *unknown = d->frame->bodies.at[b].unknown;
        for (int k = 0; k < TT_SIX; k++) {
            if (unknown[k] >= 0) left[k / 3] = fmax(left[k / 3], fabs(d->forces[b][k]));
        }
    }
    for (size_t i = 0; i < d->frame->bars.n; i++) {
        for (int k = 0; k < TT_SIX; k++) all[k / 3] = fmax(all[k / 3], fabs(d->start[i][k]));
    }
    return fmax(left[0] / all[0], left[1] / all[1]);
}

static tt_status give(desk *d, tt_second_state *out)
{
    const tt_frame *frame = d->frame;
    tt_frame_state *state = &out->state;
    double sum = 0.0;
    needed(d);
    memcpy(state->end, d->start, frame->bars.n * sizeof *d->start);
    memcpy(out->strain, d->strain, frame->bars.n * TT_BAR_POINTS * sizeof *d->strain);
    for (size_t i = 0; i < frame->nodes.n; i++) {
        double turn = 0.0;
        for (int k = 0; k < TT_SIX; k++) {
            state->move[i][k] = (double)d->moved[i][k];
            if (k > 2) turn += state->move[i][k] * state->move[i][k];
            sum += state->move[i][k];
        }
        out->most_turn = fmax(out->most_turn, sqrt(turn));
    }
    tt_put_reactions(frame, d->forces, state);
    tt_springs_react(frame, state);
    state->residual = out_of_balance(d);
    return isfinite(sum) && isfinite(state->residual) ? TT_OK : TT_E_NOT_FINITE;
}

/* Begins at the state of first order. */
static void begin(desk *d, const tt_frame_state *start)
{
    const tt_frame *frame = d->frame;
    for (size_t i = 0; i < frame->bars.n; i++) d->held[i] = tt_bar_held(frame, d->load, i);
    for (size_t b = 0; b < frame->bodies.n; b++) {
        memcpy(d->rough[b], start->move[frame->bodies.at[b].master], sizeof d->rough[b]);
    }
}

tt_status tt_frame_second(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *start, bool ruled_out, tt_pool *pool,
                          tt_second_state *out)
{
    desk d = {.frame = frame, .load = load, .by = &frame->factor};
    *out = (tt_second_state){.buckles = false};
    tt_status status = desk_take(&d) && take(&d, pool, out) ? TT_OK : TT_E_NOMEM;
    if (status == TT_OK) {
        begin(&d, start);
        status = iterate(&d, start, out);
    }
    if (status == TT_OK && !out->buckles) status = give(&d, out);
    if (status == TT_OK && !out->buckles && !ruled_out) {
        bool positive;
        status = factor_second(frame, load, &out->state, &d.own, &positive);
        out->buckles = !positive;
    }
    desk_free(&d);
    return status;
}

/* Of the moves `fine`, nothing else having moved. */
static void sizes_of_bars(desk *d, double *of_bar)
{
    memset(d->rough, 0, d->frame->bodies.n * sizeof *d->rough);
    tt_long_moves(d->frame, &(tt_body_moves){d->rough, d->fine}, d->moved);
    for (size_t i = 0; i < d->frame->bars.n; i++) {
        of_bar[i] = sqrt(fmax(tt_bar_energy(d->frame, &d->frame->bars.at[i], d->moved), 0.0));
    }
}

/* Twice the energy of the first correction is what it is solved from, times it. */
tt_status tt_frame_first_change(const tt_frame *frame, const tt_frame_load *load,
                                const tt_frame_state *start, double *size, double *of_bar)
{
    desk d = {.frame = frame, .load = load, .by = &frame->factor};
    tt_status status = desk_take(&d) ? TT_OK : TT_E_NOMEM;
    *size = 0.0;
    if (status == TT_OK) {
        const size_t n = (size_t)frame->unknowns;
        begin(&d, start);
        needed(&d);
        tt_gather(frame, d.forces, d.x);
        tt_factor_solve(d.by, d.x, d.work, d.spare);
        *size = sqrt(fmax(tt_product(d.x, d.work, n), 0.0));
        tt_spread(frame, d.work, d.fine);
        sizes_of_bars(&d, of_bar);
    }
    desk_free(&d);
    return status;
}
