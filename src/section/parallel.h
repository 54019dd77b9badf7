/* section/parallel.h - inside the module: the curve parallel to an ellipse at a depth inside it,
 * and the integrals over the strip between the two and along the curve. Any one unit of length.
 *
 * Semi-axes a >= b, a along x. In the first quadrant the point at depth r below the ellipse at
 * (a cos u, b sin u) is x = cos u (a - r b / w), y = sin u (b - r a / w), where
 * w = sqrt(a^2 sin^2 u + b^2 cos^2 u) = ds / du; the strip has dA = (w - r a b / w^2) dr du.
 * y falls below 0 at depth b w / a: there the curve is trimmed. The least such depth, b^2 / a, is
 * the radius of curvature at the end of the major axis. */
#ifndef TT_SECTION_PARALLEL_H
#define TT_SECTION_PARALLEL_H

/** Of one quadrant: length or area, its first and second moments in x and y. */
typedef struct {
    double size, x, y, xx, yy;
} tt_moments;

typedef struct {
    tt_moments trimmed; /* strip where the curve is trimmed away: down to the major axis */
    tt_moments wall;    /* strip of full depth */
    double tip;         /* from the end of the major axis to the curve, along that axis */
} tt_strip;

/** One quadrant of the strip between ellipse and parallel curve, 0 < depth < b. */
tt_strip tt_parallel_strip(double a, double b, double depth);

typedef struct {
    tt_moments line; /* one quadrant */
    /* shear area / (length * thickness) of a thin wall along the curve, load along x, y */
    double shear_x, shear_y;
} tt_midline;

tt_midline tt_parallel_line(double a, double b, double depth);

#endif
