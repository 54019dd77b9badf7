/* compose/parts.h - the sections of the result, one file each, and the words that they share. */
#ifndef TT_COMPOSE_PARTS_H
#define TT_COMPOSE_PARTS_H

#include "compose/compose.h"

void tt_compose_verdict(const tt_assessment *a, tt_report *out);
void tt_compose_weight(const tt_assessment *a, tt_report *out);
void tt_compose_tightest(const tt_assessment *a, tt_report *out);
void tt_compose_steps(const tt_assessment *a, tt_report *out);
void tt_compose_sway(const tt_assessment *a, tt_report *out);
void tt_compose_reactions(const tt_assessment *a, tt_report *out);
void tt_compose_missing(const tt_assessment *a, tt_report *out);
void tt_compose_given(const tt_assessment *a, tt_report *out);
void tt_compose_site(const tt_assessment *a, tt_report *out);   /* items of a list */
void tt_compose_bronze(const tt_assessment *a, tt_report *out); /* likewise */
void tt_compose_steel(const tt_assessment *a, tt_report *out);  /* likewise */
void tt_compose_works(const tt_assessment *a, tt_report *out);  /* likewise */
void tt_compose_segments(const tt_assessment *a, tt_report *out);
void tt_compose_burdens(const tt_assessment *a, tt_report *out); /* lumps, stands, own loads */
void tt_compose_cautions(const tt_assessment *a, tt_report *out);

/* ---- words ------------------------------------------------------------------------------------
 */

/** An SI value in the reader's unit. `unit` is the SI unit's name ("" for a plain number). */
const char *tt_say(tt_report *out, double value, const char *unit, tt_unit_system system);

/** What was put in: with the fewest digits, from `least` on, that read as the same value; with four
 *  where none do (it was written in another unit). */
const char *tt_say_exactly(tt_report *out, double value, const char *unit, tt_unit_system system,
                           int least);

/** In the unit in which `largest` is written: of a column, or of two that are compared. */
const char *tt_say_beside(tt_report *out, double value, double largest, const char *unit,
                          tt_unit_system system);

/** "document, edition, place (from memory)". */
const char *tt_say_source(tt_report *out, const tt_source *source);

/** Names of loads with "wind 290", and its factor, tied together: no line ends in them. */
const char *tt_say_tied(tt_report *out, const char *text);

/** "wind 290" of loads together, tied; NULL: none is in it. */
const char *tt_say_wind_in(tt_report *out, const char *together);

/** The title of a check; words for what no check computes yet; the name itself where neither is. */
const char *tt_say_check(const char *name);

/** The title, and where there is no use why not. */
const char *tt_say_judged(tt_report *out, const tt_finding *finding);

/** Use in whole per cent, rounded up; with a decimal more where whole ones would contradict the
 *  judgement. " of 90 % allowed" behind it when less than all is allowed. "none" without a use. */
const char *tt_say_use(tt_report *out, const tt_finding *finding, double allowed);

/** Margin in whole per cent, rounded down, and never 0 for what falls short. */
const char *tt_say_margin(tt_report *out, const tt_finding *finding);

/** Does its margin count the lower casting quality of a neck, so that it is less than the use says?
 */
bool tt_margin_of_neck(const tt_assessment *a, const tt_finding *finding);

/** An armature that does not go in: a use says little of it. "needs 89 mm, has 51 mm". */
bool tt_never_fits(const tt_finding *finding);
const char *tt_say_misfit(tt_report *out, const tt_assessment *a, const tt_finding *finding);

/** "6.10 sup: ... (heavy weight, armature alone)"; "" where no load is in it. */
const char *tt_say_loads(tt_report *out, const tt_assessment *a, const tt_finding *finding);

/** The alloy of most segments, the steel of the armature; NULL where there is none. */
const tt_metal *tt_main_alloy(const tt_piece *piece);
const tt_metal *tt_main_steel(const tt_piece *piece);

/** "5 mm (4 mm to 7 mm)"; without the brackets where there is no spread. */
const char *tt_say_spread(tt_report *out, const tt_given *given, const char *unit,
                          tt_unit_system system);

/** Do the two carry models differ: is there an armature inside bronze anywhere? */
bool tt_two_models(const tt_assessment *a);

/** "35 deg" of a level direction, counted as a wind is: 0 towards +x, 90 towards +y. */
const char *tt_say_bearing(tt_report *out, tt_vec3 way);

/* ---- worst of all -----------------------------------------------------------------------------
 */

/** What a stand presses on the ground with: the worst of each by itself, over all loads together of
 *  one level, both carry models and the patterns of weight. N, N.m. */
typedef struct {
    bool any; /* there are loads together of this level */
    double down, up, level, tilt, twist;
} tt_press;
tt_press tt_press_of(const tt_assessment *a, size_t stand, tt_level level);

#endif
