/* compose/stock.c - the tables of metals and stock, each figure with its source. */
#include "compose/stock.h"

#include "base/diags.h"
#include "compose/parts.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

enum { TABLES = TT_STOCK_METALS + TT_STOCK_FORMS };

/* Slips of the pen that a word of its length may have, plus one. */
static size_t too_far(const char *word)
{
    const size_t slips = 1 + strlen(word) / 3;
    return 1 + (slips < 3 ? slips : 3);
}

static const tt_stock_table *table_at(size_t i)
{
    return i < TT_STOCK_METALS ? &tt_stock_metals[i] : &tt_stock_forms[i - TT_STOCK_METALS];
}

/* ---- sources ---- */

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

/* ---- rows of one's own ---- */

static const char *file_name(tt_report *out, const char *file)
{
    tt_text words = {0};
    tt_text_put_plain(&words, file);
    if (words.failed) out->failed = true;
    const char *text = tt_report_text(out, "%s", tt_text_of(&words));
    tt_text_clear(&words);
    return text;
}

static void say_own(const tt_data *own, tt_report *out)
{
    if (!own) return;
    const size_t rows = own->metals.n + own->stock.n;
    tt_report_say(out, tt_report_text(out,
                                      "Own data: %s, SHA-256 %s, %zu row%s. They stand first in "
                                      "their tables, marked (own); a built-in row of the same name "
                                      "is left out.",
                                      file_name(out, own->file), own->sha256, rows,
                                      rows == 1 ? "" : "s"));
}

static bool is_own(const tt_stock_table *table, const tt_data *own, size_t i)
{
    return table->row_place(own, i)->file != NULL;
}

/* ---- lists ---- */

static size_t rows_of(const tt_stock_table *table, const tt_data *own)
{
    size_t n = 0;
    for (size_t i = 0; i < table->count(own); i++) n += table->row_name(table, own, i) != NULL;
    return n;
}

static tt_status list_tables(const tt_data *own, tt_report *out)
{
    static const tt_column columns[] = {{"table", TT_LEFT}, {"rows", TT_RIGHT}, {"holds", TT_LEFT}};
    tt_report_heading(out, 1, "tiptoe stock");
    say_own(own, out);
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < TABLES; i++) {
        const tt_stock_table *table = table_at(i);
        const char *const cells[] = {table->name, tt_report_text(out, "%zu", rows_of(table, own)),
                                     table->words};
        tt_report_row(out, cells);
    }
    tt_report_say(out, "tiptoe stock TABLE lists its rows; tiptoe stock TABLE NAME tells all that "
                       "is known of one, with the source of each figure.");
    return TT_OK;
}

/* Is a row "1 1/4 sch 40" of the size "1 1/4", "33.7 x 4" of "33.7"? */
static bool of_size(const tt_stock_table *table, const char *row, const char *size)
{
    char first[64];
    const char *end = row ? strstr(row, strcmp(table->name, "pipes") == 0 ? " sch" : " x") : NULL;
    if (!end || !table->form || (size_t)(end - row) >= sizeof first) return false;
    snprintf(first, sizeof first, "%.*s", (int)(end - row), row);
    return tt_same_size(table->form, first, size);
}

static bool has_size(const tt_stock_table *table, const char *size, const tt_data *own)
{
    for (size_t i = 0; i < table->count(own); i++)
        if (of_size(table, table->row_name(table, own, i), size)) return true;
    return false;
}

static void open_table(const tt_stock_table *table, const tt_notes *notes)
{
    if (notes->inches && table->columns_in)
        tt_report_table(notes->out, table->columns_in, table->columns_in_n);
    else
        tt_report_table(notes->out, table->columns, table->columns_n);
}

/* Of one size, or all (NULL). */
static tt_status all_rows(const tt_stock_table *table, const char *size, bool inches,
                          const tt_data *own, tt_report *out)
{
    tt_notes notes = {.out = out, .inches = inches};
    tt_report_heading(out, 1, tt_report_text(out, "tiptoe stock: %s%s%s", table->name,
                                             size ? " " : "", size ? size : ""));
    if (table->remark) tt_report_say(out, table->remark);
    say_own(own, out);
    open_table(table, &notes);
    for (size_t i = 0; i < table->count(own); i++) {
        const char *cells[TT_STOCK_CELLS] = {0}, *name = table->row_name(table, own, i);
        if (!name || (size && !of_size(table, name, size))) continue;
        table->row(table, own, i, &notes, cells);
        if (is_own(table, own, i)) cells[0] = tt_report_text(out, "%s (own)", cells[0]);
        tt_report_row(out, cells);
    }
    tt_notes_write(&notes);
    return TT_OK;
}

/* ---- one row ---- */

/* A metal by its name in capitals or not, a size by any spelling of it. */
static bool named(const tt_stock_table *table, const char *row, const char *name)
{
    return row && (table->form ? tt_same_size(table->form, row, name) : strcasecmp(row, name) == 0);
}

