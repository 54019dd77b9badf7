/* render/lines.c - breaking text into lines by the width of its characters. */
#include "render/lines.h"

#include <string.h>

static bool blank(char c)
{
    return c == ' ' || c == '\n' || c == '\t';
}

size_t tt_line_width(const char *text, size_t bytes)
{
    size_t marks = 0;
    for (size_t i = 0; i < bytes; i++) marks += text[i] == *TT_BOLD_ON || text[i] == *TT_BOLD_OFF;
    return tt_text_width(text, bytes) - marks;
}

static const char *word_end(const char *at)
{
    while (*at && !blank(*at)) at++;
    return at;
}

static const char *blanks_end(const char *at)
{
    while (blank(*at)) at++;
    return at;
}

static bool number(const char *word, const char *end)
{
    return strspn(word, "+-0123456789." TT_BOLD_ON TT_BOLD_OFF) >= (size_t)(end - word);
}

/* The end of the word at `at`; a number takes the word behind it along. */
static const char *unit_end(const char *at)
{
    const char *end = word_end(at);
    while (end > at && number(at, end) && *blanks_end(end)) {
        at = blanks_end(end);
        end = word_end(at);
    }
    return end;
}

size_t tt_line_fit(const char *text, size_t width, const char **next)
{
    const char *good = unit_end(blanks_end(text));
    for (const char *at = blanks_end(good); *at; at = blanks_end(good)) {
        const char *end = unit_end(at);
        if (tt_line_width(text, (size_t)(end - text)) > width) break;
        good = end;
    }
    *next = blanks_end(good);
    return (size_t)(good - text);
}

void tt_line_write(tt_text *out, const char *text, size_t bytes, const tt_text_style *style)
{
    for (size_t i = 0; i < bytes; i++) {
        if (text[i] == *TT_BOLD_ON)
            tt_text_put(out, style->bold ? "\033[1m" : "");
        else if (text[i] == *TT_BOLD_OFF)
            tt_text_put(out, style->bold ? "\033[0m" : "");
        else if (!blank(text[i]))
            tt_text_add(out, text + i, 1);
        else if (i == 0 || !blank(text[i - 1]))
            tt_text_put(out, " ");
    }
}

void tt_lines_write(tt_text *out, const char *text, const char *lead, const tt_text_style *style)
{
    const size_t indent = strlen(lead);
    const size_t width = style->width > indent ? style->width - indent : 1;
    tt_text_put(out, lead);
    const char *at = blanks_end(text);
    if (!*at) tt_text_put(out, "\n");
    while (*at) {
        const char *next;
        tt_line_write(out, at, tt_line_fit(at, width, &next), style);
        tt_text_put(out, "\n");
        if (*next) tt_text_fill(out, ' ', indent);
        at = next;
    }
}
