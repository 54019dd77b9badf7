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

tt_section tt_section_solid(const tt_outline *outline, double nu)
{
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return (tt_section){0};
    case TT_OUTLINE_ELLIPSE:
        return solid_ellipse(outline->wide, outline->deep, nu);
    case TT_OUTLINE_BOX:
        return solid_box(outline->wide, outline->deep);
    }
    return (tt_section){0};
}
