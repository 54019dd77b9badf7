/* source/source.c - the register of sources and lines of calculation. */
#include "source/source.h"

#include <stdarg.h>
#include <stdio.h>

static const tt_source sources[TT_S_COUNT] = {
#define TT_SOURCE(id, document, edition, place, mark) [TT_S_##id] = {document, edition, place, mark},
#include "source/sources.def"
#undef TT_SOURCE
};

const tt_source *tt_source_of(tt_source_id id)
{
    return &sources[id];
}

const char *tt_mark_word(tt_mark mark)
{
    static const char *const words[] = {"read", "from memory", "common practice", "mechanics", "given"};
    return words[mark];
}

static char *write_numbers(tt_pool *pool, const char *format, va_list args)
{
    char line[512];
    vsnprintf(line, sizeof line, format, args);
    return tt_pool_text(pool, line);
}

void tt_step_add(tt_steps *steps, const char *symbol, const char *formula, double value,
                 const char *unit, const tt_source *source, const char *numbers, ...)
{
    if (!steps) return;
    tt_step step = {.symbol = symbol, .formula = formula, .unit = unit, .value = value, .source = *source};
    if (numbers) {
        va_list args;
        va_start(args, numbers);
        step.numbers = write_numbers(steps->pool, numbers, args);
        va_end(args);
    }
    if ((numbers && !step.numbers) || !tt_list_push(&steps->list, step)) steps->failed = true;
}
