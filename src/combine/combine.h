/* combine/combine.h - loads together: the combinations of the basis and of the file, and the
 * solution of every unit case in both carry models, from which each combination is superposed. */
#ifndef TT_COMBINE_COMBINE_H
#define TT_COMBINE_COMBINE_H

#include "action/action.h"

typedef struct {
    size_t acting; /* index of a case */
    double factor;
} tt_part;

/** Loads together. Weight is apart: its pattern chooses the case. */
typedef struct {
    const char *name; /* "6.10 sup: 1.35 weight + 1.5 wind 90"; the file's own name for its own */
    tt_level level;
    tt_source source;
    double weight;           /* factor on the weight */
    double weight_restoring; /* equilibrium: on the part that restores */
    double overturning_factor;
    tt_part *part;
    size_t parts;
    double imperfection; /* how far the piece leans, level over vertical; 0: not */
    bool own;            /* from the file */
    bool patterned;      /* judged with heavy and light weight; own ones too */
    size_t leading;      /* case that leads, TT_NONE when weight alone */
} tt_combination;

typedef TT_LIST(tt_combination) tt_combinations;

/** All combinations; strings and parts live in the pool. TT_E_INPUT when the file has more than 8
 *  variable or 4 permanent cases of its own: not every choice of them could be tried. */
tt_status tt_combine(const tt_piece *piece, const tt_actions *actions, const tt_basis *basis,
                     tt_pool *pool, tt_combinations *list);

/** What one unit case does in one carry model: state and cut, times sense. A case against another
 *  shares its arrays. */
typedef struct {
    tt_frame_state state;
    tt_forces *cut; /* [cuts] */
    double sense;   /* of the case */
} tt_answer;

typedef struct {
    tt_answer *answer[TT_MODELS]; /* [cases] */
    tt_answer *lean[TT_MODELS];   /* [leans] */
    tt_modes modes[TT_MODELS];
    double residual; /* largest of all */
    double refinement;
} tt_solution;

/** Solves every case in both models, but for those that are another's exact negative. */
tt_status tt_solve_cases(const tt_model *model, const tt_actions *actions, tt_pool *pool,
                         tt_solution *solution);

/** Section forces of one unit case at a cut. */
tt_forces tt_answer_forces(const tt_answer *answer, size_t cut);

/** Reaction at a node (6) under loads together, with the weight of a pattern. */
void tt_superpose_reaction(const tt_solution *solution, int carry, const tt_combination *together,
                           int pattern, size_t node, double out[6]);

#endif
