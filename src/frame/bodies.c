/* frame/bodies.c - nodes joined by rigid arms become bodies of six unknowns each. */
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

size_t tt_bar_body(const tt_frame *frame, const tt_frame_bar *bar, int end)
{
    return frame->nodes.at[end ? bar->to : bar->from].body;
}

tt_mat6 tt_node_of_body(const tt_frame *frame, size_t node)
{
    const tt_frame_node *n = &frame->nodes.at[node];
    const size_t master = frame->bodies.at[n->body].master;
    return tt_rigid(tt_sub(n->at, frame->nodes.at[master].at));
}

tt_mat6 tt_bar_to_local(const tt_frame *frame, const tt_frame_bar *bar, int end)
{
    const tt_mat6 node = tt_node_of_body(frame, end ? bar->to : bar->from);
    const tt_vec3 row[3] = {bar->axes.x, bar->axes.y, bar->axes.z};
    tt_mat6 turn = {0};
    for (int i = 0; i < TT_SIX; i++) {
        double *three = turn.at[i] + (i < 3 ? 0 : 3);
        three[0] = row[i % 3].x;
        three[1] = row[i % 3].y;
        three[2] = row[i % 3].z;
    }
    return tt_mat6_mul(&turn, &node);
}
