/* base/diags.h - adding to a list of diagnostics. The permanent numbers stand in numbers.def. */
#ifndef TT_BASE_DIAGS_H
#define TT_BASE_DIAGS_H

#include "tiptoe/diag.h"

/** The permanent numbers, by name. */
typedef enum {
#define TT_NUMBER(number, name, title, cure) TT_D_##name = number,
#include "base/numbers.def"
#undef TT_NUMBER
} tt_number;

/** What a diagnostic number means (title) and how it is cured; NULL for an unknown number. */
const char *tt_number_title(unsigned number);
const char *tt_number_cure(unsigned number);

/** The file name and text that later diagnostics tell of; both are lent until the next call and
 * copied as far as a diagnostic needs them. */
void tt_diags_about(tt_diags *diags, const char *file, const char *text, size_t length);

/** Adds one. `hint` may be NULL. Text is copied. Severity is that of `severity`. */
void tt_diags_add(tt_diags *diags, tt_severity severity, tt_number number, tt_place place,
                  const char *hint, const char *format, ...) __attribute__((format(printf, 6, 7)));

/** An error. */
#define tt_complain(diags, number, place, hint, ...)                                               \
    tt_diags_add(diags, TT_ERROR, number, place, hint, __VA_ARGS__)

/** Memory ran out while adding: the list is short. */
bool tt_diags_short(const tt_diags *diags);

#endif
