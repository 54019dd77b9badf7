/* piecefile/rows.c - slips in the rows of a limb: a name or a girth that was forgotten, a decimal
 * comma that makes two entries of one. */
#include "piecefile/reader.h"

#include <stdio.h>
#include <string.h>

enum { GIRTH = 5, WIDE_AND_DEEP = 6, WORDS = 160 };

static bool is_row(const tt_node *row)
{
    return row->kind == TT_SEQUENCE && row->n > 0 && row->child[0]->kind == TT_SCALAR;
}

static bool digits_only(const char *text)
{
    return text && text[0] && strspn(text, "0123456789") == strlen(text);
}

/* The entries as they stand, each behind a comma. */
static void put_entries(const tt_node *row, char words[WORDS])
{
    size_t n = 0;
    words[0] = '\0';
    for (size_t i = 0; i < row->n && n < WORDS; i++)
        n += (size_t)snprintf(words + n, WORDS - n, "%s%.20s", i ? ", " : "",
                              row->child[i]->text ? row->child[i]->text : "...");
}

/* A bare number: "4 in" may be a name. */
static bool begins_with_number(const tt_node *row)
{
    if (!is_row(row) || row->child[0]->quoted) return false;
    const tt_quantity q = tt_quantity_read(row->child[0]->text, TT_Q_PURE, 0);
    return q.fault == TT_QUANTITY_OK && q.bare;
}

/* Most of the rows that make a place of this limb say how thick it is there. */
static bool girth_due(const tt_node *rows)
{
    size_t with = 0, without = 0;
    for (size_t i = 0; i < rows->n; i++) {
        with += rows->child[i]->n >= GIRTH;
        without += rows->child[i]->n == GIRTH - 1 && !begins_with_number(rows->child[i]);
    }
    return with > without;
}

bool tt_row_lacks_name(tt_reader *reader, const tt_node *rows, const tt_node *row)
{
    char words[WORDS], hint[WORDS + 40];
    if (row->n < GIRTH - 1 || !begins_with_number(row)) return false;
    /* a whole number may be a name, but hardly where it leaves the row without its girth */
    const bool whole = digits_only(row->child[0]->text);
    if (whole && !(row->n == GIRTH - 1 && girth_due(rows))) return false;
    put_entries(row, words);
    snprintf(hint, sizeof hint, "a row begins with a name: [NAME, %s]", words);
    tt_wrong(reader, TT_D_ROW, row, hint, "this row has no name");
    return true;
}

bool tt_row_lacks_girth(tt_reader *reader, const tt_node *rows, const tt_node *row)
{
    char words[WORDS], hint[WORDS + 80];
    if (row->n != GIRTH - 1 || !girth_due(rows)) return false;
    put_entries(row, words);
    snprintf(hint, sizeof hint, "write its girth behind it, or wide and deep: [%s, GIRTH]", words);
    tt_wrong(reader, TT_D_ROW, row, hint, "row `%.60s` has no girth", row->child[0]->text);
    return true;
}

/* ---- a comma for a point ---- */

/* No blank between an entry and the one behind it, while the name has one behind its comma. */
static bool tight(const tt_node *row, size_t i)
{
    const tt_place *name = &row->child[0]->place, *x = &row->child[1]->place;
    const tt_place *a = &row->child[i]->place, *b = &row->child[i + 1]->place;
    return a->line == b->line && a->column + a->width + 1 == b->column &&
           name->column + name->width + 1 < x->column;
}

/* The first of two neighbours that could be one number written with a comma, `-10,5`: among x, y,
 * z, or where the blanks of the row say so. 0: none. */
static size_t comma_behind(const tt_node *row)
{
    size_t found = 0;
    for (size_t i = 1; i + 1 < row->n; i++) {
        const char *whole = row->child[i]->text, *part = row->child[i + 1]->text;
        if (!whole || !digits_only(part) || strlen(part) > 2 || strcmp(part, "0") == 0) continue;
        if (!digits_only(whole[0] == '-' ? whole + 1 : whole)) continue;
        if (tight(row, i)) return i;
        if (i <= 2 && !found) found = i;
    }
    return found;
}

bool tt_row_comma(const tt_node *row, char *hint, size_t size)
{
    const size_t i = is_row(row) ? comma_behind(row) : 0;
    if (i)
        snprintf(hint, size, "a decimal comma makes two numbers of one: write %.20s.%.4s",
                 row->child[i]->text, row->child[i + 1]->text);
    return i > 0;
}

/* A decimal comma makes one entry more, wide and deep of a girth: asked about where such a row
 * stands among girths. */
void tt_doubt_commas(tt_reader *reader, const tt_node *rows)
{
    size_t girths = 0, wides = 0;
    char hint[100];
    for (size_t i = 0; i < rows->n; i++) {
        girths += rows->child[i]->n == GIRTH;
        wides += rows->child[i]->n == WIDE_AND_DEEP;
    }
    for (size_t i = 0; i < rows->n && wides <= girths; i++) {
        const tt_node *row = rows->child[i];
        if (row->n != WIDE_AND_DEEP || !tt_row_comma(row, hint, sizeof hint)) continue;
        tt_tell(reader, TT_WARNING, TT_D_ROW, row, row->place, hint,
                "this row has wide and deep, others of its limb a girth: is a comma meant as a "
                "point?");
    }
}
