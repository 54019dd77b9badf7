/* source/words.h - a source in the words that every output prints. */
#ifndef TT_SOURCE_WORDS_H
#define TT_SOURCE_WORDS_H

#include "base/text.h"
#include "source/source.h"

/** "document, edition, place"; what is NULL is left out, and so is the mark. */
void tt_source_words(tt_text *out, const tt_source *source);

#endif
