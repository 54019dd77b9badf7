/* yamlio/foreign.c - files that are no text at all, or a text of another age or another machine, by
 * their first bytes; and characters that look like others. */
#include "yamlio/foreign.h"

#include "base/text.h"

#include <string.h>

static const struct {
    const char *bytes;
    size_t n;
    const char *text, *hint;
} kinds[] = {
    {"PK\x03\x04", 4, "this is a file of an office program, not text",
     "export the table as CSV, or save it as plain text in UTF-8"},
    {"\xD0\xCF\x11\xE0", 4, "this is a file of an office program, not text",
     "export the table as CSV, or save it as plain text in UTF-8"},
    {"%PDF", 4, "this is a PDF, not text", "save it as plain text in UTF-8"},
    {"{\\rtf", 5, "this is a file of a word processor, not text", "save it as plain text in UTF-8"},
    {"\xFF\xFE", 2, "this text is UTF-16", "save it as UTF-8"},
    {"\xFE\xFF", 2, "this text is UTF-16", "save it as UTF-8"},
};

/* Every second byte of the beginning is zero: UTF-16 without its mark. */
static bool wide(const char *text, size_t length)
{
    enum { LOOKED_AT = 64 };
    size_t zeros = 0, n = length < LOOKED_AT ? length : LOOKED_AT;
    for (size_t i = 0; i < n; i++) zeros += text[i] == '\0';
    return n >= 4 && 3 * zeros >= n;
}

const char *tt_foreign(const char *text, size_t length, const char **hint)
{
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (length < kinds[i].n || memcmp(text, kinds[i].bytes, kinds[i].n) != 0) continue;
        *hint = kinds[i].hint;
        return kinds[i].text;
    }
    *hint = "save it as UTF-8";
    if (wide(text, length)) return "this text is UTF-16";
    *hint = "save it with line ends LF, or CR LF";
    const bool old = memchr(text, '\r', length) && !memchr(text, '\n', length);
    return old ? "the lines of this text end with CR alone" : NULL;
}

static const struct {
    const char *bytes, *name, *hint;
    bool first; /* only where a text begins with it: within one it may be meant */
} lookalikes[] = {
    {"\xC2\xA0", "no-break space", "type a plain blank", false},
    {"\xE2\x80\xAF", "narrow no-break space", "type a plain blank", false},
    {"\xE2\x80\x8B", "zero width space", "take it out", false},
    {"\xE2\x80\x9C", "curly quote", "type the straight quote \", or none", true},
    {"\xE2\x80\x9D", "curly quote", "type the straight quote \", or none", true},
    {"\xE2\x80\x9E", "curly quote", "type the straight quote \", or none", true},
    {"\xE2\x80\x98", "curly quote", "type the straight quote ', or none", true},
    {"\xE2\x80\x99", "curly quote", "type the straight quote ', or none", true},
    {"\xE2\x80\x93", "en dash", "type the minus as -", true},
    {"\xE2\x80\x94", "em dash", "type the minus as -", true},
};

const char *tt_lookalike(const char *text, bool anywhere, const char **hint, size_t *at)
{
    for (size_t i = 0; i < sizeof lookalikes / sizeof *lookalikes; i++) {
        const char *found = strstr(text, lookalikes[i].bytes);
        if (!found || (lookalikes[i].first && !anywhere && found != text)) continue;
        const char behind = found[strlen(lookalikes[i].bytes)];
        if (lookalikes[i].first && !anywhere && behind >= '0' && behind <= '9')
            continue; /* a minus: told where the number is read */
        *hint = lookalikes[i].hint;
        *at = tt_text_width(text, (size_t)(found - text));
        return lookalikes[i].name;
    }
    return NULL;
}
