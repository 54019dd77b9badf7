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

/** What a metre at a point weighs. */
typedef struct {
    double mass;       /* kg/m */
    tt_vec3 centre;    /* m, off the axis; local */
    double inertia[3]; /* kg.m2/m */
} tt_bar_matter;

typedef struct {
    size_t from, to;
    tt_axes axes;
    double length;
    tt_bar_matter matter[TT_BAR_POINTS];
    tt_mat6 flexibility[TT_BAR_POINTS]; /* strains from section forces; unprepared the inverse */
    tt_mat6 end_stiffness;              /* forces at the end from its moves, start held; local */
    double wagner[TT_BAR_POINTS]; /* m2, of the axial force: sum of E r^2 over the section by EA */
    double held[TT_BAR_POINTS][TT_SIX][TT_SIX]; /* [j][d]: forces on the end, both ends held, by a
                                                   line load of one along d at point j; local */
    tt_bar_matrix mass;                         /* global */
} tt_frame_bar;

typedef struct {
    tt_vec3 at;
    bool held[TT_SIX];
    bool any_held, sprung;
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
    size_t node;
    double stiffness[TT_SIX];
} tt_frame_spring_at;

typedef struct {
    size_t master;       /* node */
    int unknown[TT_SIX]; /* -1 where held */
} tt_frame_body;

/** The points of a bar as cuts of it. */
typedef struct {
    tt_frame_cut cut[TT_BAR_POINTS];
} tt_points;

struct tt_frame {
    TT_LIST(tt_frame_node) nodes;
    TT_LIST(tt_frame_bar) bars;
    TT_LIST(tt_frame_arm) arms;
    TT_LIST(tt_frame_mass_at) masses;
    TT_LIST(tt_frame_spring_at) springs;
    TT_LIST(tt_frame_body) bodies; /* from here on filled by tt_frame_prepare */
    tt_points points;
    int unknowns;
    tt_sparse stiffness, mass;
    tt_factor factor;
};

/* points.c: of the polynomial that is 1 at point j and 0 at the others, once[j] its integral from 0
 * to x, twice[j] the integral of that integral (0 <= x <= 1). */
typedef struct {
    double once[TT_BAR_POINTS], twice[TT_BAR_POINTS];
} tt_integrals;
tt_integrals tt_bar_integrals(double x);

/* rigid.c: what is rigidly joined, `arm` away. Six of a node: moves or forces, then turns or
 * moments. */
tt_vec3 tt_six_first(const double six[TT_SIX]);
tt_vec3 tt_six_last(const double six[TT_SIX]);
/** Moves at the end of the arm. */
void tt_six_moved(tt_vec3 arm, const double six[TT_SIX], double out[TT_SIX]);
/** Adds to `sum` what forces at the end of the arm are at its start. */
void tt_six_brought(tt_vec3 arm, const double six[TT_SIX], double sum[TT_SIX]);
/** T' m and m T, T the moves at the end of the arm from those of its start. */
void tt_rigid_rows(tt_mat6 *m, tt_vec3 arm);
void tt_rigid_columns(tt_mat6 *m, tt_vec3 arm);
/** Mass matrix, times the moves in m, of a rigid body whose centre is `arm` away. */
void tt_rigid_mass(double mass, tt_vec3 arm, const double inertia[3], tt_mat6 *m);
tt_mat6 tt_unit_matrix(void);
/** A matrix in the local axes, brought to the global ones. */
tt_mat6 tt_turned(const tt_axes *axes, const tt_mat6 *local);
/** Six values brought to the global axes, and to the local ones. */
void tt_six_global(const tt_axes *axes, const double local[TT_SIX], double out[TT_SIX]);
void tt_six_local(const tt_axes *axes, const double global[TT_SIX], double out[TT_SIX]);

/* shapes.c */
tt_points tt_points_of_bars(void);
/** At a point, from how the end of the bar moves while its start is held; local. */
typedef struct {
    tt_mat6 strain, moves;
} tt_bar_shape;
/** Moves at a cut of a bar: those of its start as a rigid body, and the strains between. */
void tt_bar_moves_at(double length, const tt_frame_cut *cut, const double start[TT_SIX],
                     const double strain[TT_BAR_POINTS][TT_SIX], double out[TT_SIX]);
