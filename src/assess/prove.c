/* assess/prove.c - what a run proves about itself: equilibrium of every case, work done against
 * strain energy (each by its own route), the mass three ways, no mode missed. */
#include "assess/parts.h"

#include <math.h>
#include <string.h>

/* The cases whose energy is told: nominal weight, the file's own, and two winds at right angles. */
static bool proved(const tt_case *acting)
{
    if (acting->kind == TT_CASE_WIND) return acting->direction == 0.0 || acting->direction == 90.0;
    return acting->kind == TT_CASE_OWN || strcmp(acting->name, "weight") == 0;
}

/* Largest relative difference between the work of these cases' loads and the strain energy of the
 * bars, in both carry models. */
static tt_status energy(const tt_assessment *a, double *most)
{
    for (int carry = 0; carry < TT_MODELS; carry++) {
        for (size_t i = 0; i < a->actions.cases.n; i++) {
            const tt_case *acting = &a->actions.cases.at[i];
            double work, strain;
            if (!proved(acting)) continue;
            const tt_status status =
                tt_frame_energy(a->model->frame[carry], &acting->on,
                                &a->solution.answer[carry][i].state, &work, &strain);
            if (status != TT_OK) return status;
            const double size = fmax(fabs(work), fabs(strain));
            if (size > 0.0) *most = fmax(*most, fabs(work - strain) / size);
        }
    }
    return TT_OK;
}

tt_status tt_assessment_prove(tt_assessment *a)
{
    tt_vec3 centre, force, moment;
    const tt_status status = energy(a, &a->proof.energy);
    if (status != TT_OK) return status;
    tt_case_resultant(a->model, &a->actions.cases.at[TT_NOMINAL], (tt_vec3){0, 0, 0}, &force,
                      &moment);
    a->proof.equilibrium = a->solution.residual;
    a->proof.refinement = a->solution.refinement;
    a->proof.mass_kg[0] = tt_model_mass(a->model, TT_NOMINAL);
    a->proof.mass_kg[1] = tt_frame_mass(a->model->frame[TT_ALONE], &centre);
    a->proof.mass_kg[2] = -force.z / TT_GRAVITY;
    const double all = a->proof.equilibrium + a->proof.refinement + a->proof.energy +
                       a->proof.mass_kg[0] + a->proof.mass_kg[1] + a->proof.mass_kg[2];
    return isfinite(all) ? TT_OK : TT_E_NOT_FINITE;
}
