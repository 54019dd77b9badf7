/* piecefile/tell.c - diagnostics about a node, origins of values, the path to the key in hand,
 * nearest spellings. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static bool holds(const tt_node *root, const tt_node *node)
{
    if (root == node) return true;
    for (size_t i = 0; i < root->n; i++)
        if (holds(root->child[i], node)) return true;
    return false;
}

/* A node from the command line or from a file beside is shown in its own text. */
static void about(tt_reader *reader, const tt_node *node)
{
    for (size_t i = reader->sets.n; node && (node->set || node->beside) && i-- > 0;) {
        const tt_set_entry *entry = &reader->sets.at[i];
        if (!entry->root || !holds(entry->root, node)) continue;
        tt_diags_about(reader->diags, entry->file ? entry->file : "--set", entry->text,
                       strlen(entry->text));
        return;
    }
}

void tt_tell(tt_reader *reader, tt_severity severity, tt_number number, const tt_node *node,
             tt_place place, const char *hint, const char *format, ...)
{
    char words[512];
    va_list args;
    va_start(args, format);
    vsnprintf(words, sizeof words, format, args);
    va_end(args);
    about(reader, node);
    tt_diags_add(reader->diags, severity, number, place, hint, "%s", words);
    tt_diags_about(reader->diags, reader->file, reader->text, reader->length);
}

tt_place tt_key_place(const tt_node *node)
{
    return node->key_place.line ? node->key_place : node->place;
}

tt_place tt_keep_place(const tt_node *node)
{
    return node->set || node->beside ? (tt_place){0} : tt_key_place(node);
}

void tt_wrong_shape(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    char hint[240];
    snprintf(hint, sizeof hint, "write it like this: %s", tt_example(reader, key));
    tt_wrong(reader, TT_D_SHAPE, node, hint, "`%s` is not written in a form that is read here",
             key->name);
}

void tt_enter(tt_reader *reader, const char *step)
{
    if (reader->depth < sizeof reader->step / sizeof *reader->step)
        reader->step[reader->depth] = step;
    reader->depth++;
}

void tt_leave(tt_reader *reader)
{
    reader->depth--;
}

const char *tt_path(tt_reader *reader)
{
    const size_t most = sizeof reader->step / sizeof *reader->step;
    tt_text path = {0};
    for (size_t i = 0; i < reader->depth && i < most; i++)
        tt_text_format(&path, "%s%s", i ? "/" : "", reader->step[i]);
    if (path.failed) reader->no_memory = true;
    const char *kept = tt_keep(reader, tt_text_of(&path));
    tt_text_clear(&path);
    return kept;
}

const char *tt_keep(tt_reader *reader, const char *text)
{
    if (!text) return NULL;
    const char *kept = tt_pool_text(&reader->piece->pool, text);
    if (!kept) reader->no_memory = true;
    return kept ? kept : "";
}

static unsigned origin(tt_reader *reader, tt_origin added)
{
    if (!tt_list_push(&reader->piece->origins, added)) {
        reader->no_memory = true;
        return 0;
    }
    return (unsigned)(reader->piece->origins.n - 1);
}

unsigned tt_origin_add(tt_reader *reader, const tt_node *node, const char *written, const char *why)
{
    const tt_key *key = reader->defaulting;
    const tt_origin_kind kind = key         ? TT_ORIGIN_DEFAULT
                                : node->set ? TT_ORIGIN_SET
                                            : TT_ORIGIN_FILE;
    return origin(reader, (tt_origin){.key = tt_path(reader),
                                      .written = tt_keep(reader, written),
                                      .why = tt_keep(reader, key ? key->why : why),
                                      .kind = kind,
                                      .place = key || node->beside ? (tt_place){0} : node->place});
}

/* A default is told once, however many places take it. */
static unsigned told_before(const tt_reader *reader, const char *key, const char *written)
{
    for (size_t i = 1; i < reader->piece->origins.n; i++) {
        const tt_origin *from = &reader->piece->origins.at[i];
        if (from->kind == TT_ORIGIN_DEFAULT && from->key && from->written &&
            strcmp(from->key, key) == 0 && strcmp(from->written, written) == 0) {
            return (unsigned)i;
        }
    }
    return 0;
}

unsigned tt_origin_default(tt_reader *reader, const char *key, const char *written, const char *why)
{
    const unsigned before = told_before(reader, key, written);
    if (before) return before;
    return origin(reader, (tt_origin){.key = tt_keep(reader, key),
                                      .written = tt_keep(reader, written),
                                      .why = tt_keep(reader, why),
                                      .kind = TT_ORIGIN_DEFAULT});
}

/* The part whose key is read: the entry of a list or the name of a limb, else the whole. */
static const char *part_of_path(tt_reader *reader)
{
    const tt_key *top = reader->depth > 1 ? tt_key_named(&tt_root_map, reader->step[0]) : NULL;
    const bool of_part = top && (top->kind == TT_KEY_LIST || top->kind == TT_KEY_NAMES);
    return of_part ? tt_keep(reader, reader->step[1]) : "the whole piece";
}

