/* check/share.c - what each part of a cut must take, and the lines of calculation on it. */
#include "check/parts.h"

#include <math.h>
#include <stdio.h>

tt_forces tt_shared(const tt_forces *whole, const double share[6])
{
    return (tt_forces){whole->n * share[0], whole->vy * share[1], whole->vz * share[2],
                       whole->t * share[3], whole->my * share[4], whole->mz * share[5]};
}

/* By the file, else by the alloy: a full seam, and one of which nothing is known. */
double tt_seam_at(const tt_check_input *in, const tt_cut *cut)
{
    if (!cut->seam_possible || cut->bronze.area <= 0.0) return 1.0;
    if (cut->seam && cut->seam->efficiency.origin) return cut->seam->efficiency.is;
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
    if (at->cut->bronze.area <= 0.0 || at->carry == TT_ALONE ||
        tt_seam_at(at->in, at->cut) <= 0.0) {
        return at->whole;
    }
    return tt_shared(&at->whole, at->cut->share_armature);
}

static double component(const tt_forces *f, int i)
{
    const double all[] = {f->n, f->vy, f->vz, f->t, f->my, f->mz};
    return all[i];
}

/* The unit cases that the worst is made of: weight first, then its parts, at its own cut. */
enum { UNITS = 12 };
typedef struct {
    double factor[UNITS];
    tt_forces force[UNITS];
    size_t n;
} units;

static void add_unit(const tt_check_input *in, const tt_worst *worst, size_t acting, double factor,
                     units *all)
{
    if (all->n == UNITS || factor == 0.0) return;
    all->factor[all->n] = factor;
    all->force[all->n++] = tt_answer_forces_at(in->model, in->actions, in->solution, worst->carry,
                                               acting, &worst->cut);
}

/* What rounding leaves where nothing acts: under a thousand-millionth of the largest of its kind,
 * forces together and moments together, of all these unit cases. */
static double noise_of(const units *all, int i)
{
    const int first = i < 3 ? 0 : 3;
    double largest = 0.0;
    for (size_t k = 0; k < all->n; k++) {
        for (int j = first; j < first + 3; j++)
            largest = fmax(largest, fabs(component(&all->force[k], j)));
    }
    return 1e-9 * largest;
}

/* "1.35*(-345.8) + 1.5*(12.6)" */
static void sum_of_units(const units *all, int i, char *line, size_t size)
{
    const double noise = noise_of(all, i);
    size_t at = 0;
    line[0] = '\0';
    for (size_t k = 0; k < all->n && at < size; k++) {
        const double unit = component(&all->force[k], i);
        const int n = snprintf(line + at, size - at, "%s%.6g*(%.6g)", k ? " + " : "",
                               all->factor[k], fabs(unit) < noise ? 0.0 : unit);
        at += n > 0 ? (size_t)n : 0;
    }
}

void tt_steps_forces(tt_steps *steps, const tt_check_input *in, const tt_worst *worst,
                     const tt_forces *on)
{
    static const char *const symbol[] = {"N", "V_y", "V_z", "T", "M_y", "M_z"};
    static const char *const of_part[] = {"N_p", "V_yp", "V_zp", "T_p", "M_yp", "M_zp"};
    static const char *const unit[] = {"N", "N", "N", "N.m", "N.m", "N.m"};
    const tt_source *statics = tt_source_of(TT_S_statics), *elastic = tt_source_of(TT_S_elasticity);
    units all = {.n = 0};
    add_unit(in, worst, (size_t)worst->pattern, worst->together->weight, &all);
    for (size_t i = 0; i < worst->together->parts; i++) {
        add_unit(in, worst, worst->together->part[i].acting, worst->together->part[i].factor, &all);
    }
    for (int i = 0; i < 6; i++) {
        char line[400];
        const double sum = component(&worst->whole, i), part = component(on, i);
        const double whole = fabs(sum) < noise_of(&all, i) ? 0.0 : sum;
        sum_of_units(&all, i, line, sizeof line);
        tt_step_add(steps, symbol[i], "sum of factor * unit case", whole, unit[i], statics, "%s",
                    line);
        if (whole == 0.0) continue; /* nothing to share */
        tt_step_add(steps, of_part[i], "share by stiffness * whole", part, unit[i], elastic,
                    "%.4f * %.6g", part / whole, whole);
    }
}

static void section_lines(tt_steps *steps, const tt_section *s)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    tt_step_add(steps, "A", NULL, s->area, "m2", elastic, NULL);
    tt_step_add(steps, "I_y", NULL, s->iy, "m4", elastic, NULL);
    tt_step_add(steps, "I_z", NULL, s->iz, "m4", elastic, NULL);
    tt_step_add(steps, "c_y", NULL, s->reach_y, "m", elastic, NULL);
    tt_step_add(steps, "c_z", NULL, s->reach_z, "m", elastic, NULL);
    tt_step_add(steps, "W_t", NULL, s->torsion_modulus, "m3", elastic, NULL);
    tt_step_add(steps, "k_y", "largest shear stress for a unit force along y", s->peak_shear_y,
                "1/m2", elastic, NULL);
    tt_step_add(steps, "k_z", "largest shear stress for a unit force along z", s->peak_shear_z,
                "1/m2", elastic, NULL);
}

/* The same figures as tt_section_stress, line by line; the last line is its own result. */
void tt_steps_stress(tt_steps *steps, const tt_section *s, const tt_forces *f,
                     const tt_stress *stress)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    const double axial = fabs(f->n) / s->area, twist = fabs(f->t) / s->torsion_modulus;
    section_lines(steps, s);
    tt_step_add(steps, "sigma_N", "|N_p|/A", axial, "Pa", elastic, "%.6g/%.6g", fabs(f->n),
                s->area);
    tt_step_add(steps, "sigma_M",
                s->elliptic ? "sqrt((M_yp c_z/I_y)^2 + (M_zp c_y/I_z)^2)"
                            : "|M_yp| c_z/I_y + |M_zp| c_y/I_z",
                stress->normal - axial, "Pa", elastic,
                s->elliptic ? "sqrt((%.6g*%.6g/%.6g)^2 + (%.6g*%.6g/%.6g)^2)"
                            : "%.6g*%.6g/%.6g + %.6g*%.6g/%.6g",
                fabs(f->my), s->reach_z, s->iy, fabs(f->mz), s->reach_y, s->iz);
    tt_step_add(steps, "tau_T", "|T_p|/W_t", twist, "Pa", elastic, "%.6g/%.6g", fabs(f->t),
                s->torsion_modulus);
    tt_step_add(steps, "tau_V", "sqrt((V_yp k_y)^2 + (V_zp k_z)^2)", stress->shear - twist, "Pa",
                elastic, "sqrt((%.6g*%.6g)^2 + (%.6g*%.6g)^2)", fabs(f->vy), s->peak_shear_y,
                fabs(f->vz), s->peak_shear_z);
    tt_step_add(steps, "sigma_v", "sqrt((sigma_N + sigma_M)^2 + 3 (tau_T + tau_V)^2)",
                stress->equivalent, "Pa", tt_source_of(TT_S_von_mises),
                "sqrt((%.6g + %.6g)^2 + 3*(%.6g + %.6g)^2)", axial, stress->normal - axial, twist,
                stress->shear - twist);
}
