/* record/models.c - both carry models: their cases, loads together, modes; and the list of all
 * loads together. Of those, `models` shows the file's own and the ones that govern a check. */
#include "record/answer.h"

static void combination(tt_record *r, cJSON *rows, const tt_exact *exact)
{
    const tt_combination *together = exact->of.together;
    const tt_vec3 way = tt_lean_way(r->a->second, &exact->of);
    cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
    tt_put_text(r, row, "name", together->name);
    tt_put_text(r, row, "level", tt_level_word(together->level));
    tt_put_text(r, row, "pattern", tt_pattern_name[exact->of.pattern]);
    tt_put_sum(r, row, together);
    tt_put_bool(r, row, "second_order", true);
    tt_put_vec3(r, row, "leans", way);
    tt_put_answer(r, row, &(tt_asked){exact->carry, TT_NONE, exact});
}

static void buckling_row(tt_record *r, cJSON *rows, const char *name, const char *pattern,
                         const tt_buckling *buckling)
{
    cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
    tt_put_text(r, row, "combination", name);
    tt_put_text(r, row, "pattern", pattern);
    if (!buckling->n) {
        tt_put(r, row, "factor", tt_make_null(r));
        return;
    }
    const tt_buckling_mode *mode = &buckling->at[0];
    tt_put_number(r, row, "factor", mode->factor);
    cJSON *proof = tt_put(r, row, "proof", tt_make_object(r));
    tt_put_number(r, proof, "below", (double)mode->below);
    tt_put_number(r, proof, "above", (double)mode->above);
    cJSON *shape = tt_put(r, row, "shape", tt_make_array(r));
    for (size_t p = 0; p < r->a->piece->points.n; p++) tt_put_move(r, shape, p, mode->shape[p]);
}

/* The weight alone, then the loads together that `combinations` shows. */
static void bucklings(tt_record *r, cJSON *model, int carry)
{
    cJSON *rows = tt_put(r, model, "buckling", tt_make_array(r));
    const tt_shown *shown = &r->a->shown[carry];
    tt_pool pool = {0};
    tt_buckling found;
    tt_status status = tt_assessment_weight_buckling(r->a, carry, &pool, &found);
    if (status == TT_OK) buckling_row(r, rows, "weight", tt_pattern_name[TT_NOMINAL], &found);
    for (size_t i = 0; i < shown->n && status == TT_OK; i++) {
        const tt_situation *of = &shown->at[i]->of;
        status = tt_situation_buckling(r->a->second, carry, of, 1, &pool, &found);
        if (status == TT_OK)
            buckling_row(r, rows, of->together->name, tt_pattern_name[of->pattern], &found);
    }
    if (status != TT_OK) r->status = status;
    tt_pool_clear(&pool);
}

static void combinations(tt_record *r, cJSON *model, int carry)
{
    cJSON *rows = tt_put(r, model, "combinations", tt_make_array(r));
    for (size_t i = 0; i < r->a->shown[carry].n; i++)
        combination(r, rows, r->a->shown[carry].at[i]);
    bucklings(r, model, carry);
}

static void cases(tt_record *r, cJSON *model, int carry)
{
    cJSON *rows = tt_put(r, model, "cases", tt_make_array(r));
    for (size_t i = 0; i < r->a->actions.cases.n; i++) {
        cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
        tt_put_text(r, row, "name", tt_case_words(r->a, i));
        tt_put_answer(r, row, &(tt_asked){carry, i, NULL});
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
