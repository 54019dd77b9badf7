/* record/put.c - JSON values one by one, their memory from base, their numbers our own. */
#include "record/put.h"

#include "source/words.h"

/* A value that could not be made is for want of memory. */
static cJSON *made(tt_record *r, cJSON *value)
{
    if (!value && r->status == TT_OK) r->status = TT_E_NOMEM;
    return value;
}

cJSON *tt_make_object(tt_record *r)
{
    return made(r, cJSON_CreateObject());
}

cJSON *tt_make_array(tt_record *r)
{
    return made(r, cJSON_CreateArray());
}

cJSON *tt_make_null(tt_record *r)
{
    return made(r, cJSON_CreateNull());
}

cJSON *tt_make_text(tt_record *r, const char *text)
{
    return text ? made(r, cJSON_CreateString(text)) : tt_make_null(r);
}

cJSON *tt_make_number(tt_record *r, double value)
{
    char text[32];
    if (tt_record_number(value, text)) return made(r, cJSON_CreateRaw(text));
    if (r->status == TT_OK) r->status = TT_E_NOT_FINITE;
    return NULL;
}

cJSON *tt_make_numbers(tt_record *r, const double *value, size_t n)
{
    cJSON *array = tt_make_array(r);
    for (size_t i = 0; i < n; i++) tt_put_number(r, array, NULL, value[i]);
    return array;
}

cJSON *tt_make_vec3(tt_record *r, tt_vec3 v)
{
    return tt_make_numbers(r, (const double[]){v.x, v.y, v.z}, 3);
}

cJSON *tt_put(tt_record *r, cJSON *into, const char *key, cJSON *value)
{
    if (!value) return NULL;
    if (into &&
        (key ? cJSON_AddItemToObjectCS(into, key, value) : cJSON_AddItemToArray(into, value))) {
        return value;
    }
    cJSON_Delete(value);
    return made(r, NULL);
}

void tt_put_bool(tt_record *r, cJSON *into, const char *key, bool value)
{
    tt_put(r, into, key, made(r, cJSON_CreateBool(value)));
}

void tt_put_source(tt_record *r, cJSON *into, const char *key, const tt_source *source)
{
    tt_text words = {0};
    tt_source_words(&words, source);
    if (words.failed)
        made(r, NULL);
    else
        tt_put_text(r, into, key, tt_text_of(&words));
    tt_text_clear(&words);
}

void tt_put_steps(tt_record *r, cJSON *into, const tt_step *step, size_t n)
{
    cJSON *steps = tt_put(r, into, "steps", tt_make_array(r));
    for (size_t i = 0; i < n; i++) {
        cJSON *line = tt_put(r, steps, NULL, tt_make_object(r));
        tt_put_text(r, line, "symbol", step[i].symbol);
        tt_put_text(r, line, "formula", step[i].formula);
        tt_put_text(r, line, "numbers", step[i].numbers);
        tt_put_number(r, line, "value", step[i].value);
        tt_put_text(r, line, "unit", step[i].unit);
        tt_put_source(r, line, "source", &step[i].source);
        tt_put_text(r, line, "read", tt_mark_word(step[i].source.mark));
    }
}
