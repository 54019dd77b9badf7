/* combine/second.h - loads together of second order: which of them may govern is bounded from first
 * order; those that may are solved on the moved frame, each once. */
#ifndef TT_COMBINE_SECOND_H
#define TT_COMBINE_SECOND_H

#include "combine/combine.h"
#include "frame/second.h"
#include "num/dense.h"

/** Loads together with the weight of a pattern, and a way in which the piece leans. */
typedef struct {
    const tt_combination *together;
    int pattern;
    int lean; /* 0 .. tt_leans - 1, TT_UPRIGHT without one */
} tt_situation;

enum { TT_UPRIGHT = -1, TT_LEANS_MOST = 8 };

/** A situation solved on the moved frame. */
typedef struct {
    tt_situation of;
    int carry;
    tt_frame_load load;
    tt_second_state second; /* see there for `buckles` */
} tt_exact;

typedef struct tt_second_order tt_second_order;

/** Energies and bounds of the unit cases of both carry models; what is given is lent. */
tt_status tt_second_order_new(const tt_model *model, const tt_actions *actions,
                              const tt_combinations *combinations, const tt_solution *solution,
                              tt_second_order **out);
tt_second_order *tt_second_order_free(tt_second_order *second);

/** In how many ways a piece leans under loads together: along and across their level resultant
 *  both ways (3), in eight directions where they have none or are the file's own, 0 where nothing
 *  leans (one upright). */
int tt_leans(const tt_second_order *second, const tt_combination *together);

/** The way of a lean, unit, level; nil upright. */
tt_vec3 tt_lean_way(const tt_second_order *second, const tt_situation *of);

/** Section forces of first order at a cut of the model, the lean included. */
tt_forces tt_situation_forces(const tt_second_order *second, int carry, const tt_situation *of,
                              size_t cut);

/** Movement of a node likewise. */
void tt_situation_move(const tt_second_order *second, int carry, const tt_situation *of,
                       size_t node, double out[6]);

/** The unit cases of a situation: factors on cases, then on leans. */
typedef struct {
    size_t unit; /* index of a case; past those, of a lean */
    double factor;
} tt_unit_part;
enum { TT_UNIT_PARTS = 64 };
size_t tt_situation_units(const tt_second_order *second, const tt_situation *of,
                          tt_unit_part out[TT_UNIT_PARTS]);

/** What a unit case, or a lean, makes at any cut by first order. */
tt_forces tt_unit_forces(const tt_second_order *second, int carry, size_t unit, const tt_cut *cut);

/** How far second order may take a situation from first order: sqrt(u' K u) of the change is not
 *  above it, sqrt(J). For g' u of the change multiply by sqrt(g' inverse(K) g). INFINITY where
 *  buckling is not ruled out. (Decision on screening.) */
double tt_situation_drift(const tt_second_order *second, int carry, const tt_situation *of);

/** The same, closer, at the cost of one correction of the situation; of the whole (bar TT_NONE), or
 *  of what a bar takes part in. INFINITY as above. */
double tt_situation_drift_closer(tt_second_order *second, int carry, const tt_situation *of,
                                 size_t bar);

/** The largest drift of any lean of a combination of the list. */
double tt_most_drift(const tt_second_order *second, int carry, const tt_combination *together,
                     int pattern);
/** Section forces f (in the cut's axes) that one unit of drift may make at a cut: f' inverse(reach)
 * f is 1 at most. */
void tt_second_reach(const tt_second_order *second, int carry, const tt_cut *cut, tt_mat6 *reach);

/** The situation solved; NULL after a failure, which tt_second_failed then tells. */
const tt_exact *tt_situation_exact(tt_second_order *second, int carry, const tt_situation *of);
tt_status tt_second_failed(const tt_second_order *second);

/** How a situation buckles: from its first order, so without the lean's growth. TT_E_*. */
tt_status tt_situation_buckling(const tt_second_order *second, int carry, const tt_situation *of,
                                size_t wanted, tt_pool *pool, tt_buckling *out);
/** A factor that the buckling factor of a situation is surely not below. */
double tt_situation_least(const tt_second_order *second, int carry, const tt_situation *of);
/** The way of leaning of loads together that stores most energy: the likeliest to govern. */
tt_situation tt_likeliest_lean(const tt_second_order *second, int carry,
                               const tt_combination *together, int pattern);

/** All that were solved, for the report and for proof. */
size_t tt_exacts(const tt_second_order *second);
const tt_exact *tt_exact_at(const tt_second_order *second, size_t i);

/** Section forces at any cut in the axes of the cut as it has turned, which is what strains it; or
 *  in those of the limb unloaded. */
tt_forces tt_exact_strain_forces(const tt_second_order *second, const tt_exact *exact,
                                 const tt_cut *cut);
tt_forces tt_exact_forces(const tt_second_order *second, const tt_exact *exact, const tt_cut *cut);

#endif
