/* check/checks/frequency.c - the lowest frequency of the softer carry model, heavy weight, against
 * the limit of the file. Hz. */
#include "check/parts.h"

#include <math.h>

static const char name[] = "frequency";

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_limits *limits = &in->piece->limits;
    if (!limits->has_frequency)
        return tt_inapplicable_add(out, name,
                                   "no limits.frequency is given; the frequencies are told")
                   ? TT_OK
                   : TT_E_NOMEM;
    double lowest = INFINITY;
    int softer = TT_ALONE;
    for (int carry = 0; carry < TT_MODELS; carry++) {
        const tt_modes *modes = &in->solution->modes[carry];
        const double f = modes->n ? tt_mode_heavy_frequency(in->model, &modes->at[0]) : INFINITY;
        if (f >= lowest) continue;
        lowest = f;
        softer = carry;
    }
    if (!isfinite(lowest))
        return tt_inapplicable_add(out, name, "nothing can swing") ? TT_OK : TT_E_NOMEM;
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "f_1", NULL, lowest, "Hz", tt_source_of(TT_S_elasticity), NULL);
    tt_finding finding = tt_finding_of(in, name, limits->frequency.is, lowest, "Hz", NULL);
    finding.where = "the whole piece";
    finding.model = tt_model_name[softer];
    finding.pattern = tt_pattern_name[TT_HEAVY];
    return tt_finding_add(out, finding, &steps) ? TT_OK : TT_E_NOMEM;
}

const tt_check tt_check_frequency = {
    .name = name,
    .title = "frequency",
    .explain = "The lowest frequency at which the piece swings, in the softer carry "
               "model and heavy, must not be below limits.frequency.",
    .source = TT_S_elasticity,
    .run = run};
