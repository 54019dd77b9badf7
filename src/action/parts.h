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
} tt_case_arrays;

/** Adds a case with empty loads; the arrays may be written until the next case is added. */
bool tt_case_add(const tt_model *model, tt_actions *actions, const char *name, tt_case_kind kind,
                 tt_load_kind load, double direction, tt_case_arrays *arrays);

/** Adds a force at an offset from a node to its row. */
void tt_force_at(double row[TT_SIX], tt_vec3 force, tt_vec3 offset);

/** How the piece moves in a mode, at a strip or a node: the move of that place. */
tt_vec3 tt_strip_move(const tt_model *model, const tt_mode *mode, size_t strip);

#endif
