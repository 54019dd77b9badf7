/* cli/asked.c - what the verbs on a piece file share: what the options change of the piece, and
 * where its results go. */
#include "cli/parts.h"

tt_changes tt_changes_of(const tt_args *args, const char *file, const tt_data *data)
{
    return (tt_changes){.scale = args->scale,
                        .set = args->set,
                        .sets = args->sets,
                        .neighbour = tt_beside,
                        .neighbour_user = (void *)file,
                        .data = data};
}

static int refuse(const tt_args *args, tt_streams io, const tt_output *output)
{
    int code = tt_output_refuse_input(output, args->operand, args->operands, io.in, io.err);
    if (code == TT_EXIT_HOLDS && args->data)
        code = tt_output_refuse_input(output, &args->data, 1, io.in, io.err);
    if (code == TT_EXIT_HOLDS)
        code = tt_output_refuse(output, args->given[TT_OPTION_FORCE], io.err);
    return code;
}

int tt_outputs_open(const tt_args *args, tt_streams io, tt_output *text, tt_output *json)
{
    *json = (tt_output){.name = args->json, .stream = io.out};
    *text = (tt_output){.name = args->text ? args->text : "-", .stream = io.out};
    if (args->json && tt_is_stream(args->json) && tt_is_stream(text->name)) text->name = NULL;
    const int code = refuse(args, io, text);
    return code == TT_EXIT_HOLDS ? refuse(args, io, json) : code;
}
