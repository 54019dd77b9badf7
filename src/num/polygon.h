/* num/polygon.h - points and polygons of the plane: hull, area, distance to an edge, inset, least
 * width. Lengths in any one unit. Corners run anticlockwise; a convex polygon has no three in line.
 */
#ifndef TT_NUM_POLYGON_H
#define TT_NUM_POLYGON_H

#include <stddef.h>

typedef struct {
    double x, y;
} tt_vec2;

/** Convex hull, anticlockwise from the leftmost (lowest of these) point; points within 1e-12 of the
 *  extent of a straight edge are left out. hull: room for 2 n + 1. Returns the number of corners:
 *  1 when all points are one, 2 when all are in line. */
size_t tt_hull(const tt_vec2 *points, size_t n, tt_vec2 *hull);

/** Area, positive when anticlockwise, and centroid (NULL: not wanted; of an area of nil the mean of
 *  the corners). */
double tt_polygon_area(const tt_vec2 *corners, size_t n, tt_vec2 *centroid);

/** Distance to the nearest edge of a convex polygon, positive inside, negative outside (and for a
 *  polygon of one or two corners). edge (NULL: not wanted): the one from corner `edge` to the next.
 */
double tt_convex_distance(const tt_vec2 *corners, size_t n, tt_vec2 at, size_t *edge);

/** The convex polygon of all points at least `by` (>= 0) inside. out: room for 4 n. Returns the
 *  number of corners, 0 when nothing is left. */
size_t tt_convex_inset(const tt_vec2 *corners, size_t n, double by, tt_vec2 *out);

/** Least distance between two parallel lines with the convex polygon between; 0 for a line. */
double tt_convex_width(const tt_vec2 *corners, size_t n);

#endif
