/* yamlio/builder.h - a tree under construction, event by event. Used inside this module only. */
#ifndef TT_YAMLIO_BUILDER_H
#define TT_YAMLIO_BUILDER_H

#include "base/list.h"
#include "yamlio/tree.h"

#include <yaml.h>

enum {
    TT_TREE_DEPTH = 64,     /* levels of sequences and mappings */
    TT_TREE_NODES = 100000, /* nodes, those that aliases repeat counted each time */
    TT_TREE_ANCHORS = 1000,
    TT_TREE_BYTES = 4 * 1024 * 1024
};

/** A sequence or mapping that is still open. */
typedef struct {
    tt_node *node;
    size_t first;  /* its first child in `pending` */
    size_t before; /* nodes before it */
    size_t anchor; /* index in `anchors` plus one, 0 without */
    const char *key;
    tt_place key_place;
} tt_level;

/** A named node; `nodes` is 0 while it is open. */
typedef struct {
    const char *name;
    const tt_node *node;
    size_t nodes;
} tt_anchor;

typedef struct {
    tt_pool *pool;
    tt_diags *diags;
    const char *at, *end;  /* in the text, behind an event that was asked for; its end */
    size_t lines, columns; /* of `at` */
    tt_node *root;
    tt_level level[TT_TREE_DEPTH];
    size_t depth, nodes, documents;
    TT_LIST(tt_node *) pending; /* finished children of the open levels */
    TT_LIST(tt_anchor) anchors;
} tt_builder;

/** Size and characters of a text, before anything else sees it; false and told when it is refused.
 */
bool tt_text_is_read(const char *text, size_t length, tt_diags *diags);

/** TT_OK to go on; TT_E_INPUT when reading must stop; TT_E_NOMEM. Problems that do not stop the
 *  reading are only told to diags. */
tt_status tt_builder_take(tt_builder *b, const yaml_event_t *event);

tt_place tt_event_place(const yaml_event_t *event);

/** The alias of an event, as a copy of the node that it names. */
tt_status tt_builder_alias(tt_builder *b, const yaml_event_t *event, tt_node **copy);

/** Notes an anchor; *index is its place in the list plus one. */
tt_status tt_builder_anchor(tt_builder *b, const yaml_event_t *event, const char *name,
                            const tt_node *node, size_t *index);

/** Complains about each key of a mapping that stands there a second time. */
tt_status tt_builder_keys(tt_builder *b, const tt_node *mapping);

#endif
