/* check/share.c - what each part of a cut must take, and the lines of calculation on it. */
#include "check/parts.h"

#include <math.h>
#include <stdio.h>

/* By the file, else by the alloy: a full seam, and one of which nothing is known. */
double tt_seam_at(const tt_check_input *in, const tt_cut *cut)
{
    if (!cut->seam_possible || cut->bronze.area <= 0.0) return 1.0;
    if (cut->seam && cut->seam->efficiency.origin) return cut->seam->efficiency.is;
    const tt_metal *metal = &in->piece->metals.at[in->piece->segments.at[cut->segment].alloy];
    return metal->fact[TT_P_SEAM].has ? metal->fact[TT_P_SEAM].value : 0.0;
}

/* Where a seam counts nothing the armature is judged for everything in both carry models. */
static bool shares(const tt_loaded_cut *at)
{
    return at->cut->bronze.area > 0.0 && at->cut->armature.area > 0.0 && at->carry != TT_ALONE &&
           tt_seam_at(at->in, at->cut) > 0.0;
}

tt_forces tt_on_bronze(const tt_loaded_cut *at)
{
    if (at->cut->bronze.area <= 0.0) return (tt_forces){0};
    if (at->cut->armature.area <= 0.0) return at->whole;
    if (!shares(at)) return (tt_forces){0};
    return tt_shared(&at->cut->share_bronze, &at->cut->bronze, &at->whole);
}

tt_forces tt_on_armature(const tt_loaded_cut *at)
{
    if (at->cut->armature.area <= 0.0) return (tt_forces){0};
    if (!shares(at)) return at->whole;
    return tt_shared(&at->cut->share_armature, &at->cut->armature, &at->whole);
}

static double component(const tt_forces *f, int i)
{
    const double all[] = {f->n, f->vy, f->vz, f->t, f->my, f->mz};
    return all[i];
}

/* The unit cases that the worst is made of, its lean with them: weight first, at its own cut. */
typedef struct {
    double factor[TT_UNIT_PARTS];
    tt_forces force[TT_UNIT_PARTS];
    size_t n;
} units;

static units units_of(const tt_check_input *in, const tt_worst *worst)
{
    tt_unit_part part[TT_UNIT_PARTS];
    const size_t n = tt_situation_units(in->second, &worst->exact->of, part);
    units all = {.n = 0};
    for (size_t i = 0; i < n; i++) {
        if (fabs(part[i].factor) < 1e-12) continue; /* a lean straight along x or y */
        all.factor[all.n] = part[i].factor;
        all.force[all.n++] = tt_unit_forces(in->second, worst->carry, part[i].unit, &worst->cut);
    }
    return all;
}

/* What rounding leaves where nothing acts: under a thousand-millionth of the largest of its kind,
 * forces together and moments together, of all these unit cases. */
static double noise_of(const units *all, int i)
{
    const int first = i < 3 ? 0 : 3;
    double largest = 0.0;
    for (size_t k = 0; k < all->n; k++) {
        for (int j = first; j < first + 3; j++)
            largest = fmax(largest, fabs(component(&all->force[k], j)));
    }
    return 1e-9 * largest;
}

/* "1.35*(-345.8) + 1.5*(12.6)" */
static void sum_of_units(const units *all, int i, char *line, size_t size)
{
    const double noise = noise_of(all, i);
    size_t at = 0;
    line[0] = '\0';
    for (size_t k = 0; k < all->n && at < size; k++) {
        const double unit = component(&all->force[k], i);
        const int n = snprintf(line + at, size - at, "%s%.6g*(%.6g)", k ? " + " : "",
                               all->factor[k], fabs(unit) < noise ? 0.0 : unit);
        at += n > 0 ? (size_t)n : 0;
    }
}

/* "0.31*(12.5) + -0.0042*(80)": what of each force of the whole goes into one of the part. */
static void sum_of_shares(const double factor[6], const tt_forces *whole, char *line, size_t size)
{
    size_t at = 0;
    line[0] = '\0';
    for (int i = 0; i < 6 && at < size; i++) {
        if (factor[i] == 0.0) continue;
        const int n = snprintf(line + at, size - at, "%s%.5g*(%.6g)", at ? " + " : "", factor[i],
                               component(whole, i));
        at += n > 0 ? (size_t)n : 0;
    }
}

static const char *const first[] = {"N_1", "V_y1", "V_z1", "T_1", "M_y1", "M_z1"};
static const char *const symbol[] = {"N", "V_y", "V_z", "T", "M_y", "M_z"};
static const char *const of_part[] = {"N_p", "V_yp", "V_zp", "T_p", "M_yp", "M_zp"};
static const char *const unit[] = {"N", "N", "N", "N.m", "N.m", "N.m"};

/* What the part takes of force i; all about the axis. */
static void line_of_part(tt_steps *steps, const tt_share *share, int i, const tt_forces *whole,
                         double part)
{
    const tt_source *elastic = tt_source_of(TT_S_elasticity);
    const double all = component(whole, i);
    char line[400];
    if (share && share->coupled) {
        sum_of_shares(tt_share_row(share, i, whole), whole, line, sizeof line);
        tt_step_add(steps, of_part[i],
                    i == 3 ? "sum of shares by the common strains * whole; about the axis"
                           : "sum of shares by the common strains * whole",
                    part, unit[i], elastic, "%s", line);
    } else if (all != 0.0) {
        tt_step_add(steps, of_part[i], "share by stiffness * whole", part, unit[i], elastic,
                    "%.4f * %.6g", part / all, all);
    }
}

static double sum_of(const units *all, int i)
{
    double sum = 0.0;
    for (size_t k = 0; k < all->n; k++) sum += all->factor[k] * component(&all->force[k], i);
    return sum;
}

void tt_steps_forces(tt_steps *steps, const tt_check_input *in, const tt_worst *worst,
                     bool of_bronze, const tt_forces *on)
{
    const tt_loaded_cut at = {in, &worst->cut, worst->carry, worst->whole};
    const tt_share *share = of_bronze ? &worst->cut.share_bronze : &worst->cut.share_armature;
    const tt_source *statics = tt_source_of(TT_S_statics);
    const units all = units_of(in, worst);
    double one[6], whole[6];
    for (int i = 0; i < 6; i++) {
        const double noise = noise_of(&all, i), sum = component(&worst->whole, i);
        one[i] = sum_of(&all, i);
        one[i] = fabs(one[i]) < noise ? 0.0 : one[i];
        whole[i] = fabs(sum) < noise ? 0.0 : sum;
    }
    const tt_forces told = {whole[0], whole[1], whole[2], whole[3], whole[4], whole[5]};
    for (int i = 0; i < 6; i++) {
        char line[800];
        sum_of_units(&all, i, line, sizeof line);
        tt_step_add(steps, first[i], "sum of factor * unit case, the lean with them", one[i],
                    unit[i], statics, "%s", line);
        tt_step_add(steps, symbol[i], "first order + what leaning and bending add", whole[i],
                    unit[i], tt_source_of(TT_S_second_order), "%.6g + %.6g", one[i],
                    whole[i] - one[i]);
        line_of_part(steps, shares(&at) ? share : NULL, i, &told, component(on, i));
    }
}
