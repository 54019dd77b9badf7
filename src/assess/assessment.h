/* assess/assessment.h - the record of a judgement, for those who write it out. */
#ifndef TT_ASSESS_ASSESSMENT_H
#define TT_ASSESS_ASSESSMENT_H

#include "check/check.h"
#include "tiptoe/assess.h"

/** What the run proves about itself. */
typedef struct {
    double equilibrium; /* largest relative residual of all cases */
    double refinement;
    double energy;     /* largest relative difference of work done and strain energy */
    double mass_kg[3]; /* by segments and lumps; by the frame's mass; by the weight case / g */
    tt_mode_proof modes[TT_MODELS];
} tt_proof;

/** Loads together that the result shows with all that they do. */
typedef TT_LIST(const tt_exact *) tt_shown;

struct tt_assessment {
    const tt_piece *piece; /* lent */
    const tt_basis *basis;
    tt_model *model;
    tt_actions actions;
    tt_combinations combinations;
    tt_solution solution;
    tt_second_order *second;
    tt_shown shown[TT_MODELS]; /* the file's own, and those that govern a check */
    tt_findings findings;
    tt_balance balance;
    tt_sway sway;
    tt_proof proof;
    tt_verdict verdict;
    size_t *order;                  /* findings from the worst to the least */
    size_t governing;               /* index in findings.list, TT_NONE when there is none */
    const char *decided_by_default; /* key, or NULL */
    tt_pool pool;
};

/** Findings from the worst to the least: indices into findings.list, [findings.list.n]. */
const size_t *tt_assessment_order(const tt_assessment *assessment);

/** How the nominal weight alone buckles the piece, in the pool. */
tt_status tt_assessment_weight_buckling(const tt_assessment *assessment, int carry, tt_pool *pool,
                                        tt_buckling *out);

/** The lines of calculation of a finding, added to `steps`. */
void tt_assessment_lines(const tt_assessment *assessment, const tt_finding *finding,
                         tt_steps *steps);

/** The cautions, always printed: NULL-ended. */
const char *const *tt_cautions(void);

#endif
