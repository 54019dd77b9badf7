/* compose/members.c - rows of the tables of tubes and of bars. */
#include "compose/stock.h"

#include <string.h>

static const char *of_form(size_t i, const char *form)
{
    return strcmp(tt_stock_at(i)->form, form) == 0 ? tt_stock_at(i)->name : NULL;
}

static const char *tube_name(size_t i)
{
    return of_form(i, "tube");
}

static const char *bar_name(size_t i)
{
    return of_form(i, "bar");
}

static const tt_column columns[] = {
    {"name", TT_LEFT},  {"series", TT_LEFT},          {"outside", TT_RIGHT},
    {"wall", TT_RIGHT}, {"mass per metre", TT_RIGHT}, {"source", TT_LEFT}};

static void row(size_t i, tt_notes *notes, const char **cells)
{
    const tt_stock *stock = tt_stock_at(i);
    cells[0] = stock->name;
    cells[1] = stock->series;
    cells[2] = tt_report_text(notes->out, "%.5g mm", stock->od * 1000.0);
    cells[3] =
        stock->wall > 0.0 ? tt_report_text(notes->out, "%.5g mm", stock->wall * 1000.0) : "solid";
    cells[4] =
        stock->mass > 0.0 ? tt_report_text(notes->out, "%.4g kg/m", stock->mass) : "not printed";
    cells[5] = tt_note(notes, &stock->source);
}

static void whole(size_t i, tt_report *out)
{
    enum { CELLS = sizeof columns / sizeof *columns };
    const char *cells[CELLS];
    tt_notes notes = {.out = out};
    tt_report_table(out, columns, CELLS);
    row(i, &notes, cells);
    tt_report_row(out, cells);
    tt_notes_write(&notes);
}

const tt_stock_table tt_stock_tubes = {"tubes",
                                       "round tubes and pipes",
                                       tt_stock_count,
                                       tube_name,
                                       columns,
                                       sizeof columns / sizeof *columns,
                                       row,
                                       whole};
const tt_stock_table tt_stock_bars = {"bars",   "round bars", tt_stock_count,
                                      bar_name, columns,      sizeof columns / sizeof *columns,
                                      row,      whole};
