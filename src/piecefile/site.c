/* piecefile/site.c - the site and its wind, limits; their defaults. m, m/s, kg, Hz. */
#include "piecefile/reader.h"

#define FAST_EU 40.0 /* m/s; a faster ten-minute mean is likely a gust: decision 9 of ours */
#define SLOW_US                                                                                    \
    (85 * 0.44704) /* m/s, 85 mph; a slower gust is likely a mean or a service speed               \
                    */

static const char *const wind_keys[] = {"orography", "direction_factor", "season_factor", "air",
                                        "kd",        "elevation"};

/* Speeds of another definition differ by a factor: unusual ones are asked about. */
static void question_speed(tt_reader *reader, const tt_node *speed)
{
    const double is = reader->piece->site.wind.basic_speed.is;
    if (!reader->us && is > FAST_EU)
        tt_tell(reader, TT_WARNING, TT_D_RANGE, speed, speed->place,
                "basis eu reads the ten-minute mean, once in 50 years",
                "a basic wind speed over 40 m/s: is it a gust?");
    if (reader->us && is < SLOW_US)
        tt_tell(reader, TT_WARNING, TT_D_RANGE, speed, speed->place,
                "basis us reads the 3 s gust for strength, of the map of the risk category",
                "a basic wind speed under 85 mph: is it a mean, or one of an old map?");
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
    const tt_node *speed = tt_tree_find(value, "basic_speed");
    if (speed) question_speed(reader, speed);
    for (size_t i = 0; i < sizeof wind_keys / sizeof *wind_keys; i++)
        tt_default(reader, value, key->map, wind_keys[i], wind);
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
