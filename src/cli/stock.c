/* cli/stock.c - the verb stock: the tables of metals and stock. */
#include "cli/parts.h"

#include <tiptoe/report.h>

#include <stdlib.h>
#include <string.h>

/* The words behind the table, with a blank between them: a name may be written without quotes. NULL
 * without memory; "" without words. */
static char *name_of(const tt_args *args)
{
    size_t n = 1;
    for (size_t i = 1; i < args->operands; i++) n += strlen(args->operand[i]) + 1;
    char *name = calloc(n, 1);
    for (size_t i = 1; name && i < args->operands; i++) {
        if (i > 1) strcat(name, " ");
        strcat(name, args->operand[i]);
    }
    return name;
}

static int write_table(const tt_args *args, const tt_data *data, tt_output *output, FILE *err)
{
    const char *table = args->operands > 0 ? args->operand[0] : NULL;
    char *name = name_of(args);
    tt_diags *diags = name ? tt_diags_new(0) : NULL;
    const tt_status status = diags
                                 ? tt_write_stock(table, args->operands > 1 ? name : NULL,
                                                  args->units, data, diags, tt_output_sink, output)
                                 : TT_E_NOMEM;
    free(name);
    return tt_output_told(output, status, diags, args, err);
}

int tt_cli_stock(const tt_args *args, tt_streams io)
{
    tt_output output = {.name = args->text ? args->text : "-", .stream = io.out};
    tt_data *data = NULL;
    int code = tt_output_refuse(&output, args->given[TT_OPTION_FORCE], io.err);
    if (code == TT_EXIT_HOLDS && args->data)
        code = tt_output_refuse_input(&output, &args->data, 1, io.in, io.err);
    if (code == TT_EXIT_HOLDS) code = tt_data_open(args, io, &data);
    if (code == TT_EXIT_HOLDS) code = write_table(args, data, &output, io.err);
    tt_data_free(data);
    tt_output_clear(&output);
    return code;
}
