/* model/mark.c - where the bronze may be seamed, and where it is a neck. */
#include "model/parts.h"
#include "base/alloc.h"

#include <math.h>

/* How many segments end at a point, and whether a limb passes through it. */
static size_t meeting(const tt_piece *piece, size_t point)
{
    size_t n = 0;
    for (size_t s = 0; s < piece->segments.n; s++) {
        n += piece->segments.at[s].from == point || piece->segments.at[s].to == point;
    }
    return n;
}

static bool on_an_arm(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->arms.n; i++) {
        if (piece->arms.at[i].a == point || piece->arms.at[i].b == point) return true;
    }
    return false;
}

static bool inside_its_limb(const tt_piece *piece, const tt_segment *segment, bool at_end)
{
    if (segment->limb == TT_NONE) return false;
    const tt_limb *limb = &piece->limbs.at[segment->limb];
    return at_end ? segment->place_in_limb + 1 < limb->count : segment->place_in_limb > 0;
}

static bool alloy_changes(const tt_piece *piece, size_t index, bool at_end)
{
    const tt_segment *segment = &piece->segments.at[index];
    const tt_segment *next = at_end ? segment + 1 : segment - 1;
    return next->alloy != segment->alloy;
}

/* Inside a limb the bronze is one casting unless its alloy changes; a limb that starts at, joins or
 * ends at another may be seamed there, by a place they share or by a rigid arm, and so may a
 * segment in the long form. */
static bool likely(const tt_piece *piece, size_t index, bool at_end)
{
    const tt_segment *segment = &piece->segments.at[index];
    if (inside_its_limb(piece, segment, at_end)) return alloy_changes(piece, index, at_end);
    const size_t point = at_end ? segment->to : segment->from;
    return on_an_arm(piece, point) || meeting(piece, point) > 1;
}

/* What the file says goes before what is likely. */
static void mark_seam(const tt_piece *piece, tt_cut *cut, bool at_end)
{
    cut->seam = tt_piece_seam(piece, cut->segment, at_end);
    const tt_seam_kind kind = cut->seam ? cut->seam->kind : piece->works->seams;
    cut->seam_possible = kind != TT_SEAM_NONE && (cut->seam || likely(piece, cut->segment, at_end));
}

static double modulus(const tt_cut *cut)
{
    const tt_section *s = &cut->bronze_weak;
    if (s->area <= 0.0) return INFINITY;
    return fmin(s->iy / s->reach_z, s->iz / s->reach_y);
}

static bool stand_at(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->stands.n; i++) {
        if (piece->stands.at[i].at == point) return true;
    }
    return false;
}

/* Along cuts first..last: a stretch of equal modulus that is lower than what stands on both sides.
 */
static void mark_necks(tt_model *model, size_t first, size_t last)
{
    tt_cut *cut = model->cuts.at;
    for (size_t i = first; i <= last;) {
        size_t end = i;
        const double here = modulus(&cut[i]);
        while (end < last && fabs(modulus(&cut[end + 1]) - here) <= 1e-9 * here) end++;
        const bool rises_before = i > first && modulus(&cut[i - 1]) > here;
        const bool rises_after = end < last && modulus(&cut[end + 1]) > here;
        if (rises_before && rises_after) {
            for (size_t k = i; k <= end; k++) cut[k].neck = true;
        }
        i = end + 1;
    }
}

/* The largest modulus of the bronze that ends at each point: without end where a rigid arm does,
 * for what it stands for is not drawn. */
static void find_stoutest(const tt_model *model, double *stoutest)
{
    const tt_piece *piece = model->piece;
    for (size_t s = 0; s < piece->segments.n; s++) {
        const tt_cut *first = &model->cuts.at[model->first_cut[s]],
                     *last = &model->cuts.at[model->first_cut[s + 1] - 1];
        double *from = &stoutest[piece->segments.at[s].from],
               *to = &stoutest[piece->segments.at[s].to];
        if (first->bronze_weak.area > 0.0) *from = fmax(*from, modulus(first));
        if (last->bronze_weak.area > 0.0) *to = fmax(*to, modulus(last));
    }
    for (size_t i = 0; i < piece->arms.n; i++) {
        stoutest[piece->arms.at[i].a] = INFINITY;
        stoutest[piece->arms.at[i].b] = INFINITY;
    }
}

/* The end of a limb is a neck at a stand, and where it joins something stouter: the root of a thin
 * arm on a body. */
static void mark_end(const tt_piece *piece, tt_cut *cut, size_t point, const double *stoutest)
{
    if (stand_at(piece, point) || modulus(cut) * (1.0 + 1e-9) < stoutest[point]) cut->neck = true;
}

static void mark_limb(tt_model *model, size_t s, size_t count, const double *stoutest)
{
    const tt_piece *piece = model->piece;
    const size_t first = model->first_cut[s], last = model->first_cut[s + count] - 1;
    mark_necks(model, first, last);
    mark_end(piece, &model->cuts.at[first], piece->segments.at[s].from, stoutest);
    mark_end(piece, &model->cuts.at[last], piece->segments.at[s + count - 1].to, stoutest);
    for (size_t k = s; k < s + count; k++) {
        mark_seam(piece, &model->cuts.at[model->first_cut[k]], false);
        mark_seam(piece, &model->cuts.at[model->first_cut[k + 1] - 1], true);
    }
}

tt_status tt_model_mark(tt_model *model)
{
    const tt_piece *piece = model->piece;
    double *stoutest = tt_alloc(piece->points.n, sizeof *stoutest);
    if (!stoutest) return TT_E_NOMEM;
    find_stoutest(model, stoutest);
    for (size_t s = 0; s < piece->segments.n;) {
        const size_t limb = piece->segments.at[s].limb;
        const size_t count = limb == TT_NONE ? 1 : piece->limbs.at[limb].count;
        mark_limb(model, s, count, stoutest);
        s += count;
    }
    tt_free(stoutest);
    return TT_OK;
}
