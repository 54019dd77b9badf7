/* compose/start.h - the piece files to begin with, from data/starts as the build keeps them. A line
 * that begins with @eu, @us, @mm or @in is for that basis or unit alone; a number in angle brackets
 * is a length in mm. */
#ifndef TT_COMPOSE_START_H
#define TT_COMPOSE_START_H

#include "base/text.h"
#include "tiptoe/diag.h"
#include "tiptoe/manual.h"

typedef struct {
    const char *name;
    const char *const *line; /* NULL-ended */
} tt_start;

/** Made by the build; ended by a row without name. */
extern const tt_start tt_starts[];

/** The file as text. TT_E_INPUT for a word that is no choice, said in diags; TT_E_NOMEM. */
tt_status tt_compose_start(const tt_start_options *options, tt_diags *diags, tt_text *out);

#endif
