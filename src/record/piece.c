/* record/piece.c - what was read and what it weighs: input, mass, balance, sections, defaults. SI.
 */
#include "record/put.h"

/* Rows of one's own, those that the piece uses; null when there were none to use. */
static cJSON *own_data(tt_record *r)
{
    const tt_piece *piece = r->piece;
    if (!piece->data) return tt_make_null(r);
    cJSON *data = tt_make_object(r);
    tt_put_text(r, data, "file", piece->data->file);
    tt_put_text(r, data, "sha256", piece->data->sha256);
    cJSON *rows = tt_put(r, data, "rows", tt_make_array(r));
    for (size_t i = 0; i < piece->origins.n; i++) {
        const tt_origin *origin = &piece->origins.at[i];
        if (origin->kind != TT_ORIGIN_DATA) continue;
        cJSON *row = tt_put(r, rows, NULL, tt_make_object(r));
        tt_put_text(r, row, "key", origin->key);
        tt_put_text(r, row, "name", origin->written);
        tt_put_number(r, row, "line", origin->place.line);
        tt_put_text(r, row, "source", origin->why);
    }
    return data;
}

cJSON *tt_record_input(tt_record *r)
{
    const tt_piece *piece = r->piece;
    cJSON *input = tt_make_object(r);
    tt_put_text(r, input, "file", piece->file);
    tt_put_text(r, input, "sha256", piece->sha256);
    cJSON *set = tt_put(r, input, "set", tt_make_array(r));
    for (size_t i = 0; i < piece->sets; i++) tt_put_text(r, set, NULL, piece->set[i]);
    tt_put(r, input, "data", own_data(r));
    return input;
}

static void part(tt_record *r, cJSON *parts, size_t segment)
{
    const tt_model *model = r->a->model;
    cJSON *row = tt_put(r, parts, NULL, tt_make_object(r));
    const double bronze = model->segment_bronze[segment][TT_NOMINAL];
    tt_put_text(r, row, "segment", r->a->piece->segments.at[segment].name);
    tt_put_number(r, row, "bronze_kg", bronze);
    tt_put_number(r, row, "armature_kg", model->segment_armature[segment]);
    tt_put_text(r, row, "source", tt_weight_source_word[tt_model_weight_source(model, segment)]);
    tt_put_number(r, row, "estimated_kg", tt_model_estimate(model, segment));
}

cJSON *tt_record_mass(tt_record *r)
{
    const tt_assessment *a = r->a;
    const tt_limits *limits = &a->piece->limits;
    cJSON *mass = tt_make_object(r);
    tt_put_number(r, mass, "total_kg", tt_model_mass(a->model, TT_NOMINAL));
    tt_put_number(r, mass, "low_kg", tt_model_mass_told(a->model, TT_LIGHT));
    tt_put_number(r, mass, "high_kg", tt_model_mass_told(a->model, TT_HEAVY));
    tt_put(r, mass, "limit_kg",
           limits->has_mass ? tt_make_number(r, limits->mass.is) : tt_make_null(r));
    tt_put_number(r, mass, "lumps_kg", a->model->weight[TT_NOMINAL].lumps);
    tt_put_number(r, mass, "base_kg", tt_base_mass(a->piece));
    cJSON *parts = tt_put(r, mass, "parts", tt_make_array(r));
    for (size_t i = 0; i < a->piece->segments.n; i++) part(r, parts, i);
    return mass;
}

cJSON *tt_record_balance(tt_record *r)
{
    const tt_balance *b = &r->a->balance;
    cJSON *balance = tt_make_object(r);
    cJSON *polygon = tt_put(r, balance, "polygon_m", tt_make_array(r));
    for (size_t i = 0; b->applies && i < b->polygon_n; i++) {
        tt_put(r, polygon, NULL,
               tt_make_numbers(r, (const double[]){b->polygon[i].x, b->polygon[i].y}, 2));
    }
    if (!b->applies) {
        tt_put(r, balance, "edge_distance_m", tt_make_null(r));
        return balance;
    }
    tt_put_number(r, balance, "edge_distance_m", b->edge_distance);
    tt_put_number(r, balance, "drawn_in_m", b->drawn_in);
    tt_put_vec3(r, balance, "edge_way", b->edge_way);
    cJSON *told = tt_put(r, balance, "unanchored", tt_make_object(r));
    tt_put_number(r, told, "use", b->use);
    tt_put_text(r, told, "combination", b->combination);
    return balance;
}

/* Null where there is no shear strain that way. */
static void shear_area(tt_record *r, cJSON *row, const char *key, double shear, double area)
{
    if (shear >= TT_NO_SHEAR_STRAIN * area && area > 0.0)
        tt_put(r, row, key, tt_make_null(r));
    else
        tt_put_number(r, row, key, shear);
}

const char *const tt_outline_word[] = {"none", "ellipse", "box", "trace", "numbers"};
const char *const tt_member_word[] = {"none", "tube", "bar", "box", "flat"};

static const char *outline_word(const tt_outline *outline)
{
    return tt_outline_word[outline->corner > 0.0 ? TT_OUTLINE_BOX : outline->kind];
}

static const char *member_word(const tt_member *member)
{
    return member->choose ? "choose" : tt_member_word[member->form];
}

static void properties(tt_record *r, cJSON *row, const char *key, const tt_section *section)
{
    cJSON *part_of_cut = tt_put(r, row, key, tt_make_object(r));
    tt_put_number(r, part_of_cut, "area_m2", section->area);
    tt_put_number(r, part_of_cut, "iy_m4", section->iy);
    tt_put_number(r, part_of_cut, "iz_m4", section->iz);
    tt_put_number(r, part_of_cut, "iyz_m4", section->iyz);
    tt_put_number(r, part_of_cut, "j_m4", section->j);
    shear_area(r, part_of_cut, "shear_y_m2", section->shear_y, section->area);
    shear_area(r, part_of_cut, "shear_z_m2", section->shear_z, section->area);
    tt_put(r, part_of_cut, "at_m",
           tt_make_numbers(r, (const double[]){section->at_y, section->at_z}, 2));
}

cJSON *tt_record_sections(tt_record *r)
{
    cJSON *sections = tt_make_array(r);
    for (size_t i = 0; i < r->a->model->cuts.n; i++) {
        const tt_cut *cut = &r->a->model->cuts.at[i];
        cJSON *row = tt_put(r, sections, NULL, tt_make_object(r));
        tt_put_place(r, row, cut->segment, cut->x);
        tt_put_vec3(r, row, "local_y", cut->axes.y);
        tt_put_vec3(r, row, "local_z", cut->axes.z);
        const tt_segment *segment = &r->a->piece->segments.at[cut->segment];
        tt_put_text(r, row, "outline", outline_word(&segment->outline));
        tt_put_text(r, row, "member", member_word(&segment->armature));
        properties(r, row, "bronze", &cut->bronze);
        properties(r, row, "armature", &cut->armature);
        tt_put_number(r, row, "bore_m", cut->bore);
    }
    return sections;
}

cJSON *tt_record_defaults(tt_record *r)
{
    const tt_piece *piece = r->a->piece;
    cJSON *defaults = tt_make_array(r);
    for (size_t i = 0; i < piece->origins.n; i++) {
        const tt_origin *origin = &piece->origins.at[i];
        if (origin->kind != TT_ORIGIN_DEFAULT) continue;
        cJSON *row = tt_put(r, defaults, NULL, tt_make_object(r));
        tt_put_text(r, row, "key", origin->key);
        tt_put_text(r, row, "value", origin->written);
        tt_put_text(r, row, "why", origin->why);
    }
    return defaults;
}
