/* frame/strain.c - what strains a bar: the difference of the moves of its ends, in long double
 * since neighbours move nearly alike; and the strain energy of a frame. SI. */
#include "frame/parts.h"

#include <string.h>

/* sum += factor * m x */
static void add_product(const tt_mat6 *m, double factor, const long double x[TT_SIX],
                        long double sum[TT_SIX])
{
    for (int i = 0; i < TT_SIX; i++) {
        for (int j = 0; j < TT_SIX; j++) sum[i] += (long double)(factor * m->at[i][j]) * x[j];
    }
}

void tt_bar_moved(const tt_frame *frame, const tt_frame_bar *bar, const tt_body_moves *moves,
                  double out[TT_SIX])
{
    const size_t body[2] = {tt_bar_body(frame, bar, 0), tt_bar_body(frame, bar, 1)};
    long double moved[2][TT_SIX], end[2][TT_SIX] = {{0}};
    memset(out, 0, TT_SIX * sizeof *out);
    if (body[0] == body[1]) return; /* on one body nothing is strained */
    for (int e = 0; e < 2; e++) {
        for (int d = 0; d < TT_SIX; d++) {
            moved[e][d] = (long double)moves->rough[body[e]][d] + moves->fine[body[e]][d];
        }
        const tt_mat6 local = tt_bar_to_local(frame, bar, e);
        add_product(&local, 1.0, moved[e], end[e]);
    }
    const tt_mat6 whole = tt_rigid((tt_vec3){bar->length, 0.0, 0.0});
    add_product(&whole, -1.0, end[0], end[1]);
    for (int d = 0; d < TT_SIX; d++) out[d] = (double)end[1][d];
}

double tt_strain_energy(const tt_frame *frame, const tt_body_moves *moves)
{
    double sum = 0.0;
    for (size_t i = 0; i < frame->bars.n; i++) {
        const tt_frame_bar *bar = &frame->bars.at[i];
        double moved[TT_SIX], forces[TT_SIX] = {0};
        tt_bar_moved(frame, bar, moves, moved);
        tt_mat6_apply(&bar->end_stiffness, moved, forces);
        for (int d = 0; d < TT_SIX; d++) sum += moved[d] * forces[d];
    }
    return sum;
}
