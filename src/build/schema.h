/* build/schema.h - what the files of the build's own program piece_schema share. */
#ifndef TT_BUILD_SCHEMA_H
#define TT_BUILD_SCHEMA_H

#include "quantity/quantity.h"

/** A regular expression of the texts that are read as such a quantity. */
void tt_schema_pattern(tt_text *out, tt_kind kind, bool negative);

#endif
