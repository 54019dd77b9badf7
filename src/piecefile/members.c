/* piecefile/members.c - tubes and bars of the armature, m as bought: no scale touches them; grade,
 * loss to rust, factor on the wall. */
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>

static unsigned origin(tt_reader *reader, const tt_node *node)
{
    char words[120];
    if (node->kind == TT_SEQUENCE && node->n == 2 && node->child[0]->kind == TT_SCALAR &&
        node->child[1]->kind == TT_SCALAR)
        snprintf(words, sizeof words, "tube %.40s x %.40s", node->child[0]->text,
                 node->child[1]->text);
    else
        snprintf(words, sizeof words, "bar %.60s", node->kind == TT_SCALAR ? node->text : "");
    return tt_origin_add(reader, node, words, NULL);
}

static tt_member tube(tt_reader *reader, const tt_node *node)
{
    const tt_key *key = tt_key_named(&tt_member_map, "tube");
    tt_member member = {.form = TT_MEMBER_TUBE, .od = NAN, .wall = NAN};
    if (node->kind == TT_SEQUENCE && node->n == 2) {
        member.od = tt_take_number(reader, node->child[0], key);
        member.wall = tt_take_number(reader, node->child[1], key);
        if (member.wall >= member.od / 2)
            tt_wrong(reader, TT_D_MEMBER, node, "[outside diameter, wall]; what is full is a bar",
                     "the wall of the tube is not less than half its diameter");
    } else {
        tt_wrong_shape(reader, node, key);
    }
    return member;
}

static tt_member bar(tt_reader *reader, const tt_node *node)
{
    const double d = tt_take_number(reader, node, tt_key_named(&tt_member_map, "bar"));
    return (tt_member){.form = TT_MEMBER_BAR, .od = d, .wall = d / 2};
}

static void read_map(tt_reader *reader, const tt_node *node, const tt_key *key, tt_member *out)
{
    const size_t errors = tt_diags_errors(reader->diags);
    tt_walk(reader, node, key->map, NULL);
    const tt_node *of_tube = tt_tree_find(node, "tube"), *of_bar = tt_tree_find(node, "bar");
    if (of_tube && of_bar)
        tt_wrong_key(reader, TT_D_CONTRADICTION, of_bar, "keep one of the two",
                     "an armature is a tube or a bar");
    else if (of_tube || of_bar)
        *out = of_tube ? tube(reader, of_tube) : bar(reader, of_bar);
    else if (tt_diags_errors(reader->diags) == errors)
        tt_wrong_shape(reader, node, key);
    if (of_tube || of_bar) out->origin = origin(reader, of_tube ? of_tube : of_bar);
}

void tt_read_armature(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    tt_said_member *said = field;
    *said = (tt_said_member){.said = true, .node = value};
    if (tt_is_word(value, "choose"))
        tt_wrong(reader, TT_D_KEY_UNREAD, value, "for example: armature: {tube: [33.7 mm, 4 mm]}",
                 "`choose` is not read by this version");
    else if (value->kind == TT_MAPPING)
        read_map(reader, value, key, &said->member);
    else if (!tt_is_word(value, "none"))
        tt_wrong_shape(reader, value, key);
}

void tt_read_armature_head(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    if (tt_is_word(node, "choose")) {
        tt_wrong(reader, TT_D_KEY_UNREAD, node, "name a grade: armature: {grade: \"1.4462\"}",
                 "`armature: choose` is not read by this version");
        reader->grade.said = true;
        reader->grade.metal = TT_NONE;
    } else {
        tt_walk(reader, node, key->map, reader);
    }
}

static const tt_metal *steel(const tt_reader *reader)
{
    return reader->grade.metal == TT_NONE ? NULL : &reader->piece->metals.at[reader->grade.metal];
}

/* Decision of this program: carbon steel in a damp shell loses 1 mm of each wetted face in 50
 * years; stainless steel and what stands indoors loses nothing. */
