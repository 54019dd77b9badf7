/* cli/cli.c - the command: arguments taken apart, the verb run, its exit status. */
#include "cli/parts.h"

#include <tiptoe/version.h>

#include <signal.h>

int tt_exit_worse(int a, int b)
{
    static const int order[] = {TT_EXIT_INPUT, TT_EXIT_UNFINISHED, TT_EXIT_SHORT,
                                TT_EXIT_UNCHECKED};
    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        if (a == order[i] || b == order[i]) return order[i];
    }
    return TT_EXIT_HOLDS;
}

int tt_exit_of(tt_status status)
{
    return tt_status_who(status) == TT_WHO_INPUT ? TT_EXIT_INPUT : TT_EXIT_UNFINISHED;
}

/* What is neither help nor version must name a verb. */
static int dispatch(const tt_args *args, tt_streams io)
{
    static tt_verb_fn *const run[TT_VERBS] = {
#define TT_VERB(id, operands, words) tt_cli_##id,
#include "cli/verbs.def"
#undef TT_VERB
    };
    if (args->given[TT_OPTION_HELP])
        tt_help(args->verb, io.out);
    else if (args->given[TT_OPTION_VERSION])
        fputs("tiptoe " TIPTOE_VERSION "\n", io.out);
    else if (args->verb != TT_VERBS)
        return run[args->verb](args, io);
    else {
        tt_help_short(io.err);
        return TT_EXIT_INPUT;
    }
    return tt_output_write(&(tt_output){.name = "-", .stream = io.out}, io.err);
}

int tt_cli_run(int argc, char **argv, tt_streams io)
{
    /* A reader that goes away is a failed write, not a signal. */
    struct sigaction ignore = {.sa_handler = SIG_IGN}, before;
    const bool changed = sigaction(SIGPIPE, &ignore, &before) == 0;
    tt_args args;
    int status;
    if (tt_args_read(argc, argv, io.err, &args, &status)) status = dispatch(&args, io);
    tt_args_clear(&args);
    if (changed) sigaction(SIGPIPE, &before, NULL);
    return status;
}
