/* frame/geometric.c - what section forces do by turning with their bar: the second variation of
 * their work, the geometric stiffness. SI, local axes.
 *
 * Turns are the vector theta of R = exp(theta x); strains of a beam whose sections turn freely are
 * Gamma = R' r' - e1 and kappa of R' R'_x (J. C. Simo, Comput. Meth. Appl. Mech. Engng 49 (1985)
 * 55-70, FROM MEMORY); of second order in the moves:
 *   Gamma2 = -theta x u' + theta x (theta x e1) / 2,   kappa2 = -theta x theta' / 2.
 * Their work with (N, Vy, Vz) and (T, My, Mz) gets two terms more: N (gamma_y^2 + gamma_z^2) / 2,
 * by which a column soft in shear buckles under F. Engesser's load (S. P. Timoshenko & J. M. Gere,
 * Theory of Elastic Stability, 2nd ed., 2.17, FROM MEMORY), and N r^2 theta_x'^2 / 2, by which it
 * may turn (H. Wagner, 1929; r^2 = the sum of E (y^2 + z^2) over EA). Moments that act on a node
 * are those that work on theta: they add nothing. */
#include "frame/parts.h"

#include <string.h>

/* Derivatives of that work by the turns t and the strains e at a point. */
static void derive(const double s[TT_SIX], double wagner, const double t[3], const double e[TT_SIX],
                   double by_t[3], double by_e[TT_SIX])
{
    const double n = s[0], vy = s[1], vz = s[2];
    const double hy = 0.5 * vy, hz = 0.5 * vz, tx = 0.5 * s[3], my = 0.5 * s[4], mz = 0.5 * s[5];
    by_t[0] = vy * e[2] - vz * e[1] - hy * t[1] - hz * t[2] + my * e[5] - mz * e[4];
    by_t[1] = n * (t[1] - e[2]) - hy * t[0] + vz * e[0] - tx * e[5] + mz * e[3];
    by_t[2] = n * (t[2] + e[1]) - hz * t[0] - vy * e[0] + tx * e[4] - my * e[3];
    by_e[0] = vz * t[1] - vy * t[2];
    by_e[1] = n * (t[2] + e[1]) - vz * t[0];
    by_e[2] = n * (e[2] - t[1]) + vy * t[0];
    by_e[3] = n * wagner * e[3] + mz * t[1] - my * t[2];
    by_e[4] = tx * t[2] - mz * t[0];
    by_e[5] = my * t[0] - tx * t[1];
}

/* As tt_section_from at every point, the loads turned into the bar's axes once. */
tt_bar_forces tt_forces_at_points(const tt_frame *frame, const tt_frame_load *load, size_t index,
                                  const double start[TT_SIX])
{
    const tt_frame_bar *bar = &frame->bars.at[index];
    const tt_vec3 *force = tt_line_of(load->line_force, index);
    const tt_vec3 *moment = tt_line_of(load->line_moment, index);
    const double length = bar->length;
    tt_vec3 p[TT_BAR_POINTS] = {{0, 0, 0}}, m[TT_BAR_POINTS] = {{0, 0, 0}};
    tt_bar_forces forces;
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        if (force) p[j] = tt_scale(tt_to_local(&bar->axes, force[j]), length);
        if (moment) m[j] = tt_scale(tt_to_local(&bar->axes, moment[j]), length);
    }
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const tt_frame_cut *to = &frame->points.cut[i];
        const double x = tt_bar_point[i] * length;
        double *f = forces.at[i];
        memcpy(f, start, TT_SIX * sizeof *f);
        f[4] += x * start[2];
        f[5] -= x * start[1];
        for (int j = 0; j < TT_BAR_POINTS; j++) {
            const double once = to->once[j], twice = length * to->twice[j];
            f[0] -= once * p[j].x;
            f[1] -= once * p[j].y;
            f[2] -= once * p[j].z;
            f[3] -= once * m[j].x;
            f[4] -= once * m[j].y + twice * p[j].z;
            f[5] -= once * m[j].z - twice * p[j].y;
        }
    }
    return forces;
}

void tt_bar_strained(const tt_frame_bar *bar, const tt_bar_forces *forces,
                     double strain[TT_BAR_POINTS][TT_SIX])
{
    memset(strain, 0, TT_BAR_POINTS * sizeof *strain);
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        tt_mat6_apply(&bar->flexibility[i], forces->at[i], strain[i]);
    }
}

