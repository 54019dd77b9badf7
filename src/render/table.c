/* render/table.c - a table in columns as wide as their widest cell; where they do not fit side by
 * side, the widest left-aligned columns are wrapped to one common width. Widths in characters. */
#include "base/alloc.h"
#include "render/lines.h"

#include <string.h>

enum { GAP = 2, LEAST = 8 };

static size_t width_of(const char *text)
{
    return tt_line_width(text, strlen(text));
}

static void natural_widths(const tt_block *table, size_t *width)
{
    const size_t n = table->columns.n;
    for (size_t c = 0; c < n; c++) width[c] = width_of(table->columns.at[c].title);
    for (size_t i = 0; i < table->cells.n; i++) {
        const size_t w = width_of(table->cells.at[i]);
        if (w > width[i % n]) width[i % n] = w;
    }
}

/* The longest of what no line may break: then none of it has to be cut. */
static void longest_words(const tt_block *table, size_t *word)
{
    const size_t n = table->columns.n;
    for (size_t c = 0; c < n; c++) word[c] = tt_line_longest(table->columns.at[c].title);
    for (size_t i = 0; i < table->cells.n; i++) {
        const size_t w = tt_line_longest(table->cells.at[i]);
        if (w > word[i % n]) word[i % n] = w;
    }
}

/* Of a column when no left one is wider than the cap, unless a word of it is (word may be NULL). */
static size_t capped(const tt_block *table, const size_t *width, const size_t *word, size_t cap,
                     size_t c)
{
    const size_t least = word && word[c] > cap ? word[c] : cap;
    return table->columns.at[c].align == TT_LEFT && width[c] > least ? least : width[c];
}

static size_t total(const tt_block *table, const size_t *width, const size_t *word, size_t cap)
{
    size_t sum = (table->columns.n - 1) * GAP;
    for (size_t c = 0; c < table->columns.n; c++) sum += capped(table, width, word, cap, c);
    return sum;
}

static void shrink(const tt_block *table, size_t *width, const size_t *word, size_t most)
{
    if (total(table, width, word, LEAST) > most) word = NULL; /* words have to be cut */
    size_t cap = most;
    while (cap > LEAST && total(table, width, word, cap) > most) cap--;
    for (size_t c = 0; c < table->columns.n; c++) width[c] = capped(table, width, word, cap, c);
}

static void trim(tt_text *out)
{
    while (out->n && out->at[out->n - 1] == ' ') out->at[--out->n] = '\0';
}

/* One line of a row; rest[c] moves on to what is left of cell c. False: nothing was left. */
static bool row_line(tt_text *out, const tt_block *table, const size_t *width, const char **rest,
                     const tt_text_style *style)
{
    bool any = false;
    for (size_t c = 0; c < table->columns.n; c++) any = any || *rest[c];
    for (size_t c = 0; any && c < table->columns.n; c++) {
        const char *next = rest[c];
        const size_t bytes = *rest[c] ? tt_line_fit(rest[c], width[c], &next) : 0;
        const size_t taken = tt_line_width(rest[c], bytes);
        const size_t pad = taken < width[c] ? width[c] - taken : 0;
        if (table->columns.at[c].align == TT_RIGHT) tt_text_fill(out, ' ', pad);
        tt_line_write(out, rest[c], bytes, style);
        if (table->columns.at[c].align == TT_LEFT) tt_text_fill(out, ' ', pad);
        tt_text_fill(out, ' ', GAP);
        rest[c] = next;
    }
    trim(out);
    if (any) tt_text_put(out, "\n");
    return any;
}

static void rule(tt_text *out, const tt_block *table, const size_t *width)
{
    for (size_t c = 0; c < table->columns.n; c++) {
        tt_text_fill(out, '-', width[c]);
        tt_text_fill(out, ' ', GAP);
    }
    trim(out);
    tt_text_put(out, "\n");
}

void tt_table_write(tt_text *out, const tt_block *table, const tt_text_style *style)
{
    const size_t n = table->columns.n;
    size_t *width = tt_alloc(n, sizeof *width), *word = tt_alloc(n, sizeof *word);
    const char **rest = tt_alloc(n, sizeof *rest);
    if (!width || !word || !rest) out->failed = true;
    if (!out->failed && n) {
        natural_widths(table, width);
        longest_words(table, word);
        shrink(table, width, word, style->width);
        for (size_t c = 0; c < n; c++) rest[c] = table->columns.at[c].title;
        while (row_line(out, table, width, rest, style)) continue;
        rule(out, table, width);
        for (size_t i = 0; i + n <= table->cells.n; i += n) {
            memcpy(rest, table->cells.at + i, n * sizeof *rest);
            while (row_line(out, table, width, rest, style)) continue;
        }
    }
    tt_free(rest);
    tt_free(word);
    tt_free(width);
}
