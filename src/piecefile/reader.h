/* piecefile/reader.h - what the parts of the reader share: the piece that grows, the place in the
 * file, drafts of things that are finished only when all is read.
 * A value that could not be read is NaN, a reference that leads nowhere TT_NONE: both have been
 * told, and later looks at them stay silent. */
#ifndef TT_PIECEFILE_READER_H
#define TT_PIECEFILE_READER_H

#include "base/diags.h"
#include "piece/piece.h"
#include "piecefile/keys.h"

#define TT_LONGEST 200.0 /* m: a longer length is taken for a slip */
#define TT_SHORTEST 1e-5 /* m: as far as two places must lie apart */

typedef enum { TT_UNSAID, TT_NO, TT_YES } tt_answer;

/** What an entry of `materials` says; the metal stands first, so that keys find its facts. */
typedef struct {
    tt_metal metal;
    tt_answer stainless;
} tt_own_metal;

/** What was named or drawn for a limb or segment, if anything. */
typedef struct {
    bool said;
    size_t metal;
    const tt_node *node;
} tt_said_metal;
typedef struct {
    bool said;
    tt_member member;
    bool off; /* its offset was said */
    const tt_node *node, *through;
} tt_said_member;
typedef struct {
    bool said;
    tt_wind_on on;
    double drag;
    const char *because;
} tt_said_wind;
typedef struct {
    bool said;
    tt_vec3 to;
} tt_said_faces;

/** What may be said of a limb, of a segment, and in part of the bronze at large; a tt_given with
 *  origin 0 was not said. */
typedef struct {
    tt_given wall, wall_to, surface, extra, casting_quality, turn, turn_to;
    tt_given seam_along;
    tt_answer solid, open, climbable;
    tt_said_metal alloy;
    tt_said_member armature, armature_to;
    tt_said_wind wind;
    tt_said_faces faces;
} tt_said;

typedef struct {
    tt_said said; /* first: the shared keys write into it */
    int inspection;
} tt_bronze_draft;

typedef struct {
    tt_said said;
    const tt_node *rows, *joins;
} tt_limb_draft;

typedef struct {
    tt_site site; /* first */
    tt_answer indoors, open_to_public, water;
} tt_site_draft;

typedef struct {
    tt_numbers is;
    double width_y, width_z;
} tt_numbers_draft;

/** A segment of a limb or of the long form, before the piece's defaults are laid under it. */
typedef struct {
    tt_said said;
    const char *name;
    const tt_node *from_node, *to_node, *outline_node, *outline_to_node; /* long form */
    size_t from, to, limb, place_in_limb;
    tt_outline outline, outline_to;
    bool changed; /* an entry of `segments` was laid over it */
    const tt_node *node;
} tt_draft;

/** What made a place: its outline there, for rows that name it again. */
typedef struct {
    tt_outline outline;
    bool by_limb;
} tt_made;

/** A text beside the piece file that nodes come from. */
typedef struct {
    const char *text;    /* KEY=VALUE, or that of a file beside */
    const tt_node *root; /* of what it holds in the tree */
    const char *file;    /* the name of that file; NULL: --set */
} tt_set_entry;

typedef struct {
    size_t limb;
    const tt_node *node;
} tt_joins;

typedef struct {
    const tt_node *node;
    const tt_key *key;
} tt_later;

struct tt_reader {
    tt_piece *piece;
    tt_diags *diags;
    tt_pool trees; /* nodes, drafts' texts: given back at the end */
    const char *file, *text;
    size_t length;
    const tt_node *root;

    const char *step[24]; /* path to the key that is being read */
    size_t depth;
    const tt_key *defaulting; /* its default is being read: origins are of that kind */

    const tt_changes *changes; /* NULL: none */
    size_t errors;             /* that stood in diags before this file */
    bool scale_option;         /* --scale was given: the file's own is not used */
    double own_scale;          /* that the file says, whatever --scale says */
    double unit;               /* of a bare length, m; 0: bare lengths are refused */
    const char *unit_name;     /* its name; NULL */
    struct {
        size_t n; /* lengths without a unit, told once at the first of them */
        const tt_node *node;
        const tt_key *key;
    } bare;
    bool us;
    bool basis_lost;     /* a basis that is none, told: what belongs to one of the two is let be */
    const tt_data *data; /* rows of one's own over the catalogue; NULL */
    bool no_memory;
    bool holes; /* a part was dropped because of a fault: judging the whole would mislead */
    struct {
        size_t n; /* segments that the wall of the bronze at large fills, told once */
        const char *name, *end;
        const tt_node *node;
    } closed;
    bool no_alloy_told, no_wall_told, no_grade_told, loss_told, mass_told;

