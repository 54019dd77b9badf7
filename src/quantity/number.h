/* quantity/number.h - the number in front of a unit. Used inside this module only. */
#ifndef TT_QUANTITY_NUMBER_H
#define TT_QUANTITY_NUMBER_H

#include "quantity/quantity.h"

/** Reads an unsigned number at *at: "4.5", "1e3", "1/100", "1 1/2"; moves *at behind it and the
 *  blanks that follow. False with fault, place and hint in *out. The kind serves the hint. */
bool tt_number_scan(const char *text, size_t *at, double *value, tt_kind kind, tt_quantity *out);

/** Notes a fault; false, so that a reader can return it. */
bool tt_quantity_fail(tt_quantity *out, tt_quantity_fault fault, size_t at, size_t length,
                      const char *format, ...) __attribute__((format(printf, 5, 6)));

/** Notes that another kind is due, behind the words `before`, with its example; false. */
bool tt_quantity_due(tt_quantity *out, tt_quantity_fault fault, size_t at, size_t length,
                     tt_kind kind, const char *before);

const char *tt_article(const char *word); /* "a" or "an" */

#endif
