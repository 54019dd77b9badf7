/* cli/say.c - help and diagnostics in words; the nearest spelling. */
#include "cli/parts.h"

#include <stdlib.h>
#include <string.h>

/* Standard input by its words. */
static void say(const tt_diag *about, FILE *err)
{
    tt_diag named = *about;
    const tt_diag *diag = &named;
    if (named.file) named.file = tt_name_in(named.file);
    char few[1024];
    const size_t n = tt_diag_print(diag, few, sizeof few);
    char *many = n < sizeof few ? NULL : malloc(n + 1);
    if (many) tt_diag_print(diag, many, n + 1);
    fputs(many ? many : few, err);
    free(many);
}

void tt_say_diags(const tt_diags *diags, bool quiet, FILE *err)
{
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        const tt_diag *diag = tt_diags_at(diags, i);
        if (!quiet || diag->severity == TT_ERROR) say(diag, err);
    }
}

void tt_say_error(FILE *err, const char *file, unsigned number, const char *text, const char *hint)
{
    say(
        &(tt_diag){
            .file = file, .text = text, .hint = hint, .severity = TT_ERROR, .number = number},
        err);
}

const char *tt_nearest(const char *word, size_t n, const char *(*at)(size_t i))
{
    enum { MOST = 2 };
    const char *best = NULL;
    size_t least = MOST + 1;
    for (size_t i = 0; i < n; i++) {
        const size_t away = tt_text_distance(word, at(i), MOST);
        if (away < least) best = at(i);
        if (away < least) least = away;
    }
    return best;
}

/* Between a verb and its operands. */
static const char *gap(int verb)
{
    return tt_verbs[verb].operands[0] ? " " : "";
}

void tt_help_short(FILE *out)
{
    fputs("Usage: tiptoe VERB [OPTION...] ...\n", out);
    for (int v = 0; v < TT_VERBS; v++)
        fprintf(out, "  tiptoe %s%s%s\n", tt_verbs[v].name, gap(v), tt_verbs[v].operands);
    fputs("tiptoe --help says more.\n", out);
}

static void options(unsigned verbs, FILE *out)
{
    fputs("\nOptions:\n", out);
    for (int i = 0; i < TT_OPTIONS; i++) {
        const tt_option *option = &tt_options[i];
        if (!(option->verbs & verbs)) continue;
        char head[64];
        snprintf(head, sizeof head, "--%s%s%s", option->name, option->argument ? " " : "",
                 option->argument ? option->argument : "");
        fprintf(out, "  %-22s %s\n", head, option->words);
    }
}

static const char statuses[] =
    "\nExit status: 0 everything this piece needs was checked, and holds; 1 something falls "
    "short;\n"
    "2 the input or the command line is wrong; 3 the analysis could not be finished; 4 what was\n"
    "checked holds, but something that this piece needs was not checked.\n";

void tt_help(tt_verb verb, FILE *out)
{
    if (verb != TT_VERBS) {
        fprintf(out, "Usage: tiptoe %s [OPTION...]%s%s\n%s.\n", tt_verbs[verb].name, gap((int)verb),
                tt_verbs[verb].operands, tt_verbs[verb].words);
        options(1u << verb, out);
    } else {
        fputs("tiptoe judges figurative bronze on slender supports.\n\nUsage: tiptoe VERB "
              "[OPTION...] ...\n\nVerbs:\n",
              out);
        for (int v = 0; v < TT_VERBS; v++) {
            fprintf(out, "  %s%s%s\n      %s\n", tt_verbs[v].name, gap(v), tt_verbs[v].operands,
                    tt_verbs[v].words);
        }
        options(~0u, out);
    }
    fputs(statuses, out);
}
