/* compose/stock.h - the tables of metals and stock as a family: what each lists, and how it shows a
 * row. `own` is what --data gave, NULL without. */
#ifndef TT_COMPOSE_STOCK_H
#define TT_COMPOSE_STOCK_H

#include "catalogue/catalogue.h"
#include "compose/compose.h"

/** Sources in the order in which a document names them; [1] is the first. */
typedef struct {
    TT_LIST(const tt_source *) list;
    tt_report *out;
    bool inches; /* rows of a list are shown in inches, lb/ft, ksi */
} tt_notes;

/** "[3]" for a source; the same source has one number. */
const char *tt_note(tt_notes *notes, const tt_source *source);
void tt_notes_write(tt_notes *notes); /* the list of them; and gives it back */

/** A table: rows of one kind, picked out of the catalogue. */
typedef struct tt_stock_table tt_stock_table;
struct tt_stock_table {
    const char *name, *words;
    tt_metal_kind kind;                    /* of metals; of stock the form */
    const char *form;                      /* NULL: a table of metals */
    const tt_column *columns, *columns_in; /* in mm; in inches */
    size_t columns_n, columns_in_n;
    const char *remark;                  /* what a reader of the list must know; may be NULL */
    size_t (*count)(const tt_data *own); /* rows of the catalogue to look at */
    /** NULL: the row is not of this table. */
    const char *(*row_name)(const tt_stock_table *table, const tt_data *own, size_t i);
    const tt_row_place *(*row_place)(const tt_data *own, size_t i);
    void (*row)(const tt_stock_table *table, const tt_data *own, size_t i, tt_notes *notes,
                const char **cells);
    /** All that is known of a row. */
    void (*whole)(const tt_stock_table *table, const tt_data *own, size_t i, tt_notes *notes);
};

enum { TT_STOCK_METALS = 4, TT_STOCK_FORMS = 6, TT_STOCK_CELLS = 8 };
extern const tt_stock_table tt_stock_metals[TT_STOCK_METALS], tt_stock_forms[TT_STOCK_FORMS];

/** The name of the i-th table; NULL: there are no more. */
const char *tt_stock_table_name(size_t i);

#endif
