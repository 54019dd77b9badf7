/* record/checks.c - what was judged, what was not, what does not apply, and the cautions. */
#include "record/put.h"

/* "use" is null for what has none; a margin without bound (nothing acts) is null likewise. */
static void use_and_margin(tt_record *r, cJSON *row, const tt_finding *finding)
{
    const bool bounded = finding->has_use && finding->use != 0.0;
    tt_put(r, row, "use", finding->has_use ? tt_make_number(r, finding->use) : tt_make_null(r));
    tt_put(r, row, "margin", bounded ? tt_make_number(r, finding->margin) : tt_make_null(r));
}

static void place_and_loads(tt_record *r, cJSON *row, const tt_finding *finding)
{
    tt_put_text(r, row, "check", finding->check);
    tt_put_text(r, row, "where", finding->where);
    tt_put_place(r, row, finding->segment, finding->x);
    tt_put_text(r, row, "combination", finding->combination);
    tt_put_text(r, row, "pattern", finding->pattern);
    tt_put_text(r, row, "model", finding->model);
}

cJSON *tt_record_governing(tt_record *r)
{
    if (r->a->governing == TT_NONE) return tt_make_null(r);
    cJSON *row = tt_make_object(r);
    const tt_finding *finding = &r->a->findings.list.at[r->a->governing];
    place_and_loads(r, row, finding);
    use_and_margin(r, row, finding);
    return row;
}

static void check(tt_record *r, cJSON *checks, const tt_finding *finding)
{
    cJSON *row = tt_put(r, checks, NULL, tt_make_object(r));
    place_and_loads(r, row, finding);
    tt_put_number(r, row, "demand", finding->demand);
    tt_put_number(r, row, "resistance", finding->resistance);
    tt_put_text(r, row, "unit", finding->unit);
    use_and_margin(r, row, finding);
    tt_put_bool(r, row, "holds", finding->holds);
    if (!finding->has_use) tt_put_text(r, row, "why", finding->why);
    cJSON *assumes = tt_put(r, row, "assumes", tt_make_array(r));
    for (const char *const *line = finding->assumes; line && *line; line++)
        tt_put_text(r, assumes, NULL, *line);
    tt_pool pool = {0};
    tt_steps steps = {.pool = &pool};
    tt_assessment_lines(r->a, finding, &steps);
    if (steps.failed) r->status = TT_E_NOMEM;
    tt_put_steps(r, row, steps.list.at, steps.list.n);
    tt_list_clear(&steps.list);
    tt_pool_clear(&pool);
}

cJSON *tt_record_checks(tt_record *r)
{
    cJSON *checks = tt_make_array(r);
    for (size_t i = 0; i < r->a->findings.list.n; i++) check(r, checks, &r->a->findings.list.at[i]);
    return checks;
}

cJSON *tt_record_not_checked(tt_record *r)
{
    cJSON *list = tt_make_array(r);
    for (size_t i = 0; i < r->a->findings.unchecked.n; i++) {
        const tt_unchecked *item = &r->a->findings.unchecked.at[i];
        cJSON *row = tt_put(r, list, NULL, tt_make_object(r));
        tt_put_text(r, row, "check", item->check);
        tt_put_text(r, row, "where", item->where);
        tt_put_bool(r, row, "needed", item->needed);
        tt_put_text(r, row, "why", item->why);
        tt_put_text(r, row, "give", item->give);
        tt_put(r, row, "demand",
               item->has_demand ? tt_make_number(r, item->demand) : tt_make_null(r));
        if (item->has_demand) tt_put_text(r, row, "unit", item->unit);
    }
    return list;
}

cJSON *tt_record_not_applicable(tt_record *r)
{
    cJSON *list = tt_make_array(r);
    for (size_t i = 0; i < r->a->findings.inapplicable.n; i++) {
        cJSON *row = tt_put(r, list, NULL, tt_make_object(r));
        tt_put_text(r, row, "check", r->a->findings.inapplicable.at[i].check);
        tt_put_text(r, row, "why", r->a->findings.inapplicable.at[i].why);
    }
    return list;
}

cJSON *tt_record_cautions(tt_record *r)
{
    cJSON *list = tt_make_array(r);
    for (const char *const *caution = tt_cautions(); *caution; caution++)
        tt_put_text(r, list, NULL, *caution);
    return list;
}
