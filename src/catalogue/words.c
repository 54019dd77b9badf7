/* catalogue/words.c - do two spellings name the same size? Each is taken apart into numbers, by
 * their value, and words in small letters; what people add or leave out is passed over. */
#include "catalogue/catalogue.h"

#include <stdlib.h>
#include <string.h>

enum { LONGEST_WORD = 15 };

typedef struct {
    const char *at;
    bool pipe;
} cursor;

typedef struct {
    bool end, number;
    double value;
    char word[LONGEST_WORD + 1];
} token;

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static char small(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool is_letter(char c)
{
    return small(c) >= 'a' && small(c) <= 'z';
}

/* Digits and at most one point, by hand: no locale has a say. */
static double decimal(const char **at)
{
    double value = 0.0, part = 1.0;
    for (; is_digit(**at); ++*at) value = 10.0 * value + (**at - '0');
    if (**at != '.' || !is_digit((*at)[1])) return value;
    for (++*at; is_digit(**at); ++*at) value += (part /= 10.0) * (**at - '0');
    return value;
}

/* "/2" behind what was read: the fraction; else as it is. */
static double over(const char **at, double value)
{
    if (**at != '/' || !is_digit((*at)[1])) return value;
    ++*at;
    const double below = decimal(at);
    return below > 0.0 ? value / below : value;
}

/* "1 1/2", "1-1/2", "3/4", "1.5". */
static double number(const char **at)
{
    const double whole = decimal(at);
    if (**at == '/') return over(at, whole);
    const char *next = *at + strspn(*at, " -");
    if (next == *at || !is_digit(*next)) return whole;
    const double above = decimal(&next);
    if (*next != '/' || !is_digit(next[1])) return whole;
    const double part = over(&next, above);
    *at = next;
    return whole + part;
}

/* Words that say nothing about the size. */
static bool idle(const char *word, bool pipe)
{
    static const char *const any[] = {"bar", "tube",  "pipe", "rod", "flat",
                                      "box", "round", "nps",  "mm",  "nominal"};
    static const char *const of_pipes[] = {"in", "inch", "sch", "schedule"};
    for (size_t i = 0; i < sizeof any / sizeof *any; i++)
        if (strcmp(word, any[i]) == 0) return true;
    for (size_t i = 0; pipe && i < sizeof of_pipes / sizeof *of_pipes; i++)
        if (strcmp(word, of_pipes[i]) == 0) return true;
    return false;
}

/* Another word for the same. */
static void settle(token *t, bool pipe)
{
    if (strcmp(t->word, "inch") == 0) strcpy(t->word, "in");
    const bool standard = strcmp(t->word, "std") == 0;
    if (pipe && strcmp(t->word, "xxh") == 0) strcpy(t->word, "xxs");
    if (!pipe || !(standard || strcmp(t->word, "xs") == 0 || strcmp(t->word, "xh") == 0)) return;
    t->number = true;
    t->value = standard ? 40.0 : 80.0;
}

static void read_word(cursor *c, token *t)
{
    size_t n = 0;
    const bool times = strncmp(c->at, "\xC3\x97", 2) == 0;
    if (times) c->at += 2;
    if (times) t->word[n++] = 'x';
    for (; !times && is_letter(*c->at); c->at++)
        if (n < LONGEST_WORD) t->word[n++] = small(*c->at);
    if (n == 0) t->word[n++] = *c->at++;
    t->word[n] = '\0';
}

static token next(cursor *c)
{
    for (;;) {
        token t = {0};
        c->at += strspn(c->at, " -\"\t");
        while (c->pipe && *c->at == '.' && !is_digit(c->at[1])) c->at++; /* "Sch. 80" */
        c->at += strspn(c->at, " -\"\t");
        t.end = *c->at == '\0';
        t.number = is_digit(*c->at) || (*c->at == '.' && is_digit(c->at[1]));
        if (t.end) return t;
        if (t.number) {
            t.value = number(&c->at);
            return t;
        }
        read_word(c, &t);
        if (idle(t.word, c->pipe)) continue;
        settle(&t, c->pipe);
        return t;
    }
}

static bool alike(const token *a, const token *b)
{
    if (a->end || b->end) return a->end && b->end;
    if (a->number || b->number) {
        const double apart = a->value - b->value;
        return a->number && b->number && apart < 1e-9 && apart > -1e-9;
    }
    return strcmp(a->word, b->word) == 0;
}

bool tt_same_size(const char *form, const char *a, const char *b)
{
    const bool pipe = strcmp(form, "pipe") == 0;
    cursor one = {a, pipe}, other = {b, pipe};
    for (;;) {
        const token t = next(&one), u = next(&other);
        if (!alike(&t, &u)) return false;
        if (t.end) return true;
    }
}
