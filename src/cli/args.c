/* cli/args.c - the command line taken apart by getopt_long, from the table of options. */
#include "cli/parts.h"

#include <getopt.h>
#include <stdlib.h>
#include <string.h>

const tt_option tt_options[TT_OPTIONS] = {
#define TT_OPTION(id, name, argument, verbs, words) {name, argument, words, verbs},
#include "cli/options.def"
#undef TT_OPTION
};

const tt_verb_row tt_verbs[TT_VERBS] = {
#define TT_VERB(id, operands, words) {#id, operands, words},
#include "cli/verbs.def"
#undef TT_VERB
};

enum { NUMBER_OPTION = 1501, NUMBER_VERB = 1502, FIRST = 256 };

static const char *option_name(size_t i)
{
    return tt_options[i].name;
}

static const char *verb_name(size_t i)
{
    return tt_verbs[i].name;
}

static void hint_nearest(char *hint, size_t size, const char *before, const char *near,
                         const char *otherwise)
{
    if (near)
        snprintf(hint, size, "did you mean %s%s?", before, near);
    else
        snprintf(hint, size, "%s", otherwise);
}

/* What getopt_long could not read: `word` as written. */
static void complain_option(FILE *err, int code, const char *word)
{
    char text[256], hint[128] = "tiptoe --help lists the options", name[64];
    const char *bare = word[0] == '-' && word[1] == '-' ? word + 2 : word + 1;
    snprintf(name, sizeof name, "%.*s", (int)strcspn(bare, "="), bare);
    if (code == ':') {
        snprintf(text, sizeof text, "option %.100s lacks its value", word);
    } else if (optopt >= FIRST) {
        snprintf(text, sizeof text, "option --%s takes no value", tt_options[optopt - FIRST].name);
    } else {
        snprintf(text, sizeof text, "option %.100s is not known", word);
        hint_nearest(hint, sizeof hint, "--", tt_nearest(name, TT_OPTIONS, option_name),
                     "tiptoe --help lists the options");
    }
    tt_say_error(err, NULL, NUMBER_OPTION, text, hint);
}

static void take_option(tt_args *args, tt_option_id id, const char *value)
{
    args->given[id] = true;
    switch (id) {
    case TT_OPTION_FOR:
        args->what = value;
        break;
    case TT_OPTION_BASIS:
        args->basis = value;
        break;
    case TT_OPTION_UNITS:
        args->units = value;
        break;
    case TT_OPTION_TEXT:
        args->text = value;
        break;
    case TT_OPTION_JSON:
        args->json = value;
        break;
    case TT_OPTION_DATA:
        args->data = value;
        break;
    case TT_OPTION_SCALE:
        args->scale = value;
        break;
    case TT_OPTION_SET:
        args->set[args->sets++] = value;
        break;
    default:
        break;
    }
}

static bool take_verb(tt_args *args, const char *word, FILE *err)
{
    for (int v = 0; v < TT_VERBS; v++) {
        if (strcmp(tt_verbs[v].name, word) == 0) args->verb = (tt_verb)v;
    }
    if (args->verb != TT_VERBS) return true;
    char text[256], hint[128];
    snprintf(text, sizeof text, "verb \"%.100s\" is not known", word);
    hint_nearest(hint, sizeof hint, "", tt_nearest(word, TT_VERBS, verb_name),
                 "tiptoe --help lists the verbs");
    tt_say_error(err, NULL, NUMBER_VERB, text, hint);
    return false;
}

static bool take_word(tt_args *args, const char *word, FILE *err)
{
    if (args->verb == TT_VERBS) return take_verb(args, word, err);
    args->operand[args->operands++] = word;
    return true;
}

static bool take_all(int argc, char **argv, FILE *err, tt_args *args)
{
    struct option long_options[TT_OPTIONS + 1] = {0};
    for (int i = 0; i < TT_OPTIONS; i++) {
        const int has = tt_options[i].argument ? required_argument : no_argument;
        long_options[i] = (struct option){tt_options[i].name, has, NULL, FIRST + i};
    }
    optind = 0; /* of glibc: start anew */
    opterr = 0;
    bool good = true;
    /* "-": words are given back in order whatever the environment says; ":" tells a lacking value.
     */
    for (int code; good && (code = getopt_long(argc, argv, "-:h", long_options, NULL)) != -1;) {
        if (code == 1)
            good = take_word(args, optarg, err);
        else if (code == 'h')
            take_option(args, TT_OPTION_HELP, NULL);
        else if (code >= FIRST)
            take_option(args, (tt_option_id)(code - FIRST), optarg);
        else
            complain_option(err, code, argv[optind - 1]), good = false;
    }
    for (int i = optind; good && i < argc; i++) good = take_word(args, argv[i], err);
    return good;
}

/* Options that the verb does not take. */
static bool fits(const tt_args *args, FILE *err)
{
    for (int i = 0; args->verb != TT_VERBS && i < TT_OPTIONS; i++) {
        if (!args->given[i] || tt_options[i].verbs & (1u << args->verb)) continue;
        char text[128];
        snprintf(text, sizeof text, "%s takes no --%s", tt_verbs[args->verb].name,
                 tt_options[i].name);
        tt_say_error(err, NULL, NUMBER_OPTION, text,
                     "tiptoe VERB --help lists the options of a verb");
        return false;
    }
    return true;
}

bool tt_args_read(int argc, char **argv, FILE *err, tt_args *args, int *status)
{
    *args = (tt_args){.verb = TT_VERBS};
    args->operand = calloc((size_t)argc + 1, sizeof *args->operand);
    args->set = calloc((size_t)argc + 1, sizeof *args->set);
    *status = TT_EXIT_INPUT;
    if (args->operand && args->set) return take_all(argc, argv, err, args) && fits(args, err);
    *status = TT_EXIT_UNFINISHED;
    fprintf(err, "tiptoe: %s\n", tt_status_text(TT_E_NOMEM));
    return false;
}

void tt_args_clear(tt_args *args)
{
    free(args->operand);
    free(args->set);
    *args = (tt_args){.verb = TT_VERBS};
}
