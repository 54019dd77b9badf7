/* frame/frame.h - a space frame of Timoshenko bars: nodes, bars, rigid arms, supports, masses;
 * linear statics, vibration. Knows no bronze, no piece, no load standard. SI.
 *
 * A bar may change along its length: its section is given at the TT_BAR_POINTS Gauss-Legendre
 * points of the bar and integrated by the flexibility method (exact end forces and movements for
 * what the points resolve). Local axes of a bar: x from its first node to its second, y and z as
 * given; section forces act on the cut face whose outward normal is +x: (N, Vy, Vz, T, My, Mz).
 * Strains in the same order: e0, gamma_y = v' - theta_z, gamma_z = w' + theta_y, theta_x',
 * ky = theta_y', kz = theta_z'. */
#ifndef TT_FRAME_FRAME_H
#define TT_FRAME_FRAME_H

#include "base/pool.h"
#include "num/vec3.h"
#include "tiptoe/status.h"

#include <stdbool.h>
#include <stddef.h>

enum { TT_BAR_POINTS = 6, TT_SIX = 6 };

/** Abscissae and weights of Gauss-Legendre on 0..1 (weights sum to 1), to 1e-16. */
extern const double tt_bar_point[TT_BAR_POINTS];
extern const double tt_bar_weight[TT_BAR_POINTS];

/** The cross-section of a bar at one of its points, in the bar's local axes. */
typedef struct {
    double stiffness[TT_SIX][TT_SIX]; /* symmetric, section forces from strains; INFINITY on the
                                         diagonal: rigid in that (its row and column then unread) */
    double mass;                      /* kg/m */
    double mass_y, mass_z;            /* m, centre of mass off the axis */
    double turn_inertia[3];           /* kg.m2/m about local x, y, z through the centre of mass */
} tt_bar_section;

typedef struct tt_frame tt_frame;

/** A new empty frame, NULL without memory. */
tt_frame *tt_frame_new(void);
tt_frame *tt_frame_free(tt_frame *frame);

/* Building. Each returns false without memory. Nodes and bars are numbered from 0 in order. */
bool tt_frame_add_node(tt_frame *frame, tt_vec3 at);
/** Room for so many bars in all, which saves growing. */
bool tt_frame_reserve(tt_frame *frame, size_t bars);
/** A bar; y and z are the local axes (unit, right-handed with x). sections: TT_BAR_POINTS, copied.
 */
bool tt_frame_add_bar(tt_frame *frame, size_t from, size_t to, const tt_axes *axes,
                      const tt_bar_section *sections);
/** A rigid arm without mass between two nodes (exact elimination; chains and trees of arms). */
bool tt_frame_add_arm(tt_frame *frame, size_t a, size_t b);
/** Held directions of a node: x, y, z, then turns about x, y, z, global. */
bool tt_frame_hold(tt_frame *frame, size_t node, const bool held[TT_SIX]);
/** Linear springs to the ground at a node, in the directions of tt_frame_hold: N/m and N.m/rad, 0
 * for none. Not at a node that is held in the same direction: there it does nothing. */
bool tt_frame_spring(tt_frame *frame, size_t node, const double stiffness[TT_SIX]);
/** A mass on a rigid offset from a node; inertia about global axes through the mass, kg.m2. */
bool tt_frame_add_mass(tt_frame *frame, size_t node, double mass, tt_vec3 offset,
                       const double inertia[3]);

size_t tt_frame_nodes(const tt_frame *frame);
size_t tt_frame_bars(const tt_frame *frame);

/** What a failure means: the node and the direction (unit vector, move or turn) that is free, or
 *  the node where stiff meets soft. */
typedef struct {
    size_t node;
    int direction;       /* 0..2 move x, y, z; 3..5 turn about x, y, z; -1 unknown */
    size_t arm_a, arm_b; /* two held nodes on one rigid body, when a == b nothing */
} tt_frame_fault;

/** Numbers the unknowns and factors the stiffness (LDL after AMD). TT_E_MECHANISM with a fault when
 *  something is free to move (a part without support, or a pivot below 1e-11 of its diagonal);
 *  TT_E_INPUT with arm_a, arm_b when two held nodes sit on one rigid body and share their load, or
 *  with the first node of a bar of no length; TT_E_ILL_CONDITIONED with the first node of a bar
 *  whose section has no stiffness in some direction.
 *  Must be called once, after building and before what follows. */
tt_status tt_frame_prepare(tt_frame *frame, tt_frame_fault *fault);

