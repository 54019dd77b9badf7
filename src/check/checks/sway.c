/* check/checks/sway.c - the largest level movement of any place over the height of the piece, under
 * service loads, in the softer carry model. A ratio. */
#include "check/parts.h"

static const char name[] = "sway";

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_limits *limits = &in->piece->limits;
    tt_sway most;
    const tt_status status = tt_sway_find(in, &most);
    if (status != TT_OK) return status;
    if (!limits->has_sway)
        return tt_inapplicable_add(out, name, "no limits.sway is given; the movement is told")
                   ? TT_OK
                   : TT_E_NOMEM;
    if (!most.together || most.height <= 0.0)
        return tt_inapplicable_add(out, name, "no service loads, or no height") ? TT_OK
                                                                                : TT_E_NOMEM;
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "sway", "u/h", most.move / most.height, "", tt_source_of(TT_S_statics),
                "%.5g/%.5g", most.move, most.height);
    tt_finding finding =
        tt_finding_of(in, name, most.move / most.height, limits->sway.is, "", NULL);
    finding.where = in->piece->points.at[most.point].name;
    finding.combination = most.together->name;
    finding.pattern = tt_pattern_name[most.pattern];
    finding.model = tt_model_name[most.carry];
    finding.exact = most.exact;
    if (most.buckles) {
        finding.has_use = finding.holds = false;
        finding.why = "buckles";
    }
    return tt_finding_add(out, finding, &steps) ? TT_OK : TT_E_NOMEM;
}

const tt_check tt_check_sway = {
    .name = name,
    .title = "sway",
    .explain = "The largest level movement of any place under service loads, over the "
               "height of the piece above (or below) its stand, of second order and with the piece "
               "leaning, against limits.sway.",
    .source = TT_S_statics,
    .run = run};
