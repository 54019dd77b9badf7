/* piecefile/members.c - members of the armature, m as bought: no scale touches them; where they
 * run; grade, loss to rust, factor on the wall. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* "tube 33.7 x 4", "pipe 1 1/2 sch 40": the kind and what was written for it. */
static unsigned origin(tt_reader *reader, const tt_node *kind)
{
    char words[120];
    int n = snprintf(words, sizeof words, "%.20s %.60s", kind->key,
                     kind->kind == TT_SCALAR ? kind->text : "");
    for (size_t i = 0; kind->kind == TT_SEQUENCE && i < kind->n && i < 3 && n > 0; i++) {
        const tt_node *child = kind->child[i];
        n += snprintf(words + n, sizeof words - (size_t)n, "%s%.24s", i ? " x " : "",
                      child->kind == TT_SCALAR ? child->text : "");
    }
    return tt_origin_add(reader, kind, words, NULL);
}

/* The measures of a kind that is written as a list of n; false and told when it is not. */
static bool measures(tt_reader *reader, const tt_node *node, size_t n, double *out)
{
    const tt_key *key = tt_key_named(&tt_member_map, node->key);
    for (size_t i = 0; i < n; i++) out[i] = NAN;
    if (node->kind != TT_SEQUENCE || node->n != n) {
        tt_wrong_shape(reader, node, key);
        return false;
    }
    for (size_t i = 0; i < n; i++) out[i] = tt_take_number(reader, node->child[i], key);
    return true;
}

static tt_member tube(tt_reader *reader, const tt_node *node)
{
    double size[2];
    if (measures(reader, node, 2, size) && size[1] >= size[0] / 2)
        tt_wrong(reader, TT_D_MEMBER, node, "[outside diameter, wall]; what is full is a bar",
                 "the wall of the tube is not less than half its diameter");
    tt_doubt_nominal(reader, node, size);
    return (tt_member){.form = TT_MEMBER_TUBE, .od = size[0], .wall = size[1]};
}

static tt_member bar(tt_reader *reader, const tt_node *node)
{
    const double d = tt_take_number(reader, node, tt_key_named(&tt_member_map, "bar"));
    return (tt_member){.form = TT_MEMBER_BAR, .od = d, .wall = d / 2};
}

static tt_member box(tt_reader *reader, const tt_node *node)
{
    double size[3];
    if (measures(reader, node, 3, size) && size[2] >= fmin(size[0], size[1]) / 2)
        tt_wrong(reader, TT_D_MEMBER, node, "[across, front to back, wall]; what is full is a flat",
                 "the wall of the box is not less than half its smaller side");
    return (tt_member){.form = TT_MEMBER_BOX, .od = size[0], .deep = size[1], .wall = size[2]};
}

static tt_member flat(tt_reader *reader, const tt_node *node)
{
    double size[2];
    measures(reader, node, 2, size);
    return (tt_member){
        .form = TT_MEMBER_FLAT, .od = size[0], .deep = size[1], .wall = fmin(size[0], size[1]) / 2};
}

static tt_near nearest_pipe(const tt_data *own, const char *name)
{
    tt_near near = tt_near_to(name);
    for (size_t i = 0; i < tt_stock_count(own); i++) {
        const tt_stock *stock = tt_stock_at(own, i);
        if (stock && strcmp(stock->form, "pipe") == 0) tt_near_try(&near, stock->name);
    }
    return near;
}

static tt_member pipe(tt_reader *reader, const tt_node *node)
{
    const char *name = tt_take_text(reader, node, tt_key_named(&tt_member_map, "pipe"));
    const tt_stock *stock = tt_stock_named(reader->data, "pipe", name);
    if (stock) {
        tt_origin_data(reader, stock->name, &stock->at, &stock->source);
        return (tt_member){.form = TT_MEMBER_TUBE, .od = stock->od, .wall = stock->wall};
    }
    tt_near near = nearest_pipe(reader->data, name);
    char outside[120];
    if (name[0])
        tt_wrong(reader, TT_D_PIPE, node,
                 tt_hint_outside(reader, name, outside, sizeof outside)
                     ? outside
                     : tt_near_words(&near, "pipe: 1 1/2 sch 40; `tiptoe stock pipes` lists them"),
                 "no pipe is named `%.40s`", name);
    return (tt_member){.form = TT_MEMBER_TUBE, .od = NAN, .wall = NAN};
}

