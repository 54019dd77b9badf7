/* yamlio/encoding.h - is a text UTF-8 without control characters? For every text that comes in
 * from outside. */
#ifndef TT_YAMLIO_ENCODING_H
#define TT_YAMLIO_ENCODING_H

#include <stdbool.h>
#include <stddef.h>

/** Where reading stopped. */
typedef struct {
    size_t at;             /* byte */
    unsigned line, column; /* from 1, columns in characters */
    unsigned long code;    /* the character, when it is one */
    bool utf8;             /* the bytes are a character, but one that is refused */
} tt_stray;

/** False with the first stray byte or character. Allowed are tab, line feed, carriage return before
 *  line feed, and what prints; a byte order mark at the very beginning. Refused too: characters
 *  that end a line for YAML and for nobody else (U+0085, U+2028, U+2029). */
bool tt_encoding_check(const char *text, size_t length, tt_stray *stray);

#endif
