/* piecefile/acts.c - what the site does to the piece beside the wind: earthquake, people, ice,
 * snow, heat; their rules and defaults. N, m, K, m/s, Pa, m/s2. */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

#define CLIMBED 0.5 /* m: nobody hangs on a lower piece; assumption of this program */
#define ELASTIC 1.5 /* q; more asks for ductility: decision 11 of ours */

/* `none` rules the load out; else a map, read into the record. */
static const tt_node *read_load(tt_reader *reader, const tt_node *node, const tt_key *key,
                                tt_site_load *load, void *record)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    if (tt_is_word(value, "none")) {
        load->ruled_out = true;
        tt_origin_add(reader, value, "none", because);
        return NULL;
    }
    load->given = value->kind == TT_MAPPING;
    if (!load->given)
        tt_wrong_shape(reader, value, key);
    else
        tt_walk(reader, value, key->map, record);
    return load->given ? value : NULL;
}

static void map_defaults(tt_reader *reader, const tt_node *node, const tt_map *map, void *record)
{
    for (size_t i = 0; i < map->n; i++)
        if (map->key[i].otherwise) tt_default(reader, node, map, map->key[i].name, record);
}

/* yes with its reason; no needs none. */
void tt_read_yes_because(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    static const char *const words[] = {"no", "yes", NULL};
    const char *because;
    const int word = tt_take_word(reader, node, key, words);
    tt_value(reader, node, &because);
    *(bool *)field = word == 1;
    if (word == 1 && !because)
        tt_wrong(reader, TT_D_REASON_DUE, node, key->example, "`%s` needs a reason", key->name);
}

/* ---- earthquake ---- */

void tt_read_on_building(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_site_quake *quake = &reader->piece->site.earthquake;
    *(bool *)field = true;
    tt_walk(reader, node, key->map, quake);
    if (quake->building_at.is > quake->building_roof.is)
        tt_wrong(reader, TT_D_ABOVE_ROOF, node, key->example,
                 "it stands at %.4g m, above the roof at %.4g m", quake->building_at.is,
                 quake->building_roof.is);
}

/* Two ways to say one thing: the keys of one, or of the other. */
static void either(tt_reader *reader, const tt_node *node, const char *const one[3],
                   const char *const other[3], const char *hint)
{
    const tt_node *first = NULL, *second = NULL;
    const char *lacks[2] = {NULL, NULL};
    for (int i = 0; i < 3; i++) {
        const tt_node *a = one[i] ? tt_tree_find(node, one[i]) : NULL;
        const tt_node *b = other[i] ? tt_tree_find(node, other[i]) : NULL;
        if (a && !first) first = a;
        if (b && !second) second = b;
        if (one[i] && !a && !lacks[0]) lacks[0] = one[i];
        if (other[i] && !b && !lacks[1]) lacks[1] = other[i];
    }
    if (first && second)
        tt_wrong_key(reader, TT_D_TWO_SPECTRA, second, "keep one of the two",
                     "`%s` and `%s` say the same ground in two ways", first->key, second->key);
    else if (!first && !second)
        tt_wrong_key(reader, TT_D_KEY_MISSING, node, hint, "earthquake lacks `%s`, or `%s`", one[0],
                     other[0]);
    else if (lacks[first ? 0 : 1])
        tt_wrong_key(reader, TT_D_KEY_MISSING, node, hint, "earthquake lacks `%s`",
                     lacks[first ? 0 : 1]);
}

static void check_soil(tt_reader *reader, const tt_node *soil, const tt_site_quake *quake)
{
    if (!soil || soil->kind != TT_MAPPING) return;
    if (quake->tb.is > quake->tc.is || quake->tc.is > quake->td.is)
        tt_wrong(reader, TT_D_SPECTRUM, soil, "soil: {s: 1.15, tb: 0.2 s, tc: 0.6 s, td: 2 s}",
                 "tb, tc and td do not follow one another");
}

static void check_ductility(tt_reader *reader, const tt_node *node, const tt_site_quake *quake)
{
    static const char give[] = "detailing: {is: yes, because: \"drawn by the engineer\"}";
    const tt_node *q = tt_tree_find(node, "q"), *row = tt_tree_find(node, "row");
    if (quake->detailing) return;
    if (q && quake->q.is > ELASTIC)
        tt_wrong(reader, TT_D_DETAILING, q, give, "q over %g asks for an armature that gives",
                 ELASTIC);
    if (row && quake->row == 1)
        tt_wrong(reader, TT_D_DETAILING, row, give,
                 "a monument's R asks for an armature that gives");
}

/* BC, CD and DE came with the later edition. */
static void check_class(tt_reader *reader, const tt_node *map, const tt_site_quake *quake)
{
    const tt_node *node = tt_tree_find(map, "site_class");
    const char *edition = reader->piece->edition ? reader->piece->edition : tt_editions(true)[0];
    const bool between = quake->site_class == 2 || quake->site_class == 4 || quake->site_class == 6;
    if (node && between && strcmp(edition, tt_editions(true)[0]) == 0)
        tt_wrong(reader, TT_D_CONTRADICTION, node, "the softer class of the two, or edition: 7-22",
                 "edition %s knows no such site class", edition);
}

