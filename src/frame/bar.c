/* frame/bar.c - a bar by the flexibility method: equilibrium gives the section forces exactly,
 * section flexibilities at the points give strains, virtual forces the movements. SI, local axes.
 */
#include "frame/parts.h"

/* m' times section forces at a point from forces at the end, `arm` away along x: rows. */
static void carry_rows(tt_mat6 *m, double arm)
{
    for (int c = 0; c < TT_SIX; c++) {
        m->at[1][c] += arm * m->at[5][c];
        m->at[2][c] -= arm * m->at[4][c];
    }
}

/* The virtual work of the strains from forces at the end is the flexibility of the end. */
static bool soften(tt_frame_bar *bar, tt_mat6 strain[TT_BAR_POINTS])
{
    tt_mat6 sum = {{{0}}};
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const tt_mat6 stiffness = bar->flexibility[i];
        if (!tt_mat6_inverse(&stiffness, &bar->flexibility[i])) return false;
    }
    tt_bar_strains(bar, strain);
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        tt_mat6 part = strain[i];
        carry_rows(&part, (1.0 - tt_bar_point[i]) * bar->length);
        tt_mat6_add(&sum, tt_bar_weight[i] * bar->length, &part);
    }
    return tt_mat6_inverse(&sum, &bar->end_stiffness);
}

/* Moves of the free end by a line load of one along d at point j, the start held: virtual forces.
 * The load beyond point i makes there its own sum, and of a force the moment by its lever. */
static void moves_of_load(double length, const tt_points *points,
                          const tt_mat6 strain[TT_BAR_POINTS], int j, int d, double out[TT_SIX])
{
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const double(*moves)[TT_SIX] = strain[i].at; /* transposed: by section forces */
        const double w = tt_bar_weight[j], part = tt_bar_weight[i] * length;
        const double sum = part * length * (w - points->cut[i].once[j]);
        const double lever = part * length * length *
                             (w * (tt_bar_point[j] - tt_bar_point[i]) + points->cut[i].twice[j]);
        for (int k = 0; k < TT_SIX; k++) out[k] += sum * moves[d][k];
        for (int k = 0; k < TT_SIX && d == 1; k++) out[k] += lever * moves[5][k];
        for (int k = 0; k < TT_SIX && d == 2; k++) out[k] -= lever * moves[4][k];
    }
}

static void hold(tt_frame_bar *bar, const tt_points *points, const tt_mat6 strain[TT_BAR_POINTS])
{
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        for (int d = 0; d < TT_SIX; d++) {
            double moved[TT_SIX] = {0}, back[TT_SIX];
            moves_of_load(bar->length, points, strain, j, d, moved);
            for (int k = 0; k < TT_SIX; k++) {
                back[k] = -moved[k];
                bar->held[j][d][k] = 0.0;
            }
            tt_mat6_apply(&bar->end_stiffness, back, bar->held[j][d]);
        }
    }
}

bool tt_bar_form(tt_frame_bar *bar, const tt_points *points)
{
    tt_mat6 strain[TT_BAR_POINTS];
    tt_bar_shape shape[TT_BAR_POINTS];
    if (!soften(bar, strain)) return false;
    hold(bar, points, strain);
    tt_bar_shapes(bar, points, strain, shape);
    bar->mass = tt_bar_mass(bar, shape);
    return true;
}
