/* frame/second_cut.c - section forces of a state of second order at a cut, by equilibrium on the
 * moved bar. SI. */
#include "frame/second.h"
#include "frame/parts.h"

#include <string.h>

/* Integrals of the strains from the start to the fraction x: how much more the bar has moved there
 * than its start carries it. */
static tt_vec3 moved_beside(double length, const tt_frame_cut *cut, const double start[TT_SIX],
                            double strain[TT_BAR_POINTS][TT_SIX])
{
    const double x = cut->x * length;
    tt_vec3 u = {0.0, x * start[5], -x * start[4]};
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const double once = length * cut->once[j], twice = length * length * cut->twice[j];
        u.x += once * strain[j][0];
        u.y += once * strain[j][1] + twice * strain[j][5];
        u.z += once * strain[j][2] - twice * strain[j][4];
    }
    return u;
}

/* Beside the forces on the bar as it was: forces at the start now stand `way` off, line loads where
 * their points have moved to. */
void tt_second_section(const tt_frame *frame, const tt_second_state *second,
                       const tt_frame_load *load, size_t index, const tt_frame_cut *cut,
                       double out[TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const double *start = second->state.end[index];
    double(*strain)[TT_SIX] = second->strain + index * TT_BAR_POINTS, moves[TT_SIX];
    const tt_vec3 *line = tt_line_of(load->line_force, index);
    tt_six_local(&bar->axes, second->state.move[bar->from], moves);
    const tt_vec3 way = moved_beside(bar->length, cut, moves, strain);
    tt_vec3 more = tt_cross(tt_scale(way, -1.0), (tt_vec3){start[0], start[1], start[2]});
    for (int j = 0; j < TT_BAR_POINTS && line; j++) {
        const tt_frame_cut *at = &frame->points.cut[j];
        const tt_vec3 off = tt_sub(way, moved_beside(bar->length, at, moves, strain));
        const tt_vec3 force =
            tt_scale(tt_to_local(&bar->axes, line[j]), bar->length * cut->once[j]);
        more = tt_add(more, tt_cross(off, force));
    }
    tt_section_from(frame, load, index, cut, start, out);
    out[3] += more.x;
    out[4] += more.y;
    out[5] += more.z;
}

void tt_second_section_turned(const tt_frame *frame, const tt_second_state *second,
                              const tt_frame_load *load, size_t index, const tt_frame_cut *cut,
                              double out[TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    double moves[TT_SIX], turn[3];
    tt_second_section(frame, second, load, index, cut, out);
    tt_six_local(&bar->axes, second->state.move[bar->from], moves);
    memcpy(turn, moves + 3, sizeof turn);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const double *strain = second->strain[index * TT_BAR_POINTS + (size_t)j];
        for (int d = 0; d < 3; d++) turn[d] += bar->length * cut->once[j] * strain[3 + d];
    }
    const tt_vec3 back = {-turn[0], -turn[1], -turn[2]};
    const tt_vec3 force = tt_cross(back, (tt_vec3){out[0], out[1], out[2]});
    const tt_vec3 moment = tt_cross(back, (tt_vec3){out[3], out[4], out[5]});
    out[0] += force.x;
    out[1] += force.y;
    out[2] += force.z;
    out[3] += moment.x;
    out[4] += moment.y;
    out[5] += moment.z;
}
