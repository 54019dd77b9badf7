/* quantity/unit.h - units as products of powers: "kN.m/rad" to a factor and five powers.
 * Used inside this module only. */
#ifndef TT_QUANTITY_UNIT_H
#define TT_QUANTITY_UNIT_H

#include "quantity/quantity.h"

enum { TT_BASES = 5 }; /* m, kg, s, K, rad */

typedef struct {
    int power[TT_BASES];
    double factor; /* to SI */
} tt_unit;

typedef struct {
    const char *symbol, *source;
    tt_unit unit;
} tt_unit_row;

/** The bytes at which a unit stopped being one; `form` when the signs between the words are wrong,
 *  otherwise the word is not in the table. */
typedef struct {
    size_t at, length;
    bool form;
} tt_unit_slip;

/** The table, ended by a row without symbol. */
extern const tt_unit_row tt_unit_rows[];

const tt_unit_row *tt_unit_find(const char *symbol, size_t length);

/** Words joined by `.` and `/`, each with a digit for its power, "1/" allowed in front. An empty
 *  text is the unit of a plain number. False with the slip filled. */
bool tt_unit_parse(const char *text, size_t length, tt_unit *unit, tt_unit_slip *slip);

/** The same for the kind that is due: where `g` as gravity does not come to it and `g` as gram
 * does, it is read as gram. */
bool tt_unit_parse_for(const char *text, size_t length, tt_kind kind, tt_unit *unit,
                       tt_unit_slip *slip);

bool tt_unit_same(const tt_unit *a, const tt_unit *b); /* powers only */
tt_unit tt_kind_unit(tt_kind kind);

#endif
