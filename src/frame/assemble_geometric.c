/* frame/assemble_geometric.c - the geometric stiffness of all unknowns: bars whose section forces
 * turn with them, and forces on arms; the factors of it and the elastic one together. SI. */
#include "frame/parts.h"
#include "base/alloc.h"

/* In terms of the bodies: the end moves beside the start by what is between the two; the start
 * turns as its body. */
static tt_bar_matrix of_bar(const tt_frame *frame, const tt_frame_bar *bar,
                            const tt_bar_geometric *g)
{
    tt_bar_matrix m = tt_between_bodies(frame, bar, &g->end);
    const tt_mat6 turn = tt_turned(&bar->axes, &g->turn);
    tt_mat6 to_start = tt_turned(&bar->axes, &g->between), to_end = to_start;
    tt_rigid_columns(&to_start, tt_start_arm(frame, bar));
    tt_rigid_columns(&to_end, tt_arm(frame, bar->to));
    tt_mat6_add(&m.aa, 1.0, &turn);
    tt_mat6_add(&m.ab, 1.0, &to_end);
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) m.aa.at[i][j] -= to_start.at[i][j] + to_start.at[j][i];
    }
    return m;
}

static void scale(tt_mat6 *m, double factor)
{
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) m->at[i][j] *= factor;
    }
}

static bool add_geometry(const tt_frame *frame, size_t index, const tt_bar_forces *forces,
                         double factor, tt_entries *terms)
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const tt_bar_geometric g = tt_bar_geometry(bar, &frame->points, forces);
    tt_bar_matrix m = of_bar(frame, bar, &g);
    scale(&m.aa, factor);
    scale(&m.ab, factor);
    scale(&m.bb, factor);
    return tt_add_bar(frame, bar, &m, terms);
}

/* What the nodes give to bars and springs in a state, less their loads. */
static void forces_on_nodes(const tt_frame *frame, const tt_frame_load *load,
                            const tt_frame_state *state, double (*on_node)[TT_SIX])
{
    const tt_frame_cut whole = tt_frame_cut_at(1.0);
    for (size_t i = 0; i < frame->bars.n; i++) {
        tt_bar_ends ends;
        tt_section_from(frame, load, i, &whole, state->end[i], ends.end);
        for (int d = 0; d < TT_SIX; d++) ends.start[d] = -state->end[i][d];
        tt_bar_push_nodes(&frame->bars.at[i], &ends, on_node);
    }
    for (size_t i = 0; i < frame->nodes.n; i++) {
        for (int d = 0; d < TT_SIX; d++) {
            on_node[i][d] -= state->reaction[i][d] + (load->node ? load->node[i][d] : 0.0);
        }
    }
}

static bool add_bars(const tt_frame *frame, const tt_frame_load *load, const tt_frame_state *state,
                     double factor, tt_entries *terms)
{
    bool fits = true;
    for (size_t i = 0; i < frame->bars.n && fits; i++) {
        const tt_bar_forces forces = tt_forces_at_points(frame, load, i, state->end[i]);
        fits = add_geometry(frame, i, &forces, factor, terms);
    }
    return fits;
}

static bool add_nodes(const tt_frame *frame, const tt_frame_load *load, double factor,
                      double (*on_node)[TT_SIX], tt_entries *terms)
{
    bool fits = true;
    for (size_t i = 0; i < frame->nodes.n && fits; i++) {
        double lever[3][3];
        tt_node_lever(frame, load, i, on_node[i], lever);
        tt_mat6 m = tt_lever_matrix((const double(*)[3])lever);
        scale(&m, factor);
        fits = tt_add_body(frame, i, &m, terms);
    }
    return fits;
}

tt_status tt_assemble_geometric(const tt_frame *frame, const tt_frame_load *load,
                                const tt_frame_state *state, double factor, tt_sparse *out)
{
    tt_entries terms = {0};
    double(*on_node)[TT_SIX] = tt_alloc(frame->nodes.n, sizeof *on_node);
    bool fits = on_node != NULL;
    if (fits) forces_on_nodes(frame, load, state, on_node);
    fits = fits && add_bars(frame, load, state, factor, &terms) &&
           add_nodes(frame, load, factor, on_node, &terms);
    tt_free(on_node);
    return tt_assembled(frame, fits, &terms, out);
}

tt_status tt_factor_moved(const tt_frame *frame, const tt_sparse *geometric, double factor,
                          tt_factor *out, bool *positive)
{
    tt_sparse sum = {0};
    tt_status status = tt_sparse_sum(&frame->stiffness, factor, geometric, &sum);
    if (status == TT_OK) status = tt_factor_of(&sum, out);
    *positive = status == TT_OK && tt_factor_weak(out, &sum, 0.0) < 0;
    tt_sparse_free(&sum);
    return status == TT_E_ILL_CONDITIONED ? TT_OK : status;
}
