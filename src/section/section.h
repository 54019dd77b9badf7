/* section/section.h - from an outline and a wall to area, second moments, torsion and shear, and
 * from section forces to stress. Metres throughout; nothing here knows bronze.
 *
 * Local axes of a cut: x along the limb, y across (wide), z front to back (deep).
 * iyz = +integral of y z dA. sigma = E (e0 + z ky - y kz); My = integral of z sigma dA,
 * Mz = -integral of y sigma dA; T right-handed about +x. */
#ifndef TT_SECTION_SECTION_H
#define TT_SECTION_SECTION_H

#include <stdbool.h>

typedef enum {
    TT_OUTLINE_NONE,    /* no bronze here */
    TT_OUTLINE_ELLIPSE, /* round, oval, girth */
    TT_OUTLINE_BOX      /* rectangle, sharp corners */
} tt_outline_kind;

/** Outside of the bronze: wide along y, deep along z, m, > 0 unless NONE. */
typedef struct {
    tt_outline_kind kind;
    double wide, deep;
} tt_outline;

/** The ellipse of this perimeter that is `deep` deep (deep <= 0: a circle). False when no ellipse
 *  has that girth and depth (girth <= 2 * deep). Solved to 1e-12 of the girth. */
bool tt_outline_of_girth(double girth, double deep, tt_outline *out);

/** Widths linear between two outlines of one kind, t in 0..1. */
tt_outline tt_outline_between(const tt_outline *a, const tt_outline *b, double t);

double tt_outline_area(const tt_outline *outline);
double tt_outline_perimeter(const tt_outline *outline);

/** Full extent of the outline along the unit direction (uy, uz), m. */
double tt_outline_width(const tt_outline *outline, double uy, double uz);

/** Diameter of the largest circle inside the inside curve of a wall (0 when the wall closes it). */
double tt_outline_bore(const tt_outline *outline, double wall);

/** Area of the shell of a wall, m2: what tt_section_shell gives, by closed form where there is one
 *  (an ellipse whose inside is not trimmed: perimeter * wall - pi wall^2). */
double tt_outline_shell_area(const tt_outline *outline, double wall);

/** The least wall that closes the outline, m: half the smaller width. */
double tt_outline_closing_wall(const tt_outline *outline);

/** Properties of one part of a cut, about the axis of the segment. All zero for no part. */
typedef struct {
    double area;             /* m2 */
    double iy, iz, iyz;      /* m4 */
    double j;                /* m4, St-Venant */
    double shear_y, shear_z; /* m2, shear areas (stiffness) along y and z */
    double reach_y, reach_z; /* m, largest |y|, |z| of a fibre */
    /* what stress needs */
    double torsion_modulus;            /* m3: largest shear stress = T / torsion_modulus */
    double peak_shear_y, peak_shear_z; /* 1/m2: largest shear stress = V * peak_shear */
    bool elliptic; /* bending combines as on an ellipse; else on a box's corners */
} tt_section;

/** A solid outline. nu: Poisson's ratio, for the shear areas (Cowper). */
tt_section tt_section_solid(const tt_outline *outline, double nu);

/** A hollow outline, one wall all round (of an ellipse the true parallel curve, trimmed). A wall
 *  that closes the outline gives the solid. Torsion: 4 Am^2 t/U + U t^3/3 on the mid-line (exact
 *  for a circle), never more than the solid. Shear areas: a circle after Cowper (thin, nu = 0.3:
 *  0.53 of the area), others by the energy of the shear flow (a thin circle would get 0.50). */
tt_section tt_section_shell(const tt_outline *outline, double wall, double nu);

/** The same without shear areas (nil), for who asks for stress alone: about half the work. */
tt_section tt_section_shell_for_stress(const tt_outline *outline, double wall);

/** Round tube (wall = od/2: a bar), outside diameter and wall in m. Exact. */
tt_section tt_section_tube(double od, double wall, double nu);

/** Forces on the face whose outward normal is +x, about the local axes. N, N.m. */
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

#endif
