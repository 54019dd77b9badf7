/* frame/barmass.c - consistent mass matrix of a bar on the exact static shapes: the moves at a
 * point are those of the start as a rigid body plus the strains between, integrated. SI. */
#include "frame/parts.h"

/* m becomes what moves the mass that a point stands for. */
static void push(const tt_frame_bar *bar, int i, tt_mat6 *m)
{
    const tt_bar_matter *at = &bar->matter[i];
    const double length = tt_bar_weight[i] * bar->length, *turn = at->inertia;
    const double inertia[3] = {length * turn[0], length * turn[1], length * turn[2]};
    tt_rigid_mass(length * at->mass, at->centre, inertia, m);
}

/* With E the moves by the end, R those of a rigid bar: bb = E' m E, ab = R' m E, aa = R' m R. */
static void add_point(const tt_frame_bar *bar, int i, const tt_mat6 *end, tt_bar_matrix *sum)
{
    const tt_vec3 arm = {tt_bar_point[i] * bar->length, 0.0, 0.0};
    tt_mat6 by_end = *end, by_start = tt_unit_matrix();
    push(bar, i, &by_end);
    const tt_mat6 bb = tt_mat6_tmul(end, &by_end);
    tt_mat6_add(&sum->bb, 1.0, &bb);
    tt_rigid_rows(&by_end, arm);
    tt_mat6_add(&sum->ab, 1.0, &by_end);
    tt_rigid_columns(&by_start, arm);
    push(bar, i, &by_start);
    tt_rigid_rows(&by_start, arm);
    tt_mat6_add(&sum->aa, 1.0, &by_start);
}

/* When the start moves, the end does not: R - E W instead of R, W the moves of the end of a rigid
 * bar. */
static void hold_end(double length, tt_bar_matrix *m)
{
    const tt_vec3 whole = {length, 0.0, 0.0};
    tt_mat6 back = m->bb, rest = m->ab, turned = {{{0}}};
    tt_rigid_columns(&rest, whole);
    tt_mat6_add(&m->aa, -1.0, &rest);
    tt_rigid_rows(&back, whole);
    tt_mat6_add(&m->ab, -1.0, &back);
    for (int r = 0; r < TT_SIX; r++) {
        for (int c = 0; c < TT_SIX; c++) turned.at[r][c] = m->ab.at[c][r];
    }
    tt_rigid_rows(&turned, whole);
    tt_mat6_add(&m->aa, -1.0, &turned);
}

tt_bar_matrix tt_bar_mass(const tt_frame_bar *bar, const tt_bar_shape shape[TT_BAR_POINTS])
{
    tt_bar_matrix m = {.aa = {{{0}}}};
    for (int i = 0; i < TT_BAR_POINTS; i++) add_point(bar, i, &shape[i].moves, &m);
    hold_end(bar->length, &m);
    return (tt_bar_matrix){tt_turned(&bar->axes, &m.aa), tt_turned(&bar->axes, &m.ab),
                           tt_turned(&bar->axes, &m.bb)};
}
