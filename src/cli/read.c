/* cli/read.c - a whole file, or a stream, into memory; of what is too large to be a piece file only
 * so much that it is seen to be. */
#include "cli/parts.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

enum { MOST = 4 * 1024 * 1024 + 1 }; /* bytes: one more than a piece file may have */

bool tt_is_stream(const char *name)
{
    return strcmp(name, "-") == 0;
}

const char *tt_name_in(const char *name)
{
    return tt_is_stream(name) ? "standard input" : name;
}

static bool read_all(FILE *from, char **text, size_t *length)
{
    size_t cap = 0;
    for (;;) {
        if (cap - *length < BUFSIZ) {
            cap = cap ? 2 * cap : 4 * BUFSIZ;
            char *more = realloc(*text, cap);
            if (!more) return false;
            *text = more;
        }
        const size_t room = cap - *length, wanted = MOST - *length;
        *length += fread(*text + *length, 1, room < wanted ? room : wanted, from);
        if (ferror(from)) return false;
        if (feof(from) || *length == MOST) return true;
    }
}

bool tt_file_read(const char *name, FILE *in, char **text, size_t *length)
{
    const bool stream = tt_is_stream(name);
    FILE *from = stream ? in : fopen(name, "rb");
    *text = NULL;
    *length = 0;
    const bool good = from && read_all(from, text, length);
    const int why = errno;
    if (from && !stream) fclose(from);
    if (!good) {
        free(*text);
        *text = NULL;
    }
    errno = why;
    return good;
}
