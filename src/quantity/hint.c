/* quantity/hint.c - hints for units that are unknown or measure something else: the word that is
 * meant, the nearest spelling, or an example of the kind that is due. */
#include "quantity/hint.h"
#include "quantity/number.h"

#include <stdio.h>
#include <string.h>

enum { WORD = 16, LONG = 48 };

static const struct {
    const char *word, *hint;
} refused[] = {
#define TT_REFUSED(word, hint) {word, hint},
#include "quantity/refused.def"
#undef TT_REFUSED
};

/* The units that values are written in. */
static const struct {
    tt_kind kind;
    const char *unit;
} written[] = {
#define TT_WRITING(kind, system, unit, least) {TT_Q_##kind, unit},
#include "quantity/writings.def"
#undef TT_WRITING
};

/* Units that are taken for each other. */
static const struct {
    const char *written, *meant, *hint;
} confused[] = {
    {"lb", "lbf", "lb is mass; write lbf"},
    {"lbf", "lb", "lbf is force; write lb for a mass"},
    {"kg", "N", "kg is mass; write N: 1 kg weighs 9.80665 N"},
    {"t", "kN", "t is mass; write kN: 1 t weighs 9.80665 kN"},
    {"N", "kg", "N is force; write kg for a mass"},
    {"kN", "kg", "kN is force; write kg for a mass"},
};

static int lower(char c)
{
    return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c;
}

static bool same_letters(const char *a, const char *b)
{
    while (*a && lower(*a) == lower(*b)) a++, b++;
    return lower(*a) == lower(*b);
}

static const char *refused_hint(const char *word)
{
    for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
        if (same_letters(refused[i].word, word)) return refused[i].hint;
    }
    return NULL;
}

/* The unit meant by a word: other capitals, or one letter off; the kind due goes before others.
 * Where the word is all of the unit, another kind comes last and with its capitals only. */
static const char *nearest(const char *word, tt_kind kind, bool whole)
{
    const tt_unit due = tt_kind_unit(kind);
    const char *best = NULL;
    size_t least = 4;
    for (const tt_unit_row *row = tt_unit_rows; row->symbol; row++) {
        const bool close = strlen(row->symbol) > 1 && tt_text_distance(word, row->symbol, 1) <= 1;
        const bool capitals = same_letters(word, row->symbol);
        const bool same = tt_unit_same(&row->unit, &due);
        if (!capitals && (!close || (whole && !same))) continue;
        const size_t cost = (capitals ? 0u : 2u) + (same ? 0u : whole ? 3u : 1u);
        if (cost < least) {
            least = cost;
            best = row->symbol;
        }
    }
    return best;
}

/* Is the text a unit? */
static bool reads(const char *text)
{
    tt_unit unit;
    tt_unit_slip slip;
    return text[0] && tt_unit_parse(text, strlen(text), &unit, &slip);
}

/* The same letters but for points and strokes: "ms" and "m/s". */
static bool run_together(const char *word, const char *unit)
{
    for (;; word++, unit++) {
        unit += strspn(unit, "./");
        if (lower(*word) != lower(*unit)) return false;
        if (!*word) return true;
    }
}

static const char *compound(const char *word, tt_kind kind)
{
    for (size_t i = 0; i < sizeof written / sizeof *written; i++)
        if (written[i].kind == kind && strpbrk(written[i].unit, "./") &&
            run_together(word, written[i].unit))
            return written[i].unit;
    return NULL;
}

/* Signs between and behind the words of a unit as people write them, and as they are read. */
static const struct {
    const char *written, *read;
} signs[] = {{"^", ""},
             {"**", ""},
             {"*", "."},
             {"-", "."},
             {"\xC2\xB2", "2"},
             {"\xC2\xB3", "3"},
             {"\xC2\xB7", "."},
             {"\xE2\x8B\x85", "."},
             {"\xE2\x81\xB4", "4"}};

enum { SIGNS = sizeof signs / sizeof *signs };

/* "m^2", "N*m" as it is read; false where that is no unit either. */
static bool respelt(const char *text, size_t length, char out[LONG])
{
    size_t n = 0;
    for (size_t at = 0; at < length && n + 2 < LONG;) {
        size_t i = 0;
        while (i < SIGNS && strncmp(text + at, signs[i].written, strlen(signs[i].written)) != 0)
            i++;
        if (i == SIGNS) {
            out[n++] = text[at++];
            continue;
        }
        if (signs[i].read[0]) out[n++] = signs[i].read[0];
        at += strlen(signs[i].written);
    }
    out[n] = '\0';
    return reads(out);
}

