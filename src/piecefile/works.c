/* piecefile/works.c - keys that name segments are read when all segments are there; what their
 * readers share; the rack, ties, holes. m. */
#include "base/text.h"
#include "piecefile/works.h"

#include <string.h>

void tt_read_later(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    if (!tt_list_push(&reader->later, ((tt_later){node, key}))) reader->no_memory = true;
}

void tt_read_works(tt_reader *reader)
{
    static const struct {
        const char *name;
        tt_key_read *read;
    } readers[] = {
        {"rack", tt_read_rack},     {"seams", tt_read_seams},     {"splices", tt_read_splices},
        {"attach", tt_read_attach}, {"holes", tt_read_holes},     {"base", tt_read_base},
        {"panels", tt_read_panels}, {"weighed", tt_read_weighed}, {"handling", tt_read_handling},
    };
    for (size_t i = 0; i < reader->later.n && !reader->no_memory; i++) {
        const tt_later *later = &reader->later.at[i];
        tt_enter(reader, later->key->name);
        for (size_t k = 0; k < sizeof readers / sizeof *readers; k++) {
            if (strcmp(readers[k].name, later->key->name) == 0)
                readers[k].read(reader, later->node, later->key, reader->piece->works);
        }
        tt_leave(reader);
    }
    tt_seams_left_out(reader);
    tt_base_height(reader);
    if (!reader->no_memory) tt_weighed_rules(reader);
    reader->piece->works->form = reader->form == 1 ? TT_MEMBER_BAR : TT_MEMBER_TUBE;
    reader->piece->works->sealed = reader->sealed == TT_YES;
}

size_t tt_segment_named(tt_reader *reader, const tt_node *node)
{
    const char *because;
    node = tt_value(reader, node, &because);
    if (node->kind != TT_SCALAR || !node->text[0]) {
        tt_wrong(reader, TT_D_SHAPE, node, "write the name of one segment, as in toe-hock",
                 "a segment is a name");
        return TT_NONE;
    }
    const tt_piece *piece = reader->piece;
    const size_t found = tt_piece_segment(piece, node->text);
    if (found != TT_NONE || reader->holes) return found;
    tt_near near = tt_near_to(node->text);
    for (size_t i = 0; i < piece->segments.n; i++)
        tt_near_try_segment(&near, piece->segments.at[i].name);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node,
             tt_near_words(&near, "two neighbours of a limb make one: first-second"),
             "no segment is named `%.80s`", node->text);
    return TT_NONE;
}

void tt_read_segment_name(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)key;
    *(size_t *)field = tt_segment_named(reader, node);
}

bool tt_take_between(tt_reader *reader, const tt_node *node, size_t at, size_t out[2])
{
    out[0] = out[1] = TT_NONE;
    if (node->kind != TT_SEQUENCE || node->n != 2) {
        tt_wrong(reader, TT_D_SHAPE, node, "write it like this: between: [toe-hock, hock-body]",
                 "`between` is two segments");
        return false;
    }
    for (size_t i = 0; i < 2; i++) out[i] = tt_segment_named(reader, node->child[i]);
    if (at == TT_NONE || out[0] == TT_NONE || out[1] == TT_NONE) return false;
    if (tt_segments_meet(reader->piece, out[0], out[1], at)) return true;
    tt_wrong(reader, TT_D_CONTRADICTION, node, "name two segments that end at this place",
             "`%.80s` and `%.80s` do not meet at `%.60s`", reader->piece->segments.at[out[0]].name,
             reader->piece->segments.at[out[1]].name, reader->piece->points.at[at].name);
    return false;
}

/* "one of `weld`, `socket` is due". */
static void lacks_all(tt_reader *reader, const tt_node *node, const char *const *names,
                      const char *hint)
{
    tt_text words = {0};
    for (size_t i = 0; names[i]; i++) tt_text_format(&words, "%s`%s`", i ? ", " : "", names[i]);
    tt_wrong_key(reader, TT_D_KEY_MISSING, node, hint, "one of %s is due", tt_text_of(&words));
    tt_text_clear(&words);
}

const tt_node *tt_one_of(tt_reader *reader, const tt_node *node, const char *const *names,
                         const char *hint)
{
    const tt_node *found = NULL, *second = NULL;
    for (size_t i = 0; names[i]; i++) {
        const tt_node *child = tt_tree_find(node, names[i]);
        if (child && found && !second) second = child;
        if (child && !found) found = child;
    }
    if (second)
        tt_wrong_key(reader, TT_D_CONTRADICTION, second, hint, "`%s` and `%s` in one entry",
                     found->key, second->key);
    else if (!found)
        lacks_all(reader, node, names, hint);
    return second ? NULL : found;
}

