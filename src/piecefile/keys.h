/* piecefile/keys.h - the key table: one row a key of the piece file, one table a kind of map.
 * The reader walks the tree with it; schema, explanations and manual can come from it too.
 * Bounds are SI; dimension TT_Q_LENGTH is the one that may stand bare under `units`. */
#ifndef TT_PIECEFILE_KEYS_H
#define TT_PIECEFILE_KEYS_H

#include "quantity/quantity.h"
#include "yamlio/tree.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct tt_reader tt_reader;
typedef struct tt_key tt_key;
typedef struct tt_map tt_map;

/** What stands behind a key, and the type of its field in the record. */
typedef enum {
    TT_KEY_TEXT,   /* words as they are: const char * */
    TT_KEY_WORD,   /* one of `words`: int, its position */
    TT_KEY_FLAG,   /* yes | no: tt_answer */
    TT_KEY_COUNT,  /* whole number: int */
    TT_KEY_GIVEN,  /* one quantity, perhaps with a reason: tt_given */
    TT_KEY_SPREAD, /* a quantity with low and high: tt_given */
    TT_KEY_NUMBER, /* one quantity without a story: double */
    TT_KEY_TRIPLE, /* three quantities: tt_vec3 */
    TT_KEY_PLACE,  /* refers to a place: size_t */
    TT_KEY_LATER,  /* kept as it is, read once everything that it needs is there: const tt_node * */
    TT_KEY_MAP,    /* keys of its own: `map`; the record is that of the map around it */
    TT_KEY_LIST,   /* a list, read by `read` */
    TT_KEY_NAMES,  /* a map whose keys are names that it makes, read by `read` */
    TT_KEY_OWN     /* a shape of its own, read by `read`, without that by the code of its map */
} tt_key_kind;

typedef enum { TT_ANY_BASIS, TT_EU, TT_US } tt_key_basis;

/** How a value is written: bits, any of which will do. */
typedef enum {
    TT_FORM_WORDS = 1 << 0,    /* words as they are */
    TT_FORM_WORD = 1 << 1,     /* one of `words` */
    TT_FORM_PLACE = 1 << 2,    /* the name of a place */
    TT_FORM_DATE = 1 << 3,     /* 2026-11-25 */
    TT_FORM_COUNT = 1 << 4,    /* a whole number */
    TT_FORM_QUANTITY = 1 << 5, /* one quantity of `dimension` */
    TT_FORM_SPREAD = 1 << 6,   /* {is, low, high} of it */
    TT_FORM_PAIR = 1 << 7,     /* [quantity, quantity] */
    TT_FORM_TRIPLE = 1 << 8,   /* [quantity, quantity, quantity] */
    TT_FORM_CORNERS = 1 << 9,  /* a list of three or more pairs */
    TT_FORM_NAMES = 1 << 10,   /* [place, place] */
    TT_FORM_ROWS = 1 << 11,    /* the rows of a limb */
    TT_FORM_FACTORS = 1 << 12, /* names, a number behind each */
    TT_FORM_MAP = 1 << 13,     /* keys of `map` */
    TT_FORM_ANY = 1 << 14,     /* a form of its own, which the example shows */
    TT_FORM_TABLE = 1 << 15    /* or, in place of all that, the name of a table beside the file */
} tt_form;

/** What would use a key, and is not built yet: what is said by the key is kept and told under *not
 *  checked*; of the whole piece it stands there in place of the row of check/unchecked.c that has
 * the same check. */
typedef struct {
    const char *check, *why, *give; /* of the row; give may be NULL */
    bool needed;
    const char *unless; /* the word that asks for nothing: "none", "no"; NULL */
} tt_consumer;

/** Reads the value of a key into its field; problems go to the reader's diagnostics. */
typedef void tt_key_read(tt_reader *reader, const tt_node *node, const tt_key *key, void *field);