/* The row of a size whose unit was left out: "2 x 1/2" in inches. */
static const char *with_unit(const tt_stock_table *table, const tt_data *own, const char *name)
{
    char inch[128];
    snprintf(inch, sizeof inch, "%.100s in", name);
    for (size_t i = 0; table->form && i < table->count(own); i++) {
        const char *row = table->row_name(table, own, i);
        if (row && tt_same_size(table->form, row, inch)) return row;
    }
    return NULL;
}

static const char *nearest_row(const tt_stock_table *table, const tt_data *own, const char *name)
{
    const char *best = with_unit(table, own, name);
    size_t least = best ? 0 : too_far(name);
    for (size_t i = 0; i < table->count(own); i++) {
        const char *row = table->row_name(table, own, i);
        const size_t away = row ? tt_text_distance(row, name, least) : least;
        if (away >= least) continue;
        least = away;
        best = row;
    }
    return best;
}

static tt_status no_row(const tt_stock_table *table, const char *name, const tt_data *own,
                        tt_diags *diags, tt_report *out)
{
    const char *near = nearest_row(table, own, name);
    const char *hint = near ? tt_report_text(out, "did you mean \"%s\"?", near)
                            : tt_report_text(out, "tiptoe stock %s lists them", table->name);
    tt_complain(diags, TT_D_NAME_UNKNOWN, (tt_place){0}, hint, "no row of %s is named \"%s\"",
                table->name, name);
    return TT_E_INPUT;
}

/* Rows of that name; a metal may have one for each product form, a size one for each series. */
static tt_status one_row(const tt_stock_table *table, const char *name, const tt_data *own,
                         tt_diags *diags, tt_report *out)
{
    tt_notes notes = {.out = out};
    size_t found = 0;
    for (size_t i = 0; i < table->count(own); i++) {
        const char *row = table->row_name(table, own, i);
        if (!named(table, row, name)) continue;
        if (found++ == 0)
            tt_report_heading(out, 1, tt_report_text(out, "tiptoe stock: %s %s", table->name, row));
        table->whole(table, own, i, &notes);
        const tt_row_place *at = table->row_place(own, i);
        if (at->file)
            tt_report_say(out, tt_report_text(out, "Own data: %s, line %u.",
                                              file_name(out, at->file), at->line));
    }
    if (found == 0) return no_row(table, name, own, diags, out);
    tt_notes_write(&notes);
    return TT_OK;
}

/* ---- the door ---- */

/* A name where a table is due: the table that has it. */
static const char *table_of_row(const char *name, const tt_data *own, tt_report *out)
{
    for (size_t t = 0; t < TABLES; t++) {
        const tt_stock_table *table = table_at(t);
        for (size_t i = 0; i < table->count(own); i++) {
            if (named(table, table->row_name(table, own, i), name))
                return tt_report_text(out, "write tiptoe stock %s \"%s\"", table->name, name);
        }
    }
    return "tiptoe stock lists the tables";
}

static const tt_stock_table *table_named(const char *name, const tt_data *own, tt_diags *diags,
                                         tt_report *out)
{
    const tt_stock_table *near = NULL;
    size_t least = too_far(name);
    for (size_t i = 0; i < TABLES; i++) {
        const size_t away = tt_text_distance(table_at(i)->name, name, least);
        if (away == 0) return table_at(i);
        if (away < least) near = table_at(i);
        if (away < least) least = away;
    }
    const char *hint = near ? tt_report_text(out, "did you mean \"%s\"?", near->name)
                            : table_of_row(name, own, out);
    tt_complain(diags, TT_D_NAME_UNKNOWN, (tt_place){0}, hint, "no table is named \"%s\"", name);
    return NULL;
}

static bool has_row(const tt_stock_table *table, const char *name, const tt_data *own)
{
    for (size_t i = 0; i < table->count(own); i++)
        if (named(table, table->row_name(table, own, i), name)) return true;
    return false;
}

static tt_status rows(const tt_stock_table *table, const char *name, bool inches,
                      const tt_data *own, tt_diags *diags, tt_report *out)
{
    const bool many = !name || (!has_row(table, name, own) && has_size(table, name, own));
    return many ? all_rows(table, name, inches, own, out) : one_row(table, name, own, diags, out);
}

/* "mm", "in" or NULL. */
static bool is_unit(const char *units, tt_diags *diags)
{
    if (!units || strcmp(units, "mm") == 0 || strcmp(units, "in") == 0) return true;
    tt_complain(diags, TT_D_CHOICE, (tt_place){0}, "it reads: mm, in",
                "--units does not read the word `%.60s`", units);
    return false;
}

tt_status tt_compose_stock(const char *table, const char *name, const char *units,
                           const tt_data *own, tt_diags *diags, tt_report *out)
{
    if (!is_unit(units, diags)) return TT_E_INPUT;
    const bool inches = units && strcmp(units, "in") == 0;
    const tt_stock_table *found = table ? table_named(table, own, diags, out) : NULL;
    tt_status status = TT_E_INPUT;
    if (!table) status = list_tables(own, out);
    if (found) status = rows(found, name, inches, own, diags, out);
    return status == TT_OK && out->failed ? TT_E_NOMEM : status;
}

const char *tt_stock_table_name(size_t i)
{
    return i < TABLES ? table_at(i)->name : NULL;
}
