/* piecefile/seams.c - seams of the bronze: how each is welded, how much of the casting it counts
 * for, with what. */
#include "piecefile/works.h"

#include <math.h>
#include <string.h>

/* The least efficiency that the table has for the alloys that meet in this seam. */
static double by_the_table(const tt_piece *piece, const tt_seam *seam)
{
    double least = 1.0;
    for (size_t s = 0; s < piece->segments.n; s++) {
        const tt_segment *segment = &piece->segments.at[s];
        if (segment->alloy == TT_NONE || (segment->from != seam->at && segment->to != seam->at))
            continue;
        if (seam->between[0] != TT_NONE && seam->between[0] != s && seam->between[1] != s) continue;
        const tt_fact *fact = &piece->metals.at[segment->alloy].fact[TT_P_SEAM];
        least = fmin(least, fact->has ? fact->value : 0.0);
    }
    return least;
}

static void efficiency(tt_reader *reader, const tt_node *entry, const tt_seam *seam)
{
    const tt_node *node = tt_tree_find(entry, "efficiency"),
                  *bronze = tt_tree_find(entry, "bronze");
    const bool said = seam->efficiency.origin > 0;
    const bool why =
        seam->because || (said && reader->piece->origins.at[seam->efficiency.origin].why);
    if (seam->kind == TT_SEAM_PARTIAL && !node)
        tt_wrong(reader, TT_D_KEY_MISSING, bronze ? bronze : entry,
                 "efficiency: 0.4, the share of the wall that is welded times that of a full seam",
                 "a seam welded in part lacks its `efficiency`");
    else if (seam->kind == TT_SEAM_NONE && !why)
        tt_wrong(reader, TT_D_REASON_DUE, bronze ? bronze : entry,
                 "because: \"cast in one\"; a joint that is not welded is partial, efficiency: 0",
                 "`none` means no seam at all and needs a reason");
    else if (node && (seam->kind == TT_SEAM_NONE || seam->kind == TT_SEAM_UNKNOWN))
        tt_wrong_key(reader, TT_D_CONTRADICTION, node, "it belongs to bronze: full or partial",
                     "an efficiency of a seam that is %s",
                     seam->kind == TT_SEAM_NONE ? "not there" : "unknown");
    else if (said && !why && seam->efficiency.is > by_the_table(reader->piece, seam))
        tt_wrong(reader, TT_D_REASON_DUE, node,
                 "because: \"test bars of this seam, by the foundry\"",
                 "an efficiency above the %.3g of the alloy's table needs a reason",
                 by_the_table(reader->piece, seam));
}

static bool same(const tt_seam *a, const tt_seam *b)
{
    const bool crossed = a->between[0] == b->between[1] && a->between[1] == b->between[0];
    return a->at == b->at && (memcmp(a->between, b->between, sizeof a->between) == 0 || crossed);
}

static bool bronze_at(const tt_piece *piece, size_t point)
{
    for (size_t s = 0; s < piece->segments.n; s++) {
        const tt_segment *segment = &piece->segments.at[s];
        if (segment->alloy != TT_NONE && (segment->from == point || segment->to == point))
            return true;
    }
    return false;
}

static void filler(tt_reader *reader, const tt_node *entry, tt_seam *seam)
{
    if (!seam->filler || !seam->filler[0]) return;
    seam->metal = tt_metal_use(reader, tt_tree_find(entry, "filler"), seam->filler, TT_FILLER);
}

