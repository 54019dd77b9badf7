/* action/own.c - the file's own load cases: forces and moments at places, forces along limbs.
 * The same case named twice adds up. */
#include "action/parts.h"

#include <string.h>

static bool seen_before(const tt_piece *piece, size_t index)
{
    for (size_t i = 0; i < index; i++) {
        if (strcmp(piece->loads.at[i].name, piece->loads.at[index].name) == 0) return true;
    }
    return false;
}

static void put_along(const tt_model *model, const tt_own_load *load, const tt_case_arrays *to)
{
    for (size_t b = model->first_bar[load->along]; b < model->first_bar[load->along + 1]; b++) {
        const double middle = (model->bars.at[b].x0 + model->bars.at[b].x1) / 2.0;
        if (middle < load->between[0] || middle > load->between[1]) continue;
        for (size_t p = 0; p < TT_BAR_POINTS; p++) {
            tt_vec3 *line = &to->line[b * TT_BAR_POINTS + p];
            *line = tt_add(*line, load->line);
        }
    }
}

static void put(const tt_model *model, const tt_own_load *load, const tt_case_arrays *to)
{
    if (load->along != TT_NONE) {
        put_along(model, load, to);
        return;
    }
    double *row = to->node[load->at];
    tt_force_at(to, load->at, load->force, (tt_vec3){0, 0, 0});
    row[3] += load->moment.x;
    row[4] += load->moment.y;
    row[5] += load->moment.z;
}

tt_status tt_actions_own(const tt_model *model, tt_actions *actions)
{
    const tt_piece *piece = model->piece;
    for (size_t i = 0; i < piece->loads.n; i++) {
        const tt_own_load *first = &piece->loads.at[i];
        tt_case_arrays to;
        if (seen_before(piece, i)) continue;
        if (!tt_case_add(model, actions, first->name, TT_CASE_OWN, first->kind, 0.0, &to))
            return TT_E_NOMEM;
        for (size_t k = i; k < piece->loads.n; k++) {
            if (strcmp(piece->loads.at[k].name, first->name) == 0)
                put(model, &piece->loads.at[k], &to);
        }
    }
    return TT_OK;
}
