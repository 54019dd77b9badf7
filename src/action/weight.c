/* action/weight.c - the piece's own weight: nominal, all heavy, all light. N per m, downwards. */
#include "action/parts.h"

/* What lies beside the axis weighs there. */
static void weigh_strip(const tt_strip *strip, int pattern, const tt_case_arrays *to, size_t i)
{
    const tt_vec3 shell = {0, 0, -TT_GRAVITY * strip->bronze[pattern]};
    const tt_vec3 core = {0, 0, -TT_GRAVITY * strip->armature};
    to->line[i].z = -TT_GRAVITY * (strip->bronze[pattern] + strip->armature);
    if (!to->moment) return;
    to->moment[i] = tt_add(tt_cross(tt_part_lever(strip, &strip->shell), shell),
                           tt_cross(tt_part_lever(strip, &strip->core), core));
}

tt_status tt_actions_weight(const tt_model *model, tt_actions *actions)
{
    static const char *const name[TT_PATTERNS] = {"weight", "weight heavy", "weight light"};
    const tt_piece *piece = model->piece;
    for (int p = 0; p < TT_PATTERNS; p++) {
        tt_case_arrays to;
        if (!tt_case_add(model, actions, name[p], TT_CASE_WEIGHT, TT_LOAD_PERMANENT, 0.0, &to)) {
            return TT_E_NOMEM;
        }
        for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++)
            weigh_strip(&model->strips[i], p, &to, i);
        for (size_t i = 0; i < piece->lumps.n; i++) {
            const tt_lump *lump = &piece->lumps.at[i];
            tt_force_at(&to, lump->at, (tt_vec3){0, 0, -TT_GRAVITY * tt_lump_mass(lump, p)},
                        lump->offset);
        }
    }
    return TT_OK;
}
