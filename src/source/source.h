/* source/source.h - where a figure or a formula comes from, and a line of calculation as a value.
 * The register stands in sources.def; code names an entry, the report prints the same words. */
#ifndef TT_SOURCE_SOURCE_H
#define TT_SOURCE_SOURCE_H

#include "base/list.h"
#include "base/pool.h"

#include <stdbool.h>

typedef enum {
    TT_READ,            /* seen in a document */
    TT_FROM_MEMORY,     /* to be checked against the document before it is relied on */
    TT_COMMON_PRACTICE, /* common practice or an assumption of this program, no source */
    TT_MECHANICS,       /* follows from statics and elasticity alone */
    TT_GIVEN            /* given by the writer of the piece file */
} tt_mark;

typedef struct {
    const char *document; /* never NULL */
    const char *edition;  /* may be NULL */
    const char *place;    /* clause, table, equation, page; may be NULL */
    tt_mark mark;
} tt_source;

/** The register. */
typedef enum {
#define TT_SOURCE(id, document, edition, place, mark) TT_S_##id,
#include "source/sources.def"
#undef TT_SOURCE
    TT_S_COUNT
} tt_source_id;

const tt_source *tt_source_of(tt_source_id id);

/** "read", "from memory", "common practice", "mechanics", "given". */
const char *tt_mark_word(tt_mark mark);

/** One line of calculation: symbol = formula = numbers = value unit [source]. Strings are lent;
 *  `numbers` and `formula` may be NULL. `value` is in SI; `unit` is an SI unit ("N", "MPa" never). */
typedef struct {
    const char *symbol, *formula, *numbers, *unit;
    double value;
    tt_source source;
} tt_step;

/** A list of steps whose texts live in a pool. A NULL list everywhere means "not wanted". */
typedef struct {
    TT_LIST(tt_step) list;
    tt_pool *pool;
    bool failed;
} tt_steps;

/** Adds a line; `numbers` is a printf format for the numbers put in (may be NULL). */
void tt_step_add(tt_steps *steps, const char *symbol, const char *formula, double value,
                 const char *unit, const tt_source *source, const char *numbers, ...)
    __attribute__((format(printf, 7, 8)));

#endif
