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

static double through(int j, double x)
{
    double product = 1.0;
    for (int k = 0; k < TT_BAR_POINTS; k++) {
        if (k == j) continue;
        product *= (x - tt_bar_point[k]) / (tt_bar_point[j] - tt_bar_point[k]);
    }
    return product;
}

/* The rule is exact to degree 11, hence for these of degree 5 and 6. */
void tt_bar_integrals(double x, double once[TT_BAR_POINTS], double twice[TT_BAR_POINTS])
{
    for (int j = 0; j < TT_BAR_POINTS; j++) {
        once[j] = twice[j] = 0.0;
        for (int i = 0; i < TT_BAR_POINTS; i++) {
            const double part = x * tt_bar_weight[i] * through(j, x * tt_bar_point[i]);
            once[j] += part;
            twice[j] += part * x * (1.0 - tt_bar_point[i]);
        }
    }
}
