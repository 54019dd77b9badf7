/* yamlio/table.c - a table as text (comma-separated) to a tree that knows the place of every
 * field: a sequence of rows, each a sequence of scalars. */
#include "base/text.h"
#include "yamlio/builder.h"

#include <string.h>

typedef struct {
    const char *at, *end;
    const char *line; /* where the line in hand begins */
    unsigned lines;   /* its number, from 1 */
    char comma;
    tt_pool *pool;
    tt_diags *diags;
    size_t fields;
    bool no_memory;
} tt_scan;

static tt_place place_of(const tt_scan *scan, const char *from, const char *to)
{
    const size_t width = tt_text_width(from, (size_t)(to - from));
    return (tt_place){scan->lines,
                      (unsigned)tt_text_width(scan->line, (size_t)(from - scan->line)) + 1,
                      width ? (unsigned)width : 1};
}

static tt_node *new_node(tt_scan *scan, tt_node_kind kind, tt_place place)
{
    tt_node *node = tt_pool_take(scan->pool, 1, sizeof *node);
    if (node)
        *node = (tt_node){.kind = kind, .place = place, .beside = true};
    else
        scan->no_memory = true;
    return node;
}

static bool blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r';
}

/* The text between quotes; the cursor behind the closing one. NULL and told without one. */
static const char *quoted(tt_scan *scan)
{
    const char *from = scan->at;
    char *text = tt_pool_take(scan->pool, (size_t)(scan->end - from) + 1, 1);
    if (!text) scan->no_memory = true;
    size_t n = 0;
    for (scan->at++; text && scan->at < scan->end && *scan->at != '\n'; scan->at++) {
        if (*scan->at == '"' && (scan->at + 1 == scan->end || scan->at[1] != '"')) {
            scan->at++;
            return text;
        }
        if (*scan->at == '"') scan->at++;
        text[n++] = *scan->at;
    }
    if (text)
        tt_complain(scan->diags, TT_D_TABLE, place_of(scan, from, from + 1),
                    "close the quotes in the same line", "a field in quotes does not end");
    return NULL;
}

static bool ends_field(const tt_scan *scan)
{
    return scan->at == scan->end || *scan->at == '\n' || *scan->at == scan->comma;
}

static tt_node *field(tt_scan *scan)
{
    while (!ends_field(scan) && blank(*scan->at)) scan->at++;
    const char *from = scan->at, *text = NULL;
    const bool in_quotes = !ends_field(scan) && *from == '"';
    if (in_quotes) text = quoted(scan);
    if (in_quotes && !text) return NULL;
    const char *to = scan->at;
    while (!ends_field(scan)) {
        if (!blank(*scan->at++)) to = scan->at;
    }
    tt_node *node = new_node(scan, TT_SCALAR, place_of(scan, from, to));
    if (!text) text = tt_pool_copy(scan->pool, from, (size_t)(to - from));
    if (!text) scan->no_memory = true;
    if (!node || !text) return NULL;
    node->text = text;
    node->quoted = in_quotes;
    return node;
}

/* Fields up to the end of the line; false: the reading stops. */
static bool row(tt_scan *scan, tt_node *table)
{
    TT_LIST(tt_node *) fields = {0};
    tt_node *of = new_node(scan, TT_SEQUENCE, place_of(scan, scan->at, scan->at + 1));
    bool more = of != NULL, good = of != NULL;
    while (more && good) {
        tt_node *one = field(scan);
        good = one && ++scan->fields <= TT_TREE_NODES;
        if (good && !tt_list_push(&fields, one)) scan->no_memory = true;
        good = good && !scan->no_memory;
        more = scan->at < scan->end && *scan->at == scan->comma;
        if (more) scan->at++;
    }
    if (good && (of->child = tt_pool_take(scan->pool, fields.n, sizeof *of->child)) != NULL) {
        memcpy(of->child, fields.at, fields.n * sizeof *of->child);
        of->n = fields.n;
    }
    tt_list_clear(&fields);
    if (!good) return false;
    if (!of->child || !tt_tree_put(table, scan->pool, of)) scan->no_memory = true;
    return !scan->no_memory;
}

static bool says_nothing(const char *line, const char *end)
{
    while (line < end && blank(*line)) line++;
    return line == end || *line == '\n' || *line == '#';
}

static bool rows(tt_scan *scan, tt_node *table)
{
    bool good = true;
    while (good && scan->at < scan->end) {
        const char *next = memchr(scan->at, '\n', (size_t)(scan->end - scan->at));
        scan->line = scan->at;
        scan->lines++;
        if (!says_nothing(scan->line, scan->end)) {
            if (table->n == 0) {
                const size_t n = (size_t)((next ? next : scan->end) - scan->line);
                const bool semicolons = memchr(scan->line, ';', n) && !memchr(scan->line, ',', n);
                scan->comma = semicolons ? ';' : ',';
            }
            good = row(scan, table);
        }
        scan->at = next ? next + 1 : scan->end;
    }
    return good;
}

tt_status tt_table_read(const char *text, size_t length, tt_pool *pool, tt_diags *diags,
                        tt_node **root)
{
    static const char mark[] = "\xEF\xBB\xBF"; /* byte order mark of UTF-8 */
    *root = NULL;
    if (!tt_text_is_read(text, length, diags)) return TT_E_INPUT;
    tt_scan scan = {.at = text, .end = text + length, .pool = pool, .diags = diags};
    if (length >= 3 && memcmp(text, mark, 3) == 0) scan.at += 3;
    tt_node *table = new_node(&scan, TT_SEQUENCE, (tt_place){1, 1, 1});
    const bool good = table && rows(&scan, table);
    if (scan.no_memory || tt_diags_short(diags)) return TT_E_NOMEM;
    if (good && table->n == 0)
        tt_complain(diags, TT_D_EMPTY, ((tt_place){1, 1, 1}), "a row a line, fields with commas",
                    "the table is empty");
    if (scan.fields > TT_TREE_NODES)
        tt_complain(diags, TT_D_TOO_MUCH, ((tt_place){scan.lines, 1, 1}),
                    tt_number_cure(TT_D_TOO_MUCH), "the table has too many fields");
    if (!good || table->n == 0) return TT_E_INPUT;
    *root = table;
    return TT_OK;
}
