/* frame/points.c - the Gauss-Legendre points of a bar and integrals of the polynomials through
 * them, on 0..1. */
#include "frame/parts.h"

/* Roots of the Legendre polynomial of degree 6 and weights: Abramowitz & Stegun, Handbook of
 * Mathematical Functions, table 25.4, FROM MEMORY, moved to 0..1; a test checks them by the
 * moments. */
const double tt_bar_point[TT_BAR_POINTS] = {
    0.0337652428984239860938492, 0.1693953067668677431693002, 0.3806904069584015456847491,
    0.6193095930415984543152509, 0.8306046932331322568306998, 0.9662347571015760139061508};
const double tt_bar_weight[TT_BAR_POINTS] = {
    0.0856622461895851725201481, 0.1803807865240693037849168, 0.2339569672863455236949352,
    0.2339569672863455236949352, 0.1803807865240693037849168, 0.0856622461895851725201481};

/* Of the shifted Legendre polynomials P0 .. P7 at x, and the integrals of P0 .. P6 from 0 to x.
 * (k + 1) P[k + 1] = (2 k + 1) t P[k] - k P[k - 1], t = 2 x - 1;
 * 2 (2 k + 1) integral of P[k] = P[k + 1] - P[k - 1].
 * Abramowitz & Stegun, tables 22.7 and 22.8, FROM MEMORY */
enum { DEGREES = TT_BAR_POINTS + 2 };
static void legendre(double x, double p[DEGREES])
{
    const double t = 2.0 * x - 1.0;
    p[0] = 1.0;
    p[1] = t;
    for (int k = 1; k + 1 < DEGREES; k++) {
        p[k + 1] = ((2 * k + 1) * t * p[k] - k * p[k - 1]) / (k + 1);
    }
}

static void integrate(double first, const double *p, int n, double *out)
{
    out[0] = first;
    for (int k = 1; k < n; k++) out[k] = (p[k + 1] - p[k - 1]) / (2 * (2 * k + 1));
}

/* The polynomial through 1 at point j is the sum over k of (2 k + 1) weight[j] P[k](point j) P[k]:
 * the rule is exact for the products. */
tt_integrals tt_bar_integrals(double x)
{
    double at_x[DEGREES], at_j[DEGREES], one[DEGREES - 1], two[DEGREES - 2];
    tt_integrals sum = {{0}, {0}};
    legendre(x, at_x);
    integrate(x, at_x, DEGREES - 1, one);
    integrate(0.5 * x * x, one, DEGREES - 2, two);
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        legendre(tt_bar_point[j], at_j);
        for (int k = 0; k < TT_BAR_POINTS; k++) {
            const double part = (2 * k + 1) * tt_bar_weight[j] * at_j[k];
            sum.once[j] += part * one[k];
            sum.twice[j] += part * two[k];
        }
    }
    return sum;
}
