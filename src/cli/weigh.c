/* cli/weigh.c - the verb weigh: one file read, its weights added up, written out. */
#include "cli/parts.h"

#include <tiptoe/weigh.h>

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { NUMBER_OPTION = 1501 };

typedef struct {
    const tt_args *args;
    tt_streams io;
    tt_output text, json;
    tt_data *data;
} job;

static bool wrong(const tt_args *args, FILE *err)
{
    const char *text = NULL;
    if (args->operands != 1) text = "weigh takes one piece file, or - for standard input";
    if (args->text && args->json && strcmp(args->text, args->json) == 0)
        text = "--text and --json name the same place";
    if (text) tt_say_error(err, NULL, NUMBER_OPTION, text, "tiptoe weigh --help says more");
    return text != NULL;
}

static tt_status write_results(job *j, const tt_weights *weights)
{
    const bool terminal = j->text.name && tt_is_stream(j->text.name) && isatty(fileno(j->io.out));
    const tt_text_options options = {.bold = terminal};
    tt_status status = TT_OK;
    if (j->text.name) status = tt_write_weights_text(weights, &options, tt_output_sink, &j->text);
    if (j->json.name && status == TT_OK)
        status = tt_write_weights_json(weights, tt_output_sink, &j->json);
    return j->text.failed || j->json.failed ? TT_E_NOMEM : status;
}

static int weigh(job *j, const char *file, const char *text, size_t length)
{
    const tt_args *args = j->args;
    const tt_changes changes = tt_changes_of(args, file, j->data);
    tt_piece *piece = NULL;
    tt_weights *weights = NULL;
    tt_diags *diags = tt_diags_new(0);
    tt_status status =
        diags ? tt_piece_read(file, text, length, &changes, diags, &piece) : TT_E_NOMEM;
    if (status == TT_OK) status = tt_weigh(piece, &weights);
    if (status == TT_OK) status = write_results(j, weights);
    int code = status != TT_OK            ? tt_say_failed(j->io, file, status, diags)
               : tt_weights_over(weights) ? TT_EXIT_SHORT
                                          : TT_EXIT_HOLDS;
    if (diags) tt_say_diags(diags, args->given[TT_OPTION_QUIET], j->io.err);
    tt_weights_free(weights);
    tt_piece_free(piece);
    tt_diags_free(diags);
    return code;
}

static int read_and_weigh(job *j, const char *file)
{
    char *text;
    size_t length;
    if (!tt_file_read(file, j->io.in, &text, &length)) return tt_say_unreadable(j->io, file);
    int code = tt_data_open(j->args, j->io, &j->data);
    if (code == TT_EXIT_HOLDS) code = weigh(j, file, text, length);
    tt_data_free(j->data);
    free(text);
    return code;
}

int tt_cli_weigh(const tt_args *args, tt_streams io)
{
    if (wrong(args, io.err)) return TT_EXIT_INPUT;
    job j = {.args = args, .io = io};
    int code = tt_outputs_open(args, io, &j.text, &j.json);
    if (code != TT_EXIT_HOLDS) return code;
    code = read_and_weigh(&j, args->operand[0]);
    const bool good = code == TT_EXIT_HOLDS || code == TT_EXIT_SHORT;
    if (good) code = tt_exit_worse(code, tt_output_write(&j.text, io.err));
    if (good) code = tt_exit_worse(code, tt_output_write(&j.json, io.err));
    tt_output_clear(&j.text);
    tt_output_clear(&j.json);
    return code;
}
