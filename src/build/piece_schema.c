/* build/piece_schema.c - prints the schema of the piece file (JSON Schema, draft-07) from the key
 * table: a definition for each map and for each kind of quantity, and the map at the top. */
#include "build/schema.h"
#include "piecefile/keys.h"

#include <cjson/cJSON.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- small makings ---- */

static cJSON *text(const char *words)
{
    return cJSON_CreateString(words);
}

static cJSON *object(const char *key, cJSON *value)
{
    cJSON *made = cJSON_CreateObject();
    if (key) cJSON_AddItemToObject(made, key, value);
    return made;
}

static cJSON *list(cJSON *a, cJSON *b)
{
    cJSON *made = cJSON_CreateArray();
    cJSON_AddItemToArray(made, a);
    if (b) cJSON_AddItemToArray(made, b);
    return made;
}

static cJSON *reference(const char *name)
{
    char words[120];
    snprintf(words, sizeof words, "#/definitions/%s", name);
    return object("$ref", text(words));
}

/* "a limb" to "a-limb" */
static cJSON *map_reference(const tt_map *map)
{
    char name[80];
    snprintf(name, sizeof name, "%s", map->title);
    for (char *c = name; *c; c++)
        if (*c == ' ') *c = '-';
    return reference(name);
}

/* One of several, without a level where there is one alone. */
static cJSON *any_of(cJSON *forms)
{
    cJSON *one = cJSON_GetArraySize(forms) == 1 ? cJSON_DetachItemFromArray(forms, 0) : NULL;
    if (!one) return object("anyOf", forms);
    cJSON_Delete(forms);
    return one;
}

/* A list of n entries, each a copy of `entry`. */
static cJSON *array_of(cJSON *entry, int least, int most)
{
    cJSON *made = object("type", text("array"));
    cJSON_AddItemToObject(made, "items", entry);
    cJSON_AddNumberToObject(made, "minItems", least);
    if (most) cJSON_AddNumberToObject(made, "maxItems", most);
    return made;
}

/* {is: VALUE, because: "…"}, of a spread with low and high. */
static cJSON *with_reason(const cJSON *value, bool spread)
{
    cJSON *made = object("type", text("object")), *properties = cJSON_CreateObject();
    cJSON_AddItemToObject(properties, "is", cJSON_Duplicate(value, 1));
    if (spread) cJSON_AddItemToObject(properties, "low", cJSON_Duplicate(value, 1));
    if (spread) cJSON_AddItemToObject(properties, "high", cJSON_Duplicate(value, 1));
    cJSON_AddItemToObject(properties, "because", reference("words"));
    cJSON_AddItemToObject(made, "required", list(text("is"), NULL));
    cJSON_AddItemToObject(made, "properties", properties);
    cJSON_AddFalseToObject(made, "additionalProperties");
    return made;
}

/* ---- quantities ---- */

typedef enum { ANY, FROM_NIL, OVER_NIL, SIGNS } sign;

static sign sign_of(const tt_key *key)
{
    if (!(key->least < key->most) || key->least < 0) return ANY;
    return key->least > 0 ? OVER_NIL : FROM_NIL;
}

/* "length-over-nil" */
static void quantity_name(char name[80], tt_kind kind, sign s)
{
    static const char *const behind[SIGNS] = {"", " from nil", " over nil"};
    snprintf(name, 80, "%s%s", tt_kind_word(kind), behind[s]);
    for (char *c = name; *c; c++)
        if (*c == ' ') *c = '-';
}

static void add_pattern(cJSON *into, tt_kind kind, bool negative)
{
    tt_text pattern = {0};
    char due[120];
    tt_schema_pattern(&pattern, kind, negative);
    cJSON_AddItemToObject(into, "pattern", text(tt_text_of(&pattern)));
    tt_text_clear(&pattern);
    snprintf(due, sizeof due, "%s is due, for example %s", tt_kind_word(kind),
             tt_kind_example(kind));
    cJSON_AddItemToObject(into, "patternErrorMessage", text(due)); /* what an editor shows */
}

/* Behind a unit, or bare where it is a length; a bare nil is any quantity. */
static cJSON *quantity_definition(tt_kind kind, sign s)
{
    const bool length = kind == TT_Q_LENGTH;
    cJSON *made = object("type", length ? list(text("string"), text("number")) : text("string"));
    add_pattern(made, kind, s == ANY);
    if (length && s == OVER_NIL) cJSON_AddNumberToObject(made, "exclusiveMinimum", 0);
    if (length && s == FROM_NIL) cJSON_AddNumberToObject(made, "minimum", 0);
    return length ? made : object("anyOf", list(made, object("const", cJSON_CreateNumber(0))));
}

static cJSON *scalar(const tt_key *key)
{
    char name[80];
    quantity_name(name, key->dimension, sign_of(key));
    if (key->dimension != TT_Q_PURE) return reference(name);
    cJSON *made = object("type", list(text("string"), text("number")));
    add_pattern(made, TT_Q_PURE, key->least < 0);
    if (key->least < key->most) {
        cJSON_AddNumberToObject(made, "minimum", key->least);
        cJSON_AddNumberToObject(made, "maximum", key->most);
    }
    return made;
}

