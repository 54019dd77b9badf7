/* build/tabulate.h - what the two files of the build's program tabulate share. */
#ifndef TT_BUILD_TABULATE_H
#define TT_BUILD_TABULATE_H

#include "catalogue/catalogue.h"

/** Writes the const arrays of catalogue/tables.h; false when the file cannot be written. */
bool tt_tables_write(const tt_data *data, const char *path);

#endif
