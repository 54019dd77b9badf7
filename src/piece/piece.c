/* piece/piece.c - the record of a piece: its life, and look-up by name. */
#include "piece/works.h"
#include "base/alloc.h"

#include <string.h>

tt_piece *tt_piece_new(void)
{
    tt_piece *piece = tt_alloc(1, sizeof *piece);
    if (!piece) return NULL;
    piece->risk = 2;
    piece->scale = 1.0;
    piece->works = tt_pool_take(&piece->pool, 1, sizeof *piece->works);
    if (piece->works) piece->works->seams_metal = TT_NONE;
    if (piece->works && tt_list_push(&piece->origins, (tt_origin){.kind = TT_ORIGIN_NOWHERE}))
        return piece;
    return tt_piece_free(piece);
}

tt_piece *tt_piece_free(tt_piece *piece)
{
    if (!piece) return NULL;
    tt_list_clear(&piece->origins);
    tt_list_clear(&piece->metals);
    tt_list_clear(&piece->points);
    tt_list_clear(&piece->limbs);
    tt_list_clear(&piece->segments);
    tt_list_clear(&piece->arms);
    tt_list_clear(&piece->lumps);
    tt_list_clear(&piece->stands);
    tt_list_clear(&piece->loads);
    tt_list_clear(&piece->combinations);
    if (piece->works) tt_works_clear(piece->works);
    tt_list_clear(&piece->waiting);
    tt_pool_clear(&piece->pool);
    return tt_free(piece);
}

size_t tt_piece_point(const tt_piece *piece, const char *name)
{
    for (size_t i = 0; i < piece->points.n; i++) {
        if (strcmp(piece->points.at[i].name, name) == 0) return i;
    }
    return TT_NONE;
}

size_t tt_piece_segment(const tt_piece *piece, const char *name)
{
    for (size_t i = 0; i < piece->segments.n; i++) {
        if (strcmp(piece->segments.at[i].name, name) == 0) return i;
    }
    return TT_NONE;
}
