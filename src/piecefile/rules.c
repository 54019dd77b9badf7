/* piecefile/rules.c - rules over two keys and over the whole piece. Lengths m, full size. */
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>

#define HEIGHT_SLACK 0.02 /* of the height that is given */
#define AXES_SLACK 5.0    /* degrees */

static void parts(tt_reader *reader)
{
    const tt_node *root = reader->root;
    if (tt_tree_find(root, "limbs") || tt_tree_find(root, "segments")) return;
    tt_wrong_key(reader, TT_D_NO_PARTS, root,
                 "limbs: {leg: [[toe, 0, 0, 0, 46 mm], [hip, 0, 0, 620 mm, 90 mm]]}",
                 "there is no limb and no segment");
}

static void stands(tt_reader *reader)
{
    const tt_node *node = tt_tree_find(reader->root, "stands");
    if (!node || (node->kind == TT_SEQUENCE && node->n == 0))
        tt_wrong_key(reader, TT_D_NO_STAND, node ? node : reader->root,
                     "stands: [{at: toe, held: fixed}]", "nothing holds the piece");
}

static void height(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    const tt_node *node = tt_tree_find(reader->root, "height");
    if (!node || !(piece->height > 0) || piece->points.n == 0) return;
    double top = -INFINITY;
    for (size_t i = 0; i < piece->points.n; i++) top = fmax(top, piece->points.at[i].at.z);
    if (fabs(top - piece->height) <= HEIGHT_SLACK * piece->height) return;
    tt_wrong(reader, TT_D_HEIGHT, node, "units or scale may be the cause",
             "the height is given as %.4g m, the tallest place stands at %.4g m", piece->height,
             top);
}

/* Heights for the wind are counted from z = 0: a place below it, while nothing was said of what it
 * stands on, is likely drawn from another level. Told at the lowest. */
static void below(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    const tt_given *base = &piece->site.base_height;
    if (!piece->site.wind.given || piece->points.n == 0 ||
        piece->origins.at[base->origin].kind != TT_ORIGIN_DEFAULT)
        return;
    const tt_point *lowest = &piece->points.at[0];
    for (size_t i = 1; i < piece->points.n; i++)
        if (piece->points.at[i].at.z < lowest->at.z) lowest = &piece->points.at[i];
    if (!(lowest->at.z < -TT_SHORTEST)) return;
    tt_diags_add(reader->diags, TT_WARNING, TT_D_BELOW, lowest->place,
                 "give site/base_height, the height of z = 0 over the ground; or is the sign of z "
                 "wrong?",
                 "`%.60s` lies %.3g m below the underside: heights over ground are counted from "
                 "z = 0",
                 lowest->name, -lowest->at.z);
}

/* The two of the three axes that leave the wide and deep of the segment the furthest from their
 * switch, the first and the second letter. */
static void clear_faces(const tt_piece *piece, const tt_segment *segment, char out[2])
{
    static const char letters[] = "xyz";
    double margin[3];
    size_t worst = 0;
    for (size_t i = 0; i < 3; i++) {
        tt_segment other = *segment;
        other.faces = (tt_vec3){i == 0, i == 1, i == 2};
        margin[i] = tt_segment_axes_margin(piece, &other);
        if (margin[i] < margin[worst]) worst = i;
    }
    for (size_t i = 0, n = 0; i < 3; i++)
        if (i != worst && n < 2) out[n++] = letters[i];
}

static void tell_axes(tt_reader *reader, const tt_segment *s)
{
    char faces[2], hint[160];
    const tt_outline *a = &s->outline, *b = &s->outline_to;
    const bool end = fabs(b->wide - b->deep) > fabs(a->wide - a->deep);
    clear_faces(reader->piece, s, faces);
    snprintf(hint, sizeof hint,
             "say which way its deep, %.3g mm at `%.40s`, looks: faces: +%c, or faces: +%c",
             1e3 * (end ? b : a)->deep, reader->piece->points.at[end ? s->to : s->from].name,
             faces[0], faces[1]);
    tt_diags_add(reader->diags, TT_WARNING, TT_D_AXES, s->place, hint,
                 "`%.80s` is not round and lies where its wide and deep change places", s->name);
}

/* An outline that is not round, where a small lean would turn it by up to a right angle. Told where
 * nothing is wrong: what is wrong may well be where it lies. */
static void axes(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    if (tt_diags_errors(reader->diags) > reader->errors) return;
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *s = &piece->segments.at[i];
        const bool round = fabs(s->outline.wide - s->outline.deep) < TT_SHORTEST &&
                           fabs(s->outline_to.wide - s->outline_to.deep) < TT_SHORTEST &&
                           s->outline.kind == TT_OUTLINE_ELLIPSE;
        if (s->outline.kind == TT_OUTLINE_NONE || round) continue;
        if (!(tt_segment_length(piece, s) > TT_SHORTEST)) continue;
        if (tt_segment_axes_margin(piece, s) < AXES_SLACK) tell_axes(reader, s);
    }
}

static void (*const rules[])(tt_reader *) = {parts, stands,         height,   below,
                                             axes,  tt_check_grade, tt_doubt, tt_graph_rules};

void tt_rules(tt_reader *reader)
{
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) rules[i](reader);
}
