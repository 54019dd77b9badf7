/* piece/piece.h - the piece as described, resolved: names turned into indices, quantities into SI,
 * scale applied, defaults put in and remembered as such. Made by piecefile (or by a test), read by
 * everybody below. Everything lives in the piece's own pool.
 *
 * A described quantity is a tt_given: `is` is what it is taken as, low and high its spread, origin
 * the index in piece->origins of where it came from (0: nowhere, no story to tell). Code that
 * computes reads is, low, high; only compose, record and design read origin. */
#ifndef TT_PIECE_PIECE_H
#define TT_PIECE_PIECE_H

#include "base/list.h"
#include "base/pool.h"
#include "catalogue/catalogue.h"
#include "num/vec3.h"
#include "quantity/quantity.h"
#include "section/section.h"
#include "tiptoe/diag.h"
#include "tiptoe/piece.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define TT_NONE SIZE_MAX /* no limb, no material, no member */

typedef struct {
    double is, low, high;
    unsigned origin;
} tt_given;

typedef enum {
    TT_ORIGIN_NOWHERE,
    TT_ORIGIN_FILE,
    TT_ORIGIN_DEFAULT,
    TT_ORIGIN_SET,
    TT_ORIGIN_DATA
} tt_origin_kind;

typedef struct {
    const char *key;     /* "bronze/wall" */
    const char *written; /* as written, or what the default is in words: "0.8 to 1.25 of it" */
    const char *why;     /* `because`, or the reason of the default; may be NULL */
    tt_place place;      /* in the file; line 0 for a default */
    tt_origin_kind kind;
} tt_origin;

typedef struct {
    const char *name;
    tt_vec3 at; /* m, full size */
    tt_place place;
} tt_point;

/** A member of the armature in a segment. */
typedef enum {
    TT_MEMBER_NONE,
    TT_MEMBER_TUBE, /* a pipe too */
    TT_MEMBER_BAR,
    TT_MEMBER_BOX, /* a rectangular tube, its corners as of a cold formed one */
    TT_MEMBER_FLAT
} tt_member_form;
typedef struct {
    tt_member_form form;
    double od, wall;          /* m, as bought; a bar has wall = od / 2, a flat none */
    double od_to, wall_to;    /* at the segment's end; the same when not tapered */
    double deep, deep_to;     /* of a box or flat along local z; od is along local y */
    double off[2], off_to[2]; /* m, local y and z of its centre from the axis */
    bool choose;              /* form NONE: left to `size` */
    size_t run;               /* one member with those of the same number; 0: by itself */
    size_t metal;             /* index in piece->metals */
    double loss;              /* m of wall lost to corrosion from the outside, for strength */
    double wall_factor;       /* on the wall, for strength */
    unsigned origin;
} tt_member;

/** BY_CODE: the code's own coefficients are wanted; computed as by shape until they are there. */
typedef enum { TT_WIND_BY_SHAPE, TT_WIND_OWN_DRAG, TT_WIND_NONE, TT_WIND_BY_CODE } tt_wind_on;

typedef struct {
    const char *name;
    size_t from, to;                /* points */
    size_t limb;                    /* TT_NONE for a segment in the long form */
    size_t place_in_limb;           /* 0 for the first segment of its limb */
    tt_vec3 faces;                  /* unit, resolved */
    tt_outline outline, outline_to; /* kind NONE: bare armature */
    tt_given wall, wall_to;         /* solid: half the smaller width is not meant; see solid */
    double said_low[2];             /* their low ends before a weight lowered them; 0: none did */
    bool solid;
    double turn, turn_to; /* rad, right-handed about x */
    size_t alloy;         /* index in piece->metals; TT_NONE without bronze */
    tt_given surface, extra, casting_quality;
    double neck_quality; /* casting quality given with a reason: also at necks; 0: by inspection */
    tt_member armature;
    tt_wind_on wind;
    double drag; /* TT_WIND_OWN_DRAG */
    const char *drag_because;
    bool open; /* no closed section for torsion: a window, or a lengthwise seam that counts
                  under a half */
    tt_given seam_along; /* efficiency of a lengthwise seam; origin 0: none */
    bool climbable;      /* as said; nothing said: no */
    tt_place place;
} tt_segment;

typedef struct {
    const char *name;
    size_t first, count; /* its segments, consecutive in piece->segments */
    size_t joins;        /* point at the other end of its rigid arm; TT_NONE */
    tt_place place;
} tt_limb;

typedef struct {
    size_t a, b; /* points */
    tt_place place;
} tt_arm;

typedef struct {
    const char *name;
    size_t at;         /* point */
    tt_given mass;     /* kg; of a `skin` the wall's low and high */
    tt_vec3 offset;    /* m */
    double wind_area;  /* m2, every direction alike; 0 none */
    double drag;       /* 0: by the basis */
    double inertia[3]; /* kg.m2, global axes through the lump */
    bool plate;        /* the wind meets a flat */
    unsigned origin;
    tt_place place;
} tt_lump;

