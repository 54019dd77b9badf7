/* compose/stock.h - the built-in tables as a family: what each lists, and how it shows a row. */
#ifndef TT_COMPOSE_STOCK_H
#define TT_COMPOSE_STOCK_H

#include "catalogue/catalogue.h"
#include "compose/compose.h"

/** Sources in the order in which a document names them; [1] is the first. */
typedef struct {
    TT_LIST(const tt_source *) list;
    tt_report *out;
} tt_notes;

/** "[3]" for a source; the same source has one number. */
const char *tt_note(tt_notes *notes, const tt_source *source);
void tt_notes_write(tt_notes *notes); /* the list of them; and gives it back */

/** A table: rows 0..count-1 of one kind, picked out of the catalogue by `has`. */
typedef struct {
    const char *name, *words;
    size_t (*count)(void);             /* rows of the catalogue to look at */
    const char *(*row_name)(size_t i); /* NULL: the row is not of this table */
    const tt_column *columns;
    size_t columns_n;
    void (*row)(size_t i, tt_notes *notes, const char **cells);
    void (*whole)(size_t i, tt_report *out); /* all that is known of a row */
} tt_stock_table;

extern const tt_stock_table tt_stock_alloys, tt_stock_steels, tt_stock_tubes, tt_stock_bars;

/** The name of the i-th table; NULL: there are no more. */
const char *tt_stock_table_name(size_t i);

#endif
