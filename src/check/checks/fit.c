/* check/checks/fit.c - does the armature pass inside the bronze: the circle round the member plus 3
 * mm all round, where the member lies, against what the high wall leaves free, at every cut. m. */
#include "check/parts.h"

#include <math.h>

static const char name[] = "fit";
static const double clearance = 3e-3; /* m all round: common practice, no source */

/* Diameter of the largest circle round the member's own centre that the bronze leaves free. */
static double room_at(const tt_segment *segment, double x)
{
    const tt_outline outline = tt_segment_outline(segment, x);
    const tt_vec2 off = tt_member_off(&segment->armature, x);
    const double wall = segment->solid ? INFINITY : tt_segment_wall(segment, x, 1);
    return fmax(0.0, 2.0 * (tt_outline_depth(&outline, off.x, off.y) - wall));
}

static const tt_cut *tightest_of(const tt_model *model, size_t index, const tt_segment *segment)
{
    const tt_cut *tightest = &model->cuts.at[model->first_cut[index]];
    double least = INFINITY;
    for (size_t c = model->first_cut[index]; c < model->first_cut[index + 1]; c++) {
        const tt_cut *cut = &model->cuts.at[c];
        const double spare =
            room_at(segment, cut->x) - tt_member_girdle(&segment->armature, cut->x);
        if (spare >= least) continue;
        tightest = cut;
        least = spare;
    }
    return tightest;
}

static tt_status judge(const tt_check_input *in, size_t index, double unread, tt_findings *out)
{
    (void)unread;
    const tt_segment *segment = &in->piece->segments.at[index];
    const tt_cut *tightest = tightest_of(in->model, index, segment);
    const double room = room_at(segment, tightest->x);
    const double girdle = tt_member_girdle(&segment->armature, tightest->x);
    const double need = girdle + 2.0 * clearance;
    const tt_source *practice = tt_source_of(TT_S_assumption);
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "need", "d + 2*0.003", need, "m", practice, "%.5g + 2*0.003", girdle);
    tt_step_add(&steps, "bore",
                "largest circle inside round the member's centre, the wall at its high end", room,
                "m", tt_source_of(TT_S_geometry), NULL);
    tt_finding finding =
        tt_finding_of(in, name, need, room, "m", "the wall, at its thickest, leaves no room there");
    finding.holds = need <= room; /* a clearance is had or not: limits.use is no part of it */
    if (finding.has_use) finding.margin = room / need - 1.0;
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
    const tt_by_segment by = {name, "no armature inside bronze", applies, NULL, judge};
    return tt_judge_segments(in, &by, out);
}

const tt_check tt_check_fit = {
    .name = name,
    .title = "fit of the armature",
    .explain =
        "At every cut the largest circle inside the bronze round the middle of the armature, the "
        "wall taken at the high end of its spread, must leave 3 mm of room all round. A box or a "
        "flat counts by its diagonal.",
    .source = TT_S_assumption,
    .run = run};
