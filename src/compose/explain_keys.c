/* compose/explain_keys.c - keys of the piece file in words, from the one key table: where they
 * stand, what they read, bounds, what is taken without them, what the scale does to them. */
#include "compose/explain.h"
#include "compose/parts.h"
#include "piecefile/keys.h"

#include <string.h>

enum { DEEPEST = 8 };

/** Where a key stands: "limbs/" and a star, "/wall". */
typedef struct {
    const tt_key *key;
    const char *path;
    bool of_bronze; /* in the map `bronze` at the top of the file */
} spot;

typedef struct {
    TT_LIST(spot) list;
    tt_report *out;
} spots;

static void walk(spots *all, const tt_map *map, const char *before, int depth)
{
    for (const tt_map *part = map; part && depth < DEEPEST; part = part->also)
        for (size_t i = 0; i < part->n; i++) {
            const tt_key *key = &part->key[i];
            const bool many = tt_key_lists(key) || key->kind == TT_KEY_NAMES;
            const char *path = tt_report_text(all->out, "%s%s", before, key->name);
            const spot at = {key, path, map == &tt_bronze_map};
            if (!tt_list_push(&all->list, at)) all->out->failed = true;
            if (key->map)
                walk(all, key->map, tt_report_text(all->out, "%s/%s", path, many ? "*/" : ""),
                     depth + 1);
        }
}

/* ---- is it the key that was asked for? ---- */

/* The last name of the first n bytes. */
static const char *last_name(const char *path, size_t n)
{
    while (n > 0 && path[n - 1] != '/') n--;
    return path + n;
}

/* Is the path, or its end, what was asked for? A star stands for any name. */
static bool named(const char *path, const char *word)
{
    size_t p = strlen(path), w = strlen(word);
    for (;;) {
        const char *a = last_name(path, p), *b = last_name(word, w);
        const size_t na = (size_t)(path + p - a), nb = (size_t)(word + w - b);
        const bool star = (na == 1 && *a == '*') || (nb == 1 && *b == '*');
        if (!star && (na != nb || strncmp(a, b, na) != 0)) return false;
        if (b == word) return true;
        if (a == path) return false;
        p = (size_t)(a - path) - 1;
        w = (size_t)(b - word) - 1;
    }
}

/* ---- one key in words ---- */

static const char *reads(const tt_key *key, tt_report *out)
{
    tt_text text = {0};
    tt_key_reads(&text, key, false);
    if (text.failed) out->failed = true;
    const char *kept = tt_report_text(out, "reads: %s", tt_text_of(&text));
    tt_text_clear(&text);
    return kept;
}

/* The keys of a map. */
static const char *keys_of(const tt_map *map, tt_report *out)
{
    tt_text text = {0};
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++)
            tt_text_format(&text, "%s`%s`", text.n ? ", " : "", part->key[i].name);
    if (text.failed) out->failed = true;
    const char *kept = tt_report_text(out, "%s", tt_text_of(&text));
    tt_text_clear(&text);
    return kept;
}

static void bounds(const tt_key *key, tt_report *out)
{
    const char *si = tt_kind_si(key->dimension), *least, *most;
    if (!(key->least < key->most) || tt_key_forms(key) & TT_FORM_COUNT) return;
    least = tt_say_exactly(out, key->least, si, TT_METRIC, 1);
    most = tt_say_exactly(out, key->most, si, TT_METRIC, 1);
    tt_report_item(out, tt_report_text(out, "bounds: from %s to %s%s", least, most,
                                       key->power ? " at full size" : ""));
}

static void left_out(const tt_key *key, bool inherits, tt_report *out)
{
    const char *why = key->why ? key->why : "";
    if (key->required)
        tt_report_item(out, "left out: it must be there");
    else if (key->otherwise)
        tt_report_item(out, tt_report_text(out, "left out: `%s`%s%s", key->otherwise,
                                           key->why ? ", " : "", why));
    else if (key->why)
        tt_report_item(out, tt_report_text(out, "left out: %s", why));
    if (key->spread_low > 0)
        tt_report_item(out, tt_report_text(out, "without low and high: %g and %g of it",
                                           key->spread_low, key->spread_high));
    if (inherits)
        tt_report_item(out, "left out of a segment: as in its limb; of a limb: as in `bronze` at "
                            "the top of the file");
}