typedef enum { TT_HELD_FIXED, TT_HELD_PINNED, TT_HELD_RESTS, TT_HELD_IN_PART } tt_held;

typedef struct {
    size_t at;          /* point */
    tt_held held;       /* in a word; what computes reads `way` and `spring` */
    bool way[6];        /* held: moves along x, y, z, turns about x, y, z, global */
    tt_given spring[6]; /* N/m, N.m/rad; origin 0: none */
    tt_given friction;  /* of what rests; origin 0: none */
    tt_vec3 *sole; /* polygon round the stand's point, global axes, m from that point, z = 0; NULL
                      none */
    size_t sole_n;
    tt_place place;
} tt_stand;

/** A hill by its shape, us; kind NONE: level ground, or a factor of its own. */
typedef enum { TT_HILL_NONE, TT_HILL_RIDGE, TT_HILL_ESCARPMENT, TT_HILL_ROUND } tt_hill_kind;

/** Which speed was written: eu the ten-minute mean; us a 3 s gust, of the map for strength or of
 * one for service. */
typedef enum { TT_SPEED_UNSAID, TT_SPEED_MEAN, TT_SPEED_GUST, TT_SPEED_SERVICE } tt_wind_speed;

typedef struct {
    bool given;     /* site.wind is a map */
    bool ruled_out; /* site.wind: none */
    const char *none_because;
    tt_given basic_speed;
    int exposure; /* eu 0..4, us 'B'..'D' */
    tt_given orography, direction_factor, season_factor, air, directionality, elevation;
    tt_wind_speed speed_is;
    tt_given once_in;                                        /* years, eu; origin 0: 50 */
    tt_given surface_roughness;                              /* m, eu */
    int hill;                                                /* a tt_hill_kind */
    tt_given hill_height, hill_half_length, hill_from_crest; /* m */
} tt_site_wind;

/** What the site says of a load: nothing, its figures, or that there is none. */
typedef struct {
    bool given, ruled_out;
} tt_site_load;

/** Fields that the basis or the form of writing does not use have origin 0, words are -1. */
typedef struct {
    tt_site_load load;
    tt_given ag;               /* m/s2, eu, on rock; importance is not in it */
    int ground, type;          /* eu: 0..4 for A..E; 1, 2 */
    tt_given soil, tb, tc, td; /* eu: S, s, s, s, in place of ground and type */
    tt_given q;                /* eu */
    int method;                /* 0 lateral force, 1 response spectrum */
    tt_given ss, s1, sds, sd1; /* us, of gravity */
    int site_class, row;       /* us: 0..8 for A, B, BC, C, CD, D, DE, E, F; 0 other, 1 monument */
    bool rigid, detailing;     /* each with its reason among the origins */
    bool on_building;
    tt_given building_at, building_roof; /* m over ground: where it stands, and the roof */
} tt_site_quake;

typedef struct {
    tt_site_load load;
    tt_given climb, push; /* N */
    tt_given reach;       /* m over what can be stood on */
    int count;
} tt_site_people;

typedef struct {
    tt_site_load load;
    tt_given thickness, wind; /* m, m/s */
} tt_site_ice;

typedef struct {
    tt_site_load load;
    tt_given ground; /* Pa */
} tt_site_snow;

/** Differences of temperature from when it was put together, K; [0] warm, [1] cold. */
typedef struct {
    tt_site_load load;
    tt_given bronze[2], armature[2];
} tt_site_heat;

typedef struct {
    bool indoors, open_to_public;
    tt_given base_height; /* m above ground */
    tt_given damping;     /* logarithmic decrement */
    tt_site_wind wind;
    tt_site_quake earthquake;
    tt_site_people people;
    tt_site_ice ice;
    tt_site_snow snow;
    tt_site_heat heat;
    bool fills; /* water can stand in a limb */
} tt_site;

typedef enum { TT_LOAD_PERMANENT, TT_LOAD_VARIABLE, TT_LOAD_ACCIDENTAL } tt_load_kind;

/** One force of an own case; the same case named several times adds up. */
typedef struct {
    const char *name; /* of the case */
    tt_load_kind kind;
    size_t at;             /* point; TT_NONE when along a segment */
    size_t along;          /* segment; TT_NONE when at a point */
    tt_vec3 force, moment; /* N, N.m, global; at a point */
    tt_vec3 line;          /* N/m, global; along a segment */
    double between[2];     /* fractions of the segment */
    tt_place place;
} tt_own_load;

typedef struct {
    const char *name; /* of a case: "weight", "wind 90", "wind", or an own case */
    double factor;
} tt_term;

typedef struct {
    const char *name;
    int level; /* tt_level of the basis */
    tt_term *term;
    size_t terms;
    bool waits;            /* for a load that is not computed yet: it is left out */
    tt_given imperfection; /* level over vertical; origin 0: none */
    tt_place place;
} tt_own_combination;

