/* basis/sway.c - the parts of a gust factor that both bases write alike: how much of a gust a body
 * feels at once, and what the air does to its swaying. SI; damping as logarithmic decrement. */
#include "basis/inside.h"

#include <math.h>

double tt_gust_admittance(double eta)
{
    if (eta < 1e-3) return 1.0 - 2.0 * eta / 3.0 + eta * eta / 3.0;
    /* EN 1991-1-4 (B.7); ASCE 7 Eq. 26.11-15. */
    return 1.0 / eta + expm1(-2.0 * eta) / (2.0 * eta * eta);
}

double tt_air_damping(const tt_wind_body *body, double air, double speed)
{
    if (body->frequency <= 0.0 || body->mass_modal <= 0.0) return 0.0;
    /* EN 1991-1-4 (F.18), summed over a body of many parts. */
    return air * speed * body->drag_area_modal / (2.0 * body->frequency * body->mass_modal);
}

double tt_drag_oval(double across, double along, tt_steps *steps)
{
    const double c_f = across > along ? fmin(2.0, 1.2 + 0.4 * (across / along - 1.0)) : 1.2;
    tt_say(steps, TT_S_drag_oval, "cf", "", c_f, "min(2.0, 1.2 + 0.4 (b / d - 1)), not below 1.2",
           "b = %.4g, d = %.4g", across, along);
    return c_f;
}
