/* fuzz/read.c - reads one input as a piece and holds what the reader promises: a piece or an error,
 * never both; every diagnostic with a number, in order, inside the text, and printable. Built with
 * TIPTOE_FUZZ_CHECK, a piece that was read is judged too. Aborts on a broken promise. */
#include "fuzz/fuzz.h"

#include "tiptoe/assess.h"
#include "tiptoe/diag.h"
#include "tiptoe/piece.h"

#include <stdlib.h>
#include <string.h>

enum { CHANGES = 4, LINE = 200 };

typedef struct {
    char line[CHANGES + 1][LINE];
    const char *set[CHANGES];
    tt_changes changes;
} options;

#define PROMISE(holds)                                                                             \
    do {                                                                                           \
        if (!(holds)) abort();                                                                     \
    } while (0)

/* The rest of a line at `at`, when the line begins with `word`; the length of the whole line. */
static size_t rest_of_line(const char *at, size_t left, const char *word, char rest[LINE])
{
    const char *end = memchr(at, '\n', left);
    const size_t length = end ? (size_t)(end - at) : left, skip = strlen(word);
    if (length < skip || length - skip >= LINE || memcmp(at, word, skip) != 0) return 0;
    memcpy(rest, at + skip, length - skip);
    rest[length - skip] = '\0';
    return length + (end != NULL);
}

static void take_options(const char *text, size_t size, options *o)
{
    size_t at = 0, taken = 0;
    memset(o, 0, sizeof *o);
    do {
        at += taken;
        taken = rest_of_line(text + at, size - at, "#set ", o->line[o->changes.sets]);
        if (taken) {
            o->set[o->changes.sets] = o->line[o->changes.sets];
            o->changes.sets++;
            continue;
        }
        taken = rest_of_line(text + at, size - at, "#scale ", o->line[CHANGES]);
        if (taken) o->changes.scale = o->line[CHANGES];
    } while (taken && at + taken < size && o->changes.sets < CHANGES);
    o->changes.set = o->set;
}

static void hold_promises(const tt_diags *diags, size_t size)
{
    size_t errors = 0;
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        const tt_diag *diag = tt_diags_at(diags, i);
        char small[8];
        const size_t need = tt_diag_print(diag, small, sizeof small);
        char *whole = malloc(need + 1);
        PROMISE(whole && tt_diag_print(diag, whole, need + 1) == need && strlen(whole) == need);
        free(whole);
        PROMISE(diag->number >= 1000 && diag->text && diag->text[0]);
        PROMISE(diag->place.line <= size + 1);
        errors += diag->severity == TT_ERROR;
    }
    PROMISE(errors == tt_diags_errors(diags) || tt_diags_errors(diags) > errors);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    options o;
    tt_piece *piece = NULL;
    char *text = malloc(size + 1); /* the reader may write one byte past nothing */
    tt_diags *diags = tt_diags_new(0);
    PROMISE(text && diags);
    if (size) memcpy(text, data, size);
    take_options(text, size, &o);
    const tt_status status = tt_piece_read("fuzz.yaml", text, size, &o.changes, diags, &piece);
    free(text);
    PROMISE(status == TT_OK || status == TT_E_INPUT);
    PROMISE((status == TT_OK) == (piece != NULL) && (status == TT_OK) == !tt_diags_errors(diags));
    hold_promises(diags, size);
#ifdef TIPTOE_FUZZ_CHECK
    tt_assessment *assessment = NULL;
    if (piece && tt_assess(piece, diags, &assessment) != TT_OK) PROMISE(!assessment);
    tt_assessment_free(assessment);
#endif
    tt_piece_free(piece);
    tt_diags_free(diags);
    return 0;
}
