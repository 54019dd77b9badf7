/* tests/pieces.h - for tests that need a piece: a file of tests/ as text, and tt_piece_read on it.
 */
#ifndef TT_TESTS_PIECES_H
#define TT_TESTS_PIECES_H

#include "assert_close.h"
#include "piece/piece.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/** The text of a file under the root of the source, ended by a zero; the caller frees. */
static inline char *tt_test_text(const char *name)
{
    char path[1024];
    snprintf(path, sizeof path, "%s/%s", TT_ROOT, name);
    FILE *file = fopen(path, "rb");
    if (!file) fail_msg("%s cannot be opened", path);
    enum { MOST = 1 << 16 };
    char *text = calloc(MOST, 1);
    assert_non_null(text);
    const size_t n = fread(text, 1, MOST - 1, file);
    fclose(file);
    assert_in_range(n, 1, MOST - 2);
    return text;
}

static inline void tt_test_print(const tt_diags *diags)
{
    char words[2000];
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        tt_diag_print(tt_diags_at(diags, i), words, sizeof words);
        print_error("%s", words);
    }
}

/** A text that must be read without an error. */
static inline tt_piece *tt_test_piece_of(const char *text, const tt_changes *changes)
{
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    const tt_status status = tt_piece_read("test.yaml", text, strlen(text), changes, diags, &piece);
    if (status != TT_OK) tt_test_print(diags);
    tt_diags_free(diags);
    assert_int_equal(status, TT_OK);
    assert_non_null(piece);
    return piece;
}

static inline tt_piece *tt_test_piece(const char *name, const tt_changes *changes)
{
    char *text = tt_test_text(name);
    tt_piece *piece = tt_test_piece_of(text, changes);
    free(text);
    return piece;
}

/** A segment, a place by a name that must be there. */
static inline const tt_segment *tt_test_segment(const tt_piece *piece, const char *name)
{
    const size_t i = tt_piece_segment(piece, name);
    if (i == TT_NONE) fail_msg("no segment %s", name);
    return &piece->segments.at[i];
}

static inline tt_vec3 tt_test_place(const tt_piece *piece, const char *name)
{
    const size_t i = tt_piece_point(piece, name);
    if (i == TT_NONE) fail_msg("no place %s", name);
    return piece->points.at[i].at;
}

#endif