typedef struct {
    bool has_mass, has_sway, has_frequency;
    tt_given mass, sway, frequency; /* kg, ratio, Hz */
    tt_given use;                   /* 1.0 */
} tt_limits;

/** How the castings are looked over; decides their quality at a neck. */
typedef enum { TT_LOOKED_AT, TT_PENETRANT, TT_RADIOGRAPH } tt_inspection;

typedef struct tt_works tt_works;
/** What the file says and nothing uses yet: the texts of its row under *not checked*. */
typedef struct {
    const char *key;   /* "segments/bill/open" */
    const char *where; /* the part that the key is of: "bill"; "the whole piece" */
    const char *check, *why, *give;
    bool needed;
} tt_waiting;

struct tt_piece {
    tt_pool pool;
    const char *file, *sha256;
    const char *const *set; /* the --set texts, in order */
    size_t sets;
    const tt_data *data;                /* rows of one's own that could be used, lent; NULL: none */
    const char *name, *revision, *date; /* date: ISO text, or NULL */
    const char *basis, *edition;
    unsigned basis_origin, edition_origin;
    int method; /* us, of the steel: 0 lrfd, 1 asd */
    int risk;
    double scale;
    double height; /* m, given; 0 not given */
    tt_inspection inspection;
    unsigned inspection_origin;
    tt_vec3 faces; /* the front of the whole, unit */
    tt_unit_system report;

    TT_LIST(tt_origin) origins; /* [0] is "nowhere" */
    TT_LIST(tt_metal) metals;   /* those used: copies of rows of the catalogue, or own */
    TT_LIST(tt_point) points;
    TT_LIST(tt_limb) limbs;
    TT_LIST(tt_segment) segments;
    TT_LIST(tt_arm) arms; /* `rigid` and `joins` */
    TT_LIST(tt_lump) lumps;
    TT_LIST(tt_stand) stands;
    TT_LIST(tt_own_load) loads;
    TT_LIST(tt_own_combination) combinations;
    TT_LIST(tt_waiting) waiting;
    tt_site site;
    tt_limits limits;
    tt_works *works;     /* how it is made: works.h; always there */
    const char *written; /* the piece file as YAML, written out; NULL: it was not read */
};

/** An empty piece with origin 0 in place; NULL without memory. */
tt_piece *tt_piece_new(void);

/** Index by name, TT_NONE when there is none. */
size_t tt_piece_point(const tt_piece *piece, const char *name);
size_t tt_piece_segment(const tt_piece *piece, const char *name);

/** Axis of a segment, m. */
double tt_segment_length(const tt_piece *piece, const tt_segment *segment);

/** Local axes at the fraction t of a segment: x along it, z the part of `faces` at right angles to
 *  x - where the limb runs within 20 degrees of that line, the part of +z, where it runs within 20
 *  degrees of +z too, the part of +x - then turned about x by the segment's turn. y = z cross x. */
tt_axes tt_segment_axes(const tt_piece *piece, const tt_segment *segment, double t);

/** Degrees from the nearest switch of that rule; large where none is near. */
double tt_segment_axes_margin(const tt_piece *piece, const tt_segment *segment);

/** Outline, wall and member at the fraction t. `which`: -1 low, 0 is, +1 high wall. */
tt_outline tt_segment_outline(const tt_segment *segment, double t);
double tt_segment_wall(const tt_segment *segment, double t, int which);
double tt_member_wall(const tt_member *member, double t);
/** Outside of a member (NONE without one), the diameter of the circle round it, m; its area, m2;
 * how far its centre lies off the axis, local y and z, m. */
tt_outline tt_member_outline(const tt_member *member, double t);
double tt_member_girdle(const tt_member *member, double t);
/** Outside radius of the corners of a box, m. */
double tt_member_corner(const tt_member *member, double t);
double tt_member_area(const tt_member *member, double t);
tt_vec2 tt_member_off(const tt_member *member, double t);

/** Bronze per length at t, kg/m: density * min(shell area * surface, outline area) * (1 + extra);
 *  a solid takes no surface. which as above, over wall, surface and extra together. */
double tt_segment_bronze(const tt_piece *piece, const tt_segment *segment, double t, int which);

/** Armature per length at t, kg/m, as bought. */
double tt_segment_armature(const tt_piece *piece, const tt_segment *segment, double t);

typedef double tt_per_length(const tt_piece *piece, const tt_segment *segment, double t, int which);
/** Of all of the segment, kg. */
double tt_segment_mass(const tt_piece *piece, const tt_segment *segment, tt_per_length *of,
                       int which);

/** Where, in words: "12 mm above the ankle", "at the knee", "towards the crown". In the pool; NULL
 *  without memory. */
const char *tt_piece_where(const tt_piece *piece, tt_pool *pool, size_t index, double t);

#endif
