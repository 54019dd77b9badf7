/* check/stress.c - lines of calculation on the stress of a part of a cut, Pa: the same figures as
 * tt_section_stress, line by line. */
#include "check/parts.h"

#include <math.h>

static void section_lines(tt_steps *steps, const tt_section *s)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    tt_step_add(steps, "A", NULL, s->area, "m2", elastic, NULL);
    tt_step_add(steps, "I_y", NULL, s->iy, "m4", elastic, NULL);
    tt_step_add(steps, "I_z", NULL, s->iz, "m4", elastic, NULL);
    if (s->iyz != 0.0) tt_step_add(steps, "I_yz", NULL, s->iyz, "m4", elastic, NULL);
    tt_step_add(steps, "c_y", NULL, s->reach_y, "m", elastic, NULL);
    tt_step_add(steps, "c_z", NULL, s->reach_z, "m", elastic, NULL);
    tt_step_add(steps, "W_t", NULL, s->torsion_modulus, "m3", elastic, NULL);
    tt_step_add(steps, "k_y", "largest shear stress for a unit force along y", s->peak_shear_y,
                "1/m2", elastic, NULL);
    tt_step_add(steps, "k_z", "largest shear stress for a unit force along z", s->peak_shear_z,
                "1/m2", elastic, NULL);
}

/* What a part beside the axis feels about its own centroid. */
static void lever_lines(tt_steps *steps, const tt_section *s, const tt_forces *f,
                        const tt_forces *own)
{
    const tt_source *statics = tt_source_of(TT_S_statics);
    if (s->at_y == 0.0 && s->at_z == 0.0) return;
    tt_step_add(steps, "T_c", "T_p - y_c V_zp + z_c V_yp", own->t, "N.m", statics,
                "%.6g - %.6g*(%.6g) + %.6g*(%.6g)", f->t, s->at_y, f->vz, s->at_z, f->vy);
    tt_step_add(steps, "M_yc", "M_yp - z_c N_p", own->my, "N.m", statics, "%.6g - %.6g*(%.6g)",
                f->my, s->at_z, f->n);
    tt_step_add(steps, "M_zc", "M_zp + y_c N_p", own->mz, "N.m", statics, "%.6g + %.6g*(%.6g)",
                f->mz, s->at_y, f->n);
}

/* Bending about axes that are no principal ones, or of a trace: at its worst corner. */
static void bending_at_corner(tt_steps *steps, const tt_section *s, const tt_forces *f,
                              double stress)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    const tt_fibre worst = tt_section_fibre(s, f);
    tt_step_add(steps, "g_y", "(I_z M_y + I_yz M_z)/(I_y I_z - I_yz^2)", worst.ky, "Pa/m", elastic,
                "(%.6g*(%.6g) + %.6g*(%.6g))/(%.6g*%.6g - (%.6g)^2)", s->iz, f->my, s->iyz, f->mz,
                s->iy, s->iz, s->iyz);
    tt_step_add(steps, "g_z", "(I_y M_z + I_yz M_y)/(I_y I_z - I_yz^2)", worst.kz, "Pa/m", elastic,
                "(%.6g*(%.6g) + %.6g*(%.6g))/(%.6g*%.6g - (%.6g)^2)", s->iy, f->mz, s->iyz, f->my,
                s->iy, s->iz, s->iyz);
    tt_step_add(steps, "sigma_M", "|z g_y - y g_z| at the worst corner", stress, "Pa", elastic,
                "|%.6g*(%.6g) - %.6g*(%.6g)|", worst.z, worst.ky, worst.y, worst.kz);
}

static void bending_lines(tt_steps *steps, const tt_section *s, const tt_forces *f, double stress)
{
    if (s->trace || s->iyz != 0.0) {
        bending_at_corner(steps, s, f, stress);
        return;
    }
    const bool on_axis = s->at_y == 0.0 && s->at_z == 0.0;
    const char *round = on_axis ? "sqrt((M_yp c_z/I_y)^2 + (M_zp c_y/I_z)^2)"
                                : "sqrt((M_yc c_z/I_y)^2 + (M_zc c_y/I_z)^2)";
    const char *box =
        on_axis ? "|M_yp| c_z/I_y + |M_zp| c_y/I_z" : "|M_yc| c_z/I_y + |M_zc| c_y/I_z";
    tt_step_add(steps, "sigma_M", s->elliptic ? round : box, stress, "Pa",
                tt_source_of(TT_S_elasticity),
                s->elliptic ? "sqrt((%.6g*%.6g/%.6g)^2 + (%.6g*%.6g/%.6g)^2)"
                            : "%.6g*%.6g/%.6g + %.6g*%.6g/%.6g",
                fabs(f->my), s->reach_z, s->iy, fabs(f->mz), s->reach_y, s->iz);
}

void tt_steps_stress(tt_steps *steps, const tt_section *s, const tt_forces *forces,
                     const tt_stress *stress)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    const tt_forces about = tt_section_forces(s, forces), *f = &about;
    const double axial = fabs(f->n) / s->area, twist = fabs(f->t) / s->torsion_modulus;
    section_lines(steps, s);
    lever_lines(steps, s, forces, f);
    tt_step_add(steps, "sigma_N", "|N_p|/A", axial, "Pa", elastic, "%.6g/%.6g", fabs(f->n),
                s->area);
    bending_lines(steps, s, f, stress->normal - axial);
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
