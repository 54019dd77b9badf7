/* piecefile/places.c - places by name, the long form `points`, rigid arms. */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

/* A limb of the file has a row that makes this place. */
static bool made_by_limb(const tt_reader *reader, const char *name)
{
    const tt_node *limbs = tt_tree_find(reader->root, "limbs");
    for (size_t i = 0; limbs && i < limbs->n; i++) {
        const tt_node *limb = limbs->child[i];
        const tt_node *rows = limb->kind == TT_SEQUENCE ? limb : tt_tree_find(limb, "rows");
        for (size_t j = 0; rows && j < rows->n; j++) {
            const tt_node *row = rows->child[j];
            if (row->kind == TT_SEQUENCE && row->n > 3 && tt_is_word(row->child[0], name))
                return true;
        }
    }
    return false;
}

bool tt_place_later(const tt_reader *reader, const char *name)
{
    return tt_piece_point(reader->piece, name) == TT_NONE && made_by_limb(reader, name);
}

size_t tt_place_named(tt_reader *reader, const tt_node *node)
{
    const char *because;
    node = tt_value(reader, node, &because);
    if (node->kind != TT_SCALAR || !node->text[0]) {
        tt_wrong(reader, TT_D_SHAPE, node, "write the name of one place", "a place is a name");
        reader->holes = true;
        return TT_NONE;
    }
    const size_t found = tt_piece_point(reader->piece, node->text);
    if (found != TT_NONE) return found;
    reader->holes = true;
    if (made_by_limb(reader, node->text)) {
        tt_wrong(reader, TT_D_NAME_EARLY, node, "move the limb that makes it above this one",
                 "the place `%.60s` is made further down", node->text);
        return TT_NONE;
    }
    tt_near near = tt_near_to(node->text);
    for (size_t i = 0; i < reader->piece->points.n; i++)
        tt_near_try(&near, reader->piece->points.at[i].name);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node,
             tt_near_words(&near, "places are made by rows with x, y, z and by `points`"),
             "no place is named `%.60s`", node->text);
    return TT_NONE;
}

size_t tt_place_add(tt_reader *reader, const tt_node *name, const char *text, tt_vec3 at,
                    const tt_made *made)
{
    tt_piece *piece = reader->piece;
    if (tt_piece_point(piece, text) != TT_NONE) {
        tt_wrong_key(reader, TT_D_NAME_TWICE, name,
                     "give it another name; a place of an earlier limb is named alone, or with its "
                     "girth: [hip] or [hip, 150 mm]",
                     "there is a place named `%.60s` already", text);
        reader->holes = true;
        return TT_NONE;
    }
    if (tt_list_push(&piece->points,
                     ((tt_point){tt_keep(reader, text), at, tt_keep_place(name)})) &&
        tt_list_push(&reader->made, *made))
        return piece->points.n - 1;
    reader->no_memory = true;
    return TT_NONE;
}

void tt_read_points(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    (void)key;
    for (size_t i = 0; i < node->n; i++) {
        tt_vec3 at;
        tt_enter(reader, node->child[i]->key);
        tt_take_triple(reader, node->child[i], &tt_coordinate, &at);
        tt_leave(reader);
        tt_place_add(reader, node->child[i], node->child[i]->key, at, &(tt_made){0});
    }
}

static void add_arm(tt_reader *reader, const tt_node *node, size_t a, size_t b)
{
    if (a == TT_NONE || b == TT_NONE) return;
    if (a == b)
        tt_wrong(reader, TT_D_COINCIDE, node, "name two places",
                 "a rigid arm from a place to itself");
    else if (!tt_list_push(&reader->piece->arms, ((tt_arm){a, b, tt_keep_place(node)})))
        reader->no_memory = true;
}

void tt_read_rigid(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n; i++) {
        const tt_node *pair = node->child[i];
        if (pair->kind != TT_SEQUENCE || pair->n != 2) {
            tt_wrong_shape(reader, pair, key);
            reader->holes = true;
            continue;
        }
        const size_t a = tt_place_named(reader, pair->child[0]);
        const size_t b = tt_place_named(reader, pair->child[1]);
        add_arm(reader, pair, a, b);
    }
}

void tt_finish_joins(tt_reader *reader)
{
    tt_piece *piece = reader->piece;
    for (size_t i = 0; i < reader->joins.n; i++) {
        const tt_joins *joins = &reader->joins.at[i];
        tt_limb *limb = &piece->limbs.at[joins->limb];
        limb->joins = tt_place_named(reader, joins->node);
        if (limb->count > 0)
            add_arm(reader, joins->node, limb->joins, reader->drafts.at[limb->first].from);
    }
}
