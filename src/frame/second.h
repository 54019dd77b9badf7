/* frame/second.h - a prepared frame of second order: what its forces do by moving with it, when it
 * buckles, and the proof that it does not. Small turns (theory holds to about 0.1 rad); loads keep
 * their direction. SI. */
#ifndef TT_FRAME_SECOND_H
#define TT_FRAME_SECOND_H

#include "frame/frame.h"

/** A state of second order under a load: K u + K_g(forces of this state) u = load. */
typedef struct {
    tt_frame_state state; /* axes stay those of the unloaded bar; moments at a start are about where
                             it has moved to. residual: what is still out of balance, over the sum
                             of the loads, forces and moments each, the larger. refinement: what the
                             last step moved, relative. */
    double (*strain)[TT_SIX]; /* [bars * TT_BAR_POINTS] */
    size_t steps;
    bool buckles;     /* some pivot of K + K_g is not positive: nothing else here holds then */
    double most_turn; /* rad, of any node */
} tt_second_state;

/** Solves by repeated correction until moves change by less than 1e-8 of the largest; then counts
 *  the negative pivots of K + K_g, which must be none. start: the state of first order under the
 *  same load. TT_E_NOT_CONVERGED, TT_E_NOT_FINITE, TT_E_NOMEM; TT_OK with `buckles`. */
tt_status tt_frame_second(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *start, tt_pool *pool, tt_second_state *out);

/** Section forces at a cut of a bar by equilibrium: axes those of the unloaded bar, moments about
 *  where the cut has moved to. */
void tt_second_section(const tt_frame *frame, const tt_second_state *second,
                       const tt_frame_load *load, size_t bar, const tt_frame_cut *cut,
                       double out[TT_SIX]);

/** One way to buckle: the load times `factor`. */
typedef struct {
    double factor;
    double (*shape)[TT_SIX]; /* [nodes], as of a mode */
    size_t below, above;     /* negative pivots of K + f K_g a millionth below and above it */
} tt_buckling_mode;

typedef struct {
    tt_buckling_mode *at; /* ascending */
    size_t n;
    double far;   /* factors beyond this are not looked for */
    size_t under; /* how many there are under it, by the pivots */
} tt_buckling;

/** The lowest factors, `wanted` of them or as many as there are under `far` = 1e6; none: nothing is
 *  pressed. state: of first order under the load. TT_E_NOT_CONVERGED when the pivots count others
 *  than were found. */
tt_status tt_frame_buckling(const tt_frame *frame, const tt_frame_load *load,
                            const tt_frame_state *state, size_t wanted, tt_pool *pool,
                            tt_buckling *out);

/** The lowest of a few steps from 80 down that the buckling factor of a state surely exceeds, by
 *  the pivots; 0 when it is not even 1.25. sign -1: of the loads turned round. */
tt_status tt_frame_least(const tt_frame *frame, const tt_frame_load *load,
                         const tt_frame_state *state, double sign, double *least);

/** The largest sizes of section forces, and of forces on arms, of many states. */
typedef struct {
    double (*most)[TT_SIX]; /* [bars * TT_BAR_POINTS] */
    double *lever;          /* [nodes] N.m */
} tt_envelope;
tt_status tt_envelope_of(const tt_frame *frame, tt_pool *pool, tt_envelope *out);
/** Takes in `factor` times a state. */
tt_status tt_envelope_widen(const tt_frame *frame, const tt_frame_load *load,
                            const tt_frame_state *state, double factor, tt_envelope *envelope);
/** As tt_frame_least, of every state within the envelope. */
tt_status tt_envelope_least(const tt_frame *frame, const tt_envelope *envelope, double *least);

/** The unknowns of a prepared frame; a load brought to them, and the moves of a state: their
 * product is twice an energy, J. out: [unknowns]. */
size_t tt_frame_unknowns(const tt_frame *frame);
tt_status tt_frame_condense(const tt_frame *frame, const tt_frame_load *load, double *out);
void tt_frame_moves(const tt_frame *frame, const tt_frame_state *state, double *out);

/** The largest change of a section force (0..5) at a fraction of a bar that moves with u' K u = 1
 *  can make: sqrt(g' inverse(K) g) is not above it, and is it in a tree. */
double tt_frame_most_force(const tt_frame *frame, size_t bar, double x, int force);

#endif
