/* report/report.h - a document as values: headings, paragraphs, tables, lists, lines of
 * calculation. Compose fills it, a renderer writes it; neither knows the other. Everything that a
 * block shows lives in the document's pool or is lent by what it was composed from. */
#ifndef TT_REPORT_REPORT_H
#define TT_REPORT_REPORT_H

#include "base/list.h"
#include "base/pool.h"
#include "source/words.h"

#include <stdbool.h>

/** Inside a text: a blank at which no line ends. It is printed as a plain blank. */
#define TT_TIE "\003"

/** A stretch of a paragraph. */
typedef struct {
    const char *text;
    bool bold;
} tt_run;

typedef enum { TT_LEFT, TT_RIGHT } tt_align;

typedef struct {
    const char *title;
    tt_align align; /* a left column may be wrapped, a right one never is */
} tt_column;

typedef enum {
    TT_BLOCK_HEADING,   /* runs */
    TT_BLOCK_PARAGRAPH, /* runs */
    TT_BLOCK_TABLE,     /* columns, cells */
    TT_BLOCK_LIST,      /* cells, one an item */
    TT_BLOCK_LINES,     /* cells, one a line as it stands, never broken */
    TT_BLOCK_CAUTIONS,  /* cells likewise; every renderer must write them */
    TT_BLOCK_STEPS      /* steps */
} tt_block_kind;

typedef struct {
    tt_block_kind kind;
    int level; /* of a heading: 1 the title, 2 a section, 3 below it */
    TT_LIST(tt_run) runs;
    TT_LIST(tt_column) columns;
    TT_LIST(const char *) cells; /* row by row */
    const tt_step *step;         /* lent */
    size_t steps;
} tt_block;

typedef struct {
    tt_pool pool;
    TT_LIST(tt_block) blocks;
    bool failed;     /* memory ran out somewhere: the document is not whole */
    bool not_finite; /* a figure in it is no finite number: it must not be written */
} tt_report;

/** A document starts as {0}. */
void tt_report_clear(tt_report *report);

/** Text in the document's pool; "" without memory. */
const char *tt_report_text(tt_report *report, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* Adding. Texts are lent unless made by tt_report_text; failure is remembered in `failed`. */
void tt_report_heading(tt_report *report, int level, const char *text);
void tt_report_paragraph(tt_report *report);
void tt_report_run(tt_report *report, bool bold, const char *text); /* to the last paragraph */
void tt_report_say(tt_report *report, const char *text);            /* a paragraph of one run */
void tt_report_table(tt_report *report, const tt_column *columns, size_t n);
void tt_report_row(tt_report *report, const char *const *cells); /* to the last table */
void tt_report_list(tt_report *report, tt_block_kind kind);
void tt_report_item(tt_report *report, const char *text); /* to the last list */
/** The lines are copied, their texts lent. */
void tt_report_steps(tt_report *report, const tt_step *steps, size_t n);

#endif
