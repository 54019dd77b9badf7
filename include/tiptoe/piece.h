/* tiptoe/piece.h - a piece file in, a piece out. */
#ifndef TIPTOE_PIECE_H
#define TIPTOE_PIECE_H

#include "tiptoe/diag.h"
#include "tiptoe/status.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tt_piece tt_piece; /* opaque: its parts form one connected figure that stands */

/** What the command line may change of a piece file. */
typedef struct {
    const char *scale;      /* text of --scale, or NULL */
    const char *const *set; /* texts of --set, KEY=VALUE */
    size_t sets;
} tt_changes;

/** Reads the text of a piece file. `file` is its name for messages ("-" for standard input).
 *  All problems found in one pass go to diags; TT_E_INPUT when one of them is an error, and then
 *  *piece is NULL. Lengths in the result are full size, SI. `changes` may be NULL.
 *  Text and name are copied; diags keeps pointing into the text only until this returns. */
tt_status tt_piece_read(const char *file, const char *text, size_t length,
                        const tt_changes *changes, tt_diags *diags, tt_piece **piece);

tt_piece *tt_piece_free(tt_piece *piece); /* takes NULL, returns NULL */

#ifdef __cplusplus
}
#endif
#endif
