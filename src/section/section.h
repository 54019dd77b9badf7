/* section/section.h - from an outline and a wall to area, second moments, torsion and shear, and
 * from section forces to stress. Metres throughout; nothing here knows bronze.
 *
 * Local axes of a cut: x along the limb, y across (wide), z front to back (deep).
 * iyz = +integral of y z dA. sigma = E (e0 + z ky - y kz); My = integral of z sigma dA,
 * Mz = -integral of y sigma dA; T right-handed about +x. */
#ifndef TT_SECTION_SECTION_H
#define TT_SECTION_SECTION_H

#include "base/pool.h"
#include "num/polygon_shape.h"
#include "tiptoe/status.h"

#include <stdbool.h>

typedef enum {
    TT_OUTLINE_NONE,    /* no bronze here */
    TT_OUTLINE_ELLIPSE, /* round, oval, girth */
    TT_OUTLINE_BOX,     /* rectangle, sharp corners */
    TT_OUTLINE_TRACE,   /* closed polygon; a box with rounded corners is one */
    TT_OUTLINE_NUMBERS  /* properties given by an engineer */
} tt_outline_kind;

enum { TT_TRACE_MOST = TT_POLYGON_MOST, TT_TRACE_STATIONS = 5 };

/** A polygon that changes into another along a segment, corner to corner; x of a corner is the
 *  local y, y the local z, m, anticlockwise, from the axis of the segment. */
typedef struct {
    size_t n;
    const tt_vec2 *from, *to;
    double solid_j[TT_TRACE_STATIONS]; /* m4, of the solid, at equal steps from end to end */
    double j_error;                    /* of these, relative: how much the last refinement moved */
    bool clockwise;                    /* as it was drawn, before it was turned round */
} tt_trace;

/** What an engineer says of a section: m2, m4, m. A shear area of nil: no shear strain that way. */
typedef struct {
    double area, iy, iz, iyz, j, shear_y, shear_z, reach_y, reach_z;
} tt_numbers;

/** Outside of the bronze: wide along y, deep along z, m, > 0 unless NONE. Of a trace and of numbers
 *  what lies between two ends is found by t. */
typedef struct {
    tt_outline_kind kind;
    double wide, deep;
    double corner; /* of a box: radius of its corners; > 0 only with a trace of it */
    double t;      /* from one end, 0, to the other, 1 */
    const tt_trace *trace;
    const tt_numbers *numbers[2]; /* at both ends */
} tt_outline;

/** An ellipse, or a box, of these widths. */
tt_outline tt_outline_of(tt_outline_kind kind, double wide, double deep);

/** A trace in the pool from corners as drawn (anticlockwise, n <= TT_TRACE_MOST): moved so that at
 *  each end the centroid of the metal of that wall (nil or closing: solid) lies on the axis;
 * torsion of the solid solved at the stations. NULL without memory. */
const tt_trace *tt_trace_new(tt_pool *pool, const tt_vec2 *from, const tt_vec2 *to, size_t n,
                             const double wall[2]);

/** The corners at t, into out[trace->n]. */
void tt_trace_corners(const tt_trace *trace, double t, tt_vec2 *out);

/** A box with rounded corners as a polygon (corner >= 0, not over half the smaller width): always
 *  TT_ROUNDED_CORNERS corners, some in one spot when corner is nil. */
enum { TT_ROUNDED_CORNERS = 4 * 13 };
void tt_rounded_box(double wide, double deep, double corner, tt_vec2 *out);

/** St-Venant's torsion constant of a solid polygon (anticlockwise, simple), m4, and how much the
 *  last refinement moved it, relative. False without memory. */
bool tt_torsion_of_solid(const tt_vec2 *corners, size_t n, double *j, double *error);

/** The ellipse of this perimeter that is `deep` deep (deep <= 0: a circle). False when no ellipse
 *  has that girth and depth (girth <= 2 * deep). Solved to 1e-12 of the girth. */
bool tt_outline_of_girth(double girth, double deep, tt_outline *out);

/** Between two ends of one kind, t in 0..1: widths, corners and numbers linear. */
tt_outline tt_outline_between(const tt_outline *a, const tt_outline *b, double t);

double tt_outline_area(const tt_outline *outline);
double tt_outline_perimeter(const tt_outline *outline);

/** Full extent of the outline along the unit direction (uy, uz), m; of numbers that of the box of
 *  their widths, which is never too small. */
double tt_outline_width(const tt_outline *outline, double uy, double uz);

/** Largest of an outline's widths over the one at right angles to it, looked for every 5 degrees.
 */
double tt_outline_flatness(const tt_outline *outline);

/** Distance from a place inside to the outside, m; negative outside. Numbers: as the ellipse of
 * their widths. */
double tt_outline_depth(const tt_outline *outline, double y, double z);

/** Diameter of the largest circle inside the inside curve of a wall (0 when the wall closes it). */
double tt_outline_bore(const tt_outline *outline, double wall);

