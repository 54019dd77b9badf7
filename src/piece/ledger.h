/* piece/ledger.h - what the bronze of a piece weighs, part by part: by its outlines and walls, by
 * its wax, by the scales; which of them is taken, and how far it is open. kg, m.
 *
 * A part is a panel, a segment, or what panels leave of a segment. A part on the scales is known to
 * 3 %, from its wax to 10 % (assumptions of this program), otherwise by the spread of its walls.
 * The whole on the scales settles the sum: what its parts miss goes to them in the measure in which
 * each is open. */
#ifndef TT_PIECE_LEDGER_H
#define TT_PIECE_LEDGER_H

#include "piece/works.h"
#include "tiptoe/weigh.h"

typedef enum { TT_BY_GEOMETRY, TT_BY_WAX, TT_BY_SCALES } tt_weight_source;
extern const char *const tt_weight_source_word[]; /* "geometry", "wax", "scales" */

typedef struct {
    double is, low, high;
} tt_open;

typedef struct {
    const char *name;
    size_t panel; /* TT_NONE: a segment, or the rest of it */
    const tt_panel_part *of;
    size_t n;           /* segments it has a share of */
    tt_open estimate;   /* by geometry */
    double solid;       /* full to its outlines, heavy end; infinite where no outline tells it */
    double wax, scales; /* bronze by its wax, by the scales; 0: not weighed */
    tt_open alone;      /* by itself */
    tt_open taken;      /* as the whole settled it */
    tt_weight_source source;
    bool settled;        /* moved by the weight of the whole */
    double nominal_wall; /* mean, 0: solid */
    double wall;         /* mean wall that the taken weight implies; 0: none does */
    double thin_factor;  /* on the nominal walls: what strength counts on at most; up to 1 */
} tt_ledger_part;

/** The bronze of one segment, over its parts. */
typedef struct {
    tt_open estimate, taken;
    double solid;
    tt_weight_source source;
    double wall_factor; /* the least thin_factor of its parts */
    bool thin_by_wax;   /* by a wax */
} tt_ledger_segment;

typedef struct {
    tt_ledger_part *part;
    size_t parts;
    tt_ledger_segment *segment; /* [segments] */
    double armature;
    tt_open lumps;
    double whole;     /* all of it on the scales, the last word on the sum; 0: not weighed */
    tt_open by_parts; /* the total before the whole settled it */
    tt_open total;    /* bronze, armature, lumps */
    double least;     /* what the whole cannot be lighter than */
    const tt_weighing *too_light; /* the whole, when it is; NULL */
    double estimated;             /* total by geometry */
} tt_ledger;

/** In the pool; false without memory. */
bool tt_ledger_make(const tt_piece *piece, tt_pool *pool, tt_ledger *out);

/** The part that was weighed; NULL for the whole. */
tt_ledger_part *tt_ledger_part_of(const tt_ledger *ledger, const tt_weighing *weighing);

/** The bronze of a weighing, or that which its wax becomes. */
double tt_ledger_bronze(const tt_piece *piece, const tt_ledger *ledger,
                        const tt_weighing *weighing);

/** Fills the walls of a part from what was taken. */
void tt_ledger_imply_wall(const tt_piece *piece, tt_ledger_part *part);

/** A difference from the estimate that is told: over 15 % (common practice). */
#define TT_LEDGER_FLAG 0.15

/** What was taken over the estimate, less one. */
double tt_ledger_difference(const tt_ledger_part *part);

struct tt_weights {
    const tt_piece *piece; /* lent */
    tt_pool pool;
    tt_ledger ledger;
    tt_vec3 centre; /* of mass, m, of what is taken */
};

/** Was anything weighed that changes a weight? */
bool tt_piece_weighed(const tt_piece *piece);

#endif
