/* tiptoe/diag.h - diagnostics as values: place, severity, permanent number, words.
 * They are collected, sorted by place and printed by the caller; the library never prints. */
#ifndef TIPTOE_DIAG_H
#define TIPTOE_DIAG_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

typedef enum { TT_NOTE, TT_WARNING, TT_ERROR } tt_severity;

/** Where in a text. Lines and columns count from 1, columns in characters; 0 = no place. */
typedef struct {
    unsigned line, column;
    unsigned width; /* characters to underline, at least 1 when line > 0 */
} tt_place;

/** One diagnostic. All strings are lent by the list that holds it. */
typedef struct {
    const char *file;  /* name as given by the caller; may be NULL */
    const char *text;  /* what is wrong, one sentence, no full stop */
    const char *hint;  /* what was expected, with an example; may be NULL */
    const char *shown; /* the source line, without its end; may be NULL */
    tt_place place;
    tt_severity severity;
    unsigned number; /* permanent: printed as TT1234 */
} tt_diag;

typedef struct tt_diags tt_diags;

/** A new empty list, or NULL without memory. Keeps the first `most` errors (0: 50). */
tt_diags *tt_diags_new(size_t most);
tt_diags *tt_diags_free(tt_diags *diags); /* takes NULL, returns NULL */

size_t tt_diags_count(const tt_diags *diags);
size_t tt_diags_errors(const tt_diags *diags);
/** The i-th diagnostic in order of place, i < count. */
const tt_diag *tt_diags_at(const tt_diags *diags, size_t i);

/** One diagnostic as lines of text (file:line:column: severity TTnnnn: text, the line, a caret,
 *  the hint), in the buffer of the caller; returns the length needed, as snprintf does. */
size_t tt_diag_print(const tt_diag *diag, char *buffer, size_t size);

/** Edit distance between two short words, capped at `most` + 1; for "did you mean". */
size_t tt_text_distance(const char *a, const char *b, size_t most);

#ifdef __cplusplus
}
#endif
#endif
