/* yamlio/encoding.c - whether a text is UTF-8, and which characters a piece file may hold. */
#include "yamlio/encoding.h"

#include "base/text.h"

static bool printable(unsigned long code)
{
    if (code == '\t' || code == '\n') return true;
    if (code < 0x20 || (code >= 0x7F && code < 0xA0)) return false;
    const bool breaks = code == 0x2028 || code == 0x2029;
    const bool turns = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    return !breaks && !turns && code != 0xFEFF && (code & 0xFFFE) != 0xFFFE;
}

bool tt_encoding_check(const char *text, size_t length, tt_stray *stray)
{
    const unsigned char *bytes = (const unsigned char *)text;
    tt_stray here = {.line = 1, .column = 1};
    while (here.at < length) {
        here.code = 0;
        const size_t n = tt_character(bytes + here.at, length - here.at, &here.code);
        const bool mark = here.at == 0 && here.code == 0xFEFF;
        const bool ends = here.code == '\r' && here.at + 1 < length && text[here.at + 1] == '\n';
        here.utf8 = n > 0;
        if (n == 0 || !(printable(here.code) || mark || ends)) {
            *stray = here;
            return false;
        }
        here.at += n;
        here.column = here.code == '\n' ? 1 : here.column + (mark ? 0 : 1);
        here.line += here.code == '\n';
    }
    return true;
}
