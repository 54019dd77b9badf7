/* section/solid.c - solid ellipse and box from their widths, m: exact torsion after St-Venant. */
#include "section/parts.h"
#include "section/section.h"

#include <math.h>

/* Shear coefficient of an ellipse loaded along its semi-axis a: Cowper, J. Appl. Mech. 33 (1966),
 * table of K, FROM MEMORY. */
static double ellipse_shear(double a, double b, double nu)
{
    const double p = a * a, q = b * b;
    return 12.0 * (1.0 + nu) * p * (3.0 * p + q) /
           ((40.0 + 37.0 * nu) * p * p + (16.0 + 10.0 * nu) * p * q + nu * q * q);
}

static tt_section solid_ellipse(double wide, double deep, double nu)
{
    const double p = 0.5 * wide, q = 0.5 * deep, area = PI * p * q;
    return (tt_section){
        .area = area,
        .iy = 0.25 * area * q * q,
        .iz = 0.25 * area * p * p,
        /* Timoshenko and Goodier, Theory of Elasticity, 3rd ed., art. 104, FROM MEMORY; the largest
         * stress is at the end of the minor axis. */
        .j = area * p * p * q * q / (p * p + q * q),
        .torsion_modulus = 0.5 * area * fmin(p, q),
        .shear_y = area * ellipse_shear(p, q, nu),
        .shear_z = area * ellipse_shear(q, p, nu),
        .reach_y = p,
        .reach_z = q,
        /* V Q / (I b) at the middle: 4 / (3 A). */
        .peak_shear_y = 4.0 / (3.0 * area),
        .peak_shear_z = 4.0 / (3.0 * area),
        .elliptic = true,
    };
}

/* Torsion of a rectangle, ratio = long / short side >= 1: J = beta long short^3,
 * modulus = alpha long short^2. Timoshenko and Goodier, 3rd ed., art. 109, FROM MEMORY; the sum of
 * tanh / n^5 is taken from its limit 31 zeta(5) / 32, so that a few terms are exact. */
static void rectangle_torsion(double ratio, double *alpha, double *beta)
{
    const double zeta5 = 1.03692775514336992633;
    double fifths = 31.0 / 32.0 * zeta5, squares = 0.0;
    for (int n = 1; n < 30; n += 2) {
        const double grown = exp(fmin(n * PI * ratio, 700.0)), m = n;
        fifths -= 2.0 / (m * m * m * m * m * (grown + 1.0));
        squares += 1.0 / (m * m * cosh(fmin(0.5 * m * PI * ratio, 700.0)));
    }
    *beta = (1.0 - 192.0 / pow(PI, 5.0) / ratio * fifths) / 3.0;
    *alpha = *beta / (1.0 - 8.0 / (PI * PI) * squares);
}

static tt_section solid_box(double wide, double deep)
{
    const double area = wide * deep, across = fmin(wide, deep), along = fmax(wide, deep);
    double alpha = 0.0, beta = 0.0;
    rectangle_torsion(along / across, &alpha, &beta);
    return (tt_section){
        .area = area,
        .iy = area * deep * deep / 12.0,
        .iz = area * wide * wide / 12.0,
        .j = beta * along * across * across * across,
        .torsion_modulus = alpha * along * across * across,
        /* 5/6 by the energy of the parabola of shear, the largest 3/2 of the mean: strength of
         * materials. */
        .shear_y = 5.0 / 6.0 * area,
        .shear_z = 5.0 / 6.0 * area,
        .reach_y = 0.5 * wide,
        .reach_z = 0.5 * deep,
        .peak_shear_y = 1.5 / area,
        .peak_shear_z = 1.5 / area,
    };
}

static double between(double a, double b, double t)
{
    return a + t * (b - a);
}

/* Shear stress from numbers alone, on the safe side (assumptions): torsion T 2 c / J with the
 * smaller reach c, which no bar and no thin tube exceeds (a round bar has T c / J); shear force
 * 1.5 V / A_s (bars and tubes: 1.06 to 1.25), without a shear area 2 V / A (a thin tube). */
static tt_section of_numbers(const tt_outline *outline)
{
    const tt_numbers *a = outline->numbers[0], *b = outline->numbers[1];
    const double t = outline->t;
    tt_section s = {.area = between(a->area, b->area, t),
                    .iy = between(a->iy, b->iy, t),
                    .iz = between(a->iz, b->iz, t),
                    .iyz = between(a->iyz, b->iyz, t),
                    .j = between(a->j, b->j, t),
                    .shear_y = between(a->shear_y, b->shear_y, t),
                    .shear_z = between(a->shear_z, b->shear_z, t),
                    .reach_y = between(a->reach_y, b->reach_y, t),
                    .reach_z = between(a->reach_z, b->reach_z, t)};
    s.torsion_modulus = s.j / (2.0 * fmin(s.reach_y, s.reach_z));
    s.peak_shear_y = s.shear_y > 0.0 ? 1.5 / s.shear_y : 2.0 / s.area;
    s.peak_shear_z = s.shear_z > 0.0 ? 1.5 / s.shear_z : 2.0 / s.area;
    /* No shear strain: so stiff that it cannot be seen beside the bending. */
    if (s.shear_y <= 0.0) s.shear_y = TT_NO_SHEAR_STRAIN * s.area;
    if (s.shear_z <= 0.0) s.shear_z = TT_NO_SHEAR_STRAIN * s.area;
    return s;
}

tt_section tt_section_solid(const tt_outline *outline, double nu)
{
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return (tt_section){0};
    case TT_OUTLINE_ELLIPSE:
        return solid_ellipse(outline->wide, outline->deep, nu);
    case TT_OUTLINE_BOX:
        return solid_box(outline->wide, outline->deep);
    case TT_OUTLINE_TRACE:
        return tt_trace_solid(outline);
    case TT_OUTLINE_NUMBERS:
        return of_numbers(outline);
    }
    return (tt_section){0};
}
