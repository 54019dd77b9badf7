/* cli/explain.c - the verb explain: a word of the file, of the results or of a message in words. */
#include "cli/parts.h"

#include <tiptoe/manual.h>

#include <stdlib.h>
#include <string.h>

/* "armature alone" of two operands; to be freed. */
static char *join(const tt_args *args)
{
    size_t n = 1;
    for (size_t i = 0; i < args->operands; i++) n += strlen(args->operand[i]) + 1;
    char *word = calloc(n, 1);
    for (size_t i = 0; word && i < args->operands; i++) {
        if (i) strcat(word, " ");
        strcat(word, args->operand[i]);
    }
    return word;
}

int tt_cli_explain(const tt_args *args, tt_streams io)
{
    tt_output output = {.name = args->text ? args->text : "-", .stream = io.out};
    int code = tt_output_refuse(&output, args->given[TT_OPTION_FORCE], io.err);
    if (code != TT_EXIT_HOLDS) return code;
    char *word = join(args);
    tt_diags *diags = tt_diags_new(0);
    const bool room = word && diags;
    const char *asked = args->operands ? word : NULL;
    code = tt_output_told(
        &output, room ? tt_write_explain(asked, diags, tt_output_sink, &output) : TT_E_NOMEM, diags,
        args, io.err);
    free(word);
    tt_output_clear(&output);
    return code;
}
