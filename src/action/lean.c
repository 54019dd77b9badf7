/* action/lean.c - the sway imperfection: of weights and own loads, level loads as large as what
 * acts vertically at each place, towards x and y; loads together take the part by which they lean.
 */
#include "action/parts.h"

static tt_vec3 level(int axis, double down)
{
    return axis ? (tt_vec3){0, down, 0} : (tt_vec3){down, 0, 0};
}

/* A moment by a lever about a vertical force turns into that of the level force there. */
static void lean_node(const tt_case *from, size_t i, int axis, const tt_case_arrays *to)
{
    const tt_vec3 force = level(axis, -from->on.node[i][2]);
    tt_force_at(to, i, force, (tt_vec3){0, 0, 0});
    if (!from->on.lever) return;
    const double(*s)[3] = from->on.lever[i];
    /* of the vertical force with its arm: the level one has the same arm */
    const tt_vec3 arm = {-s[2][0], -s[2][1], -s[2][2]}; /* arm times the force downwards */
    const tt_vec3 moment = tt_cross(arm, level(axis, 1.0));
    to->node[i][3] += moment.x;
    to->node[i][4] += moment.y;
    to->node[i][5] += moment.z;
    for (int k = 0; k < 3; k++) to->lever[i][axis][k] -= s[2][k];
}

static bool lean_case(const tt_model *model, tt_actions *actions, size_t of, int axis)
{
    const tt_case *from = &actions->cases.at[of];
    tt_lean lean = {.of = of, .axis = axis};
    tt_case_arrays to;
    if (!tt_case_arrays_take(model, &actions->pool, &to, &lean.on)) return false;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        to.line[i] = level(axis, -from->on.line_force[i].z);
    }
    for (size_t i = 0; i < model->nodes; i++) lean_node(from, i, axis, &to);
    return tt_list_push(&actions->leans, lean);
}

static bool stands_up(const tt_model *model)
{
    const tt_piece *piece = model->piece;
    bool up = false;
    for (size_t i = 0; i < piece->stands.n; i++) {
        up = up || piece->points.at[piece->stands.at[i].at].at.z <= model->centre[TT_NOMINAL].z;
    }
    return up;
}

tt_status tt_actions_lean(const tt_model *model, tt_actions *actions)
{
    bool fits = true;
    for (size_t i = 0; i < actions->cases.n && stands_up(model); i++) {
        if (actions->cases.at[i].kind == TT_CASE_WIND) continue;
        for (int axis = 0; axis < 2; axis++) fits = fits && lean_case(model, actions, i, axis);
    }
    return fits ? TT_OK : TT_E_NOMEM;
}