    tt_vec3 faces;
    tt_bronze_draft bronze;
    tt_said_metal grade;
    bool choose; /* `armature: choose`: whatever says nothing of its armature leaves it to `size` */
    tt_given loss, wall_factor;
    int form; /* of the armature that `size` looks for */
    tt_answer sealed;
    bool spread_told;      /* the default spread of walls stands among the origins */
    TT_LIST(tt_metal) own; /* `materials` */
    TT_LIST(tt_made) made; /* beside piece->points */
    TT_LIST(tt_draft) drafts;
    TT_LIST(tt_joins) joins;
    TT_LIST(tt_set_entry) sets;
    TT_LIST(tt_later) later;                /* keys of works.h */
    TT_LIST(const tt_node *) weighed;       /* entries of works->weighings */
    const tt_node *table_name, *table_rows; /* a table beside by its name, and what it holds */
};

/* ---- tell.c: diagnostics, origins, the path ------------------------------------------------- */

void tt_tell(tt_reader *reader, tt_severity severity, tt_number number, const tt_node *node,
             tt_place place, const char *hint, const char *format, ...)
    __attribute__((format(printf, 7, 8)));

/** An error at the value, at the key. */
#define tt_wrong(reader, number, node, hint, ...)                                                  \
    tt_tell(reader, TT_ERROR, number, node, (node)->place, hint, __VA_ARGS__)
#define tt_wrong_key(reader, number, node, hint, ...)                                              \
    tt_tell(reader, TT_ERROR, number, node, tt_key_place(node), hint, __VA_ARGS__)

/** Where the key stands; the value's place where there is no key. */
tt_place tt_key_place(const tt_node *node);
/** The place to keep in the record: none when it lies in a --set. */
tt_place tt_keep_place(const tt_node *node);
/** A value of another form than the key reads, with the key's example. */
void tt_wrong_shape(tt_reader *reader, const tt_node *node, const tt_key *key);

void tt_enter(tt_reader *reader, const char *step);
void tt_leave(tt_reader *reader);
const char *tt_path(tt_reader *reader);

/** Adds an origin for the key at the present path; 0 without memory (and the reader knows). */
unsigned tt_origin_add(tt_reader *reader, const tt_node *node, const char *written,
                       const char *why);
unsigned tt_origin_default(tt_reader *reader, const char *key, const char *written,
                           const char *why);
/** What stands at the node, under the present path, waits for its consumer: kept for *not checked*,
 *  once for each check, part and reason. Nothing where the node is the word that asks for nothing.
 */
void tt_wait(tt_reader *reader, const tt_node *node, const tt_consumer *consumer);
/** That the row `name` of one's own data was used for the key at the present path, told once for
 *  each row; nothing for a built-in row. */
void tt_origin_data(tt_reader *reader, const char *name, const tt_row_place *at,
                    const tt_source *source);
/** A copy in the piece's pool; NULL for NULL, "" without memory (and the reader knows). */
const char *tt_keep(tt_reader *reader, const char *text);

/** Nearest spellings: try every candidate, then ask for the words "did you mean …?". */
typedef struct {
    const char *word;
    const char *best[3];
    size_t distance[3];
    char words[200];
} tt_near;
tt_near tt_near_to(const char *word);
void tt_near_try(tt_near *near, const char *candidate);
/** The name of a segment: its two places the other way round go before all others. */
void tt_near_try_segment(tt_near *near, const char *candidate);
/** The one candidate that differs by a typing slip; NULL when none does, or several. */
const char *tt_near_only(const tt_near *near);
/** `otherwise` (may be NULL) when nothing is near. */
const char *tt_near_words(tt_near *near, const char *otherwise);

/* ---- faults.c: what is wrong with the text of a quantity ------------------------------------- */

