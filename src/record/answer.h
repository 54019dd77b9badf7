/* record/answer.h - what the rows of `models` have in common. */
#ifndef TT_RECORD_ANSWER_H
#define TT_RECORD_ANSWER_H

#include "record/put.h"

/** A unit case, or loads together with the weight of a pattern, in one carry model. */
typedef struct {
    int carry;
    size_t acting; /* when `together` is NULL */
    const tt_combination *together;
    int pattern;
} tt_asked;

/** "reactions", "displacements", "forces" into a row. */
void tt_put_answer(tt_record *r, cJSON *row, const tt_asked *asked);

/** {at, move_m, turn_rad} into a list. */
void tt_put_move(tt_record *r, cJSON *list, size_t point, const double move[6]);

#endif
