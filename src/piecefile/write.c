/* piecefile/write.c - a piece file written out again from its tree and the key table: what was
 * said, and nothing that was not, so that defaults stay defaults; changes of the command line and
 * tables beside it are in it; quantities in SI with every digit that counts. Remarks are left out.
 * Reading it gives the same piece. */
#include "base/text.h"
#include "piecefile/works.h"

#include <string.h>

enum { WIDTH = 96 }; /* of a line that holds a list or map in brackets */

typedef struct {
    tt_reader *reader;
    tt_text *out;
} tt_writer;

/* ---- scalars --------------------------------------------------------------------------------- */

/* Reads as it stands, without quotes: letters, digits and few signs. */
static bool plain(const char *text)
{
    static const char inside[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
                                 " _+-./%";
    const size_t n = strlen(text);
    if (n == 0 || strspn(text, inside) != n || strchr(" %", text[0]) || text[n - 1] == ' ')
        return false;
    return strncmp(text, "--", 2) != 0 && strncmp(text, "- ", 2) != 0 && strcmp(text, "-") != 0 &&
           strncmp(text, "..", 2) != 0;
}

static void put_words(tt_text *out, const char *text)
{
    if (plain(text)) {
        tt_text_put(out, text);
        return;
    }
    tt_text_put(out, "\"");
    for (; *text; text++) {
        const char *escape = *text == '"'    ? "\\\""
                             : *text == '\\' ? "\\\\"
                             : *text == '\n' ? "\\n"
                             : *text == '\t' ? "\\t"
                             : *text == '\r' ? "\\r"
                                             : NULL;
        if (escape)
            tt_text_put(out, escape);
        else
            tt_text_add(out, text, 1);
    }
    tt_text_put(out, "\"");
}

static void put_scalar(tt_writer *w, const tt_node *node, const tt_key *key)
{
    if (key && key->dimension != TT_Q_PURE) {
        const tt_quantity q =
            tt_quantity_read(node->text, key->dimension, tt_bare_unit(w->reader, key));
        if (q.fault == TT_QUANTITY_OK) {
            tt_quantity_write_exactly(w->out, q.value, key->dimension);
            return;
        }
    }
    put_words(w->out, node->text);
}

/* ---- which row of the table reads it -----------------------------------------------------------
 */

/** A node and what it is read by: the row for its scalars, the map for its keys; NULL: none. */
typedef struct {
    const tt_node *node;
    const tt_key *key;
    const tt_map *map;
} tt_said_by;

static tt_said_by said_by(const tt_node *node, const tt_key *key, const tt_map *map)
{
    const bool reason = tt_tree_find(node, "is") && !(map && tt_key_named(map, "is"));
    return (tt_said_by){node, key, reason ? NULL : map};
}

/* The name of a place stands first in a row; it is no length, whatever it reads like. */
static bool is_row(const tt_said_by *of)
{
    return of->node->kind == TT_SEQUENCE && of->node->n > 0 &&
           of->node->child[0]->kind == TT_SCALAR && of->key &&
           (of->key == tt_key_named(&tt_limb_map, "rows") ||
            of->key == tt_key_named(&tt_root_map, "limbs"));
}

static tt_said_by child_of(const tt_said_by *of, size_t i)
{
    const tt_node *child = of->node->child[i];
    const tt_key *key = of->key;
    if (of->node->kind == TT_SEQUENCE)
        return said_by(child, is_row(of) && i == 0 ? NULL : key, key ? key->map : NULL);
    if (of->map) {
        key = tt_key_named(of->map, child->key);
        return said_by(child, key, key && key->kind != TT_KEY_NAMES ? key->map : NULL);
    }
    if (key && key->kind == TT_KEY_NAMES) return said_by(child, key, key->map);
    return said_by(child, strcmp(child->key, "because") == 0 ? NULL : key, NULL);
}

/* ---- in brackets, and line by line -------------------------------------------------------------
 */

static void put_flow(tt_writer *w, const tt_said_by *of)
{
    if (of->node->kind == TT_SCALAR) {
        put_scalar(w, of->node, of->key);
        return;
    }
    const bool list = of->node->kind == TT_SEQUENCE;
    tt_text_put(w->out, list ? "[" : "{");
    for (size_t i = 0; i < of->node->n; i++) {
        const tt_said_by child = child_of(of, i);
        if (i) tt_text_put(w->out, ", ");
        if (!list) put_words(w->out, child.node->key);
        if (!list) tt_text_put(w->out, ": ");
        put_flow(w, &child);
    }
    tt_text_put(w->out, list ? "]" : "}");
}

/* In brackets where it fits into a line; then the line is written, else nothing is. */
static bool put_on_a_line(tt_writer *w, const tt_said_by *of, size_t in)
{
    tt_text line = {0};
    tt_writer on_line = {w->reader, &line};
    put_flow(&on_line, of);
    const bool fits = of->node->kind == TT_SCALAR || of->node->n == 0 || in + line.n <= WIDTH;
    if (line.failed) w->out->failed = true;
    if (fits) tt_text_format(w->out, " %s\n", tt_text_of(&line));
    tt_text_clear(&line);
    return fits;
}

static void put_block(tt_writer *w, const tt_said_by *of, size_t in)
{
    for (size_t i = 0; i < of->node->n; i++) {
        tt_said_by child = child_of(of, i);
        if (child.node == w->reader->table_name) child.node = w->reader->table_rows;
        const size_t before = w->out->n;
        tt_text_fill(w->out, ' ', in);
        if (of->node->kind == TT_MAPPING) {
            put_words(w->out, child.node->key);
            tt_text_put(w->out, ":");
        } else {
            tt_text_put(w->out, "-");
        }
        if (put_on_a_line(w, &child, w->out->n - before + 1)) continue;
        tt_text_put(w->out, "\n");
        put_block(w, &child, in + 2);
    }
}

void tt_read_handling(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_text text = {0};
    tt_writer writer = {reader, &text};
    const tt_said_by all = {node, NULL, NULL};
    (void)key;
    put_flow(&writer, &all);
    if (text.failed) reader->no_memory = true;
    ((tt_works *)field)->handling = tt_keep(reader, tt_text_of(&text));
    tt_text_clear(&text);
}

/* A scale from the command line takes the place of the file's. */
static tt_node *with_scale(tt_reader *reader)
{
    tt_node *root = tt_pool_take(&reader->trees, 1, sizeof *root);
    tt_node *scale = tt_pool_take(&reader->trees, 1, sizeof *scale);
    if (!root || !scale) return NULL;
    *root = *reader->root;
    *scale = (tt_node){.kind = TT_SCALAR, .key = "scale", .text = reader->changes->scale};
    root->child = tt_pool_take(&reader->trees, root->n + 1, sizeof *root->child);
    if (!root->child) return NULL;
    memcpy(root->child, reader->root->child, root->n * sizeof *root->child);
    return tt_tree_put(root, &reader->trees, scale) ? root : NULL;
}

void tt_write_again(tt_reader *reader)
{
    tt_text text = {0};
    tt_writer writer = {reader, &text};
    const tt_said_by all = {reader->scale_option ? with_scale(reader) : reader->root, NULL,
                            &tt_root_map};
    if (all.node) put_block(&writer, &all, 0);
    if (!all.node || text.failed) reader->no_memory = true;
    reader->piece->written = tt_keep(reader, tt_text_of(&text));
    tt_text_clear(&text);
}

tt_status tt_piece_write(const tt_piece *piece, tt_sink *sink, void *user)
{
    if (!piece->written) return TT_E_INPUT;
    return sink(user, piece->written, strlen(piece->written)) == 0 ? TT_OK : TT_E_WRITE;
}
