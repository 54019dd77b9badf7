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

bool tt_case_add(const tt_model *model, tt_actions *actions, const char *name, tt_case_kind kind,
                 tt_load_kind load, double direction, tt_case_arrays *arrays)
{
    const size_t strips = model->bars.n * TT_BAR_POINTS;
    arrays->line = tt_pool_take(&actions->pool, strips, sizeof *arrays->line);
    arrays->node = tt_pool_take(&actions->pool, model->nodes, sizeof *arrays->node);
    const bool beside = levers(model);
    arrays->moment = beside ? tt_pool_take(&actions->pool, strips, sizeof *arrays->moment) : NULL;
    if (!arrays->line || !arrays->node || !name || (beside && !arrays->moment)) return false;
    const tt_case added = {.name = name,
                           .kind = kind,
                           .load = load,
                           .direction = direction,
                           .against = TT_NONE,
                           .sense = 1.0,
                           .on = {.line_force = arrays->line,
                                  .line_moment = arrays->moment,
                                  .node = (const double(*)[TT_SIX])arrays->node}};
    return tt_list_push(&actions->cases, added);
}

void tt_force_at(double row[TT_SIX], tt_vec3 force, tt_vec3 offset)
{
    const tt_vec3 moment = tt_cross(offset, force);
    row[0] += force.x;
    row[1] += force.y;
    row[2] += force.z;
    row[3] += moment.x;
    row[4] += moment.y;
    row[5] += moment.z;
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
    tt_pool_clear(&actions->pool);
    *actions = (tt_actions){0};
}
