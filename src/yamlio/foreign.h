/* yamlio/foreign.h - files that are no text that is read here, and characters that look like
 * others. Used inside this module only. */
#ifndef TT_YAMLIO_FOREIGN_H
#define TT_YAMLIO_FOREIGN_H

#include <stdbool.h>
#include <stddef.h>

/** What a text that was refused is, with what to do; NULL: nothing is known of it. */
const char *tt_foreign(const char *text, size_t length, const char **hint);

/** A character of the text that is likely meant as another: its name, what to type, how many
 *  characters stand before it. NULL: there is none. Quotes and dashes inside a text may be meant:
 *  only one that it begins with counts, unless `anywhere`. */
const char *tt_lookalike(const char *text, bool anywhere, const char **hint, size_t *at);

/** Where the line begins, counted from 0; NULL behind the last. */
const char *tt_text_line(const char *text, size_t length, size_t line);

#endif
