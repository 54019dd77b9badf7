/* piecefile/stands.c - stands: how a place is held (m, N/m, N.m/rad, global directions), and the
 * sole that stands on the ground (m, full size). */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

/* Directions by their letters, a list or one alone, into three flags. */
void tt_read_ways(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    bool *way = field;
    const bool list = node->kind == TT_SEQUENCE;
    for (size_t i = 0; i < (list ? node->n : 1); i++) {
        const int axis = tt_take_word(reader, list ? node->child[i] : node, key, key->words);
        if (axis >= 0) way[axis] = true;
    }
}

/* What rests is pressed on: held down's way only, and level where it rubs. */
static void rest_on(tt_reader *reader, const tt_node *node, tt_stand *stand)
{
    static const char *const others[] = {"move", "turn", "spring"};
    stand->held = TT_HELD_RESTS;
    for (size_t i = 0; i < 3 && node; i++) {
        const tt_node *other = tt_tree_find(node, others[i]);
        if (other)
            tt_wrong_key(reader, TT_D_CONTRADICTION, other, "keep one of the two",
                         "a stand that rests is not held by `%s` as well", others[i]);
    }
    stand->way[2] = true;
    stand->way[0] = stand->way[1] = stand->friction.origin && stand->friction.is > 0.0;
}

static void check_springs(tt_reader *reader, const tt_node *spring, const tt_stand *stand)
{
    for (size_t i = 0; i < tt_spring_map.n; i++) {
        const char *name = tt_spring_map.key[i].name;
        if (stand->way[i] && stand->spring[i].origin)
            tt_wrong_key(reader, TT_D_CONTRADICTION, tt_tree_find(spring, name),
                         "keep one of the two", "`%s`: this direction is held already", name);
    }
}

static void in_part(tt_reader *reader, const tt_node *node, const tt_key *key, tt_stand *stand)
{
    const tt_node *spring = tt_tree_find(node, "spring");
    tt_walk(reader, node, key->map, stand);
    if (tt_tree_find(node, "rests")) {
        rest_on(reader, node, stand);
        return;
    }
    stand->held = TT_HELD_IN_PART;
    bool any = false;
    for (int i = 0; i < 6; i++) any = any || stand->way[i] || stand->spring[i].origin;
    if (!any && !spring)
        tt_wrong(reader, TT_D_KEY_MISSING, node, "for example: held: {move: [x, y, z], turn: [x]}",
                 "this stand is held in no direction");
    if (spring && spring->kind == TT_MAPPING) check_springs(reader, spring, stand);
}

void tt_read_held(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_stand *stand = field;
    if (node->kind == TT_MAPPING && !tt_tree_find(node, "is")) {
        in_part(reader, node, key, stand);
        return;
    }
    const int word = tt_take_word(reader, node, key, key->words);
    if (word < 0) return;
    stand->held = (tt_held)word;
    if (word == TT_HELD_RESTS) {
        rest_on(reader, NULL, stand);
        return;
    }
    for (int i = 0; i < 6; i++) stand->way[i] = i < 3 || word == TT_HELD_FIXED;
}

static double twice_area(const tt_vec3 *at, size_t n)
{
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        const tt_vec3 a = at[i], b = at[(i + 1) % n];
        sum += a.x * b.y - b.x * a.y;
    }
    return sum;
}

static void read_sole(tt_reader *reader, const tt_node *node, const tt_key *key, tt_stand *stand)
{
    if (node->kind != TT_SEQUENCE || node->n < 3) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    tt_vec3 *at = tt_pool_take(&reader->piece->pool, node->n, sizeof *at);
    if (!at) reader->no_memory = true;
    for (size_t i = 0; at && i < node->n; i++) {
        const tt_node *corner = node->child[i];
        if (corner->kind != TT_SEQUENCE || corner->n != 2) {
            tt_wrong_shape(reader, corner, key);
            return;
        }
        at[i].x = tt_take_number(reader, corner->child[0], &tt_sole_x);
        at[i].y = tt_take_number(reader, corner->child[1], &tt_sole_x);
    }
    if (at && fabs(twice_area(at, node->n)) < 2 * TT_SHORTEST * TT_SHORTEST)
        tt_wrong(reader, TT_D_RANGE, node, key->example, "the sole has no area");
    stand->sole = at;
    stand->sole_n = at ? node->n : 0;
}

static bool held_already(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->stands.n; i++)
        if (point != TT_NONE && piece->stands.at[i].at == point) return true;
    return false;
}

void tt_read_stands(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i], *sole = tt_tree_find(entry, "sole");
        const tt_node *at = tt_tree_find(entry, "at");
        tt_stand stand = {.at = TT_NONE, .place = tt_keep_place(entry)};
        tt_enter(reader, at && at->kind == TT_SCALAR ? at->text : "stand");
        tt_walk(reader, entry, key->map, &stand);
        if (sole) read_sole(reader, sole, tt_key_named(key->map, "sole"), &stand);
        if (at && held_already(reader->piece, stand.at))
            tt_wrong(reader, TT_D_NAME_TWICE, at, "keep one of the two",
                     "this place has a stand already");
        if (stand.at == TT_NONE) reader->holes = true;
        if (!tt_list_push(&reader->piece->stands, stand)) reader->no_memory = true;
        tt_leave(reader);
    }
}
