/* model/weights.c - the ledger as others hold it: made, asked, given back. Its centre of mass is
 * that of the model's strips and lumps, so that it lies where a check has it. kg, m. */
#include "base/alloc.h"
#include "model/parts.h"

/* Strips and weights alone: no cuts, no frames. */
static tt_status find_centre(tt_weights *weights)
{
    tt_model model = {.piece = weights->piece};
    tt_status status = tt_model_stretch(&model);
    if (status == TT_OK) status = tt_model_scales(&model);
    if (status == TT_OK) status = tt_model_weigh(&model);
    weights->centre = model.centre[TT_NOMINAL];
    tt_list_clear(&model.bars);
    tt_pool_clear(&model.pool);
    return status;
}

tt_status tt_weigh(const tt_piece *piece, tt_weights **out)
{
    tt_weights *weights = tt_alloc(1, sizeof *weights);
    *out = NULL;
    if (!weights) return TT_E_NOMEM;
    weights->piece = piece;
    tt_status status = TT_E_NOMEM;
    if (tt_ledger_make(piece, &weights->pool, &weights->ledger)) status = find_centre(weights);
    if (status == TT_OK)
        *out = weights;
    else
        tt_weights_free(weights);
    return status;
}

tt_weights *tt_weights_free(tt_weights *weights)
{
    if (!weights) return NULL;
    tt_pool_clear(&weights->pool);
    return tt_free(weights);
}

/* By the heavy end, as the check of the mass. */
int tt_weights_over(const tt_weights *weights)
{
    const tt_limits *limits = &weights->piece->limits;
    return limits->has_mass && weights->ledger.total.high > limits->mass.is;
}
