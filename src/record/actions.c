/* record/actions.c - what acts, direction by direction; and what the run proves about itself. SI.
 */
#include "record/put.h"

static void wind(tt_record *r, cJSON *list, const tt_wind_direction *direction)
{
    cJSON *row = tt_put(r, list, NULL, tt_make_object(r));
    tt_put_number(r, row, "direction_deg", direction->direction);
    tt_put_number(r, row, "gust", direction->gust);
    tt_put_number(r, row, "frequency_Hz", direction->body.frequency);
    tt_put_number(r, row, "height_m", direction->body.height);
    tt_put_number(r, row, "breadth_m", direction->body.breadth);
    tt_put_number(r, row, "depth_m", direction->body.depth);
    tt_put_vec3(r, row, "force_N", direction->force);
    tt_put_number(r, row, "area_m2", direction->area);
    tt_pool pool = {0};
    tt_steps steps = {.pool = &pool};
    tt_wind_steps(r->a->basis, &r->a->actions.wind_site, direction, &steps);
    if (steps.failed) r->status = TT_E_NOMEM;
    tt_put_steps(r, row, steps.list.at, steps.list.n);
    tt_list_clear(&steps.list);
    tt_pool_clear(&pool);
}

cJSON *tt_record_actions(tt_record *r)
{
    cJSON *actions = tt_make_object(r);
    cJSON *list = tt_put(r, actions, "wind", tt_make_array(r));
    for (size_t i = 0; r->a->actions.wind && i < r->a->actions.winds; i++)
        wind(r, list, &r->a->actions.wind[i]);
    tt_put(r, actions, "earthquake", tt_make_object(r));
    tt_put(r, actions, "people", tt_make_array(r));
    return actions;
}

/* The stiffness has no negative pivot, or the analysis would have stopped: nothing lies below 0. */
static void sturm(tt_record *r, cJSON *list, int carry)
{
    static const char *const of[TT_MODELS] = {"modes, armature alone", "modes, together"};
    const tt_mode_proof *proof = &r->a->proof.modes[carry];
    cJSON *row = tt_put(r, list, NULL, tt_make_object(r));
    tt_put_text(r, row, "of", of[carry]);
    tt_put_number(r, row, "below", 0.0);
    tt_put_number(r, row, "above", (double)proof->counted);
    tt_put_number(r, row, "found", (double)proof->found);
    tt_put_number(r, row, "shift_rad2_s2", proof->shift);
}

cJSON *tt_record_proof(tt_record *r)
{
    const tt_proof *proof = &r->a->proof;
    cJSON *row = tt_make_object(r);
    tt_put_number(r, row, "equilibrium", proof->equilibrium);
    tt_put_number(r, row, "refinement", proof->refinement);
    tt_put_number(r, row, "energy", proof->energy);
    tt_put(r, row, "mass_kg", tt_make_numbers(r, proof->mass_kg, 3));
    cJSON *list = tt_put(r, row, "sturm", tt_make_array(r));
    for (int carry = 0; carry < TT_MODELS; carry++) sturm(r, list, carry);
    tt_put_number(r, row, "pivots_negative", 0.0);
    return row;
}
