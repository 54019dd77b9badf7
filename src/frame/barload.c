/* frame/barload.c - a bar under a line load: forces on its held ends, section forces by
 * equilibrium. The load is the polynomial through its values at the points. SI. */
#include "frame/parts.h"

#include <string.h>

/* sum: the load's, local; lever: of forces times their distance along x from where the moments are
 * taken. */
static void add_load(tt_vec3 force, tt_vec3 moment, tt_vec3 lever, double out[TT_SIX])
{
    out[0] += force.x;
    out[1] += force.y;
    out[2] += force.z;
    out[3] += moment.x;
    out[4] += moment.y - lever.z;
    out[5] += moment.z + lever.y;
}

/* One kind of load on the end of the held bar: forces (first 0) or moments (first 3). Its sum, and
 * its levers about the start, local. */
typedef struct {
    tt_vec3 sum, lever;
} total;

static total add_held(const tt_frame_bar *bar, const tt_vec3 *line, int first, double end[TT_SIX])
{
    total all = {.sum = {0, 0, 0}};
    for (int j = 0; j < TT_BAR_POINTS && line; j++) {
        const tt_vec3 p = tt_to_local(&bar->axes, line[j]);
        const double(*by)[TT_SIX] = bar->held[j] + first;
        const double length = tt_bar_weight[j] * bar->length;
        for (int d = 0; d < TT_SIX; d++) end[d] += p.x * by[0][d] + p.y * by[1][d] + p.z * by[2][d];
        all.sum = tt_add(all.sum, tt_scale(p, length));
        all.lever = tt_add(all.lever, tt_scale(p, length * tt_bar_point[j] * bar->length));
    }
    return all;
}

const tt_vec3 *tt_line_of(const tt_vec3 *line, size_t bar)
{
    return line ? line + bar * TT_BAR_POINTS : NULL;
}

/* The start takes what the end does not. */
static void balance(const tt_frame_bar *bar, const double end[TT_SIX], double start[TT_SIX])
{
    for (int d = 0; d < TT_SIX; d++) start[d] -= end[d];
    start[4] += bar->length * end[2];
    start[5] -= bar->length * end[1];
}

tt_bar_ends tt_bar_held(const tt_frame *frame, const tt_frame_load *load, size_t index)
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    tt_bar_ends ends = {{0}, {0}};
    double section[TT_SIX] = {0};
    const total forces = add_held(bar, tt_line_of(load->line_force, index), 0, ends.end);
    const total moments = add_held(bar, tt_line_of(load->line_moment, index), 3, ends.end);
    add_load(forces.sum, moments.sum, forces.lever, section);
    for (int d = 0; d < TT_SIX; d++) ends.start[d] = -section[d];
    balance(bar, ends.end, ends.start);
    return ends;
}

void tt_bar_strain(const tt_frame *frame, const tt_frame_bar *bar, long double (*nodes)[TT_SIX],
                   tt_bar_ends *ends)
{
    double moved[TT_SIX], end[TT_SIX] = {0};
    tt_bar_moved(frame, bar, nodes, moved);
    tt_mat6_apply(&bar->end_stiffness, moved, end);
    tt_bar_push_end(bar, end, ends);
}

void tt_bar_push_end(const tt_frame_bar *bar, const double end[TT_SIX], tt_bar_ends *ends)
{
    for (int d = 0; d < TT_SIX; d++) ends->end[d] += end[d];
    balance(bar, end, ends->start);
}

void tt_bar_push_nodes(const tt_frame_bar *bar, const tt_bar_ends *ends, double (*nodes)[TT_SIX])
{
    double start[TT_SIX], end[TT_SIX];
    tt_six_global(&bar->axes, ends->start, start);
    tt_six_global(&bar->axes, ends->end, end);
    for (int d = 0; d < TT_SIX; d++) {
        nodes[bar->from][d] += start[d];
        nodes[bar->to][d] += end[d];
    }
}

tt_frame_cut tt_frame_cut_at(double x)
{
    tt_frame_cut cut = {.x = x};
    const tt_integrals to = tt_bar_integrals(x);
    memcpy(cut.once, to.once, sizeof cut.once);
    memcpy(cut.twice, to.twice, sizeof cut.twice);
    return cut;
}

static tt_vec3 weighed(const tt_vec3 *line, const double weight[TT_BAR_POINTS], double factor)
{
    tt_vec3 sum = {0, 0, 0};
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        sum.x += weight[j] * line[j].x;
        sum.y += weight[j] * line[j].y;
        sum.z += weight[j] * line[j].z;
    }
    return tt_scale(sum, factor);
}

/* The load before the cut is taken off; its distance towards the cut counts the other way. */
void tt_section_from(const tt_frame *frame, const tt_frame_load *load, size_t index,
                     const tt_frame_cut *cut, const double start[TT_SIX], double out[TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const double length = bar->length;
    const tt_vec3 *force = tt_line_of(load->line_force, index);
    const tt_vec3 *moment = tt_line_of(load->line_moment, index);
    tt_vec3 sum = {0, 0, 0}, turn = {0, 0, 0}, lever = {0, 0, 0};
    memcpy(out, start, TT_SIX * sizeof *out);
    out[4] += cut->x * length * start[2];
    out[5] -= cut->x * length * start[1];
    if (force) {
        sum = tt_to_local(&bar->axes, weighed(force, cut->once, -length));
        lever = tt_to_local(&bar->axes, weighed(force, cut->twice, length * length));
    }
    if (moment) turn = tt_to_local(&bar->axes, weighed(moment, cut->once, -length));
    add_load(sum, turn, lever, out);
}

void tt_frame_cut_section(const tt_frame *frame, const tt_frame_state *state,
                          const tt_frame_load *load, size_t bar, const tt_frame_cut *cut,
                          double out[TT_SIX])
{
    tt_section_from(frame, load, bar, cut, state->end[bar], out);
}

void tt_frame_section(const tt_frame *frame, const tt_frame_state *state, const tt_frame_load *load,
                      size_t bar, double x, double out[TT_SIX])
{
    const tt_frame_cut cut = tt_frame_cut_at(x);
    tt_frame_cut_section(frame, state, load, bar, &cut, out);
}
