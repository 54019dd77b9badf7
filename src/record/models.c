/* record/models.c - both carry models: their cases, loads together, modes; and the list of all
 * loads together. Of those, `models` shows the file's own and the ones that govern a check. */
#include "record/answer.h"

#include <string.h>

typedef TT_LIST(tt_asked) askings;

static int pattern_named(const char *name)
{
    int pattern = TT_NOMINAL;
    for (int i = 0; name && i < TT_PATTERNS; i++) {
        if (strcmp(tt_pattern_name[i], name) == 0) pattern = i;
    }
    return pattern;
}

static void ask(tt_record *r, askings *list, tt_asked asked)
{
    for (size_t i = 0; i < list->n; i++) {
        if (list->at[i].together == asked.together && list->at[i].pattern == asked.pattern) return;
    }
    if (!tt_list_push(list, asked)) r->status = TT_E_NOMEM;
}

static void ask_all(tt_record *r, int carry, askings *list)
{
    const tt_assessment *a = r->a;
    for (size_t i = 0; i < a->combinations.n; i++) {
        const tt_asked own = {carry, TT_NONE, &a->combinations.at[i], TT_NOMINAL};
        if (own.together->own) ask(r, list, own);
    }
    for (size_t i = 0; i < a->findings.list.n; i++) {
        const tt_finding *finding = &a->findings.list.at[i];
        const size_t at = tt_combination_named(a, finding->combination);
        if (at == TT_NONE || !finding->model || strcmp(finding->model, tt_model_name[carry]) != 0)
            continue;
        ask(r, list,
            (tt_asked){carry, TT_NONE, &a->combinations.at[at], pattern_named(finding->pattern)});
    }
}

static void combinations(tt_record *r, cJSON *model, int carry)
{
    askings list = {0};
    ask_all(r, carry, &list);
    cJSON *rows = tt_put(r, model, "combinations", tt_make_array(r));
    for (size_t i = 0; i < list.n; i++) {
        const tt_combination *together = list.at[i].together;
        cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
        tt_put_text(r, row, "name", together->name);
        tt_put_text(r, row, "level", tt_level_word(together->level));
        tt_put_text(r, row, "pattern", tt_pattern_name[list.at[i].pattern]);
        tt_put_sum(r, row, together);
        tt_put_bool(r, row, "second_order", false);
        tt_put_answer(r, row, &list.at[i]);
    }
    tt_list_clear(&list);
}

static void cases(tt_record *r, cJSON *model, int carry)
{
    cJSON *rows = tt_put(r, model, "cases", tt_make_array(r));
    for (size_t i = 0; i < r->a->actions.cases.n; i++) {
        cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
        tt_put_text(r, row, "name", tt_case_words(r->a, i));
        tt_put_answer(r, row, &(tt_asked){carry, i, NULL, TT_NOMINAL});
    }
}

/* The frame tells shares of the mass that can move; the result tells shares of the whole. */
static void mode(tt_record *r, cJSON *rows, const tt_modes *modes, size_t i)
{
    const double whole = tt_model_mass(r->a->model, TT_NOMINAL);
    double share[3] = {0};
    for (int k = 0; whole > 0.0 && k < 3; k++) {
        share[k] = modes->at[i].mass_fraction[k] * modes->free_mass[k] / whole;
    }
    cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
    tt_put_number(r, row, "frequency_Hz", modes->at[i].frequency);
    tt_put(r, row, "mass_fraction", tt_make_numbers(r, share, 3));
    cJSON *shape = tt_put(r, row, "shape", tt_make_array(r));
    for (size_t p = 0; p < r->a->piece->points.n; p++)
        tt_put_move(r, shape, p, modes->at[i].shape[p]);
}

cJSON *tt_record_models(tt_record *r)
{
    cJSON *models = tt_make_array(r);
    for (int carry = 0; carry < TT_MODELS; carry++) {
        cJSON *model = tt_put(r, models, NULL, tt_make_object(r));
        tt_put_text(r, model, "name", tt_model_name[carry]);
        cases(r, model, carry);
        combinations(r, model, carry);
        cJSON *rows = tt_put(r, model, "modes", tt_make_array(r));
        const tt_modes *modes = &r->a->solution.modes[carry];
        for (size_t i = 0; i < modes->n; i++) mode(r, rows, modes, i);
    }
    return models;
}

cJSON *tt_record_combinations(tt_record *r)
{
    cJSON *list = tt_make_array(r);
    for (size_t i = 0; i < r->a->combinations.n; i++) {
        const tt_combination *together = &r->a->combinations.at[i];
        cJSON *row = tt_put(r, list, NULL, tt_make_object(r));
        tt_put_text(r, row, "name", together->name);
        tt_put_text(r, row, "level", tt_level_word(together->level));
        tt_put_sum(r, row, together);
        if (together->level == TT_EQUILIBRIUM)
            tt_put_number(r, row, "weight_restoring", together->weight_restoring);
        tt_put_source(r, row, "source", &together->source);
        tt_put_text(r, row, "read", tt_mark_word(together->source.mark));
        tt_put(r, row, "pruned_by", tt_make_null(r));
    }
    return list;
}
