/* yamlio/encoding.c - UTF-8 by the table of well-formed byte sequences, and which characters a
 * piece file may hold. */
#include "yamlio/encoding.h"

/* The bytes of the character at `text`, 0 when there is none; RFC 3629 section 4 | FROM MEMORY. */
static size_t decode(const unsigned char *text, size_t length, unsigned long *code)
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
        const size_t n = decode(bytes + here.at, length - here.at, &here.code);
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
