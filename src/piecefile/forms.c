/* piecefile/forms.c - how the value of a key is written, in bits and in words, from its row of the
 * key table: for the reference page, the schema and the explanations. */
#include "piecefile/keys.h"

#include <string.h>

static unsigned by_what_there_is(const tt_key *key)
{
    const unsigned forms = (key->words ? TT_FORM_WORD : 0u) |
                           (key->least < key->most ? TT_FORM_QUANTITY : 0u) |
                           (key->map ? TT_FORM_MAP : 0u);
    return forms ? forms : TT_FORM_ANY;
}

unsigned tt_key_forms(const tt_key *key)
{
    static const unsigned forms[] = {[TT_KEY_TEXT] = TT_FORM_WORDS,
                                     [TT_KEY_WORD] = TT_FORM_WORD,
                                     [TT_KEY_FLAG] = TT_FORM_WORD,
                                     [TT_KEY_COUNT] = TT_FORM_COUNT,
                                     [TT_KEY_GIVEN] = TT_FORM_QUANTITY,
                                     [TT_KEY_SPREAD] = TT_FORM_QUANTITY | TT_FORM_SPREAD,
                                     [TT_KEY_NUMBER] = TT_FORM_QUANTITY,
                                     [TT_KEY_TRIPLE] = TT_FORM_TRIPLE,
                                     [TT_KEY_PLACE] = TT_FORM_PLACE,
                                     [TT_KEY_MAP] = TT_FORM_MAP};
    if (key->form) return key->form;
    const bool says = (size_t)key->kind < sizeof forms / sizeof *forms && forms[key->kind];
    return says ? forms[key->kind] : by_what_there_is(key);
}

bool tt_key_lists(const tt_key *key)
{
    return key->kind == TT_KEY_LIST || (key->map && tt_key_forms(key) & TT_FORM_TABLE);
}

const char *const *tt_key_words(const tt_key *key)
{
    static const char *const yes_no[] = {"yes", "no", NULL};
    return key->kind == TT_KEY_FLAG ? yes_no : key->words;
}

/* ---- in words ---- */

static void a_word(tt_text *out, const tt_key *key)
{
    const char *const *word = tt_key_words(key);
    for (size_t i = 0; word[i]; i++)
        tt_text_format(out, "%s`%s`", !i ? "" : word[i + 1] ? ", " : " or ", word[i]);
}

static void a_quantity(tt_text *out, const tt_key *key)
{
    if (key->dimension == TT_Q_PURE)
        tt_text_put(out, "number");
    else if (key->dimension == TT_Q_LENGTH)
        tt_text_put(out, "length, may be bare");
    else
        tt_text_format(out, "%s, with its unit", tt_kind_word(key->dimension));
}

static void a_pair(tt_text *out, const tt_key *key)
{
    tt_text_put(out, "two in brackets, each a ");
    a_quantity(out, key);
}

static void a_triple(tt_text *out, const tt_key *key)
{
    tt_text_put(out, "[x, y, z], each a ");
    a_quantity(out, key);
}

static void corners(tt_text *out, const tt_key *key)
{
    tt_text_put(out, "three corners or more, [x, y], each a ");
    a_quantity(out, key);
}

static void a_count(tt_text *out, const tt_key *key)
{
    tt_text_format(out, "whole number, %g to %g", key->least, key->most);
}

/* "a limb", or its link. */
static void map(tt_text *out, const tt_key *key, bool links)
{
    const char *title = key->map->title;
    if (!links) {
        tt_text_put(out, title);
        return;
    }
    tt_text_format(out, "[%s](#", title);
    for (; *title; title++) tt_text_fill(out, *title == ' ' ? '-' : *title, 1);
    tt_text_put(out, ")");
}

static void forms(tt_text *out, const tt_key *key, unsigned are, bool links)
{
    static const struct {
        tt_form form;
        const char *words;
        void (*say)(tt_text *out, const tt_key *key);
    } all[] = {{TT_FORM_WORDS, "words", NULL},
               {TT_FORM_WORD, NULL, a_word},
               {TT_FORM_PLACE, "name of a place", NULL},
               {TT_FORM_DATE, "a day such as 2026-11-25", NULL},
               {TT_FORM_COUNT, NULL, a_count},
               {TT_FORM_QUANTITY, NULL, a_quantity},
               {TT_FORM_PAIR, NULL, a_pair},
               {TT_FORM_TRIPLE, NULL, a_triple},
               {TT_FORM_CORNERS, NULL, corners},
               {TT_FORM_NAMES, "two names in brackets", NULL},
               {TT_FORM_ROWS, "rows", NULL},
               {TT_FORM_FACTORS, "names of loads, a number behind each", NULL},
               {TT_FORM_ANY, "as in the example", NULL}};
    const size_t start = out->n;
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        if (!(are & all[i].form)) continue;
        if (out->n > start) tt_text_put(out, ", or ");
        if (all[i].say)
            all[i].say(out, key);
        else
            tt_text_put(out, all[i].words);
    }
    if (!(are & TT_FORM_MAP)) return;
    tt_text_put(out, out->n > start ? ", or keys of " : "keys of ");
    map(out, key, links);
}

