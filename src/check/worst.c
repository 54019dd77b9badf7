/* check/worst.c - the worst cut of a segment for one part, over everything that may act. */
#include "check/parts.h"

#include <math.h>

static void look(const tt_loaded_cut *at, tt_use_fn *use_at, const tt_combination *together, int pattern,
                 tt_worst *worst)
{
    const double use = use_at(at);
    if (use < 0.0 || (worst->any && use <= worst->use)) return;
    *worst = (tt_worst){.any = true, .use = use, .cut = *at->cut, .carry = at->carry,
                        .pattern = pattern, .together = together, .whole = at->whole};
}

static void look_along(const tt_check_input *in, size_t segment, const tt_combination *together,
                       int carry, int pattern, tt_use_fn *use_at, tt_worst *worst, size_t *worst_cut)
{
    for (size_t c = in->model->first_cut[segment]; c < in->model->first_cut[segment + 1]; c++) {
        const tt_loaded_cut at = {in, &in->model->cuts.at[c], carry,
                                  tt_superpose(in->solution, carry, together, pattern, c)};
        const double before = worst->any ? worst->use : -1.0;
        look(&at, use_at, together, pattern, worst);
        if (worst->any && worst->use > before) *worst_cut = c;
    }
}

static double use_of(const tt_check_input *in, const tt_worst *worst, size_t c, tt_use_fn *use_at)
{
    const tt_loaded_cut at = {in, &in->model->cuts.at[c], worst->carry,
                              tt_superpose(in->solution, worst->carry, worst->together, worst->pattern, c)};
    return use_at(&at);
}

/* A parabola through the worst cut and its neighbours: its top is looked at as one more cut. */
static void step_between(const tt_check_input *in, size_t c, tt_use_fn *use_at, tt_worst *worst)
{
    const size_t segment = worst->cut.segment;
    if (c == in->model->first_cut[segment] || c + 1 == in->model->first_cut[segment + 1]) return;
    const tt_cut *cut = &in->model->cuts.at[c];
    const double h0 = cut[0].x - cut[-1].x, h1 = cut[1].x - cut[0].x;
    const double s0 = (worst->use - use_of(in, worst, c - 1, use_at)) / h0;
    const double s1 = (use_of(in, worst, c + 1, use_at) - worst->use) / h1;
    const double bend = (s1 - s0) / (h0 + h1);
    if (!(bend < 0.0) || !isfinite(bend)) return;
    const double slope = s0 + bend * h0; /* at the worst cut */
    const double x = cut->x - slope / (2.0 * bend);
    if (!(x > cut[-1].x && x < cut[1].x)) return;
    const tt_cut between = tt_model_cut_at(in->model, segment, x);
    const tt_loaded_cut at = {in, &between, worst->carry,
                              tt_superpose_at(in->model, in->actions, in->solution, worst->carry,
                                              worst->together, worst->pattern, &between)};
    look(&at, use_at, worst->together, worst->pattern, worst);
}

tt_worst tt_worst_of(const tt_check_input *in, size_t segment, const bool levels[TT_LEVELS],
                     tt_use_fn *use_at)
{
    tt_worst worst = {.any = false};
    size_t worst_cut = 0;
    for (size_t i = 0; i < in->combinations->n; i++) {
        const tt_combination *together = &in->combinations->at[i];
        if (!levels[together->level]) continue;
        for (int carry = 0; carry < TT_MODELS; carry++) {
            for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
                look_along(in, segment, together, carry, pattern, use_at, &worst, &worst_cut);
            }
        }
    }
    if (worst.any && isfinite(worst.use)) step_between(in, worst_cut, use_at, &worst);
    return worst;
}
