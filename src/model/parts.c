/* model/parts.c - moduli, and the section of each part of a segment. */
#include "model/parts.h"

#include <string.h>

static bool american(const tt_piece *piece)
{
    return piece->basis && strcmp(piece->basis, "us") == 0;
}

double tt_young_of_frames(const tt_piece *piece, const tt_metal *metal)
{
    const tt_fact *by_basis = &metal->fact[american(piece) ? TT_P_YOUNG_US : TT_P_YOUNG_EU];
    return by_basis->has ? by_basis->value : metal->fact[TT_P_YOUNG_LOW].value;
}

double tt_young_high(const tt_piece *piece, const tt_metal *metal)
{
    const tt_fact *high = &metal->fact[TT_P_YOUNG_HIGH];
    return high->has ? high->value : tt_young_of_frames(piece, metal);
}

double tt_poisson(const tt_metal *metal)
{
    return metal->fact[TT_P_POISSON].value;
}

tt_section tt_bronze_at(const tt_piece *piece, const tt_segment *segment, double t, int which)
{
    const tt_outline outline = tt_segment_outline(segment, t);
    if (outline.kind == TT_OUTLINE_NONE || segment->alloy == TT_NONE) return (tt_section){0};
    const double nu = tt_poisson(&piece->metals.at[segment->alloy]);
    if (segment->solid) return tt_section_solid(&outline, nu);
    const double wall = tt_segment_wall(segment, t, which);
    tt_section shell =
        which ? tt_section_shell_for_stress(&outline, wall) : tt_section_shell(&outline, wall, nu);
    if (segment->open && wall < tt_outline_closing_wall(&outline)) tt_section_slit(&shell, wall);
    return shell;
}

/* The member less `loss` from its outside; what is left of a wall counts by the wall factor. False:
 * nothing is left. */
static bool weaken(const tt_member *member, tt_outline *outside, double *wall)
{
    const bool hollow = member->form == TT_MEMBER_TUBE || member->form == TT_MEMBER_BOX;
    outside->wide -= 2.0 * member->loss;
    outside->deep -= 2.0 * member->loss;
    *wall = hollow ? *wall * member->wall_factor - member->loss : 0.5 * outside->wide;
    return *wall > 0.0 && outside->wide > 0.0 && outside->deep > 0.0;
}

tt_section tt_armature_at(const tt_piece *piece, const tt_segment *segment, double t, bool weak)
{
    const tt_member *member = &segment->armature;
    if (member->form == TT_MEMBER_NONE) return (tt_section){0};
    const double nu = tt_poisson(&piece->metals.at[member->metal]);
    const tt_vec2 off = tt_member_off(member, t);
    tt_outline outside = tt_member_outline(member, t);
    double wall = tt_member_wall(member, t);
    const double corner = tt_member_corner(member, t) - (weak ? member->loss : 0.0);
    if (weak && !weaken(member, &outside, &wall)) return (tt_section){0};
    const tt_section section =
        member->form == TT_MEMBER_FLAT ? tt_section_solid(&outside, nu)
        : member->form == TT_MEMBER_BOX
            ? tt_section_box_tube(outside.wide, outside.deep, wall, corner, nu)
            : tt_section_tube(outside.wide, wall, nu);
    return tt_section_off(section, off.x, off.y);
}

/* From the strains (e0, gamma_y, gamma_z, turn, ky, kz) of the axis: a fibre at (y, z) has the
 * strain e0 + z ky - y kz, the centroid the shear strains gamma_y - z turn, gamma_z + y turn. */
tt_mat6 tt_part_stiffness(const tt_section *s, double e, double nu)
{
    const double g = e / (2.0 * (1.0 + nu)), y = s->at_y, z = s->at_z;
    const double ea = e * s->area, gy = g * s->shear_y, gz = g * s->shear_z, gyz = g * s->shear_yz;
    tt_mat6 k = {{{0}}};
    k.at[0][0] = ea;
    k.at[1][1] = gy;
    k.at[2][2] = gz;
    k.at[1][2] = k.at[2][1] = gyz;
    k.at[3][3] = g * s->j + gy * z * z + gz * y * y - 2.0 * gyz * y * z;
    k.at[4][4] = e * s->iy + ea * z * z;
    k.at[5][5] = e * s->iz + ea * y * y;
    k.at[0][4] = k.at[4][0] = ea * z;
    k.at[0][5] = k.at[5][0] = -ea * y;
    k.at[4][5] = k.at[5][4] = -e * s->iyz - ea * y * z;
    k.at[1][3] = k.at[3][1] = gyz * y - gy * z;
    k.at[2][3] = k.at[3][2] = gz * y - gyz * z;
    return k;
}
