/* action/action.h - what acts on the piece: unit cases of weight, wind from every ten degrees, and
 * the file's own loads, each as loads on the frame. Both bases are served by the same files. */
#ifndef TT_ACTION_ACTION_H
#define TT_ACTION_ACTION_H

#include "basis/basis.h"
#include "model/model.h"

typedef enum { TT_CASE_WEIGHT, TT_CASE_WIND, TT_CASE_OWN } tt_case_kind;

/** One unit case. Arrays live in the pool of its tt_actions. */
typedef struct {
    const char *name; /* "weight", "wind 90", "banner" */
    tt_case_kind kind;
    tt_load_kind load; /* weight: permanent, wind: variable, own: as written */
    double direction;  /* wind: degrees, blowing towards; else 0 */
    size_t against;    /* an earlier case of which this is the exact negative; TT_NONE */
    double sense;      /* 1; -1 when it is against another, whose loads it shares */
    tt_frame_load on;  /* what the frame sees, times sense */
} tt_case;

/** The wind of one direction, for the report. */
typedef struct {
    double direction;  /* degrees */
    double gust;       /* cs cd or G */
    tt_wind_body body; /* what the gust factor was asked for: its frequency 0 where no mode moves
                          this way (rigid) */
    tt_vec3 force;     /* N, sum */
    double area;       /* m2, sum across the wind */
} tt_wind_direction;

/** A case of which every vertical load acts level instead, as if the piece leant that way by as
 * much as it is high: loads together take a small part of it, their imperfection. */
typedef struct {
    size_t of; /* index of the case */
    int axis;  /* towards x: 0, y: 1 */
    tt_frame_load on;
} tt_lean;

typedef struct {
    tt_pool pool;
    TT_LIST(tt_case) cases; /* 0..TT_PATTERNS-1 are the weights: nominal, heavy, light */
    TT_LIST(tt_lean) leans;
    tt_wind_direction *wind; /* [36] or NULL */
    size_t winds;
    tt_wind_site wind_site;
} tt_actions;

void tt_actions_clear(tt_actions *actions);

/** Weight (three patterns) and own loads. */
tt_status tt_actions_weight(const tt_model *model, tt_actions *actions);
tt_status tt_actions_own(const tt_model *model, tt_actions *actions);

/** How the weights and the file's own loads lean, after these; nothing for a piece that hangs
 * (whose centre of mass lies under its stands). What vertical parts a wind has do not lean
 * (assumption: they are no load that stands). */
tt_status tt_actions_lean(const tt_model *model, tt_actions *actions);

/** Wind from 0 to 350 degrees with the modes of the softer carry model (nominal weight; brought to
 *  the heavy weight by Rayleigh's quotient on the same shape). Nothing when indoors or ruled out.
 */
tt_status tt_actions_wind(const tt_model *model, const tt_basis *basis, const tt_modes *modes,
                          tt_actions *actions);

/** Lines of calculation on the wind of a direction: pressure at the top and the gust factor. */
void tt_wind_steps(const tt_basis *basis, const tt_wind_site *site,
                   const tt_wind_direction *direction, tt_steps *steps);

/** A mode's frequency with the heavy weight: Rayleigh's quotient on the nominal shape (an upper
 *  bound, exact when the spread is the same everywhere). Hz. */
double tt_mode_heavy_frequency(const tt_model *model, const tt_mode *mode);

/** Sum of forces of a case, and of their moments about a point. */
void tt_case_resultant(const tt_model *model, const tt_case *acting, tt_vec3 about, tt_vec3 *force,
                       tt_vec3 *moment);

#endif
