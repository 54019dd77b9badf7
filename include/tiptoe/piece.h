/* tiptoe/piece.h - a piece file in, a piece out. */
#ifndef TIPTOE_PIECE_H
#define TIPTOE_PIECE_H

#include "tiptoe/data.h"
#include "tiptoe/diag.h"
#include "tiptoe/status.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tt_piece tt_piece; /* opaque: its parts form one connected figure that stands */

/** Takes `n` bytes; returns 0 to go on, anything else to stop. */
typedef int tt_sink(void *user, const char *bytes, size_t n);

/** Hands the bytes of a file that stands beside the piece file, by the name that the piece file
 *  gives it, to the sink; returns 0, or anything else when the file cannot be read. */
typedef int tt_neighbour(void *user, const char *name, tt_sink *sink, void *to);

/** What the caller may change of a piece file, how files beside it are read, and what
 *  lies over the built-in tables. */
typedef struct {
    const char *scale;      /* text of --scale, or NULL */
    const char *const *set; /* texts of --set, KEY=VALUE */
    size_t sets;
    tt_neighbour *neighbour; /* NULL: a piece file that names a file beside it is refused */
    void *neighbour_user;
    const tt_data *data; /* rows of --data, or NULL; must outlive the piece */
    int rewritable;      /* 1: keep what tt_piece_write needs */
} tt_changes;

/** Reads the text of a piece file. `file` is its name for messages ("-" for standard input).
 *  All problems found in one pass go to diags; TT_E_INPUT when one of them is an error, and then
 *  *piece is NULL. Lengths in the result are full size, SI. `changes` may be NULL.
 *  Text and name are copied; diags keeps pointing into the text only until this returns. */
tt_status tt_piece_read(const char *file, const char *text, size_t length,
                        const tt_changes *changes, tt_diags *diags, tt_piece **piece);

/** Writes the piece as a piece file: what was said, with the changes and the tables beside it, and
 * no default; quantities in SI with every digit that counts. Reading it gives the same piece.
 *  TT_E_WRITE when the sink stops it, TT_E_INPUT for a piece that was not read with `rewritable`.
 */
tt_status tt_piece_write(const tt_piece *piece, tt_sink *sink, void *user);

tt_piece *tt_piece_free(tt_piece *piece); /* takes NULL, returns NULL */

#ifdef __cplusplus
}
#endif
#endif
