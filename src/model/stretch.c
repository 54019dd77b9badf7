/* model/stretch.c - segments cut into bars, and the strips (Gauss points) that loads act on.
 * A bar ends at the middle of its segment, in a limb of one segment at its quarters too, where a
 * load begins or ends, and is 1 m at most, so that a strip stands for less than 0.25 m. Bars are
 * exact for statics; their number only counts for vibration: four in a limb find its two lowest
 * bending frequencies within 0.1 %. */
#include "model/parts.h"

#include <math.h>

static const double longest_bar = 1.0; /* m */

/* The next fraction after x at which a bar must end. */
static double next_break(const tt_piece *piece, size_t segment, double x)
{
    const size_t limb = piece->segments.at[segment].limb;
    const double parts = limb != TT_NONE && piece->limbs.at[limb].count > 1 ? 2.0 : 4.0;
    double next = (floor(parts * x + 1e-9) + 1.0) / parts;
    for (size_t i = 0; i < piece->loads.n; i++) {
        const tt_own_load *load = &piece->loads.at[i];
        if (load->along != segment) continue;
        for (int k = 0; k < 2; k++) {
            if (load->between[k] > x + 1e-9 && load->between[k] < next - 1e-9)
                next = load->between[k];
        }
    }
    return next > 1.0 - 1e-9 ? 1.0 : next;
}

static bool stretch_segment(tt_model *model, size_t index)
{
    const tt_piece *piece = model->piece;
    const double length = tt_segment_length(piece, &piece->segments.at[index]);
    for (double x = 0.0; x < 1.0;) {
        const double end = next_break(piece, index, x);
        const double pieces = ceil((end - x) * length / longest_bar - 1e-9);
        const int n = pieces < 1.0 ? 1 : (int)pieces;
        for (int i = 0; i < n; i++) {
            const tt_stretch bar = {index, x + (end - x) * i / n, x + (end - x) * (i + 1) / n};
            if (!tt_list_push(&model->bars, bar)) return false;
        }
        x = end;
    }
    return true;
}

static tt_strip strip_at(const tt_piece *piece, const tt_stretch *bar, int point)
{
    const tt_segment *segment = &piece->segments.at[bar->segment];
    const double x = bar->x0 + (bar->x1 - bar->x0) * tt_bar_point[point];
    tt_strip strip = {
        .segment = bar->segment,
        .x = x,
        .length = tt_segment_length(piece, segment) * (bar->x1 - bar->x0) * tt_bar_weight[point],
        .at = tt_lerp(piece->points.at[segment->from].at, piece->points.at[segment->to].at, x),
        .axes = tt_segment_axes(piece, segment, x),
        .outline = tt_segment_outline(segment, x),
        .shell = tt_bronze_at(piece, segment, x, 0),
        .core = tt_armature_at(piece, segment, x, false),
        .armature = tt_segment_armature(piece, segment, x)};
    strip.bronze[TT_NOMINAL] = tt_segment_bronze(piece, segment, x, 0);
    strip.bronze[TT_HEAVY] = tt_segment_bronze(piece, segment, x, 1);
    strip.bronze[TT_LIGHT] = tt_segment_bronze(piece, segment, x, -1);
    if (strip.outline.kind == TT_OUTLINE_NONE) {
        strip.outline = tt_member_outline(&segment->armature, x);
        strip.bare = true;
    }
    return strip;
}

tt_status tt_model_stretch(tt_model *model)
{
    const tt_piece *piece = model->piece;
    model->first_bar = tt_pool_take(&model->pool, piece->segments.n + 1, sizeof(size_t));
    model->first_inner = tt_pool_take(&model->pool, piece->segments.n + 1, sizeof(size_t));
    if (!model->first_bar || !model->first_inner) return TT_E_NOMEM;
    model->first_inner[0] = piece->points.n;
    for (size_t s = 0; s < piece->segments.n; s++) {
        if (!stretch_segment(model, s)) return TT_E_NOMEM;
        model->first_bar[s + 1] = model->bars.n;
        model->first_inner[s + 1] = model->first_inner[s] + model->bars.n - model->first_bar[s] - 1;
    }
    model->strips =
        tt_pool_take(&model->pool, model->bars.n * TT_BAR_POINTS, sizeof *model->strips);
    if (!model->strips) return TT_E_NOMEM;
    for (size_t b = 0; b < model->bars.n; b++) {
        for (int p = 0; p < TT_BAR_POINTS; p++) {
            model->strips[b * TT_BAR_POINTS + (size_t)p] = strip_at(piece, &model->bars.at[b], p);
        }
    }
    return TT_OK;
}
