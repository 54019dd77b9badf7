/* build/piece_file_page.c - prints the reference page of the piece file, Markdown: first the file
 * that its argument names, then one table for each map of the key table, in the order in which the
 * maps are met, and last the keys that are not read. */
#include "piecefile/keys.h"

#include <stdio.h>

/* Text in a cell: a stroke would end it. */
static void cell(const char *text)
{
    for (; *text; text++) {
        if (*text == '|') putchar('\\');
        putchar(*text);
    }
}

static void code(const char *text)
{
    putchar('`');
    cell(text);
    putchar('`');
}

static void words(const char *const *word)
{
    for (size_t i = 0; word[i]; i++) {
        if (i) printf(word[i + 1] ? ", " : " or ");
        code(word[i]);
    }
}

static void reads(const tt_key *key)
{
    tt_text text = {0};
    tt_key_reads(&text, key, true);
    cell(tt_text_of(&text));
    if (key->reason) printf("; needs a reason %s", key->reason);
    tt_text_clear(&text);
}

/* What may also be said of the bronze at large has its default there. */
static void left_out(const tt_key *key, const tt_map *map)
{
    if (map != &tt_bronze_map && tt_key_named(&tt_bronze_map, key->name) && map != &tt_root_map) {
        printf("as in `bronze`");
        return;
    }
    if (key->required) printf("**needed**");
    if (key->otherwise) code(key->otherwise);
    if (key->otherwise && key->why) printf(": ");
    if (key->why) cell(key->why);
    if (key->spread_low > 0 && key->spread_high > 0)
        printf("low and high: %g and %g of it", key->spread_low, key->spread_high);
}

static void row(const tt_key *key, const tt_map *map)
{
    static const char *const bases[] = {"", " (eu)", " (us)"};
    static const char *const powers[] = {"", "× scale", "× scale²"};
    printf("| `%s`%s | ", key->name, bases[key->basis]);
    cell(key->doc);
    if (key->consumer) printf("; kept, *not checked* yet");
    printf(" | ");
    reads(key);
    printf(" | ");
    left_out(key, map);
    printf(" | %s | ", powers[key->power]);
    code(key->example);
    puts(" |");
}

/* `armature` of a limb */
static void stands_behind(const tt_key *key, const tt_map *of)
{
    if (key->kind == TT_KEY_LIST)
        printf("as an entry of the list `%s`", key->name);
    else if (key->kind == TT_KEY_NAMES)
        printf("behind each name under `%s`", key->name);
    else
        printf("behind `%s`", key->name);
    if (of != &tt_root_map) printf(" of %s", of->title);
}

static void editions(void)
{
    printf("Editions of basis eu: ");
    words(tt_editions(false));
    printf("; of basis us: ");
    words(tt_editions(true));
    puts(". The first is the default.\n");
}

/* Says where the keys of this map stand. */
static void parents(const tt_maps *all, const tt_map *map)
{
    size_t n = 0;
    for (size_t m = 0; m < all->n; m++)
        for (const tt_map *part = all->map[m]; part; part = part->also)
            for (size_t i = 0; i < part->n; i++) {
                if (part->key[i].map != map) continue;
                printf(n++ ? ", " : "Written ");
                stands_behind(&part->key[i], all->map[m]);
            }
    if (n) puts(".");
    if (tt_map_note(map)) puts(tt_map_note(map));
    if (n) puts("");
}

static void table(const tt_maps *all, const tt_map *map)
{
    const char first = map->title[0];
    printf("\n## %c%s\n\n", first >= 'a' && first <= 'z' ? first - 'a' + 'A' : first,
           map->title + 1);
    if (map == &tt_root_map) editions();
    parents(all, map);
    puts("| key | what it is | reads | left out | scaled | example |");
    puts("| --- | --- | --- | --- | --- | --- |");
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++) row(&part->key[i], map);
}

static bool copy(const char *path)
{
    char part[4096];
    FILE *in = fopen(path, "rb");
    if (!in) return false;
    for (size_t n; (n = fread(part, 1, sizeof part, in)) > 0;) fwrite(part, 1, n, stdout);
    const bool whole = !ferror(in);
    fclose(in);
    return whole;
}

int main(int argc, char **argv)
{
    tt_maps all = {.n = 0};
    if (argc != 2 || !tt_maps_gather(&all, &tt_root_map) || !copy(argv[1])) {
        fputs("usage: piece_file_page HEAD.md\n", stderr);
        return 1;
    }
    for (size_t m = 0; m < all.n; m++) table(&all, all.map[m]);
    return fflush(stdout) == 0 && !ferror(stdout) ? 0 : 1;
}
