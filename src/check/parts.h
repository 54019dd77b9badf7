/* check/parts.h - what checks share: writing a finding, and searching the worst cut of a segment.
 */
#ifndef TT_CHECK_PARTS_H
#define TT_CHECK_PARTS_H

#include "check/check.h"

/** A finding with use, margin and verdict from demand, resistance and the limit of use. A
 *  resistance of nothing under a demand falls short without a use: `why` says it. */
tt_finding tt_finding_of(const tt_check_input *in, const char *check, double demand,
                         double resistance, const char *unit, const char *why);

/** Steps for a finding: started on the findings' pool, moved into the finding. */
tt_steps tt_steps_start(tt_findings *out);
bool tt_finding_add(tt_findings *out, tt_finding finding, tt_steps *steps);
/** Adds a finding whose lines are made when they are asked for. */
tt_status tt_finding_keep(tt_findings *out, tt_finding finding);

bool tt_unchecked_add(tt_findings *out, tt_unchecked entry);
/** Members to be chosen, flats too slender sideways. False without memory. */
bool tt_unchecked_members(const tt_check_input *in, tt_findings *out);
/** Ends of the armature and seams that count nothing. False without memory. */
bool tt_unchecked_transfer(const tt_check_input *in, tt_findings *out);
/** Stands that rest and would lift, not checked. False without memory. */
bool tt_lifting(const tt_check_input *in, tt_findings *out);
bool tt_inapplicable_add(tt_findings *out, const char *check, const char *why);

/** A cut with all that acts on it. */
typedef struct {
    const tt_check_input *in;
    const tt_cut *cut;
    int carry;
    tt_forces whole; /* section forces of the cut */
} tt_loaded_cut;

/** How a part of a cut is judged. */
typedef struct {
    /** Stress from what the part must take of at->whole, Pa: a norm of the section forces (stress
     * of a sum is at most the sum of stresses), so that it may be bounded case by case. Negative
     * where the part is not asked at that cut in that carry model. */
    double (*stress)(const tt_loaded_cut *at);
    /** Use under that stress: never falls when the stress rises; INFINITY without a resistance. */
    double (*use)(const tt_loaded_cut *at, double stress);
    bool levels[TT_LEVELS]; /* of combinations that it is asked under */
} tt_judged_part;

/** The worst of a segment: over cuts, both carry models, combinations of the accepted levels,
 *  heavy and light weight, ways of leaning, all of second order; then one parabola step between the
 *  worst cut and its neighbours. What cannot be worse by its first order and the bound of what
 *  second order adds is passed over: the worst is that of all. */
struct tt_worst {
    bool any;
    bool buckles; /* the piece buckles under it: there are no forces */
    double use;
    tt_cut cut;     /* a copy: it may lie between the model's cuts */
    size_t nearest; /* the model's cut that it is, or came from */
    int carry, pattern;
    const tt_combination *together;
    const tt_exact *exact; /* the situation, solved on the moved frame */
    tt_forces whole;       /* of it, in the axes of the cut as it has turned */
};

/** floor: a use that some segment surely has. TT_E_NOMEM, or what a solution of second order failed
 *  with. */
tt_status tt_worst_of(const tt_check_input *in, size_t segment, const tt_judged_part *part,
                      double floor, tt_worst *worst);
/** The largest use of first order in a segment. TT_E_NOMEM */
tt_status tt_most_of_first(const tt_check_input *in, size_t segment, const tt_judged_part *part,
                           double *use);

/** A check that judges segment by segment: those that it applies to. Does not apply, with `why`,
 * when there are none. */
typedef struct {
    const char *check, *why;
    bool (*applies)(const tt_segment *segment);
    const tt_judged_part *part; /* NULL: judged without loads */
    /** floor: a use of `part` that some segment surely has. */
    tt_status (*judge)(const tt_check_input *in, size_t segment, double floor, tt_findings *out);
} tt_by_segment;

tt_status tt_judge_segments(const tt_check_input *in, const tt_by_segment *by, tt_findings *out);

/** Efficiency of the bronze at a cut: 1, or that of its alloy's seams where one is possible. */
double tt_seam_at(const tt_check_input *in, const tt_cut *cut);

/** What the bronze, and the armature, of a cut must take in a carry model. */
tt_forces tt_on_bronze(const tt_loaded_cut *at);
tt_forces tt_on_armature(const tt_loaded_cut *at);

/** Adds the row of a segment whose worst is that the piece buckles: a use of null. */
tt_status tt_finding_buckled(const tt_check_input *in, tt_findings *out, const char *check,
                             const tt_worst *worst);

/** Fills where, segment, x, combination, pattern and model of a finding from the worst. */
void tt_finding_place(const tt_check_input *in, tt_findings *out, const tt_worst *worst,
                      tt_finding *finding);

/** Lines on the section forces, unit case by unit case, and what a part (`on`) takes of them. */
void tt_steps_forces(tt_steps *steps, const tt_check_input *in, const tt_worst *worst,
                     bool of_bronze, const tt_forces *on);

/** Lines on the stress of a part. */
void tt_steps_stress(tt_steps *steps, const tt_section *s, const tt_forces *f,
                     const tt_stress *stress);

/** Key of the leading action's magnitude when it is a default; NULL. */
const char *tt_default_behind(const tt_check_input *in, const tt_worst *worst);
const char *tt_default_key(const tt_piece *piece, unsigned origin);

#endif
