/* piecefile/lumps.c - lumps (kg, m, m2 at full size) and stands. */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

/* mass = skin x bronze.wall x density, with the wall's low and high; no surface, no extra. */
static tt_given mass_of_skin(tt_reader *reader, const tt_node *node)
{
    const double area = tt_take_number(reader, node, tt_key_named(&tt_lump_map, "skin"));
    const tt_given *wall = &reader->bronze.said.wall;
    const tt_said_metal *alloy = &reader->bronze.said.alloy;
    if (!wall->origin || !alloy->said) {
        tt_wrong_key(reader, TT_D_KEY_MISSING, node, "bronze: {alloy: C87300, wall: 5 mm}",
                     "a skin needs alloy and wall of `bronze`");
        return (tt_given){0};
    }
    if (alloy->metal == TT_NONE) return (tt_given){0};
    const double per_wall = area * reader->piece->metals.at[alloy->metal].fact[TT_P_DENSITY].value;
    return (tt_given){per_wall * wall->is, per_wall * wall->low, per_wall * wall->high,
                      tt_origin_add(reader, node, node->kind == TT_SCALAR ? node->text : "",
                                    "skin x wall x density")};
}

static void lump_mass(tt_reader *reader, const tt_node *node, tt_lump *lump)
{
    const tt_node *skin = tt_tree_find(node, "skin"), *mass = tt_tree_find(node, "mass");
    if (skin && mass)
        tt_wrong_key(reader, TT_D_CONTRADICTION, skin, "keep one of the two",
                     "a lump has a mass or a skin");
    else if (skin)
        lump->mass = mass_of_skin(reader, skin);
    else if (!mass)
        tt_wrong_key(reader, TT_D_KEY_MISSING, node, "for example: mass: 3.5 kg",
                     "a lump lacks `mass` or `skin`");
}

/* Once, at the first mass without a reason. */
static void ask_about_scale(tt_reader *reader, const tt_node *mass)
{
    if (!mass || tt_tree_find(mass, "because") || !(reader->piece->scale > 1)) return;
    if (reader->mass_told) return;
    reader->mass_told = true;
    tt_tell(reader, TT_WARNING, TT_D_SCALE, mass, tt_key_place(mass),
            "where it is meant so: mass: {is: 38 kg, because: \"of the full size\"}",
            "masses of lumps are those of the full size; they do not follow the scale");
}

/* A lump has no outline, so a drag of its own replaces no coefficient and needs no reason. */
static void lump_drag(tt_reader *reader, const tt_node *node, tt_lump *lump)
{
    const tt_node *drag = tt_tree_find(node, "drag");
    if (drag) {
        const tt_given own = tt_take_given(reader, drag, tt_key_named(&tt_lump_map, "drag"));
        lump->drag = own.is;
        lump->origin = own.origin;
    } else if (lump->wind_area > 0.0) {
        lump->origin = tt_origin_default(
            reader, "lumps/drag", reader->us ? "2.0" : "1.8",
            "a body of unknown shape, as for an outline that has no coefficient of its own");
    } else {
        tt_origin_default(reader, "lumps/wind_area", "none", "a lump without one takes no wind");
    }
}

static void lump_inertia(tt_reader *reader, const tt_node *node, tt_lump *lump)
{
    const tt_node *inertia = tt_tree_find(node, "inertia");
    tt_vec3 about;
    if (!inertia || !tt_take_triple(reader, inertia, tt_key_named(&tt_lump_map, "inertia"), &about))
        return;
    lump->inertia[0] = about.x;
    lump->inertia[1] = about.y;
    lump->inertia[2] = about.z;
}

static bool taken(tt_reader *reader, const char *name)
{
    for (size_t i = 0; i < reader->piece->lumps.n; i++)
        if (strcmp(reader->piece->lumps.at[i].name, name) == 0) return true;
    return false;
}

void tt_read_lumps(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i], *name = tt_tree_find(entry, "name");
        tt_lump lump = {.name = "", .at = TT_NONE, .place = tt_keep_place(entry)};
        tt_enter(reader, name && name->kind == TT_SCALAR ? name->text : "lump");
        tt_walk(reader, entry, key->map, &lump);
        if (entry->kind == TT_MAPPING) lump_mass(reader, entry, &lump);
        ask_about_scale(reader, tt_tree_find(entry, "mass"));
        lump_drag(reader, entry, &lump);
        lump_inertia(reader, entry, &lump);
        if (name && lump.name && taken(reader, lump.name))
            tt_wrong(reader, TT_D_NAME_TWICE, name, "give it another name",
                     "there is a lump named `%.60s` already", lump.name);
        if (!tt_list_push(&reader->piece->lumps, lump)) reader->no_memory = true;
        tt_leave(reader);
    }
}

static void read_held(tt_reader *reader, const tt_node *entry, const tt_key *key, tt_stand *stand)
{
    const tt_node *node = tt_tree_find(entry, "held");
    if (!node) return;
    if (tt_is_word(node, "rests") || (node->kind == TT_MAPPING && !tt_tree_find(node, "is"))) {
        tt_wrong(reader, TT_D_KEY_UNREAD, node, "held: fixed, or held: pinned",
                 "a stand that rests, springs or is held in part is not read by this version");
        return;
    }
    const int word = tt_take_word(reader, node, key, key->words);
    if (word >= 0) stand->held = (tt_held)word;
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
        read_held(reader, entry, tt_key_named(key->map, "held"), &stand);
        if (sole) read_sole(reader, sole, tt_key_named(key->map, "sole"), &stand);
        if (at && held_already(reader->piece, stand.at))
            tt_wrong(reader, TT_D_NAME_TWICE, at, "keep one of the two",
                     "this place has a stand already");
        if (stand.at == TT_NONE) reader->holes = true;
        if (!tt_list_push(&reader->piece->stands, stand)) reader->no_memory = true;
        tt_leave(reader);
    }
}
