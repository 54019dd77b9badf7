/* tiptoe/report.h - a judgement written out. */
#ifndef TIPTOE_REPORT_H
#define TIPTOE_REPORT_H

#include "tiptoe/assess.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef struct {
    int steps; /* 1: print the lines of calculation of every check */
    int bold;  /* 1: the deciding place in bold (a terminal) */
    int width; /* columns, 0: 96 */
} tt_text_options;

/** The text result; TT_E_WRITE when the sink stops it. The cautions are always in it, but for
 *  those about a thing that the piece plainly lacks. options may be NULL. TT_E_NOT_FINITE when a
 *  figure in it is no finite number: nothing is written then. */
tt_status tt_write_text(const tt_assessment *assessment, const tt_text_options *options,
                        tt_sink *sink, void *user);

/** The JSON result, schema tiptoe-check/1. The cautions are always in it. TT_E_NOT_FINITE as
 *  above. */
tt_status tt_write_json(const tt_assessment *assessment, tt_sink *sink, void *user);

/** The tables of metals and stock: table NULL lists them ("alloys", "steels", "pipes" ...); name
 *  NULL for all rows; units of lists: "mm" (NULL likewise) or "in". `data` lies over the built-in
 *  rows (NULL: none). TT_E_INPUT for an unknown table, name or unit, the nearest in diags. */
tt_status tt_write_stock(const char *table, const char *name, const char *units,
                         const tt_data *data, tt_diags *diags, tt_sink *sink, void *user);

#ifdef __cplusplus
}
#endif
#endif
