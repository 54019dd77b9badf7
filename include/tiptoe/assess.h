/* tiptoe/assess.h - a piece in, its whole judgement out. */
#ifndef TIPTOE_ASSESS_H
#define TIPTOE_ASSESS_H

#include "tiptoe/piece.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tt_assessment tt_assessment; /* opaque; lends from the piece, which must outlive it */

typedef enum { TT_HOLDS, TT_FALLS_SHORT, TT_NOT_CHECKED } tt_verdict;

/** Computes everything. TT_E_INPUT when parts hang on nothing (diags says which), a MODEL status
 *  when the analysis cannot be finished (diags says what moves), TT_E_NOMEM. */
tt_status tt_assess(const tt_piece *piece, tt_diags *diags, tt_assessment **out);
tt_assessment *tt_assessment_free(tt_assessment *assessment); /* takes NULL, returns NULL */

/** TT_FALLS_SHORT when anything falls short; else TT_NOT_CHECKED when something needed was not
 *  checked; else TT_HOLDS. */
tt_verdict tt_assessment_verdict(const tt_assessment *assessment);

#ifdef __cplusplus
}
#endif
#endif
