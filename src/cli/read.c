/* cli/read.c - a whole file, or a stream, into memory. */
#include "cli/parts.h"

#include <errno.h>
#include <stdlib.h>

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
        *length += fread(*text + *length, 1, cap - *length, from);
        if (ferror(from)) return false;
        if (feof(from)) return true;
    }
}

bool tt_file_read(const char *name, FILE *in, char **text, size_t *length)
{
    const bool stream = name[0] == '-' && name[1] == '\0';
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
