/* base/diag_print.c - one diagnostic as lines of text: place and words, the line, a caret. */
#include "base/diags.h"
#include "base/text.h"

#include <stdio.h>
#include <string.h>

static const char *const severity_word[] = {"note", "warning", "error"};

static void head(tt_text *out, const tt_diag *diag)
{
    if (diag->file) {
        tt_text_put_plain(out, diag->file);
        tt_text_put(out, ":");
    }
    if (diag->place.line) tt_text_format(out, "%u:%u:", diag->place.line, diag->place.column);
    if (out->n) tt_text_put(out, " ");
    tt_text_format(out, "%s TT%04u: ", severity_word[diag->severity], diag->number);
    tt_text_put_plain(out, diag->text);
    tt_text_put(out, "\n");
}

/* Tabs of the shown line are kept in the row of the caret, so that it stands under its character.
 */
static void caret(tt_text *out, const tt_diag *diag, size_t bytes)
{
    const size_t width = tt_text_width(diag->shown, bytes);
    tt_text_put(out, "        | ");
    size_t column = 1;
    for (size_t i = 0; i < bytes && column < diag->place.column; i++) {
        if (((unsigned char)diag->shown[i] & 0xC0u) == 0x80u) continue;
        tt_text_put(out, diag->shown[i] == '\t' ? "\t" : " ");
        column++;
    }
    tt_text_put(out, "^");
    const size_t last = diag->place.column + (diag->place.width ? diag->place.width : 1) - 1;
    const size_t end = last < width ? last : width;
    if (end > diag->place.column) tt_text_fill(out, '~', end - diag->place.column);
    tt_text_put(out, "\n");
}

/* The line with its caret; of a very long line only the beginning, and nothing when the place is
 * not in it. */
static void shown(tt_text *out, const tt_diag *diag)
{
    enum { MOST = 500 };
    size_t bytes = strlen(diag->shown);
    if (bytes > MOST) bytes = MOST;
    while (bytes && ((unsigned char)diag->shown[bytes] & 0xC0u) == 0x80u) bytes--;
    if (diag->place.column > tt_text_width(diag->shown, bytes) + 1) return;
    tt_text line = {0};
    tt_text_add(&line, diag->shown, bytes);
    tt_text_format(out, "  %5u | ", diag->place.line);
    tt_text_put_plain(out, tt_text_of(&line));
    tt_text_put(out, "\n");
    caret(out, diag, bytes);
    tt_text_clear(&line);
}

size_t tt_diag_print(const tt_diag *diag, char *buffer, size_t size)
{
    tt_text out = {0};
    head(&out, diag);
    if (diag->shown && diag->shown[0]) shown(&out, diag);
    if (diag->hint) {
        tt_text_put(&out, "        ");
        tt_text_put_plain(&out, diag->hint);
        tt_text_put(&out, "\n");
    }
    const size_t n = out.n;
    if (size) {
        const size_t fits = n < size ? n : size - 1;
        if (fits) memcpy(buffer, out.at, fits);
        buffer[fits] = '\0';
    }
    tt_text_clear(&out);
    return n;
}
