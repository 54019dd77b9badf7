/* assess/parts.h - the last steps of a judgement. */
#ifndef TT_ASSESS_PARTS_H
#define TT_ASSESS_PARTS_H

#include "assess/assessment.h"

/** Mass three ways, equilibrium, energy, modes: what the run proves about itself. TT_E_NOT_FINITE
 *  when a figure is not finite. */
tt_status tt_assessment_prove(tt_assessment *assessment);

/** Orders the findings, finds the governing one and the verdict. */
tt_status tt_assessment_govern(tt_assessment *assessment);

/** Tells that the piece is free to move: which stand lets it, and what would hold it. place,
 *  direction: of the fault (0..5; -1: a part without any support). */
void tt_assessment_mechanism(const tt_piece *piece, const char *place, int direction,
                             tt_diags *diags);

/** Solves what the result shows in full. */
tt_status tt_assessment_show(tt_assessment *assessment);

#endif