void tt_read_earthquake(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    static const char *const eu[2][3] = {{"ground", "type"}, {"soil"}};
    static const char *const us[2][3] = {{"ss", "s1", "site_class"}, {"sds", "sd1"}};
    (void)field;
    tt_site_quake *quake = &reader->piece->site.earthquake;
    quake->ground = quake->site_class = -1;
    const tt_node *map = read_load(reader, node, key, &quake->load, quake);
    if (!map) return;
    if (reader->us)
        either(reader, map, us[0], us[1], "ss: 1.5, s1: 0.6, site_class: D; or sds: 1.0, sd1: 0.6");
    else
        either(reader, map, eu[0], eu[1],
               "ground: C, type: 1; or soil: {s: 1.15, tb: 0.2 s, tc: 0.6 s, td: 2 s}");
    check_soil(reader, tt_tree_find(map, "soil"), quake);
    check_class(reader, map, quake);
    check_ductility(reader, map, quake);
    map_defaults(reader, map, key->map, quake);
}

/* ---- people, ice, snow, heat ---- */

void tt_read_people(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    const char *because;
    tt_site_people *people = &reader->piece->site.people;
    const tt_node *value = tt_value(reader, node, &because);
    read_load(reader, node, key, &people->load, people);
    if (people->load.ruled_out && !because)
        tt_wrong(reader, TT_D_REASON_DUE, value,
                 "people: {is: none, because: \"on a roof that is locked\"}",
                 "`people: none` needs a reason");
}

void tt_read_ice(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_site_ice *ice = &reader->piece->site.ice;
    read_load(reader, node, key, &ice->load, ice);
}

void tt_read_snow(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_site_snow *snow = &reader->piece->site.snow;
    read_load(reader, node, key, &snow->load, snow);
}

/* Decision: cold is as much as heat, unless it is given or nothing is. */
static void as_cold_as_hot(tt_reader *reader, tt_given *cold, const tt_given *hot, const char *key)
{
    if (cold->origin) return;
    *cold = (tt_given){-hot->is, -hot->is, -hot->is, 0};
    cold->origin =
        tt_origin_default(reader, key, "as much as in the heat",
                          "a heat of one's own, and no cold: assumption of this program");
}

void tt_read_heat(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_site_heat *heat = &reader->piece->site.heat;
    const tt_node *map = read_load(reader, node, key, &heat->load, heat);
    if (!map) return;
    map_defaults(reader, map, key->map, heat);
    as_cold_as_hot(reader, &heat->bronze[1], &heat->bronze[0], "site/heat/cold/bronze");
    as_cold_as_hot(reader, &heat->armature[1], &heat->armature[0], "site/heat/cold/armature");
}

/* ---- what nobody said, once the places are known ---- */

static double tallest(const tt_piece *piece)
{
    double low = INFINITY, top = -INFINITY;
    for (size_t i = 0; i < piece->points.n; i++) {
        low = fmin(low, piece->points.at[i].at.z);
        top = fmax(top, piece->points.at[i].at.z);
    }
    return top - low;
}

static void climbers(tt_reader *reader, const tt_node *map)
{
    tt_site_people *people = &reader->piece->site.people;
    if ((map && tt_tree_find(map, "climb")) || tallest(reader->piece) > CLIMBED)
        tt_default(reader, map, &tt_people_map, "climb", people);
    else
        people->climb.origin =
            tt_origin_default(reader, "site/people/climb", "none",
                              "nobody hangs on a piece of 0.5 m: assumption of this program");
}

static void default_people(tt_reader *reader, const tt_node *node)
{
    tt_site_people *people = &reader->piece->site.people;
    const char *because;
    const tt_node *value = node ? tt_value(reader, node, &because) : NULL;
    const tt_node *map = value && value->kind == TT_MAPPING ? value : NULL;
    const tt_node nobody = {.kind = TT_SCALAR, .text = ""};
    if (people->load.ruled_out) return;
    tt_enter(reader, "people");
    climbers(reader, map);
    for (size_t i = 1; i < tt_people_map.n; i++)
        tt_default(reader, map, &tt_people_map, tt_people_map.key[i].name, people);
    if (!people->load.given)
        tt_wait(reader, &nobody, tt_key_named(&tt_site_map, "people")->consumer);
    tt_leave(reader);
}

static void default_heat(tt_reader *reader)
{
    tt_site_heat *heat = &reader->piece->site.heat;
    const tt_node sun = {.kind = TT_SCALAR, .text = ""};
    if (heat->load.ruled_out || heat->load.given || reader->piece->site.indoors) return;
    tt_enter(reader, "heat");
    map_defaults(reader, NULL, &tt_heat_map, heat);
    tt_enter(reader, "cold");
    map_defaults(reader, NULL, &tt_cold_map, heat);
    tt_leave(reader);
    tt_wait(reader, &sun, tt_key_named(&tt_site_map, "heat")->consumer);
    tt_leave(reader);
}

void tt_site_defaults(tt_reader *reader)
{
    const tt_node *site = tt_tree_find(reader->root, "site");
    tt_enter(reader, "site");
    default_people(reader, site ? tt_tree_find(site, "people") : NULL);
    default_heat(reader);
    tt_leave(reader);
}
