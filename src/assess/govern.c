/* assess/govern.c - findings from the worst to the least, the one that governs, and the verdict. */
#include "assess/parts.h"

#include <math.h>

/* What falls short without a resistance stands before everything, then what falls short. What holds
 * and has no load in it (the fit of a tube, a limit of weight) says how little room there is, not
 * how near the piece is to breaking: it stands last. */
static double rank(const tt_finding *finding)
{
    if (!finding->has_use) return INFINITY;
    if (!finding->holds) return finding->use + 1e6;
    return finding->model ? finding->use : finding->use - 1e6;
}

static void sort(const tt_findings *findings, size_t *order)
{
    const size_t n = findings->list.n;
    for (size_t i = 0; i < n; i++) {
        size_t k = i;
        const double mine = rank(&findings->list.at[i]);
        while (k > 0 && rank(&findings->list.at[order[k - 1]]) < mine) {
            order[k] = order[k - 1];
            k--;
        }
        order[k] = i;
    }
}

static tt_verdict verdict(const tt_findings *findings)
{
    for (size_t i = 0; i < findings->list.n; i++) {
        if (!findings->list.at[i].holds) return TT_FALLS_SHORT;
    }
    for (size_t i = 0; i < findings->unchecked.n; i++) {
        if (findings->unchecked.at[i].needed) return TT_NOT_CHECKED;
    }
    return TT_HOLDS;
}

tt_status tt_assessment_govern(tt_assessment *a)
{
    const size_t n = a->findings.list.n;
    a->order = tt_pool_take(&a->pool, n, sizeof *a->order);
    if (!a->order) return TT_E_NOMEM;
    sort(&a->findings, a->order);
    a->verdict = verdict(&a->findings);
    if (n == 0) return TT_OK;
    a->governing = a->order[0];
    a->decided_by_default = a->findings.list.at[a->governing].default_key;
    return TT_OK;
}

const size_t *tt_assessment_order(const tt_assessment *a)
{
    return a->order;
}
