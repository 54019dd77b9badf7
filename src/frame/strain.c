/* frame/strain.c - what strains a bar: the difference of the moves of its ends, in long double
 * since neighbours move nearly alike; and the strain energy of a frame. SI. */
#include "frame/parts.h"

#include <string.h>

/* to = from + theta x arm */
static void carry(const long double from[TT_SIX], tt_vec3 arm, long double to[TT_SIX])
{
    const long double *t = from + 3;
    to[0] = from[0] + t[1] * arm.z - t[2] * arm.y;
    to[1] = from[1] + t[2] * arm.x - t[0] * arm.z;
    to[2] = from[2] + t[0] * arm.y - t[1] * arm.x;
    memcpy(to + 3, t, 3 * sizeof *to);
}

void tt_long_moves(const tt_frame *frame, const tt_body_moves *moves, long double (*nodes)[TT_SIX])
{
    for (size_t i = 0; i < frame->nodes.n; i++) {
        const size_t body = frame->nodes.at[i].body;
        long double sum[TT_SIX];
        for (int d = 0; d < TT_SIX; d++) {
            sum[d] = (long double)moves->rough[body][d] + moves->fine[body][d];
        }
        carry(sum, tt_arm(frame, i), nodes[i]);
    }
}

void tt_bar_moved(const tt_frame *frame, const tt_frame_bar *bar, long double (*nodes)[TT_SIX],
                  double out[TT_SIX])
{
    const tt_vec3 along = tt_sub(frame->nodes.at[bar->to].at, frame->nodes.at[bar->from].at);
    long double carried[TT_SIX];
    double more[TT_SIX];
    memset(out, 0, TT_SIX * sizeof *out);
    if (tt_bar_inside(frame, bar)) return;
    carry(nodes[bar->from], along, carried);
    for (int d = 0; d < TT_SIX; d++) more[d] = (double)(nodes[bar->to][d] - carried[d]);
    tt_six_local(&bar->axes, more, out);
}

double tt_bar_energy(const tt_frame *frame, const tt_frame_bar *bar, long double (*nodes)[TT_SIX])
{
    double moved[TT_SIX], forces[TT_SIX] = {0}, sum = 0.0;
    tt_bar_moved(frame, bar, nodes, moved);
    tt_mat6_apply(&bar->end_stiffness, moved, forces);
    for (int d = 0; d < TT_SIX; d++) sum += moved[d] * forces[d];
    return sum;
}

double tt_strain_energy(const tt_frame *frame, long double (*nodes)[TT_SIX])
{
    double sum = 0.0;
    for (size_t i = 0; i < frame->bars.n; i++) {
        sum += tt_bar_energy(frame, &frame->bars.at[i], nodes);
    }
    return sum + tt_springs_energy(frame, nodes);
}
