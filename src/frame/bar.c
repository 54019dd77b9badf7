/* frame/bar.c - end stiffness of a bar by the flexibility method: equilibrium gives the section
 * forces exactly, section flexibilities at the points give strains, virtual forces the movements.
 * SI, local axes. */
#include "frame/parts.h"

static tt_mat6 unit(void)
{
    tt_mat6 one = {0};
    for (int i = 0; i < TT_SIX; i++) one.at[i][i] = 1.0;
    return one;
}

/* u + theta x arm */
tt_mat6 tt_rigid(tt_vec3 arm)
{
    tt_mat6 t = unit();
    t.at[0][4] = arm.z;
    t.at[0][5] = -arm.y;
    t.at[1][3] = -arm.z;
    t.at[1][5] = arm.x;
    t.at[2][3] = arm.y;
    t.at[2][4] = -arm.x;
    return t;
}

tt_mat6 tt_rigid_mass(double mass, tt_vec3 arm, const double inertia[3])
{
    const tt_mat6 t = tt_rigid(arm);
    tt_mat6 m = {0};
    for (int i = 0; i < 3; i++) {
        m.at[i][i] = mass;
        m.at[i + 3][i + 3] = inertia[i];
    }
    m = tt_mat6_mul(&m, &t);
    return tt_mat6_tmul(&t, &m);
}

/* Equilibrium of the part between x and the end: forces go on, moments gain (L - x) times force:
 * the transpose of the moves of the end from those of x. */
tt_mat6 tt_bar_from_end(const tt_frame_bar *bar, double x)
{
    const tt_mat6 moves = tt_rigid((tt_vec3){bar->length - x, 0.0, 0.0}), one = unit();
    return tt_mat6_tmul(&moves, &one);
}

bool tt_bar_form(tt_frame_bar *bar)
{
    tt_mat6 sum = {0};
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        tt_mat6 stiffness;
        for (int r = 0; r < TT_SIX; r++) {
            for (int c = 0; c < TT_SIX; c++) stiffness.at[r][c] = bar->section[i].stiffness[r][c];
        }
        if (!tt_mat6_inverse(&stiffness, &bar->flexibility[i])) return false;
        const tt_mat6 forces = tt_bar_from_end(bar, tt_bar_point[i] * bar->length);
        const tt_mat6 strains = tt_mat6_mul(&bar->flexibility[i], &forces);
        const tt_mat6 part = tt_mat6_tmul(&forces, &strains);
        tt_mat6_add(&sum, tt_bar_weight[i] * bar->length, &part);
    }
    return tt_mat6_inverse(&sum, &bar->end_stiffness);
}

/* The end's moves less those a rigid bar would bring from the start, times the end stiffness; the
 * start balances. */
tt_bar_matrix tt_bar_stiffness(const tt_frame_bar *bar)
{
    const tt_mat6 whole = tt_bar_from_end(bar, 0.0);
    tt_bar_matrix k = {.bb = bar->end_stiffness};
    const tt_mat6 from_end = tt_mat6_mul(&whole, &bar->end_stiffness);
    k.aa = tt_mat6_mult(&from_end, &whole);
    tt_mat6_add(&k.ab, -1.0, &from_end);
    return k;
}
