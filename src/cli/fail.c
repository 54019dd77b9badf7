/* cli/fail.c - failures that no diagnostic told, and files that cannot be read, in words. */
#include "cli/parts.h"

#include <errno.h>
#include <string.h>

enum { NUMBER_UNREADABLE = 1503 };

int tt_say_failed(tt_streams io, const char *file, tt_status status, const tt_diags *diags)
{
    if (status == TT_E_NOMEM || !diags || tt_diags_errors(diags) == 0)
        fprintf(io.err, "tiptoe: %s: %s\n", tt_name_in(file), tt_status_text(status));
    return tt_exit_of(status);
}

int tt_say_unreadable(tt_streams io, const char *file)
{
    if (errno == ENOMEM) return tt_say_failed(io, file, TT_E_NOMEM, NULL);
    const int why = errno;
    char text[256];
    snprintf(text, sizeof text, "the file cannot be read: %s", strerror(why));
    tt_say_error(io.err, file, NUMBER_UNREADABLE, text,
                 "check the name and the rights of the file");
    return why == EIO ? TT_EXIT_UNFINISHED : TT_EXIT_INPUT;
}
