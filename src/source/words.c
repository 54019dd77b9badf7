/* source/words.c - a source in words. */
#include "source/words.h"

void tt_source_words(tt_text *out, const tt_source *source)
{
    tt_text_put(out, source->document);
    if (source->edition) tt_text_format(out, ", %s", source->edition);
    if (source->place) tt_text_format(out, ", %s", source->place);
}