void tt_key_reads(tt_text *out, const tt_key *key, bool links)
{
    const unsigned are = tt_key_forms(key);
    if (tt_key_lists(key)) tt_text_put(out, "list; each entry: ");
    if (key->kind == TT_KEY_NAMES) tt_text_put(out, "names that you choose; behind each: ");
    forms(out, key, are, links);
    if (are & TT_FORM_SPREAD) tt_text_put(out, "; spread");
    if (are & TT_FORM_TABLE) tt_text_put(out, "; or the name of a table beside the file (CSV)");
}

/* ---- maps ---- */

bool tt_maps_gather(tt_maps *all, const tt_map *from)
{
    for (size_t m = 0; m < all->n; m++)
        if (all->map[m] == from) return true;
    if (all->n == TT_MOST_MAPS) return false;
    all->map[all->n++] = from;
    bool room = true;
    for (const tt_map *part = from; part; part = part->also)
        for (size_t i = 0; i < part->n; i++)
            if (part->key[i].map) room = tt_maps_gather(all, part->key[i].map) && room;
    return room;
}

/* No row of the table says it. */
const char *tt_map_note(const tt_map *of)
{
    static const struct {
        const tt_map *map;
        const char *words;
    } notes[] = {
        {&tt_units_map, "Or the unit alone: `units: mm`."},
        {&tt_scale_map, "Or the factor alone: `scale: 3.5`."},
        {&tt_wind_map, "Or `none`, which rules the wind out."},
        {&tt_limb_map, "Or the list of its rows alone."},
        {&tt_segment_map, "A new segment needs `from`, `to` and `outline`. With the name of a "
                          "segment that a limb made, the entry changes that one."},
        {&tt_outline_map, "One of `round`, `oval`, `box`, `girth`, `trace`, `numbers`; or `none`: "
                          "bare armature."},
        {&tt_numbers_map, "Axes are those of the segment; what lies between two ends is linear. A "
                          "wall and `surface` do not touch them, and under a `scale` they are "
                          "refused."},
        {&tt_member_map, "One of `tube`, `bar`, `box`, `flat`, `pipe`, with `offset` and `through` "
                         "where they are wanted; or `none`; or `choose`: judged without one, for "
                         "choosing the armature is not in this version."},
        {&tt_armature_map, "Or `choose`: what says nothing of its armature is judged without one, "
                           "for choosing the armature is not in this version. Left out, `loss` and "
                           "`wall_factor` follow from grade, site and basis."},
        {&tt_drag_map, "Or `none`: no wind on it."},
        {&tt_lump_map, "It needs a `mass` or a `skin`. Left out, `drag` is that of a body of "
                       "unknown shape in the basis."},
        {&tt_stand_map, "`held` is a word, or says direction by direction what cannot move, turn, "
                        "or gives as a spring."},
        {&tt_quake_map, "Or `none`. eu: `ag` with `ground` and `type`, or with `soil`; us: `ss`, "
                        "`s1` and `site_class`, or `sds` and `sd1`."},
        {&tt_people_map, "Or `{is: none, because: ...}`. Left out, these defaults hold."},
        {&tt_ice_map, "Or `none`."},
        {&tt_snow_map, "Or `none`."},
        {&tt_heat_map, "Or `none`. Left out, these defaults hold outdoors."},
        {&tt_combination_map,
         "Loads: those of the file, `weight`, `wind`, `wind 90`. Known, and not computed yet: "
         "`wind "
         "90 turning left`, `wind 90 flats up middle`, `quake x`, `climb PLACE toward 45`, `push "
         "PLACE`, `ice`, `snow`, `heat`, `cold`, `water`; loads together that use one are left out "
         "and told."},
        {&tt_load_map, "`at` with `force` or `moment`, or `along` with `force_per_length`."},
    };
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++)
        if (notes[i].map == of) return notes[i].words;
    return NULL;
}