/** Tells it; lengths of the file without a unit are counted first and told by tt_tell_bare. */
void tt_tell_fault(tt_reader *reader, const tt_node *node, const tt_key *key, const tt_quantity *q);
void tt_tell_bare(tt_reader *reader);
/** "`wall` must not be more than 200.0 m"; the bound SI. */
void tt_tell_bound(tt_reader *reader, const tt_node *node, const tt_key *key, double bound,
                   const char *words);
void tt_tell_not_positive(tt_reader *reader, const tt_node *node, const tt_key *key);

/* ---- bare.c: in whose units hints are written ------------------------------------------------ */

tt_unit_system tt_reader_system(const tt_reader *reader);
/** The key's example; in inches and pounds where the file is. */
const char *tt_example(tt_reader *reader, const tt_key *key);
/** What to write for a number without a unit: the units that the key reads it in. */
void tt_hint_at_unit(tt_reader *reader, const tt_node *node, const tt_key *key, char *hint,
                     size_t size);

/* ---- values.c: scalars and quantities -------------------------------------------------------- */

/** The value behind {is: V, because: …}, or the node itself; the reason in the trees' pool. */
const tt_node *tt_value(tt_reader *reader, const tt_node *node, const char **because);
double tt_take_number(tt_reader *reader, const tt_node *node, const tt_key *key);
tt_given tt_take_given(tt_reader *reader, const tt_node *node, const tt_key *key);
/** The factor of a quantity without a unit, 0 where it is refused. */
double tt_bare_unit(const tt_reader *reader, const tt_key *key);
/** A scalar's text, "" and told when it is none. */
const char *tt_take_text(tt_reader *reader, const tt_node *node, const tt_key *key);
/** Position among the words, -1 and told when it is none. */
int tt_take_word(tt_reader *reader, const tt_node *node, const tt_key *key,
                 const char *const *words);
bool tt_take_triple(tt_reader *reader, const tt_node *node, const tt_key *key, tt_vec3 *out);
bool tt_is_word(const tt_node *node, const char *word);
/** The same but for capitals; NULL is like nothing. */
bool tt_same_letters(const char *a, const char *b);

/* ---- neighbours.c: files beside the piece file ------------------------------------------------
 */

/** The table that the scalar names, rows of scalars that know their places in that file; NULL and
 *  told when there is none. */
tt_node *tt_neighbour_table(tt_reader *reader, const tt_node *node);

/** Its text alone, in reader->trees, or NULL, which has been told. */
const char *tt_neighbour_text(tt_reader *reader, const tt_node *node, size_t *length);

/* ---- walk.c: maps by their table ------------------------------------------------------------- */

/** Reads a map: unknown and unread keys are told, the others read in the order of the table, where
 *  there is a record to read into. */
void tt_walk(tt_reader *reader, const tt_node *node, const tt_map *map, void *record);
/** Puts the default of a key that is not in the map (which may be NULL) into the record. */
void tt_default(tt_reader *reader, const tt_node *node, const tt_map *map, const char *name,
                void *record);

/* ---- names ----------------------------------------------------------------------------------- */

/** Index of the place that the scalar names; TT_NONE and told when there is none. */
size_t tt_place_named(tt_reader *reader, const tt_node *node);
/** No place yet, and a limb further down makes it. */
bool tt_place_later(const tt_reader *reader, const char *name);
/** Adds a place; TT_NONE and told when the name is taken. */
size_t tt_place_add(tt_reader *reader, const tt_node *name, const char *text, tt_vec3 at,
                    const tt_made *made);
/** Index of a draft by name, TT_NONE when there is none. */
size_t tt_draft_named(const tt_reader *reader, const char *name);
/** Index in piece->metals of an own or a catalogue metal; TT_NONE and told when there is none. */
size_t tt_metal_use(tt_reader *reader, const tt_node *node, const char *name, tt_metal_kind kind);

/* ---- pipes.c: nominal sizes and outside diameters -------------------------------------------- */

/** "1.66 sch 80": the pipe of the table that is 1.66 in outside; false when there is none. */
bool tt_hint_outside(const tt_reader *reader, const char *name, char *hint, size_t size);
/** A tube whose diameter is the nominal size of a pipe with this wall; diameter and wall, m. */
void tt_doubt_nominal(tt_reader *reader, const tt_node *node, const double tube[2]);

