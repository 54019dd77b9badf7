/* compose/explain.c - the verb explain: a word of the results, a check, a diagnostic or a key of
 * the piece file, in words; all that can be asked; the nearest spelling of what cannot. */
#include "compose/explain.h"

#include "base/diags.h"
#include "check/check.h"
#include "compose/parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    const char *word, *paragraph;
} words[] = {
#define TT_WORD(word, paragraph) {word, paragraph},
#define TT_ALSO(other, word)
#include "compose/words.def"
#undef TT_WORD
#undef TT_ALSO
};
enum { WORDS = sizeof words / sizeof *words };

static const struct {
    const char *other, *word;
} others[] = {
#define TT_WORD(word, paragraph)
#define TT_ALSO(other, word) {other, word},
#include "compose/words.def"
#undef TT_WORD
#undef TT_ALSO
};
enum { OTHERS = sizeof others / sizeof *others };

static const struct {
    unsigned number;
    const char *fault, *cure;
} faults[] = {
#define TT_FAULT(number, fault, cure) {number, fault, cure},
#include "compose/faults.def"
#undef TT_FAULT
};

static const unsigned numbers[] = {
#define TT_NUMBER(number, name, title, cure) number,
#include "base/numbers.def"
#undef TT_NUMBER
};
enum { NUMBERS = sizeof numbers / sizeof *numbers };

/* "wind 270". */
static bool is_wind(const char *word)
{
    static const char wind[] = "wind ";
    const char *from = word + sizeof wind - 1;
    return strncmp(word, wind, sizeof wind - 1) == 0 && *from && !from[strspn(from, "0123456789")];
}

/* The word under which it is explained. */
static const char *first_word(const char *word)
{
    for (size_t i = 0; i < OTHERS; i++)
        if (strcmp(others[i].other, word) == 0) return others[i].word;
    return is_wind(word) ? "wind" : word;
}

static size_t explain_words(const char *word, tt_report *out)
{
    size_t found = 0;
    for (size_t i = 0; i < WORDS; i++) {
        if (strcmp(words[i].word, first_word(word)) != 0) continue;
        tt_report_heading(out, 2, tt_report_text(out, "%s, a word of the results", word));
        tt_report_say(out, words[i].paragraph);
        found++;
    }
    return found;
}

static size_t explain_checks(const char *word, tt_report *out)
{
    size_t found = 0;
    for (size_t i = 0; i < tt_checks_count(); i++) {
        const tt_check *check = tt_checks_at(i);
        if (strcmp(check->name, word) != 0 && strcmp(check->title, word) != 0) continue;
        tt_report_heading(out, 2,
                          tt_report_text(out, "%s, a check: %s", check->name, check->title));
        tt_report_say(out, check->explain);
        tt_report_say(out, tt_report_text(out,
                                          "Source: %s. `tiptoe check --steps` prints its lines of "
                                          "calculation, each with its own source.",
                                          tt_say_source(out, tt_source_of(check->source))));
        found++;
    }
    return found;
}

/* What the results name and no check of this version computes. */
static const char *const named_only[][2] = {
#define TT_NAME(name, words) {name, words},
#include "compose/names.def"
#undef TT_NAME
};
enum { NAMED_ONLY = sizeof named_only / sizeof *named_only };

static size_t explain_named_only(const char *word, tt_report *out)
{
    size_t found = 0;
    for (size_t i = 0; i < NAMED_ONLY; i++) {
        if (strcmp(named_only[i][0], word) != 0) continue;
        tt_report_heading(out, 2, tt_report_text(out, "%s, a name in the results", word));
        tt_report_say(out, tt_report_text(out,
                                          "%s: no check of this version computes it. The "
                                          "result tells it under `Not checked`, with why.",
                                          named_only[i][1]));
        found++;
    }
    return found;
}

/* 1105 of "TT1105", "tt1105", "1105"; 0: no number. */
static unsigned number_of(const char *word)
{
    const bool marked = (word[0] == 'T' || word[0] == 't') && (word[1] == 'T' || word[1] == 't');
    const char *digits = marked ? word + 2 : word;
    const size_t n = strspn(digits, "0123456789");
    return n == 4 && !digits[n] ? (unsigned)strtoul(digits, NULL, 10) : 0;
}

static size_t explain_number(const char *word, tt_report *out)
{
    const unsigned number = number_of(word);
    const char *title = number ? tt_number_title(number) : NULL;
    if (!title) return 0;
    tt_report_heading(out, 2, tt_report_text(out, "TT%u, a diagnostic: %s", number, title));
    tt_report_say(out, tt_number_cure(number));
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
        if (faults[i].number != number) continue;
        tt_report_list(out, TT_BLOCK_LIST);
        tt_report_item(out, tt_report_text(out, "the fault: `%s`", faults[i].fault));
        tt_report_item(out, tt_report_text(out, "the cure: `%s`", faults[i].cure));
    }
    return 1;
}

