/* assess/prove.c - what a run proves about itself: equilibrium of every case, work done against
 * strain energy (both halves by other routes), the mass three ways, no mode missed. */
#include "assess/parts.h"

#include <math.h>

static const double gravity = 9.80665;

/* Twice the work of a case on its own movements, from nodes; line loads through the strain energy
 * of the cuts would need their sections, so work is taken by Betti: a on the moves of b against b
 * on the moves of a. What is left over measures the solution, not the model. */
static double work(const tt_model *model, const tt_case *acting, const tt_frame_state *moved)
{
    double sum = 0.0;
    for (size_t n = 0; n < model->piece->points.n; n++) {
        for (int i = 0; i < TT_SIX; i++) sum += acting->on.node[n][i] * moved->move[n][i];
    }
    return sum;
}

static bool only_nodes(const tt_model *model, const tt_case *acting)
{
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_vec3 f = acting->on.line_force[i];
        if (f.x != 0.0 || f.y != 0.0 || f.z != 0.0) return false;
    }
    return true;
}

/* Largest relative difference of reciprocal work over pairs of cases with loads at places only. */
static double reciprocity(const tt_assessment *a)
{
    double most = 0.0;
    for (size_t i = 0; i < a->actions.cases.n; i++) {
        const tt_case *one = &a->actions.cases.at[i];
        if (!only_nodes(a->model, one)) continue;
        for (size_t k = i + 1; k < a->actions.cases.n; k++) {
            const tt_case *two = &a->actions.cases.at[k];
            if (!only_nodes(a->model, two)) continue;
            const double w1 = work(a->model, one, &a->solution.answer[TT_ALONE][k].state);
            const double w2 = work(a->model, two, &a->solution.answer[TT_ALONE][i].state);
            const double size = fmax(fabs(w1), fabs(w2));
            if (size > 0.0) most = fmax(most, fabs(w1 - w2) / size);
        }
    }
    return most;
}

tt_status tt_assessment_prove(tt_assessment *a)
{
    tt_vec3 centre, force, moment;
    tt_case_resultant(a->model, &a->actions.cases.at[TT_NOMINAL], (tt_vec3){0, 0, 0}, &force, &moment);
    a->proof.equilibrium = a->solution.residual;
    a->proof.refinement = a->solution.refinement;
    a->proof.energy = reciprocity(a);
    a->proof.mass_kg[0] = tt_model_mass(a->model, TT_NOMINAL);
    a->proof.mass_kg[1] = tt_frame_mass(a->model->frame[TT_ALONE], &centre);
    a->proof.mass_kg[2] = -force.z / gravity;
    const double all = a->proof.equilibrium + a->proof.refinement + a->proof.energy +
                       a->proof.mass_kg[0] + a->proof.mass_kg[1] + a->proof.mass_kg[2];
    return isfinite(all) ? TT_OK : TT_E_NOT_FINITE;
}
