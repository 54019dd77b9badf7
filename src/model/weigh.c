/* model/weigh.c - weight and centre of mass of each pattern, summed over strips and lumps. */
#include "model/parts.h"

double tt_lump_mass(const tt_lump *lump, int pattern)
{
    return pattern == TT_HEAVY   ? lump->mass.high
           : pattern == TT_LIGHT ? lump->mass.low
                                 : lump->mass.is;
}

tt_vec3 tt_part_lever(const tt_strip *strip, const tt_section *part)
{
    return tt_add(tt_scale(strip->axes.y, part->at_y), tt_scale(strip->axes.z, part->at_z));
}

static void weigh_pattern(tt_model *model, int pattern)
{
    const tt_piece *piece = model->piece;
    tt_weight *weight = &model->weight[pattern];
    tt_vec3 moment = {0, 0, 0};
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &model->strips[i];
        const double bronze = strip->bronze[pattern] * strip->length;
        const double armature = strip->armature * strip->length;
        model->segment_bronze[strip->segment][pattern] += bronze;
        if (pattern == TT_NOMINAL) model->segment_armature[strip->segment] += armature;
        weight->bronze += bronze;
        weight->armature += armature;
        moment = tt_add(moment, tt_scale(strip->at, bronze + armature));
        moment = tt_add(moment, tt_scale(tt_part_lever(strip, &strip->shell), bronze));
        moment = tt_add(moment, tt_scale(tt_part_lever(strip, &strip->core), armature));
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        const tt_vec3 at = tt_add(piece->points.at[lump->at].at, lump->offset);
        weight->lumps += tt_lump_mass(lump, pattern);
        moment = tt_add(moment, tt_scale(at, tt_lump_mass(lump, pattern)));
    }
    const double mass = tt_model_mass(model, pattern);
    model->centre[pattern] = mass > 0.0 ? tt_scale(moment, 1.0 / mass) : moment;
}

double tt_model_mass(const tt_model *model, int pattern)
{
    const tt_weight *weight = &model->weight[pattern];
    return weight->bronze + weight->armature + weight->lumps;
}

double tt_model_mass_told(const tt_model *model, int pattern)
{
    const tt_ledger *ledger = model->ledger;
    if (!ledger || ledger->whole <= 0.0) return tt_model_mass(model, pattern);
    return pattern == TT_HEAVY   ? ledger->total.high
           : pattern == TT_LIGHT ? ledger->total.low
                                 : ledger->total.is;
}

double tt_model_estimate(const tt_model *model, size_t segment)
{
    return model->ledger ? model->ledger->segment[segment].estimate.is
                         : model->segment_bronze[segment][TT_NOMINAL];
}

tt_weight_source tt_model_weight_source(const tt_model *model, size_t segment)
{
    return model->ledger ? model->ledger->segment[segment].source : TT_BY_GEOMETRY;
}

tt_status tt_model_weigh(tt_model *model)
{
    const size_t n = model->piece->segments.n;
    model->segment_bronze = tt_pool_take(&model->pool, n, sizeof *model->segment_bronze);
    model->segment_armature = tt_pool_take(&model->pool, n, sizeof *model->segment_armature);
    if (!model->segment_bronze || !model->segment_armature) return TT_E_NOMEM;
    for (int p = 0; p < TT_PATTERNS; p++) weigh_pattern(model, p);
    return TT_OK;
}
