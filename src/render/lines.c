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

/* The end of the word at `at`; a number takes the word behind it along, but no bracket. */
static const char *unit_end(const char *at)
{
    const char *end = word_end(at);
    while (end > at && number(at, end) && *blanks_end(end) && *blanks_end(end) != '[') {
        at = blanks_end(end);
        end = word_end(at);
    }
    return end;
}

/* Behind these a word may be broken; what a line never begins with. */
static const char joints[] = "-,;/", tails[] = ",;:.!?)";

static bool is_one(const char *of, char c)
{
    return c && strchr(of, c);
}

/* So much of a word that is longer than a line, at least one character: up to a hyphen or a comma
 * where there is one, and never so that the rest begins with a comma. */
static const char *cut(const char *text, size_t width)
{
    const char *good = text, *joint = text;
    for (const char *at = text; *at && !blank(*at); at++) {
        const bool inside = ((unsigned char)at[1] & 0xC0u) == 0x80u;
        if (inside) continue;
        if (tt_line_width(text, (size_t)(at + 1 - text)) > width && good > text) break;
        const bool first = good == text;
        if (is_one(tails, at[1]) && !first) continue;
        good = at + 1;
        if (is_one(joints, *at)) joint = good;
    }
    return joint > text ? joint : good;
}

/* What comes first on a line: a unit, else its first word, else a part of that. */
static const char *first_end(const char *text, size_t width)
{
    const char *at = blanks_end(text), *unit = unit_end(at), *word = word_end(at);
    if (tt_line_width(text, (size_t)(unit - text)) <= width) return unit;
    if (tt_line_width(text, (size_t)(word - text)) <= width) return word;
    return cut(at, width);
}

size_t tt_line_longest(const char *text)
{
    size_t longest = 0;
    for (const char *at = blanks_end(text); *at; at = blanks_end(word_end(at))) {
        const size_t width = tt_line_width(at, (size_t)(word_end(at) - at));
        if (width > longest) longest = width;
    }
    return longest;
}

size_t tt_line_fit(const char *text, size_t width, const char **next)
{
    const char *good = first_end(text, width);
    size_t taken = tt_line_width(text, (size_t)(good - text));
    for (const char *at = blanks_end(good); *at; at = blanks_end(good)) {
        const char *end = unit_end(at);
        taken += tt_line_width(good, (size_t)(end - good));
        if (taken > width) break;
        good = end;
    }
    *next = blanks_end(good);
    return (size_t)(good - text);
}

/* As it stands: neither bold nor tied nor blank. */
static bool plain(char c)
{
    return c != *TT_BOLD_ON && c != *TT_BOLD_OFF && c != *TT_TIE && !blank(c);
}

void tt_line_write(tt_text *out, const char *text, size_t bytes, const tt_text_style *style)
{
    for (size_t i = 0; i < bytes; i++) {
        size_t run = 0;
        while (i + run < bytes && plain(text[i + run])) run++;
        tt_text_add(out, text + i, run);
        i += run;
        if (i == bytes) break;
        if (text[i] == *TT_BOLD_ON)
            tt_text_put(out, style->bold ? "\033[1m" : "");
        else if (text[i] == *TT_BOLD_OFF)
            tt_text_put(out, style->bold ? "\033[0m" : "");
        else if (text[i] == *TT_TIE || i == 0 || !blank(text[i - 1]))
            tt_text_put(out, " ");
    }
}

static size_t left_of(size_t width, size_t taken)
{
    return width > taken ? width - taken : 1;
}

void tt_lines_write(tt_text *out, const char *text, const char *lead, size_t indent,
                    const tt_text_style *style)
{
    size_t width = left_of(style->width, strlen(lead));
    tt_text_put(out, lead);
    const char *at = blanks_end(text);
    if (!*at) tt_text_put(out, "\n");
    while (*at) {
        const char *next;
        tt_line_write(out, at, tt_line_fit(at, width, &next), style);
        tt_text_put(out, "\n");
        if (*next) tt_text_fill(out, ' ', indent);
        width = left_of(style->width, indent);
        at = next;
    }
}
