/* model/frames.c - one frame for each carry model: the same nodes and bars, other stiffness. */
#include "model/parts.h"

#include <math.h>

/* Adds a part's stiffness, given in the cut's axes, turned by `angle` about x into the bar's. */
static void add_stiffness(tt_bar_section *at, const tt_section *part, double e, double nu,
                          double angle)
{
    tt_mat6 k = tt_part_stiffness(part, e, nu);
    if (angle != 0.0) tt_mat6_turn(&k, cos(angle), sin(angle));
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) at->stiffness[i][j] += k.at[i][j];
    }
}

/* Masses of a metre and their moments about the axis of the bar; brought to their centre at the
 * end.
 */
static void add_mass(tt_bar_section *at, const tt_section *part, double mass, double angle)
{
    if (mass <= 0.0) return;
    const double c = cos(angle), s = sin(angle), per_area = mass / part->area;
    const double y = c * part->at_y - s * part->at_z, z = s * part->at_y + c * part->at_z;
    const double twice = 2.0 * c * s * part->iyz;
    const double iy = per_area * (c * c * part->iy + s * s * part->iz + twice) + mass * z * z;
    const double iz = per_area * (s * s * part->iy + c * c * part->iz - twice) + mass * y * y;
    at->mass += mass;
    at->mass_y += mass * y;
    at->mass_z += mass * z;
    at->turn_inertia[0] += iy + iz;
    at->turn_inertia[1] += iy;
    at->turn_inertia[2] += iz;
}

static void centre_mass(tt_bar_section *at)
{
    if (at->mass <= 0.0) return;
    const double y = at->mass_y /= at->mass, z = at->mass_z /= at->mass;
    at->turn_inertia[0] -= at->mass * (y * y + z * z);
    at->turn_inertia[1] -= at->mass * z * z;
    at->turn_inertia[2] -= at->mass * y * y;
}

static tt_bar_section section_at(const tt_model *model, size_t index, int carry)
{
    const tt_piece *piece = model->piece;
    const tt_strip *strip = &model->strips[index];
    const tt_segment *segment = &piece->segments.at[strip->segment];
    const double angle = strip->x * (segment->turn_to - segment->turn);
    tt_bar_section at = {0};
    if (strip->core.area > 0.0) {
        const tt_metal *metal = &piece->metals.at[segment->armature.metal];
        add_stiffness(&at, &strip->core, tt_young_of_frames(piece, metal), tt_poisson(metal),
                      angle);
        add_mass(&at, &strip->core, strip->armature, angle);
    }
    if (strip->shell.area > 0.0) {
        const tt_metal *metal = &piece->metals.at[segment->alloy];
        if (carry == TT_TOGETHER || strip->core.area <= 0.0)
            add_stiffness(&at, &strip->shell, tt_young_of_frames(piece, metal), tt_poisson(metal),
                          angle);
        add_mass(&at, &strip->shell, strip->bronze[TT_NOMINAL], angle);
    }
    centre_mass(&at);
    return at;
}

static bool add_nodes(const tt_model *model, tt_frame *frame)
{
    const tt_piece *piece = model->piece;
    bool fits = true;
    for (size_t i = 0; i < piece->points.n; i++)
        fits = fits && tt_frame_add_node(frame, piece->points.at[i].at);
    for (size_t b = 0; b < model->bars.n; b++) {
        const tt_stretch *bar = &model->bars.at[b];
        const tt_segment *segment = &piece->segments.at[bar->segment];
        if (bar->x1 >= 1.0) continue;
        fits = fits && tt_frame_add_node(frame, tt_lerp(piece->points.at[segment->from].at,
                                                        piece->points.at[segment->to].at, bar->x1));
    }
    return fits;
}

static bool add_bars(const tt_model *model, tt_frame *frame, int carry)
{
    const tt_piece *piece = model->piece;
    bool fits = tt_frame_reserve(frame, model->bars.n);
    for (size_t b = 0; b < model->bars.n; b++) {
        const tt_segment *segment = &piece->segments.at[model->bars.at[b].segment];
        size_t from, to;
        tt_model_bar_nodes(model, b, &from, &to);
        const tt_axes axes = tt_segment_axes(piece, segment, 0.0);
        tt_bar_section sections[TT_BAR_POINTS];
        for (size_t p = 0; p < TT_BAR_POINTS; p++) {
            sections[p] = section_at(model, b * TT_BAR_POINTS + p, carry);
        }
        fits = fits && tt_frame_add_bar(frame, from, to, &axes, sections);
    }
    return fits;
}

static bool add_stand(const tt_stand *stand, tt_frame *frame)
{
    double stiffness[TT_SIX];
    bool held = false, sprung = false;
    for (int d = 0; d < TT_SIX; d++) {
        stiffness[d] = stand->spring[d].origin ? stand->spring[d].is : 0.0;
        sprung = sprung || stand->spring[d].origin;
        held = held || stand->way[d];
    }
    if (held && !tt_frame_hold(frame, stand->at, stand->way)) return false;
    return !sprung || tt_frame_spring(frame, stand->at, stiffness);
}

static bool add_the_rest(const tt_piece *piece, tt_frame *frame)
{
    bool fits = true;
    for (size_t i = 0; i < piece->arms.n; i++) {
        fits = fits && tt_frame_add_arm(frame, piece->arms.at[i].a, piece->arms.at[i].b);
    }
    for (size_t i = 0; i < piece->stands.n; i++) {
        fits = fits && add_stand(&piece->stands.at[i], frame);
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        fits =
            fits && tt_frame_add_mass(frame, lump->at, lump->mass.is, lump->offset, lump->inertia);
    }
    return fits;
}

tt_status tt_model_frame(tt_model *model, int carry, tt_frame_fault *fault)
{
    tt_frame *frame = tt_frame_new();
    model->frame[carry] = frame;
    if (!frame || !add_nodes(model, frame) || !add_bars(model, frame, carry) ||
        !add_the_rest(model->piece, frame)) {
        return TT_E_NOMEM;
    }
    model->nodes = tt_frame_nodes(frame);
    return tt_frame_prepare(frame, fault);
}
