/* frame/buckling.c - the factors by which a load must grow for the frame to buckle: K x = f (-K_g)
 * x, K_g of the state of first order; and the proof by the signs of the pivots of K + f K_g. SI. */
#include "frame/second.h"
#include "frame/parts.h"
#include "num/eigen.h"

#include <string.h>

static const double far = 1e6, beside = 1e-6;

typedef struct {
    const tt_frame *frame;
    tt_sparse pressed; /* - K_g */
    tt_eigen found;
} search;

/* How many factors there are under `shift`. */
static tt_status count(const search *s, double shift, size_t *under)
{
    return tt_sturm_count(&s->frame->stiffness, &s->pressed, &shift, under);
}

static tt_status give_one(const search *s, size_t i, tt_pool *pool, tt_buckling_mode *out)
{
    const tt_frame *frame = s->frame;
    const double factor = s->found.value[i];
    double(*bodies)[TT_SIX] = tt_pool_take(pool, frame->bodies.n, sizeof *bodies);
    out->factor = factor;
    out->shape = tt_pool_take(pool, frame->nodes.n, sizeof *out->shape);
    if (!bodies || !out->shape) return TT_E_NOMEM;
    tt_spread(frame, s->found.shape + i * (size_t)frame->unknowns, bodies);
    tt_node_moves(frame, bodies, out->shape);
    tt_shape_normalize(frame, out->shape);
    const tt_status status = count(s, factor * (1.0 - beside), &out->below);
    return status == TT_OK ? count(s, factor * (1.0 + beside), &out->above) : status;
}

/* Of those that were found every one must stand where the pivots count it. */
static bool proved(const tt_eigen *found, const tt_buckling *out)
{
    for (size_t i = 0; i < out->n; i++) {
        size_t below = 0, above = 0;
        for (size_t k = 0; k < found->n; k++) {
            below += found->value[k] < out->at[i].factor * (1.0 - beside);
            above += found->value[k] < out->at[i].factor * (1.0 + beside);
        }
        if (out->at[i].below != below || out->at[i].above != above) return false;
    }
    return true;
}

/* One more is looked for than is wanted: two may stand side by side. */
static tt_status find(search *s, size_t wanted, tt_pool *pool, tt_buckling *out)
{
    tt_status status = count(s, far, &out->under);
    if (status != TT_OK || out->under == 0) return status;
    const size_t n = wanted < out->under ? wanted : out->under;
    const size_t more = n < out->under ? n + 1 : n;
    status = tt_eigen_critical(&s->frame->factor, &s->pressed, more, &s->found);
    if (status != TT_OK) return status;
    if (s->found.n < n) return TT_E_NOT_CONVERGED;
    out->at = tt_pool_take(pool, n, sizeof *out->at);
    if (!out->at) return TT_E_NOMEM;
    for (size_t i = 0; i < n && status == TT_OK; i++) status = give_one(s, i, pool, &out->at[i]);
    out->n = n;
    if (status != TT_OK) return status;
    return proved(&s->found, out) ? TT_OK : TT_E_NOT_CONVERGED;
}

tt_status tt_frame_buckling(const tt_frame *frame, const tt_frame_load *load,
                            const tt_frame_state *state, size_t wanted, tt_pool *pool,
                            tt_buckling *out)
{
    search s = {.frame = frame};
    *out = (tt_buckling){.far = far};
    if (frame->unknowns == 0) return TT_OK;
    tt_status status = tt_assemble_geometric(frame, load, state, -1.0, &s.pressed);
    if (status == TT_OK) status = find(&s, wanted, pool, out);
    tt_eigen_free(&s.found);
    tt_sparse_free(&s.pressed);
    return status;
}
