/* section/plastic.c - plastic moduli and the thin round tube, m, N, Pa: closed forms of strength of
 * materials. */
#include "section/plastic.h"
#include "section/parts.h"

#include <math.h>

/* 4 a b^2 / 3 of an ellipse, 2 a b^2 of a box, a and b half its widths. */
static tt_moduli solid(const tt_outline *o)
{
    const double a = 0.5 * o->wide, b = 0.5 * o->deep;
    const double of_kind = o->kind == TT_OUTLINE_ELLIPSE ? 4.0 / 3.0
                           : o->kind == TT_OUTLINE_BOX   ? 2.0
                                                         : 0.0;
    return (tt_moduli){of_kind * a * b * b, of_kind * a * a * b};
}

tt_moduli tt_plastic_moduli(const tt_outline *outer, const tt_outline *inner)
{
    tt_moduli moduli = solid(outer);
    if (inner) {
        const tt_moduli hole = solid(inner);
        moduli.y -= hole.y;
        moduli.z -= hole.z;
    }
    return moduli;
}

/* Means along an edge whose ends stand p and q off the axis: of the distance, of its square with
 * the sign of the side. */
static double mean_distance(double p, double q)
{
    return p * q >= 0.0 ? 0.5 * fabs(p + q) : 0.5 * (p * p + q * q) / fabs(q - p);
}

static double mean_square(double p, double q)
{
    if (p * q >= 0.0) return (p + q < 0.0 ? -1.0 : 1.0) * (p * p + p * q + q * q) / 3.0;
    return (fabs(q) * q * q - fabs(p) * p * p) / (3.0 * (q - p));
}

/* By Green's theorem, z the height over the axis: the area above less that below is minus the
 * closed integral of |z| dx; the first moment of both, minus that of z |z| / 2 dx. */
static double closed(const tt_vec2 *p, size_t n, double axis, double (*mean)(double, double))
{
    double sum = 0.0;
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 a = p[i], b = p[(i + 1) % n];
        sum -= (b.x - a.x) * mean(a.y - axis, b.y - axis);
    }
    return sum;
}

double tt_plastic_of_polygon(const tt_vec2 *corners, size_t n)
{
    double low = HUGE_VAL, high = -HUGE_VAL;
    for (size_t i = 0; i < n; i++) {
        low = fmin(low, corners[i].y);
        high = fmax(high, corners[i].y);
    }
    for (int step = 0; step < 60; step++) {
        const double middle = 0.5 * (low + high);
        if (closed(corners, n, middle, mean_distance) > 0.0)
            low = middle;
        else
            high = middle;
    }
    return 0.5 * closed(corners, n, 0.5 * (low + high), mean_square);
}

/* Horne, Plastic Theory of Structures; Neal, The Plastic Methods of Structural Analysis, FROM
 * MEMORY. Yield in shear: von Mises. */
tt_thin_tube tt_thin_tube_of(double od, double wall, double yield)
{
    const double r = 0.5 * (od - wall), shear = yield / sqrt(3.0);
    return (tt_thin_tube){.n = 2.0 * PI * r * wall * yield,
                          .m = 4.0 * r * r * wall * yield,
                          .t = 2.0 * PI * r * r * wall * shear,
                          .v = 4.0 * r * wall * shear};
}

/* A torque, its shear the same all round, leaves k of the yield for normal stress (lower bound):
 * M = Mp k cos(pi N / (2 k Np)), k = sqrt(1 - (T/Tp)^2): Horne; Neal, FROM MEMORY. */
double tt_thin_tube_moment(const tt_thin_tube *full, double n, double t)
{
    const double sheared = fabs(t) / full->t, pulled = fabs(n) / full->n;
    const double k = sqrt(fmax(0.0, 1.0 - sheared * sheared));
    return pulled < k ? full->m * k * cos(0.5 * PI * pulled / k) : 0.0;
}
