/* action/cases.c - the list of unit cases and what they add up to. */
#include "action/parts.h"

/* Does any part lie beside the axis of its segment? */
static bool levers(const tt_model *model)
{
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_section *shell = &model->strips[i].shell, *core = &model->strips[i].core;
        if (shell->at_y != 0.0 || shell->at_z != 0.0 || core->at_y != 0.0 || core->at_z != 0.0)
            return true;
    }
    return false;
}

static bool lumps_beside(const tt_piece *piece)
{
    for (size_t i = 0; i < piece->lumps.n; i++) {
        if (tt_length(piece->lumps.at[i].offset) > 0.0) return true;
    }
    return false;
}

bool tt_case_arrays_take(const tt_model *model, tt_pool *pool, tt_case_arrays *arrays,
                         tt_frame_load *on)
{
    const size_t strips = model->bars.n * TT_BAR_POINTS;
    const bool beside = levers(model), lumps = lumps_beside(model->piece);
    *arrays = (tt_case_arrays){
        .line = tt_pool_take(pool, strips, sizeof *arrays->line),
        .node = tt_pool_take(pool, model->nodes, sizeof *arrays->node),
        .moment = beside ? tt_pool_take(pool, strips, sizeof *arrays->moment) : NULL,
        .lever = lumps ? tt_pool_take(pool, model->nodes, sizeof *arrays->lever) : NULL};
    *on = (tt_frame_load){.line_force = arrays->line,
                          .line_moment = arrays->moment,
                          .node = (const double(*)[TT_SIX])arrays->node,
                          .lever = (const double(*)[3][3])arrays->lever};
    return arrays->line && arrays->node && (arrays->moment || !beside) && (arrays->lever || !lumps);
}

bool tt_case_add(const tt_model *model, tt_actions *actions, const char *name, tt_case_kind kind,
                 tt_load_kind load, double direction, tt_case_arrays *arrays)
{
    tt_case added = {.name = name,
                     .kind = kind,
                     .load = load,
                     .direction = direction,
                     .against = TT_NONE,
                     .sense = 1.0};
    if (!tt_case_arrays_take(model, &actions->pool, arrays, &added.on) || !name) return false;
    return tt_list_push(&actions->cases, added);
}

void tt_force_at(const tt_case_arrays *to, size_t node, tt_vec3 force, tt_vec3 offset)
{
    const tt_vec3 moment = tt_cross(offset, force);
    const double f[3] = {force.x, force.y, force.z}, m[3] = {moment.x, moment.y, moment.z};
    const double way[3] = {offset.x, offset.y, offset.z};
    for (int i = 0; i < 3; i++) {
        to->node[node][i] += f[i];
        to->node[node][3 + i] += m[i];
        for (int k = 0; k < 3 && to->lever; k++) to->lever[node][i][k] += f[i] * way[k];
    }
}

void tt_case_resultant(const tt_model *model, const tt_case *acting, tt_vec3 about, tt_vec3 *force,
                       tt_vec3 *moment)
{
    tt_vec3 f = {0, 0, 0}, m = {0, 0, 0};
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_vec3 part = tt_scale(acting->on.line_force[i], model->strips[i].length);
        f = tt_add(f, part);
        m = tt_add(m, tt_cross(tt_sub(model->strips[i].at, about), part));
        if (acting->on.line_moment)
            m = tt_add(m, tt_scale(acting->on.line_moment[i], model->strips[i].length));
    }
    for (size_t i = 0; i < model->piece->points.n; i++) {
        const double *row = acting->on.node[i];
        const tt_vec3 part = {row[0], row[1], row[2]};
        f = tt_add(f, part);
        m = tt_add(m, tt_add(tt_cross(tt_sub(model->piece->points.at[i].at, about), part),
                             (tt_vec3){row[3], row[4], row[5]}));
    }
    *force = tt_scale(f, acting->sense);
    *moment = tt_scale(m, acting->sense);
}

void tt_actions_clear(tt_actions *actions)
{
    tt_list_clear(&actions->cases);
    tt_list_clear(&actions->leans);
    tt_pool_clear(&actions->pool);
    *actions = (tt_actions){0};
}
