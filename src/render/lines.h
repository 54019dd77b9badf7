/* render/lines.h - breaking text into lines by the width of its characters, and tables. */
#ifndef TT_RENDER_LINES_H
#define TT_RENDER_LINES_H

#include "render/render.h"

/* Marks inside a text to be broken: they take no width. Input holds no control characters. */
#define TT_BOLD_ON "\001"
#define TT_BOLD_OFF "\002"

/** Characters of a text of `bytes` bytes on paper: marks count nothing. */
size_t tt_line_width(const char *text, size_t bytes);

/** How many bytes of the text go on a line of `width` characters, at least one character; *next:
 *  where the line after it begins (the end of the text when there is none). A number stays with the
 *  word behind it; a word that is longer than a line is broken. */
size_t tt_line_fit(const char *text, size_t width, const char **next);

/** The width of the longest stretch of a text that no line breaks unless it has to. */
size_t tt_line_longest(const char *text);

/** Writes bytes of a line: any blank or tie as one space, marks as escape sequences or not at all.
 */
void tt_line_write(tt_text *out, const char *text, size_t bytes, const tt_text_style *style);

/** A wrapped text; the first line starts with `lead`, the others with `indent` blanks, no fewer. */
void tt_lines_write(tt_text *out, const char *text, const char *lead, size_t indent,
                    const tt_text_style *style);

void tt_table_write(tt_text *out, const tt_block *table, const tt_text_style *style);

#endif