static cJSON *quantity(const tt_key *key, bool spread)
{
    cJSON *plain = scalar(key);
    return object("anyOf", list(plain, with_reason(plain, spread)));
}

/* ---- forms ---- */

static cJSON *a_quantity(const tt_key *key)
{
    return quantity(key, (tt_key_forms(key) & TT_FORM_SPREAD) != 0);
}

static cJSON *a_word(const tt_key *key)
{
    cJSON *all = cJSON_CreateArray();
    for (const char *const *word = tt_key_words(key); *word; word++) {
        char *end;
        const double number = strtod(*word, &end);
        cJSON_AddItemToArray(all, text(*word));
        if (!*end && (*word)[0] != '+' && (*word)[0] != '-')
            cJSON_AddItemToArray(all, cJSON_CreateNumber(number));
    }
    return object("enum", all);
}

static cJSON *a_day(const tt_key *key)
{
    (void)key;
    cJSON *made = object("type", text("string"));
    cJSON_AddItemToObject(made, "pattern",
                          text("^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$"));
    return made;
}

static cJSON *a_count(const tt_key *key)
{
    cJSON *made = object("type", list(text("integer"), text("string")));
    cJSON_AddItemToObject(made, "pattern", text("^[0-9]{1,6}$"));
    cJSON_AddNumberToObject(made, "minimum", key->least);
    cJSON_AddNumberToObject(made, "maximum", key->most);
    return made;
}

static cJSON *words(const tt_key *key)
{
    (void)key;
    return reference("words");
}

static cJSON *a_pair(const tt_key *key)
{
    return array_of(quantity(key, false), 2, 2);
}

static cJSON *a_triple(const tt_key *key)
{
    return array_of(quantity(key, false), 3, 3);
}

static cJSON *corners(const tt_key *key)
{
    return array_of(a_pair(key), 3, 0);
}

static cJSON *two_places(const tt_key *key)
{
    return array_of(words(key), 2, 2);
}

static cJSON *rows(const tt_key *key)
{
    (void)key;
    return reference("rows");
}

static cJSON *factors(const tt_key *key)
{
    cJSON *made = object("type", text("object"));
    cJSON_AddNumberToObject(made, "minProperties", 1);
    cJSON_AddItemToObject(made, "additionalProperties", quantity(key, false));
    return made;
}

static cJSON *anything(const tt_key *key)
{
    (void)key;
    return cJSON_CreateObject();
}

static cJSON *a_map(const tt_key *key)
{
    return map_reference(key->map);
}

/* What is written for the key, or for each entry of its list. Behind `reasons` one may stand. */
static cJSON *value_of(const tt_key *key)
{
    static const struct {
        tt_form form;
        bool reasons;
        cJSON *(*make)(const tt_key *key);
    } all[] = {{TT_FORM_WORDS, true, words},      {TT_FORM_WORD, true, a_word},
               {TT_FORM_PLACE, true, words},      {TT_FORM_DATE, true, a_day},
               {TT_FORM_COUNT, true, a_count},    {TT_FORM_QUANTITY, false, a_quantity},
               {TT_FORM_PAIR, false, a_pair},     {TT_FORM_TRIPLE, true, a_triple},
               {TT_FORM_CORNERS, false, corners}, {TT_FORM_NAMES, false, two_places},
               {TT_FORM_ROWS, false, rows},       {TT_FORM_FACTORS, false, factors},
               {TT_FORM_MAP, false, a_map},       {TT_FORM_ANY, false, anything}};
    cJSON *forms = cJSON_CreateArray();
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        if (!(tt_key_forms(key) & all[i].form)) continue;
        cJSON *made = all[i].make(key);
        cJSON_AddItemToArray(forms, made);
        if (all[i].reasons) cJSON_AddItemToArray(forms, with_reason(made, false));
    }
    return any_of(forms);
}

/* ---- keys and maps ---- */

static void describe(cJSON *into, const tt_key *key)
{
    tt_text line = {0};
    tt_text_format(&line, "%s\n\nFor example: %s", key->doc, key->example);
    cJSON_AddItemToObject(into, "description", text(tt_text_of(&line)));
    if (key->otherwise) cJSON_AddItemToObject(into, "default", text(key->otherwise));
    tt_text_clear(&line);
    if (!key->reason) return;
    char words_of[160];
    snprintf(words_of, sizeof words_of, "It needs a reason %s: the program tells.", key->reason);
    cJSON_AddItemToObject(into, "$comment", text(words_of));
}

static cJSON *property(const tt_key *key)
{
    cJSON *value = value_of(key), *made = value;
    if (tt_key_lists(key)) {
        made = object("type", text("array"));
        cJSON_AddItemToObject(made, "items", value);
    } else if (key->kind == TT_KEY_NAMES) {
        made = object("type", text("object"));
        cJSON_AddItemToObject(made, "additionalProperties", value);
    } else if (cJSON_GetObjectItemCaseSensitive(value, "$ref")) {
        made = object("allOf", list(value, NULL)); /* nothing may stand beside a reference */
    }
    if (tt_key_forms(key) & TT_FORM_TABLE)
        made = object("anyOf", list(made, object("type", text("string"))));
    describe(made, key);
    return made;
}

