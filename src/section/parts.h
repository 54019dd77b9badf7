/* section/parts.h - inside the module: the number its circles share, and sections of a trace. */
#ifndef TT_SECTION_PARTS_H
#define TT_SECTION_PARTS_H

#include "section/section.h"

static const double PI = 3.14159265358979323846;

/** Torsion of a closed wall from the area inside its mid-line and its length: EN 10210-2:2006,
 *  Annex A, FROM MEMORY. Sets j and torsion_modulus. */
void tt_mid_line_torsion(tt_section *section, double inside, double length, double wall);

tt_section tt_trace_solid(const tt_outline *outline);
/** A wall that closes it everywhere gives the solid. */
double tt_trace_shell_area(const tt_outline *outline, double wall);
tt_section tt_trace_shell(const tt_outline *outline, double wall);

/** Of a thin closed wall along a polygon: shear areas over area, with the product that ties the two
 *  directions together where the axes are no principal ones, and the largest shear flow of a unit
 * force along y, z, 1/m. By the energy of the shear flow that turns nothing. */
typedef struct {
    double y, z, yz, flow[2];
} tt_closed_flow;
tt_closed_flow tt_shear_of_closed(const tt_vec2 *corners, size_t n);

#endif
