/* build/completions.c - prints what a shell completes behind `tiptoe`, from the tables of verbs and
 * options, the built-in tables and what can be explained.
 *   completions bash | zsh | fish */
#include "cli/parts.h"
#include "compose/explain.h"
#include "compose/stock.h"

#include <stdio.h>
#include <string.h>

/* What stands behind a verb, by the words of its row. */
typedef enum { NOTHING, FILES, TABLES, WORDS } operand;

static operand operand_of(int verb)
{
    const char *words = tt_verbs[verb].operands;
    if (strncmp(words, "[TABLE", 6) == 0) return TABLES;
    if (strncmp(words, "[WORD", 5) == 0) return WORDS;
    return strstr(words, "FILE") ? FILES : NOTHING;
}

/* "figure bird pair" of an option that reads one of these words; false: it reads something else. */
static bool choices(const char *argument, char words[80])
{
    if (!argument || !strchr(argument, '|') || strpbrk(argument, "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
        return false;
    snprintf(words, 80, "%s", argument);
    for (char *c = words; *c; c++)
        if (*c == '|') *c = ' ';
    return true;
}

static bool is_file(const char *argument)
{
    return argument && strncmp(argument, "FILE", 4) == 0;
}

static bool takes(int option, int verb)
{
    return verb == TT_VERBS || tt_options[option].verbs & (1u << verb);
}

static void put_tables(void)
{
    for (size_t i = 0; tt_stock_table_name(i); i++)
        printf("%s%s", i ? " " : "", tt_stock_table_name(i));
}

/* Those of one word: a blank would part them. */
static void put_words(const tt_words *words)
{
    for (size_t i = 0; i < words->n; i++)
        if (!strchr(words->at[i], ' ')) printf("%s%s", i ? " " : "", words->at[i]);
}

/* ---- bash ---- */

static void bash_options(int verb)
{
    printf("        %s) options=\"", verb == TT_VERBS ? "*" : tt_verbs[verb].name);
    bool any = false;
    for (int i = 0; i < TT_OPTIONS; i++) {
        if (!takes(i, verb)) continue;
        printf("%s--%s", any ? " " : "", tt_options[i].name);
        any = true;
    }
    puts("\" ;;");
}

static void bash_values(void)
{
    puts("    case $before in");
    for (int i = 0; i < TT_OPTIONS; i++) {
        char words[80];
        if (!tt_options[i].argument) continue;
        printf("        --%s) ", tt_options[i].name);
        if (choices(tt_options[i].argument, words))
            printf("_tiptoe_offer \"%s\"; return ;;\n", words);
        else
            puts(is_file(tt_options[i].argument) ? "_tiptoe_files; return ;;" : "return ;;");
    }
    puts("    esac");
}

static void bash_operands(const tt_words *words)
{
    puts("    case $verb in");
    for (int v = 0; v < TT_VERBS; v++) {
        printf("        %s) ", tt_verbs[v].name);
        if (operand_of(v) == FILES) printf("_tiptoe_files");
        if (operand_of(v) == TABLES) {
            printf("[[ $before != %s ]] || _tiptoe_offer \"", tt_verbs[v].name);
            put_tables();
            putchar('"');
        }
        if (operand_of(v) == WORDS) {
            printf("_tiptoe_offer \"");
            put_words(words);
            putchar('"');
        }
        puts(operand_of(v) == NOTHING ? ";;" : " ;;");
    }
    puts("    esac");
}

static void bash(const tt_words *words)
{
    puts("# What bash completes behind tiptoe. Made by the build.\n"
         "_tiptoe_offer() { mapfile -t COMPREPLY < <(compgen -W \"$1\" -- \"$word\"); }\n"
         "_tiptoe_files() { mapfile -t COMPREPLY < <(compgen -f -- \"$word\"); compopt -o "
         "filenames 2>/dev/null; }\n"
         "_tiptoe() {\n"
         "    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} verb= "
         "options i\n"
         "    COMPREPLY=()\n"
         "    for ((i = 1; i < COMP_CWORD; i++)); do\n"
         "        case ${COMP_WORDS[i]} in");
    printf("            ");
    for (int v = 0; v < TT_VERBS; v++) printf("%s%s", v ? " | " : "", tt_verbs[v].name);
    puts(") verb=${COMP_WORDS[i]}; break ;;\n        esac\n    done");
    bash_values();
    puts("    case $verb in");
    for (int v = 0; v <= TT_VERBS; v++) bash_options(v);
    puts("    esac\n    if [[ $word == -* ]]; then _tiptoe_offer \"$options\"; return; fi");
    printf("    if [[ -z $verb ]]; then _tiptoe_offer \"");
    for (int v = 0; v < TT_VERBS; v++) printf("%s%s", v ? " " : "", tt_verbs[v].name);
    puts("\"; return; fi");
    bash_operands(words);
    puts("    return 0\n}\ncomplete -F _tiptoe tiptoe");
}

/* ---- zsh ---- */

/* Inside quotes and brackets, where a colon parts fields. */
static void zsh_put(const char *words)
{
    for (; *words; words++) {
        if (strchr("[]:", *words)) putchar('\\');
        if (*words == '\'')
            printf("'\\''");
        else
            putchar(*words);
    }
}

static void zsh_option(int i)
{
    char words[80];
    const char *argument = tt_options[i].argument;
    printf(" \\\n            '*--%s[", tt_options[i].name);
    zsh_put(tt_options[i].words);
    putchar(']');
    if (choices(argument, words))
        printf(":%s:(%s)", tt_options[i].name, words);
    else if (argument)
        printf(":%s:%s", tt_options[i].name, is_file(argument) ? "_files" : "");
    putchar('\'');
}

static void zsh_verb(int verb, const tt_words *words)
{
    printf("        %s) _arguments", tt_verbs[verb].name);
    for (int i = 0; i < TT_OPTIONS; i++)
        if (takes(i, verb)) zsh_option(i);
    if (operand_of(verb) == FILES) printf(" \\\n            '*:piece file:_files'");
    if (operand_of(verb) == TABLES) {
        printf(" \\\n            '1:table:(");
        put_tables();
        printf(")'");
    }
    if (operand_of(verb) == WORDS) {
        printf(" \\\n            '*:word:(");
        put_words(words);
        printf(")'");
    }
    puts(" ;;");
}

static void zsh(const tt_words *words)
{
    puts("#compdef tiptoe\n# What zsh completes behind tiptoe. Made by the build.\n"
         "_tiptoe() {\n    local curcontext=$curcontext state line\n    local -a verbs\n    "
         "verbs=(");
    for (int v = 0; v < TT_VERBS; v++) {
        printf("        '%s:", tt_verbs[v].name);
        zsh_put(tt_verbs[v].words);
        puts("'");
    }
    puts("    )\n    _arguments -C '1: :->verb' '*:: :->rest'\n"
         "    if [[ $state == verb ]]; then _describe verb verbs; return; fi\n"
         "    case $line[1] in");
    for (int v = 0; v < TT_VERBS; v++) zsh_verb(v, words);
    puts("    esac\n}\n_tiptoe \"$@\"");
}

/* ---- fish ---- */

/* 'it'\''s' as fish reads it: 'it\'s' */
static void fish_put(const char *words)
{
    putchar('\'');
    for (; *words; words++) {
        if (strchr("'\\", *words)) putchar('\\');
        putchar(*words);
    }
    putchar('\'');
}

static void fish_option(int i, int verb)
{
    char words[80];
    const char *argument = tt_options[i].argument;
    printf("complete -c tiptoe -n '__fish_seen_subcommand_from %s' -l %s", tt_verbs[verb].name,
           tt_options[i].name);
    if (choices(argument, words))
        printf(" -x -a '%s'", words);
    else if (argument)
        printf(is_file(argument) ? " -r -F" : " -x");
    printf(" -d ");
    fish_put(tt_options[i].words);
    putchar('\n');
}

static void fish_operands(int verb, const tt_words *words)
{
    const operand what = operand_of(verb);
    if (what == NOTHING) return;
    printf("complete -c tiptoe -n '__fish_seen_subcommand_from %s' ", tt_verbs[verb].name);
    printf(what == FILES ? "-F" : "-a '");
    if (what == TABLES) put_tables();
    if (what == WORDS) put_words(words);
    puts(what == FILES ? "" : "'");
}

static void fish(const tt_words *words)
{
    puts("# What fish completes behind tiptoe. Made by the build.\ncomplete -c tiptoe -f");
    for (int v = 0; v < TT_VERBS; v++) {
        printf("complete -c tiptoe -n __fish_use_subcommand -a %s -d ", tt_verbs[v].name);
        fish_put(tt_verbs[v].words);
        putchar('\n');
        for (int i = 0; i < TT_OPTIONS; i++)
            if (takes(i, v)) fish_option(i, v);
        fish_operands(v, words);
    }
}

int main(int argc, char **argv)
{
    static const struct {
        const char *name;
        void (*print)(const tt_words *words);
    } shells[] = {{"bash", bash}, {"zsh", zsh}, {"fish", fish}};
    tt_words words = {0};
    bool known = false;
    const bool room = tt_explain_words(&words);
    for (size_t i = 0; room && argc == 2 && i < sizeof shells / sizeof *shells; i++) {
        if (strcmp(shells[i].name, argv[1]) != 0) continue;
        shells[i].print(&words);
        known = true;
    }
    tt_list_clear(&words);
    if (!known) fputs("usage: completions bash | zsh | fish\n", stderr);
    return known && fflush(stdout) == 0 && !ferror(stdout) ? 0 : 1;
}
