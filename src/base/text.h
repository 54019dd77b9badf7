/* base/text.h - a text that grows. Failure to grow is remembered, so that a writer may append
 * without asking each time and ask once at the end. */
#ifndef TT_BASE_TEXT_H
#define TT_BASE_TEXT_H

#include "tiptoe/diag.h" /* tt_text_distance */

#include <stdbool.h>
#include <stddef.h>

typedef struct {
    char *at; /* zero-ended once anything was added; NULL before */
    size_t n, cap;
    bool failed; /* memory ran out somewhere */
} tt_text;

void tt_text_clear(tt_text *text);
void tt_text_add(tt_text *text, const char *bytes, size_t n);
void tt_text_put(tt_text *text, const char *words);
void tt_text_format(tt_text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
/** `width` times the character. */
void tt_text_fill(tt_text *text, char character, size_t width);

/** The text, "" when empty. */
const char *tt_text_of(const tt_text *text);

/** The bytes of the UTF-8 character at `text`, of `length` bytes in all, and its code; 0 when there
 *  is none. */
size_t tt_character(const unsigned char *text, size_t length, unsigned long *code);

/** Words of a stranger for a terminal: control characters but the tab (C1 among them) and bytes
 * that are not UTF-8 become '?'. */
void tt_text_put_plain(tt_text *text, const char *words);

/** Characters (not bytes) of a UTF-8 text of `bytes` bytes. */
size_t tt_text_width(const char *text, size_t bytes);

#endif