/** A load case. Arrays are lent; NULL means none. */
typedef struct {
    const tt_vec3 *line_force;    /* [bars * TT_BAR_POINTS] N/m, global, on the bar's axis */
    const tt_vec3 *line_moment;   /* same, N.m/m, global */
    const double (*node)[TT_SIX]; /* [nodes] N and N.m, global */
    const double (*lever)[3][3];  /* [nodes] of the forces in `node` that act beside it: the sum of
                                     force (rows) times way from the node (columns), N.m, global;
                                     their moments are in `node` too. Read by second order only. */
} tt_frame_load;

/** What a load case does. Arrays live in the pool given to tt_frame_solve. */
typedef struct {
    double (*move)[TT_SIX];     /* [nodes] m and rad, global */
    double (*reaction)[TT_SIX]; /* [nodes] ground on frame, N and N.m about the node; zero where
                                   free; a spring gives -k u */
    double (*end)[TT_SIX];      /* [bars] section forces at the bar's start (x = 0+), local */
    double residual;            /* |applied + reactions| / (|applied| + tiny), forces and moments
                                   about the origin, the larger of the two relative sums */
    double refinement;          /* what one step of refinement moved, relative */
} tt_frame_state;

/** Solves one load case, with one step of refinement on a long double residual. TT_E_NOT_FINITE.
 *  A prepared frame is only read: several threads may solve on it, each with its own pool. */
tt_status tt_frame_solve(const tt_frame *frame, const tt_frame_load *load, tt_pool *pool,
                         tt_frame_state *state);

/** Several load cases, sooner than one by one and with the same bits. load, state: [n]. */
tt_status tt_frame_solve_all(const tt_frame *frame, const tt_frame_load *load, size_t n,
                             tt_pool *pool, tt_frame_state *state);

/** Section forces of a bar at the fraction x (0..1) of its length, from equilibrium: the state's
 *  end forces less the line loads between (their polynomial through the points, integrated). */
void tt_frame_section(const tt_frame *frame, const tt_frame_state *state, const tt_frame_load *load,
                      size_t bar, double x, double out[TT_SIX]);

/** The fraction x of a bar, with what the line loads before it weigh there: for many load cases. */
typedef struct {
    double x;
    double once[TT_BAR_POINTS];  /* integrals of the polynomials through the points, from 0 to x */
    double twice[TT_BAR_POINTS]; /* integrals of those */
} tt_frame_cut;
tt_frame_cut tt_frame_cut_at(double x);
/** As tt_frame_section. */
void tt_frame_cut_section(const tt_frame *frame, const tt_frame_state *state,
                          const tt_frame_load *load, size_t bar, const tt_frame_cut *cut,
                          double out[TT_SIX]);

/** The work of a load case on its own movements, half the sum of loads times moves (line loads at
 *  the points), and the strain energy from section forces and section flexibilities, with that of
 *  the springs; J. Equal when
 *  the movements fit together and the forces balance. TT_E_NOT_FINITE. */
tt_status tt_frame_energy(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *state, double *work, double *strain);

typedef struct {
    double frequency;        /* Hz */
    double mass_fraction[3]; /* effective mass along global x, y, z over the free mass */
    double (
        *shape)[TT_SIX]; /* [nodes], largest move of a node 1; when it only turns, largest turn */
} tt_mode;

/** What proves that no mode was missed: modes below the shift by the signs of D of K - shift M. */
typedef struct {
    double shift;   /* rad2/s2, just above the highest mode kept */
    size_t counted; /* negative pivots there */
    size_t found;   /* modes found below it */
} tt_mode_proof;

typedef struct {
    tt_mode *at;
    size_t n;
    double free_mass[3]; /* kg that can move along x, y, z: what all modes together move */
    tt_mode_proof proof;
} tt_modes;

/** Lowest modes (consistent mass with the exact static shapes, rotary inertia), ascending: until
 *  90 % of the free mass each way or all below `up_to` Hz are found, whichever comes first, at
 * least `least` (fewer when the frame has fewer); modes within 1e-4 of the last are kept with it.
 * Relative accuracy 1e-9 in frequency squared. TT_E_NOT_CONVERGED when the Sturm count disagrees.
 */
tt_status tt_frame_modes(const tt_frame *frame, size_t least, double up_to, tt_pool *pool,
                         tt_modes *modes);

/** Total mass, and its centre (NULL: not wanted), as the mass matrices see them: for a cross-check.
 *  After tt_frame_prepare. */
double tt_frame_mass(const tt_frame *frame, tt_vec3 *centre);

#endif
