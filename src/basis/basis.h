/* basis/basis.h - a design basis as plain numbers in and out: pressures, gust factors, drag, load
 * factors, resistances. A basis knows neither piece nor frame. Each function may add lines of
 * calculation (steps, may be NULL) with the source beside each. SI. */
#ifndef TT_BASIS_BASIS_H
#define TT_BASIS_BASIS_H

#include "source/source.h"

#include <stdbool.h>
#include <stddef.h>

/* ---- wind ---------------------------------------------------------------------------------- */

typedef enum { TT_NO_HILL, TT_RIDGE, TT_ESCARPMENT, TT_ROUND_HILL } tt_hill_shape;

/** A hill by its shape. Lengths m. */
typedef struct {
    tt_hill_shape kind;
    double height, half_length; /* H; Lh, upwind from the crest to half the height */
    double from_crest;          /* |x| */
} tt_hill;

/** What the site says of the wind. Fields that a basis does not know are ignored by it. */
typedef struct {
    double basic_speed;      /* m/s; eu vb,0 (10 min mean), us V (3 s gust, strength level) */
    int exposure;            /* eu terrain 0..4; us 'B', 'C', 'D' */
    double orography;        /* eu co, us Kzt; 1.0 flat */
    double direction_factor; /* eu cdir */
    double season_factor;    /* eu cseason */
    double air;              /* eu rho, kg/m3 */
    double directionality;   /* us Kd */
    double elevation;        /* us, m above the sea, for Ke */
    int edition;             /* us: 16 or 22; eu ignored */
    double once_in;          /* eu: years between two such winds; 0: 50 */
    bool service;            /* us: the speed is one of the service level */
    tt_hill hill;            /* us: in place of orography */
} tt_wind_site;

/** Velocity pressure at height z above ground: eu qp(z), us qz (with Kd in it in both editions),
 * Pa. */
typedef double tt_pressure_fn(const tt_wind_site *site, double z, tt_steps *steps);

/** A body that sways in the wind, for the gust factor (decision: Annex B always; Gf always). */
typedef struct {
    double height;          /* h, m, of the piece */
    double base_height;     /* m, of its foot above ground */
    double breadth;         /* b or B: sail area across this direction over h, m */
    double depth;           /* L: extent along the wind, m (us) */
    double frequency;       /* n1, Hz: lowest mode that moves this way, softer model, heavy */
    double log_decrement;   /* delta_s, structural */
    double drag_area_modal; /* sum of cf A phi^2, m2 */
    double mass_modal;      /* sum of m phi^2, kg */
} tt_wind_body;

/** eu cs cd (not below 1.0); us Gf for whatever sways, G for what does not (not below 0.85). */
typedef double tt_gust_fn(const tt_wind_site *site, const tt_wind_body *body, tt_steps *steps);

/** Section shapes for the force coefficient, on the width b across the wind, d along it. */
typedef enum { TT_SHAPE_ROUND, TT_SHAPE_OVAL, TT_SHAPE_BOX, TT_SHAPE_OTHER } tt_shape;
typedef double tt_drag_fn(tt_shape shape, double across, double along, tt_steps *steps);

/* ---- load factors -------------------------------------------------------------------------- */

typedef enum {
    TT_STRENGTH,
    TT_ALLOWABLE,
    TT_EQUILIBRIUM,
    TT_SERVICE,
    TT_ACCIDENTAL,
    TT_SEISMIC,
    TT_LEVELS
} tt_level;

/** Classes of action besides weight. */
typedef enum { TT_CLASS_WIND, TT_CLASS_OWN_VARIABLE, TT_CLASS_OWN_ACCIDENTAL, TT_CLASSES } tt_class;

/** One rule of combination. Weight takes `weight`; one variable class leads with lead[class], the
 *  others that are there may accompany with with[class] (0: absent from the rule). An own
 *  permanent case is not of one source with the weight: it takes either of its own two factors. */
typedef struct {
    const char *name; /* "6.10 sup", "(4)" */
    tt_level level;
    double weight;           /* factor on the weight */
    double weight_restoring; /* equilibrium: factor on the part of the weight that restores */
    double lead[TT_CLASSES];
    double with[TT_CLASSES];
    double permanent[2];       /* on each own permanent case by itself: unfavourable, favourable */
    bool bare;                 /* also stands with no variable action at all */
    double overturning_factor; /* demand is multiplied by this in the equilibrium check */
    tt_source source;
} tt_rule;

/* ---- resistance ---------------------------------------------------------------------------- */

/** Design strength of an armature steel for elastic checks, Pa. */
typedef double tt_steel_fn(double f_y, double f_u, bool stainless, tt_steps *steps);

typedef struct {
    const char *id;          /* "eu", "us" */
    const char *title;       /* "Eurocodes, first generation" */
    const char *editions[4]; /* NULL-ended; the first is the default */
    tt_pressure_fn *pressure;
    tt_gust_fn *gust;
    tt_drag_fn *drag;
    double
        least_pressure; /* Pa on the area across the wind, strength level, strip by strip; 0 none */
    tt_source least_pressure_source;
    tt_steel_fn *steel_strength;
    /** The rules for a risk of 1..4 into rules[]; returns how many (at most `most`). */
    size_t (*rules)(int risk, tt_rule *rules, size_t most);
} tt_basis;

const tt_basis *tt_basis_named(const char *id); /* NULL: none */
size_t tt_basis_count(void);
const tt_basis *tt_basis_at(size_t i);
const char *tt_level_word(tt_level level); /* "strength", ... */

/** Design strength of a bronze, both bases alike: min(f_y / 1.5, f_u / 2.5) * quality * seam, Pa.
 */
double tt_bronze_strength(double f_y, double f_u, double quality, double seam, tt_steps *steps);

#endif
