/* build/piece_file_page.c - prints the reference page of the piece file, Markdown: first the file
 * that its argument names, then one table for each map of the key table, in the order in which the
 * maps are met, and last the keys that are not read. */
#include "piecefile/keys.h"

#include <stdio.h>

enum { MOST_MAPS = 40 };
typedef struct {
    const tt_map *map[MOST_MAPS];
    size_t n;
} maps;

/* What a map may be in short, or what its keys ask of each other: no row of the table says it. */
static const struct {
    const tt_map *map;
    const char *words;
} notes[] = {
    {&tt_units_map, "Or the unit alone: `units: mm`."},
    {&tt_scale_map, "Or the factor alone: `scale: 3.5`."},
    {&tt_wind_map, "Or `none`, which rules the wind out."},
    {&tt_limb_map, "Or the list of its rows alone."},
    {&tt_segment_map, "A new segment needs `from`, `to` and `outline`. With the name of a segment "
                      "that a limb made, the entry changes that one."},
    {&tt_outline_map, "One of `round`, `oval`, `box`, `girth`; or `none`: bare armature."},
    {&tt_member_map, "A tube or a bar; or `none`."},
    {&tt_armature_map, "Left out, `loss` and `wall_factor` follow from grade, site and basis."},
    {&tt_drag_map, "Or `none`: no wind on it."},
    {&tt_lump_map, "It needs a `mass` or a `skin`. Left out, `drag` is that of a body of "
                   "unknown shape in the basis."},
    {&tt_load_map, "`at` with `force` or `moment`, or `along` with `force_per_length`."},
};

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

/* [a limb](#a-limb) */
static void link_to(const tt_map *map)
{
    printf("[%s](#", map->title);
    for (const char *c = map->title; *c; c++) putchar(*c == ' ' ? '-' : *c);
    putchar(')');
}

static void quantity(const tt_key *key)
{
    if (key->dimension == TT_Q_PURE)
        printf("number");
    else if (key->dimension == TT_Q_LENGTH)
        printf("length, may be bare");
    else
        printf("%s, with its unit", tt_kind_word(key->dimension));
}

static void words(const char *const *word)
{
    for (size_t i = 0; word[i]; i++) {
        if (i) printf(word[i + 1] ? ", " : " or ");
        code(word[i]);
    }
}

/* Words, a quantity or keys: what of the three there is. */
static void own_shape(const tt_key *key)
{
    const bool measures = key->least < key->most;
    if (key->words) words(key->words);
    if (measures) quantity(key);
    if (measures && key->map) printf(", or ");
    if (key->map) printf("keys of ");
    if (key->map) link_to(key->map);
    if (!key->words && !measures && !key->map) printf("as in the example");
}

static void reads(const tt_key *key)
{
    switch (key->kind) {
    case TT_KEY_TEXT:
        printf("words");
        break;
    case TT_KEY_FLAG:
        printf("`yes` or `no`");
        break;
    case TT_KEY_COUNT:
        printf("whole number, %g to %g", key->least, key->most);
        break;
    case TT_KEY_SPREAD:
        quantity(key);
        printf("; spread");
        break;
    case TT_KEY_TRIPLE:
        printf("[x, y, z], each a ");
        quantity(key);
        break;
    case TT_KEY_PLACE:
        printf("name of a place");
        break;
    case TT_KEY_LIST:
        printf(key->map ? "list, each entry " : "list");
        if (key->map) link_to(key->map);
        break;
    case TT_KEY_NAMES:
        printf("names that you choose");
        if (key->map) printf(", behind each ");
        if (key->map) link_to(key->map);
        break;
    default:
        own_shape(key);
    }
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
static void parents(const maps *all, const tt_map *map)
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
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++)
        if (notes[i].map == map) puts(notes[i].words);
    if (n) puts("");
}

static void table(const maps *all, const tt_map *map)
{
    const char first = map->title[0];
    printf("\n## %c%s\n\n", first >= 'a' && first <= 'z' ? first - 'a' + 'A' : first,
           map->title + 1);
    if (map == &tt_root_map) editions();
    parents(all, map);
    puts("| key | what it is | reads | left out | scaled | example |");
    puts("| --- | --- | --- | --- | --- | --- |");
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++)
            if (part->key[i].kind != TT_KEY_UNREAD) row(&part->key[i], map);
}

/* Is it a part of a map that was listed before? */
static bool met(const maps *all, size_t before, const tt_map *part)
{
    for (size_t m = 0; m < before; m++)
        for (const tt_map *of = all->map[m]; of; of = of->also)
            if (of == part) return true;
    return false;
}

static void unread(const maps *all)
{
    puts("\n## Not read by this version\n");
    puts(
        "These keys belong to the format. A file that uses one is refused, so that nobody takes it "
        "for counted.\n");
    puts("| key | of | what it is for |");
    puts("| --- | --- | --- |");
    for (size_t m = 0; m < all->n; m++)
        for (const tt_map *part = all->map[m]; part && !met(all, m, part); part = part->also)
            for (size_t i = 0; i < part->n; i++) {
                if (part->key[i].kind != TT_KEY_UNREAD) continue;
                printf("| `%s` | %s | ", part->key[i].name, part->title);
                cell(part->key[i].doc);
                puts(" |");
            }
}

/* A map and, behind it, those that its keys lead to; each once. False when there are too many. */
static bool gather(maps *all, const tt_map *map)
{
    for (size_t m = 0; m < all->n; m++)
        if (all->map[m] == map) return true;
    if (all->n == MOST_MAPS) return false;
    all->map[all->n++] = map;
    bool room = true;
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++)
            if (part->key[i].map) room = gather(all, part->key[i].map) && room;
    return room;
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
    maps all = {.n = 0};
    if (argc != 2 || !gather(&all, &tt_root_map) || !copy(argv[1])) {
        fputs("usage: piece_file_page HEAD.md\n", stderr);
        return 1;
    }
    for (size_t m = 0; m < all.n; m++) table(&all, all.map[m]);
    unread(&all);
    return fflush(stdout) == 0 && !ferror(stdout) ? 0 : 1;
}