static const struct {
    const char *key;
    tt_member (*read)(tt_reader *reader, const tt_node *node);
} kinds[] = {{"tube", tube}, {"bar", bar}, {"box", box}, {"flat", flat}, {"pipe", pipe}};
enum { KINDS = sizeof kinds / sizeof *kinds };

static void read_offset(tt_reader *reader, const tt_node *node, tt_said_member *out)
{
    out->off = node && measures(reader, node, 2, out->member.off);
}

static void read_map(tt_reader *reader, const tt_node *node, const tt_key *key, tt_said_member *out)
{
    const size_t errors = tt_diags_errors(reader->diags);
    const tt_node *of = NULL;
    tt_walk(reader, node, key->map, NULL);
    for (size_t i = 0; i < KINDS; i++) {
        const tt_node *child = tt_tree_find(node, kinds[i].key);
        if (child && of) {
            const tt_node *set = child->set ? child : of;
            char hint[120] = "keep one of the two";
            if (child->set != of->set)
                snprintf(hint, sizeof hint, "the whole of it: armature={%s: %.60s}", set->key,
                         set->kind == TT_SCALAR ? set->text : "[...]");
            tt_wrong_key(reader, TT_D_CONTRADICTION, set->set ? set : child, hint,
                         "an armature is of one kind: a %s or a %s", of->key, child->key);
        } else if (child) {
            of = child;
            out->member = kinds[i].read(reader, child);
            out->member.origin = origin(reader, child);
        }
    }
    read_offset(reader, tt_tree_find(node, "offset"), out);
    out->through = tt_tree_find(node, "through");
    if (!of && tt_diags_errors(reader->diags) == errors) tt_wrong_shape(reader, node, key);
}

void tt_read_armature(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    tt_said_member *said = field;
    *said = (tt_said_member){.said = true, .node = value};
    if (tt_is_word(value, "choose"))
        said->member.choose = true;
    else if (value->kind == TT_MAPPING)
        read_map(reader, value, key, said);
    else if (!tt_is_word(value, "none"))
        tt_wrong_shape(reader, value, key);
}

void tt_read_armature_head(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    if (tt_is_word(node, "choose"))
        reader->choose = true;
    else
        tt_walk(reader, node, key->map, reader);
}

static const tt_metal *steel(const tt_reader *reader)
{
    return reader->grade.metal == TT_NONE ? NULL : &reader->piece->metals.at[reader->grade.metal];
}

static void tell_no_loss(tt_reader *reader)
{
    const tt_node *head = tt_tree_find(reader->root, "armature");
    const tt_node *loss = head ? tt_tree_find(head, "loss") : NULL;
    const bool sealed = reader->sealed == TT_YES;
    if (!loss || reader->loss.is > 0 || reader->loss_told ||
        (sealed && reader->piece->origins.at[reader->loss.origin].why))
        return;
    reader->loss_told = true;
    tt_wrong(reader, TT_D_REASON_DUE, loss,
             "sealed: yes, loss: {is: 0, because: \"welded shut and filled\"}, or leave it out for "
             "1 mm; a stainless steel of your own is told by stainless: yes under materials",
             "carbon steel outdoors that loses nothing is sealed, and needs a reason");
}

/* Decision of this program: carbon steel in a damp shell loses 1 mm of each wetted face in 50
 * years; stainless steel and what stands indoors loses nothing. */
