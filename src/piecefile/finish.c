/* piecefile/finish.c - drafts to segments: what the segment, its limb and the bronze at large say,
 * and the defaults for what nobody said, each told once among the origins. */
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define COUNTS_AS_OPEN 0.5 /* efficiency of a lengthwise seam: decision 6 of ours */

static void bronze_default(tt_reader *reader, const char *key)
{
    tt_enter(reader, "bronze");
    tt_default(reader, NULL, &tt_bronze_map, key, &reader->bronze);
    tt_leave(reader);
}

/* By the segment, else by the bronze at large, else by the default of the key. */
static tt_given pick(tt_reader *reader, const tt_given *said, tt_given *at_large, const char *key)
{
    if (said->origin) return *said;
    if (!at_large->origin) bronze_default(reader, key);
    return *at_large;
}

static tt_given quality(tt_reader *reader, const tt_given *said)
{
    tt_given *at_large = &reader->bronze.said.casting_quality;
    if (said->origin) return *said;
    if (!at_large->origin)
        at_large->origin = tt_origin_default(reader, "bronze/casting_quality", "by the inspection",
                                             tt_key_named(&tt_bronze_map, "casting_quality")->why);
    return *at_large;
}

/* A quality that was given with a reason holds at necks too; 0: by the inspection. */
static double with_reason(const tt_reader *reader, const tt_given *said)
{
    const tt_origin *from = &reader->piece->origins.at[said->origin];
    return from->kind != TT_ORIGIN_DEFAULT && from->why ? said->is : 0.0;
}

/* What is missing is told once, at `bronze` where there is one. */
static const tt_node *where(const tt_reader *reader, const tt_draft *draft)
{
    const tt_node *head = tt_tree_find(reader->root, "bronze");
    return head ? head : draft->node;
}

static size_t alloy(tt_reader *reader, const tt_draft *draft)
{
    const tt_said_metal *said = &draft->said.alloy;
    if (!said->said) said = &reader->bronze.said.alloy;
    if (said->said) return said->metal;
    if (!reader->no_alloy_told)
        tt_wrong_key(reader, TT_D_NO_ALLOY, where(reader, draft),
                     "bronze: {alloy: C87300, wall: 5 mm}", "bronze without an alloy");
    reader->no_alloy_told = true;
    return TT_NONE;
}

static void tell_closed(tt_reader *reader, const tt_node *node, const char *name, const char *end,
                        const char *more)
{
    const char *unit = reader->unit_name;
    const bool inches = unit && strcmp(unit, "in") == 0;
    tt_tell(reader, TT_WARNING, TT_D_WALL_CLOSES, node, tt_key_place(node),
            inches ? "a thinner wall, or solid: yes; bare lengths of this file are inches"
                   : "a thinner wall, or solid: yes",
            "the wall of `%.80s` fills the whole section%s%s", name, end, more);
}

static void closes(tt_reader *reader, const tt_draft *draft, tt_segment *segment)
{
    const bool from = segment->wall.is >= tt_outline_closing_wall(&segment->outline);
    const bool to = segment->wall_to.is >= tt_outline_closing_wall(&segment->outline_to);
    if (!from && !to) return;
    segment->solid = from && to;
    const char *end = from && to ? "" : " at one end";
    if (segment->wall.origin != reader->bronze.said.wall.origin) {
        tell_closed(reader, draft->node, draft->name, end, "");
        return;
    }
    if (reader->closed.n++ > 0) return;
    reader->closed.node = draft->node;
    reader->closed.name = draft->name;
    reader->closed.end = end;
}

/* Of the wall of the bronze at large: once, at the first. */
static void tell_all_closed(tt_reader *reader)
{
    const size_t more = reader->closed.n - 1;
    char words[60] = "";
    if (reader->closed.n == 0) return;
    if (more) snprintf(words, sizeof words, "; so it does in %zu more", more);
    tell_closed(reader, reader->closed.node, reader->closed.name, reader->closed.end, words);
}

static void wall(tt_reader *reader, const tt_draft *draft, tt_segment *segment)
{
    const tt_said *said = &draft->said, *at_large = &reader->bronze.said;
    segment->solid = said->solid == TT_YES;
    if (segment->solid) return;
    segment->wall = said->wall.origin ? said->wall : at_large->wall;
    segment->wall_to = said->wall_to.origin ? said->wall_to : segment->wall;
    if (segment->outline.kind == TT_OUTLINE_NUMBERS) return;
    if (segment->wall.origin)
        closes(reader, draft, segment);
    else if (!reader->no_wall_told) {
        reader->no_wall_told = true;
        tt_wrong_key(reader, TT_D_KEY_MISSING, where(reader, draft),
                     "for example: bronze: {alloy: C87300, wall: 5 mm}; or solid: yes",
                     "the bronze of `%.80s` has no wall", draft->name);
    }
}

