/* model/model.c - building the model in order, its life, and its forces in a cut's own axes. */
#include "model/parts.h"
#include "base/alloc.h"

const char *const tt_model_name[TT_MODELS] = {"armature alone", "together"};
const char *const tt_pattern_name[TT_PATTERNS] = {"nominal", "heavy", "light"};

static tt_status build(tt_model *model, tt_frame_fault *fault)
{
    tt_status status = tt_model_stretch(model);
    if (status == TT_OK) status = tt_model_scales(model);
    if (status == TT_OK) status = tt_model_cut(model);
    if (status != TT_OK) return status;
    status = tt_model_mark(model);
    if (status == TT_OK) status = tt_model_weigh(model);
    for (int carry = 0; carry < TT_MODELS && status == TT_OK; carry++) {
        status = tt_model_frame(model, carry, fault);
    }
    return status;
}

tt_status tt_model_new(const tt_piece *piece, tt_model **out, tt_frame_fault *fault)
{
    *out = NULL;
    tt_model *model = tt_alloc(1, sizeof *model);
    if (!model) return TT_E_NOMEM;
    model->piece = piece;
    const tt_status status = build(model, fault);
    *out = model;
    return status;
}

tt_model *tt_model_free(tt_model *model)
{
    if (!model) return NULL;
    for (int carry = 0; carry < TT_MODELS; carry++) tt_frame_free(model->frame[carry]);
    tt_list_clear(&model->bars);
    tt_list_clear(&model->cuts);
    tt_pool_clear(&model->pool);
    return tt_free(model);
}

void tt_model_bar_nodes(const tt_model *model, size_t bar, size_t *from, size_t *to)
{
    const tt_stretch *stretch = &model->bars.at[bar];
    const tt_segment *segment = &model->piece->segments.at[stretch->segment];
    const size_t inner =
        model->first_inner[stretch->segment] + bar - model->first_bar[stretch->segment];
    *from = stretch->x0 > 0.0 ? inner - 1 : segment->from;
    *to = stretch->x1 < 1.0 ? inner : segment->to;
}

const char *tt_model_node_words(const tt_model *model, tt_pool *pool, size_t node)
{
    const tt_piece *piece = model->piece;
    if (node < piece->points.n) return piece->points.at[node].name;
    size_t segment = 0;
    while (segment + 1 < piece->segments.n && model->first_inner[segment + 1] <= node) segment++;
    const size_t bar = model->first_bar[segment] + node - model->first_inner[segment];
    return tt_piece_where(piece, pool, segment, model->bars.at[bar].x1);
}

tt_forces tt_model_cut_forces(const tt_model *model, const tt_cut *cut, const tt_frame_state *state,
                              const tt_frame_load *load, int carry)
{
    double f[TT_SIX];
    tt_frame_cut_section(model->frame[carry], state, load, cut->bar, &cut->on_bar, f);
    return tt_model_into_cut(cut, f);
}

tt_forces tt_model_into_cut(const tt_cut *cut, const double f[TT_SIX])
{
    const double c = cut->cos_turn, s = cut->sin_turn;
    return (tt_forces){f[0], c * f[1] + s * f[2], c * f[2] - s * f[1],
                       f[3], c * f[4] + s * f[5], c * f[5] - s * f[4]};
}
