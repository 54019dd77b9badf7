/* record/weights.c - the ledger of weights as JSON, schema tiptoe-weigh/1. kg, m. */
#include "record/put.h"

#include <math.h>

static const tt_ledger *ledger_of(const tt_record *r)
{
    return &r->weights->ledger;
}

static void put_or_null(tt_record *r, cJSON *into, const char *key, double value, bool there)
{
    tt_put(r, into, key, there ? tt_make_number(r, value) : tt_make_null(r));
}

static cJSON *schema(tt_record *r)
{
    return tt_make_text(r, "tiptoe-weigh/1");
}

static void segment(tt_record *r, cJSON *parts, size_t index)
{
    const tt_ledger_segment *row = &ledger_of(r)->segment[index];
    cJSON *part = tt_put(r, parts, NULL, tt_make_object(r));
    tt_put_text(r, part, "segment", r->piece->segments.at[index].name);
    tt_put_number(r, part, "bronze_kg", row->taken.is);
    tt_put_number(r, part, "low_kg", row->taken.low);
    tt_put_number(r, part, "high_kg", row->taken.high);
    tt_put_text(r, part, "source", tt_weight_source_word[row->source]);
    tt_put_number(r, part, "estimated_kg", row->estimate.is);
}

static cJSON *limit(tt_record *r)
{
    const tt_limits *limits = &r->piece->limits;
    return limits->has_mass ? tt_make_number(r, limits->mass.is) : tt_make_null(r);
}

static cJSON *mass(tt_record *r)
{
    const tt_ledger *ledger = ledger_of(r);
    cJSON *object = tt_make_object(r);
    tt_put_number(r, object, "total_kg", ledger->total.is);
    tt_put_number(r, object, "low_kg", ledger->total.low);
    tt_put_number(r, object, "high_kg", ledger->total.high);
    tt_put(r, object, "limit_kg", limit(r));
    tt_put_number(r, object, "armature_kg", ledger->armature);
    tt_put_number(r, object, "lumps_kg", ledger->lumps.is);
    tt_put_number(r, object, "base_kg", tt_base_mass(r->piece));
    put_or_null(r, object, "whole_kg", ledger->whole, ledger->whole > 0.0);
    cJSON *parts = tt_put(r, object, "parts", tt_make_array(r));
    for (size_t i = 0; i < r->piece->segments.n; i++) segment(r, parts, i);
    return object;
}

static cJSON *centre(tt_record *r)
{
    return tt_make_vec3(r, r->weights->centre);
}

static cJSON *rows(tt_record *r)
{
    const tt_ledger *ledger = ledger_of(r);
    cJSON *list = tt_make_array(r);
    for (size_t i = 0; i < ledger->parts; i++) {
        const tt_ledger_part *part = &ledger->part[i];
        const bool moved = part->source != TT_BY_GEOMETRY || part->settled;
        cJSON *row = tt_put(r, list, NULL, tt_make_object(r));
        tt_put_text(r, row, "part", part->name);
        tt_put_number(r, row, "estimated_kg", part->estimate.is);
        put_or_null(r, row, "wax_kg", part->wax, part->wax > 0.0);
        put_or_null(r, row, "bronze_kg", part->scales, part->scales > 0.0);
        tt_put_number(r, row, "taken_kg", part->taken.is);
        tt_put_text(r, row, "source", tt_weight_source_word[part->source]);
        put_or_null(r, row, "difference", tt_ledger_difference(part), moved);
        tt_put_bool(r, row, "flagged", fabs(tt_ledger_difference(part)) > TT_LEDGER_FLAG);
        put_or_null(r, row, "wall_m", part->wall, part->wall > 0.0);
        tt_put_number(r, row, "spread_kg", part->taken.high - part->taken.low);
    }
    return list;
}

static cJSON *left(tt_record *r)
{
    const tt_limits *limits = &r->piece->limits;
    return limits->has_mass ? tt_make_number(r, limits->mass.is - ledger_of(r)->total.is)
                            : tt_make_null(r);
}

static cJSON *forecast(tt_record *r)
{
    const tt_open *total = &ledger_of(r)->total;
    return tt_make_numbers(r, (const double[]){total->low, total->high}, 2);
}

static const tt_record_key keys[] = {
    {"schema", schema},
    {"program", tt_record_program},
    {"input", tt_record_input},
    {"piece", tt_record_name},
    {"revision", tt_record_revision},
    {"mass", mass},
    {"centre_of_mass_m", centre},
    {"ledger", rows},
    {"limit_kg", limit},
    {"left_kg", left},
    {"forecast_kg", forecast},
};

tt_status tt_record_weights(const tt_weights *weights, tt_text *out)
{
    tt_record r = {.weights = weights, .piece = weights->piece, .status = TT_OK};
    return tt_record_write(&r, keys, sizeof keys / sizeof *keys, out);
}
