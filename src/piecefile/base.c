/* piecefile/base.c - plate, anchors, grout, concrete, pedestal, footing; the height over ground
 * that follows from them. m, N, Pa. */
#include "base/text.h"
#include "piecefile/works.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* [wide, deep] of a plate; [wide, deep, high] of what is of stone: fields in this order. */
void tt_read_size(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    double *size = field;
    const size_t n = key == tt_key_named(&tt_plate_map, "size") ? 2 : 3;
    if (node->kind != TT_SEQUENCE || node->n != n) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    for (size_t i = 0; i < n; i++) size[i] = tt_take_number(reader, node->child[i], key);
}

void tt_read_plate_grade(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_said_metal said = {.metal = TT_NONE};
    tt_read_grade(reader, node, key, &said);
    *(size_t *)field = said.metal;
}

/* M16, or a diameter with its unit. */
void tt_read_rod(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_anchors *anchors = field;
    const char *text = tt_take_text(reader, node, key);
    if (!text[0]) return;
    anchors->rod = tt_keep(reader, text);
    char words[48];
    snprintf(words, sizeof words, "%.40s mm", text + 1);
    const tt_quantity metric = tt_quantity_read(words, TT_Q_LENGTH, 0);
    if (text[0] == 'M' && metric.fault == TT_QUANTITY_OK && metric.value >= tt_rod_diameter.least &&
        metric.value <= tt_rod_diameter.most)
        anchors->diameter = metric.value;
    else if (text[0] == 'M')
        tt_wrong(reader, TT_D_RANGE, node, "for example: rod: M16, or rod: 5/8 in",
                 "`%.40s` is no size of a rod", text);
    else
        anchors->diameter = tt_take_number(reader, node, &tt_rod_diameter);
}

void tt_read_corners(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_anchors *anchors = field;
    if (node->kind != TT_SEQUENCE || node->n < 1) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    tt_vec3 *at = tt_pool_take(&reader->piece->pool, node->n, sizeof *at);
    if (!at) reader->no_memory = true;
    for (size_t i = 0; at && i < node->n; i++) {
        const tt_node *one = node->child[i];
        if (one->kind != TT_SEQUENCE || one->n != 2) {
            tt_wrong_shape(reader, one, key);
            return;
        }
        at[i].x = tt_take_number(reader, one->child[0], key);
        at[i].y = tt_take_number(reader, one->child[1], key);
        for (size_t k = 0; k < i; k++)
            if (hypot(at[i].x - at[k].x, at[i].y - at[k].y) < anchors->diameter)
                tt_wrong(reader, TT_D_COINCIDE, one, "one entry a rod", "two rods in one spot");
    }
    anchors->at = at;
    anchors->n = at ? node->n : 0;
}

/* Rods stand in the plate. */
static void rods_in_plate(tt_reader *reader, const tt_node *node, const tt_base *base)
{
    const tt_node *at = tt_tree_find(tt_tree_find(node, "anchors"), "at");
    if (!base->has_plate || !at) return;
    for (size_t i = 0; i < base->anchors.n; i++) {
        const tt_vec3 p = base->anchors.at[i];
        if (fabs(p.x) < base->plate.wide / 2 && fabs(p.y) < base->plate.deep / 2) continue;
        if (!isfinite(p.x + p.y + base->plate.wide + base->plate.deep)) continue;
        tt_wrong(reader, TT_D_CONTRADICTION, at->child[i], "[x, y] from the middle of the plate",
                 "this rod stands beside the plate");
    }
}

static void anchors_rules(tt_reader *reader, const tt_node *node, const tt_base *base)
{
    const tt_node *anchors = tt_tree_find(node, "anchors"), *in = tt_tree_find(anchors, "in");
    const tt_anchors *said = &base->anchors;
    if (!anchors || !in) return;
    if (said->in == TT_IN_CONCRETE && !base->has_concrete)
        tt_wrong_key(reader, TT_D_KEY_MISSING, in,
                     "concrete: {strength: 30 MPa, thickness: 600 mm, edge: 250 mm}",
                     "anchors in concrete that nothing is said of");
    if (said->in == TT_IN_CONCRETE && said->tested)
        tt_wrong_key(reader, TT_D_CONTRADICTION, tt_tree_find(anchors, "tested"),
                     "tests count for stone, which no standard covers",
                     "a test of anchors in concrete");
    if (base->has_concrete && said->embedment >= base->concrete.thickness && said->embedment > 0 &&
        said->in == TT_IN_CONCRETE)
        tt_wrong(reader, TT_D_CONTRADICTION, tt_tree_find(anchors, "embedment"),
                 "the concrete is thicker than the rods are deep",
                 "the rods reach through the concrete");
}

void tt_read_base(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_works *works = field;
    tt_base_draft draft = {.base = {.plate = {.metal = TT_NONE}, .place = tt_keep_place(node)}};
    tt_walk(reader, node, key->map, &draft);
    if (node->kind != TT_MAPPING) return;
    tt_base *base = &draft.base;
    const tt_node *anchors = tt_tree_find(node, "anchors"), *cast = tt_tree_find(node, "concrete");
    base->given = true;
    base->has_plate = tt_tree_find(node, "plate") != NULL;
    base->has_anchors = anchors != NULL;
    base->has_concrete = cast != NULL;
    base->has_pedestal = tt_tree_find(node, "pedestal") != NULL;
    base->has_footing = tt_tree_find(node, "footing") != NULL;
    base->anchors.tested = tt_tree_find(anchors, "tested") != NULL;
    if (base->has_concrete && draft.cracked == TT_UNSAID)
        tt_origin_default(reader, "base/concrete/cracked", "yes",
                          tt_key_named(&tt_concrete_map, "cracked")->why);
    base->concrete.uncracked = draft.cracked == TT_NO;
    rods_in_plate(reader, node, base);
    anchors_rules(reader, node, base);
    works->base = *base;
}

/* Height over ground, left out, is that of plate and pedestal. */
void tt_base_height(tt_reader *reader)
{
    const tt_base *base = &reader->piece->works->base;
    tt_given *height = &reader->piece->site.base_height;
    tt_origin *origin = &reader->piece->origins.at[height->origin];
    const double plate = base->has_plate ? base->plate.thickness : 0;
    const double pedestal = base->has_pedestal ? base->pedestal.high : 0;
    if (origin->kind != TT_ORIGIN_DEFAULT || !(plate + pedestal > 0)) return;
    tt_text words = {0};
    tt_quantity_write(&words, plate + pedestal, TT_Q_LENGTH, reader->piece->report, 4);
    origin->written = tt_keep(reader, tt_text_of(&words));
    origin->why = base->has_plate && base->has_pedestal ? "plate and pedestal"
                  : base->has_plate                     ? "the plate"
                                                        : "the pedestal";
    height->is = height->low = height->high = plate + pedestal;
    if (words.failed) reader->no_memory = true;
    tt_text_clear(&words);
}
