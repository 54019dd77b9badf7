/* num/polygon_shape.h - polygons that may be concave: integrals, distance to the edge, largest
 * circle inside, what lies at least so far inside, edges that cross. Any one unit of length.
 * Corners run anticlockwise; corners that coincide are allowed. */
#ifndef TT_NUM_POLYGON_SHAPE_H
#define TT_NUM_POLYGON_SHAPE_H

#include "num/polygon.h"

#include <stdbool.h>

enum { TT_POLYGON_MOST = 200 }; /* corners */

/** Integrals over an area: 1, x, y, x^2, y^2, x y, about the origin. */
typedef struct {
    double area, x, y, xx, yy, xy;
} tt_plane_moments;

void tt_plane_add(tt_plane_moments *sum, double factor, const tt_plane_moments *more);
/** The same area with the origin moved to (x, y). */
tt_plane_moments tt_plane_about(const tt_plane_moments *of, double x, double y);

/** Of a closed polygon; negative when it runs clockwise. */
tt_plane_moments tt_polygon_moments(const tt_vec2 *corners, size_t n);

/** Distance to the nearest edge, positive inside, negative outside. */
double tt_polygon_distance(const tt_vec2 *corners, size_t n, tt_vec2 at);

/** Full extent along the unit direction `way`. */
double tt_polygon_extent(const tt_vec2 *corners, size_t n, tt_vec2 way);

double tt_polygon_perimeter(const tt_vec2 *corners, size_t n);

/** The first two edges that meet elsewhere than at a corner which they share; an edge is named by
 *  its first corner. False: none. */
bool tt_polygon_crossing(const tt_vec2 *corners, size_t n, size_t *one, size_t *other);

/** Radius of the largest circle inside, to 1e-3 of it or better and never too large; centre may be
 *  NULL. */
double tt_polygon_inscribed(const tt_vec2 *corners, size_t n, tt_vec2 *centre);

/** Of all points at least `by` (> 0) inside, in however many parts; round the corners that stand
 *  out into the area by arcs (drawn as chords of ten degrees). n <= TT_POLYGON_MOST. */
tt_plane_moments tt_polygon_inset_moments(const tt_vec2 *corners, size_t n, double by);

/** Each edge moved in by `by`, corners where neighbours meet; false when an edge would vanish. out:
 *  room for n; *left: how many corners are left when those that coincided are one. */
bool tt_polygon_moved(const tt_vec2 *corners, size_t n, double by, tt_vec2 *out, size_t *left);

#endif
