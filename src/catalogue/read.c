/* catalogue/read.c - a table in the format of data/README.md, line by line, to rows in SI. */
#include "catalogue/read.h"

#include "base/text.h"
#include "yamlio/encoding.h"

#include <string.h>

enum { LONGEST = 4 * 1024 * 1024, MOST_ROWS = 4000 };

static const struct {
    const char *word;
    size_t fields;
    tt_row_read *read;
} kinds[] = {
    {"metal", 6, tt_row_metal}, {"filler", 4, tt_row_filler}, {"material", 3, tt_row_material},
    {"form", 2, tt_row_form},   {"figure", 8, tt_row_figure}, {"tube", 13, tt_row_round},
    {"pipe", 13, tt_row_round}, {"bar", 13, tt_row_round},    {"box", 16, tt_row_box},
    {"flat", 13, tt_row_flat},  {"rod", 12, tt_row_rod},
};

static const char shape[] =
    "`tiptoe explain data` tells kinds of rows and fields, as data/README.md does";

/* ---- a line into fields ---- */

typedef struct {
    const char *line;
    size_t at, end; /* bytes */
    unsigned number;
} cursor;

static tt_place place_of(const cursor *c, size_t from, size_t to)
{
    const size_t width = tt_text_width(c->line + from, to - from);
    return (tt_place){c->number, (unsigned)tt_text_width(c->line, from) + 1,
                      width ? (unsigned)width : 1};
}

/* Does a quotation mark stand here? */
static bool mark_at(const cursor *c, size_t at)
{
    return at < c->end && c->line[at] == '"';
}

/* The text without its marks in `to`; a doubled one is one. False, and told, when it has no end. */
static bool quoted(tt_rows *rows, cursor *c, char *to)
{
    const size_t from = c->at++;
    while (c->at < c->end && (!mark_at(c, c->at) || mark_at(c, c->at + 1))) {
        c->at += mark_at(c, c->at);
        *to++ = c->line[c->at++];
    }
    *to = '\0';
    const bool closed = mark_at(c, c->at++);
    if (closed && (c->at == c->end || c->line[c->at] == ',')) return true;
    tt_complain(rows->diags, TT_D_DATA_TEXT, place_of(c, from, c->end),
                "\"…\", then a comma; a mark inside is written twice",
                "a field in quotation marks does not end with one");
    return false;
}

static void bare(cursor *c, char *to)
{
    while (c->at < c->end && c->line[c->at] != ',') *to++ = c->line[c->at++];
    while (to[-1] == ' ') to--;
    *to = '\0';
}

/* False: no field could be read, and it was told. */
static bool take_field(tt_rows *rows, cursor *c, tt_field *field)
{
    while (c->at < c->end && c->line[c->at] == ' ') c->at++;
    const size_t from = c->at;
    char *to = tt_pool_take(&rows->into->pool, c->end - c->at + 2, 1);
    if (!to) {
        rows->no_memory = true;
        return false;
    }
    *to++ = '\0'; /* so that a look back is a look at something */
    field->text = to;
    if (c->at < c->end && c->line[c->at] == '"') {
        if (!quoted(rows, c, to)) return false;
    } else {
        bare(c, to);
    }
    field->place = place_of(c, from, c->at);
    return true;
}

static bool split(tt_rows *rows, cursor *c)
{
    rows->fields = 0;
    for (;;) {
        tt_field field;
        if (!take_field(rows, c, &field)) return false;
        if (rows->fields < TT_FIELDS) {
            rows->field[rows->fields++] = field;
        } else if (*field.text) {
            tt_complain(rows->diags, TT_D_DATA_FIELDS, field.place, shape,
                        "a field more than any row has");
            return false;
        }
        if (c->at >= c->end) return true;
        c->at++;
    }
}

/* ---- a row ---- */

/* What cannot be read may have been the head of a metal: its figures are passed over, so that one
 * fault is told once. */
