/* cli/beside.c - files that a piece file names: read from the folder that it stands in; those of
 * standard input from the folder that the program runs in. */
#include "cli/parts.h"

#include <stdlib.h>
#include <string.h>

int tt_beside(void *user, const char *name, tt_sink *sink, void *to)
{
    const char *piece = user, *stroke = tt_is_stream(piece) ? NULL : strrchr(piece, '/');
    const size_t folder = stroke ? (size_t)(stroke - piece) + 1 : 0;
    const size_t size = folder + strlen(name) + 1;
    char *path = malloc(size), *text = NULL;
    size_t length = 0;
    if (path) snprintf(path, size, "%.*s%s", (int)folder, piece, name);
    const bool good = path && !tt_is_stream(path) && tt_file_read(path, NULL, &text, &length);
    const int code = good && sink(to, text, length) == 0 ? 0 : 1;
    free(text);
    free(path);
    return code;
}
