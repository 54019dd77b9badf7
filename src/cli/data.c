/* cli/data.c - the table that --data names. */
#include "cli/parts.h"

#include <stdlib.h>

enum { NUMBER_OPTION = 1501 };

static tt_status read_table(const tt_args *args, tt_streams io, const char *text, size_t length,
                            tt_data **data)
{
    tt_diags *diags = tt_diags_new(0);
    const tt_status status =
        diags ? tt_data_read(args->data, text, length, diags, data) : TT_E_NOMEM;
    if (diags) tt_say_diags(diags, args->given[TT_OPTION_QUIET], io.err);
    if (status != TT_OK && status != TT_E_INPUT)
        fprintf(io.err, "tiptoe: %s: %s\n", args->data, tt_status_text(status));
    tt_diags_free(diags);
    return status;
}

int tt_data_open(const tt_args *args, tt_streams io, tt_data **data)
{
    char *text;
    size_t length;
    *data = NULL;
    if (!args->data) return TT_EXIT_HOLDS;
    if (tt_is_stream(args->data)) {
        tt_say_error(io.err, NULL, NUMBER_OPTION, "--data names a file, not a stream",
                     "standard input is for a piece file");
        return TT_EXIT_INPUT;
    }
    if (!tt_file_read(args->data, io.in, &text, &length)) return tt_say_unreadable(io, args->data);
    const tt_status status = read_table(args, io, text, length, data);
    free(text);
    return status == TT_OK ? TT_EXIT_HOLDS : tt_exit_of(status);
}
