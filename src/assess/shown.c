/* assess/shown.c - the loads together that the result shows in full: the file's own, and those that
 * govern a check; each solved on the moved frame. */
#include "assess/assessment.h"
#include "assess/parts.h"

#include <string.h>

static int pattern_named(const char *name)
{
    int pattern = TT_NOMINAL;
    for (int i = 0; name && i < TT_PATTERNS; i++) {
        if (strcmp(tt_pattern_name[i], name) == 0) pattern = i;
    }
    return pattern;
}

static tt_status show(tt_assessment *a, const tt_exact *exact)
{
    if (!exact) return tt_second_failed(a->second);
    tt_shown *list = &a->shown[exact->carry];
    for (size_t i = 0; i < list->n; i++) {
        if (list->at[i] == exact) return TT_OK;
    }
    return tt_list_push(list, exact) ? TT_OK : TT_E_NOMEM;
}

/* Leaning the way that stores most energy. */
static tt_status show_leaning(tt_assessment *a, int carry, const tt_combination *together,
                              int pattern)
{
    const tt_situation of = tt_likeliest_lean(a->second, carry, together, pattern);
    return show(a, tt_situation_exact(a->second, carry, &of));
}

static const tt_combination *named(const tt_assessment *a, const char *name)
{
    for (size_t i = 0; name && i < a->combinations.n; i++) {
        if (strcmp(a->combinations.at[i].name, name) == 0) return &a->combinations.at[i];
    }
    return NULL;
}

static tt_status show_finding(tt_assessment *a, const tt_finding *finding)
{
    const tt_combination *together = named(a, finding->combination);
    tt_status status = TT_OK;
    if (finding->exact) return show(a, finding->exact);
    for (int carry = 0; carry < TT_MODELS && together && finding->model; carry++) {
        if (strcmp(finding->model, tt_model_name[carry]) == 0)
            status = show_leaning(a, carry, together, pattern_named(finding->pattern));
    }
    return status;
}

tt_status tt_assessment_show(tt_assessment *a)
{
    tt_status status = TT_OK;
    for (int k = 0; k < TT_MODELS; k++) {
        for (size_t i = 0; i < a->combinations.n && status == TT_OK; i++) {
            const tt_combination *together = &a->combinations.at[i];
            if (together->own) status = show_leaning(a, k, together, TT_NOMINAL);
        }
    }
    for (size_t i = 0; i < a->findings.list.n && status == TT_OK; i++) {
        status = show_finding(a, &a->findings.list.at[i]);
    }
    return status;
}

tt_status tt_assessment_weight_buckling(const tt_assessment *a, int carry, tt_pool *pool,
                                        tt_buckling *out)
{
    *out = (tt_buckling){.n = 0};
    if (!a->second) return TT_OK;
    return tt_frame_buckling(a->model->frame[carry], &a->actions.cases.at[TT_NOMINAL].on,
                             &a->solution.answer[carry][TT_NOMINAL].state, 1, pool, out);
}
