/* yamlio/tree.h - YAML text to a tree that knows the place of everything. Every scalar is kept as
 * text: typing is the business of the key that reads it. libyaml is named in this module alone.
 * Refused with a place: bad UTF-8 and control characters, duplicate keys, a second document,
 * depth over 64, aliases that expand beyond a budget, an empty file, keys that are not scalars. */
#ifndef TT_YAMLIO_TREE_H
#define TT_YAMLIO_TREE_H

#include "base/diags.h"
#include "base/pool.h"
#include "tiptoe/status.h"

typedef enum { TT_SCALAR, TT_SEQUENCE, TT_MAPPING } tt_node_kind;

/** One node; lives in the pool of its tree. */
typedef struct tt_node {
    const char *key;       /* in a mapping: the key's text; else NULL */
    const char *text;      /* scalar: its text (never NULL, may be ""); else NULL */
    struct tt_node **child; /* of a sequence or mapping, in order of the file */
    size_t n;
    tt_place key_place;    /* of the key */
    tt_place place;        /* of the value */
    tt_node_kind kind;
    bool quoted;           /* scalar written in quotes */
    bool set;              /* came from --set, its place is in that text */
    bool beside;           /* came from a file beside, its place is there */
} tt_node;

/** Reads one document. Problems go to diags (TT_E_INPUT then); *root is NULL unless TT_OK.
 *  The text must be what tt_diags_about was told. */
tt_status tt_tree_read(const char *text, size_t length, tt_pool *pool, tt_diags *diags,
                       tt_node **root);

/** Reads a table, comma-separated (or by ; where its first line has one and no comma): a sequence of
 *  sequences of scalars. Fields may stand in double quotes, "" in them for one; # begins a remark
 *  line, empty lines are passed over. Problems as above. */
tt_status tt_table_read(const char *text, size_t length, tt_pool *pool, tt_diags *diags,
                        tt_node **root);

/** The child of a mapping with this key; NULL when there is none or node is no mapping. */
tt_node *tt_tree_find(const tt_node *node, const char *key);

/** Adds a child (key NULL in a sequence) or replaces the one of that key; false without memory. */
bool tt_tree_put(tt_node *node, tt_pool *pool, tt_node *child);

#endif
