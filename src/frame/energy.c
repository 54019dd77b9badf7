/* frame/energy.c - the work that a load case does on its own movements, and the energy that it
 * leaves in the sections: two routes to one figure. J. */
#include "frame/parts.h"

#include <math.h>
#include <string.h>

/* Strains at the points, from the section forces there; twice the energy in the bar. */
static double strains(const tt_frame *frame, const tt_frame_load *load, const tt_frame_state *state,
                      size_t index, double strain[TT_BAR_POINTS][TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    double sum = 0.0;
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        double forces[TT_SIX], energy = 0.0;
        tt_frame_section(frame, state, load, index, tt_bar_point[i], forces);
        memset(strain[i], 0, sizeof strain[i]);
        tt_mat6_apply(&bar->flexibility[i], forces, strain[i]);
        for (int d = 0; d < TT_SIX; d++) energy += forces[d] * strain[i][d];
        sum += tt_bar_weight[i] * bar->length * energy;
    }
    return sum;
}

static double work_at(const tt_axes *axes, const tt_vec3 *line, int point, const double *moved)
{
    if (!line) return 0.0;
    return tt_dot(tt_to_local(axes, line[point]), (tt_vec3){moved[0], moved[1], moved[2]});
}

/* The line loads of a bar times their movements. */
static double work_of_lines(const tt_frame *frame, const tt_frame_load *load, size_t index,
                            const double start[TT_SIX], const double strain[TT_BAR_POINTS][TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const tt_vec3 *force = tt_line_of(load->line_force, index);
    const tt_vec3 *moment = tt_line_of(load->line_moment, index);
    double local[TT_SIX], sum = 0.0;
    tt_six_local(&bar->axes, start, local);
    for (int i = 0; i < TT_BAR_POINTS && (force || moment); i++) {
        double moved[TT_SIX];
        tt_bar_moves_at(bar->length, &frame->points.cut[i], local, strain, moved);
        const double here =
            work_at(&bar->axes, force, i, moved) + work_at(&bar->axes, moment, i, moved + 3);
        sum += tt_bar_weight[i] * bar->length * here;
    }
    return sum;
}

tt_status tt_frame_energy(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *state, double *work, double *strain)
{
    *work = *strain = 0.0;
    for (size_t i = 0; i < frame->springs.n; i++) {
        const tt_frame_spring_at *spring = &frame->springs.at[i];
        const double *move = state->move[spring->node];
        for (int d = 0; d < TT_SIX; d++) *strain += 0.5 * spring->stiffness[d] * move[d] * move[d];
    }
    for (size_t i = 0; i < frame->bars.n; i++) {
        double at[TT_BAR_POINTS][TT_SIX];
        const double *start = state->move[frame->bars.at[i].from];
        *strain += 0.5 * strains(frame, load, state, i, at);
        *work += 0.5 * work_of_lines(frame, load, i, start, (const double(*)[TT_SIX])at);
    }
    for (size_t i = 0; i < frame->nodes.n && load->node; i++) {
        for (int d = 0; d < TT_SIX; d++) *work += 0.5 * load->node[i][d] * state->move[i][d];
    }
    return isfinite(*work) && isfinite(*strain) ? TT_OK : TT_E_NOT_FINITE;
}
