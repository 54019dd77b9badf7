/* section/stress.c - the worst normal and shear stress of a section under forces, Pa. */
#include "section/section.h"

#include <math.h>

/* sigma / E from bending, at the fibre where it is largest: z ky - y kz over an ellipse (exact) or
 * over the corners of a box. E ky and E kz from My = E (iy ky - iyz kz), Mz = E (iz kz - iyz ky).
 */
static double bending(const tt_section *s, const tt_forces *f)
{
    const double det = s->iy * s->iz - s->iyz * s->iyz;
    const double ky = (s->iz * f->my + s->iyz * f->mz) / det;
    const double kz = (s->iy * f->mz + s->iyz * f->my) / det;
    const double by_y = fabs(ky) * s->reach_z, by_z = fabs(kz) * s->reach_y;
    return s->elliptic ? hypot(by_y, by_z) : by_y + by_z;
}

tt_stress tt_section_stress(const tt_section *section, const tt_forces *forces)
{
    const tt_forces *f = forces;
    if (!(section->area > 0.0)) {
        /* No part carries nothing, and nothing else. */
        const bool idle = f->n == 0.0 && f->vy == 0.0 && f->vz == 0.0 && f->t == 0.0 &&
                          f->my == 0.0 && f->mz == 0.0;
        const double stress = idle ? 0.0 : HUGE_VAL;
        return (tt_stress){stress, stress, stress};
    }
    const double normal = fabs(f->n) / section->area + bending(section, f);
    const double shear = fabs(f->t) / section->torsion_modulus +
                         sqrt(f->vy * section->peak_shear_y * f->vy * section->peak_shear_y +
                              f->vz * section->peak_shear_z * f->vz * section->peak_shear_z);
    return (tt_stress){normal, shear, sqrt(normal * normal + 3.0 * shear * shear)};
}