/* Turns at a point: those of the start, and the strains between. */
static void turns_at(double length, const tt_frame_cut *to, const double start[3],
                     double strain[TT_BAR_POINTS][TT_SIX], double turn[3])
{
    memcpy(turn, start, 3 * sizeof *turn);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        for (int d = 0; d < 3; d++) turn[d] += length * to->once[j] * strain[j][3 + d];
    }
}

/* Derivatives by the strains become those by the moves of the end: strains at a point are
 * flexibility times section forces, and those come from the forces at the end. */
static void gather(const tt_frame_bar *bar, double by_strain[TT_BAR_POINTS][TT_SIX],
                   double by_end[TT_SIX])
{
    double sum[TT_SIX] = {0};
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const double arm = (1.0 - tt_bar_point[j]) * bar->length;
        double by_force[TT_SIX] = {0};
        tt_mat6_apply(&bar->flexibility[j], by_strain[j], by_force);
        for (int d = 0; d < TT_SIX; d++) sum[d] += by_force[d];
        sum[1] += arm * by_force[5];
        sum[2] -= arm * by_force[4];
    }
    tt_mat6_apply(&bar->end_stiffness, sum, by_end);
}

/* Derivatives by the turn of the start and by the moves of the end beside it. */
static void derive_bar(const tt_frame_bar *bar, const tt_points *points,
                       const tt_bar_forces *forces, const double turn[3],
                       double strain[TT_BAR_POINTS][TT_SIX], double by_turn[3],
                       double by_end[TT_SIX])
{
    double by_strain[TT_BAR_POINTS][TT_SIX] = {{0}};
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const double part = tt_bar_weight[i] * bar->length;
        double here[3], by_t[3], by_e[TT_SIX];
        turns_at(bar->length, &points->cut[i], turn, strain, here);
        derive(forces->at[i], bar->wagner[i], here, strain[i], by_t, by_e);
        for (int d = 0; d < TT_SIX; d++) by_strain[i][d] += part * by_e[d];
        for (int d = 0; d < 3; d++) by_turn[d] += part * by_t[d];
        for (int j = 0; j < TT_BAR_POINTS; j++) {
            const double reach = part * bar->length * points->cut[i].once[j];
            for (int d = 0; d < 3; d++) by_strain[j][3 + d] += reach * by_t[d];
        }
    }
    gather(bar, by_strain, by_end);
}

tt_bar_ends tt_bar_lean(const tt_frame_bar *bar, const tt_points *points,
                        const tt_bar_forces *forces, const double turn[3],
                        double strain[TT_BAR_POINTS][TT_SIX])
{
    tt_bar_ends ends = {{0}, {0}};
    double by_turn[3] = {0}, by_end[TT_SIX] = {0};
    derive_bar(bar, points, forces, turn, strain, by_turn, by_end);
    tt_bar_push_end(bar, by_end, &ends);
    for (int d = 0; d < 3; d++) ends.start[3 + d] += by_turn[d];
    return ends;
}

/* A unit move of the end beside the start strains every point. */
static void strain_of_end(const tt_frame_bar *bar, int d, double strain[TT_BAR_POINTS][TT_SIX])
{
    const double *force = bar->end_stiffness.at[d];
    memset(strain, 0, TT_BAR_POINTS * sizeof *strain);
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const double arm = (1.0 - tt_bar_point[i]) * bar->length;
        const double here[TT_SIX] = {force[0],
                                     force[1],
                                     force[2],
                                     force[3],
                                     force[4] - arm * force[2],
                                     force[5] + arm * force[1]};
        tt_mat6_apply(&bar->flexibility[i], here, strain[i]);
    }
}

tt_bar_geometric tt_bar_geometry(const tt_frame_bar *bar, const tt_points *points,
                                 const tt_bar_forces *forces)
{
    tt_bar_geometric g = {.turn = {{{0}}}};
    for (int d = 0; d < 3; d++) {
        double turn[3] = {0}, strain[TT_BAR_POINTS][TT_SIX] = {{0}}, unread[TT_SIX] = {0};
        turn[d] = 1.0;
        derive_bar(bar, points, forces, turn, strain, g.turn.at[3 + d] + 3, unread);
    }
    for (int d = 0; d < TT_SIX; d++) {
        static const double still[3] = {0};
        double strain[TT_BAR_POINTS][TT_SIX], by_turn[3] = {0};
        strain_of_end(bar, d, strain);
        derive_bar(bar, points, forces, still, strain, by_turn, g.end.at[d]);
        for (int i = 0; i < 3; i++) g.between.at[3 + i][d] = by_turn[i];
    }
    return g;
}
