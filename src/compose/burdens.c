/* compose/burdens.c - what was put in besides the limbs: lumps, stands, loads of the file's own and
 * what it puts together. */
#include "compose/parts.h"

static const char *drag(const tt_assessment *a, const tt_lump *lump, tt_report *out)
{
    if (lump->wind_area <= 0.0) return "none";
    if (lump->drag > 0.0) return tt_say_exactly(out, lump->drag, "", TT_METRIC, 1);
    const tt_origin *origin =
        lump->origin < a->piece->origins.n ? &a->piece->origins.at[lump->origin] : NULL;
    return origin && origin->written ? origin->written : "by the basis";
}

/* What does not follow the scale, where one might think that it does. */
static void masses(const tt_assessment *a, tt_report *out)
{
    if (a->piece->scale == 1.0) return;
    tt_report_say(out, "Masses of lumps are those of the full size: a mass that is given does not "
                       "follow the scale, while wind areas and offsets do.");
}

static void lumps(const tt_assessment *a, tt_report *out)
{
    static const tt_column columns[] = {{"lump", TT_LEFT},
                                        {"at", TT_LEFT},
                                        {"mass", TT_LEFT},
                                        {"wind area, full size", TT_RIGHT},
                                        {"drag", TT_RIGHT}};
    const tt_piece *piece = a->piece;
    if (piece->lumps.n == 0) return;
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        const char *const cells[] = {
            lump->name, piece->points.at[lump->at].name,
            tt_say_spread(out, &lump->mass, "kg", piece->report),
            lump->wind_area > 0.0 ? tt_say_exactly(out, lump->wind_area, "m2", piece->report, 1)
                                  : "none",
            drag(a, lump, out)};
        tt_report_row(out, cells);
    }
    masses(a, out);
}

/* "x y z, turns about x" */
static const char *ways(const tt_stand *stand, tt_report *out)
{
    const char *words = "";
    for (int i = 0; i < 6; i++) {
        if (!stand->way[i]) continue;
        words = tt_report_text(out, "%s%s%s%c", words, *words ? ", " : "",
                               i < 3 ? "along " : "about ", "xyz"[i % 3]);
    }
    return words;
}

static const char *held(const tt_stand *stand, tt_unit_system units, tt_report *out)
{
    static const char *const word[] = {"fixed", "pinned", "rests"};
    if (stand->held == TT_HELD_RESTS && stand->friction.origin)
        return tt_report_text(out, "rests, friction %.4g", stand->friction.is);
    if (stand->held != TT_HELD_IN_PART) return word[stand->held];
    const char *words = ways(stand, out);
    for (int i = 0; i < 6; i++) {
        if (!stand->spring[i].origin) continue;
        words = tt_report_text(
            out, "%s%sspring %s %c %s", words, *words ? ", " : "", i < 3 ? "along" : "about",
            "xyz"[i % 3],
            tt_say_exactly(out, stand->spring[i].is, i < 3 ? "N/m" : "N.m/rad", units, 1));
    }
    return words;
}

static void stands(const tt_piece *piece, tt_report *out)
{
    static const tt_column columns[] = {{"stand", TT_LEFT}, {"held", TT_LEFT}, {"sole", TT_LEFT}};
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < piece->stands.n; i++) {
        const tt_stand *stand = &piece->stands.at[i];
        const char *const cells[] = {piece->points.at[stand->at].name,
                                     held(stand, piece->report, out), stand->sole_n ? "yes" : "no"};
        tt_report_row(out, cells);
    }
}

/* "x 100 N, z -50 N"; "none" of nothing. */
static const char *vector(tt_vec3 v, const char *unit, tt_unit_system units, tt_report *out)
{
    const double part[] = {v.x, v.y, v.z};
    const char *words = "";
    for (int i = 0; i < 3; i++) {
        if (part[i] == 0.0) continue;
        words = tt_report_text(out, "%s%s%c %s", words, *words ? ", " : "", "xyz"[i],
                               tt_say_exactly(out, part[i], unit, units, 1));
    }
    return *words ? words : "none";
}

static const char *acts_on(const tt_piece *piece, const tt_own_load *load, tt_report *out)
{
    if (load->along == TT_NONE) return piece->points.at[load->at].name;
    const char *name = piece->segments.at[load->along].name;
    if (load->between[0] <= 0.0 && load->between[1] >= 1.0) return name;
    return tt_report_text(out, "%s, %g to %g of it", name, load->between[0], load->between[1]);
}

static void loads(const tt_piece *piece, tt_report *out)
{
    static const tt_column columns[] = {{"own load", TT_LEFT},
                                        {"kind", TT_LEFT},
                                        {"where", TT_LEFT},
                                        {"force", TT_LEFT},
                                        {"moment", TT_LEFT}};
    static const char *const kinds[] = {"permanent", "variable", "accidental"};
    if (piece->loads.n == 0) return;
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < piece->loads.n; i++) {
        const tt_own_load *load = &piece->loads.at[i];
        const bool line = load->along != TT_NONE;
        const char *const cells[] = {
            load->name, kinds[load->kind], acts_on(piece, load, out),
            vector(line ? load->line : load->force, line ? "N/m" : "N", piece->report, out),
            vector(load->moment, "N.m", piece->report, out)};
        tt_report_row(out, cells);
    }
}

/* "E1 (strength): 1.2 weight + 0.5 wind 90". */
static void together(const tt_piece *piece, tt_report *out)
{
    if (piece->combinations.n) tt_report_heading(out, 3, "Own loads together");
    if (piece->combinations.n) tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < piece->combinations.n; i++) {
        const tt_own_combination *own = &piece->combinations.at[i];
        const char *words =
            tt_report_text(out, "%s (%s):", own->name, tt_level_word((tt_level)own->level));
        for (size_t t = 0; t < own->terms; t++) {
            words = tt_report_text(out, "%s%s %.4g %s", words, t ? " +" : "", own->term[t].factor,
                                   own->term[t].name);
        }
        tt_report_item(out, tt_say_tied(out, words));
    }
}

void tt_compose_burdens(const tt_assessment *a, tt_report *out)
{
    lumps(a, out);
    stands(a->piece, out);
    loads(a->piece, out);
    together(a->piece, out);
}
