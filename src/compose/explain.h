/* compose/explain.h - what `explain` knows: words of the results, checks, diagnostics, keys. */
#ifndef TT_COMPOSE_EXPLAIN_H
#define TT_COMPOSE_EXPLAIN_H

#include "compose/compose.h"

typedef TT_LIST(const char *) tt_words;

/** Every word that can be asked, each once: words of the results, checks, last names of keys.
 *  False without memory; the list is to be cleared. */
bool tt_explain_words(tt_words *out);

/** Adds a word that is not there yet. */
bool tt_words_add(tt_words *words, const char *word);

/** Explains the keys that `word` names, by a path or the end of one; how many there were. */
size_t tt_explain_keys(const char *word, tt_report *out);

/** Explains a table of one's own, a kind of its rows or a property in it; how many there were. */
size_t tt_explain_data(const char *word, tt_report *out);

/** Adds the words that it explains. */
bool tt_explain_data_words(tt_words *out);

/** Adds the last names of all keys. */
bool tt_explain_key_names(tt_words *out);

/** Lists the keys of every map. */
void tt_explain_list_keys(tt_report *out);

#endif
