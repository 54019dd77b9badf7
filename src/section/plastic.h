/* section/plastic.h - sections of which every fibre yields: plastic moduli, m3, and what a thin
 * round tube carries, N and N.m. Not used by the checks, which are elastic. */
#ifndef TT_SECTION_PLASTIC_H
#define TT_SECTION_PLASTIC_H

#include "section/section.h"

/** Plastic moduli about local y and z. */
typedef struct {
    double y, z; /* m3 */
} tt_moduli;

/** Of an ellipse or a box; with `inner` (NULL: none) of what lies between it and an inner one of
 *  its kind and middle. Nil for other outlines. */
tt_moduli tt_plastic_moduli(const tt_outline *outer, const tt_outline *inner);

/** Of a polygon (anticlockwise) about the axis along x that halves its area; any one unit. */
double tt_plastic_of_polygon(const tt_vec2 *corners, size_t n);

/** A thin round tube that yields all round, by its radius to the middle of the wall: normal force,
 *  moment, torque and shear force, each alone. */
typedef struct {
    double n, m, t, v; /* N, N.m */
} tt_thin_tube;
tt_thin_tube tt_thin_tube_of(double od, double wall, double yield);

/** The moment left beside a normal force and a torque (of either sign), N.m; nil where these are
 *  too much alone. Moments about two axes count as their vector sum. Of a tube that is not thin it
 *  is less than it carries: by 0.5 % of m for a wall of a twelfth of the diameter. */
double tt_thin_tube_moment(const tt_thin_tube *full, double n, double t);

#endif
