/* frame/bodies.c - nodes joined by rigid arms become bodies of six unknowns each; moves of nodes,
 * bodies and unknowns from one another. */
#include "frame/parts.h"
#include "base/alloc.h"

/* Bodies in the order of their first nodes; that node is the master until a held one is met. */
static tt_status collect(tt_frame *frame, size_t *set, tt_frame_fault *fault)
{
    for (size_t i = 0; i < frame->nodes.n; i++) {
        tt_frame_node *node = &frame->nodes.at[i];
        const size_t root = tt_set_root(set, i);
        node->body = root == i ? frame->bodies.n : frame->nodes.at[root].body;
        if (root == i && !tt_list_push(&frame->bodies, (tt_frame_body){.master = i})) {
            return TT_E_NOMEM;
        }
        tt_frame_body *body = &frame->bodies.at[node->body];
        if (!node->any_held || body->master == i) continue;
        if (frame->nodes.at[body->master].any_held) {
            *fault =
                (tt_frame_fault){.node = i, .direction = -1, .arm_a = body->master, .arm_b = i};
            return TT_E_INPUT;
        }
        body->master = i;
    }
    return TT_OK;
}

static void number(tt_frame *frame)
{
    frame->unknowns = 0;
    for (size_t b = 0; b < frame->bodies.n; b++) {
        tt_frame_body *body = &frame->bodies.at[b];
        for (int d = 0; d < TT_SIX; d++) {
            const bool held = frame->nodes.at[body->master].held[d];
            body->unknown[d] = held ? -1 : frame->unknowns++;
        }
    }
}

tt_status tt_bodies_form(tt_frame *frame, tt_frame_fault *fault)
{
    size_t *set = tt_alloc(frame->nodes.n, sizeof *set);
    if (!set) return TT_E_NOMEM;
    for (size_t i = 0; i < frame->nodes.n; i++) set[i] = i;
    for (size_t i = 0; i < frame->arms.n; i++) {
        tt_set_join(set, frame->arms.at[i].a, frame->arms.at[i].b);
    }
    const tt_status status = collect(frame, set, fault);
    tt_free(set);
    if (status == TT_OK) number(frame);
    return status;
}

tt_vec3 tt_arm(const tt_frame *frame, size_t node)
{
    const tt_frame_node *n = &frame->nodes.at[node];
    return tt_sub(n->at, frame->nodes.at[frame->bodies.at[n->body].master].at);
}

bool tt_bar_inside(const tt_frame *frame, const tt_frame_bar *bar)
{
    return frame->nodes.at[bar->from].body == frame->nodes.at[bar->to].body;
}

void tt_spread(const tt_frame *frame, const double *unknowns, double (*bodies)[TT_SIX])
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int d = 0; d < TT_SIX; d++) {
            const int u = frame->bodies.at[b].unknown[d];
            bodies[b][d] = u < 0 ? 0.0 : unknowns[u];
        }
    }
}

void tt_gather(const tt_frame *frame, double (*bodies)[TT_SIX], double *unknowns)
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int d = 0; d < TT_SIX; d++) {
            const int u = frame->bodies.at[b].unknown[d];
            if (u >= 0) unknowns[u] = bodies[b][d];
        }
    }
}

void tt_node_moves(const tt_frame *frame, double (*bodies)[TT_SIX], double (*nodes)[TT_SIX])
{
    for (size_t i = 0; i < frame->nodes.n; i++) {
        tt_six_moved(tt_arm(frame, i), bodies[frame->nodes.at[i].body], nodes[i]);
    }
}

void tt_put_reactions(const tt_frame *frame, double (*forces)[TT_SIX], tt_frame_state *state)
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        const tt_frame_body *body = &frame->bodies.at[b];
        for (int d = 0; d < TT_SIX; d++) {
            if (body->unknown[d] < 0) state->reaction[body->master][d] = forces[b][d];
        }
    }
}
