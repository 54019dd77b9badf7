/* piecefile/outlines.c - an outline in the long form, m at full size. */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

static const tt_key *row(const char *name)
{
    return tt_key_named(&tt_outline_map, name);
}

static tt_outline pair(tt_reader *reader, const tt_node *node, const tt_key *key,
                       tt_outline_kind kind)
{
    tt_outline outline = {kind, NAN, NAN};
    if (node->kind == TT_SEQUENCE && node->n == 2) {
        outline.wide = tt_take_number(reader, node->child[0], key);
        outline.deep = tt_take_number(reader, node->child[1], key);
    } else {
        tt_wrong_shape(reader, node, key);
    }
    return outline;
}

static tt_outline girth(tt_reader *reader, const tt_node *node, const tt_node *depth)
{
    tt_outline outline = {TT_OUTLINE_ELLIPSE, NAN, NAN};
    const double around = tt_take_number(reader, node, row("girth"));
    const double deep = depth ? tt_take_number(reader, depth, row("depth")) : 0;
    if (!isfinite(around) || !isfinite(deep)) return outline;
    if (!tt_outline_of_girth(around, deep, &outline))
        tt_wrong(reader, TT_D_RANGE, depth ? depth : node, "a girth is more than twice the depth",
                 "no ellipse has this girth and this depth");
    return outline;
}

/* One kind of outline in the map; NULL and told when there are none or several. */
static const tt_node *only(tt_reader *reader, const tt_node *node)
{
    static const char *const kinds[] = {"round", "oval", "box", "girth"};
    const tt_node *found = NULL;
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        const tt_node *child = tt_tree_find(node, kinds[i]);
        if (child && found) {
            tt_wrong_key(reader, TT_D_CONTRADICTION, child, "keep one of the two",
                         "an outline is of one kind");
            return NULL;
        }
        if (child) found = child;
    }
    if (!found)
        tt_wrong(reader, TT_D_SHAPE, node, "it reads round, oval, box, girth (with depth), or none",
                 "an outline of no kind");
    return found;
}

static tt_outline by_kind(tt_reader *reader, const tt_node *node, const tt_node *kind)
{
    const tt_node *depth = tt_tree_find(node, "depth");
    if (depth && strcmp(kind->key, "girth") != 0)
        tt_wrong_key(reader, TT_D_CONTRADICTION, depth, "write: {girth: 140 mm, depth: 40 mm}",
                     "`depth` goes with `girth`");
    if (strcmp(kind->key, "oval") == 0) return pair(reader, kind, row("oval"), TT_OUTLINE_ELLIPSE);
    if (strcmp(kind->key, "box") == 0) return pair(reader, kind, row("box"), TT_OUTLINE_BOX);
    if (strcmp(kind->key, "girth") == 0) return girth(reader, kind, depth);
    const double d = tt_take_number(reader, kind, row("round"));
    return (tt_outline){TT_OUTLINE_ELLIPSE, d, d};
}

bool tt_take_outline(tt_reader *reader, const tt_node *node, tt_outline *out)
{
    *out = (tt_outline){TT_OUTLINE_NONE, 0, 0};
    if (tt_is_word(node, "none")) return true;
    const size_t errors = tt_diags_errors(reader->diags);
    tt_walk(reader, node, &tt_outline_map, NULL);
    if (tt_diags_errors(reader->diags) > errors) return false;
    const tt_node *kind = only(reader, node);
    if (kind) *out = by_kind(reader, node, kind);
    return kind != NULL;
}
