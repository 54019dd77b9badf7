/* frame/balance.c - do the reactions balance what is applied? Forces, and moments about the
 * origin, each over the sum of its parts. */
#include "frame/parts.h"

#include <float.h>

typedef struct {
    tt_vec3 force, moment;       /* sums */
    double forces, moments, arm; /* sums of sizes; the longest arm of a force */
} sums;

static void add(sums *s, tt_vec3 at, tt_vec3 force, tt_vec3 moment)
{
    s->force = tt_add(s->force, force);
    s->moment = tt_add(s->moment, tt_add(moment, tt_cross(at, force)));
}

static void add_node(sums *s, tt_vec3 at, const double f[TT_SIX])
{
    const tt_vec3 force = {f[0], f[1], f[2]}, moment = {f[3], f[4], f[5]};
    add(s, at, force, moment);
    s->forces += tt_length(force);
    s->moments += tt_length(moment);
    s->arm = fmax(s->arm, tt_length(at));
}

/* The line's sum and, from the start of the bar, its first moment along it; sum of sizes. */
static double add_line(const tt_frame_bar *bar, const tt_vec3 *line, tt_vec3 *sum, tt_vec3 *first)
{
    double sizes = 0.0;
    for (int i = 0; i < TT_BAR_POINTS && line; i++) {
        const tt_vec3 part = tt_scale(line[i], tt_bar_weight[i] * bar->length);
        *sum = tt_add(*sum, part);
        *first = tt_add(*first, tt_scale(part, tt_bar_point[i]));
        sizes += tt_length(part);
    }
    return sizes;
}

static void add_lines(const tt_frame *frame, const tt_frame_load *load, sums *s)
{
    for (size_t b = 0; b < frame->bars.n; b++) {
        const tt_frame_bar *bar = &frame->bars.at[b];
        const tt_vec3 from = frame->nodes.at[bar->from].at, to = frame->nodes.at[bar->to].at;
        tt_vec3 force = {0, 0, 0}, first = force, moment = force, unread = force;
        s->forces += add_line(bar, tt_line_of(load->line_force, b), &force, &first);
        s->moments += add_line(bar, tt_line_of(load->line_moment, b), &moment, &unread);
        add(s, from, force, tt_add(moment, tt_cross(tt_sub(to, from), first)));
    }
}

double tt_frame_imbalance(const tt_frame *frame, const tt_frame_load *load,
                          const tt_frame_state *state)
{
    sums s = {0};
    add_lines(frame, load, &s);
    for (size_t i = 0; i < frame->nodes.n && load->node; i++) {
        add_node(&s, frame->nodes.at[i].at, load->node[i]);
    }
    const double forces = s.forces, moments = s.moments;
    for (size_t i = 0; i < frame->nodes.n; i++) {
        add_node(&s, frame->nodes.at[i].at, state->reaction[i]);
    }
    /* a pure moment is carried by forces too, and a force by moments: each has its scale */
    const double of_forces = forces + (s.arm > 0.0 ? moments / s.arm : 0.0);
    return fmax(tt_length(s.force) / (of_forces + DBL_MIN),
                tt_length(s.moment) / (moments + s.arm * forces + DBL_MIN));
}