static void finish_loss(tt_reader *reader)
{
    const tt_metal *metal = steel(reader);
    const bool rusts = metal && !metal->stainless && !reader->piece->site.indoors;
    if (reader->loss.origin) {
        if (rusts) tell_no_loss(reader);
        return;
    }
    const double is = rusts ? 1e-3 : 0;
    const bool own = metal && metal->fact[TT_P_YIELD].source.mark == TT_GIVEN;
    const char *why =
        rusts && own ? "a steel of your own that is not said to be stainless, outdoors, over 50 "
                       "years: assumption of this program"
        : rusts      ? "carbon steel outdoors, over 50 years: assumption of this program"
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
                                     reader->us ? "AISC 360 B4.2, welded tube (from memory); for "
                                                  "pipe an assumption"
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
    const tt_member *last = to->said ? &to->member : member;
    if (last->form != member->form)
        tt_wrong(reader, TT_D_MEMBER, to->node, "write the same kind at both ends",
                 "the armature of `%.80s` changes its kind on the way", draft->name);
    member->od_to = last->od;
    member->wall_to = last->wall;
    member->deep_to = last->deep;
    for (int i = 0; i < 2; i++)
        member->off_to[i] = to->said && to->off ? to->member.off[i] : member->off[i];
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
    if (draft->said.armature.through && draft->limb == TT_NONE)
        tt_wrong_key(reader, TT_D_THROUGH, draft->said.armature.through, "write it in a limb",
                     "`through` names places of a limb, and `%.80s` is in none", draft->name);
    if (!draft->said.armature.said) member.choose = reader->choose;
    member.metal = TT_NONE;
    if (member.form == TT_MEMBER_NONE || !has_grade(reader, draft)) return member;
    finish_loss(reader);
    finish_factor(reader);
    taper(reader, draft, &member);
    member.metal = reader->grade.metal;
    member.loss = reader->loss.is;
    const bool hollow = member.form == TT_MEMBER_TUBE || member.form == TT_MEMBER_BOX;
    member.wall_factor = hollow ? reader->wall_factor.is : 1.0;
    check_loss(reader, draft, &member);
    return member;
}

/* ---- through ---- */

static size_t tell_elsewhere(tt_reader *reader, const tt_node *node, size_t first)
{
    const tt_piece *piece = reader->piece;
    tt_text hint = {0};
    tt_text_format(&hint, "`through` stays within its own limb (its places: %.40s",
                   piece->points.at[reader->drafts.at[first].from].name);
    for (size_t i = first; i < reader->drafts.n; i++)
        tt_text_format(&hint, ", %.40s", piece->points.at[reader->drafts.at[i].to].name);
    tt_text_put(&hint, "); for one member through both, write both as one limb");
    tt_wrong(reader, TT_D_THROUGH, node, tt_text_of(&hint), "`%.60s` is no place of this limb",
             node->text);
    tt_text_clear(&hint);
    return TT_NONE;
}

/* Which of a limb's places from draft `first` on the scalar names: 0 for the first draft's `from`;
 * TT_NONE and told when it is none of them. */
static size_t station(tt_reader *reader, const tt_node *node, size_t first)
{
    const bool later = node->kind == TT_SCALAR && tt_place_later(reader, node->text);
    const size_t place = later ? TT_NONE : tt_place_named(reader, node);
    if (later) return tell_elsewhere(reader, node, first);
    if (place == TT_NONE) return TT_NONE;
    if (reader->drafts.at[first].from == place) return 0;
    for (size_t i = first; i < reader->drafts.n; i++)
        if (reader->drafts.at[i].to == place) return i - first + 1;
    return tell_elsewhere(reader, node, first);
}

void tt_finish_through(tt_reader *reader, size_t first, size_t limb)
{
    if (first >= reader->drafts.n) return;
    const tt_node *through = reader->drafts.at[first].said.armature.through;
    size_t from = TT_NONE, to = TT_NONE;
    if (!through) return;
    if (through->kind != TT_SEQUENCE || through->n < 2) {
        tt_wrong_shape(reader, through, tt_key_named(&tt_member_map, "through"));
        return;
    }
    for (size_t i = 0; i < through->n; i++) {
        const size_t at = station(reader, through->child[i], first);
        if (at == TT_NONE) return;
        if (i > 0 && at <= to)
            tt_wrong(reader, TT_D_THROUGH, through->child[i], "in the order of the limb's rows",
                     "`%.60s` does not come after the place before it", through->child[i]->text);
        if (i == 0) from = at;
        to = at;
    }
    for (size_t i = first; i < reader->drafts.n; i++) {
        tt_said_member *said = &reader->drafts.at[i].said.armature;
        const bool in = i - first >= from && i - first < to;
        if (in)
            said->member.run = limb + 1;
        else
            *said = (tt_said_member){.said = true};
    }
}
