/* record/put.h - building JSON values with a status that remembers. Every function takes NULL for
 * what could not be made and makes nothing then; keys are lent for the life of the value. */
#ifndef TT_RECORD_PUT_H
#define TT_RECORD_PUT_H

#include "record/record.h"

#include <cjson/cJSON.h>

typedef struct {
    const tt_assessment *a;    /* NULL: of the weights alone */
    const tt_weights *weights; /* NULL: of an assessment */
    const tt_piece *piece;
    tt_status status;
} tt_record;

/** The decimal sign of the host's locale, of one byte or more, becomes a point. */
void tt_record_point(char *text);

/* Values that stand alone. */
cJSON *tt_make_object(tt_record *r);
cJSON *tt_make_array(tt_record *r);
cJSON *tt_make_number(tt_record *r, double value);
cJSON *tt_make_text(tt_record *r, const char *text); /* NULL: null */
cJSON *tt_make_null(tt_record *r);
cJSON *tt_make_numbers(tt_record *r, const double *value, size_t n);
cJSON *tt_make_vec3(tt_record *r, tt_vec3 v);

/** Hangs a value into an object (key) or an array (key NULL), which owns it from then on; gives it
 *  back. */
cJSON *tt_put(tt_record *r, cJSON *into, const char *key, cJSON *value);

static inline void tt_put_number(tt_record *r, cJSON *into, const char *key, double value)
{
    tt_put(r, into, key, tt_make_number(r, value));
}
static inline void tt_put_text(tt_record *r, cJSON *into, const char *key, const char *text)
{
    tt_put(r, into, key, tt_make_text(r, text));
}
static inline void tt_put_vec3(tt_record *r, cJSON *into, const char *key, tt_vec3 v)
{
    tt_put(r, into, key, tt_make_vec3(r, v));
}
void tt_put_bool(tt_record *r, cJSON *into, const char *key, bool value);

/* What several keys show. */
void tt_put_source(tt_record *r, cJSON *into, const char *key, const tt_source *source);
void tt_put_steps(tt_record *r, cJSON *into, const tt_step *step, size_t n);
const char *tt_case_words(const tt_assessment *a, size_t index); /* "weight heavy", "wind 90" */
void tt_put_sum(tt_record *r, cJSON *into, const tt_combination *together);
/** The fraction along a segment, the segment's name: null for what is no place along one. */
void tt_put_place(tt_record *r, cJSON *into, size_t segment, double x);
size_t tt_combination_named(const tt_assessment *a, const char *name); /* TT_NONE */

/** An outermost object: its keys in their order, each made, written and given back before the next.
 */
typedef struct {
    const char *key;
    cJSON *(*make)(tt_record *r);
} tt_record_key;
tt_status tt_record_write(tt_record *r, const tt_record_key *keys, size_t n, tt_text *out);
cJSON *tt_record_program(tt_record *r);
cJSON *tt_record_name(tt_record *r);
cJSON *tt_record_revision(tt_record *r);

/* The keys of the outermost object, one function each. */
cJSON *tt_record_input(tt_record *r);
cJSON *tt_record_governing(tt_record *r);
cJSON *tt_record_mass(tt_record *r);
cJSON *tt_record_balance(tt_record *r);
cJSON *tt_record_sections(tt_record *r);
cJSON *tt_record_models(tt_record *r);
cJSON *tt_record_combinations(tt_record *r);
cJSON *tt_record_actions(tt_record *r);
cJSON *tt_record_checks(tt_record *r);
cJSON *tt_record_not_checked(tt_record *r);
cJSON *tt_record_not_applicable(tt_record *r);
cJSON *tt_record_defaults(tt_record *r);
cJSON *tt_record_proof(tt_record *r);
cJSON *tt_record_cautions(tt_record *r);

#endif
