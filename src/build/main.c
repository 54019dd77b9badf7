/* main.c - the program is the function tt_cli_run with the streams of the process. */
#include "cli/cli.h"

int main(int argc, char **argv)
{
    return tt_cli_run(argc, argv, (tt_streams){stdin, stdout, stderr});
}