/* Numbers tell the true area: a `surface` of the segment's own has nothing to multiply. */
static tt_given surface(tt_reader *reader, const tt_draft *draft)
{
    const tt_given *said = &draft->said.surface;
    if (draft->outline.kind != TT_OUTLINE_NUMBERS)
        return pick(reader, said, &reader->bronze.said.surface, "surface");
    if (said->origin)
        tt_wrong_key(reader, TT_D_CONTRADICTION, draft->node, "take `surface` out",
                     "`%.80s` has its true area by `numbers`: no `surface`", draft->name);
    return (tt_given){1.0, 1.0, 1.0, 0};
}

static void bronze(tt_reader *reader, const tt_draft *draft, tt_segment *segment)
{
    tt_said *at_large = &reader->bronze.said;
    segment->alloy = alloy(reader, draft);
    wall(reader, draft, segment);
    tt_finish_trace(reader, draft, segment);
    segment->surface = surface(reader, draft);
    segment->extra = pick(reader, &draft->said.extra, &at_large->extra, "extra");
    segment->casting_quality = quality(reader, &draft->said.casting_quality);
    segment->neck_quality = with_reason(reader, &segment->casting_quality);
}

static bool ends_meet(tt_reader *reader, const tt_draft *draft)
{
    const tt_outline_kind a = draft->outline.kind, b = draft->outline_to.kind;
    if (a == b) return true;
    const bool bare = a == TT_OUTLINE_NONE || b == TT_OUTLINE_NONE;
    tt_wrong_key(reader, TT_D_OUTLINE_KINDS, draft->node,
                 bare ? "give an outline at both ends or at none"
                      : "use the same kind at both ends: round, oval and girth are one kind",
                 bare ? "`%.80s` has bronze at one end and none at the other"
                      : "the two outlines of `%.80s` cannot turn into each other",
                 draft->name);
    return false;
}

/* Something was written for it that was told already. */
static bool unreadable_member(const tt_draft *draft)
{
    const tt_node *node = draft->said.armature.node;
    return node && !tt_is_word(node, "none") && !tt_is_word(node, "choose");
}

static void something(tt_reader *reader, const tt_draft *draft, const tt_segment *segment)
{
    if (segment->outline.kind == TT_OUTLINE_NONE && segment->outline_to.kind == TT_OUTLINE_NONE &&
        draft->said.armature.member.form == TT_MEMBER_NONE && !unreadable_member(draft))
        tt_wrong_key(reader, TT_D_KEY_MISSING, draft->node,
                     "give girth, or wide and deep, or armature: {tube: [33.7 mm, 4 mm]}",
                     "`%.80s` has neither bronze nor armature", draft->name);
}

static tt_segment finish(tt_reader *reader, const tt_draft *draft)
{
    const tt_said *said = &draft->said;
    tt_segment segment = {.name = draft->name,
                          .from = draft->from,
                          .to = draft->to,
                          .limb = draft->limb,
                          .place_in_limb = draft->place_in_limb,
                          .faces = said->faces.said ? said->faces.to : reader->faces,
                          .outline = draft->outline,
                          .outline_to = draft->outline_to,
                          .turn = said->turn.is,
                          .alloy = TT_NONE,
                          .wind = said->wind.on,
                          .drag = said->wind.drag,
                          .drag_because = said->wind.because,
                          .open = said->open == TT_YES ||
                                  (said->seam_along.origin && said->seam_along.is < COUNTS_AS_OPEN),
                          .seam_along = said->seam_along,
                          .climbable = said->climbable == TT_YES,
                          .place = tt_keep_place(draft->node)};
    segment.outline.numbers[1] = draft->outline_to.numbers[0];
    segment.outline_to.numbers[0] = draft->outline.numbers[0];
    segment.outline_to.t = segment.outline.kind == TT_OUTLINE_NUMBERS;
    segment.turn_to = said->turn_to.origin ? said->turn_to.is : segment.turn;
    const bool meet = ends_meet(reader, draft);
    something(reader, draft, &segment);
    if (meet && draft->outline.kind != TT_OUTLINE_NONE) bronze(reader, draft, &segment);
    segment.armature = tt_finish_member(reader, draft);
    return segment;
}

void tt_finish_segments(tt_reader *reader)
{
    for (size_t i = 0; i < reader->drafts.n && !reader->no_memory; i++) {
        const tt_segment segment = finish(reader, &reader->drafts.at[i]);
        if (!tt_list_push(&reader->piece->segments, segment)) reader->no_memory = true;
    }
    tell_all_closed(reader);
    const tt_node *head = tt_tree_find(reader->root, "bronze");
    if (reader->bronze.said.casting_quality.origin && head && !tt_tree_find(head, "inspection")) {
        bronze_default(reader, "inspection");
        reader->piece->inspection_origin = (unsigned)(reader->piece->origins.n - 1);
    }
    reader->piece->inspection = (tt_inspection)reader->bronze.inspection;
}
