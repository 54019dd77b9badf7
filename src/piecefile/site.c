/* piecefile/site.c - the site and its wind, limits; their defaults. m, m/s, kg, Hz. */
#include "piecefile/reader.h"

#define FAST_EU 40.0 /* m/s; a faster ten-minute mean is likely a gust: decision 9 of ours */
#define FAST_US (220 * 0.44704) /* m/s, 220 mph: assumption of this program */
#define SLOW_US                                                                                    \
    (85 * 0.44704) /* m/s, 85 mph; a slower gust is likely a mean or a service speed               \
                    */

static const char *const wind_keys[] = {"orography", "direction_factor", "season_factor", "air",
                                        "kd",        "elevation"};

/* Speeds of another definition differ by a factor: which one it is, where that was said; an unusual
 * one must say it. */
static void check_kind(tt_reader *reader, const tt_node *node, tt_site_wind *wind)
{
    const tt_key *key = tt_key_named(&tt_wind_map, "speed_is");
    const int word = tt_take_word(reader, node, key, key->words);
    if (word < 0) return;
    wind->speed_is = (tt_wind_speed)(word + TT_SPEED_MEAN);
    tt_origin_add(reader, node, key->words[word], NULL);
    if (reader->us && wind->speed_is == TT_SPEED_MEAN)
        tt_wrong(reader, TT_D_WHICH_SPEED, node, "speed_is: gust, with the gust of the map",
                 "basis us reads a gust of 3 s, not a mean");
    else if (!reader->us && wind->speed_is != TT_SPEED_MEAN)
        tt_wrong(reader, TT_D_WHICH_SPEED, node, "speed_is: mean, with the mean of the map",
                 "basis eu reads the mean of ten minutes, not a gust");
}

static void check_speed(tt_reader *reader, const tt_node *map, tt_site_wind *wind)
{
    const tt_node *speed = tt_tree_find(map, "basic_speed"), *kind = tt_tree_find(map, "speed_is");
    tt_enter(reader, "speed_is");
    if (kind) check_kind(reader, kind, wind);
    tt_leave(reader);
    if (kind || !speed) return;
    if (!reader->us && wind->basic_speed.is > FAST_EU)
        tt_wrong(reader, TT_D_WHICH_SPEED, speed,
                 "if it is the mean of ten minutes, once in 50 years, say speed_is: mean",
                 "a basic wind speed over 40 m/s: is it a gust?");
    if (reader->us && wind->basic_speed.is < SLOW_US)
        tt_wrong(
            reader, TT_D_WHICH_SPEED, speed,
            "say speed_is: gust, if it is the 3 s gust for strength; service, if of an old map",
            "a basic wind speed under 85 mph: is it a mean, or one of an old map?");
    if (reader->us && wind->basic_speed.is > FAST_US)
        tt_tell(reader, TT_WARNING, TT_D_WHICH_SPEED, speed, speed->place,
                "check its unit: 115 mph are 51 m/s",
                "a basic wind speed over 220 mph: no common map has one");
}

static void check_hill(tt_reader *reader, const tt_node *map)
{
    const tt_node *hill = tt_tree_find(map, "hill"), *orography = tt_tree_find(map, "orography");
    if (hill && orography && reader->us)
        tt_wrong_key(reader, TT_D_CONTRADICTION, hill, "keep one of the two",
                     "`hill` and `orography` say the same hill in two ways");
}

void tt_read_hill(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    int *kind = field;
    *kind = -1;
    tt_walk(reader, node, key->map, &reader->piece->site.wind);
    *kind += TT_HILL_RIDGE;
}

/* With a hill by its shape there is no factor to take by default. */
static void wind_defaults(tt_reader *reader, const tt_node *map, const tt_key *key,
                          tt_site_wind *wind)
{
    for (size_t i = 0; i < sizeof wind_keys / sizeof *wind_keys; i++)
        if (i > 0 || !wind->hill) tt_default(reader, map, key->map, wind_keys[i], wind);
    if (wind->hill) wind->orography = (tt_given){1, 1, 1, 0};
}

void tt_read_wind(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_site_wind *wind = &reader->piece->site.wind;
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    if (tt_is_word(value, "none")) {
        wind->ruled_out = true;
        wind->none_because = tt_keep(reader, because);
        tt_origin_add(reader, value, "none", because);
        return;
    }
    wind->given = value->kind == TT_MAPPING;
    tt_walk(reader, value, key->map, wind);
    if (!wind->given) return;
    if (reader->us) wind->exposure += 'B';
    check_speed(reader, value, wind);
    check_hill(reader, value);
    wind_defaults(reader, value, key, wind);
}

static void answers(tt_reader *reader, const tt_node *node, const tt_map *map, tt_site_draft *draft)
{
    tt_default(reader, node, map, "indoors", draft);
    tt_default(reader, node, map, "public", draft);
    reader->piece->site.indoors = draft->indoors == TT_YES;
    reader->piece->site.open_to_public = draft->open_to_public == TT_YES;
}

/* The map, or NULL where the file has none: then all is default. */
void tt_read_site(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_site_draft draft = {0};
    tt_site *site = &reader->piece->site;
    if (node) tt_walk(reader, node, key->map, &draft);
    site->base_height = draft.site.base_height;
    site->damping = draft.site.damping;
    site->fills = draft.water == TT_YES;
    tt_default(reader, node, key->map, "base_height", site);
    tt_default(reader, node, key->map, "damping", site);
    answers(reader, node, key->map, &draft);
}

void tt_read_limits(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_limits *limits = &reader->piece->limits;
    if (node) tt_walk(reader, node, key->map, limits);
    tt_default(reader, node, key->map, "use", limits);
    limits->has_mass = limits->mass.origin;
    limits->has_sway = limits->sway.origin;
    limits->has_frequency = limits->frequency.origin;
}
