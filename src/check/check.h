/* check/check.h - one file a limit state: the whole solution in, findings out. No check formats
 * text for paper; it names, computes and cites. */
#ifndef TT_CHECK_CHECK_H
#define TT_CHECK_CHECK_H

#include "combine/second.h"

typedef struct tt_worst tt_worst;
typedef struct tt_check_input tt_check_input;
/** Adds the lines of calculation on a worst cut. */
typedef void tt_lines_fn(const tt_check_input *in, const tt_worst *worst, tt_steps *steps);

/** What one check found at one place: its worst cut, model, combination and pattern there. */
typedef struct {
    const char *check;       /* "strength.armature" */
    const char *where;       /* in words */
    size_t segment;          /* TT_NONE for a place or the whole */
    double x;                /* fraction of the segment */
    const char *combination; /* name; NULL when no load is in it */
    const char *pattern;     /* "heavy", "light", "nominal"; NULL likewise */
    const char *model;       /* "armature alone", "together"; NULL likewise */
    double demand, resistance;
    const char *unit;   /* SI */
    bool has_use;       /* false: no resistance at all, or none defined; `why` says it */
    double use, margin; /* margin = allowed use / use - 1 (0 with !has_use) */
    bool holds;
    const char *why;            /* when use is null */
    const char *const *assumes; /* NULL-ended, may be NULL */
    const tt_step *steps; /* its lines of calculation, steps_n of them; or, made when they are asked
                             for, `lines` of `worst` */
    size_t steps_n;
    tt_lines_fn *lines; /* NULL: `steps` */
    const tt_worst *worst;
    const tt_exact *exact; /* the situation, solved on the moved frame; NULL where none is in it */
    const char *default_key; /* key of the leading action's magnitude, else of the resistance, when
                                it is a default; NULL */
} tt_finding;

typedef struct {
    const char *check, *where, *why,
        *give; /* give: what to write to have it checked; may be NULL */
    bool needed;
    bool has_demand;
    double demand;
    const char *unit;
} tt_unchecked;

typedef struct {
    const char *check, *why;
} tt_inapplicable;

typedef struct {
    TT_LIST(tt_finding) list;
    TT_LIST(tt_unchecked) unchecked;
    TT_LIST(tt_inapplicable) inapplicable;
    tt_pool pool; /* of their strings and steps */
} tt_findings;

void tt_findings_clear(tt_findings *findings);

struct tt_check_input {
    const tt_piece *piece;
    const tt_model *model;
    const tt_basis *basis;
    const tt_actions *actions;
    const tt_combinations *combinations;
    const tt_solution *solution;
    tt_second_order *second; /* takes in what is solved on the way */
};

/** The lines of calculation of a finding, added to `steps`. */
void tt_finding_lines(const tt_check_input *in, const tt_finding *finding, tt_steps *steps);

typedef struct {
    const char *name;    /* "strength.armature" */
    const char *title;   /* "strength of the armature" */
    const char *explain; /* a paragraph a sculptor can read: what, formula, limits */
    tt_source_id source;
    tt_status (*run)(const tt_check_input *in, tt_findings *out);
} tt_check;

size_t tt_checks_count(void);
const tt_check *tt_checks_at(size_t i);

/** What a whole judgement needs and this version does not compute, into out->unchecked. */
tt_status tt_unchecked_find(const tt_check_input *in, tt_findings *out);

/* ---- sway, told or judged
 * ------------------------------------------------------------------------ */

/** The largest level movement of a place under service loads. */
typedef struct {
    const tt_combination *together; /* NULL: no service loads */
    double move;                    /* m */
    double height; /* m, of the piece over (or under) its stand, the furthest place */
    size_t point;
    int carry, pattern;
    bool buckles;          /* the piece buckles: `move` is of first order */
    const tt_exact *exact; /* the situation, solved on the moved frame */
} tt_sway;

/** TT_E_NOMEM, or what a solution of second order failed with. */
tt_status tt_sway_find(const tt_check_input *in, tt_sway *most);

/* ---- balance, told or judged ------------------------------------------------------------------
 */

/** Balance over the hull of the soles. */
typedef struct {
    bool applies;     /* there is a sole and the piece stands on it */
    tt_vec3 *polygon; /* hull of the soles, global, m */
    size_t polygon_n;
    double drawn_in;         /* m, the larger of 5 mm and 5 % of the least width */
    double edge_distance;    /* m, from the centre of mass (nominal) to the nearest drawn-in edge;
                                negative outside */
    tt_vec3 edge_way;        /* unit, level, towards that edge */
    double use;              /* worst overturning over restoring moment, unanchored */
    const char *combination; /* of that use */
} tt_balance;

tt_status tt_balance_find(const tt_check_input *in, tt_pool *pool, tt_balance *out);

#endif
