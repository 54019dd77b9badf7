/* section/tube.c - round tube and bar from outside diameter and wall, m: closed forms. */
#include "section/section.h"
#include "section/parts.h"

#include <math.h>

/* Shear coefficient of a hollow circle, m = bore / outside: Cowper, J. Appl. Mech. 33 (1966), table
 * of K, FROM MEMORY. */
static double tube_shear(double m, double nu)
{
    const double p = (1.0 + m * m) * (1.0 + m * m);
    return 6.0 * (1.0 + nu) * p / ((7.0 + 6.0 * nu) * p + (20.0 + 12.0 * nu) * m * m);
}

tt_section tt_section_tube(double od, double wall, double nu)
{
    if (!(od > 0.0) || !(wall > 0.0)) return (tt_section){0};
    const double outer = 0.5 * od, inner = fmax(0.0, outer - wall), thick = outer - inner;
    const double squares = outer * outer + inner * inner;
    const double area = PI * thick * (outer + inner), i = 0.25 * area * squares;
    const double shear = area * tube_shear(inner / outer, nu);
    /* Q / (I 2 t) at the neutral axis, Q = (2/3)(outer^3 - inner^3): strength of materials. */
    const double peak = (squares + outer * inner) / (3.0 * i);
    return (tt_section){
        .area = area,
        .iy = i,
        .iz = i,
        .j = 2.0 * i,
        .shear_y = shear,
        .shear_z = shear,
        .reach_y = outer,
        .reach_z = outer,
        .torsion_modulus = 2.0 * i / outer,
        .peak_shear_y = peak,
        .peak_shear_z = peak,
        .elliptic = true,
    };
}
