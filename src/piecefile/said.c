/* piecefile/said.c - what is said of a limb or a segment: what is said more closely goes before
 * what is said at large; wind of a segment; rules inside one map. */
#include "piecefile/reader.h"

#define BEST_UNSAID                                                                                \
    0.8 /* casting_quality that needs no reason: decision for the shell at large                   \
         */

static void given_over(tt_given *under, const tt_given *over)
{
    if (over->origin) *under = *over;
}

void tt_said_over(tt_said *under, const tt_said *over)
{
    if (over->wall.origin) { /* a wall of its own ends solid and taper from above */
        under->solid = TT_UNSAID;
        under->wall_to = (tt_given){0};
    }
    given_over(&under->wall, &over->wall);
    given_over(&under->wall_to, &over->wall_to);
    given_over(&under->surface, &over->surface);
    given_over(&under->extra, &over->extra);
    given_over(&under->casting_quality, &over->casting_quality);
    given_over(&under->turn, &over->turn);
    given_over(&under->turn_to, &over->turn_to);
    given_over(&under->seam_along, &over->seam_along);
    if (over->solid) under->solid = over->solid;
    if (over->open) under->open = over->open;
    if (over->climbable) under->climbable = over->climbable;
    if (over->alloy.said) under->alloy = over->alloy;
    if (over->armature.said) {
        under->armature = over->armature;
        under->armature_to = (tt_said_member){0};
    }
    if (over->armature_to.said) under->armature_to = over->armature_to;
    if (over->wind.said) under->wind = over->wind;
    if (over->faces.said) under->faces = over->faces;
}

void tt_check_said(tt_reader *reader, const tt_node *node, const tt_said *said)
{
    const tt_given *quality = &said->casting_quality;
    if (said->wall.origin) tt_doubt_wall(reader, node, said->wall.is);
    if (quality->is > BEST_UNSAID && !reader->piece->origins.at[quality->origin].why)
        tt_wrong(
            reader, TT_D_REASON_DUE, tt_tree_find(node, "casting_quality"),
            "casting_quality: {is: 0.9, because: \"penetrant and radiograph, by the foundry\"}",
            "`casting_quality` above %g needs a reason", BEST_UNSAID);
    if (said->solid == TT_YES && (said->wall.origin || said->wall_to.origin))
        tt_wrong_key(reader, TT_D_CONTRADICTION, tt_tree_find(node, "solid"), "keep one of the two",
                     "what is solid has no wall");
    if (said->solid == TT_YES && (said->open == TT_YES || said->seam_along.origin))
        tt_wrong_key(reader, TT_D_SOLID_OPEN, tt_tree_find(node, "solid"), "keep one of the two",
                     "what is solid has neither window nor lengthwise seam");
}

static void reason_due(tt_reader *reader, const tt_node *because, const tt_node *drag,
                       const tt_key *key, tt_said_wind *wind)
{
    if (because) wind->because = tt_keep(reader, tt_take_text(reader, because, key));
    if (!wind->because)
        tt_wrong(reader, TT_D_REASON_DUE, drag, "wind: {drag: 1.2, because: \"tested\"}",
                 "a drag of its own needs a reason");
}

static void own_drag(tt_reader *reader, const tt_node *node, const tt_key *key, tt_said_wind *wind)
{
    const tt_node *drag = tt_tree_find(node, "drag"), *because = tt_tree_find(node, "because");
    tt_walk(reader, node, key->map, NULL);
    if (!drag) {
        tt_wrong_shape(reader, node, key);
    } else if (tt_is_word(drag, "code")) {
        static const tt_consumer no_code = {
            "wind.drag",
            "the code's own coefficients are not in this version; the wind acts by the "
            "shape",
            "a number: wind: {drag: 0.8, because: ...}", true, NULL};
        *wind = (tt_said_wind){true, TT_WIND_BY_CODE, 0, NULL};
        tt_wait(reader, drag, &no_code);
        reason_due(reader, because, drag, key, wind);
    } else {
        const tt_given own = tt_take_given(reader, drag, tt_key_named(key->map, "drag"));
        *wind = (tt_said_wind){true, TT_WIND_OWN_DRAG, own.is,
                               reader->piece->origins.at[own.origin].why};
        reason_due(reader, because, drag, key, wind);
    }
}

void tt_read_segment_wind(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    tt_said_wind *wind = field;
    if (tt_is_word(value, "none"))
        *wind = (tt_said_wind){true, TT_WIND_NONE, 0, tt_keep(reader, because)};
    else if (value->kind == TT_MAPPING)
        own_drag(reader, value, key, wind);
    else
        tt_wrong_shape(reader, value, key);
}
