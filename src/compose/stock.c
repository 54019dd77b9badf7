/* compose/stock.c - the built-in tables, each figure with its source. */
#include "compose/stock.h"

#include "base/diags.h"
#include "compose/parts.h"

#include <string.h>

static const tt_stock_table *const tables[] = {&tt_stock_alloys, &tt_stock_steels, &tt_stock_tubes,
                                               &tt_stock_bars};
enum { TABLES = sizeof tables / sizeof *tables, SPELLING = 3 };

static bool same(const tt_source *a, const tt_source *b)
{
    return a->mark == b->mark && strcmp(a->document, b->document) == 0 &&
           strcmp(a->edition ? a->edition : "", b->edition ? b->edition : "") == 0 &&
           strcmp(a->place ? a->place : "", b->place ? b->place : "") == 0;
}

const char *tt_note(tt_notes *notes, const tt_source *source)
{
    size_t i = 0;
    while (i < notes->list.n && !same(notes->list.at[i], source)) i++;
    if (i == notes->list.n && !tt_list_push(&notes->list, source)) notes->out->failed = true;
    return tt_report_text(notes->out, "[%zu]", i + 1);
}

void tt_notes_write(tt_notes *notes)
{
    tt_report *out = notes->out;
    tt_report_heading(out, 2, "Sources");
    tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < notes->list.n; i++) {
        tt_report_item(out,
                       tt_report_text(out, "[%zu] %s", i + 1, tt_say_source(out, notes->list.at[i])));
    }
    tt_list_clear(&notes->list);
}

static size_t rows_of(const tt_stock_table *table)
{
    size_t n = 0;
    for (size_t i = 0; i < table->count(); i++) n += table->row_name(i) != NULL;
    return n;
}

static tt_status list_tables(tt_report *out)
{
    static const tt_column columns[] = {{"table", TT_LEFT}, {"rows", TT_RIGHT}, {"holds", TT_LEFT}};
    tt_report_heading(out, 1, "tiptoe stock");
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < TABLES; i++) {
        const char *const cells[] = {
            tables[i]->name, tt_report_text(out, "%zu", rows_of(tables[i])), tables[i]->words};
        tt_report_row(out, cells);
    }
    return TT_OK;
}

static tt_status all_rows(const tt_stock_table *table, tt_report *out)
{
    enum { CELLS = 8 };
    tt_notes notes = {.out = out};
    tt_report_heading(out, 1, tt_report_text(out, "tiptoe stock: %s", table->name));
    tt_report_table(out, table->columns, table->columns_n);
    for (size_t i = 0; i < table->count(); i++) {
        const char *cells[CELLS] = {0};
        if (!table->row_name(i)) continue;
        table->row(i, &notes, cells);
        tt_report_row(out, cells);
    }
    tt_notes_write(&notes);
    return TT_OK;
}

static const char *nearest_row(const tt_stock_table *table, const char *name)
{
    const char *best = NULL;
    size_t least = SPELLING + 1;
    for (size_t i = 0; i < table->count(); i++) {
        const char *row = table->row_name(i);
        const size_t away = row ? tt_text_distance(row, name, SPELLING) : least;
        if (away >= least) continue;
        least = away;
        best = row;
    }
    return best;
}

/* Rows of that name; a metal may have one for each product form. */
static tt_status one_row(const tt_stock_table *table, const char *name, tt_diags *diags,
                         tt_report *out)
{
    bool found = false;
    tt_report_heading(out, 1, tt_report_text(out, "tiptoe stock: %s %s", table->name, name));
    for (size_t i = 0; i < table->count(); i++) {
        const char *row = table->row_name(i);
        if (!row || strcmp(row, name) != 0) continue;
        table->whole(i, out);
        found = true;
    }
    if (found) return TT_OK;
    const char *near = nearest_row(table, name);
    const char *hint = near ? tt_report_text(out, "did you mean \"%s\"?", near)
                            : tt_report_text(out, "tiptoe stock %s lists them", table->name);
    tt_complain(diags, TT_D_NAME_UNKNOWN, (tt_place){0}, hint, "no row of %s is named \"%s\"",
                table->name, name);
    return TT_E_INPUT;
}

static const tt_stock_table *table_named(const char *name, tt_diags *diags)
{
    const tt_stock_table *near = NULL;
    size_t least = SPELLING + 1;
    for (size_t i = 0; i < TABLES; i++) {
        const size_t away = tt_text_distance(tables[i]->name, name, SPELLING);
        if (away == 0) return tables[i];
        if (away < least) near = tables[i];
        if (away < least) least = away;
    }
    tt_complain(diags, TT_D_NAME_UNKNOWN, (tt_place){0},
                near ? near->name : "tiptoe stock lists the tables", "no table is named \"%s\"",
                name);
    return NULL;
}

tt_status tt_compose_stock(const char *table, const char *name, tt_diags *diags, tt_report *out)
{
    const tt_stock_table *found = table ? table_named(table, diags) : NULL;
    tt_status status = TT_E_INPUT;
    if (!table) status = list_tables(out);
    if (found) status = name ? one_row(found, name, diags, out) : all_rows(found, out);
    return status == TT_OK && out->failed ? TT_E_NOMEM : status;
}

const char *tt_stock_table_name(size_t i)
{
    return i < TABLES ? tables[i]->name : NULL;
}
