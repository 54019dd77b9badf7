/* frame/assemble.c - stiffness and mass matrices of the unknowns, and the preparation of a frame
 * for solving. */
#include "frame/parts.h"

static bool add_term(tt_entries *terms, int row, int col, double value)
{
    if (row < 0 || col < 0 || value == 0.0) return true;
    return tt_list_push(terms, (tt_entry){row, col, value});
}

/* A body with itself: one triangle. */
static bool add_own(tt_entries *terms, const int *unknown, const tt_mat6 *block)
{
    bool fits = true;
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = i; j < TT_SIX; j++) {
            fits = fits && add_term(terms, unknown[i], unknown[j], block->at[i][j]);
        }
    }
    return fits;
}

static bool add_between(tt_entries *terms, const int *a, const int *b, const tt_mat6 *block)
{
    bool fits = true;
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) {
            fits = fits && add_term(terms, a[i], b[j], block->at[i][j]);
        }
    }
    return fits;
}

/* to' block from */
static tt_mat6 carried(const tt_mat6 *to, const tt_mat6 *block, const tt_mat6 *from)
{
    const tt_mat6 half = tt_mat6_mul(block, from);
    return tt_mat6_tmul(to, &half);
}

static bool add_bar(const tt_frame *frame, const tt_frame_bar *bar, const tt_bar_matrix *m,
                    tt_entries *terms)
{
    const size_t p = tt_bar_body(frame, bar, 0), q = tt_bar_body(frame, bar, 1);
    const tt_mat6 a = tt_bar_to_local(frame, bar, 0), b = tt_bar_to_local(frame, bar, 1);
    const int *at_a = frame->bodies.at[p].unknown, *at_b = frame->bodies.at[q].unknown;
    tt_mat6 aa = carried(&a, &m->aa, &a);
    const tt_mat6 ab = carried(&a, &m->ab, &b), bb = carried(&b, &m->bb, &b);
    if (p != q) {
        return add_own(terms, at_a, &aa) && add_own(terms, at_b, &bb) &&
               add_between(terms, at_a, at_b, &ab);
    }
    tt_mat6_add(&aa, 1.0, &bb);
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) aa.at[i][j] += ab.at[i][j] + ab.at[j][i];
    }
    return add_own(terms, at_a, &aa);
}

static tt_status finish(const tt_frame *frame, bool fits, tt_entries *terms, tt_sparse *out)
{
    const tt_status status = fits ? tt_sparse_of(terms, frame->unknowns, out) : TT_E_NOMEM;
    tt_list_clear(terms);
    return status;
}

tt_status tt_assemble_stiffness(tt_frame *frame)
{
    tt_entries terms = {0};
    bool fits = true;
    for (size_t i = 0; i < frame->bars.n && fits; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        /* inside one body a bar cannot be strained */
        if (tt_bar_body(frame, bar, 0) == tt_bar_body(frame, bar, 1)) continue;
        const tt_bar_matrix k = tt_bar_stiffness(bar);
        fits = add_bar(frame, bar, &k, &terms);
    }
    return finish(frame, fits, &terms, &frame->stiffness);
}

tt_status tt_assemble_mass(tt_frame *frame)
{
    tt_entries terms = {0};
    bool fits = true;
    for (size_t i = 0; i < frame->bars.n && fits; i++) {
        fits = add_bar(frame, &frame->bars.at[i], &frame->bars.at[i].mass, &terms);
    }
    for (size_t i = 0; i < frame->masses.n && fits; i++) {
        const tt_frame_mass_at *at = &frame->masses.at[i];
        const tt_mat6 own = tt_rigid_mass(at->mass, at->offset, at->inertia);
        const tt_mat6 node = tt_node_of_body(frame, at->node);
        const tt_mat6 block = carried(&node, &own, &node);
        fits = add_own(&terms, frame->bodies.at[frame->nodes.at[at->node].body].unknown, &block);
    }
    return finish(frame, fits, &terms, &frame->mass);
}

static tt_status form_bars(tt_frame *frame, tt_frame_fault *fault)
{
    for (size_t i = 0; i < frame->bars.n; i++) {
        tt_frame_bar *bar = &frame->bars.at[i];
        *fault = (tt_frame_fault){.node = bar->from, .direction = -1};
        if (!(bar->length > 0.0)) return TT_E_INPUT;
        if (!tt_bar_form(bar)) return TT_E_ILL_CONDITIONED;
        bar->mass = tt_bar_mass(bar);
    }
    *fault = (tt_frame_fault){.direction = -1};
    return TT_OK;
}

/* A pivot that elimination has brought below 1e-11 of its diagonal is rounding: that unknown is not
 * held by anything. The limit is an assumption: rounding leaves about 1e-15, slender frames 1e-8.
 */
static tt_status factor(tt_frame *frame, tt_frame_fault *fault)
{
    const tt_status status = tt_factor_of(&frame->stiffness, &frame->factor);
    if (status == TT_E_NOMEM) return status;
    const int weak = tt_factor_weak(&frame->factor, &frame->stiffness, 1e-11);
    if (weak < 0) return TT_OK;
    *fault = tt_fault_of(frame, weak);
    return TT_E_MECHANISM;
}

tt_status tt_frame_prepare(tt_frame *frame, tt_frame_fault *fault)
{
    tt_frame_fault unread;
    if (!fault) fault = &unread;
    *fault = (tt_frame_fault){.direction = -1};
    tt_status status = tt_bodies_form(frame, fault);
    if (status == TT_OK) status = tt_find_loose(frame, fault);
    if (status == TT_OK) status = form_bars(frame, fault);
    if (status == TT_OK) status = tt_assemble_stiffness(frame);
    if (status == TT_OK) status = tt_assemble_mass(frame);
    if (status == TT_OK) status = factor(frame, fault);
    return status;
}
