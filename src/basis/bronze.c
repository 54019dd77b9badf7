/* basis/bronze.c - design strength of a cast bronze for elastic checks, from yield and rupture of
 * test bars, the quality of the casting and the efficiency of a seam. Pa. */
#include "basis/inside.h"

#include <math.h>

double tt_bronze_strength(double f_y, double f_u, double quality, double seam, tt_steps *steps)
{
    const double f_d = fmin(f_y / 1.5, f_u / 2.5);
    const double strength = f_d * quality * seam;
    tt_say(steps, TT_S_bronze_strength, "f_d", "Pa", f_d, "min(f_y / 1.5, f_u / 2.5)",
           "min(%.4g / 1.5, %.4g / 2.5)", f_y, f_u);
    tt_say(steps, TT_S_bronze_strength, "f_b", "Pa", strength, "f_d * quality * seam",
           "%.4g * %.3g * %.3g", f_d, quality, seam);
    return strength;
}
