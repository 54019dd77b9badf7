/* section/parts.h - inside the module: the number its circles share. */
#ifndef TT_SECTION_PARTS_H
#define TT_SECTION_PARTS_H

static const double PI = 3.14159265358979323846;

#endif
