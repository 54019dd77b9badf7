/* check/checks/strength_armature.c - elastic stress in the armature against its design strength,
 * at every cut, less what corrosion takes. Pa. The clauses of the member standards come apart. */
#include "check/parts.h"

#include <math.h>
#include <string.h>

static const char name[] = "strength.armature";
/* The first only of stainless steel to the American basis. */
static const char *const assumes[] = {"0.90 on yield for every form and stress; of round stainless "
                                      "tube in compression AISC Design Guide "
                                      "27 may ask 0.85 (from memory, not certain)",
                                      "linear elastic, first yield; the member clauses (classes, "
                                      "buckling, interaction) are not in it",
                                      "second order: small turns, loads keep their direction",
                                      NULL};

static const char *const *assumes_of(const tt_check_input *in, size_t segment)
{
    const tt_metal *metal = &in->piece->metals.at[in->piece->segments.at[segment].armature.metal];
    const bool first = metal->stainless && strcmp(in->basis->id, "us") == 0;
    return first ? assumes : assumes + 1;
}

static double strength(const tt_check_input *in, size_t index, tt_steps *steps)
{
    const tt_segment *segment = &in->piece->segments.at[index];
    const tt_metal *metal = &in->piece->metals.at[segment->armature.metal];
    const tt_fact *yield = &metal->fact[TT_P_YIELD];
    if (!yield->has) return 0.0;
    if (steps) tt_step_add(steps, "f_y", NULL, yield->value, "Pa", &yield->source, NULL);
    return in->basis->steel_strength(yield->value, metal->fact[TT_P_ULTIMATE].value,
                                     metal->stainless, steps);
}

static double stress_at(const tt_loaded_cut *at)
{
    if (at->cut->armature.area <= 0.0) return -1.0;
    const tt_forces on = tt_on_armature(at);
    return tt_section_stress(&at->cut->armature_weak, &on).equivalent;
}

static double use_at(const tt_loaded_cut *at, double stress)
{
    const double f = strength(at->in, at->cut->segment, NULL);
    return f > 0.0 ? stress / f : INFINITY;
}

static const tt_judged_part armature = {
    stress_at, use_at, {[TT_STRENGTH] = true, [TT_ACCIDENTAL] = true}};

static void lines(const tt_check_input *in, const tt_worst *worst, tt_steps *steps)
{
    const tt_loaded_cut at = {in, &worst->cut, worst->carry, worst->whole};
    const tt_section *left = &worst->cut.armature_weak;
    const tt_forces on = tt_on_armature(&at);
    tt_steps_forces(steps, in, worst, false, &on);
    if (!(left->area > 0.0)) return;
    const tt_stress stress = tt_section_stress(left, &on);
    tt_steps_stress(steps, left, &on, &stress);
    strength(in, worst->cut.segment, steps);
}

static tt_status judge(const tt_check_input *in, size_t segment, double floor, tt_findings *out)
{
    tt_worst worst;
    const tt_status status = tt_worst_of(in, segment, &armature, floor, &worst);
    if (status != TT_OK || !worst.any) return status;
    if (worst.buckles) return tt_finding_buckled(in, out, name, &worst);
    const tt_loaded_cut at = {in, &worst.cut, worst.carry, worst.whole};
    const bool left = worst.cut.armature_weak.area > 0.0;
    tt_finding finding = tt_finding_of(in, name, left ? stress_at(&at) : 0.0,
                                       left ? strength(in, segment, NULL) : 0.0, "Pa",
                                       "nothing is left of the wall after corrosion");
    tt_finding_place(in, out, &worst, &finding);
    finding.assumes = assumes_of(in, segment);
    finding.lines = lines;
    return tt_finding_keep(out, finding);
}

static bool applies(const tt_segment *segment)
{
    return segment->armature.form != TT_MEMBER_NONE;
}

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_by_segment by = {name, "the piece has no armature", applies, &armature, judge};
    return tt_judge_segments(in, &by, out);
}

const tt_check tt_check_strength_armature = {
    .name = name,
    .title = "strength of the armature",
    .explain =
        "The armature is taken as elastic. At every cut the axial force, bending, shear and "
        "torsion that it carries give a normal and a shear stress; both at their largest are "
        "joined by von Mises' rule and held against the design strength of the steel. In "
        "'armature alone' it carries everything, in 'together' its share by stiffness. The "
        "wall is less by the corrosion allowance.",
    .source = TT_S_von_mises,
    .run = run};
