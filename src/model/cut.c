/* model/cut.c - where forces are told: cuts along every segment, and their sections. */
#include "model/parts.h"
#include "base/alloc.h"

#include <math.h>
#include <stdlib.h>

static const double widest_gap = 0.25; /* m between cuts */

static bool add_fraction(tt_pool *pool, double **at, size_t *n, size_t *cap, double x)
{
    if (*n == *cap) {
        double *more = tt_pool_take(pool, *cap * 2 + 32, sizeof *more);
        if (!more) return false;
        for (size_t i = 0; i < *n; i++) more[i] = (*at)[i];
        *at = more;
        *cap = *cap * 2 + 32;
    }
    (*at)[(*n)++] = x;
    return true;
}

static int ascending(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* Ends, quarters, equal parts of a tenth or 0.25 m at most, and where a load begins or ends. */
static bool fractions(const tt_piece *piece, size_t index, tt_pool *pool, double **at, size_t *n)
{
    size_t cap = 0;
    const double length = tt_segment_length(piece, &piece->segments.at[index]);
    const int parts = (int)fmax(10.0, ceil(length / widest_gap - 1e-9));
    bool fits = true;
    for (int i = 0; i <= parts; i++)
        fits = fits && add_fraction(pool, at, n, &cap, (double)i / parts);
    fits = fits && add_fraction(pool, at, n, &cap, 0.25) && add_fraction(pool, at, n, &cap, 0.5) &&
           add_fraction(pool, at, n, &cap, 0.75);
    for (size_t i = 0; i < piece->loads.n; i++) {
        const tt_own_load *load = &piece->loads.at[i];
        if (load->along != index) continue;
        fits = fits && add_fraction(pool, at, n, &cap, load->between[0]) &&
               add_fraction(pool, at, n, &cap, load->between[1]);
    }
    if (!fits) return false;
    qsort(*at, *n, sizeof **at, ascending);
    size_t kept = 1;
    for (size_t i = 1; i < *n; i++) {
        if ((*at)[i] - (*at)[kept - 1] > 1e-9) (*at)[kept++] = (*at)[i];
    }
    *n = kept;
    return true;
}

static size_t bar_of(const tt_model *model, size_t segment, double x)
{
    size_t bar = model->first_bar[segment];
    while (bar + 1 < model->first_bar[segment + 1] && model->bars.at[bar].x1 < x - 1e-12) bar++;
    return bar;
}

tt_cut tt_model_cut_at(const tt_model *model, size_t index, double x)
{
    const tt_piece *piece = model->piece;
    const tt_segment *segment = &piece->segments.at[index];
    const size_t bar = bar_of(model, index, x);
    const tt_stretch *stretch = &model->bars.at[bar];
    const tt_outline outline = tt_segment_outline(segment, x);
    const double turn = x * (segment->turn_to - segment->turn);
    const bool hollow = outline.kind != TT_OUTLINE_NONE && !segment->solid;
    tt_cut cut = {
        .segment = index,
        .x = x,
        .bar = bar,
        .bar_x = (x - stretch->x0) / (stretch->x1 - stretch->x0),
        .cos_turn = cos(turn),
        .sin_turn = sin(turn),
        .at = tt_lerp(piece->points.at[segment->from].at, piece->points.at[segment->to].at, x),
        .axes = tt_segment_axes(piece, segment, x),
        .bronze = tt_bronze_at(piece, segment, x, 0),
        .bronze_weak = tt_bronze_at(piece, segment, x, -1),
        .armature = tt_armature_at(piece, segment, x, false),
        .armature_weak = tt_armature_at(piece, segment, x, true)};
    cut.on_bar = tt_frame_cut_at(cut.bar_x);
    if (hollow) cut.bore = tt_outline_bore(&outline, tt_segment_wall(segment, x, 1));
    tt_cut_share(piece, &cut);
    return cut;
}

/* Where the cuts of every segment are, and how many in all. */
static bool all_fractions(tt_model *model, double **at)
{
    const tt_piece *piece = model->piece;
    model->first_cut[0] = 0;
    for (size_t s = 0; s < piece->segments.n; s++) {
        size_t n = 0;
        if (!fractions(piece, s, &model->pool, &at[s], &n)) return false;
        model->first_cut[s + 1] = model->first_cut[s] + n;
    }
    return true;
}

tt_status tt_model_cut(tt_model *model)
{
    const size_t segments = model->piece->segments.n;
    double **at = tt_pool_take(&model->pool, segments, sizeof *at);
    model->first_cut = tt_pool_take(&model->pool, segments + 1, sizeof(size_t));
    if (!at || !model->first_cut || !all_fractions(model, at)) return TT_E_NOMEM;
    const size_t cuts = model->first_cut[segments];
    model->cuts.at = tt_alloc(cuts, sizeof *model->cuts.at);
    if (!model->cuts.at) return TT_E_NOMEM;
    model->cuts.n = model->cuts.cap = cuts;
    for (size_t s = 0; s < segments; s++) {
        const size_t first = model->first_cut[s];
        for (size_t i = first; i < model->first_cut[s + 1]; i++)
            model->cuts.at[i] = tt_model_cut_at(model, s, at[s][i - first]);
    }
    return TT_OK;
}
