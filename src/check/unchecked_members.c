/* check/unchecked_members.c - what is not judged of an armature: members that are to be chosen,
 * and flats slender enough to topple sideways in bending. SI. */
#include "check/parts.h"

#include <math.h>
#include <string.h>

/* A flat that runs on through consecutive segments of its limb, at its most slender. */
typedef struct {
    double length, deep, thick;
    double young, poisson, yield;
} flat_run;

static void widen(flat_run *run, const tt_member *member, double length)
{
    for (int end = 0; end < 2; end++) {
        const tt_outline outside = tt_member_outline(member, end);
        run->deep = fmax(run->deep, fmax(outside.wide, outside.deep));
        run->thick = fmin(run->thick, fmin(outside.wide, outside.deep));
    }
    run->length += length;
}

/* AISC 360 F11 (FROM MEMORY): no lateral-torsional buckling up to Lb d / t^2 = 0.08 E / Fy. */
static double slender_us(const flat_run *run, double *limit)
{
    *limit = 0.08 * run->young / run->yield;
    return run->length * run->deep / (run->thick * run->thick);
}

/* EN 1993-1-1 6.3.2.2(4) with the lambda_LT,0 of 6.3.2.3 (both FROM MEMORY): none up to a
 * slenderness of 0.4; Mcr of a flat under an even moment = pi / L sqrt(E Iz G It), strength of
 * materials. It = d t^3 (1 - 0.63 t / d) / 3: torsion of a rectangle, Timoshenko and Goodier,
 * Theory of Elasticity (FROM MEMORY), for t not near d. */
static double slender_eu(const flat_run *run, double *limit)
{
    const double d = run->deep, t = run->thick, e = run->young;
    const double g = e / (2.0 * (1.0 + run->poisson));
    const double iz = d * t * t * t / 12.0, it = d * t * t * t * (1.0 - 0.63 * t / d) / 3.0;
    const double critical = 3.14159265358979323846 / run->length * sqrt(e * iz * g * it);
    *limit = 0.4;
    return sqrt(0.25 * t * d * d * run->yield / critical);
}

static bool tell_flat(const tt_check_input *in, tt_findings *out, size_t first, const flat_run *run)
{
    const bool us = strcmp(in->basis->id, "us") == 0;
    double limit;
    const double slender = us ? slender_us(run, &limit) : slender_eu(run, &limit);
    if (slender <= limit) return true;
    const tt_unchecked entry = {
        .check = "member.lateral",
        .where = in->piece->segments.at[first].name,
        .why =
            us ? "a flat that may topple sideways under bending: Lb d/t^2 is over 0.08 E/Fy "
                 "(AISC 360 F11, from memory), its length taken as not held on the way"
               : "a flat that may topple sideways under bending: its slenderness is over 0.4 "
                 "(EN 1993-1-1 6.3.2.2(4) with 6.3.2.3, from memory), its length taken as not held "
                 "on the way",
        .give = "a thicker flat, a tube, or a bar",
        .needed = true,
        .has_demand = true,
        .demand = slender,
        .unit = ""};
    return tt_unchecked_add(out, entry);
}

static flat_run start(const tt_check_input *in, const tt_metal *metal)
{
    const tt_property own = strcmp(in->basis->id, "us") == 0 ? TT_P_YOUNG_US : TT_P_YOUNG_EU;
    const tt_fact *young = metal->fact[own].has ? &metal->fact[own] : &metal->fact[TT_P_YOUNG_LOW];
    return (flat_run){.thick = INFINITY,
                      .young = young->value,
                      .poisson = metal->fact[TT_P_POISSON].value,
                      .yield = metal->fact[TT_P_YIELD].value};
}

/* From segment s on; returns the segment behind the run. */
static size_t run_from(const tt_check_input *in, size_t s, flat_run *run)
{
    const tt_piece *piece = in->piece;
    const tt_segment *first = &piece->segments.at[s];
    *run = start(in, &piece->metals.at[first->armature.metal]);
    do {
        const tt_segment *segment = &piece->segments.at[s];
        widen(run, &segment->armature, tt_segment_length(piece, segment));
        s++;
    } while (first->limb != TT_NONE && s < piece->segments.n &&
             piece->segments.at[s].limb == first->limb &&
             piece->segments.at[s].armature.form == TT_MEMBER_FLAT);
    return s;
}

bool tt_unchecked_members(const tt_check_input *in, tt_findings *out)
{
    bool fits = true;
    for (size_t s = 0; s < in->piece->segments.n && fits;) {
        const tt_segment *segment = &in->piece->segments.at[s];
        const size_t here = s++;
        if (segment->armature.choose) {
            const tt_unchecked entry = {.check = "armature",
                                        .where = segment->name,
                                        .why = "choosing the armature is not in this version: "
                                               "it is judged here without one",
                                        .give = "armature: {tube: [...]}, or none",
                                        .needed = true};
            fits = tt_unchecked_add(out, entry);
        } else if (segment->armature.form == TT_MEMBER_FLAT) {
            flat_run run;
            s = run_from(in, here, &run);
            fits = tell_flat(in, out, here, &run);
        }
    }
    return fits;
}
