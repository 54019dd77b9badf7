/* action/wind.h - the wind on one strip, and the gust factor of the body for one direction. */
#ifndef TT_ACTION_WIND_H
#define TT_ACTION_WIND_H

#include "action/action.h"

/** What a wind meets at a strip. */
typedef struct {
    double sine;    /* of the angle between wind and axis */
    tt_vec3 across; /* part of the wind's unit vector across the axis */
    double width;   /* m, across the wind and the axis */
    double drag;    /* cf; 0 where no wind acts */
} tt_wind_cut;

/** wind: unit, level. A wind the other way meets the same with `across` turned round. */
tt_wind_cut tt_wind_on_strip(const tt_basis *basis, const tt_segment *segment,
                             const tt_strip *strip, tt_vec3 wind);
double tt_wind_lump_drag(const tt_basis *basis, const tt_lump *lump);

/** The modes as the wind sees them: movement of every strip, then every lump, in each mode; heavy
 *  masses and frequencies. Lives in a pool. */
typedef struct {
    const tt_model *model;
    const tt_basis *basis;
    const tt_modes *modes;
    double height;     /* m, of the body */
    size_t parts;      /* strips and lumps */
    tt_vec3 *move;     /* [modes][parts] */
    double *mass;      /* [parts] kg */
    double *sail;      /* [parts] m2, cf A in the direction at work */
    double *frequency; /* [modes] Hz */
} tt_gale;

tt_status tt_gale_of(const tt_model *model, const tt_basis *basis, const tt_modes *modes,
                     tt_pool *pool, tt_gale *g);

/** Body, frequency and gust factor of one direction, into the report. on: [strips] of that wind. */
void tt_wind_gust(tt_gale *g, const tt_wind_site *site, tt_vec3 wind, const tt_wind_cut *on,
                  tt_wind_direction *report);

#endif
