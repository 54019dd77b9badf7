/* frame/envelope.c - a buckling factor that is surely not reached by any of many states, and the
 * energies by which changes of second order are bounded. SI.
 *
 * At each point of a bar the work of section forces by turning (frame/geometric.c) is at most that
 * of their largest sizes: of an axial force |N| (v'^2 + w'^2 + r^2 theta_x'^2) / 2; of a product
 * c theta eps of a turn and a strain of flexibility f, (c^2 f theta^2 / part + part eps^2 / f) / 2,
 * and eps^2 / f is at most twice the elastic energy of the point. Ten products there are; where
 * no strain is coupled with another each strain is in two at most. What the factor s asks for is
 * then that (1 - products part s) K - s E has positive pivots only, E being that of the squares. */
#include "frame/second.h"
#include "base/alloc.h"
#include "frame/parts.h"
#include "num/eigen.h"

#include <math.h>
#include <string.h>

static const double spared = 0.6; /* of K, for the squares */
static const double ladder[] = {80.0, 40.0, 20.0, 10.0, 5.0, 2.5, 1.25};

tt_status tt_envelope_of(const tt_frame *frame, tt_pool *pool, tt_envelope *out)
{
    out->most = tt_pool_take(pool, frame->bars.n * TT_BAR_POINTS, sizeof *out->most);
    out->lever = tt_pool_take(pool, frame->nodes.n, sizeof *out->lever);
    return out->most && out->lever ? TT_OK : TT_E_NOMEM;
}

tt_status tt_envelope_widen(const tt_frame *frame, const tt_frame_load *load,
                            const tt_frame_state *state, double factor, tt_envelope *envelope)
{
    double(*on_node)[TT_SIX] = tt_alloc(frame->nodes.n, sizeof *on_node);
    if (!on_node) return TT_E_NOMEM;
    tt_forces_on_nodes(frame, load, state, on_node);
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_bar_forces forces = tt_forces_at_points(frame, load, i, state->end[i]);
        for (int p = 0; p < TT_BAR_POINTS; p++) {
            double *most = envelope->most[i * TT_BAR_POINTS + (size_t)p];
            for (int d = 0; d < TT_SIX; d++) {
                most[d] = fmax(most[d], factor * fabs(forces.at[p][d]));
            }
        }
    }
    for (size_t i = 0; i < frame->nodes.n; i++) {
        double lever[3][3], square = 0.0;
        tt_node_lever(frame, load, i, on_node[i], lever);
        for (int k = 0; k < 9; k++) square += lever[k / 3][k % 3] * lever[k / 3][k % 3];
        /* of a sum of dyads S: theta' S theta - tr S theta^2 is at most 1 + sqrt 3 of its size */
        envelope->lever[i] = fmax(envelope->lever[i], factor * (1.0 + sqrt(3.0)) * sqrt(square));
    }
    tt_free(on_node);
    return TT_OK;
}

/* The squares of the turns at a point, `share` the products' part of the energy; the pairs are
 * those of frame/geometric.c. */
static void bound_point(const tt_frame_bar *bar, int p, const double most[TT_SIX], double share,
                        tt_bar_forces *out)
{
    const double vy = most[1], vz = most[2];
    const double half[3] = {0.5 * most[3], 0.5 * most[4], 0.5 * most[5]};
    double by[TT_SIX]; /* what c^2 costs in a product with this strain */
    for (int d = 0; d < TT_SIX; d++) by[d] = bar->flexibility[p].at[d][d] / share;
    out->at[p][0] = -most[0];
    out->more[p][0] = -(vy * vy * by[2] + vz * vz * by[1] + half[1] * half[1] * by[5] +
                        half[2] * half[2] * by[4] + 0.5 * (vy + vz));
    out->more[p][1] =
        -(vz * vz * by[0] + half[0] * half[0] * by[5] + half[2] * half[2] * by[3] + 0.5 * vy);
    out->more[p][2] =
        -(vy * vy * by[0] + half[0] * half[0] * by[4] + half[1] * half[1] * by[3] + 0.5 * vz);
}

