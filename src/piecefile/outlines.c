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
    tt_outline outline = tt_outline_of(kind, NAN, NAN);
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
    tt_outline outline = tt_outline_of(TT_OUTLINE_ELLIPSE, NAN, NAN);
    const double around = tt_take_number(reader, node, row("girth"));
    const double deep = depth ? tt_take_number(reader, depth, row("depth")) : 0;
    if (!isfinite(around) || !isfinite(deep)) return outline;
    if (!tt_outline_of_girth(around, deep, &outline))
        tt_wrong(reader, TT_D_RANGE, depth ? depth : node, "a girth is more than twice the depth",
                 "no ellipse has this girth and this depth");
    return outline;
}

static tt_outline box(tt_reader *reader, const tt_node *node, const tt_node *corner)
{
    tt_outline outline = pair(reader, node, row("box"), TT_OUTLINE_BOX);
    outline.corner = corner ? tt_take_number(reader, corner, row("corner")) : 0.0;
    if (!isfinite(outline.corner)) outline.corner = 0.0;
    if (outline.corner > 0.5 * fmin(outline.wide, outline.deep))
        tt_wrong(reader, TT_D_CORNER, corner, "at most half the smaller width",
                 "the corners of this box are rounder than it is wide");
    return outline;
}

/* ---- numbers ---- */

/* What no section can have: usually a slip of unit. */
static const char *impossible(const tt_numbers *n)
{
    if (n->iyz * n->iyz >= n->iy * n->iz) return "iyz is too large beside iy and iz";
    if (n->iy > n->area * n->reach_z * n->reach_z) return "iy is more than area * reach_z^2";
    if (n->iz > n->area * n->reach_y * n->reach_y) return "iz is more than area * reach_y^2";
    if (n->j > 1.01 * (n->iy + n->iz)) return "j is more than iy + iz";
    if (n->shear_y > n->area || n->shear_z > n->area) return "a shear area is more than area";
    return NULL;
}

static bool numbers(tt_reader *reader, const tt_node *node, tt_outline *out)
{
    tt_numbers_draft draft = {.is = {0}};
    const size_t errors = tt_diags_errors(reader->diags);
    tt_walk(reader, node, &tt_numbers_map, &draft);
    if (reader->piece->scale != 1.0)
        tt_wrong_key(reader, TT_D_NUMBERS_SCALE, node, "give them for the full size, with scale: 1",
                     "`numbers` do not follow a scale");
    const char *why = tt_diags_errors(reader->diags) == errors ? impossible(&draft.is) : NULL;
    if (why)
        tt_wrong_key(reader, TT_D_NUMBERS, node, "check digits and units",
                     "no section is like this: %s", why);
    tt_numbers *kept = tt_pool_take(&reader->piece->pool, 1, sizeof *kept);
    if (!kept) reader->no_memory = true;
    if (!kept || tt_diags_errors(reader->diags) > errors) return false;
    *kept = draft.is;
    *out = tt_outline_of(TT_OUTLINE_NUMBERS, draft.width_y, draft.width_z);
    out->numbers[0] = out->numbers[1] = kept;
    return true;
}

/* ---- one of them ---- */

/* One kind of outline in the map; NULL and told when there are none or several. */
static const tt_node *only(tt_reader *reader, const tt_node *node)
{
    static const char *const kinds[] = {"round", "oval", "box", "girth", "trace", "numbers"};
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
        tt_wrong(reader, TT_D_SHAPE, node,
                 "it reads round, oval, box (with corner), girth (with depth), trace, numbers, or "
                 "none",
                 "an outline of no kind");
    return found;
}

/* A key that goes with one kind only. */
static const tt_node *beside(tt_reader *reader, const tt_node *node, const tt_node *kind,
                             const char *name, const char *with, const char *hint)
{
    const tt_node *child = tt_tree_find(node, name);
    if (child && strcmp(kind->key, with) != 0)
        tt_wrong_key(reader, TT_D_CONTRADICTION, child, hint, "`%s` goes with `%s`", name, with);
    return child;
}

static bool by_kind(tt_reader *reader, const tt_node *node, const tt_node *kind, tt_outline *out)
{
    const tt_node *depth =
        beside(reader, node, kind, "depth", "girth", "write: {girth: 140 mm, depth: 40 mm}");
    const tt_node *corner =
        beside(reader, node, kind, "corner", "box", "write: {box: [46 mm, 40 mm], corner: 5 mm}");
    if (strcmp(kind->key, "trace") == 0) return tt_take_trace(reader, kind, out);
    if (strcmp(kind->key, "numbers") == 0) return numbers(reader, kind, out);
    if (strcmp(kind->key, "oval") == 0)
        *out = pair(reader, kind, row("oval"), TT_OUTLINE_ELLIPSE);
    else if (strcmp(kind->key, "box") == 0)
        *out = box(reader, kind, corner);
    else if (strcmp(kind->key, "girth") == 0)
        *out = girth(reader, kind, depth);
    else
        out->wide = out->deep = tt_take_number(reader, kind, row("round"));
    return true;
}

bool tt_take_outline(tt_reader *reader, const tt_node *node, tt_outline *out)
{
    *out = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    if (tt_is_word(node, "none")) return true;
    const size_t errors = tt_diags_errors(reader->diags);
    tt_walk(reader, node, &tt_outline_map, NULL);
    if (tt_diags_errors(reader->diags) > errors) return false;
    const tt_node *kind = only(reader, node);
    out->kind = TT_OUTLINE_ELLIPSE;
    return kind && by_kind(reader, node, kind, out);
}
