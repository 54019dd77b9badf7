/* cli/cli.h - the command as a function: arguments and streams in, exit status out. */
#ifndef TT_CLI_CLI_H
#define TT_CLI_CLI_H

#include <stdio.h>

typedef struct {
    FILE *in, *out, *err;
} tt_streams;

/** Runs the command line. Not re-entrant: the parser of options keeps its place in globals. */
int tt_cli_run(int argc, char **argv, tt_streams io);

#endif
