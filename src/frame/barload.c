/* frame/barload.c - a bar under a line load: section forces by equilibrium, end forces of the held
 * bar by the flexibility method. The load is the polynomial through its values at the points. */
#include "frame/parts.h"

#include <string.h>

static void put_local(const tt_axes *axes, tt_vec3 global, double out[3])
{
    const tt_vec3 local = tt_to_local(axes, global);
    out[0] = local.x;
    out[1] = local.y;
    out[2] = local.z;
}

tt_line tt_bar_line(const tt_frame *frame, const tt_frame_load *load, size_t bar)
{
    tt_line line = {0};
    const tt_axes *axes = &frame->bars.at[bar].axes;
    for (size_t i = 0; i < TT_BAR_POINTS; i++) {
        const size_t at = bar * TT_BAR_POINTS + i;
        if (load->line_force) put_local(axes, load->line_force[at], line.at[i]);
        if (load->line_moment) put_local(axes, load->line_moment[at], line.at[i] + 3);
    }
    return line;
}

/* One load value: `sum` its integral, `lever` the integral of force times distance along x from the
 * cut towards the load (negative when the load lies before the cut). */
static void add_load(const double p[TT_SIX], double sum, double lever, double out[TT_SIX])
{
    for (int d = 0; d < TT_SIX; d++) out[d] += sum * p[d];
    out[4] -= lever * p[2];
    out[5] += lever * p[1];
}

/* Section forces at x (0..1) from the load between x and the end, the end free. */
static void from_load_beyond(double length, double x, const tt_line *line, double out[TT_SIX])
{
    double once[TT_BAR_POINTS], twice[TT_BAR_POINTS];
    tt_bar_integrals(x, once, twice);
    memset(out, 0, TT_SIX * sizeof *out);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const double w = tt_bar_weight[j];
        const double lever = w * (tt_bar_point[j] - x) + twice[j];
        add_load(line->at[j], length * (w - once[j]), length * length * lever, out);
    }
}

/* Moves of the free end under the load, the start held: virtual forces. */
static void moves_of_load(const tt_frame_bar *bar, const tt_line *line, double out[TT_SIX])
{
    memset(out, 0, TT_SIX * sizeof *out);
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        double forces[TT_SIX], strain[TT_SIX] = {0};
        from_load_beyond(bar->length, tt_bar_point[i], line, forces);
        tt_mat6_apply(&bar->flexibility[i], forces, strain);
        for (int d = 0; d < TT_SIX; d++) strain[d] *= tt_bar_weight[i] * bar->length;
        const tt_mat6 virtual_forces = tt_bar_from_end(bar, tt_bar_point[i] * bar->length);
        tt_mat6_tapply(&virtual_forces, strain, out);
    }
}

tt_bar_ends tt_bar_end_forces(const tt_frame_bar *bar, const double moved[TT_SIX],
                              const tt_line *line)
{
    tt_bar_ends ends = {0};
    double alone[TT_SIX], strained[TT_SIX], section[TT_SIX];
    moves_of_load(bar, line, alone);
    for (int d = 0; d < TT_SIX; d++) strained[d] = moved[d] - alone[d];
    tt_mat6_apply(&bar->end_stiffness, strained, ends.end);
    from_load_beyond(bar->length, 0.0, line, section);
    const tt_mat6 whole = tt_bar_from_end(bar, 0.0);
    tt_mat6_apply(&whole, ends.end, section);
    for (int d = 0; d < TT_SIX; d++) ends.start[d] = -section[d];
    return ends;
}

void tt_frame_section(const tt_frame *frame, const tt_frame_state *state, const tt_frame_load *load,
                      size_t bar, double x, double out[TT_SIX])
{
    const double length = frame->bars.at[bar].length;
    const tt_line line = tt_bar_line(frame, load, bar);
    const double *start = state->end[bar];
    double once[TT_BAR_POINTS], twice[TT_BAR_POINTS];
    memcpy(out, start, TT_SIX * sizeof *out);
    out[4] += x * length * start[2];
    out[5] -= x * length * start[1];
    tt_bar_integrals(x, once, twice);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        /* the load before the cut, taken off: its distance towards the cut counts the other way */
        add_load(line.at[j], -length * once[j], length * length * twice[j], out);
    }
}
