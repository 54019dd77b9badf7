/* record/answer.c - reactions, displacements and section forces of one case, or of loads together;
 * from these the rows of `models`. Global axes; forces on the face whose normal is local +x. */
#include "record/answer.h"

static tt_vec3 first_three(const double v[6])
{
    return (tt_vec3){v[0], v[1], v[2]};
}

static tt_vec3 last_three(const double v[6])
{
    return (tt_vec3){v[3], v[4], v[5]};
}

static void times(double sense, const double from[6], double to[6])
{
    for (int k = 0; k < 6; k++) to[k] = 0.0 + sense * from[k]; /* never -0 */
}

static const tt_answer *answer_of(const tt_record *r, const tt_asked *asked)
{
    return &r->a->solution.answer[asked->carry][asked->acting];
}

static void reaction_of(const tt_record *r, const tt_asked *asked, size_t node, double out[6])
{
    if (asked->exact)
        times(1.0, asked->exact->second.state.reaction[node], out);
    else
        times(answer_of(r, asked)->sense, answer_of(r, asked)->state.reaction[node], out);
}

static void move_of(const tt_record *r, const tt_asked *asked, size_t node, double out[6])
{
    if (asked->exact)
        times(1.0, asked->exact->second.state.move[node], out);
    else
        times(answer_of(r, asked)->sense, answer_of(r, asked)->state.move[node], out);
}

static tt_forces forces_of(const tt_record *r, const tt_asked *asked, size_t cut)
{
    if (asked->exact)
        return tt_exact_forces(r->a->second, asked->exact, &r->a->model->cuts.at[cut]);
    return tt_answer_forces(answer_of(r, asked), cut);
}

static void reactions(tt_record *r, cJSON *row, const tt_asked *asked)
{
    cJSON *list = tt_put(r, row, "reactions", tt_make_array(r));
    for (size_t i = 0; i < r->a->piece->stands.n; i++) {
        const size_t point = r->a->piece->stands.at[i].at; /* points are the first nodes */
        double reaction[6];
        reaction_of(r, asked, point, reaction);
        cJSON *at = tt_put(r, list, NULL, tt_make_object(r));
        tt_put_text(r, at, "at", r->a->piece->points.at[point].name);
        tt_put_vec3(r, at, "force_N", first_three(reaction));
        tt_put_vec3(r, at, "moment_Nm", last_three(reaction));
    }
}

void tt_put_move(tt_record *r, cJSON *list, size_t point, const double move[6])
{
    cJSON *at = tt_put(r, list, NULL, tt_make_object(r));
    tt_put_text(r, at, "at", r->a->piece->points.at[point].name);
    tt_put_vec3(r, at, "move_m", first_three(move));
    tt_put_vec3(r, at, "turn_rad", last_three(move));
}

static void displacements(tt_record *r, cJSON *row, const tt_asked *asked)
{
    cJSON *list = tt_put(r, row, "displacements", tt_make_array(r));
    for (size_t point = 0; point < r->a->piece->points.n; point++) {
        double move[6];
        move_of(r, asked, point, move);
        tt_put_move(r, list, point, move);
    }
}

static void forces(tt_record *r, cJSON *row, const tt_asked *asked)
{
    cJSON *list = tt_put(r, row, "forces", tt_make_array(r));
    for (size_t i = 0; i < r->a->model->cuts.n; i++) {
        const tt_cut *cut = &r->a->model->cuts.at[i];
        const tt_forces f = forces_of(r, asked, i);
        cJSON *at = tt_put(r, list, NULL, tt_make_object(r));
        tt_put_place(r, at, cut->segment, cut->x);
        tt_put_number(r, at, "axial_N", f.n);
        tt_put_number(r, at, "shear_y_N", f.vy);
        tt_put_number(r, at, "shear_z_N", f.vz);
        tt_put_number(r, at, "torsion_Nm", f.t);
        tt_put_number(r, at, "moment_y_Nm", f.my);
        tt_put_number(r, at, "moment_z_Nm", f.mz);
    }
}

void tt_put_answer(tt_record *r, cJSON *row, const tt_asked *asked)
{
    if (asked->exact && asked->exact->second.buckles) {
        static const char *const keys[] = {"reactions", "displacements", "forces"};
        for (int k = 0; k < 3; k++) tt_put(r, row, keys[k], tt_make_null(r));
        return;
    }
    reactions(r, row, asked);
    displacements(r, row, asked);
    forces(r, row, asked);
}
