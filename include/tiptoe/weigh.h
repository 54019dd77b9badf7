/* tiptoe/weigh.h - the weights of a piece, part by part: estimated, from the wax, on the scales. */
#ifndef TIPTOE_WEIGH_H
#define TIPTOE_WEIGH_H

#include "tiptoe/piece.h"
#include "tiptoe/report.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tt_weights tt_weights; /* opaque; lends from the piece, which must outlive it */

/** Adds everything up. TT_E_NOMEM. */
tt_status tt_weigh(const tt_piece *piece, tt_weights **out);
tt_weights *tt_weights_free(tt_weights *weights); /* takes NULL, returns NULL */

/** 1 when it weighs more than the limit that its file gives; else 0. */
int tt_weights_over(const tt_weights *weights);

/** The ledger as text, and as JSON, schema tiptoe-weigh/1. TT_E_NOT_FINITE when a figure in it is
 *  no finite number: nothing is written then; TT_E_WRITE when the sink stops it. */
tt_status tt_write_weights_text(const tt_weights *weights, const tt_text_options *options,
                                tt_sink *sink, void *user);
tt_status tt_write_weights_json(const tt_weights *weights, tt_sink *sink, void *user);

#ifdef __cplusplus
}
#endif
#endif
