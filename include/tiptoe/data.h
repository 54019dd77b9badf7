/* tiptoe/data.h - metals and stock of one's own, laid over the built-in tables. */
#ifndef TIPTOE_DATA_H
#define TIPTOE_DATA_H

#include "tiptoe/diag.h"
#include "tiptoe/status.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef struct tt_data tt_data; /* opaque: rows of a file, each with its source and its line */

/** Reads the text of a table in the format of data/README.md. `file` is its name for messages.
 *  Its rows are added to the built-in ones; a row of a built-in name takes the place of all
 *  built-in rows of that name and kind. All faults found in one pass go to diags; TT_E_INPUT when
 *  one of them is an error, TT_E_NOMEM, and then *data is NULL. Text and name are copied; diags
 *  keeps pointing into the text only until this returns.
 *  What is read with the data lends from it: free it after pieces and assessments. */
tt_status tt_data_read(const char *file, const char *text, size_t length, tt_diags *diags,
                       tt_data **data);

tt_data *tt_data_free(tt_data *data); /* takes NULL, returns NULL */

#ifdef __cplusplus
}
#endif
#endif
