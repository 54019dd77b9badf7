/* piece/where.c - a place along a segment in words that a sculptor would use. */
#include "piece/piece.h"
#include "base/text.h"

#include <math.h>

const char *tt_piece_where(const tt_piece *piece, tt_pool *pool, size_t index, double t)
{
    const tt_segment *segment = &piece->segments.at[index];
    const size_t near = t <= 0.5 ? segment->from : segment->to;
    const size_t far = t <= 0.5 ? segment->to : segment->from;
    const double away = (t <= 0.5 ? t : 1.0 - t) * tt_segment_length(piece, segment);
    const char *name = piece->points.at[near].name, *other = piece->points.at[far].name;
    if (away < 0.5e-3) return tt_pool_format(pool, "at %s, towards %s", name, other);
    tt_text distance = {0};
    tt_quantity_write(&distance, away, TT_Q_LENGTH, piece->report, 3);
    char *words = distance.failed ? NULL
                                  : tt_pool_format(pool, "%s from %s towards %s",
                                                   tt_text_of(&distance), name, other);
    tt_text_clear(&distance);
    return words;
}
