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
    return which ? tt_section_shell_for_stress(&outline, wall)
                 : tt_section_shell(&outline, wall, nu);
}

/* A tube loses `loss` from its outside; what is left of the wall counts by the wall factor. */
tt_section tt_armature_at(const tt_piece *piece, const tt_segment *segment, double t, bool weak)
{
    const tt_member *member = &segment->armature;
    if (member->form == TT_MEMBER_NONE) return (tt_section){0};
    const double nu = tt_poisson(&piece->metals.at[member->metal]);
    double od = tt_member_od(member, t), wall = tt_member_wall(member, t);
    if (weak) {
        const double inside =
            member->form == TT_MEMBER_BAR ? 0.0 : od - 2.0 * wall * member->wall_factor;
        od -= 2.0 * member->loss;
        wall = (od - inside) / 2.0;
        if (wall <= 0.0 || od <= 0.0) return (tt_section){0};
    }
    return tt_section_tube(od, wall, nu);
}
