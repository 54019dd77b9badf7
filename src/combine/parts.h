/* combine/parts.h - what the files of this module share. */
#ifndef TT_COMBINE_PARTS_H
#define TT_COMBINE_PARTS_H

#include "combine/second.h"

/** What bounds the buckling factor of a situation from below: its cases press together at most like
 *  the sum of each (the largest eigenvalue of a sum is at most the sum of theirs). */
typedef struct {
    double (*press)[2]; /* [units] 1 / factor surely not reached, of it and of it turned round */
    double (*drift)[TT_PATTERNS]; /* [combinations] largest of any lean */
    double *energy;               /* [rows * rows] f' inverse(K) f between two unit cases, J */
} tt_bounds;

/** What was found out of a situation so far. */
typedef struct {
    const tt_exact *exact; /* NULL: not solved */
    double change;         /* of an upright one, see tt_frame_first_change */
    double *of_bar;        /* [bars] likewise; NULL: not asked */
} tt_known;
enum { TT_KNOWN_LEANS = 1 + TT_LEANS_MOST };

struct tt_second_order {
    const tt_model *model;
    const tt_actions *actions;
    const tt_combinations *combinations;
    const tt_solution *solution;
    tt_pool pool;
    size_t *lean_of; /* [cases] the first of its two leans, TT_NONE */
    size_t *row;     /* [cases + leans] of the energies */
    size_t rows;
    double (*pull)[2]; /* [cases] level resultant, N, x and y */
    double weight;     /* N, the heaviest */
    tt_bounds bounds[TT_MODELS];
    TT_LIST(tt_exact *) exact;
    tt_known *known[TT_MODELS]; /* [combinations * TT_PATTERNS * TT_KNOWN_LEANS] */
    tt_status failed;
};

tt_known *tt_known_of(const tt_second_order *second, int carry, const tt_situation *of);

/** Whether loads together pull level, and how, N. */
bool tt_level_pull(const tt_second_order *second, const tt_combination *together, double *x,
                   double *y);
const tt_answer *tt_unit_answer(const tt_second_order *second, int carry, size_t unit);
const tt_frame_load *tt_unit_load(const tt_second_order *second, size_t unit);
double tt_energy(const tt_second_order *second, int carry, size_t a, size_t b);
void tt_forces_add(tt_forces *sum, const tt_forces *more, double factor);

/** Of unit cases together: twice their energy, J; 1 / a of them, and of them turned round. */
double tt_energy_of(const tt_second_order *second, int carry, const tt_unit_part *part, size_t n);
void tt_pressing_of(const tt_second_order *second, int carry, const tt_unit_part *part, size_t n,
                    double out[2]);
/** 1 / a, a under the buckling factor of a situation; with what its forces may grow. */
double tt_situation_pressed(const tt_second_order *second, int carry, const tt_situation *of);

/** Puts the loads of exact->of together, first order from superposition, and solves. */
tt_status tt_exact_solve(tt_second_order *second, tt_exact *exact);

#endif