void tt_wait(tt_reader *reader, const tt_node *node, const tt_consumer *consumer)
{
    const char *because;
    tt_piece *piece = reader->piece;
    if (consumer->unless && tt_is_word(tt_value(reader, node, &because), consumer->unless)) return;
    const tt_waiting waits = {tt_path(reader), part_of_path(reader), consumer->check,
                              consumer->why,   consumer->give,       consumer->needed};
    for (size_t i = 0; i < piece->waiting.n; i++) {
        const tt_waiting *told = &piece->waiting.at[i];
        if (strcmp(told->check, waits.check) == 0 && strcmp(told->why, waits.why) == 0 &&
            strcmp(told->where, waits.where) == 0)
            return;
    }
    if (!tt_list_push(&piece->waiting, waits)) reader->no_memory = true;
}

void tt_origin_data(tt_reader *reader, const char *name, const tt_row_place *at,
                    const tt_source *source)
{
    if (!at->file) return;
    for (size_t i = 1; i < reader->piece->origins.n; i++) {
        const tt_origin *from = &reader->piece->origins.at[i];
        if (from->kind == TT_ORIGIN_DATA && from->place.line == at->line) return;
    }
    char why[200];
    snprintf(why, sizeof why, "%.160s (%s)", source->document, tt_mark_word(source->mark));
    origin(reader, (tt_origin){.key = tt_path(reader),
                               .written = tt_keep(reader, name),
                               .why = tt_keep(reader, why),
                               .kind = TT_ORIGIN_DATA,
                               .place = {.line = at->line}});
}

/* ---- nearest spellings ---- */

enum { PART = 9 }; /* the distance of what holds the word, or the other way round */

tt_near tt_near_to(const char *word)
{
    return (tt_near){.word = word};
}

/* "foot" of "ball of foot"; "S355" where "S355J2H" was written. */
static bool part(const char *word, const char *candidate)
{
    const size_t n = strlen(candidate);
    return (strlen(word) > 2 && strstr(candidate, word)) ||
           (n > 3 && strncmp(word, candidate, n) == 0);
}

/* Two neighbouring letters in the wrong order: "teo" for "toe". */
static bool swapped(const char *word, const char *candidate)
{
    size_t i = 0;
    while (word[i] && word[i] == candidate[i]) i++;
    return word[i] && word[i + 1] && candidate[i] && word[i] == candidate[i + 1] &&
           word[i + 1] == candidate[i] && strcmp(word + i + 2, candidate + i + 2) == 0;
}

void tt_near_try(tt_near *near, const char *candidate)
{
    const size_t most = strlen(near->word) < 5 ? 1 : strlen(near->word) < 9 ? 2 : 3;
    size_t distance =
        swapped(near->word, candidate) ? 1 : tt_text_distance(near->word, candidate, most);
    if (distance > most && !part(near->word, candidate)) return;
    if (distance > most) distance = PART;
    for (size_t i = 0; i < 3; i++) {
        if (near->best[i] && strcmp(near->best[i], candidate) == 0) return;
        if (near->best[i] && near->distance[i] <= distance) continue;
        for (size_t j = 2; j > i; j--) {
            near->best[j] = near->best[j - 1];
            near->distance[j] = near->distance[j - 1];
        }
        near->best[i] = candidate;
        near->distance[i] = distance;
        return;
    }
}

/* The other way round at a dash: "hip-toe" for "toe-hip". */
static bool reversed(const char *word, const char *candidate)
{
    const size_t n = strlen(word);
    for (const char *dash = strchr(word, '-'); dash; dash = strchr(dash + 1, '-')) {
        const size_t first = (size_t)(dash - word), second = n - first - 1;
        if (strlen(candidate) == n && candidate[second] == '-' &&
            strncmp(candidate, dash + 1, second) == 0 &&
            strncmp(candidate + second + 1, word, first) == 0)
            return true;
    }
    return false;
}

void tt_near_try_segment(tt_near *near, const char *candidate)
{
    if (!reversed(near->word, candidate)) {
        if (!near->best[0] || near->distance[0] > 0) tt_near_try(near, candidate);
        return;
    }
    near->best[0] = candidate;
    near->distance[0] = 0;
    near->best[1] = near->best[2] = NULL;
}

const char *tt_near_only(const tt_near *near)
{
    const bool one = near->best[0] && near->distance[0] < PART &&
                     (!near->best[1] || near->distance[1] > near->distance[0]);
    return one ? near->best[0] : NULL;
}

const char *tt_near_words(tt_near *near, const char *otherwise)
{
    if (!near->best[0]) return otherwise;
    size_t used =
        (size_t)snprintf(near->words, sizeof near->words, "did you mean `%.50s`", near->best[0]);
    for (size_t i = 1; i < 3 && near->best[i]; i++)
        used += (size_t)snprintf(near->words + used, sizeof near->words - used, "%s `%.50s`",
                                 i < 2 && near->best[2] ? "," : " or", near->best[i]);
    snprintf(near->words + used, sizeof near->words - used, "?");
    return near->words;
}
