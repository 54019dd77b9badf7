/* catalogue/read_values.c - fields of a row into numbers, words and sources. */
#include "catalogue/read.h"
#include "quantity/quantity.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const struct {
    const char *written, *si;
    double times, over;
} units[] = {
    {"", "", 1, 1},
    {"MPa", "Pa", 1e6, 1},
    {"GPa", "Pa", 1e9, 1},
    {"kPa", "Pa", 1e3, 1},
    {"ksi", "Pa", 4448.2216152605, 0.0254 * 0.0254},
    {"psi", "Pa", 4.4482216152605, 0.0254 * 0.0254},
    {"kg/m3", "kg/m3", 1, 1},
    {"lb/in3", "kg/m3", 0.45359237, 0.0254 * 0.0254 * 0.0254},
    {"1/K", "1/K", 1, 1},
    {"1/F", "1/K", 1.8, 1},
    {"mm", "m", 1, 1000},
    {"in", "m", 254, 10000},
    {"mm2", "m2", 1, 1000000},
    {"in2", "m2", 64516, 1e8},
    {"kg/m", "kg/m", 1, 1},
    {"lb/ft", "kg/m", 0.45359237, 0.3048},
};
enum { UNITS = sizeof units / sizeof *units };

static double number(tt_rows *rows, const tt_field *field, const char *what)
{
    const tt_quantity q = tt_quantity_read(field->text, TT_Q_PURE, 1.0);
    if (q.fault == TT_QUANTITY_OK) return q.value;
    tt_complain(rows->diags, TT_D_DATA_NUMBER, field->place,
                q.fault == TT_QUANTITY_NUMBER && *field->text ? q.hint : "write it as in 12.5",
                "%s '%.40s' is not a number", what, field->text);
    return NAN;
}

static void wrong_unit(tt_rows *rows, const tt_field *unit, const char *si, const char *what)
{
    char hint[120] = "a ratio has no unit: leave the field empty";
    size_t n = 0;
    for (size_t i = 0; *si && i < UNITS; i++) {
        if (strcmp(units[i].si, si) != 0) continue;
        n += (size_t)snprintf(hint + n, sizeof hint - n, "%s%s", n ? " or " : "write ",
                              units[i].written);
    }
    if (*unit->text)
        tt_complain(rows->diags, TT_D_DATA_UNIT, unit->place, hint,
                    "%s in '%.40s', which is not read here", what, unit->text);
    else
        tt_complain(rows->diags, TT_D_DATA_UNIT, unit->place, hint, "%s has no unit", what);
}

double tt_row_measure(tt_rows *rows, size_t field, size_t unit, const char *si, const char *what)
{
    const double value = number(rows, &rows->field[field], what);
    const char *written = rows->field[unit].text;
    for (size_t i = 0; i < UNITS; i++) {
        if (strcmp(units[i].written, written) == 0 && strcmp(units[i].si, si) == 0)
            return value * units[i].times / units[i].over;
    }
    wrong_unit(rows, &rows->field[unit], si, what);
    return NAN;
}

static const char *or_null(const char *text)
{
    return *text ? text : NULL;
}

tt_source tt_row_source(tt_rows *rows, size_t first)
{
    static const tt_mark marks[] = {TT_READ, TT_FROM_MEMORY, TT_COMMON_PRACTICE};
    static const char due[] = "read, from memory or common practice";
    const tt_field *field = &rows->field[first];
    tt_source source = {field[0].text, or_null(field[1].text), or_null(field[2].text), TT_GIVEN};
    if (!*source.document)
        tt_complain(rows->diags, TT_D_DATA_SOURCE, field[0].place,
                    "the standard, data sheet or certificate that the figure stands in",
                    "no source: the document is missing");
    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++) {
        if (strcmp(tt_mark_word(marks[i]), field[3].text) == 0) source.mark = marks[i];
    }
    if (source.mark != TT_GIVEN) return source;
    if (*field[3].text)
        tt_complain(rows->diags, TT_D_DATA_SOURCE, field[3].place, due,
                    "the mark '%.40s' is not known", field[3].text);
    else
        tt_complain(rows->diags, TT_D_DATA_SOURCE, field[3].place, due,
                    "no mark: nobody knows whether this was read");
    return source;
}

bool tt_row_choice(tt_rows *rows, size_t field, const char *yes, const char *no)
{
    const char *text = rows->field[field].text;
    if (strcmp(text, yes) == 0) return true;
    if (strcmp(text, no) != 0)
        tt_complain(rows->diags, TT_D_DATA_WORD, rows->field[field].place, NULL,
                    "'%.40s' is not %s or %s", text, yes, no);
    return false;
}

const char *tt_row_words(tt_rows *rows, size_t field, const char *what)
{
    const tt_field *words = &rows->field[field];
    if (!*words->text)
        tt_complain(rows->diags, TT_D_DATA_WORD, words->place, NULL, "%s is missing", what);
    return words->text;
}

const char *tt_row_first(tt_rows *rows, const tt_row_place *at)
{
    const char *text = strcmp(at->file, rows->file) == 0
                           ? tt_pool_format(&rows->into->pool, "line %u", at->line)
                           : tt_pool_format(&rows->into->pool, "%s:%u", at->file, at->line);
    if (!text) rows->no_memory = true;
    return text ? text : "";
}
