/* quantity/hint.h - what to write instead of a unit that is not read. Used in this module only. */
#ifndef TT_QUANTITY_HINT_H
#define TT_QUANTITY_HINT_H

#include "quantity/unit.h"

/** Fills fault, place and hint; `at` is where the unit begins in the text. Returns false. */
bool tt_hint_unknown(tt_quantity *out, const char *text, size_t at, tt_unit_slip slip,
                     tt_kind kind);
bool tt_hint_wrong(tt_quantity *out, const char *text, size_t at, size_t length,
                   const tt_unit *unit, tt_kind kind);

#endif
