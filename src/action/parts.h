/* action/parts.h - what the files of this module share. */
#ifndef TT_ACTION_PARTS_H
#define TT_ACTION_PARTS_H

#include "action/action.h"

/** Arrays of a new case, all nil; NULL fields on failure (false). Written through these pointers.
 */
typedef struct {
    tt_vec3 *line;          /* [bars * TT_BAR_POINTS] */
    tt_vec3 *moment;        /* the same, of what acts beside the axis; NULL where nothing can */
    double (*node)[TT_SIX]; /* [nodes] */
    double (*lever)[3][3];  /* [nodes]; NULL where no lump lies beside its place */
} tt_case_arrays;

/** Empty loads in the pool, and what the frame sees of them. False without memory. */
bool tt_case_arrays_take(const tt_model *model, tt_pool *pool, tt_case_arrays *arrays,
                         tt_frame_load *on);
/** Adds a case with empty loads; the arrays may be written until the next case is added. */
bool tt_case_add(const tt_model *model, tt_actions *actions, const char *name, tt_case_kind kind,
                 tt_load_kind load, double direction, tt_case_arrays *arrays);

/** Adds a force at an offset from a node. */
void tt_force_at(const tt_case_arrays *to, size_t node, tt_vec3 force, tt_vec3 offset);

/** How the piece moves in a mode, at a strip or a node: the move of that place. */
tt_vec3 tt_strip_move(const tt_model *model, const tt_mode *mode, size_t strip);

#endif
