/* yamlio/anchors.c - anchors, and aliases as copies within a budget: a change to one copy leaves
 * the others alone. */
#include "yamlio/builder.h"

#include <string.h>

static size_t find(const tt_builder *b, const char *name)
{
    size_t i = 0;
    while (i < b->anchors.n && strcmp(b->anchors.at[i].name, name) != 0) i++;
    return i;
}

tt_status tt_builder_anchor(tt_builder *b, const yaml_event_t *event, const char *name,
                            const tt_node *node, size_t *index)
{
    *index = 0;
    if (!name) return TT_OK;
    const size_t i = find(b, name);
    if (i < b->anchors.n) {
        tt_complain(b->diags, TT_D_YAML, tt_event_place(event), "give one of the two another name",
                    "the anchor &%s stands twice", name);
        return TT_OK;
    }
    if (i == TT_TREE_ANCHORS) {
        tt_complain(b->diags, TT_D_TOO_MUCH, tt_event_place(event), NULL, "more than %d anchors",
                    TT_TREE_ANCHORS);
        return TT_E_INPUT;
    }
    const char *kept = tt_pool_text(b->pool, name);
    if (!kept || !tt_list_push(&b->anchors, (tt_anchor){.name = kept, .node = node}))
        return TT_E_NOMEM;
    *index = i + 1;
    return TT_OK;
}

/* A copy with all that hangs on it; NULL without memory or when it reaches below `levels`. */
static tt_node *copy_of(const tt_node *node, tt_pool *pool, size_t levels, bool *deep)
{
    if (node->kind != TT_SCALAR && levels == 0) *deep = true;
    if (*deep) return NULL;
    tt_node *copy = tt_pool_take(pool, 1, sizeof *copy);
    if (!copy) return NULL;
    *copy = *node;
    if (node->kind == TT_SCALAR) return copy;
    copy->child = tt_pool_take(pool, node->n, sizeof *copy->child);
    bool complete = copy->child != NULL;
    for (size_t i = 0; complete && i < node->n; i++) {
        copy->child[i] = copy_of(node->child[i], pool, levels - 1, deep);
        complete = copy->child[i] != NULL;
    }
    return complete ? copy : NULL;
}

tt_status tt_builder_alias(tt_builder *b, const yaml_event_t *event, tt_node **copy)
{
    const char *name = (const char *)event->data.alias.anchor;
    const tt_place place = tt_event_place(event);
    const size_t i = find(b, name);
    bool deep = false;
    if (i == b->anchors.n) {
        tt_complain(b->diags, TT_D_YAML, place, "an alias repeats an anchor that stands above it",
                    "no anchor &%s stands above", name);
        return TT_E_INPUT;
    }
    const tt_anchor *anchor = &b->anchors.at[i];
    if (anchor->nodes == 0) {
        tt_complain(b->diags, TT_D_TOO_MUCH, place, NULL, "the alias *%s stands inside itself",
                    name);
        return TT_E_INPUT;
    }
    if (anchor->nodes > TT_TREE_NODES - b->nodes) {
        tt_complain(b->diags, TT_D_TOO_MUCH, place, "write the repeated parts out",
                    "the aliases up to *%s expand to more than %d values", name, TT_TREE_NODES);
        return TT_E_INPUT;
    }
    *copy = copy_of(anchor->node, b->pool, TT_TREE_DEPTH - b->depth, &deep);
    b->nodes += anchor->nodes;
    if (deep)
        tt_complain(b->diags, TT_D_TOO_DEEP, place, NULL,
                    "with the alias *%s nested more than %d deep", name, TT_TREE_DEPTH);
    return deep ? TT_E_INPUT : *copy ? TT_OK : TT_E_NOMEM;
}
