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

bool tt_add_bar(const tt_frame *frame, const tt_frame_bar *bar, const tt_bar_matrix *m,
                tt_entries *terms)
{
    const size_t p = frame->nodes.at[bar->from].body, q = frame->nodes.at[bar->to].body;
    const int *at_a = frame->bodies.at[p].unknown, *at_b = frame->bodies.at[q].unknown;
    if (p != q) {
        return add_own(terms, at_a, &m->aa) && add_own(terms, at_b, &m->bb) &&
               add_between(terms, at_a, at_b, &m->ab);
    }
    tt_mat6 all = m->aa;
    tt_mat6_add(&all, 1.0, &m->bb);
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) all.at[i][j] += m->ab.at[i][j] + m->ab.at[j][i];
    }
    return add_own(terms, at_a, &all);
}

void tt_bring(tt_mat6 *m, tt_vec3 arm)
{
    tt_rigid_rows(m, arm);
    tt_rigid_columns(m, arm);
}

tt_vec3 tt_start_arm(const tt_frame *frame, const tt_frame_bar *bar)
{
    const tt_vec3 along = tt_sub(frame->nodes.at[bar->to].at, frame->nodes.at[bar->from].at);
    return tt_add(tt_arm(frame, bar->from), along);
}

tt_bar_matrix tt_between_bodies(const tt_frame *frame, const tt_frame_bar *bar,
                                const tt_mat6 *by_end)
{
    const tt_vec3 a = tt_start_arm(frame, bar), b = tt_arm(frame, bar->to);
    tt_bar_matrix k = {.bb = tt_turned(&bar->axes, by_end)};
    k.aa = k.bb;
    tt_bring(&k.aa, a);
    tt_mat6_add(&k.ab, -1.0, &k.bb);
    tt_rigid_rows(&k.ab, a);
    tt_rigid_columns(&k.ab, b);
    tt_bring(&k.bb, b);
    return k;
}

static tt_bar_matrix mass_of(const tt_frame *frame, const tt_frame_bar *bar)
{
    const tt_vec3 a = tt_arm(frame, bar->from), b = tt_arm(frame, bar->to);
    tt_bar_matrix m = bar->mass;
    tt_bring(&m.aa, a);
    tt_rigid_rows(&m.ab, a);
    tt_rigid_columns(&m.ab, b);
    tt_bring(&m.bb, b);
    return m;
}

bool tt_add_body(const tt_frame *frame, size_t node, const tt_mat6 *own, tt_entries *terms)
{
    return add_own(terms, frame->bodies.at[frame->nodes.at[node].body].unknown, own);
}

tt_status tt_assembled(const tt_frame *frame, bool fits, tt_entries *terms, tt_sparse *out)
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
        if (tt_bar_inside(frame, bar)) continue;
        const tt_bar_matrix k = tt_between_bodies(frame, bar, &bar->end_stiffness);
        fits = tt_add_bar(frame, bar, &k, &terms);
    }
    for (size_t i = 0; i < frame->springs.n && fits; i++) {
        const tt_frame_spring_at *at = &frame->springs.at[i];
        tt_mat6 own = {{{0}}};
        for (int d = 0; d < TT_SIX; d++) own.at[d][d] = at->stiffness[d];
        tt_bring(&own, tt_arm(frame, at->node));
        fits = tt_add_body(frame, at->node, &own, &terms);
    }
    return tt_assembled(frame, fits, &terms, &frame->stiffness);
}

tt_status tt_assemble_mass(tt_frame *frame)
{
    tt_entries terms = {0};
    bool fits = true;
    for (size_t i = 0; i < frame->bars.n && fits; i++) {
        const tt_bar_matrix m = mass_of(frame, &frame->bars.at[i]);
        fits = tt_add_bar(frame, &frame->bars.at[i], &m, &terms);
    }
    for (size_t i = 0; i < frame->masses.n && fits; i++) {
        const tt_frame_mass_at *at = &frame->masses.at[i];
        tt_mat6 own = tt_unit_matrix();
        tt_rigid_mass(at->mass, at->offset, at->inertia, &own);
        tt_bring(&own, tt_arm(frame, at->node));
        fits = tt_add_body(frame, at->node, &own, &terms);
    }
    return tt_assembled(frame, fits, &terms, &frame->mass);
}

static tt_status form_bars(tt_frame *frame, tt_frame_fault *fault)
{
    frame->points = tt_points_of_bars();
    for (size_t i = 0; i < frame->bars.n; i++) {
        tt_frame_bar *bar = &frame->bars.at[i];
        *fault = (tt_frame_fault){.node = bar->from, .direction = -1};
        if (!(bar->length > 0.0)) return TT_E_INPUT;
        if (!tt_bar_form(bar, &frame->points)) return TT_E_ILL_CONDITIONED;
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
