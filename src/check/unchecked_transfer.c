/* check/unchecked_transfer.c - where forces go over between bronze and armature: not computed, told
 * by place with the bending moment that goes over, N.m. */
#include "check/parts.h"

#include <math.h>

/* Largest bending moment of a cut, armature alone, heavy or light, over the combinations of the
 * strength and accidental levels: N.m. What is left by rounding at a free end is nothing. */
static double moment_at(const tt_check_input *in, size_t cut)
{
    double most = 0.0, scale = 0.0;
    for (size_t i = 0; i < in->combinations->n; i++) {
        const tt_combination *together = &in->combinations->at[i];
        if (together->level != TT_STRENGTH && together->level != TT_ACCIDENTAL) continue;
        for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
            const tt_situation of = {together, pattern, TT_UPRIGHT};
            const tt_forces f = tt_situation_forces(in->second, TT_ALONE, &of, cut);
            most = fmax(most, sqrt(f.my * f.my + f.mz * f.mz));
        }
    }
    for (size_t c = 0; c < in->model->cuts.n; c++) {
        const tt_forces *f = &in->solution->answer[TT_ALONE][TT_HEAVY].cut[c];
        scale = fmax(scale, fabs(f->my) + fabs(f->mz));
    }
    return most > 1e-9 * scale ? most : 0.0;
}

static bool armature_goes_on(const tt_piece *piece, size_t index, size_t point)
{
    for (size_t i = 0; i < piece->stands.n; i++) {
        if (piece->stands.at[i].at == point) return true;
    }
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *other = &piece->segments.at[i];
        if (i == index || (other->from != point && other->to != point)) continue;
        if (other->armature.form != TT_MEMBER_NONE) return true;
    }
    return false;
}

static bool tied(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->works->ties.n; i++)
        if (piece->works->ties.at[i].at == point) return true;
    return false;
}

/* The armature ends at a place: what it carries has to go over to the bronze. */
static const char *ends_here(const tt_piece *piece, size_t point)
{
    return tied(piece, point)
               ? "the armature ends here and what it carries has to go over to the bronze through "
                 "what ties the two, which is not computed yet; told is the bending moment alone"
               : "the armature ends here and what it carries has to go over to the bronze "
                 "through welds or pins that nobody described; told is the bending moment "
                 "alone, and what goes over on the way there comes on top";
}

static bool at_ends(const tt_check_input *in, tt_findings *out)
{
    for (size_t s = 0; s < in->piece->segments.n; s++) {
        const tt_segment *segment = &in->piece->segments.at[s];
        if (segment->armature.form == TT_MEMBER_NONE || segment->outline.kind == TT_OUTLINE_NONE)
            continue;
        for (int end = 0; end < 2; end++) {
            const size_t point = end ? segment->to : segment->from;
            if (armature_goes_on(in->piece, s, point)) continue;
            const size_t cut = end ? in->model->first_cut[s + 1] - 1 : in->model->first_cut[s];
            const double moment = moment_at(in, cut);
            const tt_unchecked entry = {.check = "transfer",
                                        .where = in->piece->points.at[point].name,
                                        .why = ends_here(in->piece, point),
                                        .needed = true,
                                        .has_demand = moment > 0.0,
                                        .demand = moment,
                                        .unit = "N.m"};
            if (!tt_unchecked_add(out, entry)) return false;
        }
    }
    return true;
}

/* At a seam that counts nothing everything goes through the armature: what the bronze carried on
 * one side must get into it and out again. */
static bool at_dead_seams(const tt_check_input *in, tt_findings *out)
{
    for (size_t c = 0; c < in->model->cuts.n; c++) {
        const tt_cut *cut = &in->model->cuts.at[c];
        if (cut->armature.area <= 0.0 || cut->bronze.area <= 0.0 || tt_seam_at(in, cut) > 0.0)
            continue;
        const double moment = moment_at(in, c);
        const tt_unchecked entry = {
            .check = "transfer",
            .where = tt_piece_where(in->piece, &out->pool, cut->segment, cut->x),
            .why = "a seam here counts nothing: what the bronze carries goes over to the armature "
                   "through welds or pins that nobody described",
            .needed = true,
            .has_demand = moment > 0.0,
            .demand = moment,
            .unit = "N.m"};
        if (!entry.where || !tt_unchecked_add(out, entry)) return false;
    }
    return true;
}

bool tt_unchecked_transfer(const tt_check_input *in, tt_findings *out)
{
    return at_ends(in, out) && at_dead_seams(in, out);
}
