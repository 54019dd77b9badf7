/* piecefile/splices.c - joints of the armature: weld, socket, flange or lug. m. */
#include "piecefile/works.h"

void tt_read_between(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)key;
    size_t *between = field;
    /* the place is read before, by the order of the table */
    const tt_splice *splice = (const tt_splice *)((char *)field - offsetof(tt_splice, between));
    tt_take_between(reader, node, splice->at, between);
}

void tt_read_inner(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_said_member said = {0};
    tt_read_armature(reader, node, key, &said);
    *(tt_member *)field = said.member;
}

static int whole(const char *text, int most)
{
    int n = 0;
    for (; *text >= '0' && *text <= '9' && n <= most; text++) n = 10 * n + (*text - '0');
    return *text || n > most ? -1 : n;
}

void tt_read_bolts(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_splice *splice = field;
    const bool three = node->kind == TT_SEQUENCE && node->n == 3;
    const tt_node *number = three ? node->child[0] : NULL, *size = three ? node->child[1] : NULL;
    if (!three || number->kind != TT_SCALAR || size->kind != TT_SCALAR || !size->text[0]) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    splice->bolts = whole(number->text, 99);
    if (splice->bolts < 3)
        tt_wrong(reader, TT_D_RANGE, number, "a whole number from 3 to 99",
                 "a flange cannot have `%.20s` bolts", number->text);
    splice->bolt = tt_keep(reader, size->text);
    splice->bolt_circle = tt_take_number(reader, node->child[2], &tt_bolt_circle);
}

static bool reaches(const tt_segment *segment, size_t point)
{
    return segment->armature.form != TT_MEMBER_NONE &&
           (segment->from == point || segment->to == point);
}

static void check_members(tt_reader *reader, const tt_node *entry, const tt_splice *splice)
{
    const tt_piece *piece = reader->piece;
    size_t n = 0;
    for (size_t i = 0; i < piece->segments.n; i++) n += reaches(&piece->segments.at[i], splice->at);
    for (size_t k = 0; k < 2; k++) {
        const size_t i = splice->between[k];
        if (i != TT_NONE && piece->segments.at[i].armature.form == TT_MEMBER_NONE)
            tt_wrong_key(reader, TT_D_NOTHING_TO_JOIN, entry, "name two segments with an armature",
                         "`%.80s` has no armature", piece->segments.at[i].name);
    }
    if (tt_tree_find(entry, "between")) return;
    if (n < 2)
        tt_wrong_key(reader, TT_D_NOTHING_TO_JOIN, entry,
                     "name a place where two segments with an armature meet",
                     "no two members of the armature meet at `%.60s`",
                     piece->points.at[splice->at].name);
    else if (n > 2)
        tt_wrong_key(reader, TT_D_KEY_MISSING, entry, "between: [toe-hock, hock-body]",
                     "%zu members of the armature meet at `%.60s`: say which two", n,
                     piece->points.at[splice->at].name);
}

static void check_sizes(tt_reader *reader, const tt_node *of, const tt_splice *splice)
{
    if (splice->kind == TT_SPLICE_FLANGE && splice->bolt_circle >= splice->diameter &&
        splice->diameter > 0)
        tt_wrong(reader, TT_D_CONTRADICTION, tt_tree_find(of, "bolts"),
                 "the third figure is the circle that the bolts stand on",
                 "the bolts stand outside the flange");
    if (splice->kind == TT_SPLICE_LUG && splice->hole >= 2 * splice->edge && splice->edge > 0)
        tt_wrong(reader, TT_D_CONTRADICTION, tt_tree_find(of, "edge"),
                 "from the middle of the hole to the edge",
                 "the hole of the lug reaches beyond its edge");
}

void tt_read_splices(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    static const char *const kinds[] = {"weld", "socket", "flange", "lug", NULL};
    tt_works *works = field;
    for (size_t i = 0; i < node->n && !reader->no_memory; i++) {
        const tt_node *entry = node->child[i];
        tt_splice splice = {
            .at = TT_NONE, .between = {TT_NONE, TT_NONE}, .place = tt_keep_place(entry)};
        tt_walk_entry(reader, entry, key->map, &splice);
        if (entry->kind != TT_MAPPING) continue;
        const tt_node *of = tt_one_of(
            reader, entry, kinds, "for example: weld: {throat: 4 mm}, or socket: {insert: 120 mm}");
        for (int k = 0; of && kinds[k]; k++)
            if (tt_tree_find(entry, kinds[k]) == of) splice.kind = (tt_splice_kind)k;
        if (of) check_sizes(reader, of, &splice);
        if (splice.at != TT_NONE && !reader->holes) check_members(reader, entry, &splice);
        if (!tt_list_push(&works->splices, splice)) reader->no_memory = true;
    }
}