static void lose(tt_rows *rows, const char *line, size_t length)
{
    static const char figure[] = "figure";
    if (length >= strlen(figure) && memcmp(line, figure, strlen(figure)) == 0) return;
    tt_row_end(rows);
    rows->lost = true;
}

static void unknown_kind(tt_rows *rows)
{
    const tt_field *first = &rows->field[0];
    const bool semicolons = strchr(first->text, ';') != NULL;
    tt_complain(rows->diags, TT_D_DATA_ROW, first->place,
                semicolons ? "commas part the fields, not semicolons" : shape,
                "unknown kind of row '%.40s'", first->text);
}

static bool read_row(tt_rows *rows, unsigned fields, tt_row_read *read)
{
    while (rows->fields > fields && !*rows->field[rows->fields - 1].text) rows->fields--;
    if (rows->fields == fields) {
        read(rows);
        return true;
    }
    tt_complain(rows->diags, TT_D_DATA_FIELDS, rows->row, shape,
                "a %s row has %u fields, this one %zu", rows->field[0].text, fields, rows->fields);
    return false;
}

/* False: it could not be read, and it was told. */
static bool read_fields(tt_rows *rows)
{
    size_t filled = 0;
    for (size_t i = 0; i < rows->fields; i++) filled += *rows->field[i].text != '\0';
    if (filled == 0) return true; /* a line of commas, as spreadsheets leave them */
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (strcmp(kinds[i].word, rows->field[0].text) == 0)
            return read_row(rows, (unsigned)kinds[i].fields, kinds[i].read);
    }
    unknown_kind(rows);
    return false;
}

static void read_line(tt_rows *rows, const char *line, size_t length, unsigned number)
{
    while (length && (line[length - 1] == '\r' || line[length - 1] == ' ')) length--;
    cursor c = {line, 0, length, number};
    if (length == 0 || *line == '#') return;
    rows->row = place_of(&c, 0, length);
    if (!split(rows, &c) || !read_fields(rows)) lose(rows, line, length);
}

/* ---- a text ---- */

static bool can_be_read(const char *text, size_t length, tt_diags *diags)
{
    tt_stray stray;
    if (length > LONGEST) {
        tt_complain(diags, TT_D_DATA_TEXT, (tt_place){0}, "4 MiB at most",
                    "the table is too large");
        return false;
    }
    if (tt_encoding_check(text, length, &stray)) return true;
    tt_complain(diags, TT_D_DATA_TEXT, (tt_place){stray.line, stray.column, 1},
                "save the table as UTF-8 text",
                "a byte that is not UTF-8 text, or a control character");
    return false;
}

static bool too_many(tt_rows *rows)
{
    if (rows->into->metals.n + rows->into->stock.n < MOST_ROWS) return false;
    tt_complain(rows->diags, TT_D_DATA_TEXT, rows->row, NULL, "more than %d rows", MOST_ROWS);
    return true;
}

static void read_lines(tt_rows *rows, const char *text, size_t length)
{
    static const char mark[] = "\xEF\xBB\xBF"; /* of byte order, which some programs write */
    const char *end = text + length;
    const bool marked = length >= 3 && memcmp(text, mark, 3) == 0;
    unsigned number = 1;
    for (const char *at = marked ? text + 3 : text; at < end && !rows->no_memory; number++) {
        if (too_many(rows)) break;
        const char *stop = memchr(at, '\n', (size_t)(end - at));
        read_line(rows, at, (size_t)((stop ? stop : end) - at), number);
        at = stop ? stop + 1 : end;
    }
    tt_row_end(rows);
}

bool tt_rows_read(tt_data *into, const char *file, const char *text, size_t length, tt_diags *diags)
{
    tt_rows rows = {.into = into, .diags = diags};
    tt_diags_about(diags, file, text, length);
    rows.file = tt_pool_text(&into->pool, file);
    rows.no_memory = !rows.file;
    if (!rows.no_memory && can_be_read(text, length, diags)) read_lines(&rows, text, length);
    return !rows.no_memory && !tt_diags_short(diags);
}