static void add(tt_reader *reader, const tt_node *entry, tt_seam_draft *draft, tt_works *works)
{
    tt_seam *seam = &draft->seam;
    const tt_node *at = tt_tree_find(entry, "at");
    seam->kind = draft->kind < 0 ? TT_SEAM_UNKNOWN : (tt_seam_kind)draft->kind;
    if (!tt_tree_find(entry, "bronze"))
        tt_wrong_key(reader, TT_D_KEY_MISSING, entry, "add, for example: bronze: full",
                     "a seam lacks `bronze`");
    if (draft->between) tt_take_between(reader, draft->between, seam->at, seam->between);
    if (seam->at == TT_NONE) return;
    efficiency(reader, entry, seam);
    if (!reader->holes && !bronze_at(reader->piece, seam->at))
        tt_wrong(reader, TT_D_NOTHING_TO_JOIN, at, "name a place where bronze ends",
                 "there is no bronze at `%.60s`", reader->piece->points.at[seam->at].name);
    for (size_t i = 0; i < works->seam.n; i++)
        if (same(&works->seam.at[i], seam))
            tt_wrong(reader, TT_D_NAME_TWICE, at, "keep one of the two, or say `between`",
                     "this seam was named above already");
    if (!tt_list_push(&works->seam, *seam)) reader->no_memory = true;
}

static void at_large(tt_reader *reader, const tt_node *entry, const tt_seam_draft *draft,
                     tt_works *works)
{
    enum { none = 1 };
    static const tt_seam_kind kinds[] = {TT_SEAM_UNKNOWN, TT_SEAM_NONE, TT_SEAM_FULL};
    const tt_node *node = tt_tree_find(entry, "default");
    const char *why = draft->seam.because;
    if (tt_tree_find(entry, "at") || tt_tree_find(entry, "between") ||
        tt_tree_find(entry, "bronze"))
        tt_wrong_key(reader, TT_D_CONTRADICTION, node, "write the two as entries of their own",
                     "`default` and a seam by its place in one entry");
    if (works->seams_said)
        tt_wrong_key(reader, TT_D_NAME_TWICE, node, "keep one of the two",
                     "there is a `default` above already");
    if (draft->at_large == none && !why)
        tt_wrong(reader, TT_D_REASON_DUE, node, "because: \"cast in one\"",
                 "`none` means no seam at all and needs a reason");
    works->seams_said = true;
    if (draft->at_large < 0) return;
    works->seams = kinds[draft->at_large];
    works->seams_metal = draft->seam.metal;
    tt_origin_add(reader, node, node->kind == TT_SCALAR ? node->text : "", why);
}

/* A seam that names no filler is welded with that of `default`. */
static void share_filler(tt_works *works)
{
    for (size_t i = 0; i < works->seam.n; i++)
        if (works->seam.at[i].metal == TT_NONE) works->seam.at[i].metal = works->seams_metal;
}

void tt_read_seams(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i];
        tt_seam_draft draft = {.kind = -1, .at_large = -1};
        draft.seam = (tt_seam){.at = TT_NONE,
                               .between = {TT_NONE, TT_NONE},
                               .metal = TT_NONE,
                               .place = tt_keep_place(entry)};
        tt_walk_entry(reader, entry, key->map, &draft);
        if (entry->kind != TT_MAPPING) continue;
        filler(reader, entry, &draft.seam);
        if (tt_tree_find(entry, "default"))
            at_large(reader, entry, &draft, field);
        else if (tt_tree_find(entry, "at"))
            add(reader, entry, &draft, field);
        else
            tt_wrong_key(reader, TT_D_KEY_MISSING, entry, "for example: {at: ankle, bronze: full}",
                         "a seam lacks `at` or `default`");
    }
    share_filler(field);
}

void tt_seams_left_out(tt_reader *reader)
{
    if (reader->piece->works->seams_said || !reader->bronze.said.casting_quality.origin) return;
    tt_origin_default(
        reader, "seams", "unknown",
        reader->piece->works->seam.n
            ? "nothing was said of those that are not named: where limbs meet, and where the alloy "
              "changes, one is taken to be, and judged as the alloy's seams; none inside a limb"
            : "nothing was said of them: where limbs meet, and where the alloy changes, one is "
              "taken "
              "to be, and judged as the alloy's seams; none inside a limb");
}
