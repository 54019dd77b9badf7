/* build/result_schema.c - prints the schema of a result (JSON Schema, draft-07) from its template:
 * where that has @WORDS@, the words of the table of that name, in quotes, stand in their place. */
#include "basis/basis.h"
#include "check/check.h"
#include "model/model.h"
#include "piece/ledger.h"
#include "record/record.h"

#include <stdio.h>
#include <string.h>

typedef const char *word_fn(size_t i); /* NULL behind the last */

static const char *verdict(size_t i)
{
    return i <= TT_NOT_CHECKED ? tt_verdict_word[i] : NULL;
}

static const char *weight_source(size_t i)
{
    return i <= TT_BY_SCALES ? tt_weight_source_word[i] : NULL;
}

static const char *outline(size_t i)
{
    return i <= TT_OUTLINE_NUMBERS ? tt_outline_word[i] : NULL;
}

static const char *member(size_t i)
{
    return i <= TT_MEMBER_FLAT ? tt_member_word[i] : NULL;
}

static const char *model(size_t i)
{
    return i < TT_MODELS ? tt_model_name[i] : NULL;
}

static const char *pattern(size_t i)
{
    return i < TT_PATTERNS ? tt_pattern_name[i] : NULL;
}

static const char *level(size_t i)
{
    return i < TT_LEVELS ? tt_level_word((tt_level)i) : NULL;
}

static const char *mark(size_t i)
{
    return i <= TT_GIVEN ? tt_mark_word((tt_mark)i) : NULL;
}

static const char *check(size_t i)
{
    return i < tt_checks_count() ? tt_checks_at(i)->name : NULL;
}

static const struct {
    const char *name;
    word_fn *word;
} tables[] = {{"verdicts", verdict}, {"weight sources", weight_source},
              {"outlines", outline}, {"members", member},
              {"models", model},     {"patterns", pattern},
              {"levels", level},     {"marks", mark},
              {"checks", check}};

/* False: no table has this name. */
static bool put_words(const char *name, size_t n)
{
    for (size_t t = 0; t < sizeof tables / sizeof *tables; t++) {
        if (strlen(tables[t].name) != n || strncmp(tables[t].name, name, n) != 0) continue;
        for (size_t i = 0; tables[t].word(i); i++)
            printf("%s\"%s\"", i ? ", " : "", tables[t].word(i));
        return true;
    }
    fprintf(stderr, "no table of words is named %.*s\n", (int)n, name);
    return false;
}

static bool put_line(const char *line)
{
    for (const char *from = strchr(line, '@'); from; from = strchr(line, '@')) {
        const char *to = strchr(from + 1, '@');
        if (!to) break;
        printf("%.*s", (int)(from - line), line);
        if (!put_words(from + 1, (size_t)(to - from - 1))) return false;
        line = to + 1;
    }
    fputs(line, stdout);
    return true;
}

int main(int argc, char **argv)
{
    char line[4096];
    FILE *in = argc == 2 ? fopen(argv[1], "r") : NULL;
    bool good = in != NULL;
    while (good && fgets(line, sizeof line, in)) good = put_line(line);
    if (in) fclose(in);
    return good && fflush(stdout) == 0 && !ferror(stdout) ? 0 : 1;
}
