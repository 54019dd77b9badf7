/* piecefile/terms.c - the names of loads in a combination: those of the file, those that the
 * program computes, those that it knows and does not compute yet. Directions in degrees. */
#include "piecefile/reader.h"

#include <stdio.h>
#include <string.h>

typedef enum { STRANGE, COMPUTED, LATER } standing;

/* The text behind a first word and one blank; NULL: it does not begin so. */
static const char *behind(const char *name, const char *word)
{
    const size_t n = strlen(word);
    return strncmp(name, word, n) == 0 && name[n] == ' ' ? name + n + 1 : NULL;
}

/* The text behind a number from 0 to under 360 by steps, written plainly; NULL: no such number. */
static const char *behind_angle(const char *text, int by)
{
    for (int angle = 0; angle < 360; angle += by) {
        char again[8];
        const int n = snprintf(again, sizeof again, "%d", angle);
        const bool same = strncmp(again, text, (size_t)n) == 0;
        if (same && (text[n] == ' ' || !text[n])) return text + n;
    }
    return NULL;
}

static bool among(const char *text, const char *const *words)
{
    while (*words && strcmp(*words, text) != 0) words++;
    return *words != NULL;
}

/* "wind", "wind 90", "wind 90 turning left", "wind 90 flats", "wind 90 flats up middle". */
static standing of_wind(const char *name)
{
    static const char *const patterns[] = {" turning left",
                                           " turning right",
                                           " flats",
                                           " flats up middle",
                                           " flats up left",
                                           " flats up right",
                                           " flats down middle",
                                           " flats down left",
                                           " flats down right",
                                           NULL};
    if (strcmp(name, "wind") == 0) return COMPUTED;
    const char *angle = behind(name, "wind");
    const char *rest = angle ? behind_angle(angle, 10) : NULL;
    if (!rest) return STRANGE;
    return !*rest ? COMPUTED : among(rest, patterns) ? LATER : STRANGE;
}

/* The place of "climb PLACE toward 45" into `place`; false when the direction is none. */
static bool place_of(const char *text, char *place, size_t room)
{
    const char *toward = NULL;
    for (const char *at = strstr(text, " toward "); at; at = strstr(at + 1, " toward "))
        toward = at;
    const char *rest = toward ? behind_angle(toward + strlen(" toward "), 45) : "";
    const size_t n = toward ? (size_t)(toward - text) : strlen(text);
    snprintf(place, room, "%.*s", (int)n, text);
    return rest && !*rest;
}

static const char *of_person(const char *name)
{
    const char *climbs = behind(name, "climb");
    return climbs ? climbs : behind(name, "push");
}

/* Told when the place is none. */
static standing at_a_place(tt_reader *reader, const tt_node *term, const char *text)
{
    char place[120];
    if (!place_of(text, place, sizeof place)) return STRANGE;
    if (tt_piece_point(reader->piece, place) != TT_NONE) return LATER;
    tt_near near = tt_near_to(place);
    for (size_t i = 0; i < reader->piece->points.n; i++)
        tt_near_try(&near, reader->piece->points.at[i].name);
    tt_wrong_key(reader, TT_D_NAME_UNKNOWN, term,
                 tt_near_words(&near, "climb PLACE, or climb PLACE toward 45"),
                 "no place is named `%.60s`", place);
    return LATER;
}

static standing of_name(tt_reader *reader, const tt_node *term)
{
    static const char *const later[] = {"quake x", "quake y", "quake z", "ice", "snow",
                                        "heat",    "cold",    "water",   NULL};
    const char *name = term->key, *person = of_person(name);
    if (strcmp(name, "weight") == 0) return COMPUTED;
    for (size_t i = 0; i < reader->piece->loads.n; i++)
        if (strcmp(reader->piece->loads.at[i].name, name) == 0) return COMPUTED;
    if (person) return at_a_place(reader, term, person);
    return among(name, later) ? LATER : of_wind(name);
}

/* What under `site` the load comes from, where that is not there. */
static const char *missing(const tt_site *site, const char *name)
{
    const bool sun = site->heat.load.given || (!site->heat.load.ruled_out && !site->indoors);
    if (strncmp(name, "wind", 4) == 0) return site->wind.given ? NULL : "wind";
    if (strncmp(name, "quake", 5) == 0) return site->earthquake.load.given ? NULL : "earthquake";
    if (of_person(name)) return site->people.load.ruled_out ? "people" : NULL;
    if (strcmp(name, "ice") == 0) return site->ice.load.given ? NULL : "ice";
    if (strcmp(name, "snow") == 0) return site->snow.load.given ? NULL : "snow";
    if (strcmp(name, "heat") == 0 || strcmp(name, "cold") == 0) return sun ? NULL : "heat";
    if (strcmp(name, "water") == 0) return site->fills ? NULL : "water";
    return NULL;
}

static void tell_strange(tt_reader *reader, const tt_node *term)
{
    static const char *const made[] = {"weight", "wind", "quake x", "quake y", "quake z",
                                       "ice",    "snow", "heat",    "cold",    "water"};
    const char *name = term->key, *hint = NULL;
    tt_near near = tt_near_to(name);
    for (size_t i = 0; i < reader->piece->loads.n; i++)
        tt_near_try(&near, reader->piece->loads.at[i].name);
    for (size_t i = 0; i < sizeof made / sizeof *made; i++) tt_near_try(&near, made[i]);
    if (behind(name, "wind"))
        hint = "wind 0, wind 10, to wind 350, or wind; behind it turning left | right";
    else if (of_person(name))
        hint = "climb PLACE, or climb PLACE toward 0, 45, to 315";
    else
        hint = tt_near_words(&near, "weight, wind, wind 90, or a load of one's own");
    tt_wrong_key(reader, TT_D_NAME_UNKNOWN, term, hint, "no load is named `%.60s`", name);
}

bool tt_term_computed(tt_reader *reader, const tt_node *term)
{
    static const tt_consumer later = {
        "combination",
        "a load that this version does not compute; these loads together are left out", NULL, true,
        NULL};
    const standing is = of_name(reader, term);
    const char *lacks = is == STRANGE ? NULL : missing(&reader->piece->site, term->key);
    char hint[80];
    snprintf(hint, sizeof hint, "give `%s` under `site`", lacks ? lacks : "");
    if (is == STRANGE)
        tell_strange(reader, term);
    else if (lacks)
        tt_wrong_key(reader, TT_D_NAME_UNKNOWN, term, hint,
                     "there is no load `%.60s`: the site gives no %s", term->key, lacks);
    if (is == LATER) tt_wait(reader, term, &later);
    return is != LATER;
}
