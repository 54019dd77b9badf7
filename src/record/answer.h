/* record/answer.h - what the rows of `models` have in common. */
#ifndef TT_RECORD_ANSWER_H
#define TT_RECORD_ANSWER_H

#include "record/put.h"

/** A unit case, or loads together solved on the moved frame, in one carry model. */
typedef struct {
    int carry;
    size_t acting;         /* when `exact` is NULL */
    const tt_exact *exact; /* of loads together */
} tt_asked;

/** "reactions", "displacements", "forces" into a row; null of loads together that buckle the piece.
 */
void tt_put_answer(tt_record *r, cJSON *row, const tt_asked *asked);

/** {at, move_m, turn_rad} into a list. */
void tt_put_move(tt_record *r, cJSON *list, size_t point, const double move[6]);

#endif
