/* section/stress.c - the worst normal and shear stress of a section under forces, Pa. */
#include "section/section.h"

#include <math.h>

tt_section tt_section_off(tt_section section, double y, double z)
{
    section.at_y += y;
    section.at_z += z;
    return section;
}

tt_forces tt_section_forces(const tt_section *section, const tt_forces *forces)
{
    tt_forces about = *forces;
    about.t += section->at_z * about.vy - section->at_y * about.vz;
    about.my -= section->at_z * about.n;
    about.mz += section->at_y * about.n;
    return about;
}

/* The corner of a trace where |z ky - y kz| is largest. */
static void worst_corner(const tt_section *s, tt_fibre *fibre)
{
    tt_vec2 corner[TT_TRACE_MOST];
    double most = -1.0;
    tt_trace_corners(s->trace, s->t, corner);
    for (size_t i = 0; i < s->trace->n; i++) {
        const double y = corner[i].x - s->at_y, z = corner[i].y - s->at_z;
        const double stress = fabs(z * fibre->ky - y * fibre->kz);
        if (stress <= most) continue;
        most = stress;
        fibre->y = y;
        fibre->z = z;
    }
}

/* On an ellipse (exact), at a corner of a box, or at a corner of a trace. E ky and E kz from
 * My = E (iy ky - iyz kz), Mz = E (iz kz - iyz ky). */
tt_fibre tt_section_fibre(const tt_section *s, const tt_forces *f)
{
    const double det = s->iy * s->iz - s->iyz * s->iyz;
    tt_fibre fibre = {.ky = (s->iz * f->my + s->iyz * f->mz) / det,
                      .kz = (s->iy * f->mz + s->iyz * f->my) / det};
    if (s->trace) {
        worst_corner(s, &fibre);
        return fibre;
    }
    fibre.y = fibre.kz > 0.0 ? -s->reach_y : s->reach_y;
    fibre.z = fibre.ky < 0.0 ? -s->reach_z : s->reach_z;
    const double by_y = fabs(fibre.ky) * s->reach_z, by_z = fabs(fibre.kz) * s->reach_y;
    const double both = sqrt(by_y * by_y + by_z * by_z);
    if (s->elliptic && both > 0.0) {
        fibre.y *= by_z / both;
        fibre.z *= by_y / both;
    }
    return fibre;
}

/* Largest normal stress of bending: about principal axes round an ellipse, or at a corner of a box;
 * else at the fibre that is worst. */
static double bending(const tt_section *s, const tt_forces *f)
{
    if (s->trace || s->iyz != 0.0) {
        const tt_fibre worst = tt_section_fibre(s, f);
        return fabs(worst.z * worst.ky - worst.y * worst.kz);
    }
    const double by_y = fabs(f->my) * s->reach_z / s->iy, by_z = fabs(f->mz) * s->reach_y / s->iz;
    return s->elliptic ? sqrt(by_y * by_y + by_z * by_z) : by_y + by_z;
}

tt_stress tt_section_stress(const tt_section *section, const tt_forces *forces)
{
    const tt_forces about = tt_section_forces(section, forces), *f = &about;
    if (!(section->area > 0.0)) {
        /* No part carries nothing, and nothing else. */
        const bool idle = f->n == 0.0 && f->vy == 0.0 && f->vz == 0.0 && f->t == 0.0 &&
                          f->my == 0.0 && f->mz == 0.0;
        const double stress = idle ? 0.0 : HUGE_VAL;
        return (tt_stress){stress, stress, stress};
    }
    const double normal = fabs(f->n) / section->area + bending(section, f);
    const double by_vy = f->vy * section->peak_shear_y, by_vz = f->vz * section->peak_shear_z;
    const double shear =
        fabs(f->t) / section->torsion_modulus + sqrt(by_vy * by_vy + by_vz * by_vz);
    return (tt_stress){normal, shear, sqrt(normal * normal + 3.0 * shear * shear)};
}
