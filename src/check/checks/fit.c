/* check/checks/fit.c - does the armature pass inside the bronze: member plus 3 mm all round against
 * the largest circle inside the high wall, at every cut. m. */
#include "check/parts.h"

#include <math.h>

static const char name[] = "fit";
static const double clearance = 3e-3; /* m all round: common practice, no source */

static tt_status judge(const tt_check_input *in, size_t index, tt_findings *out)
{
    const tt_model *model = in->model;
    const tt_segment *segment = &in->piece->segments.at[index];
    const tt_cut *tightest = &model->cuts.at[model->first_cut[index]];
    double least = INFINITY;
    for (size_t c = model->first_cut[index]; c < model->first_cut[index + 1]; c++) {
        const tt_cut *cut = &model->cuts.at[c];
        const double spare = cut->bore - tt_member_od(&segment->armature, cut->x);
        if (spare >= least) continue;
        tightest = cut;
        least = spare;
    }
    const double od = tt_member_od(&segment->armature, tightest->x), need = od + 2.0 * clearance;
    const tt_source *practice = tt_source_of(TT_S_assumption);
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "need", "d + 2*0.003", need, "m", practice, "%.5g + 2*0.003", od);
    tt_step_add(&steps, "bore", "largest circle inside, the wall at its high end", tightest->bore,
                "m", tt_source_of(TT_S_geometry), NULL);
    tt_finding finding = tt_finding_of(in, name, need, tightest->bore, "m",
                                       "the wall, at its thickest, fills the limb");
    finding.holds =
        need <= tightest->bore; /* a clearance is had or not: limits.use is no part of it */
    if (finding.has_use) finding.margin = tightest->bore / need - 1.0;
    finding.segment = index;
    finding.x = tightest->x;
    finding.where = tt_piece_where(in->piece, &out->pool, index, tightest->x);
    finding.default_key = tt_default_key(in->piece, segment->wall.origin);
    return finding.where && tt_finding_add(out, finding, &steps) ? TT_OK : TT_E_NOMEM;
}

static bool applies(const tt_segment *segment)
{
    return segment->armature.form != TT_MEMBER_NONE && segment->outline.kind != TT_OUTLINE_NONE;
}

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_by_segment by = {name, "no armature inside bronze", applies, judge};
    return tt_judge_segments(in, &by, out);
}

const tt_check tt_check_fit = {
    .name = name,
    .title = "fit of the armature",
    .explain =
        "At every cut the largest circle inside the bronze, its wall taken at the high end of "
        "its spread, must leave the armature 3 mm of room all round.",
    .source = TT_S_assumption,
    .run = run};
