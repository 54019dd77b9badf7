/* cli/stock.c - the verb stock: the built-in tables. */
#include "cli/parts.h"

#include <tiptoe/report.h>

enum { NUMBER_OPTION = 1501 };

static int write_table(const tt_args *args, tt_output *output, FILE *err)
{
    const char *table = args->operands > 0 ? args->operand[0] : NULL;
    const char *name = args->operands > 1 ? args->operand[1] : NULL;
    tt_diags *diags = tt_diags_new(0);
    const tt_status status =
        diags ? tt_write_stock(table, name, diags, tt_output_sink, output) : TT_E_NOMEM;
    return tt_output_told(output, status, diags, args, err);
}

int tt_cli_stock(const tt_args *args, tt_streams io)
{
    tt_output output = {.name = args->text ? args->text : "-", .stream = io.out};
    if (args->operands > 2) {
        tt_say_error(io.err, NULL, NUMBER_OPTION, "stock takes a table and a name at most",
                     "put a name with blanks into quotes");
        return TT_EXIT_INPUT;
    }
    int code = tt_output_refuse(&output, args->given[TT_OPTION_FORCE], io.err);
    if (code == TT_EXIT_HOLDS) code = write_table(args, &output, io.err);
    tt_output_clear(&output);
    return code;
}
