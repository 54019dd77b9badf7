/* frame/second_cut.c - section forces of a state of second order at a cut, by equilibrium on the
 * moved bar. SI. */
#include "frame/second.h"
#include "frame/parts.h"

#include <string.h>

/* At a cut, how the bar has moved beside its start (first three), and turned (last three). */
static void moved_beside(const tt_frame_bar *bar, const tt_second_state *second, size_t index,
                         const tt_frame_cut *cut, double out[TT_SIX])
{
    const double(*strain)[TT_SIX] =
        (const double(*)[TT_SIX])(second->strain + index * TT_BAR_POINTS);
    double start[TT_SIX];
    tt_six_local(&bar->axes, second->state.move[bar->from], start);
    memset(start, 0, 3 * sizeof *start);
    tt_bar_moves_at(bar->length, cut, start, strain, out);
}

static void add_last(tt_vec3 more, double six[TT_SIX])
{
    six[3] += more.x;
    six[4] += more.y;
    six[5] += more.z;
}

/* Beside the forces on the bar as it was: forces at the start now stand `way` off, line loads where
 * their points have moved to. */
void tt_second_section(const tt_frame *frame, const tt_second_state *second,
                       const tt_frame_load *load, size_t index, const tt_frame_cut *cut,
                       double out[TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const double *start = second->state.end[index];
    const tt_vec3 *line = tt_line_of(load->line_force, index);
    double here[TT_SIX], there[TT_SIX];
    moved_beside(bar, second, index, cut, here);
    tt_vec3 more = tt_cross(tt_scale(tt_six_first(here), -1.0), tt_six_first(start));
    for (int j = 0; j < TT_BAR_POINTS && line; j++) {
        moved_beside(bar, second, index, &frame->points.cut[j], there);
        const tt_vec3 off = tt_sub(tt_six_first(here), tt_six_first(there));
        const tt_vec3 force =
            tt_scale(tt_to_local(&bar->axes, line[j]), bar->length * cut->once[j]);
        more = tt_add(more, tt_cross(off, force));
    }
    tt_section_from(frame, load, index, cut, start, out);
    add_last(more, out);
}

void tt_second_section_turned(const tt_frame *frame, const tt_second_state *second,
                              const tt_frame_load *load, size_t index, const tt_frame_cut *cut,
                              double out[TT_SIX])
{
    double here[TT_SIX];
    tt_second_section(frame, second, load, index, cut, out);
    moved_beside(&frame->bars.at[index], second, index, cut, here);
    const tt_vec3 back = tt_scale(tt_six_last(here), -1.0);
    const tt_vec3 force = tt_cross(back, tt_six_first(out));
    add_last(tt_cross(back, tt_six_last(out)), out);
    out[0] += force.x;
    out[1] += force.y;
    out[2] += force.z;
}