static void scaled(const tt_key *key, tt_report *out)
{
    if (tt_key_named(&tt_scale_map, key->name) == key) {
        tt_report_item(out, "scale: the two make it, `wanted` over `measured`");
        return;
    }
    static const char *const words[] = {
        "scale: leaves it as written; give it at full size",
        "scale: multiplies it; give it as measured on the maquette",
        "scale: multiplies it twice, as areas grow; give it as measured on the maquette"};
    const unsigned measures =
        TT_FORM_QUANTITY | TT_FORM_PAIR | TT_FORM_TRIPLE | TT_FORM_CORNERS | TT_FORM_ROWS;
    if (key->power == 0 && key->dimension == TT_Q_PURE) return;
    if (tt_key_forms(key) & measures && !(key->kind == TT_KEY_NAMES && key->map))
        tt_report_item(out, words[key->power]);
}

static void reasons(const tt_key *key, tt_report *out)
{
    const unsigned plain =
        TT_FORM_WORDS | TT_FORM_WORD | TT_FORM_COUNT | TT_FORM_QUANTITY | TT_FORM_TRIPLE;
    const bool many = tt_key_lists(key) || key->kind == TT_KEY_NAMES;
    if (key->reason)
        tt_report_item(out, tt_report_text(out, "reason: needs one %s", key->reason));
    else if (tt_key_forms(key) & plain && !(tt_key_forms(key) & TT_FORM_MAP) && !many)
        tt_report_item(out, "reason: may have one, {is: VALUE, because: \"...\"}; needs none");
}

static void facts(const tt_key *key, bool inherits, tt_report *out)
{
    tt_report_item(out, reads(key, out));
    if (key->map)
        tt_report_item(
            out, tt_report_text(out, "keys of %s: %s", key->map->title, keys_of(key->map, out)));
    if (key->map && tt_map_note(key->map))
        tt_report_item(out, tt_report_text(out, "note: %s", tt_map_note(key->map)));
    bounds(key, out);
    left_out(key, inherits, out);
    scaled(key, out);
    reasons(key, out);
    if (key->basis != TT_ANY_BASIS)
        tt_report_item(out, key->basis == TT_EU ? "basis: eu only" : "basis: us only");
    tt_report_item(out, tt_report_text(out, "example: `%s`", key->example));
}

/* The key of the spot `first`, with all spots of the same row that were asked for. */
static void explain(const spots *all, size_t first, const char *word, tt_report *out)
{
    const tt_key *key = all->list.at[first].key;
    tt_text where = {0};
    bool elsewhere = false;
    for (size_t i = first; i < all->list.n; i++) {
        const spot *at = &all->list.at[i];
        if (at->key != key || !named(at->path, word)) continue;
        tt_text_format(&where, "%s`%s`", where.n ? ", " : "", at->path);
        elsewhere |= !at->of_bronze;
    }
    tt_report_heading(out, 2, tt_report_text(out, "%s, a key of the piece file", key->name));
    tt_report_say(out, key->doc);
    tt_report_list(out, TT_BLOCK_LIST);
    tt_report_item(out, tt_report_text(out, "stands at: %s", tt_text_of(&where)));
    if (where.failed) out->failed = true;
    tt_text_clear(&where);
    facts(key, elsewhere && tt_key_named(&tt_bronze_map, key->name) == key, out);
}

static bool told(const spots *all, size_t before, const char *word)
{
    for (size_t i = 0; i < before; i++)
        if (all->list.at[i].key == all->list.at[before].key && named(all->list.at[i].path, word))
            return true;
    return false;
}

size_t tt_explain_keys(const char *word, tt_report *out)
{
    spots all = {.out = out};
    size_t found = 0;
    walk(&all, &tt_root_map, "", 0);
    for (size_t i = 0; i < all.list.n; i++) {
        if (!named(all.list.at[i].path, word) || told(&all, i, word)) continue;
        explain(&all, i, word, out);
        found++;
    }
    tt_list_clear(&all.list);
    return found;
}

bool tt_explain_key_names(tt_words *out)
{
    tt_maps all = {.n = 0};
    bool room = tt_maps_gather(&all, &tt_root_map);
    for (size_t m = 0; m < all.n; m++)
        for (const tt_map *part = all.map[m]; part; part = part->also)
            for (size_t i = 0; i < part->n; i++)
                room = room && tt_words_add(out, part->key[i].name);
    return room;
}

void tt_explain_list_keys(tt_report *out)
{
    tt_maps all = {.n = 0};
    tt_maps_gather(&all, &tt_root_map);
    tt_report_heading(out, 2, "Keys of the piece file");
    tt_report_list(out, TT_BLOCK_LIST);
    for (size_t m = 0; m < all.n; m++)
        tt_report_item(out,
                       tt_report_text(out, "%s: %s", all.map[m]->title, keys_of(all.map[m], out)));
}
