/* piecefile/commas.c - numbers that a comma cut in two. In braces YAML reads "wanted: 1,800 mm" as
 * `wanted: 1` and a key `800 mm` without a value. The two become one scalar again, "1,800 mm",
 * which the door of quantities refuses for its comma. */
#include "piecefile/reader.h"

#include <string.h>

enum { LONG = 60 }; /* no number that is worth a hint has so many bytes */

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

/* Nothing stands between the two but the comma. */
static bool cut(const tt_node *a, const tt_node *b)
{
    if (a->kind != TT_SCALAR || b->kind != TT_SCALAR || a->quoted || b->quoted || b->text[0])
        return false;
    const size_t length = strlen(a->text);
    return length > 0 && length < LONG && digit(a->text[length - 1]) && digit(b->key[0]) &&
           a->place.line == b->key_place.line &&
           a->place.column + a->place.width + 1 == b->key_place.column;
}

static void join(tt_reader *reader, tt_node *a, const tt_node *b)
{
    const char *text = tt_pool_format(&reader->trees, "%s,%s", a->text, b->key);
    if (!text) reader->no_memory = true;
    if (text) a->text = text;
    a->place.width += 1 + b->key_place.width;
}

void tt_join_commas(tt_reader *reader, tt_node *node)
{
    size_t kept = 0;
    for (size_t i = 0; i < node->n; i++) {
        tt_node *child = node->child[i];
        tt_join_commas(reader, child);
        if (node->kind == TT_MAPPING && kept > 0 && cut(node->child[kept - 1], child))
            join(reader, node->child[kept - 1], child);
        else
            node->child[kept++] = child;
    }
    node->n = kept;
}