/** Strains at the points from forces at the end. */
void tt_bar_strains(const tt_frame_bar *bar, tt_mat6 strain[TT_BAR_POINTS]);
void tt_bar_shapes(const tt_frame_bar *bar, const tt_points *points,
                   const tt_mat6 strain[TT_BAR_POINTS], tt_bar_shape shape[TT_BAR_POINTS]);

/* bar.c */
/** Flexibilities, end stiffness, forces of the held bar, mass. False when a section has no
 *  stiffness in some direction. */
bool tt_bar_form(tt_frame_bar *bar, const tt_points *points);

/* barmass.c */
tt_bar_matrix tt_bar_mass(const tt_frame_bar *bar, const tt_bar_shape shape[TT_BAR_POINTS]);

/* barload.c */
/** As tt_frame_cut_section, from the section forces at the start. */
void tt_section_from(const tt_frame *frame, const tt_frame_load *load, size_t bar,
                     const tt_frame_cut *cut, const double start[TT_SIX], double out[TT_SIX]);
/** Forces of the nodes on the ends of a bar; local. */
typedef struct {
    double start[TT_SIX], end[TT_SIX];
} tt_bar_ends;
/** The part of a line load on a bar; NULL when there is none. */
const tt_vec3 *tt_line_of(const tt_vec3 *line, size_t bar);
/** Both ends held, under its line load. */
tt_bar_ends tt_bar_held(const tt_frame *frame, const tt_frame_load *load, size_t bar);
/** Adds what it takes to move the nodes so (see tt_long_moves). */
void tt_bar_strain(const tt_frame *frame, const tt_frame_bar *bar, long double (*nodes)[TT_SIX],
                   tt_bar_ends *ends);
/** Adds these forces on the end, and on the start what balances them. */
void tt_bar_push_end(const tt_frame_bar *bar, const double end[TT_SIX], tt_bar_ends *ends);
/** Adds the forces on both ends to those on the nodes; global. */
void tt_bar_push_nodes(const tt_frame_bar *bar, const tt_bar_ends *ends, double (*nodes)[TT_SIX]);

/* strain.c */
/** Moves of the bodies in two parts, a rough one and what is still to be added. */
typedef struct {
    double (*rough)[TT_SIX], (*fine)[TT_SIX];
} tt_body_moves;
/** Their sum at each node, in long double since neighbours move nearly alike. */
void tt_long_moves(const tt_frame *frame, const tt_body_moves *moves, long double (*nodes)[TT_SIX]);
/** How much more the end of a bar moves than its start carries it; local. */
void tt_bar_moved(const tt_frame *frame, const tt_frame_bar *bar, long double (*nodes)[TT_SIX],
                  double out[TT_SIX]);
/** Twice the strain energy of a bar; of all bars and springs. */
double tt_bar_energy(const tt_frame *frame, const tt_frame_bar *bar, long double (*nodes)[TT_SIX]);
double tt_strain_energy(const tt_frame *frame, long double (*nodes)[TT_SIX]);

/* geometric.c: the second variation of the work of section forces; local. */
/** Section forces at the points of a bar, N N N N.m N.m N.m. */
typedef struct {
    double at[TT_BAR_POINTS][TT_SIX];
} tt_bar_forces;
/** From those at the start and the line loads. */
tt_bar_forces tt_forces_at_points(const tt_frame *frame, const tt_frame_load *load, size_t bar,
                                  const double start[TT_SIX]);
/** What the ends of a bar must take more because its section forces have turned with it: `turn` of
 *  its start, `strain` at its points. */
tt_bar_ends tt_bar_lean(const tt_frame_bar *bar, const tt_points *points,
                        const tt_bar_forces *forces, const double turn[3],
                        double strain[TT_BAR_POINTS][TT_SIX]);
/** The same as matrices: of the turn of the start with itself (rows and columns 3 to 5 of six),
 * with how the end moves beside it (rows 3 to 5), and of that with itself. */
typedef struct {
    tt_mat6 turn, between, end;
} tt_bar_geometric;
tt_bar_geometric tt_bar_geometry(const tt_frame_bar *bar, const tt_points *points,
                                 const tt_bar_forces *forces);
/** Strains at the points from section forces there. */
void tt_bar_strained(const tt_frame_bar *bar, const tt_bar_forces *forces,
                     double strain[TT_BAR_POINTS][TT_SIX]);

/* assemble_geometric.c */
/** `factor` times K_g of all unknowns in a state under its load. */
tt_status tt_assemble_geometric(const tt_frame *frame, const tt_frame_load *load,
                                const tt_frame_state *state, double factor, tt_sparse *out);

