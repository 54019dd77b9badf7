/* cli/new.c - the verb new: a piece file to begin with. Where the schema is installed the first
 * line tells an editor of it. */
#include "cli/parts.h"

#include <tiptoe/manual.h>

#include <string.h>
#include <unistd.h>

enum { NUMBER_OPTION = 1501 };

static void tell_editor(tt_output *output)
{
    static const char line[] = "# yaml-language-server: $schema=" TT_SCHEMA "\n";
    if (access(TT_SCHEMA, R_OK) == 0) tt_output_sink(output, line, sizeof line - 1);
}

int tt_cli_new(const tt_args *args, tt_streams io)
{
    tt_output output = {.name = "-", .stream = io.out};
    if (args->operands > 0) {
        tt_say_error(io.err, NULL, NUMBER_OPTION, "new takes no words, only options",
                     "tiptoe new --for bird > bird.yaml");
        return TT_EXIT_INPUT;
    }
    const tt_start_options options = {args->what, args->basis, args->units};
    tell_editor(&output);
    tt_diags *diags = tt_diags_new(0);
    const tt_status status =
        diags ? tt_write_start(&options, diags, tt_output_sink, &output) : TT_E_NOMEM;
    const int code = tt_output_told(&output, status, diags, args, io.err);
    tt_output_clear(&output);
    return code;
}
