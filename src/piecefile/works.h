/* piecefile/works.h - what the readers of seams, splices, base and weighings share: drafts that are
 * wider than their records, and their functions in the key table. They run once every segment is
 * there. */
#ifndef TT_PIECEFILE_WORKS_H
#define TT_PIECEFILE_WORKS_H

#include "piece/works.h"
#include "piecefile/reader.h"

typedef struct {
    tt_seam seam;
    int kind, at_large; /* positions among the words; -1 not said */
    const tt_node *between;
} tt_seam_draft;

typedef struct {
    tt_rack_item item;
    tt_said_metal grade;
} tt_rack_draft;

typedef struct {
    tt_base base; /* first */
    tt_answer cracked;
} tt_base_draft;

typedef struct {
    tt_weighing weighing;
    tt_given wax, bronze;
    size_t segment, panel; /* TT_NONE: not said, or told */
    tt_answer whole;
} tt_weighing_draft;

/** A key that is read when all segments are there: kept until then. */
tt_key_read tt_read_later;
/** Reads what was kept, in the order of the table, and what is left out. */
void tt_read_works(tt_reader *reader);

/** Index of the segment that the scalar names; TT_NONE and told when there is none (not told where
 *  a part was dropped for a fault of its own). */
size_t tt_segment_named(tt_reader *reader, const tt_node *node);
/** Two segments that meet at the place; false and told when they do not. */
bool tt_take_between(tt_reader *reader, const tt_node *node, size_t at, size_t out[2]);
/** tt_walk of an entry of a list, which is named in the path by its place, segment or panel. */
void tt_walk_entry(tt_reader *reader, const tt_node *entry, const tt_map *map, void *record);
/** `a` of `b` and so on: one of them, exactly, else told. */
const tt_node *tt_one_of(tt_reader *reader, const tt_node *node, const char *const *names,
                         const char *hint);

/** One file a subject. */
tt_key_read tt_read_rack, tt_read_seams, tt_read_splices, tt_read_attach, tt_read_holes,
    tt_read_base, tt_read_panels, tt_read_weighed, tt_read_handling;
/** The piece file written out again, into piece->written. */
void tt_write_again(tt_reader *reader);
void tt_seams_left_out(tt_reader *reader);
/** Height over ground by plate and pedestal, where no other was said. */
void tt_base_height(tt_reader *reader);
/** Over what was weighed, once the ledger can be made: weights that cannot be, walls for strength.
 */
void tt_weighed_rules(tt_reader *reader);
/** A limb or a lump where something to weigh is due: told with what it takes, else false. */
bool tt_weighed_instead(tt_reader *reader, const tt_node *node);

/* Readers of single keys. */
tt_key_read tt_read_segment_name, tt_read_panel_name, tt_read_between, tt_read_inner, tt_read_bolts,
    tt_read_weighed_segment, tt_read_size, tt_read_plate_grade, tt_read_rod, tt_read_corners,
    tt_read_plumb, tt_read_hangs;

extern const tt_key tt_panel_share, tt_rod_diameter, tt_bolt_circle;

#endif
