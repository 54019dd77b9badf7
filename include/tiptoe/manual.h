/* tiptoe/manual.h - what the program can say of itself: words explained, piece files to begin with.
 */
#ifndef TIPTOE_MANUAL_H
#define TIPTOE_MANUAL_H

#include "tiptoe/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/** What a key of the piece file, a check, a word of the results or a diagnostic such as TT1101
 *  means; NULL lists what can be asked. TT_E_INPUT for an unknown word, the nearest in diags. */
tt_status tt_write_explain(const char *word, tt_diags *diags, tt_sink *sink, void *user);

/** Which piece file to begin with; NULL leaves a choice to the program. */
typedef struct {
    const char *what;  /* "figure" (default), "bird", "pair" */
    const char *basis; /* "eu" (default), "us" */
    const char *units; /* "mm", "in"; by the basis */
} tt_start_options;

/** A commented piece file to be typed over; it can be judged as it stands. TT_E_INPUT for a word
 *  that is no choice, said in diags. */
tt_status tt_write_start(const tt_start_options *options, tt_diags *diags, tt_sink *sink,
                         void *user);

#ifdef __cplusplus
}
#endif
#endif