/* ---- rows.c: slips in the rows of a limb ----------------------------------------------------- */

/** True and told when it begins with a number; when it alone among its like has no girth. */
bool tt_row_lacks_name(tt_reader *reader, const tt_node *rows, const tt_node *row);
bool tt_row_lacks_girth(tt_reader *reader, const tt_node *rows, const tt_node *row);
/** Two entries may be one number with a decimal comma: true, and how to write it. */
bool tt_row_comma(const tt_node *row, char *hint, size_t size);
void tt_doubt_commas(tt_reader *reader, const tt_node *rows);

/* ---- doubts.c: what can be and hardly ever is: warnings -------------------------------------- */

void tt_doubt(tt_reader *reader);                                               /* over the whole */
void tt_doubt_wall(tt_reader *reader, const tt_node *node, double wall);        /* in that map */
void tt_doubt_share(tt_reader *reader, const tt_node *node, const tt_key *key); /* 2 for 2 % */

/** Of an own metal, by what it is used for. */
void tt_doubt_metal(tt_reader *reader, const tt_metal *metal);

/* ---- shapes ---------------------------------------------------------------------------------- */

/** False when it could not be read (and told). */
bool tt_take_outline(tt_reader *reader, const tt_node *node, tt_outline *out);
bool tt_take_trace(tt_reader *reader, const tt_node *node, tt_outline *out);
/** Of a trace, or a box with rounded corners, the polygon from end to end, in the piece's pool. */
void tt_finish_trace(tt_reader *reader, const tt_draft *draft, tt_segment *segment);
/** Lays what is said more closely over what is said at large. */
void tt_said_over(tt_said *under, const tt_said *over);
/** Rules over what is said in one map: reasons due, a wall of what is solid. */
void tt_check_said(tt_reader *reader, const tt_node *node, const tt_said *said);
/** Drafts to segments, with the defaults. */
void tt_finish_segments(tt_reader *reader);
void tt_finish_joins(tt_reader *reader);
/** `through` in the armature of a limb: which of its drafts, from `first` on, the member is in. */
void tt_finish_through(tt_reader *reader, size_t first, size_t limb);
/** What is said of the armature, with grade, loss and wall factor. */
tt_member tt_finish_member(tt_reader *reader, const tt_draft *draft);

/** False when the load of this name is known and not computed yet, told as waiting. An unknown one
 * is told as wrong. Under the path of the term. */
bool tt_term_computed(tt_reader *reader, const tt_node *term);

/* ---- steps of tt_piece_read ------------------------------------------------------------------ */

/** Numbers that a comma cut in two, in braces, are put together again, so that the comma is told.
 */
void tt_join_commas(tt_reader *reader, tt_node *node);
bool tt_apply_sets(tt_reader *reader, tt_node *root, const tt_changes *changes);
void tt_read_scale_option(tt_reader *reader, const char *scale);
void tt_head_defaults(tt_reader *reader);
/** Of people and heat; once the places are there. */
void tt_site_defaults(tt_reader *reader);
void tt_rules(tt_reader *reader);
/** Warns where no row of the table holds the grade in the form that the armature has. */
void tt_check_grade(tt_reader *reader);
void tt_graph_rules(tt_reader *reader);

/* ---- readers named in the key table ---------------------------------------------------------- */

tt_key_read tt_read_units, tt_read_scale, tt_read_date, tt_read_basis, tt_read_edition,
    tt_read_front, tt_read_faces, tt_read_materials, tt_read_bronze, tt_read_alloy,
    tt_read_armature_head, tt_read_grade, tt_read_armature, tt_read_site, tt_read_wind,
    tt_read_segment_wind, tt_read_points, tt_read_limbs, tt_read_segments, tt_read_rigid,
    tt_read_lumps, tt_read_stands, tt_read_held, tt_read_ways, tt_read_earthquake,
    tt_read_yes_because, tt_read_on_building, tt_read_people, tt_read_ice, tt_read_snow,
    tt_read_heat, tt_read_hill, tt_read_loads, tt_read_combinations, tt_read_limits;

#endif
