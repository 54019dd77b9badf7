/* check/checks/mass.c - the heavy weight against the limit that the file gives. kg. */
#include "check/parts.h"

static const char name[] = "mass";

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_limits *limits = &in->piece->limits;
    if (!limits->has_mass)
        return tt_inapplicable_add(out, name, "no limits.mass is given") ? TT_OK : TT_E_NOMEM;
    const double heavy = tt_model_mass_told(in->model, TT_HEAVY);
    tt_finding finding = tt_finding_of(in, name, heavy, limits->mass.is, "kg", NULL);
    finding.holds = heavy <= limits->mass.is; /* the limit is the file's own */
    finding.margin = limits->mass.is / heavy - 1.0;
    finding.where = "the whole piece";
    finding.pattern = tt_pattern_name[TT_HEAVY];
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "m", "bronze + armature + lumps, all high", heavy, "kg",
                tt_source_of(TT_S_statics), "%.5g + %.5g + %.5g",
                in->model->weight[TT_HEAVY].bronze, in->model->weight[TT_HEAVY].armature,
                in->model->weight[TT_HEAVY].lumps);
    return tt_finding_add(out, finding, &steps) ? TT_OK : TT_E_NOMEM;
}

const tt_check tt_check_mass = {
    .name = name,
    .title = "weight",
    .explain = "The piece at the heavy end of every spread against the limit given in "
               "limits.mass.",
    .source = TT_S_statics,
    .run = run};
