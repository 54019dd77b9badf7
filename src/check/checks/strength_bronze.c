/* check/checks/strength_bronze.c - elastic stress in the bronze against min(f_y/1.5, f_u/2.5) x
 * casting quality x seam efficiency, at every cut, with the low wall. Pa. */
#include "check/parts.h"

#include <math.h>

static const char name[] = "strength.bronze";
static const char *const assumes[] = {
    "no structural standard covers cast bronze; the divisors are an assumption of this program",
    "casting quality 0.80; at a neck that bronze carries alone, from a use of one half on, 0.50 "
    "looked at only, 0.67 with penetrant, 0.80 with penetrant and radiograph",
    "seams count as the file says, else as the alloy's seams do; of casting and filler the weaker",
    "the low wall all round; second order, small turns; local buckling is not in it", NULL};

/* 14 CFR 29.621 taken as 1/factor: 1/2.0 looked at only, 1/1.5 with penetrant, 1/1.25 with
 * penetrant and radiograph (READ); at large 0.80 as ASME B31.3 302.3.3 (READ). The split is an
 * assumption. */
static const double quality_at_large = 0.80, use_of_neck = 0.5;
static const double quality_at_neck[] = {
    [TT_LOOKED_AT] = 0.50, [TT_PENETRANT] = 1.0 / 1.5, [TT_RADIOGRAPH] = 0.80};

/* Of the casting quality in use. */
static void tell_quality(const tt_segment *segment, double quality, tt_steps *steps)
{
    static const tt_source said = {"given in the piece file", NULL, NULL, TT_GIVEN};
    const bool given = segment->casting_quality.is > 0.0 && quality >= segment->casting_quality.is;
    const tt_source *source =
        given ? &said
              : tt_source_of(quality < quality_at_large ? TT_S_quality_at_neck
                                                        : TT_S_quality_at_large);
    tt_step_add(steps, "quality", NULL, quality, "", source, NULL);
}

static bool lonely_neck(const tt_cut *cut)
{
    return cut->neck && cut->armature.area <= 0.0;
}

static double quality_away_from_necks(const tt_segment *segment)
{
    const double given = segment->casting_quality.is;
    return given > 0.0 ? given : quality_at_large;
}

/* At a neck that the bronze carries alone: by its inspection, unless a quality was given with a
 * reason. */
static double quality_of_neck(const tt_check_input *in, const tt_segment *segment)
{
    if (segment->neck_quality > 0.0) return segment->neck_quality;
    return fmin(quality_away_from_necks(segment), quality_at_neck[in->piece->inspection]);
}

/* Of casting and filler the weaker; what nobody gives of the filler is not known to be weaker, and
 * is told (unchecked.c). */
static double weaker(const tt_check_input *in, const tt_cut *cut, tt_property property,
                     const char *symbol, tt_steps *steps)
{
    const tt_piece *piece = in->piece;
    const tt_fact *fact = &piece->metals.at[piece->segments.at[cut->segment].alloy].fact[property];
    const size_t filler = !cut->seam_possible ? TT_NONE
                          : cut->seam         ? cut->seam->metal
                                              : piece->works->seams_metal;
    const tt_fact *weld = filler == TT_NONE ? fact : &piece->metals.at[filler].fact[property];
    if (fact->has && weld->has && weld->value < fact->value) fact = weld;
    if (!fact->has) return 0.0;
    if (steps) tt_step_add(steps, symbol, NULL, fact->value, "Pa", &fact->source, NULL);
    return fact->value;
}

static double metal_strength(const tt_check_input *in, const tt_cut *cut, double quality,
                             tt_steps *steps)
{
    const double yield = weaker(in, cut, TT_P_YIELD, "f_y", steps);
    const double ultimate = weaker(in, cut, TT_P_ULTIMATE, "f_u", steps);
    if (yield <= 0.0 || ultimate <= 0.0) return 0.0;
    return tt_bronze_strength(yield, ultimate, quality, tt_seam_at(in, cut), steps);
}

/* The neck's quality holds there from a use of one half on (decision on casting quality). */
static double quality_of(const tt_check_input *in, const tt_cut *cut, double stress)
{
    const tt_segment *segment = &in->piece->segments.at[cut->segment];
    const double at_large = quality_away_from_necks(segment);
    if (!lonely_neck(cut) || stress <= use_of_neck * metal_strength(in, cut, at_large, NULL))
        return at_large;
    return quality_of_neck(in, segment);
}

