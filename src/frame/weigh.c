/* frame/weigh.c - mass matrix of all bodies, held or not, times their moves: total mass, centre,
 * and what a shaken ground sets in motion. SI, global axes. */
#include "frame/parts.h"

#include <string.h>

/* Forces on its two nodes that move a bar; global. */
static void push_bar(const tt_frame_bar *bar, double moves[2][TT_SIX], double forces[2][TT_SIX])
{
    const tt_bar_matrix *m = &bar->mass;
    memset(forces, 0, 2 * sizeof *forces);
    tt_mat6_apply(&m->aa, moves[0], forces[0]);
    tt_mat6_apply(&m->ab, moves[1], forces[0]);
    tt_mat6_tapply(&m->ab, moves[0], forces[1]);
    tt_mat6_apply(&m->bb, moves[1], forces[1]);
}

static void push_mass(const tt_frame_mass_at *at, const double move[TT_SIX], double force[TT_SIX])
{
    const tt_vec3 u = {move[0], move[1], move[2]}, turn = {move[3], move[4], move[5]};
    const tt_vec3 f = tt_scale(tt_add(u, tt_cross(turn, at->offset)), at->mass);
    const double own[TT_SIX] = {
        f.x, f.y, f.z, at->inertia[0] * turn.x, at->inertia[1] * turn.y, at->inertia[2] * turn.z};
    memset(force, 0, TT_SIX * sizeof *force);
    tt_six_brought(at->offset, own, force);
}

static void move_node(const tt_frame *frame, size_t node, double (*bodies)[TT_SIX], double *out)
{
    tt_six_moved(tt_arm(frame, node), bodies[frame->nodes.at[node].body], out);
}

static void on_body(const tt_frame *frame, size_t node, const double *force,
                    double (*bodies)[TT_SIX])
{
    tt_six_brought(tt_arm(frame, node), force, bodies[frame->nodes.at[node].body]);
}

void tt_mass_times(const tt_frame *frame, double (*moves)[TT_SIX], double (*forces)[TT_SIX])
{
    double move[2][TT_SIX], on[2][TT_SIX];
    memset(forces, 0, frame->bodies.n * sizeof *forces);
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        move_node(frame, bar->from, moves, move[0]);
        move_node(frame, bar->to, moves, move[1]);
        push_bar(bar, move, on);
        on_body(frame, bar->from, on[0], forces);
        on_body(frame, bar->to, on[1], forces);
    }
    for (size_t i = 0; i < frame->masses.n; i++) {
        const tt_frame_mass_at *at = &frame->masses.at[i];
        move_node(frame, at->node, moves, move[0]);
        push_mass(at, move[0], on[0]);
        on_body(frame, at->node, on[0], forces);
    }
}

/* Forces that give the whole an acceleration of one along x, y or z, and moments about the origin.
 */
static void push_whole(const tt_frame *frame, int along, double out[TT_SIX])
{
    double move[2][TT_SIX] = {{0}}, on[2][TT_SIX];
    move[0][along] = move[1][along] = 1.0;
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        push_bar(bar, move, on);
        tt_six_brought(frame->nodes.at[bar->from].at, on[0], out);
        tt_six_brought(frame->nodes.at[bar->to].at, on[1], out);
    }
    for (size_t i = 0; i < frame->masses.n; i++) {
        const tt_frame_mass_at *at = &frame->masses.at[i];
        push_mass(at, move[0], on[0]);
        tt_six_brought(frame->nodes.at[at->node].at, on[0], out);
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