/** Area of the shell of a wall, m2: what tt_section_shell gives, by closed form where there is one
 *  (an ellipse whose inside is not trimmed: perimeter * wall - pi wall^2). */
double tt_outline_shell_area(const tt_outline *outline, double wall);

/** The least wall that closes the outline, m: the radius of the largest circle in it. Infinite for
 *  numbers, to which no wall belongs. */
double tt_outline_closing_wall(const tt_outline *outline);

/** Properties of one part of a cut, about its own centroid. All zero for no part. */
typedef struct {
    double area;             /* m2 */
    double at_y, at_z;       /* m, of the centroid from the axis of the segment */
    double iy, iz, iyz;      /* m4 */
    double j;                /* m4, St-Venant */
    double shear_y, shear_z; /* m2, shear areas (stiffness) along y and z */
    double shear_yz;         /* m2: Vy = G (shear_y gamma_y + shear_yz gamma_z), likewise Vz */
    double reach_y, reach_z; /* m, largest |y|, |z| of a fibre */
    /* what stress needs */
    double torsion_modulus;            /* m3: largest shear stress = T / torsion_modulus */
    double peak_shear_y, peak_shear_z; /* 1/m2: largest shear stress = V * peak_shear */
    bool elliptic; /* bending combines as on an ellipse; else on a box's corners, or on a trace's */
    const tt_trace *trace;
    double t; /* of the trace */
} tt_section;

/** Shear area over area that stands for no shear strain. */
#define TT_NO_SHEAR_STRAIN 1e7

/** A solid outline. nu: Poisson's ratio, for the shear areas (Cowper). */
tt_section tt_section_solid(const tt_outline *outline, double nu);

/** A hollow outline, one wall all round (of an ellipse the true parallel curve, trimmed). A wall
 *  that closes the outline gives the solid. Torsion: 4 Am^2 t/U + U t^3/3 on the mid-line (exact
 *  for a circle), never more than the solid. Shear areas: a circle after Cowper (thin, nu = 0.3:
 *  0.53 of the area), others by the energy of the shear flow (a thin circle would get 0.50). */
tt_section tt_section_shell(const tt_outline *outline, double wall, double nu);

/** The same without shear areas (nil), for who asks for stress alone: about half the work. */
tt_section tt_section_shell_for_stress(const tt_outline *outline, double wall);

/** The same section `y`, `z` off the axis of its segment. */
tt_section tt_section_off(tt_section section, double y, double z);
/** Takes from a shell of this wall what it owes to being closed: torsion as that of an open strip,
 *  J = U t^3/3 with U the length of its mid-line. Bending and shear are left as they are. */
void tt_section_slit(tt_section *shell, double wall);

/** Round tube (wall = od/2: a bar), outside diameter and wall in m. Exact. */
tt_section tt_section_tube(double od, double wall, double nu);

/** Rectangular tube, its corners rounded: radius outside, m, concentric inside (not below nil). */
tt_section tt_section_box_tube(double wide, double deep, double wall, double corner, double nu);
double tt_box_tube_area(double wide, double deep, double wall, double corner);

/** Between an outer and an inner outline of one kind and one middle, ellipses or boxes, whose wall
 * is not the same all round: torsion by Bredt, exact for similar ellipses. Without shear areas
 * (nil). All zero where the one does not lie inside the other. */
tt_section tt_section_hollow(const tt_outline *outer, const tt_outline *inner);

/** Elliptical tube as EN 10210-2:2006, Annex A, FROM MEMORY, computes it: area and second moments
 *  between two ellipses, torsion as of one wall all round, though away from the axes theirs is
 *  thinner: for 150 x 75 x 4 it says 3 % more than the exact J. Without shear areas. */
tt_section tt_section_ellipse_tube(double wide, double deep, double wall);

/** A rectangle whose corners have the radius r: area, m2, and second moment about the middle of its
 *  depth, m4. */
double tt_rounded_area(double wide, double deep, double r);
double tt_rounded_inertia(double wide, double deep, double r);

/** Forces on the face whose outward normal is +x, about the axis of the segment. N, N.m. */
typedef struct {
    double n, vy, vz, t, my, mz;
} tt_forces;

/** Stress where it is worst. Pa. */
typedef struct {
    double normal;     /* largest |sigma| */
    double shear;      /* largest |tau|: torsion and shear force of one sign */
    double equivalent; /* sqrt(normal^2 + 3 shear^2), maxima combined even if at different points */
} tt_stress;

tt_stress tt_section_stress(const tt_section *section, const tt_forces *forces);

/** The same forces about the centroid of the section. */
tt_forces tt_section_forces(const tt_section *section, const tt_forces *forces);

/** Where bending stresses the section most: E ky and E kz of these forces about its centroid, and
 *  the fibre from there; sigma = E (z ky - y kz). */
typedef struct {
    double ky, kz; /* Pa/m */
    double y, z;   /* m */
} tt_fibre;
tt_fibre tt_section_fibre(const tt_section *section, const tt_forces *about_centroid);

#endif
