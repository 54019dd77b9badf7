/* frame/parts.h - what a frame is made of; for the files of this module only. SI.
 *
 * Nodes joined by rigid arms form a body, whose six unknowns are the moves and turns of one node of
 * it, the master (the held node if there is one). "Local" is in the axes of a bar. */
#ifndef TT_FRAME_PARTS_H
#define TT_FRAME_PARTS_H

#include "base/list.h"
#include "frame/frame.h"
#include "num/dense.h"
#include "num/sparse.h"

/** Stiffness or mass matrix of a bar, between its start (a) and its end (b); ba = ab'. */
typedef struct {
    tt_mat6 aa, ab, bb;
} tt_bar_matrix;

typedef struct {
    size_t from, to;
    tt_axes axes;
    double length;
    tt_bar_section section[TT_BAR_POINTS];
    tt_mat6 flexibility[TT_BAR_POINTS]; /* strains from section forces */
    tt_mat6 end_stiffness;              /* forces at the end from its moves, start held; local */
    tt_bar_matrix mass;                 /* local */
} tt_frame_bar;

typedef struct {
    tt_vec3 at;
    bool held[TT_SIX];
    bool any_held;
    size_t body;
} tt_frame_node;

typedef struct {
    size_t a, b;
} tt_frame_arm;

typedef struct {
    size_t node;
    double mass;
    tt_vec3 offset;
    double inertia[3];
} tt_frame_mass_at;

typedef struct {
    size_t master;       /* node */
    int unknown[TT_SIX]; /* -1 where held */
} tt_frame_body;

struct tt_frame {
    TT_LIST(tt_frame_node) nodes;
    TT_LIST(tt_frame_bar) bars;
    TT_LIST(tt_frame_arm) arms;
    TT_LIST(tt_frame_mass_at) masses;
    TT_LIST(tt_frame_body) bodies; /* from here on filled by tt_frame_prepare */
    int unknowns;
    tt_sparse stiffness, mass;
    tt_factor factor;
};

/* points.c: of the polynomial that is 1 at point j and 0 at the others, once[j] its integral from 0
 * to x, twice[j] the integral of that integral (0 <= x <= 1). */
void tt_bar_integrals(double x, double once[TT_BAR_POINTS], double twice[TT_BAR_POINTS]);

/* bar.c */
/** Moves at a point from the moves of a point that it is rigidly joined to, `arm` away. */
tt_mat6 tt_rigid(tt_vec3 arm);
/** Mass matrix about a point of a rigid body whose centre is `arm` away. */
tt_mat6 tt_rigid_mass(double mass, tt_vec3 arm, const double inertia[3]);
/** Section forces at x (m) from forces at the end of a bar, itself without load. */
tt_mat6 tt_bar_from_end(const tt_frame_bar *bar, double x);
/** Flexibilities, end stiffness. False when a section has no stiffness in some direction. */
bool tt_bar_form(tt_frame_bar *bar);
tt_bar_matrix tt_bar_stiffness(const tt_frame_bar *bar);

/* barmass.c */
tt_bar_matrix tt_bar_mass(const tt_frame_bar *bar);

/* barload.c: a line load in local axes, forces then moments per metre, at the points. */
typedef struct {
    double at[TT_BAR_POINTS][TT_SIX];
} tt_line;
tt_line tt_bar_line(const tt_frame *frame, const tt_frame_load *load, size_t bar);
/** Forces of the nodes on the ends of a bar whose end moves by `moved` more than its start. */
typedef struct {
    double start[TT_SIX], end[TT_SIX];
} tt_bar_ends;
tt_bar_ends tt_bar_end_forces(const tt_frame_bar *bar, const double moved[TT_SIX],
                              const tt_line *line);

/* strain.c */
/** Moves of the bodies in two parts, a rough one and what is still to be added. */
typedef struct {
    double (*rough)[TT_SIX], (*fine)[TT_SIX];
} tt_body_moves;
/** How much more the end of a bar moves than its start carries it; local. */
void tt_bar_moved(const tt_frame *frame, const tt_frame_bar *bar, const tt_body_moves *moves,
                  double out[TT_SIX]);
/** Twice the strain energy of all bars. */
double tt_strain_energy(const tt_frame *frame, const tt_body_moves *moves);

/* bodies.c */
tt_status tt_bodies_form(tt_frame *frame, tt_frame_fault *fault);
/** The body of an end of a bar (0 start, 1 end), and local moves of that end from the body's. */
size_t tt_bar_body(const tt_frame *frame, const tt_frame_bar *bar, int end);
tt_mat6 tt_bar_to_local(const tt_frame *frame, const tt_frame_bar *bar, int end);
/** Moves of a node from those of its body. */
tt_mat6 tt_node_of_body(const tt_frame *frame, size_t node);

/* mechanism.c */
tt_status tt_find_loose(const tt_frame *frame, tt_frame_fault *fault);
tt_frame_fault tt_fault_of(const tt_frame *frame, int unknown);
/** Smallest members of sets in a table where each points to one of its set. */
size_t tt_set_root(size_t *set, size_t i);
void tt_set_join(size_t *set, size_t a, size_t b);

/* assemble.c: the matrix of the unknowns; either stiffness or mass. */
tt_status tt_assemble_stiffness(tt_frame *frame);
tt_status tt_assemble_mass(tt_frame *frame);

/* solve.c: between unknowns and bodies. */
void tt_spread(const tt_frame *frame, const double *unknowns, double (*bodies)[TT_SIX]);
void tt_gather(const tt_frame *frame, double (*bodies)[TT_SIX], double *unknowns);
/** Moves of all nodes from those of the bodies. */
void tt_node_moves(const tt_frame *frame, double (*bodies)[TT_SIX], double (*nodes)[TT_SIX]);

/* balance.c: see residual in tt_frame_state. */
double tt_frame_imbalance(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *state);

/* weigh.c: forces on the bodies that hold a frame under these accelerations of the bodies. */
void tt_mass_times(const tt_frame *frame, double (*moves)[TT_SIX], double (*forces)[TT_SIX]);

#endif
