/* quantity/quantity.h - the one door through which units come in and the one through which they go
 * out. Inside all is SI (m, kg, s, K, N, Pa, rad). */
#ifndef TT_QUANTITY_QUANTITY_H
#define TT_QUANTITY_QUANTITY_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

/** What kind of thing a number measures. kinds.def: word for messages, SI unit, an example. */
typedef enum {
#define TT_KIND(id, word, si, example) TT_Q_##id,
#include "quantity/kinds.def"
#undef TT_KIND
    TT_Q_COUNT
} tt_kind;

const char *tt_kind_word(tt_kind kind);    /* "length" */
const char *tt_kind_si(tt_kind kind);      /* "m" */
const char *tt_kind_example(tt_kind kind); /* "5 mm" */

typedef enum {
    TT_QUANTITY_OK,
    TT_QUANTITY_NUMBER,  /* not a number, or a number written in a form that is not read */
    TT_QUANTITY_NO_UNIT, /* bare where a unit is due */
    TT_QUANTITY_UNKNOWN, /* the unit is not in the table */
    TT_QUANTITY_WRONG,   /* the unit measures something else */
    TT_QUANTITY_RANGE    /* overflow, infinite or not a number */
} tt_quantity_fault;

/** What parsing came to. On a fault `hint` says in words what to write (never NULL then), and
 *  `at`, `length` mark the guilty bytes of the text. */
typedef struct {
    double value; /* SI */
    tt_quantity_fault fault;
    size_t at, length;
    char hint[160];
    size_t plain; /* bytes of the hint in front of the example of its kind */
    bool bare;    /* no unit was written */
} tt_quantity;

/** Reads "14 ft", "1 1/2 in", "6 ft 2 1/2 in", "-5mm", "1.2 kN/m", "12 %", "1/100", "0".
 *  bare_unit: factor to SI for a bare number, or 0 where a bare number is refused (a bare 0 is any
 *  quantity; TT_Q_PURE is always bare or in per cent). */
tt_quantity tt_quantity_read(const char *text, tt_kind kind, double bare_unit);

/** The factor of a length unit by name ("mm", "in", ...), 0 when it is none. */
double tt_length_unit(const char *name);

typedef enum { TT_METRIC, TT_IMPERIAL } tt_unit_system;

/** The i-th unit that a number without one may be meant in, the likelier first; NULL behind the
 * last.
 */
const char *tt_kind_meant(tt_kind kind, tt_unit_system system, size_t i);

/** The first kind, not the plain number, that reads the text with its unit; TT_Q_COUNT: none. */
tt_kind tt_quantity_kind(const char *text);

/** Writes an SI value in a reader's unit with `digits` significant digits, unit behind:
 *  0.0125 length -> "12.5 mm"; imperial -> "0.492 in". Chooses m or mm, kN or N, by size. */
void tt_quantity_write(tt_text *out, double value, tt_kind kind, tt_unit_system system, int digits);

/** Writes an SI value in the SI unit of its kind with the fewest digits that read as the same
 * value.
 */
void tt_quantity_write_exactly(tt_text *out, double value, tt_kind kind);

#endif
