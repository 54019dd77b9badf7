/* model/parts.h - the steps of building a model, one file each. */
#ifndef TT_MODEL_PARTS_H
#define TT_MODEL_PARTS_H

#include "model/model.h"
#include "num/dense.h"

/** Modulus that frames use: the low one of a cast alloy, the basis's of a steel. Pa. */
double tt_young_of_frames(const tt_piece *piece, const tt_metal *metal);
/** Modulus that the bronze's share uses: the high one. Pa. */
double tt_young_high(const tt_piece *piece, const tt_metal *metal);
double tt_poisson(const tt_metal *metal);

/** The two parts of a segment at t, in the cut's own axes. The bronze of the nominal wall (which 0)
 *  has all properties, of the low or high wall (-1, 1) those that stress needs. */
tt_section tt_bronze_at(const tt_piece *piece, const tt_segment *segment, double t, int which);
tt_section tt_armature_at(const tt_piece *piece, const tt_segment *segment, double t, bool weak);
/** Section forces of a part about the axis of the segment, from the strains there. */
tt_mat6 tt_part_stiffness(const tt_section *part, double e, double nu);

/** Stretches of every segment, and the strips on them. */
tt_status tt_model_stretch(tt_model *model);
/** The strips of what was weighed brought to its weight. */
tt_status tt_model_scales(tt_model *model);
/** Cuts: ends, quarters, tenths, jumps of load, at most 0.25 m apart; their sections and shares. */
tt_status tt_model_cut(tt_model *model);
/** Fills the shares of the two parts of a cut from its sections. */
void tt_cut_share(const tt_piece *piece, tt_cut *cut);
/** Marks cuts where a seam is possible, and necks. */
tt_status tt_model_mark(tt_model *model);
/** Weight and centre of mass of each pattern. */
tt_status tt_model_weigh(tt_model *model);
/** One frame for each carry model. */
tt_status tt_model_frame(tt_model *model, int carry, tt_frame_fault *fault);

#endif