static bool bad_form(tt_quantity *out, const char *text, size_t at, tt_unit_slip slip)
{
    char unit[LONG];
    if (respelt(text + at, strcspn(text + at, " "), unit))
        return tt_quantity_fail(out, TT_QUANTITY_UNKNOWN, at + slip.at, slip.length, "write %s",
                                unit);
    return tt_quantity_fail(out, TT_QUANTITY_UNKNOWN, at + slip.at, slip.length,
                            "units are written as mm2, N.m, kN/m, kN.m/rad, 1/K");
}

/* The whole unit with one word of it mended: "m/sec" where `s` is meant for `sec`. */
static bool mend(tt_quantity *out, const char *text, size_t at, tt_unit_slip slip, const char *word)
{
    char unit[LONG];
    const size_t start = at + slip.at, behind = start + slip.length;
    snprintf(unit, sizeof unit, "%.*s%s%.*s", (int)slip.at, text + at, word,
             (int)strcspn(text + behind, " "), text + behind);
    return tt_quantity_fail(out, TT_QUANTITY_UNKNOWN, start, slip.length, "write %s",
                            reads(unit) ? unit : word);
}

bool tt_hint_unknown(tt_quantity *out, const char *text, size_t at, tt_unit_slip slip, tt_kind kind)
{
    const size_t start = at + slip.at;
    if (slip.form) return bad_form(out, text, at, slip);
    char word[WORD] = "", all[WORD] = "";
    const size_t length = strcspn(text + at, " ");
    if (slip.length < WORD) memcpy(word, text + start, slip.length);
    if (length < WORD) memcpy(all, text + at, length);
    const char *hint = refused_hint(word), *whole = compound(all, kind);
    if (hint && strncmp(hint, "write ", 6) == 0 && reads(hint + 6))
        return mend(out, text, at, slip, hint + 6);
    if (hint) return tt_quantity_fail(out, TT_QUANTITY_UNKNOWN, start, slip.length, "%s", hint);
    if (whole)
        return tt_quantity_fail(out, TT_QUANTITY_UNKNOWN, start, slip.length, "write %s", whole);
    const char *near = nearest(word, kind, slip.length == length);
    if (near) return mend(out, text, at, slip, near);
    return tt_quantity_due(out, TT_QUANTITY_UNKNOWN, start, slip.length, kind,
                           "no unit of that name; ");
}

/* Does the unit name this word, to the first power and above the stroke? */
static bool names(const char *text, size_t length, const char *word)
{
    const size_t n = strlen(word);
    for (size_t i = 0; i + n <= length && text[i] != '/'; i++) {
        const bool begins = i == 0 || text[i - 1] == '.';
        const bool ends = i + n == length || text[i + n] == '.' || text[i + n] == '/';
        if (begins && ends && memcmp(text + i, word, n) == 0) return true;
    }
    return false;
}

static const char *confusion(const char *text, size_t length, const tt_unit *unit,
                             const tt_unit *due)
{
    for (size_t i = 0; i < sizeof confused / sizeof *confused; i++) {
        const char *mistaken = confused[i].written, *meant = confused[i].meant;
        if (!names(text, length, mistaken)) continue;
        const tt_unit *from = &tt_unit_find(mistaken, strlen(mistaken))->unit;
        const tt_unit *to = &tt_unit_find(meant, strlen(meant))->unit;
        tt_unit mended = *unit;
        for (int k = 0; k < TT_BASES; k++) mended.power[k] += to->power[k] - from->power[k];
        if (tt_unit_same(&mended, due)) return confused[i].hint;
    }
    return NULL;
}

/* The word of the first kind that has this unit; NULL when no kind has. */
static const char *measured(const tt_unit *unit)
{
    for (int kind = 0; kind < TT_Q_COUNT; kind++) {
        const tt_unit other = tt_kind_unit((tt_kind)kind);
        if (kind != TT_Q_PURE && tt_unit_same(unit, &other)) return tt_kind_word((tt_kind)kind);
    }
    return NULL;
}

bool tt_hint_wrong(tt_quantity *out, const char *text, size_t at, size_t length,
                   const tt_unit *unit, tt_kind kind)
{
    const tt_unit due = tt_kind_unit(kind);
    const char *hint = confusion(text + at, length, unit, &due), *is = measured(unit);
    char before[60] = "";
    if (hint) return tt_quantity_fail(out, TT_QUANTITY_WRONG, at, length, "%s", hint);
    if (is) snprintf(before, sizeof before, "this is %s %s; ", tt_article(is), is);
    return tt_quantity_due(out, TT_QUANTITY_WRONG, at, length, kind, before);
}
