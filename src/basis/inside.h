/* basis/inside.h - what the files of this module share and nobody outside sees. SI. */
#ifndef TT_BASIS_INSIDE_H
#define TT_BASIS_INSIDE_H

#include "basis/basis.h"

#define TT_PI 3.14159265358979323846

/* One line of calculation: tt_say(steps, TT_S_id, symbol, unit, value, formula, numbers, ...). */
#define tt_say(steps, id, symbol, unit, value, formula, ...)                                       \
    tt_step_add(steps, symbol, formula, value, unit, tt_source_of(id), __VA_ARGS__)

#define TT_BASIS(id) extern const tt_basis tt_basis_##id;
#include "basis/bases.def"
#undef TT_BASIS

double tt_eu_pressure(const tt_wind_site *site, double z, tt_steps *steps);
double tt_eu_gust(const tt_wind_site *site, const tt_wind_body *body, tt_steps *steps);
double tt_us_pressure(const tt_wind_site *site, double z, tt_steps *steps);
double tt_us_gust(const tt_wind_site *site, const tt_wind_body *body, tt_steps *steps);

/** Share of a gust of given size that a body of given size feels at once: 1 at eta = 0, falling. */
double tt_gust_admittance(double eta);

/** Logarithmic decrement that the air adds to a body in a mean wind, m/s; 0 for a body without
 *  mass or mode. */
double tt_air_damping(const tt_wind_body *body, double air, double speed);

/** Drag of an oval outline on its width `across` the wind. */
double tt_drag_oval(double across, double along, tt_steps *steps);

/** A row of a table of rules: weight, its restoring part, then wind, own variable, own accidental;
 *  own permanent cases, unfavourable and favourable. */
typedef struct {
    const char *name;
    tt_level level;
    tt_source_id source;
    double weight, restoring, lead[TT_CLASSES], with[TT_CLASSES], overturning;
    bool bare;
    double permanent[2];
} tt_rule_row;

/** The first rows, at most `most`, as rules; returns how many. */
size_t tt_rules_of(const tt_rule_row *rows, size_t n, tt_rule *rules, size_t most);

#endif
