/* model/shares.c - how bronze and armature share the section forces of a cut: one axial strain,
 * curvature, twist and shear strain for both, each with its stiffness where it lies. */
#include "model/parts.h"

#include <math.h>

typedef struct {
    double e, nu;
} elastic;

/* Moments change along the limb by My' = Vz, Mz' = -Vy, those of the part as well. */
static void by_moments(tt_share *share)
{
    share->bent[0][1] = share->of[5][5];
    share->bent[0][2] = -share->of[5][4];
    share->bent[1][1] = -share->of[4][5];
    share->bent[1][2] = share->of[4][4];
}

static bool coupled(const tt_section *s)
{
    return s->at_y != 0.0 || s->at_z != 0.0 || s->iyz != 0.0 || s->shear_yz != 0.0;
}

/* own (own + other)^-1; false when there is no inverse. */
static bool by_strains(const tt_mat6 *own, const tt_mat6 *other, tt_share *share)
{
    tt_mat6 whole = *own, flexibility;
    tt_mat6_add(&whole, 1.0, other);
    if (!tt_mat6_inverse(&whole, &flexibility)) return false;
    const tt_mat6 taken = tt_mat6_mul(own, &flexibility);
    for (int i = 0; i < 6; i++) {
        for (int k = 0; k < 6; k++) share->of[i][k] = taken.at[i][k];
    }
    return share->coupled = true;
}

static tt_share share_of(const tt_section *own, elastic mine, const tt_section *other, elastic its)
{
    tt_share share = {.coupled = false};
    if (own->area <= 0.0) return share;
    const tt_mat6 part = tt_part_stiffness(own, mine.e, mine.nu);
    const tt_mat6 rest = tt_part_stiffness(other, its.e, its.nu);
    const bool tied = other->area > 0.0 && (coupled(own) || coupled(other));
    if (!tied || !by_strains(&part, &rest, &share)) {
        for (int i = 0; i < 6; i++)
            share.of[i][i] = part.at[i][i] / (part.at[i][i] + rest.at[i][i]);
    }
    by_moments(&share);
    return share;
}

void tt_cut_share(const tt_piece *piece, tt_cut *cut)
{
    const tt_segment *segment = &piece->segments.at[cut->segment];
    elastic low = {0.0, 0.3}, high = {0.0, 0.3}, steel = {0.0, 0.3};
    if (segment->alloy != TT_NONE) {
        const tt_metal *bronze = &piece->metals.at[segment->alloy];
        low = (elastic){tt_young_of_frames(piece, bronze), tt_poisson(bronze)};
        high = (elastic){tt_young_high(piece, bronze), tt_poisson(bronze)};
    }
    if (segment->armature.form != TT_MEMBER_NONE) {
        const tt_metal *metal = &piece->metals.at[segment->armature.metal];
        steel = (elastic){tt_young_of_frames(piece, metal), tt_poisson(metal)};
    }
    cut->share_bronze = share_of(&cut->bronze, high, &cut->armature, steel);
    cut->share_armature = share_of(&cut->armature, steel, &cut->bronze, low);
}

static double times(const double factor[6], const tt_forces *f)
{
    return factor[0] * f->n + factor[1] * f->vy + factor[2] * f->vz + factor[3] * f->t +
           factor[4] * f->my + factor[5] * f->mz;
}

const double *tt_share_row(const tt_share *share, int i, const tt_forces *whole)
{
    const double *strains = share->of[i];
    if (i != 1 && i != 2) return strains;
    const double *bent = share->bent[i - 1];
    return fabs(times(bent, whole)) > fabs(times(strains, whole)) ? bent : strains;
}

static tt_forces uncoupled(const tt_share *share, const tt_forces *f)
{
    return (tt_forces){share->of[0][0] * f->n,
                       fmax(share->of[1][1], share->of[5][5]) * f->vy,
                       fmax(share->of[2][2], share->of[4][4]) * f->vz,
                       share->of[3][3] * f->t,
                       share->of[4][4] * f->my,
                       share->of[5][5] * f->mz};
}

/* The torque about the part's own centroid is that of the strains, whichever reading of the shear
 * forces is the larger. */
tt_forces tt_shared(const tt_share *share, const tt_section *part, const tt_forces *whole)
{
    double out[6];
    if (!share->coupled) return uncoupled(share, whole);
    for (int i = 0; i < 6; i++) out[i] = times(tt_share_row(share, i, whole), whole);
    out[3] += part->at_y * (out[2] - times(share->of[2], whole)) -
              part->at_z * (out[1] - times(share->of[1], whole));
    return (tt_forces){out[0], out[1], out[2], out[3], out[4], out[5]};
}
