/* frame/second.h - a prepared frame of second order: what its forces do by moving with it, when it
 * buckles, and the proof that it does not. Small turns (theory holds to about 0.1 rad); loads keep
 * their direction. SI. */
#ifndef TT_FRAME_SECOND_H
#define TT_FRAME_SECOND_H

#include "frame/frame.h"
#include "num/dense.h"

/** rad: turns under this are small, and the theory holds; 0.1 to its second figure. */
#define TT_SMALL_TURN 0.0995

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

/** Solves by repeated correction until moves change by less than 1e-7 of the largest; then counts
 *  the negative pivots of K + K_g, which must be none, unless it is `ruled_out` that it buckles.
 *  start: the state of first order under the same load. TT_E_NOT_CONVERGED, TT_E_NOT_FINITE,
 *  TT_E_NOMEM; TT_OK with `buckles`. */
tt_status tt_frame_second(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *start, bool ruled_out, tt_pool *pool,
                          tt_second_state *out);

/** sqrt(u' K u) of what the first correction moves, of all and of each bar [bars]: all of second
 *  order moves at most that over 1 - 1/a, a the buckling factor. */
tt_status tt_frame_first_change(const tt_frame *frame, const tt_frame_load *load,
                                const tt_frame_state *start, double *size, double *of_bar);

/** Section forces at a cut of a bar by equilibrium: axes those of the unloaded bar, moments about
 *  where the cut has moved to. */
void tt_second_section(const tt_frame *frame, const tt_second_state *second,
                       const tt_frame_load *load, size_t bar, const tt_frame_cut *cut,
                       double out[TT_SIX]);

/** The same in the axes of the cut as it has turned: what strains it. */
void tt_second_section_turned(const tt_frame *frame, const tt_second_state *second,
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

/** Factors that the buckling factors of a state, and of it turned round, surely exceed, by the
 *  pivots; 0 when it is not even 1, `enough` = 100 when that is exceeded. */
tt_status tt_frame_least(const tt_frame *frame, const tt_frame_load *load,
                         const tt_frame_state *state, double least[2]);

/** The unknowns of a prepared frame; a load brought to them, and the moves of a state: their
 * product is twice an energy, J. out: [unknowns]. */
size_t tt_frame_unknowns(const tt_frame *frame);
tt_status tt_frame_condense(const tt_frame *frame, const tt_frame_load *load, double *out);
void tt_frame_moves(const tt_frame *frame, const tt_frame_state *state, double *out);

/** How far moves u' K u = 1 take a node level, at most, m. TT_E_NOMEM, TT_E_NOT_FINITE. */
tt_status tt_frame_soft(const tt_frame *frame, size_t node, double *most);

/** Changes f of the section forces at a fraction of a bar by moves u' K u = 1 have f'
 * inverse(reach) f at most 1; in a tree some have 1. */
void tt_frame_reach(const tt_frame *frame, size_t bar, double x, tt_mat6 *reach);

#endif
