/* cli/check.c - the verb check: each file in turn read, judged, written out. */
#include "cli/parts.h"

#include <tiptoe/report.h>

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

static tt_status write_results(job *j, const tt_assessment *assessment)
{
    const bool terminal = j->text.name && tt_is_stream(j->text.name) && isatty(fileno(j->io.out));
    const tt_text_options options = {.steps = j->args->given[TT_OPTION_STEPS], .bold = terminal};
    tt_status status = TT_OK;
    const size_t before = j->text.n;
    if (j->text.name) {
        if (before) tt_output_sink(&j->text, "\n", 1);
        status = tt_write_text(assessment, &options, tt_output_sink, &j->text);
    }
    if (j->json.name && status == TT_OK)
        status = tt_write_json(assessment, tt_output_sink, &j->json);
    if (j->text.failed || j->json.failed) status = TT_E_NOMEM;
    if (status != TT_OK) j->text.n = before; /* both results of a piece, or none */
    return status;
}

static int judge(job *j, const char *file, const tt_piece *piece, tt_diags *diags)
{
    static const int exits[] = {[TT_HOLDS] = TT_EXIT_HOLDS,
                                [TT_FALLS_SHORT] = TT_EXIT_SHORT,
                                [TT_NOT_CHECKED] = TT_EXIT_UNCHECKED};
    tt_assessment *assessment = NULL;
    tt_status status = tt_assess(piece, diags, &assessment);
    if (status == TT_OK) status = write_results(j, assessment);
    const int code = status == TT_OK ? exits[tt_assessment_verdict(assessment)]
                                     : tt_say_failed(j->io, file, status, diags);
    tt_assessment_free(assessment);
    return code;
}

static int read_and_judge(job *j, const char *file, const char *text, size_t length)
{
    const tt_args *args = j->args;
    const tt_changes changes = tt_changes_of(args, file, j->data);
    tt_piece *piece = NULL;
    tt_diags *diags = tt_diags_new(0);
    if (!diags) return tt_say_failed(j->io, file, TT_E_NOMEM, NULL);
    const tt_status status = tt_piece_read(file, text, length, &changes, diags, &piece);
    const int code =
        status == TT_OK ? judge(j, file, piece, diags) : tt_say_failed(j->io, file, status, diags);
    tt_say_diags(diags, args->given[TT_OPTION_QUIET], j->io.err);
    tt_piece_free(piece);
    tt_diags_free(diags);
    return code;
}

static int one_file(job *j, const char *file)
{
    char *text;
    size_t length;
    if (!tt_file_read(file, j->io.in, &text, &length)) return tt_say_unreadable(j->io, file);
    const int code = read_and_judge(j, file, text, length);
    free(text);
    return code;
}

static bool wrong(const tt_args *args, FILE *err)
{
    const char *text = NULL;
    if (args->operands == 0) text = "check needs a piece file, or - for standard input";
    if (args->operands > 1 && args->json) text = "--json takes one piece file at a time";
    if (args->text && args->json && strcmp(args->text, args->json) == 0) {
        text = tt_is_stream(args->text) ? "--text and --json cannot both go to standard output"
                                        : "--text and --json name the same file";
    }
    if (text) tt_say_error(err, NULL, NUMBER_OPTION, text, "tiptoe check --help says more");
    return text != NULL;
}

/* Files are written when every piece was judged; a stream gets what there is. */
static int write_out(job *j, int code)
{
    tt_output *const both[] = {&j->text, &j->json};
    const bool judged = code != TT_EXIT_INPUT && code != TT_EXIT_UNFINISHED;
    for (size_t i = 0; i < 2; i++) {
        const bool stream = both[i]->name && tt_is_stream(both[i]->name);
        if (judged || (stream && both[i]->n))
            code = tt_exit_worse(code, tt_output_write(both[i], j->io.err));
        tt_output_clear(both[i]);
    }
    return code;
}

int tt_cli_check(const tt_args *args, tt_streams io)
{
    if (wrong(args, io.err)) return TT_EXIT_INPUT;
    job j = {.args = args, .io = io};
    int code = tt_outputs_open(args, io, &j.text, &j.json);
    if (code == TT_EXIT_HOLDS) code = tt_data_open(args, io, &j.data);
    if (code != TT_EXIT_HOLDS) return code;
    for (size_t i = 0; i < args->operands; i++)
        code = tt_exit_worse(code, one_file(&j, args->operand[i]));
    tt_data_free(j.data);
    return write_out(&j, code);
}
