/* frame/shapes.c - how a bar moves and strains at its points when its end moves and its start is
 * held: the exact static shapes. SI, local axes. */
#include "frame/parts.h"

/* Section forces at a point are My - arm Fz, Mz + arm Fy of the forces at the end, `arm` away. */
void tt_bar_strains(const tt_frame_bar *bar, tt_mat6 strain[TT_BAR_POINTS])
{
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const double arm = (1.0 - tt_bar_point[i]) * bar->length;
        strain[i] = bar->flexibility[i];
        for (int r = 0; r < TT_SIX; r++) {
            strain[i].at[r][1] += arm * strain[i].at[r][5];
            strain[i].at[r][2] -= arm * strain[i].at[r][4];
        }
    }
}

/* Moves at a point: u' = e0, v' = gamma_y + theta_z, w' = gamma_z - theta_y, theta' = the three
 * turns per metre, integrated from the start. */
static tt_mat6 moves_at(double length, const tt_frame_cut *to,
                        const tt_bar_shape shape[TT_BAR_POINTS])
{
    tt_mat6 moves = {{{0}}};
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const tt_mat6 *strain = &shape[j].strain;
        const double lever = to->twice[j] * length * length;
        tt_mat6_add(&moves, to->once[j] * length, strain);
        for (int c = 0; c < TT_SIX; c++) {
            moves.at[1][c] += lever * strain->at[5][c];
            moves.at[2][c] -= lever * strain->at[4][c];
        }
    }
    return moves;
}

void tt_bar_shapes(const tt_frame_bar *bar, const tt_points *points,
                   const tt_mat6 strain[TT_BAR_POINTS], tt_bar_shape shape[TT_BAR_POINTS])
{
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        shape[j].strain = tt_mat6_mul(&strain[j], &bar->end_stiffness);
    }
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        shape[i].moves = moves_at(bar->length, &points->cut[i], shape);
    }
}

/* u' = e0, v' = gamma_y + theta_z, w' = gamma_z - theta_y, theta' = the three turns per metre. */
void tt_bar_moves_at(double length, const tt_frame_cut *cut, const double start[TT_SIX],
                     const double strain[TT_BAR_POINTS][TT_SIX], double out[TT_SIX])
{
    tt_six_moved((tt_vec3){cut->x * length, 0.0, 0.0}, start, out);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const double lever = length * length * cut->twice[j];
        for (int d = 0; d < TT_SIX; d++) out[d] += length * cut->once[j] * strain[j][d];
        out[1] += lever * strain[j][5];
        out[2] -= lever * strain[j][4];
    }
}

tt_points tt_points_of_bars(void)
{
    tt_points points;
    for (int i = 0; i < TT_BAR_POINTS; i++) points.cut[i] = tt_frame_cut_at(tt_bar_point[i]);
    return points;
}
