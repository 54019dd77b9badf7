/* piecefile/segments.c - the list `segments`: new ones in the long form, and what differs in one
 * that is there already. */
#include "piecefile/reader.h"

#include <math.h>

static void tell_no_segment(tt_reader *reader, const tt_node *node, const char *name)
{
    tt_near near = tt_near_to(name);
    for (size_t i = 0; i < reader->drafts.n; i++)
        tt_near_try_segment(&near, reader->drafts.at[i].name);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node,
             tt_near_words(&near, "a new segment needs `from`, `to` and `outline`"),
             "no segment is named `%.80s`", name);
}

static void change(tt_reader *reader, const tt_node *node, const tt_draft *draft)
{
    const tt_node *name = tt_tree_find(node, "name");
    const size_t index = tt_draft_named(reader, draft->name);
    if (index == TT_NONE) {
        tell_no_segment(reader, name, draft->name);
        return;
    }
    tt_draft *target = &reader->drafts.at[index];
    const tt_node *outline = draft->outline_node ? draft->outline_node : draft->outline_to_node;
    if (outline)
        tt_wrong_key(reader, TT_D_CONTRADICTION, outline, "change the rows of the limb",
                     "the outline of `%.80s` is made by its limb", draft->name);
    if (target->changed || target->limb == TT_NONE)
        tt_wrong(reader, TT_D_NAME_TWICE, name, "write all that is said of it into one entry",
                 "there is an entry for `%.80s` already", draft->name);
    if (draft->said.armature.through)
        tt_wrong_key(reader, TT_D_THROUGH, draft->said.armature.through, "write it in the limb",
                     "`through` is said of a whole limb");
    target->changed = true;
    tt_said_over(&target->said, &draft->said);
}

static bool lacks(tt_reader *reader, const tt_node *node, const tt_node *child, const char *name,
                  const char *hint)
{
    if (!child)
        tt_wrong_key(reader, TT_D_KEY_MISSING, node, hint, "a new segment lacks `%s`", name);
    return !child;
}

static bool ends(tt_reader *reader, const tt_node *node, tt_draft *draft)
{
    bool short_of = lacks(reader, node, draft->from_node, "from", "for example: from: crown");
    short_of |= lacks(reader, node, draft->to_node, "to", "for example: to: beak");
    short_of |= lacks(reader, node, draft->outline_node, "outline",
                      "for example: outline: {oval: [46 mm, 40 mm]}, or outline: none");
    if (draft->from_node) draft->from = tt_place_named(reader, draft->from_node);
    if (draft->to_node) draft->to = tt_place_named(reader, draft->to_node);
    return !short_of && draft->from != TT_NONE && draft->to != TT_NONE;
}

static void add(tt_reader *reader, const tt_node *node, tt_draft *draft)
{
    bool whole = ends(reader, node, draft);
    if (draft->outline_node) whole &= tt_take_outline(reader, draft->outline_node, &draft->outline);
    draft->outline_to = draft->outline;
    if (draft->outline_to_node)
        whole &= tt_take_outline(reader, draft->outline_to_node, &draft->outline_to);
    if (tt_draft_named(reader, draft->name) != TT_NONE) {
        tt_wrong(reader, TT_D_NAME_TWICE, tt_tree_find(node, "name"), "give it another name",
                 "there is a segment named `%.80s` already", draft->name);
        whole = false;
    }
    if (!whole)
        reader->holes = true;
    else if (!tt_list_push(&reader->drafts, *draft))
        reader->no_memory = true;
}

void tt_read_segments(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i], *name = tt_tree_find(entry, "name");
        tt_draft draft = {.limb = TT_NONE, .from = TT_NONE, .to = TT_NONE, .node = entry};
        tt_enter(reader, name && name->kind == TT_SCALAR ? name->text : "segment");
        tt_walk(reader, entry, key->map, &draft);
        tt_check_said(reader, entry, &draft.said);
        const bool new = draft.from_node || draft.to_node;
        if (!draft.name || !draft.name[0])
            reader->holes = true;
        else if (new)
            add(reader, entry, &draft);
        else
            change(reader, entry, &draft);
        tt_leave(reader);
    }
}
