/* record/record.c - the outermost object of the JSON result: its keys in their order, each made,
 * written and given back before the next. */
#include "record/put.h"

#include "base/alloc.h"
#include "tiptoe/version.h"

#include <string.h>

static cJSON *schema(tt_record *r)
{
    return tt_make_text(r, "tiptoe-check/1");
}

cJSON *tt_record_program(tt_record *r)
{
    return tt_make_text(r, "tiptoe " TIPTOE_VERSION);
}

cJSON *tt_record_name(tt_record *r)
{
    return tt_make_text(r, r->piece->name);
}

cJSON *tt_record_revision(tt_record *r)
{
    return tt_make_text(r, r->piece->revision);
}

static cJSON *basis(tt_record *r)
{
    return tt_make_text(r, r->a->basis->id);
}

static cJSON *edition(tt_record *r)
{
    return tt_make_text(r, r->a->piece->edition);
}

static cJSON *scale(tt_record *r)
{
    return tt_make_number(r, r->a->piece->scale);
}

const char *const tt_verdict_word[] = {"holds", "falls short", "not checked"};

static cJSON *verdict(tt_record *r)
{
    return tt_make_text(r, tt_verdict_word[r->a->verdict]);
}

static cJSON *decided_by_default(tt_record *r)
{
    return tt_make_text(r, r->a->decided_by_default);
}

static cJSON *centre_of_mass(tt_record *r)
{
    return tt_make_vec3(r, r->a->model->centre[TT_NOMINAL]);
}

/* Remedies and what matters most: keys of the contract; this version finds none. */
static cJSON *nothing(tt_record *r)
{
    return tt_make_array(r);
}

static const tt_record_key keys[] = {
    {"schema", schema},
    {"program", tt_record_program},
    {"input", tt_record_input},
    {"piece", tt_record_name},
    {"revision", tt_record_revision},
    {"basis", basis},
    {"edition", edition},
    {"scale", scale},
    {"verdict", verdict},
    {"decided_by_default", decided_by_default},
    {"governing", tt_record_governing},
    {"mass", tt_record_mass},
    {"centre_of_mass_m", centre_of_mass},
    {"balance", tt_record_balance},
    {"sections", tt_record_sections},
    {"models", tt_record_models},
    {"combination_list", tt_record_combinations},
    {"actions", tt_record_actions},
    {"checks", tt_record_checks},
    {"not_checked", tt_record_not_checked},
    {"not_applicable", tt_record_not_applicable},
    {"defaults", tt_record_defaults},
    {"remedies", nothing},
    {"matters", nothing},
    {"proof", tt_record_proof},
    {"cautions", tt_record_cautions},
};

static void print(tt_record *r, const cJSON *value, tt_text *out)
{
    char *text = r->status == TT_OK ? cJSON_PrintUnformatted(value) : NULL;
    if (text)
        tt_text_put(out, text);
    else if (r->status == TT_OK)
        r->status = TT_E_NOMEM;
    cJSON_free(text);
}

/* A list of objects takes a line a row. */
static void write(tt_record *r, const cJSON *value, tt_text *out)
{
    if (!cJSON_IsArray(value) || !cJSON_IsObject(value->child)) {
        print(r, value, out);
        return;
    }
    for (const cJSON *row = value->child; row; row = row->next) {
        tt_text_put(out, row == value->child ? "[\n  " : ",\n  ");
        print(r, row, out);
    }
    tt_text_put(out, "\n]");
}

static void *take(size_t bytes)
{
    return tt_alloc(1, bytes);
}

static void give_back(void *block)
{
    tt_free(block);
}

tt_status tt_record_write(tt_record *r, const tt_record_key *key, size_t n, tt_text *out)
{
    /* cJSON knows its memory functions for the whole process; setting the same pair again changes
     * nothing. A host that uses cJSON itself shares them. */
    cJSON_InitHooks(&(cJSON_Hooks){take, give_back});
    for (size_t i = 0; i < n && r->status == TT_OK; i++) {
        tt_text_format(out, "%s\"%s\": ", i == 0 ? "{" : ",\n", key[i].key);
        cJSON *value = key[i].make(r);
        write(r, value, out);
        cJSON_Delete(value);
    }
    tt_text_put(out, "}\n");
    return r->status == TT_OK && out->failed ? TT_E_NOMEM : r->status;
}

tt_status tt_record_json(const tt_assessment *assessment, tt_text *out)
{
    tt_record r = {.a = assessment, .piece = assessment->piece, .status = TT_OK};
    return tt_record_write(&r, keys, sizeof keys / sizeof *keys, out);
}
