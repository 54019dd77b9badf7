/* base/diags.c - collecting diagnostics, in order of place. */
#include "base/diags.h"
#include "base/alloc.h"
#include "base/list.h"
#include "base/pool.h"
#include "base/text.h"

#include <stdarg.h>
#include <string.h>

struct tt_diags {
    TT_LIST(tt_diag) list;
    tt_pool pool;
    const char *file, *text;
    size_t length, most, errors;
    bool short_of_memory;
};

tt_diags *tt_diags_new(size_t most)
{
    tt_diags *diags = tt_alloc(1, sizeof *diags);
    if (diags) diags->most = most ? most : 50;
    return diags;
}

tt_diags *tt_diags_free(tt_diags *diags)
{
    if (!diags) return NULL;
    tt_list_clear(&diags->list);
    tt_pool_clear(&diags->pool);
    return tt_free(diags);
}

void tt_diags_about(tt_diags *diags, const char *file, const char *text, size_t length)
{
    diags->file = file;
    diags->text = text;
    diags->length = length;
}

static const char *line_of(tt_diags *diags, unsigned line)
{
    if (!diags->text || line == 0) return NULL;
    const char *at = diags->text, *end = diags->text + diags->length;
    for (unsigned i = 1; i < line; i++) {
        const char *next = memchr(at, '\n', (size_t)(end - at));
        if (!next) return NULL;
        at = next + 1;
    }
    const char *stop = memchr(at, '\n', (size_t)(end - at));
    size_t length = (size_t)((stop ? stop : end) - at);
    if (length && at[length - 1] == '\r') length--;
    return tt_pool_copy(&diags->pool, at, length);
}

static bool before(const tt_diag *a, const tt_diag *b)
{
    if (a->place.line != b->place.line) return a->place.line < b->place.line;
    return a->place.column < b->place.column;
}

static void insert(tt_diags *diags, tt_diag diag)
{
    if (!tt_list_push(&diags->list, diag)) {
        diags->short_of_memory = true;
        return;
    }
    tt_diag *at = diags->list.at;
    for (size_t i = diags->list.n - 1; i > 0 && before(&at[i], &at[i - 1]); i--) {
        const tt_diag swap = at[i];
        at[i] = at[i - 1];
        at[i - 1] = swap;
    }
}

void tt_diags_add(tt_diags *diags, tt_severity severity, tt_number number, tt_place place,
                  const char *hint, const char *format, ...)
{
    if (severity == TT_ERROR && diags->errors++ >= diags->most) return;
    va_list args;
    va_start(args, format);
    char *text = tt_pool_vformat(&diags->pool, format, args);
    va_end(args);
    if (!text) {
        diags->short_of_memory = true;
        return;
    }
    insert(diags, (tt_diag){.file = tt_pool_text(&diags->pool, diags->file),
                            .text = text,
                            .place = place,
                            .hint = tt_pool_text(&diags->pool, hint),
                            .severity = severity,
                            .shown = line_of(diags, place.line),
                            .number = (unsigned)number});
}

bool tt_diags_short(const tt_diags *diags)
{
    return diags->short_of_memory;
}

size_t tt_diags_count(const tt_diags *diags)
{
    return diags->list.n;
}

size_t tt_diags_errors(const tt_diags *diags)
{
    return diags->errors;
}

const tt_diag *tt_diags_at(const tt_diags *diags, size_t i)
{
    return &diags->list.at[i];
}
