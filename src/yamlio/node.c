/* yamlio/node.c - finding and changing the children of a node. */
#include "yamlio/tree.h"

#include <string.h>

static size_t position(const tt_node *node, const char *key)
{
    size_t i = 0;
    while (i < node->n && strcmp(node->child[i]->key, key) != 0) i++;
    return i;
}

tt_node *tt_tree_find(const tt_node *node, const char *key)
{
    if (!node || node->kind != TT_MAPPING) return NULL;
    const size_t i = position(node, key);
    return i < node->n ? node->child[i] : NULL;
}

bool tt_tree_put(tt_node *node, tt_pool *pool, tt_node *child)
{
    const size_t i = node->kind == TT_MAPPING ? position(node, child->key) : node->n;
    if (i == node->n) {
        tt_node **grown = tt_pool_take(pool, node->n + 1, sizeof *grown);
        if (!grown) return false;
        if (node->n) memcpy(grown, node->child, node->n * sizeof *grown);
        node->child = grown;
        node->n++;
    }
    node->child[i] = child;
    return true;
}