static void finish_loss(tt_reader *reader)
{
    const tt_metal *metal = steel(reader);
    const bool rusts = metal && !metal->stainless && !reader->piece->site.indoors;
    const tt_node *head = tt_tree_find(reader->root, "armature");
    const tt_node *loss = head ? tt_tree_find(head, "loss") : NULL;
    if (reader->loss.origin) {
        if (rusts && loss && reader->loss.is <= 0 &&
            (!reader->piece->origins.at[reader->loss.origin].why || reader->sealed != TT_YES))
            tt_wrong(
                reader, TT_D_REASON_DUE, loss,
                "sealed: yes, loss: {is: 0, because: \"welded shut and filled\"}, or leave it out "
                "for 1 mm",
                "carbon steel outdoors that loses nothing is sealed, and needs a reason");
        return;
    }
    const double is = rusts ? 1e-3 : 0;
    const char *why = rusts                         ? "carbon steel outdoors, over 50 years: "
                                                      "assumption of this program"
                      : reader->piece->site.indoors ? "indoors"
                                                    : "stainless steel";
    reader->loss = (tt_given){
        is, is, is, tt_origin_default(reader, "armature/loss", rusts ? "1 mm" : "0", why)};
}

static void finish_factor(tt_reader *reader)
{
    if (reader->wall_factor.origin) return;
    const double is = reader->us ? 0.93 : 1.0;
    reader->wall_factor =
        (tt_given){is, is, is,
                   tt_origin_default(reader, "armature/wall_factor", reader->us ? "0.93" : "1.0",
                                     reader->us ? "welded tube may be under its nominal wall"
                                                : "EN tube at its nominal wall")};
}

static bool has_grade(tt_reader *reader, const tt_draft *draft)
{
    if (reader->grade.said) return true;
    if (!reader->no_grade_told)
        tt_wrong(reader, TT_D_KEY_MISSING, draft->said.armature.node,
                 "at the top of the file: armature: {grade: \"1.4462\"}",
                 "an armature without a grade of steel");
    reader->no_grade_told = true;
    return false;
}

static void taper(tt_reader *reader, const tt_draft *draft, tt_member *member)
{
    const tt_said_member *to = &draft->said.armature_to;
    member->od_to = member->od;
    member->wall_to = member->wall;
    if (!to->said) return;
    if (to->member.form != member->form)
        tt_wrong(reader, TT_D_MEMBER, to->node, "write the same kind at both ends",
                 "the armature of `%.80s` changes its kind on the way", draft->name);
    member->od_to = to->member.od;
    member->wall_to = to->member.wall;
}

static void check_loss(tt_reader *reader, const tt_draft *draft, const tt_member *member)
{
    const double thin = fmin(member->wall, member->wall_to);
    if (member->loss > 0 && member->loss >= thin)
        tt_wrong(reader, TT_D_MEMBER, draft->said.armature.node,
                 "a thicker wall, or a smaller loss",
                 "the loss to rust takes the whole wall of the armature of `%.80s`", draft->name);
}

tt_member tt_finish_member(tt_reader *reader, const tt_draft *draft)
{
    tt_member member = draft->said.armature.member;
    if (draft->said.armature_to.said && member.form == TT_MEMBER_NONE)
        tt_wrong(reader, TT_D_CONTRADICTION, draft->said.armature_to.node,
                 "give `armature` as well", "`armature_to` without `armature`");
    member.metal = TT_NONE;
    if (member.form == TT_MEMBER_NONE || !has_grade(reader, draft)) return member;
    finish_loss(reader);
    finish_factor(reader);
    taper(reader, draft, &member);
    member.metal = reader->grade.metal;
    member.loss = reader->loss.is;
    member.wall_factor = member.form == TT_MEMBER_TUBE ? reader->wall_factor.is : 1.0;
    check_loss(reader, draft, &member);
    return member;
}
