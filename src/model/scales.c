/* model/scales.c - the strips of what was weighed brought to its weight: along a segment the bronze
 * stays distributed as its outlines and walls say, low, nominal and high. kg. */
#include "model/parts.h"

static void bring(tt_model *model, size_t segment, int pattern, double wanted)
{
    const size_t first = model->first_bar[segment] * TT_BAR_POINTS;
    const size_t end = model->first_bar[segment + 1] * TT_BAR_POINTS;
    double sum = 0.0;
    for (size_t i = first; i < end; i++)
        sum += model->strips[i].bronze[pattern] * model->strips[i].length;
    for (size_t i = first; i < end && sum > 0.0; i++)
        model->strips[i].bronze[pattern] *= wanted / sum;
}

tt_status tt_model_scales(tt_model *model)
{
    if (!tt_piece_weighed(model->piece)) return TT_OK;
    tt_ledger *ledger = tt_pool_take(&model->pool, 1, sizeof *ledger);
    if (!ledger || !tt_ledger_make(model->piece, &model->pool, ledger)) return TT_E_NOMEM;
    model->ledger = ledger;
    for (size_t s = 0; s < model->piece->segments.n; s++) {
        const tt_ledger_segment *row = &ledger->segment[s];
        bring(model, s, TT_NOMINAL, row->taken.is);
        bring(model, s, TT_HEAVY, row->taken.high);
        bring(model, s, TT_LIGHT, row->taken.low);
    }
    return TT_OK;
}
