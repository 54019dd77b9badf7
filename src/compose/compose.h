/* compose/compose.h - from an assessment, or from the built-in tables, to a document. All wording
 * of the results lives in this module. */
#ifndef TT_COMPOSE_COMPOSE_H
#define TT_COMPOSE_COMPOSE_H

#include "assess/assessment.h"
#include "piece/ledger.h"
#include "report/report.h"

/** The result of `check`, in the order that a reader needs it; with the lines of calculation of
 *  every check when `steps`. The document lends from the assessment. TT_E_NOT_FINITE when a
 *  figure that it would print is no finite number; TT_E_NOMEM. */
tt_status tt_compose_check(const tt_assessment *assessment, bool steps, tt_report *out);

/** The ledger of weights; the document lends from it. TT_E_NOT_FINITE, TT_E_NOMEM. */
tt_status tt_compose_weights(const tt_weights *weights, tt_report *out);

/** A table of metals or stock: NULL lists the tables, name NULL gives all rows, a size as "1 1/4" all
 *  of that size; lists are in mm, or in inches with `units` "in" (NULL: "mm"); `own` lies over the
 *  built-in rows (NULL: none). TT_E_INPUT for an unknown table, name or unit, said in diags with
 *  the nearest; TT_E_NOMEM. */
tt_status tt_compose_stock(const char *table, const char *name, const char *units,
                           const tt_data *own, tt_diags *diags, tt_report *out);

/** A word of the results, a check, a diagnostic or a key explained; NULL lists what can be asked.
 *  TT_E_INPUT for an unknown word, said in diags with the nearest; TT_E_NOMEM. */
tt_status tt_compose_explain(const char *word, tt_diags *diags, tt_report *out);

#endif
