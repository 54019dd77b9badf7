/* section/box.c - rectangular tube with rounded corners, m: the outside rectangle less the inside
 * one, both with their radius. */
#include "section/parts.h"

#include <math.h>

/* Outside and inside rectangle of a tube, and the radii of their corners. */
typedef struct {
    double wide, deep, wall, outside, inside;
} tube;

static double square(double a)
{
    return a * a;
}

/* A corner's missing piece: its area over r2, and how far its middle lies from the edge, over r. */
static const double missing = 1.0 - 3.14159265358979323846 / 4.0;
static const double from_edge =
    (10.0 - 3.0 * 3.14159265358979323846) / (12.0 - 3.0 * 3.14159265358979323846);

double tt_rounded_area(double wide, double deep, double r)
{
    return wide * deep - 4.0 * missing * r * r;
}

/* Source: EN 10210-2, Annex A, from memory; it follows from geometry. */
double tt_rounded_inertia(double wide, double deep, double r)
{
    const double own = 1.0 / 3.0 - PI / 16.0 - 1.0 / (3.0 * (12.0 - 3.0 * PI));
    return wide * deep * deep * deep / 12.0 -
           4.0 * (own * square(square(r)) + missing * r * r * square(0.5 * deep - from_edge * r));
}

/* First moment of the half above the middle, m3. */
static double half_moment(double wide, double deep, double r)
{
    return wide * deep * deep / 8.0 - 2.0 * missing * r * r * (0.5 * deep - from_edge * r);
}

static double inertia(const tube *t, double wide, double deep)
{
    return tt_rounded_inertia(wide, deep, t->outside) -
           tt_rounded_inertia(wide - 2.0 * t->wall, deep - 2.0 * t->wall, t->inside);
}

/* V Q / (I 2 t) at the middle of the depth. */
static double peak_shear(const tube *t, double wide, double deep)
{
    const double q = half_moment(wide, deep, t->outside) -
                     half_moment(wide - 2.0 * t->wall, deep - 2.0 * t->wall, t->inside);
    return q / (inertia(t, wide, deep) * 2.0 * t->wall);
}

/* EN 10210-2 and EN 10219-2, Annex A, FROM MEMORY: the mid-line goes round corners of the mean
 * radius. */
static void set_torsion(tt_section *section, const tube *t)
{
    const double r = 0.5 * (t->outside + t->inside), w = t->wide - t->wall, d = t->deep - t->wall;
    const double length = 2.0 * (w + d) - 2.0 * r * (4.0 - PI);
    const double inside = w * d - r * r * (4.0 - PI);
    tt_mid_line_torsion(section, inside, length, t->wall);
}

double tt_box_tube_area(double wide, double deep, double wall, double corner)
{
    const double in = fmax(corner - wall, 0.0);
    return tt_rounded_area(wide, deep, corner) -
           tt_rounded_area(wide - 2.0 * wall, deep - 2.0 * wall, in);
}

tt_section tt_section_box_tube(double wide, double deep, double wall, double corner, double nu)
{
    const tt_outline sharp = tt_outline_of(TT_OUTLINE_BOX, wide, deep);
    if (wall >= 0.5 * fmin(wide, deep)) return tt_section_solid(&sharp, nu);
    corner = fmin(corner, 0.5 * fmin(wide, deep));
    const tube t = {wide, deep, wall, corner, fmax(corner - wall, 0.0)};
    tt_section section = tt_section_shell(&sharp, wall, nu);
    /* shear areas stay those of sharp corners: the sides carry the shear, and the rounded ones have
     * by the energy of the shear flow a few per cent more */
    section.area = tt_box_tube_area(wide, deep, wall, corner);
    section.iy = inertia(&t, wide, deep);
    section.iz = inertia(&t, deep, wide);
    section.peak_shear_z = peak_shear(&t, wide, deep);
    section.peak_shear_y = peak_shear(&t, deep, wide);
    set_torsion(&section, &t);
    return section;
}