/* Products in which a strain may be, or all where strains are coupled. */
static double products_of(const tt_frame *frame)
{
    for (size_t i = 0; i < frame->bars.n; i++) {
        for (int k = 0; k < TT_BAR_POINTS * TT_SIX * TT_SIX; k++) {
            const int p = k / (TT_SIX * TT_SIX), r = k / TT_SIX % TT_SIX, c = k % TT_SIX;
            if (r != c && frame->bars.at[i].flexibility[p].at[r][c] != 0.0) return 10.0;
        }
    }
    return 2.0;
}

/* - E times `factor`. */
static tt_status assemble(const tt_frame *frame, const tt_envelope *envelope, double share,
                          double factor, tt_sparse *out)
{
    const tt_points points = tt_points_of_bars();
    tt_entries terms = {0};
    bool fits = true;
    for (size_t i = 0; i < frame->bars.n && fits; i++) {
        tt_bar_forces forces = {.at = {{0}}};
        for (int p = 0; p < TT_BAR_POINTS; p++) {
            bound_point(&frame->bars.at[i], p, envelope->most[i * TT_BAR_POINTS + (size_t)p], share,
                        &forces);
        }
        fits = tt_add_geometry(frame, &points, i, &forces, factor, &terms);
    }
    for (size_t i = 0; i < frame->nodes.n && fits; i++) {
        tt_mat6 m = {{{0}}};
        for (int d = 3; d < TT_SIX; d++) m.at[d][d] = -factor * envelope->lever[i];
        fits = tt_add_body(frame, i, &m, &terms);
    }
    return tt_assembled(frame, fits, &terms, out);
}

/* Whether K + that has positive pivots only. */
static tt_status stands(const tt_frame *frame, const tt_sparse *pressed, bool *positive)
{
    tt_sparse sum = {0};
    tt_factor factor = {0};
    tt_status status = tt_sparse_sum(&frame->stiffness, 1.0, pressed, &sum);
    if (status == TT_OK) status = tt_factor_of(&sum, &factor);
    *positive = status == TT_OK && tt_factor_weak(&factor, &sum, 0.0) < 0;
    tt_factor_free(&factor);
    tt_sparse_free(&sum);
    return status == TT_E_ILL_CONDITIONED ? TT_OK : status;
}

enum { RUNGS = sizeof ladder / sizeof *ladder };

tt_status tt_envelope_least(const tt_frame *frame, const tt_envelope *envelope, double *least)
{
    const double products = products_of(frame);
    *least = 0.0;
    for (size_t i = 0; i < RUNGS; i++) {
        const double s = ladder[i], share = (1.0 - spared) / (products * s);
        tt_sparse pressed = {0};
        bool positive = false;
        tt_status status = assemble(frame, envelope, share, s / spared, &pressed);
        if (status == TT_OK) status = stands(frame, &pressed, &positive);
        tt_sparse_free(&pressed);
        if (status != TT_OK) return status;
        if (positive) *least = s;
        if (positive) return TT_OK;
    }
    return TT_OK;
}

tt_status tt_frame_least(const tt_frame *frame, const tt_frame_load *load,
                         const tt_frame_state *state, double sign, double *least)
{
    *least = 0.0;
    for (size_t i = 0; i < RUNGS; i++) {
        tt_sparse pressed = {0};
        bool positive = false;
        tt_status status = tt_assemble_geometric(frame, load, state, sign * ladder[i], &pressed);
        if (status == TT_OK) status = stands(frame, &pressed, &positive);
        tt_sparse_free(&pressed);
        if (status != TT_OK) return status;
        if (positive) *least = ladder[i];
        if (positive) return TT_OK;
    }
    return TT_OK;
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

/* Half of what a bar's end stiffness says of this section force at a place of it: the square root
 * of the force that a unit of energy may make there. */
double tt_frame_most_force(const tt_frame *frame, size_t bar, double x, int force)
{
    const tt_frame_bar *b = &frame->bars.at[bar];
    const double arm = (1.0 - x) * b->length;
    double s[TT_SIX] = {0}, k[TT_SIX] = {0}, sum = 0.0;
    s[force] = 1.0;
    if (force == 4) s[2] = -arm;
    if (force == 5) s[1] = arm;
    tt_mat6_apply(&b->end_stiffness, s, k);
    for (int d = 0; d < TT_SIX; d++) sum += s[d] * k[d];
    return sqrt(sum);
}
