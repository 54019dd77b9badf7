/* check/sway.c - the largest level movement of any place under service loads, in either carry
 * model, with heavy and light weight. m. */
#include "check/parts.h"

#include <math.h>

static void look(const tt_check_input *in, const tt_combination *together, int carry, int pattern,
                 tt_sway *most)
{
    for (size_t p = 0; p < in->piece->points.n; p++) {
        double u[6];
        tt_superpose_move(in->solution, carry, together, pattern, p, u);
        const double move = sqrt(u[0] * u[0] + u[1] * u[1]);
        if (most->together && move <= most->move) continue;
        *most = (tt_sway){
            .together = together, .move = move, .point = p, .carry = carry, .pattern = pattern};
    }
}

/* Largest height of a place over, or under, the stand nearest in height. */
static double reach(const tt_piece *piece)
{
    double most = 0.0;
    for (size_t p = 0; p < piece->points.n; p++) {
        double near = INFINITY;
        for (size_t s = 0; s < piece->stands.n; s++) {
            near = fmin(near, fabs(piece->points.at[p].at.z -
                                   piece->points.at[piece->stands.at[s].at].at.z));
        }
        most = fmax(most, near);
    }
    return most;
}

tt_sway tt_sway_find(const tt_check_input *in)
{
    tt_sway most = {.together = NULL};
    for (size_t i = 0; i < in->combinations->n; i++) {
        if (in->combinations->at[i].level != TT_SERVICE) continue;
        for (int carry = 0; carry < TT_MODELS; carry++) {
            look(in, &in->combinations->at[i], carry, TT_HEAVY, &most);
            look(in, &in->combinations->at[i], carry, TT_LIGHT, &most);
        }
    }
    most.height = reach(in->piece);
    return most;
}
