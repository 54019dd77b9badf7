/* compose/compose.c - the result of `check` as a document: its sections in their order. */
#include "compose/parts.h"

static void title(const tt_assessment *a, tt_report *out)
{
    const tt_piece *piece = a->piece;
    const char *revision =
        piece->revision ? tt_report_text(out, ", revision %s", piece->revision) : "";
    tt_report_heading(out, 1, tt_report_text(out, "tiptoe check: %s%s", piece->name, revision));
}

tt_status tt_compose_check(const tt_assessment *assessment, bool steps, tt_report *out)
{
    title(assessment, out);
    tt_compose_verdict(assessment, out);
    tt_compose_weight(assessment, out);
    tt_compose_tightest(assessment, out);
    tt_compose_sway(assessment, out);
    tt_compose_reactions(assessment, out);
    tt_compose_missing(assessment, out);
    tt_compose_given(assessment, out);
    if (steps) tt_compose_steps(assessment, out);
    tt_compose_cautions(assessment, out);
    if (out->failed) return TT_E_NOMEM;
    return out->not_finite ? TT_E_NOT_FINITE : TT_OK;
}
