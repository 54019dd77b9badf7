/* piece/weights.c - the ledger as others hold it: made, asked, given back. */
#include "base/alloc.h"
#include "piece/ledger.h"

tt_status tt_weigh(const tt_piece *piece, tt_weights **out)
{
    tt_weights *weights = tt_alloc(1, sizeof *weights);
    *out = NULL;
    if (!weights) return TT_E_NOMEM;
    weights->piece = piece;
    if (tt_ledger_make(piece, &weights->pool, &weights->ledger))
        *out = weights;
    else
        tt_weights_free(weights);
    return *out ? TT_OK : TT_E_NOMEM;
}

tt_weights *tt_weights_free(tt_weights *weights)
{
    if (!weights) return NULL;
    tt_pool_clear(&weights->pool);
    return tt_free(weights);
}

int tt_weights_over(const tt_weights *weights)
{
    const tt_limits *limits = &weights->piece->limits;
    return limits->has_mass && weights->ledger.total.is > limits->mass.is;
}
