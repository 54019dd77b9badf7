/* catalogue/alike.c - which metals the words of a stranger tell of: by their names in other
 * letters, by a part of their names, by words of their titles. */
#include "catalogue/catalogue.h"

#include <string.h>

enum { WORDS = 6, LONGEST = 24 };

typedef struct {
    char word[WORDS][LONGEST];
    size_t n;
} words;

static char small(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool in_word(char c)
{
    return c && !strchr(" ,;-_()/:", c);
}

/* The words of a text in small letters; those that say nothing about which metal are left out. */
static words split(const char *text)
{
    static const char *const idle[] = {"steel", "stainless", "grade", "gr",   "tp",
                                       "uns",   "type",      "astm",  "alloy"};
    words all = {.n = 0};
    while (*text && all.n < WORDS) {
        while (*text && !in_word(*text)) text++;
        size_t n = 0;
        char *word = all.word[all.n];
        for (; in_word(*text); text++)
            if (n + 1 < LONGEST) word[n++] = small(*text);
        word[n] = '\0';
        bool counts = n > 0;
        for (size_t i = 0; i < sizeof idle / sizeof *idle; i++)
            counts = counts && strcmp(word, idle[i]) != 0;
        all.n += counts;
    }
    return all;
}

/* The word stands in the text at the beginning of a word of it, whatever the letters. */
static bool holds(const char *text, const char *word)
{
    for (const char *at = text; *at; at++) {
        if (at > text && in_word(at[-1])) continue;
        size_t i = 0;
        while (word[i] && small(at[i]) == word[i]) i++;
        if (!word[i]) return true;
    }
    return false;
}

static bool same(const char *a, const char *b)
{
    while (*a && small(*a) == small(*b)) a++, b++;
    return small(*a) == small(*b);
}

/* "TP316L": the name behind letters. */
static bool ends_in(const char *word, const char *name)
{
    const size_t n = strlen(word), k = strlen(name);
    return k > 2 && n > k && n <= k + 2 && same(word + n - k, name);
}

/* 0: the name itself; 1: one of the words is its name; 2: all words stand in name or title; 9: no.
 */
static int rank(const tt_metal *metal, const char *text, const words *all)
{
    if (same(text, metal->name)) return 0;
    size_t within = 0;
    for (size_t i = 0; i < all->n; i++) {
        if (same(all->word[i], metal->name) || ends_in(all->word[i], metal->name)) return 1;
        within += holds(metal->title, all->word[i]) || holds(metal->name, all->word[i]);
    }
    return all->n && within == all->n ? 2 : 9;
}

static bool listed(const char *const *names, size_t n, const char *name)
{
    for (size_t i = 0; i < n; i++)
        if (strcmp(names[i], name) == 0) return true;
    return false;
}

size_t tt_metals_alike(const tt_data *own, const char *text, tt_metal_kind kind, const char **names,
                       size_t most)
{
    const words all = split(text);
    size_t n = 0;
    for (int wanted = 0; wanted < 3 && n == 0; wanted++)
        for (size_t i = 0; i < tt_metals_count(own) && n < most; i++) {
            const tt_metal *metal = tt_metals_at(own, i);
            if (!metal || metal->kind != kind || rank(metal, text, &all) != wanted) continue;
            if (!listed(names, n, metal->name)) names[n++] = metal->name;
        }
    return n;
}
