/* check/findings.c - writing findings: use, margin, and what holds. */
#include "check/parts.h"

#include <math.h>

tt_finding tt_finding_of(const tt_check_input *in, const char *check, double demand,
                         double resistance, const char *unit, const char *why)
{
    const double allowed = in->piece->limits.use.is;
    tt_finding finding = {.check = check,
                          .segment = TT_NONE,
                          .demand = demand,
                          .resistance = resistance,
                          .unit = unit};
    if (resistance > 0.0) {
        finding.has_use = true;
        finding.use = demand / resistance;
        finding.margin = finding.use > 0.0 ? allowed / finding.use - 1.0 : INFINITY;
        finding.holds = finding.use <= allowed;
    } else {
        finding.holds = false;
        finding.why = why;
    }
    return finding;
}

tt_steps tt_steps_start(tt_findings *out)
{
    return (tt_steps){.pool = &out->pool};
}

bool tt_finding_add(tt_findings *out, tt_finding finding, tt_steps *steps)
{
    bool fits = !steps->failed;
    if (steps->list.n) {
        tt_step *kept = tt_pool_take(&out->pool, steps->list.n, sizeof *kept);
        for (size_t i = 0; kept && i < steps->list.n; i++) kept[i] = steps->list.at[i];
        finding.steps = kept;
        finding.steps_n = kept ? steps->list.n : 0;
        fits = fits && kept;
    }
    tt_list_clear(&steps->list);
    return fits && tt_list_push(&out->list, finding);
}

tt_status tt_finding_keep(tt_findings *out, tt_finding finding)
{
    const bool whole = finding.where && finding.worst;
    return whole && tt_list_push(&out->list, finding) ? TT_OK : TT_E_NOMEM;
}

void tt_finding_lines(const tt_check_input *in, const tt_finding *finding, tt_steps *steps)
{
    if (finding->lines && finding->worst) finding->lines(in, finding->worst, steps);
    for (size_t i = 0; i < finding->steps_n; i++)
        steps->failed |= !tt_list_push(&steps->list, finding->steps[i]);
}

bool tt_unchecked_add(tt_findings *out, tt_unchecked entry)
{
    return tt_list_push(&out->unchecked, entry);
}

bool tt_inapplicable_add(tt_findings *out, const char *check, const char *why)
{
    return tt_list_push(&out->inapplicable, (tt_inapplicable){check, why});
}

void tt_findings_clear(tt_findings *findings)
{
    tt_list_clear(&findings->list);
    tt_list_clear(&findings->unchecked);
    tt_list_clear(&findings->inapplicable);
    tt_pool_clear(&findings->pool);
}

const char *tt_default_key(const tt_piece *piece, unsigned origin)
{
    const tt_origin *from = &piece->origins.at[origin];
    return from->kind == TT_ORIGIN_DEFAULT ? from->key : NULL;
}

/* With no variable action it is the weight that leads: where most of it is bronze its magnitude
 * comes from what the bronze is multiplied by. A wind's or an own load's magnitude is always given.
 */
const char *tt_default_behind(const tt_check_input *in, const tt_worst *worst)
{
    if (worst->together->leading != TT_NONE) return NULL;
    if (in->model->weight[TT_NOMINAL].bronze < 0.5 * tt_model_mass(in->model, TT_NOMINAL))
        return NULL;
    const tt_segment *segment = &in->piece->segments.at[worst->cut.segment];
    const char *key = tt_default_key(in->piece, segment->wall.origin);
    if (!key && !segment->solid) key = tt_default_key(in->piece, segment->surface.origin);
    return key ? key : tt_default_key(in->piece, segment->extra.origin);
}

void tt_finding_place(const tt_check_input *in, tt_findings *out, const tt_worst *worst,
                      tt_finding *finding)
{
    finding->where = tt_piece_where(in->piece, &out->pool, worst->cut.segment, worst->cut.x);
    finding->segment = worst->cut.segment;
    finding->x = worst->cut.x;
    finding->combination = worst->together->name;
    finding->pattern = tt_pattern_name[worst->pattern];
    finding->model = tt_model_name[worst->carry];
    finding->exact = worst->exact;
    finding->default_key = tt_default_behind(in, worst);
    tt_worst *kept = tt_pool_take(&out->pool, 1, sizeof *kept);
    if (kept) *kept = *worst;
    finding->worst = kept;
}

tt_status tt_finding_buckled(const tt_check_input *in, tt_findings *out, const char *check,
                             const tt_worst *worst)
{
    tt_finding finding = tt_finding_of(in, check, 0.0, 0.0, "Pa", "buckles");
    tt_finding_place(in, out, worst, &finding);
    return tt_finding_keep(out, finding);
}

/* Of the segment with the largest use of first order the worst, which the others must pass to
 * govern. */
static tt_status floor_of(const tt_check_input *in, const tt_by_segment *by, double *floor)
{
    size_t steepest = TT_NONE;
    double most = 0.0;
    tt_worst worst;
    *floor = 0.0;
    for (size_t s = 0; s < in->piece->segments.n && by->part; s++) {
        double use = 0.0;
        if (!by->applies(&in->piece->segments.at[s])) continue;
        const tt_status status = tt_most_of_first(in, s, by->part, &use);
        if (status != TT_OK) return status;
        if (use > most && isfinite(use)) steepest = s;
        if (use > most && isfinite(use)) most = use;
    }
    if (steepest == TT_NONE) return TT_OK;
    const tt_status status = tt_worst_of(in, steepest, by->part, 0.0, &worst);
    if (worst.any && isfinite(worst.use)) *floor = worst.use;
    return status;
}

tt_status tt_judge_segments(const tt_check_input *in, const tt_by_segment *by, tt_findings *out)
{
    bool any = false;
    double floor;
    tt_status status = floor_of(in, by, &floor);
    for (size_t s = 0; s < in->piece->segments.n && status == TT_OK; s++) {
        if (!by->applies(&in->piece->segments.at[s])) continue;
        any = true;
        status = by->judge(in, s, floor, out);
    }
    if (any || status != TT_OK) return status;
    return tt_inapplicable_add(out, by->check, by->why) ? TT_OK : TT_E_NOMEM;
}