/* Keys of the other basis are the program's to tell: so is that they are missing. */
static void fill_map(cJSON *into, const tt_map *map)
{
    cJSON *properties = cJSON_CreateObject(), *required = cJSON_CreateArray();
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++) {
            const tt_key *key = &part->key[i];
            cJSON_AddItemToObject(properties, key->name, property(key));
            if (key->required && key->basis == TT_ANY_BASIS)
                cJSON_AddItemToArray(required, text(key->name));
        }
    cJSON_AddItemToObject(into, "type", text("object"));
    if (tt_map_note(map)) cJSON_AddItemToObject(into, "description", text(tt_map_note(map)));
    if (cJSON_GetArraySize(required) > 0)
        cJSON_AddItemToObject(into, "required", required);
    else
        cJSON_Delete(required);
    cJSON_AddItemToObject(into, "properties", properties);
    cJSON_AddFalseToObject(into, "additionalProperties");
}

/* ---- the rows of a limb ---- */

static cJSON *row(const tt_key *const *columns, int least, int most)
{
    cJSON *entries = list(reference("words"), NULL);
    for (int i = 0; i < most - 1; i++) cJSON_AddItemToArray(entries, quantity(columns[i], false));
    cJSON *made = array_of(entries, least, most);
    return made;
}

static cJSON *rows_definition(void)
{
    static const tt_key *const widths[] = {&tt_row_wide, &tt_row_deep};
    static const tt_key *const columns[] = {&tt_coordinate, &tt_coordinate, &tt_coordinate,
                                            &tt_row_wide, &tt_row_deep};
    cJSON *made = array_of(object("anyOf", list(row(widths, 1, 3), row(columns, 4, 6))), 1, 0);
    cJSON_AddItemToObject(made, "description",
                          text("[name, x, y, z, girth] or [name, x, y, z, wide, deep]; without "
                               "bronze [name, x, y, z]; of a place that is there already [name], "
                               "[name, girth] or [name, wide, deep]"));
    return made;
}

static cJSON *words_definition(void)
{
    cJSON *made = object("type", list(text("string"), text("number")));
    cJSON_AddNumberToObject(made, "minLength", 1);
    return made;
}

static cJSON *definitions(const tt_maps *all)
{
    cJSON *made = object("words", words_definition());
    cJSON_AddItemToObject(made, "rows", rows_definition());
    for (int kind = TT_Q_PURE + 1; kind < TT_Q_COUNT; kind++)
        for (int s = 0; s < SIGNS; s++) {
            char name[80];
            quantity_name(name, (tt_kind)kind, (sign)s);
            cJSON_AddItemToObject(made, name, quantity_definition((tt_kind)kind, (sign)s));
        }
    for (size_t m = 1; m < all->n; m++) {
        cJSON *map = cJSON_CreateObject(), *name = map_reference(all->map[m]);
        const char *path = cJSON_GetObjectItemCaseSensitive(name, "$ref")->valuestring;
        fill_map(map, all->map[m]);
        cJSON_AddItemToObject(made, path + strlen("#/definitions/"), map);
        cJSON_Delete(name);
    }
    return made;
}

/* Quantities of which no key makes use are left out. */
static void drop_unused(cJSON *schema)
{
    cJSON *all = cJSON_GetObjectItemCaseSensitive(schema, "definitions");
    char *printed = cJSON_PrintUnformatted(schema), mark[120];
    for (cJSON *item = all->child, *next; item && printed; item = next) {
        next = item->next;
        snprintf(mark, sizeof mark, "\"#/definitions/%s\"", item->string);
        if (!strstr(printed, mark)) cJSON_Delete(cJSON_DetachItemViaPointer(all, item));
    }
    free(printed);
}

int main(void)
{
    tt_maps all = {.n = 0};
    if (!tt_maps_gather(&all, &tt_root_map)) return 1;
    cJSON *schema = object("$schema", text("http://json-schema.org/draft-07/schema#"));
    cJSON_AddItemToObject(schema, "title", text("A piece file of tiptoe"));
    cJSON_AddItemToObject(
        schema, "$comment",
        text("Made by the target manual_piece_schema from the key table of the reader. What only "
             "the "
             "program can tell: names that refer, bare lengths without units, the basis that a "
             "key belongs to, bounds of what bears a unit, rules over several keys."));
    fill_map(schema, &tt_root_map);
    cJSON_AddItemToObject(schema, "definitions", definitions(&all));
    drop_unused(schema);
    char *printed = cJSON_Print(schema);
    const bool whole = printed != NULL;
    if (printed) puts(printed);
    free(printed);
    cJSON_Delete(schema);
    return whole && fflush(stdout) == 0 && !ferror(stdout) ? 0 : 1;
}
