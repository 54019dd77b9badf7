/* frame/barmass.c - consistent mass matrix of a bar on the exact static shapes: the moves at a
 * point are those of the start as a rigid body plus the strains between, integrated. SI, local. */
#include "frame/parts.h"

/* Strains at each point when the end moves by one, the start held. */
static void strains_of_end(const tt_frame_bar *bar, tt_mat6 out[TT_BAR_POINTS])
{
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const tt_mat6 carried = tt_bar_from_end(bar, tt_bar_point[j] * bar->length);
        const tt_mat6 forces = tt_mat6_mul(&carried, &bar->end_stiffness);
        out[j] = tt_mat6_mul(&bar->flexibility[j], &forces);
    }
}

/* u' = e0, v' = gamma_y + theta_z, w' = gamma_z - theta_y, theta' = the three turns per metre. */
static tt_mat6 moves_of_end(const tt_frame_bar *bar, double x, const tt_mat6 strain[TT_BAR_POINTS])
{
    double once[TT_BAR_POINTS], twice[TT_BAR_POINTS];
    tt_mat6 moves = {0};
    tt_bar_integrals(x, once, twice);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        const double lever = twice[j] * bar->length * bar->length;
        tt_mat6_add(&moves, once[j] * bar->length, &strain[j]);
        for (int c = 0; c < TT_SIX; c++) {
            moves.at[1][c] += lever * strain[j].at[5][c];
            moves.at[2][c] -= lever * strain[j].at[4][c];
        }
    }
    return moves;
}

static tt_mat6 section_mass(const tt_bar_section *s)
{
    return tt_rigid_mass(s->mass, (tt_vec3){0.0, s->mass_y, s->mass_z}, s->turn_inertia);
}

static void add_point(tt_bar_matrix *m, double weight, const tt_mat6 *mass, const tt_mat6 *start,
                      const tt_mat6 *end)
{
    const tt_mat6 of_start = tt_mat6_mul(mass, start), of_end = tt_mat6_mul(mass, end);
    const tt_mat6 aa = tt_mat6_tmul(start, &of_start), ab = tt_mat6_tmul(start, &of_end);
    const tt_mat6 bb = tt_mat6_tmul(end, &of_end);
    tt_mat6_add(&m->aa, weight, &aa);
    tt_mat6_add(&m->ab, weight, &ab);
    tt_mat6_add(&m->bb, weight, &bb);
}

tt_bar_matrix tt_bar_mass(const tt_frame_bar *bar)
{
    tt_mat6 strain[TT_BAR_POINTS];
    tt_bar_matrix m = {0};
    const tt_mat6 whole = tt_rigid((tt_vec3){bar->length, 0.0, 0.0});
    strains_of_end(bar, strain);
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const tt_mat6 end = moves_of_end(bar, tt_bar_point[i], strain);
        const tt_mat6 taken = tt_mat6_mul(&end, &whole);
        tt_mat6 start = tt_rigid((tt_vec3){tt_bar_point[i] * bar->length, 0.0, 0.0});
        tt_mat6_add(&start, -1.0, &taken);
        const tt_mat6 mass = section_mass(&bar->section[i]);
        add_point(&m, tt_bar_weight[i] * bar->length, &mass, &start, &end);
    }
    return m;
}
