/* piecefile/lumps.c - lumps: kg, m, m2 at full size. */
#include "piecefile/reader.h"

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

static void lump_plate(tt_reader *reader, const tt_node *node, tt_lump *lump)
{
    static const char *const words[] = {"no", "yes", NULL};
    const tt_node *plate = tt_tree_find(node, "plate");
    if (!plate) return;
    lump->plate = tt_take_word(reader, plate, tt_key_named(&tt_lump_map, "plate"), words) == 1;
    if (lump->plate && !tt_tree_find(node, "skin") && !(lump->wind_area > 0.0))
        tt_wrong_key(reader, TT_D_KEY_MISSING, plate, "for example: wind_area: 0.4 m2, or a skin",
                     "a plate lacks its area");
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
        lump_plate(reader, entry, &lump);
        if (name && lump.name && taken(reader, lump.name))
            tt_wrong(reader, TT_D_NAME_TWICE, name, "give it another name",
                     "there is a lump named `%.60s` already", lump.name);
        if (!tt_list_push(&reader->piece->lumps, lump)) reader->no_memory = true;
        tt_leave(reader);
    }
}
