/* assess/shown.c - the loads together that the result shows in full: the file's own, and those that
 * govern a check; each solved on the moved frame. */
#include "assess/assessment.h"
#include "assess/parts.h"

static tt_status show(tt_assessment *a, const tt_exact *exact)
{
    if (!exact) return tt_second_failed(a->second);
    tt_shown *list = &a->shown[exact->carry];
    for (size_t i = 0; i < list->n; i++) {
        if (list->at[i] == exact) return TT_OK;
    }
    return tt_list_push(list, exact) ? TT_OK : TT_E_NOMEM;
}

/* The file's own: the nominal weight, leaning the way that stores most energy. */
static tt_status show_own(tt_assessment *a, int carry, const tt_combination *together)
{
    const tt_situation of = tt_likeliest_lean(a->second, carry, together, TT_NOMINAL);
    return show(a, tt_situation_exact(a->second, carry, &of));
}

tt_status tt_assessment_show(tt_assessment *a)
{
    tt_status status = TT_OK;
    for (int k = 0; k < TT_MODELS; k++) {
        for (size_t i = 0; i < a->combinations.n && status == TT_OK; i++) {
            const tt_combination *together = &a->combinations.at[i];
            if (together->own) status = show_own(a, k, together);
        }
    }
    for (size_t i = 0; i < a->findings.list.n && status == TT_OK; i++) {
        if (a->findings.list.at[i].exact) status = show(a, a->findings.list.at[i].exact);
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