/** Factors of K + factor * K_g, to be freed; whether all its pivots are positive. */
tt_status tt_factor_moved(const tt_frame *frame, const tt_sparse *geometric, double factor,
                          tt_factor *out, bool *positive);

/* lever.c: forces beside the node whose moves they share. */
/** Second derivative by the turn of a body of what forces at arms lose of their work by it; lever:
 *  sum of force (rows) times arm. */
tt_mat6 tt_lever_matrix(const double lever[3][3]);
/** That of a node: the forces that it gives to bars and springs less its load (on_node), at its arm
 *  from the master of its body, and its loads beside it. */
void tt_node_lever(const tt_frame *frame, const tt_frame_load *load, size_t node,
                   const double on_node[TT_SIX], double lever[3][3]);

/* springs.c; moved: moves of the nodes. */
/** Adds the forces of the nodes on the springs. */
void tt_springs_push(const tt_frame *frame, long double (*moved)[TT_SIX],
                     double (*on_node)[TT_SIX]);
/** Adds what the springs give to the reactions, from the moves of the state. */
void tt_springs_react(const tt_frame *frame, tt_frame_state *state);
/** Twice what the springs store. */
double tt_springs_energy(const tt_frame *frame, long double (*moved)[TT_SIX]);

/* bodies.c */
tt_status tt_bodies_form(tt_frame *frame, tt_frame_fault *fault);
/** From the master of its body to a node. */
tt_vec3 tt_arm(const tt_frame *frame, size_t node);
/** Both ends on one body: nothing can strain it. */
bool tt_bar_inside(const tt_frame *frame, const tt_frame_bar *bar);

/** Between unknowns and bodies. */
void tt_spread(const tt_frame *frame, const double *unknowns, double (*bodies)[TT_SIX]);
void tt_gather(const tt_frame *frame, double (*bodies)[TT_SIX], double *unknowns);
/** Moves of all nodes from those of the bodies. */
void tt_node_moves(const tt_frame *frame, double (*bodies)[TT_SIX], double (*nodes)[TT_SIX]);

/** What the ground gives to held masters, from the forces that the bodies need. */
void tt_put_reactions(const tt_frame *frame, double (*forces)[TT_SIX], tt_frame_state *state);

/* shape.c: largest move 1; of a shape that only turns (a shaft) the largest turn 1. */
void tt_shape_normalize(const tt_frame *frame, double (*shape)[TT_SIX]);

/* mechanism.c */
tt_status tt_find_loose(const tt_frame *frame, tt_frame_fault *fault);
tt_frame_fault tt_fault_of(const tt_frame *frame, int unknown);
/** Smallest members of sets in a table where each points to one of its set. */
size_t tt_set_root(size_t *set, size_t i);
void tt_set_join(size_t *set, size_t a, size_t b);

/* assemble.c: the matrix of the unknowns; either stiffness or mass. */
tt_status tt_assemble_stiffness(tt_frame *frame);
tt_status tt_assemble_mass(tt_frame *frame);
/** T' m T, T the moves at the end of the arm. */
void tt_bring(tt_mat6 *m, tt_vec3 arm);
/** From the master of the body of a bar's start to where its end is. */
tt_vec3 tt_start_arm(const tt_frame *frame, const tt_frame_bar *bar);
/** Of the two bodies, about their masters: what works on the moves of the bar's end less those that
 *  its start brings there; by_end: local. */
tt_bar_matrix tt_between_bodies(const tt_frame *frame, const tt_frame_bar *bar,
                                const tt_mat6 *by_end);
/** Adds to the terms; of a bar between two bodies, or within one. */
bool tt_add_bar(const tt_frame *frame, const tt_frame_bar *bar, const tt_bar_matrix *m,
                tt_entries *terms);
bool tt_add_body(const tt_frame *frame, size_t node, const tt_mat6 *own, tt_entries *terms);
/** The matrix of the terms, which are cleared; TT_E_NOMEM where they do not fit. */
tt_status tt_assembled(const tt_frame *frame, bool fits, tt_entries *terms, tt_sparse *out);

/* balance.c: see residual in tt_frame_state. */
double tt_frame_imbalance(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *state);

/* weigh.c: forces on the bodies that hold a frame under these accelerations of the bodies. */
void tt_mass_times(const tt_frame *frame, double (*moves)[TT_SIX], double (*forces)[TT_SIX]);

#endif
