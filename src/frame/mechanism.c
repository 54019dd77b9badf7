/* frame/mechanism.c - which part of a frame is free to move, and at which node. */
#include "frame/parts.h"
#include "base/alloc.h"

size_t tt_set_root(size_t *set, size_t i)
{
    while (set[i] != i) i = set[i] = set[set[i]];
    return i;
}

void tt_set_join(size_t *set, size_t a, size_t b)
{
    const size_t p = tt_set_root(set, a), q = tt_set_root(set, b);
    if (p < q)
        set[q] = p;
    else
        set[p] = q;
}

static void join_all(const tt_frame *frame, size_t *set)
{
    for (size_t i = 0; i < frame->nodes.n; i++) set[i] = i;
    for (size_t i = 0; i < frame->arms.n; i++) {
        tt_set_join(set, frame->arms.at[i].a, frame->arms.at[i].b);
    }
    for (size_t i = 0; i < frame->bars.n; i++) {
        tt_set_join(set, frame->bars.at[i].from, frame->bars.at[i].to);
    }
}

tt_status tt_find_loose(const tt_frame *frame, tt_frame_fault *fault)
{
    const size_t n = frame->nodes.n;
    size_t *set = tt_alloc(n, sizeof *set);
    bool *held = tt_alloc(n, sizeof *held);
    tt_status status = set && held ? TT_OK : TT_E_NOMEM;
    if (status == TT_OK) join_all(frame, set);
    for (size_t i = 0; i < n && status == TT_OK; i++) {
        if (frame->nodes.at[i].any_held || frame->nodes.at[i].sprung)
            held[tt_set_root(set, i)] = true;
    }
    for (size_t i = 0; i < n && status == TT_OK; i++) {
        if (held[tt_set_root(set, i)]) continue;
        *fault = (tt_frame_fault){.node = i, .direction = -1};
        status = TT_E_MECHANISM;
    }
    tt_free(set);
    tt_free(held);
    return status;
}

tt_frame_fault tt_fault_of(const tt_frame *frame, int unknown)
{
    for (size_t b = 0; b < frame->bodies.n; b++) {
        for (int d = 0; d < TT_SIX; d++) {
            if (frame->bodies.at[b].unknown[d] != unknown) continue;
            return (tt_frame_fault){.node = frame->bodies.at[b].master, .direction = d};
        }
    }
    return (tt_frame_fault){.direction = -1};
}