struct tt_key { // NOLINT(clang-analyzer-optin.performance.Padding): in the order of writing
    const char *name;
    tt_key_kind kind;
    size_t offset;      /* of the field in the record */
    tt_kind dimension;  /* of a quantity */
    double least, most; /* SI, both allowed; for `least` as written, for `most` at full size */
    double spread_low, spread_high; /* of a SPREAD without low and high: times the value; 0: none */
    int power;                      /* of the scale that multiplies it */
    bool required;
    tt_key_basis basis;
    const char *const *words; /* NULL-ended */
    const tt_map *map;        /* of a MAP, or of the entries of a LIST or NAMES */
    tt_key_read *read;
    const char *otherwise; /* left out: this value, read as if it had been written */
    const char *why;       /* the reason of that default */
    const char *doc;       /* one line */
    const char *example;
    unsigned form;      /* of LATER and OWN, and of each entry of LIST and NAMES: tt_form; 0: what
                           `words`, bounds and `map` say, else ANY */
    bool share; /* a number that is hardly ever over 1 */
    const char *reason; /* when its value needs a reason, in words; NULL: never */

    const tt_consumer *consumer; /* NULL: what is said by the key is used */
};

struct tt_map {
    const char *title; /* "bronze", "a limb" */
    const tt_key *key;
    size_t n;
    const tt_map *also; /* keys shared with other maps, fields in the same record; NULL none */
};

extern const tt_map tt_root_map, tt_scale_map, tt_units_map, tt_material_map, tt_bronze_map,
    tt_armature_map, tt_limb_map, tt_segment_map, tt_outline_map, tt_member_map, tt_numbers_map,
    tt_drag_map, tt_lump_map, tt_stand_map, tt_spring_map, tt_site_map, tt_wind_map, tt_hill_map,
    tt_quake_map, tt_quake_soil_map, tt_people_map, tt_ice_map, tt_snow_map, tt_heat_map,
    tt_cold_map, tt_load_map, tt_combination_map, tt_limits_map;
extern const tt_map tt_rack_map, tt_seam_map, tt_splice_map, tt_splice_weld_map,
    tt_splice_socket_map, tt_splice_flange_map, tt_splice_lug_map, tt_tie_map, tt_tie_weld_map,
    tt_hole_map, tt_base_map, tt_plate_map, tt_anchors_map, tt_tested_map, tt_concrete_map,
    tt_pedestal_map, tt_footing_map, tt_soil_map, tt_weighing_map, tt_hang_map;

/** Quantities that stand in lists, where no key names them: columns of a row, corners of a sole. */
extern const tt_key tt_coordinate, tt_row_girth, tt_row_wide, tt_row_deep, tt_sole_x, tt_direction,
    tt_fraction, tt_factor, tt_set_scale;

/** The editions of a basis, NULL-ended, the first the default. These words and the levels of a
 *  combination repeat those of the basis, which stands further down the house. */
const char *const *tt_editions(bool us);

/** How the value of a key is written; of a LIST or NAMES, each entry. */
bool tt_key_lists(const tt_key *key); /* a list of entries, perhaps in a table beside the file */
unsigned tt_key_forms(const tt_key *key);

/** The words that the value may be, NULL-ended; of a flag yes and no. */
const char *const *tt_key_words(const tt_key *key);

/** The same in words, as in "length, may be bare; spread", each map with a link to its table in
 *  Markdown when `links`. */
void tt_key_reads(tt_text *out, const tt_key *key, bool links);

/** What a map may be in short, or what its keys ask of each other; NULL: nothing. */
const char *tt_map_note(const tt_map *map);

enum { TT_MOST_MAPS = 60 };
typedef struct {
    const tt_map *map[TT_MOST_MAPS];
    size_t n;
} tt_maps;

/** A map and, behind it, those that its keys lead to; each once. False when there are too many. */
bool tt_maps_gather(tt_maps *all, const tt_map *map);

/** The row of this name in the map or those it shares; NULL: none. */
const tt_key *tt_key_named(const tt_map *map, const char *name);

#endif
