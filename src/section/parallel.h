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

enum { TT_QUADRANT_MOST = 64 };

/** A point of the ellipse and the du it stands for; h = tan(v / 2), tan v = sqrt(a / b) tan u. */
typedef struct {
    double h, cos, sin, w, du;
} tt_ellipse_node;

/** The nodes of a quadrant of an ellipse, a >= b, from h = low to the end of the minor axis. */
typedef struct {
    double a, b, slope, low;
    int n;
    tt_ellipse_node node[TT_QUADRANT_MOST];
} tt_quadrant;

void tt_quadrant_of(double a, double b, tt_quadrant *q);

/** One quadrant of the strip between ellipse and parallel curve, 0 < depth < b. */
tt_strip tt_parallel_strip(const tt_quadrant *q, double depth);

/** One quadrant of the curve itself. */
tt_moments tt_parallel_line(const tt_quadrant *q, double depth);

/** Shear area / (length * thickness) of a thin wall along the curve, load along x, y. */
typedef struct {
    double x, y;
} tt_shear_flow;

tt_shear_flow tt_parallel_flow(const tt_quadrant *q, double depth, const tt_moments *line);

#endif