/* Not asked where the armature carries everything. */
static double stress_at(const tt_loaded_cut *at)
{
    if (at->cut->bronze_weak.area <= 0.0) return -1.0;
    if (at->carry == TT_ALONE && at->cut->armature.area > 0.0) return -1.0;
    const tt_forces on = tt_on_bronze(at);
    return tt_section_stress(&at->cut->bronze_weak, &on).equivalent;
}

static double use_at(const tt_loaded_cut *at, double stress)
{
    if (stress <= 0.0) return 0.0;
    const double f = metal_strength(at->in, at->cut, quality_of(at->in, at->cut, stress), NULL);
    return f > 0.0 ? stress / f : INFINITY;
}

static const tt_judged_part bronze = {
    stress_at, use_at, {[TT_STRENGTH] = true, [TT_ACCIDENTAL] = true}};

/* More load brings such a neck under the quality of its inspection: its margin counts that. */
static double margin_of_neck(const tt_check_input *in, const tt_cut *cut, double stress)
{
    const double quality = quality_of_neck(in, &in->piece->segments.at[cut->segment]);
    return in->piece->limits.use.is * metal_strength(in, cut, quality, NULL) / stress - 1.0;
}

static void lines(const tt_check_input *in, const tt_worst *worst, tt_steps *steps)
{
    const tt_loaded_cut at = {in, &worst->cut, worst->carry, worst->whole};
    const tt_forces on = tt_on_bronze(&at);
    const tt_stress stress = tt_section_stress(&worst->cut.bronze_weak, &on);
    const double quality = quality_of(in, &worst->cut, stress.equivalent);
    tt_steps_forces(steps, in, worst, true, &on);
    tt_steps_stress(steps, &worst->cut.bronze_weak, &on, &stress);
    tell_quality(&in->piece->segments.at[worst->cut.segment], quality, steps);
    metal_strength(in, &worst->cut, quality, steps);
}

static tt_status judge(const tt_check_input *in, size_t segment, double floor, tt_findings *out)
{
    tt_worst worst;
    const tt_status status = tt_worst_of(in, segment, &bronze, floor, &worst);
    if (status != TT_OK || !worst.any) return status;
    if (worst.buckles) return tt_finding_buckled(in, out, name, &worst);
    const tt_loaded_cut at = {in, &worst.cut, worst.carry, worst.whole};
    const double stress = stress_at(&at);
    const double f = metal_strength(in, &worst.cut, quality_of(in, &worst.cut, stress), NULL);
    tt_finding finding = tt_finding_of(
        in, name, stress, f, "Pa",
        worst.cut.seam ? "the seam here counts nothing"
                       : "a seam is possible here and this alloy's seams count nothing");
    tt_finding_place(in, out, &worst, &finding);
    if (finding.has_use && lonely_neck(&worst.cut))
        finding.margin = margin_of_neck(in, &worst.cut, stress);
    if (!finding.has_use) {
        const bool said = worst.cut.seam || in->piece->works->seams_said;
        finding.default_key = said ? NULL : "seams"; /* nobody said anything of them: unknown */
    } else if (!finding.default_key && !lonely_neck(&worst.cut)) {
        finding.default_key =
            tt_default_key(in->piece, in->piece->segments.at[segment].casting_quality.origin);
    } else if (!finding.default_key && in->piece->segments.at[segment].neck_quality <= 0.0) {
        finding.default_key = tt_default_key(in->piece, in->piece->inspection_origin);
    }
    finding.assumes = assumes;
    finding.lines = lines;
    return tt_finding_keep(out, finding);
}

static bool applies(const tt_segment *segment)
{
    return segment->alloy != TT_NONE;
}

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_by_segment by = {name, "the piece has no bronze", applies, &bronze, judge};
    return tt_judge_segments(in, &by, out);
}

const tt_check tt_check_strength_bronze = {
    .name = name,
    .title = "strength of the bronze",
    .explain =
        "The bronze shell is taken as elastic, with its wall at the low end of its spread. Its "
        "stress at every cut, normal and shear at their largest joined by von Mises' rule, is "
        "held against the smaller of yield over 1.5 and tensile strength over 2.5, times the "
        "casting quality, times the efficiency of a seam where one is possible. Where an "
        "armature carries, the bronze is judged for its share in 'together'.",
    .source = TT_S_assumption,
    .run = run};
