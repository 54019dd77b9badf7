/* frame/build.c - a frame while it is being put together. */
#include "frame/parts.h"
#include "base/alloc.h"

#include <math.h>
#include <string.h>

tt_frame *tt_frame_new(void)
{
    return tt_alloc(1, sizeof(tt_frame));
}

tt_frame *tt_frame_free(tt_frame *frame)
{
    if (!frame) return NULL;
    tt_list_clear(&frame->nodes);
    tt_list_clear(&frame->bars);
    tt_list_clear(&frame->arms);
    tt_list_clear(&frame->masses);
    tt_list_clear(&frame->springs);
    tt_list_clear(&frame->bodies);
    tt_sparse_free(&frame->stiffness);
    tt_sparse_free(&frame->mass);
    tt_factor_free(&frame->factor);
    return tt_free(frame);
}

bool tt_frame_add_node(tt_frame *frame, tt_vec3 at)
{
    return tt_list_push(&frame->nodes, (tt_frame_node){.at = at});
}

bool tt_frame_reserve(tt_frame *frame, size_t bars)
{
    if (bars <= frame->bars.cap) return true;
    tt_frame_bar *more = tt_realloc(frame->bars.at, bars, sizeof *more);
    if (!more) return false;
    frame->bars.at = more;
    frame->bars.cap = bars;
    return true;
}

static void put_section(tt_frame_bar *bar, int point, const tt_bar_section *section)
{
    const double *turn = section->turn_inertia;
    bar->matter[point] = (tt_bar_matter){
        section->mass, {0.0, section->mass_y, section->mass_z}, {turn[0], turn[1], turn[2]}};
    memcpy(bar->flexibility[point].at, section->stiffness, sizeof section->stiffness);
    const double(*k)[TT_SIX] = section->stiffness;
    const double r2 = (k[4][4] + k[5][5]) / k[0][0];
    bar->wagner[point] = isfinite(r2) && isfinite(k[0][0]) ? r2 : 0.0;
}

bool tt_frame_add_bar(tt_frame *frame, size_t from, size_t to, const tt_axes *axes,
                      const tt_bar_section *sections)
{
    const tt_vec3 along = tt_sub(frame->nodes.at[to].at, frame->nodes.at[from].at);
    if (!tt_list_grow(&frame->bars.at, frame->bars.n, &frame->bars.cap, sizeof *frame->bars.at)) {
        return false;
    }
    tt_frame_bar *bar = &frame->bars.at[frame->bars.n++];
    bar->from = from;
    bar->to = to;
    bar->axes = *axes;
    bar->length = tt_length(along);
    for (int i = 0; i < TT_BAR_POINTS; i++) put_section(bar, i, &sections[i]);
    return true;
}

bool tt_frame_add_arm(tt_frame *frame, size_t a, size_t b)
{
    return tt_list_push(&frame->arms, (tt_frame_arm){a, b});
}

bool tt_frame_hold(tt_frame *frame, size_t node, const bool held[TT_SIX])
{
    tt_frame_node *n = &frame->nodes.at[node];
    for (int d = 0; d < TT_SIX; d++) {
        n->held[d] = n->held[d] || held[d];
        n->any_held = n->any_held || held[d];
    }
    return true;
}

bool tt_frame_add_mass(tt_frame *frame, size_t node, double mass, tt_vec3 offset,
                       const double inertia[3])
{
    return tt_list_push(
        &frame->masses,
        (tt_frame_mass_at){node, mass, offset, {inertia[0], inertia[1], inertia[2]}});
}

size_t tt_frame_nodes(const tt_frame *frame)
{
    return frame->nodes.n;
}

size_t tt_frame_bars(const tt_frame *frame)
{
    return frame->bars.n;
}
