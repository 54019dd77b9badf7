/* base/text.c - growing text, width in characters, edit distance. */
#include "base/text.h"
#include "base/alloc.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void tt_text_clear(tt_text *text)
{
    tt_free(text->at);
    *text = (tt_text){0};
}

static bool room(tt_text *text, size_t more)
{
    if (text->failed) return false;
    if (text->n + more + 1 <= text->cap) return true;
    size_t cap = text->cap ? text->cap : 256;
    while (cap < text->n + more + 1) cap *= 2;
    char *grown = tt_realloc(text->at, cap, 1);
    if (!grown) {
        text->failed = true;
        return false;
    }
    text->at = grown;
    text->cap = cap;
    return true;
}

void tt_text_add(tt_text *text, const char *bytes, size_t n)
{
    if (!room(text, n)) return;
    if (n) memcpy(text->at + text->n, bytes, n);
    text->n += n;
    text->at[text->n] = '\0';
}

void tt_text_put(tt_text *text, const char *words)
{
    tt_text_add(text, words, strlen(words));
}

void tt_text_format(tt_text *text, const char *format, ...)
{
    char brief[256]; /* formatted once where it is short */
    va_list args, again;
    va_start(args, format);
    va_copy(again, args);
    const int length = vsnprintf(brief, sizeof brief, format, args);
    if (length >= 0 && (size_t)length < sizeof brief) {
        tt_text_add(text, brief, (size_t)length);
    } else if (length >= 0 && room(text, (size_t)length)) {
        vsnprintf(text->at + text->n, (size_t)length + 1, format, again);
        text->n += (size_t)length;
    }
    va_end(again);
    va_end(args);
}

void tt_text_fill(tt_text *text, char character, size_t width)
{
    if (!room(text, width)) return;
    memset(text->at + text->n, character, width);
    text->n += width;
    text->at[text->n] = '\0';
}

const char *tt_text_of(const tt_text *text)
{
    return text->at ? text->at : "";
}

/* RFC 3629 section 4 | FROM MEMORY. */
size_t tt_character(const unsigned char *text, size_t length, unsigned long *code)
{
    const unsigned lead = text[0];
    const size_t n = lead < 0x80   ? 1
                     : lead < 0xC2 ? 0
                     : lead < 0xE0 ? 2
                     : lead < 0xF0 ? 3
                     : lead < 0xF5 ? 4
                                   : 0;
    if (n == 0 || n > length) return 0;
    *code = n == 1 ? lead : lead & (0x7Fu >> n);
    for (size_t i = 1; i < n; i++) {
        if ((text[i] & 0xC0u) != 0x80u) return 0;
        *code = *code << 6 | (text[i] & 0x3Fu);
    }
    const bool overlong = (n == 3 && *code < 0x800) || (n == 4 && *code < 0x10000);
    const bool surrogate = *code >= 0xD800 && *code <= 0xDFFF;
    return overlong || surrogate || *code > 0x10FFFF ? 0 : n;
}

void tt_text_put_plain(tt_text *text, const char *words)
{
    const unsigned char *at = (const unsigned char *)words;
    for (size_t left = strlen(words); left > 0;) {
        unsigned long code = 0;
        const size_t n = tt_character(at, left, &code);
        const bool control = (code < 0x20 && code != '\t') || (code >= 0x7F && code < 0xA0);
        tt_text_add(text, n == 0 || control ? "?" : (const char *)at, n == 0 || control ? 1 : n);
        at += n ? n : 1;
        left -= n ? n : 1;
    }
}

size_t tt_text_width(const char *text, size_t bytes)
{
    size_t width = 0;
    for (size_t i = 0; i < bytes; i++) width += ((unsigned char)text[i] & 0xC0u) != 0x80u;
    return width;
}

size_t tt_text_distance(const char *a, const char *b, size_t most)
{
    enum { LONGEST = 63 };
    const size_t na = strlen(a), nb = strlen(b);
    if (na > LONGEST || nb > LONGEST || na > nb + most || nb > na + most) return most + 1;
    size_t row[LONGEST + 1];
    for (size_t j = 0; j <= nb; j++) row[j] = j;
    for (size_t i = 1; i <= na; i++) {
        size_t corner = row[0];
        row[0] = i;
        for (size_t j = 1; j <= nb; j++) {
            const size_t change = corner + (a[i - 1] != b[j - 1]);
            const size_t shift = 1 + (row[j] < row[j - 1] ? row[j] : row[j - 1]);
            corner = row[j];
            row[j] = change < shift ? change : shift;
        }
    }
    return row[nb] < most ? row[nb] : (row[nb] == most ? most : most + 1);
}
