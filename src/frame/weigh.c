/* frame/weigh.c - mass matrix of all bodies, held or not, times their moves: total mass, centre,
 * and what a shaken ground sets in motion. SI, global axes. */
#include "frame/parts.h"

#include <string.h>

/* ends: moves of start and end of the bar, local; forces likewise. */
static void bar_forces(const tt_bar_matrix *m, double ends[2][TT_SIX], double forces[2][TT_SIX])
{
    tt_mat6_apply(&m->aa, ends[0], forces[0]);
    tt_mat6_apply(&m->ab, ends[1], forces[0]);
    tt_mat6_tapply(&m->ab, ends[0], forces[1]);
    tt_mat6_apply(&m->bb, ends[1], forces[1]);
}

/* Forces on its two bodies that move a bar. */
static void push_bar(const tt_frame *frame, const tt_frame_bar *bar, const double *moves[2],
                     double *forces[2])
{
    double ends[2][TT_SIX] = {{0}}, on[2][TT_SIX] = {{0}};
    const tt_mat6 local[2] = {tt_bar_to_local(frame, bar, 0), tt_bar_to_local(frame, bar, 1)};
    for (int e = 0; e < 2; e++) tt_mat6_apply(&local[e], moves[e], ends[e]);
    bar_forces(&bar->mass, ends, on);
    for (int e = 0; e < 2; e++) tt_mat6_tapply(&local[e], on[e], forces[e]);
}

static void push_mass(const tt_frame *frame, const tt_frame_mass_at *at, const double *moves,
                      double *forces)
{
    double moved[TT_SIX] = {0}, on[TT_SIX] = {0};
    const tt_mat6 node = tt_node_of_body(frame, at->node);
    const tt_mat6 own = tt_rigid_mass(at->mass, at->offset, at->inertia);
    tt_mat6_apply(&node, moves, moved);
    tt_mat6_apply(&own, moved, on);
    tt_mat6_tapply(&node, on, forces);
}

void tt_mass_times(const tt_frame *frame, double (*moves)[TT_SIX], double (*forces)[TT_SIX])
{
    memset(forces, 0, frame->bodies.n * sizeof *forces);
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        const size_t p = tt_bar_body(frame, bar, 0), q = tt_bar_body(frame, bar, 1);
        push_bar(frame, bar, (const double *[2]){moves[p], moves[q]},
                 (double *[2]){forces[p], forces[q]});
    }
    for (size_t i = 0; i < frame->masses.n; i++) {
        const size_t body = frame->nodes.at[frame->masses.at[i].node].body;
        push_mass(frame, &frame->masses.at[i], moves[body], forces[body]);
    }
}

static void about_origin(const tt_frame *frame, size_t body, const double *forces, double *out)
{
    const tt_mat6 arm = tt_rigid(frame->nodes.at[frame->bodies.at[body].master].at);
    tt_mat6_tapply(&arm, forces, out);
}

/* Forces that give the whole an acceleration of one along x, y or z, and moments about the origin.
 */
static void push_whole(const tt_frame *frame, int along, double out[TT_SIX])
{
    double move[TT_SIX] = {0};
    move[along] = 1.0;
    for (size_t i = 0; i < frame->bars.n; i++) {
        double on[2][TT_SIX] = {{0}};
        const tt_frame_bar *bar = &frame->bars.at[i];
        push_bar(frame, bar, (const double *[2]){move, move}, (double *[2]){on[0], on[1]});
        for (int e = 0; e < 2; e++) about_origin(frame, tt_bar_body(frame, bar, e), on[e], out);
    }
    for (size_t i = 0; i < frame->masses.n; i++) {
        double on[TT_SIX] = {0};
        push_mass(frame, &frame->masses.at[i], move, on);
        about_origin(frame, frame->nodes.at[frame->masses.at[i].node].body, on, out);
    }
}

double tt_frame_mass(const tt_frame *frame, tt_vec3 *centre)
{
    double x[TT_SIX] = {0}, y[TT_SIX] = {0};
    push_whole(frame, 0, x);
    push_whole(frame, 1, y);
    const double mass = x[0];
    if (centre) *centre = (tt_vec3){0.0, 0.0, 0.0};
    if (centre && mass > 0.0) *centre = (tt_vec3){y[5] / mass, -x[5] / mass, x[4] / mass};
    return mass;
}
