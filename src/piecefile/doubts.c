/* piecefile/doubts.c - what can be, and hardly ever is what was meant: warnings. m. The limits are
 * assumptions of this program from common practice; no document stands behind them. */
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define THINNEST 0.002 /* m: bronze is hardly ever cast thinner: common practice */
#define THIN 6.0       /* how much thinner than both its neighbours a place hardly ever is */
#define FAR 2.5        /* times: how far the places may be from the size that was measured */

static const char *const units[] = {"mm", "cm", "m", "in", "ft"};
enum { UNITS = sizeof units / sizeof *units };

void tt_doubt_wall(tt_reader *reader, const tt_node *node, double wall)
{
    const tt_node *at = tt_tree_find(node, "wall");
    char hint[120];
    if (!at || !(wall < THINNEST) || at->kind != TT_SCALAR) return;
    const tt_quantity q = tt_quantity_read(at->text, TT_Q_LENGTH, reader->unit);
    const char *name = reader->unit_name ? reader->unit_name : "mm";
    snprintf(hint, sizeof hint, "did you mean %.20s %s?", at->text,
             strcmp(name, "mm") == 0 ? "cm, or in" : "in");
    tt_tell(reader, TT_WARNING, TT_D_DOUBT, at, at->place,
            q.bare ? hint : "check digits and unit; bronze has 3 to 8 mm as a rule",
            "a wall of %.3g mm: bronze is hardly ever cast under %.3g mm", 1e3 * wall,
            1e3 * THINNEST);
}

void tt_doubt_share(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const double share = tt_quantity_read(node->text, TT_Q_PURE, 0).value;
    char hint[120];
    snprintf(hint, sizeof hint, "write %.20s %%, or %.6g %% if that is meant", node->text,
             100 * share);
    tt_tell(reader, TT_WARNING, TT_D_DOUBT, node, node->place, hint,
            "`%s` is %.6g times the whole: is %.20s %% meant?", key->name, share, node->text);
}

/* ---- an own metal ---- */

/* What metals of each use have; SI. */
static const struct {
    tt_metal_kind kind;
    tt_property property;
    const char *key, *words;
    double least, most;
} bands[] = {
    {TT_CAST, TT_P_DENSITY, "density", "cast bronze has 7000 to 9500 kg/m3", 7000, 9500},
    {TT_CAST, TT_P_YOUNG_LOW, "young", "cast bronze has 60 to 140 GPa", 60e9, 140e9},
    {TT_CAST, TT_P_YIELD, "yield", "cast bronze has 40 MPa and more", 40e6, INFINITY},
    {TT_STEEL, TT_P_DENSITY, "density", "steel has 7000 to 8500 kg/m3", 7000, 8500},
    {TT_STEEL, TT_P_YOUNG_LOW, "young", "steel has 150 to 220 GPa", 150e9, 220e9},
};

void tt_doubt_metal(tt_reader *reader, const tt_metal *metal)
{
    const tt_node *all = tt_tree_find(reader->root, "materials");
    const tt_node *own = all ? tt_tree_find(all, metal->name) : NULL;
    for (size_t i = 0; own && i < sizeof bands / sizeof *bands; i++) {
        const tt_fact *fact = &metal->fact[bands[i].property];
        const tt_node *at = tt_tree_find(own, bands[i].key);
        if (bands[i].kind != metal->kind || fact->source.mark != TT_GIVEN || !at) continue;
        if (!(fact->value < bands[i].least) && !(fact->value > bands[i].most)) continue;
        tt_tell(reader, TT_WARNING, TT_D_DOUBT, at, at->place,
                "check digits and unit; where it is meant, leave it", "`%s` of %.60s: %s",
                bands[i].key, metal->name, bands[i].words);
    }
}

/* ---- the size that was measured ---- */

static double extent(const tt_piece *piece)
{
    tt_vec3 low = {INFINITY, INFINITY, INFINITY}, high = {-INFINITY, -INFINITY, -INFINITY};
    for (size_t i = 0; i < piece->points.n; i++) {
        const tt_vec3 at = piece->points.at[i].at;
        low = (tt_vec3){fmin(low.x, at.x), fmin(low.y, at.y), fmin(low.z, at.z)};
        high = (tt_vec3){fmax(high.x, at.x), fmax(high.y, at.y), fmax(high.z, at.z)};
    }
    const tt_vec3 size = tt_sub(high, low);
    return fmax(size.x, fmax(size.y, size.z));
}

static bool near_to(double a, double b)
{
    return a <= FAR * b && b <= FAR * a;
}

/* The unit in which the number of the text comes near to the extent; NULL: none. */
static const char *likely_unit(const char *text, double reach)
{
    const size_t number = strspn(text, "0123456789.");
    for (size_t i = 0; number && i < UNITS; i++) {
        char words[40];
        snprintf(words, sizeof words, "%.*s %s", number < 20 ? (int)number : 20, text, units[i]);
        if (near_to(tt_quantity_read(words, TT_Q_LENGTH, 0).value, reach)) return units[i];
    }
    return NULL;
}

static void put_length(const tt_reader *reader, double length, char words[40])
{
    const char *unit = reader->unit_name ? reader->unit_name : "mm";
    snprintf(words, 40, "%.3g %s", length / tt_length_unit(unit), unit);
}

/* The places and `measured` tell of one maquette. Where a part of it alone was measured the warning
 * may be passed over. */
static void measured(tt_reader *reader)
{
    const tt_node *scale = tt_tree_find(reader->root, "scale");
    const tt_node *node = scale ? tt_tree_find(scale, "measured") : NULL;
    const tt_piece *piece = reader->piece;
    char reach_words[40], said_words[40], hint[120];
    if (!node || node->kind != TT_SCALAR || reader->scale_option || piece->points.n < 2) return;
    const double said = tt_quantity_read(node->text, TT_Q_LENGTH, reader->unit).value;
    const double reach = extent(piece) / piece->scale;
    if (!(said > 0) || !(reach > 0) || near_to(said, reach)) return;
    put_length(reader, reach, reach_words);
    put_length(reader, said, said_words);
    const char *unit = likely_unit(node->text, reach);
    snprintf(hint, sizeof hint, unit ? "is its unit %s?" : "check the units of both%s",
             unit ? unit : "");
    tt_tell(reader, TT_WARNING, TT_D_SCALE, node, node->place, hint,
            "the places reach %s, `measured` says %s", reach_words, said_words);
}

/* ---- a place that is thinner than its neighbours ---- */

static bool thin(const tt_segment *a, const tt_segment *b)
{
    const double here = a->outline_to.wide;
    return b->limb == a->limb && a->limb != TT_NONE && b->from == a->to &&
           a->outline.kind == TT_OUTLINE_ELLIPSE && here * THIN < a->outline.wide &&
           here * THIN < b->outline_to.wide;
}

static void thin_places(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    for (size_t i = 0; i + 1 < piece->segments.n; i++) {
        const tt_segment *a = &piece->segments.at[i], *b = &piece->segments.at[i + 1];
        if (!thin(a, b)) continue;
        const double times = sqrt(a->outline.wide * b->outline_to.wide) / a->outline_to.wide;
        tt_diags_add(reader->diags, TT_WARNING, TT_D_DOUBT, piece->points.at[a->to].place,
                     times > 20 ? "is this row in another unit than they are?"
                                : "is this row in cm, and they in mm?",
                     "`%.60s` is about %.2g times thinner than its neighbours",
                     piece->points.at[a->to].name, times);
    }
}

void tt_doubt(tt_reader *reader)
{
    measured(reader);
    thin_places(reader);
}
