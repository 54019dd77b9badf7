/* frame/springs.c - linear springs between nodes and the ground: what they take, give and store.
 * N/m and N.m/rad, global directions. */
#include "frame/parts.h"

bool tt_frame_spring(tt_frame *frame, size_t node, const double stiffness[TT_SIX])
{
    tt_frame_spring_at spring = {.node = node};
    for (int d = 0; d < TT_SIX; d++) spring.stiffness[d] = stiffness[d];
    frame->nodes.at[node].sprung = true;
    return tt_list_push(&frame->springs, spring);
}

void tt_springs_push(const tt_frame *frame, long double (*moved)[TT_SIX], double (*on_node)[TT_SIX])
{
    for (size_t i = 0; i < frame->springs.n; i++) {
        const tt_frame_spring_at *spring = &frame->springs.at[i];
        for (int d = 0; d < TT_SIX; d++)
            on_node[spring->node][d] += (double)(spring->stiffness[d] * moved[spring->node][d]);
    }
}

void tt_springs_react(const tt_frame *frame, tt_frame_state *state)
{
    for (size_t i = 0; i < frame->springs.n; i++) {
        const tt_frame_spring_at *spring = &frame->springs.at[i];
        for (int d = 0; d < TT_SIX; d++)
            state->reaction[spring->node][d] -= spring->stiffness[d] * state->move[spring->node][d];
    }
}

double tt_springs_energy(const tt_frame *frame, long double (*moved)[TT_SIX])
{
    long double sum = 0.0L;
    for (size_t i = 0; i < frame->springs.n; i++) {
        const tt_frame_spring_at *spring = &frame->springs.at[i];
        for (int d = 0; d < TT_SIX; d++) {
            const long double move = moved[spring->node][d];
            sum += spring->stiffness[d] * move * move;
        }
    }
    return (double)sum;
}