/* ---- all that can be asked ---- */

bool tt_words_add(tt_words *list, const char *word)
{
    for (size_t i = 0; i < list->n; i++)
        if (strcmp(list->at[i], word) == 0) return true;
    return tt_list_push(list, word);
}

bool tt_explain_words(tt_words *out)
{
    bool room = true;
    for (size_t i = 0; i < WORDS; i++) room = room && tt_words_add(out, words[i].word);
    for (size_t i = 0; i < OTHERS; i++) room = room && tt_words_add(out, others[i].other);
    for (size_t i = 0; i < tt_checks_count(); i++)
        room = room && tt_words_add(out, tt_checks_at(i)->name);
    for (size_t i = 0; i < NAMED_ONLY; i++) room = room && tt_words_add(out, named_only[i][0]);
    return room && tt_explain_data_words(out) && tt_explain_key_names(out);
}

static void list_words(tt_report *out)
{
    tt_text all = {0};
    for (size_t i = 0; i < WORDS; i++) tt_text_format(&all, "%s%s", i ? ", " : "", words[i].word);
    for (size_t i = 0; i < OTHERS; i++) tt_text_format(&all, ", %s", others[i].other);
    tt_report_heading(out, 2, "Words of the results");
    tt_report_say(out, tt_report_text(out, "%s.", tt_text_of(&all)));
    if (all.failed) out->failed = true;
    tt_text_clear(&all);
}

static void list_checks(tt_report *out)
{
    static const tt_column columns[] = {{"check", TT_LEFT}, {"what it judges", TT_LEFT}};
    tt_report_heading(out, 2, "Checks");
    tt_report_table(out, columns, 2);
    for (size_t i = 0; i < tt_checks_count(); i++) {
        const char *const cells[] = {tt_checks_at(i)->name, tt_checks_at(i)->title};
        tt_report_row(out, cells);
    }
}

static void list_numbers(tt_report *out)
{
    static const tt_column columns[] = {{"number", TT_LEFT}, {"what it tells", TT_LEFT}};
    tt_report_heading(out, 2, "Diagnostics");
    tt_report_table(out, columns, 2);
    for (size_t i = 0; i < NUMBERS; i++) {
        const char *const cells[] = {tt_report_text(out, "TT%u", numbers[i]),
                                     tt_number_title(numbers[i])};
        tt_report_row(out, cells);
    }
}

static void list_all(tt_report *out)
{
    tt_report_heading(out, 1, "tiptoe explain");
    tt_report_say(out, "Ask for any of these: tiptoe explain wall, tiptoe explain bronze/wall, "
                       "tiptoe explain margin, tiptoe explain TT1101; tiptoe explain data teaches "
                       "a table of your own.");
    list_words(out);
    list_checks(out);
    tt_explain_list_keys(out);
    list_numbers(out);
}

/* ---- what cannot be asked ---- */

static tt_status unknown(const char *word, tt_diags *diags)
{
    const size_t n = strlen(word), most = n < 5 ? 1 : n < 9 ? 2 : 3;
    const char *stroke = strrchr(word, '/'), *last = stroke ? stroke + 1 : word, *best = NULL;
    tt_words all = {0};
    const bool room = tt_explain_words(&all);
    size_t least = most + 1;
    for (size_t i = 0; i < all.n; i++) {
        const size_t away = tt_text_distance(last, all.at[i], most);
        if (away < least) best = all.at[i];
        if (away < least) least = away;
    }
    char hint[120] = "tiptoe explain lists what can be asked";
    if (best) snprintf(hint, sizeof hint, "did you mean `%.80s`?", best);
    tt_complain(diags, TT_D_WORD_UNKNOWN, (tt_place){0}, hint, "nothing here explains `%.80s`",
                word);
    tt_list_clear(&all);
    return room ? TT_E_INPUT : TT_E_NOMEM;
}

/* A star in a path lets any word in. */
static void title(const char *word, tt_report *out)
{
    tt_text plain = {0};
    tt_text_put_plain(&plain, word);
    if (plain.failed) out->failed = true;
    tt_report_heading(out, 1, tt_report_text(out, "tiptoe explain: %s", tt_text_of(&plain)));
    tt_text_clear(&plain);
}

tt_status tt_compose_explain(const char *word, tt_diags *diags, tt_report *out)
{
    if (!word) {
        list_all(out);
        return out->failed ? TT_E_NOMEM : TT_OK;
    }
    title(word, out);
    const size_t found = explain_words(word, out) + explain_checks(word, out) +
                         explain_named_only(word, out) + tt_explain_keys(word, out) +
                         tt_explain_data(word, out) + explain_number(word, out);
    if (out->failed) return TT_E_NOMEM;
    return found ? TT_OK : unknown(word, diags);
}
