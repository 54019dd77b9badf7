/* piece/works.h - how the piece is made and set up: seams of the bronze, joints of the armature,
 * what ties the two, holes, the base, what was weighed. Part of the piece, in its pool; SI, full
 * size. A length that was not given is 0, a tt_given that was not given has origin 0. */
#ifndef TT_PIECE_WORKS_H
#define TT_PIECE_WORKS_H

#include "piece/piece.h"

/** How a seam is welded. None: cast in one, no seam. */
typedef enum { TT_SEAM_UNKNOWN, TT_SEAM_NONE, TT_SEAM_PARTIAL, TT_SEAM_FULL } tt_seam_kind;

/** What was said of a seam at a place. */
typedef struct tt_seam {
    size_t at;         /* point */
    size_t between[2]; /* segments; TT_NONE: all that meet there */
    tt_seam_kind kind;
    tt_given efficiency; /* origin 0: by the alloy */
    const char *filler;  /* NULL: not named */
    size_t metal;        /* of the filler, its own or that of all; TT_NONE: nobody named one */
    const char *because;
    tt_place place;
} tt_seam;

/** A joint of the armature. */
typedef enum { TT_SPLICE_WELD, TT_SPLICE_SOCKET, TT_SPLICE_FLANGE, TT_SPLICE_LUG } tt_splice_kind;
typedef struct {
    size_t at;
    size_t between[2]; /* segments; TT_NONE: the two members that meet there */
    tt_splice_kind kind;
    double throat;              /* weld */
    double insert, pin;         /* socket: depth, diameter of the pin */
    tt_member inner;            /* socket: form NONE: not given */
    double diameter, thickness; /* flange; a lug has a thickness too */
    int bolts;
    const char *bolt;   /* "M12" */
    double bolt_circle; /* diameter */
    double hole, edge;  /* lug */
    tt_place place;
} tt_splice;

/** How bronze and armature are tied. */
typedef enum { TT_TIE_LUG, TT_TIE_PIN, TT_TIE_FILL, TT_TIE_SADDLE } tt_tie_kind;
typedef struct {
    size_t at;
    tt_tie_kind kind;
    double throat, length; /* of its weld */
    int count;
    tt_place place;
} tt_tie;

typedef struct {
    size_t segment;
    double x; /* fraction of the segment */
    double across;
    int in_armature; /* 0: in the bronze */
    bool has_angle;
    double angle; /* rad, right-handed about the axis from local y */
    tt_place place;
} tt_hole;

/** A length of tube or bar that lies ready. */
typedef struct {
    tt_member member;
    double length; /* of one; 0 not given */
    int count;
    tt_place place;
} tt_rack_item;

typedef struct {
    double wide, deep, thickness; /* along x, y, z */
    size_t metal;                 /* TT_NONE: not named */
} tt_plate;

typedef struct {
    const char *rod, *grade; /* "M16", "A4-70" */
    double diameter;
    tt_vec3 *at; /* from the middle of the plate, z = 0 */
    size_t n;
    double embedment, standoff;
    int in;                              /* TT_IN_CONCRETE ... */
    bool tested;                         /* `tested` is given */
    double tested_tension, tested_shear; /* N */
    const char *tested_by;
} tt_anchors;
enum { TT_IN_CONCRETE, TT_IN_STONE };

typedef struct {
    bool given, has_plate, has_anchors, has_concrete, has_pedestal, has_footing;
    tt_plate plate;
    tt_anchors anchors;
    double grout; /* m */
    struct {
        double strength, thickness, edge; /* Pa, m, m */
        bool uncracked;
    } concrete;
    struct {
        double wide, deep, high;
        int material; /* of tt_pedestal_words */
    } pedestal;
    struct {
        double wide, deep, high;
        double bearing, friction; /* Pa, ratio; 0 not given */
    } footing;
    tt_place place;
} tt_base;

/** Materials of a pedestal, NULL-ended, and their densities, kg/m3. */
extern const char *const tt_pedestal_words[];
double tt_pedestal_density(int material);

/** Mass of plate and pedestal, kg. */
double tt_base_mass(const tt_piece *piece);

typedef struct {
    size_t segment;
    double share; /* of its bronze */
} tt_panel_part;

/** A part of the bronze that is cast and weighed as one. */
typedef struct {
    const char *name;
    tt_panel_part *part;
    size_t parts;
    tt_place place;
} tt_panel;

typedef struct {
    size_t at;       /* point it hung from */
    double plumb[2]; /* m, as measured */
} tt_hang;

typedef enum { TT_WEIGHED_SEGMENT, TT_WEIGHED_PANEL, TT_WEIGHED_WHOLE } tt_weighed_what;
typedef struct {
    tt_weighed_what what;
    size_t index;  /* segment or panel */
    bool wax;      /* else bronze */
    tt_given mass; /* as the scales showed */
    tt_given tare, gates, wax_density, not_in_wax;
    const char *day, *by;
    tt_hang *hang;
    size_t hangs;
    tt_place place;
} tt_weighing;

/** What is left when tare and gates are taken off, kg. */
double tt_weighing_net(const tt_weighing *weighing);

struct tt_works {
    TT_LIST(tt_rack_item) rack;
    tt_seam_kind seams; /* of those that are not named */
    bool seams_said;    /* by `default` */
    size_t seams_metal; /* of their filler; TT_NONE */
    TT_LIST(tt_seam) seam;
    TT_LIST(tt_splice) splices;
    TT_LIST(tt_tie) ties;
    TT_LIST(tt_hole) holes;
    tt_base base;
    TT_LIST(tt_panel) panels;
    TT_LIST(tt_weighing) weighings; /* in the order of the file */
    int form;                       /* of the armature that `size` looks for: tt_member_form */
    bool sealed;                    /* the armature is closed against water */
    const char *handling;           /* YAML, as it was read; NULL none */
};

void tt_works_clear(tt_works *works);

/** What was said of the seam at one end of a segment; NULL: nothing. */
const tt_seam *tt_piece_seam(const tt_piece *piece, size_t segment, bool at_end);

/** Index by name, TT_NONE when there is none. */
size_t tt_piece_panel(const tt_piece *piece, const char *name);

/** Do both segments end at the place? */
bool tt_segments_meet(const tt_piece *piece, size_t a, size_t b, size_t point);

#endif