void tt_walk_entry(tt_reader *reader, const tt_node *entry, const tt_map *map, void *record)
{
    static const char *const names[] = {"at", "segment", "panel"};
    const tt_node *name = NULL;
    for (size_t i = 0; !name && i < sizeof names / sizeof *names; i++)
        name = tt_tree_find(entry, names[i]);
    tt_enter(reader, name && name->kind == TT_SCALAR ? name->text : map->title);
    tt_walk(reader, entry, map, record);
    tt_leave(reader);
}

/* ---- rack, attach, holes --------------------------------------------------------------------- */

/* The entry with the keys of its tube or bar alone. */
static tt_node shape_of(tt_reader *reader, const tt_node *entry)
{
    tt_node shape = *entry;
    shape.n = 0;
    shape.child = tt_pool_take(&reader->trees, entry->n, sizeof *shape.child);
    if (!shape.child) reader->no_memory = true;
    for (size_t i = 0; shape.child && i < entry->n; i++)
        if (tt_key_named(&tt_member_map, entry->child[i]->key))
            shape.child[shape.n++] = entry->child[i];
    return shape;
}

void tt_read_rack(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_works *works = field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i];
        tt_rack_draft draft = {.item = {.count = 1, .place = tt_keep_place(entry)},
                               .grade = {.metal = TT_NONE}};
        tt_said_member said = {0};
        tt_walk_entry(reader, entry, key->map, &draft);
        if (entry->kind != TT_MAPPING) continue;
        const tt_node *shape = tt_one_of(
            reader, entry, (const char *const[]){"tube", "bar", "box", "flat", "pipe", NULL},
            "for example: {tube: [48.3 mm, 5 mm], grade: \"1.4404\", length: 6 m}");
        const tt_node alone = shape_of(reader, entry);
        if (shape)
            tt_read_armature(reader, &alone, tt_key_named(&tt_segment_map, "armature"), &said);
        draft.item.member = said.member;
        draft.item.member.metal = draft.grade.metal;
        if (!tt_list_push(&works->rack, draft.item)) reader->no_memory = true;
    }
}

/* Do bronze and armature both reach the place? */
static bool both_at(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *segment = &piece->segments.at[i];
        if ((segment->from == point || segment->to == point) && segment->alloy != TT_NONE &&
            segment->armature.form != TT_MEMBER_NONE)
            return true;
    }
    return false;
}

void tt_read_attach(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_works *works = field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i], *weld = tt_tree_find(entry, "weld");
        tt_tie tie = {.at = TT_NONE, .count = 1, .place = tt_keep_place(entry)};
        tt_walk_entry(reader, entry, key->map, &tie);
        if (weld && tie.kind == TT_TIE_FILL)
            tt_wrong_key(reader, TT_D_CONTRADICTION, weld,
                         "a filling has no weld; keep one of the two", "a filling that is welded");
        if (tie.at != TT_NONE && !reader->holes && !both_at(reader->piece, tie.at))
            tt_wrong_key(reader, TT_D_NOTHING_TO_JOIN, entry,
                         "name a place where a segment with bronze and armature ends",
                         "bronze and armature do not both reach `%.60s`",
                         reader->piece->points.at[tie.at].name);
        if (!tt_list_push(&works->ties, tie)) reader->no_memory = true;
    }
}

/* The smaller width of the part that the hole is in; 0 where that part is not there. */
static double width_at(const tt_piece *piece, const tt_hole *hole)
{
    const tt_segment *segment = &piece->segments.at[hole->segment];
    if (hole->in_armature ? segment->armature.form == TT_MEMBER_NONE : segment->alloy == TT_NONE)
        return 0;
    const tt_outline outline = hole->in_armature ? tt_member_outline(&segment->armature, hole->x)
                                                 : tt_segment_outline(segment, hole->x);
    return outline.wide < outline.deep ? outline.wide : outline.deep;
}

static void check_hole(tt_reader *reader, const tt_node *entry, const tt_hole *hole)
{
    const tt_node *across = tt_tree_find(entry, "across");
    if (hole->segment == TT_NONE || !across) return;
    const double width = width_at(reader->piece, hole);
    if (width == 0)
        tt_wrong_key(reader, TT_D_NOTHING_TO_JOIN, entry, "in: bronze, or in: armature",
                     "`%.80s` has no %s", reader->piece->segments.at[hole->segment].name,
                     hole->in_armature ? "armature" : "bronze");
    else if (hole->across >= width)
        tt_wrong(reader, TT_D_RANGE, across, "its diameter, less than what it is drilled through",
                 "the hole is as wide as what it is in, %.3g mm", 1e3 * width);
}

void tt_read_holes(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_works *works = field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i];
        tt_hole hole = {.segment = TT_NONE, .place = tt_keep_place(entry)};
        tt_walk_entry(reader, entry, key->map, &hole);
        hole.has_angle = tt_tree_find(entry, "angle") != NULL;
        check_hole(reader, entry, &hole);
        if (!tt_list_push(&works->holes, hole)) reader->no_memory = true;
    }
}
