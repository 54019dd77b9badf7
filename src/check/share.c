/* check/share.c - what each part of a cut must take, and the lines of calculation on it. */
#include "check/parts.h"

tt_forces tt_shared(const tt_forces *whole, const double share[6])
{
    return (tt_forces){whole->n * share[0], whole->vy * share[1], whole->vz * share[2],
                       whole->t * share[3], whole->my * share[4], whole->mz * share[5]};
}

/* Seams that nobody described are unknown: judged as seams, at the efficiency of the alloy. */
double tt_seam_at(const tt_check_input *in, const tt_cut *cut)
{
    if (!cut->seam_possible || cut->bronze.area <= 0.0) return 1.0;
    const tt_metal *metal = &in->piece->metals.at[in->piece->segments.at[cut->segment].alloy];
    return metal->fact[TT_P_SEAM].has ? metal->fact[TT_P_SEAM].value : 0.0;
}

/* Where a seam counts nothing the armature is judged for everything in both carry models. */
tt_forces tt_on_bronze(const tt_loaded_cut *at)
{
    if (at->cut->bronze.area <= 0.0) return (tt_forces){0};
    if (at->cut->armature.area <= 0.0) return at->whole;
    if (at->carry == TT_ALONE || tt_seam_at(at->in, at->cut) <= 0.0) return (tt_forces){0};
    return tt_shared(&at->whole, at->cut->share_bronze);
}

tt_forces tt_on_armature(const tt_loaded_cut *at)
{
    if (at->cut->armature.area <= 0.0) return (tt_forces){0};
    if (at->cut->bronze.area <= 0.0 || at->carry == TT_ALONE || tt_seam_at(at->in, at->cut) <= 0.0) {
        return at->whole;
    }
    return tt_shared(&at->whole, at->cut->share_armature);
}

void tt_steps_forces(tt_steps *steps, const tt_forces *f)
{
    const tt_source *statics = tt_source_of(TT_S_statics);
    tt_step_add(steps, "N", NULL, f->n, "N", statics, NULL);
    tt_step_add(steps, "V_y", NULL, f->vy, "N", statics, NULL);
    tt_step_add(steps, "V_z", NULL, f->vz, "N", statics, NULL);
    tt_step_add(steps, "T", NULL, f->t, "N.m", statics, NULL);
    tt_step_add(steps, "M_y", NULL, f->my, "N.m", statics, NULL);
    tt_step_add(steps, "M_z", NULL, f->mz, "N.m", statics, NULL);
}

void tt_steps_stress(tt_steps *steps, const tt_section *s, const tt_forces *f, const tt_stress *stress)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    tt_step_add(steps, "A", NULL, s->area, "m2", elastic, NULL);
    tt_step_add(steps, "I_y", NULL, s->iy, "m4", elastic, NULL);
    tt_step_add(steps, "I_z", NULL, s->iz, "m4", elastic, NULL);
    tt_step_add(steps, "W_t", NULL, s->torsion_modulus, "m3", elastic, NULL);
    tt_step_add(steps, "sigma",
                s->elliptic ? "|N|/A + sqrt((M_y c_z/I_y)^2 + (M_z c_y/I_z)^2)"
                            : "|N|/A + |M_y| c_z/I_y + |M_z| c_y/I_z",
                stress->normal, "Pa", elastic, "%.5g/%.5g + M_y %.5g*%.5g/%.5g with M_z %.5g*%.5g/%.5g",
                f->n, s->area, f->my, s->reach_z, s->iy, f->mz, s->reach_y, s->iz);
    tt_step_add(steps, "tau",
                s->elliptic ? "|T|/W_t + sqrt((V_y k_y)^2 + (V_z k_z)^2)" : "|T|/W_t + |V_y| k_y + |V_z| k_z",
                stress->shear, "Pa", elastic, "%.5g/%.5g + V_y %.5g*%.5g with V_z %.5g*%.5g", f->t,
                s->torsion_modulus, f->vy, s->peak_shear_y, f->vz, s->peak_shear_z);
    tt_step_add(steps, "sigma_v", "sqrt(sigma^2 + 3 tau^2)", stress->equivalent, "Pa",
                tt_source_of(TT_S_von_mises), "sqrt((%.5g)^2 + 3*(%.5g)^2)", stress->normal, stress->shear);
}
