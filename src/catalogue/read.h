/* catalogue/read.h - what the files of the reader of tables share: a line taken apart, and the
 * metal whose rows are being read. The build's tabulate and tt_data_read both stand on it. */
#ifndef TT_CATALOGUE_READ_H
#define TT_CATALOGUE_READ_H

#include "base/diags.h"
#include "catalogue/catalogue.h"

enum { TT_FIELDS = 16 };

typedef struct {
    const char *text; /* unquoted, in the pool */
    tt_place place;
} tt_field;

/** A metal, or one of its forms, with the places of its figures (line 0: none). */
typedef struct {
    tt_metal metal;
    tt_place at[TT_P_COUNT], name;
} tt_sheet;

typedef struct {
    tt_data *into;
    tt_diags *diags;
    const char *file;
    tt_field field[TT_FIELDS];
    size_t fields;
    tt_place row;     /* of the whole line */
    bool open, forms; /* a metal is being read; it has forms */
    bool lost;        /* a row above could not be read: the figures behind it may be its own */
    tt_sheet base;    /* what all forms of that metal share */
    tt_sheet form;    /* the form that is being read */
    bool no_memory;
} tt_rows;

/** Reads a text into the rows that are there already; faults go to diags, about `file`. False
 *  without memory. */
bool tt_rows_read(tt_data *into, const char *file, const char *text, size_t length,
                  tt_diags *diags);

/* ---- values of fields ------------------------------------------------------------------------ */

/** A number in the unit of another field, as SI; `si` is the unit that is due. NaN and told. */
double tt_row_measure(tt_rows *rows, size_t field, size_t unit, const char *si, const char *what);
/** document, edition, place, mark: four fields from `first` on. */
tt_source tt_row_source(tt_rows *rows, size_t first);
/** One of two words; false for the second, and told for neither. */
bool tt_row_choice(tt_rows *rows, size_t field, const char *yes, const char *no);
/** Words that must be there. */
const char *tt_row_words(tt_rows *rows, size_t field, const char *what);
/** "second.csv:12" or, in the same file, "line 12". */
const char *tt_row_first(tt_rows *rows, const tt_row_place *at);

/* ---- kinds of rows --------------------------------------------------------------------------- */

typedef void tt_row_read(tt_rows *rows);
tt_row_read tt_row_metal, tt_row_filler, tt_row_material, tt_row_form, tt_row_figure, tt_row_round,
    tt_row_box, tt_row_flat, tt_row_rod;
/** The metal that was read stands whole: it is checked and kept. */
void tt_row_end(tt_rows *rows);

#endif
