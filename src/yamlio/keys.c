/* yamlio/keys.c - keys that stand twice in one mapping, found by sorting. */
#include "base/alloc.h"
#include "yamlio/builder.h"

#include <stdlib.h>
#include <string.h>

static int by_key_then_place(const void *left, const void *right)
{
    const tt_node *a = *(tt_node *const *)left, *b = *(tt_node *const *)right;
    const int order = strcmp(a->key, b->key);
    if (order != 0) return order;
    if (a->key_place.line != b->key_place.line)
        return a->key_place.line < b->key_place.line ? -1 : 1;
    return a->key_place.column < b->key_place.column ? -1 : 1;
}

tt_status tt_builder_keys(tt_builder *b, const tt_node *mapping)
{
    const size_t n = mapping->n;
    tt_node **sorted = tt_alloc(n, sizeof(tt_node *));
    if (!sorted) return TT_E_NOMEM;
    for (size_t i = 0; i < n; i++) sorted[i] = mapping->child[i];
    qsort(sorted, n, sizeof *sorted, by_key_then_place);
    for (size_t i = 1, first = 0; i < n; i++) {
        const tt_node *earlier = sorted[first], *later = sorted[i];
        if (strcmp(earlier->key, later->key) != 0) {
            first = i;
            continue;
        }
        tt_complain(b->diags, TT_D_DUPLICATE_KEY, later->key_place, "keep one of the two",
                    "the key `%s` in line %u stands in line %u already", later->key,
                    later->key_place.line, earlier->key_place.line);
    }
    tt_free(sorted);
    return TT_OK;
}
