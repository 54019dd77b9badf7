/* compose/cautions.c - the cautions: always there, whatever else the document holds; but what is
 * about a thing that the piece plainly does not have is left out. */
#include "compose/parts.h"

#include <string.h>

static bool armature_in_bronze(const tt_assessment *a)
{
    return tt_two_models(a);
}

static bool carbon_steel(const tt_assessment *a)
{
    for (size_t i = 0; i < a->piece->segments.n; i++) {
        const tt_member *member = &a->piece->segments.at[i].armature;
        if (member->form == TT_MEMBER_NONE) continue;
        if (member->metal >= a->piece->metals.n) return true;
        if (!a->piece->metals.at[member->metal].stainless) return true;
    }
    return false;
}

/* More than 1 % of lead, or lead of which nothing is known. */
static bool leaded(const tt_assessment *a)
{
    for (size_t i = 0; i < a->piece->metals.n; i++) {
        const tt_metal *metal = &a->piece->metals.at[i];
        const tt_fact *lead = &metal->fact[TT_P_LEAD];
        if (metal->kind == TT_CAST && (!lead->has || lead->value > 0.01)) return true;
    }
    return false;
}

static bool wings(const tt_assessment *a)
{
    for (size_t i = 0; i < a->piece->lumps.n; i++)
        if (a->piece->lumps.at[i].wind_area > 0.0) return true;
    for (size_t i = 0; i < a->piece->segments.n; i++) {
        const tt_segment *segment = &a->piece->segments.at[i];
        if (tt_outline_flatness(&segment->outline) > 2.0) return true;
        if (tt_outline_flatness(&segment->outline_to) > 2.0) return true;
    }
    return false;
}

/* ---- loops: points joined by segments, rigid arms, and by the ground between stands ---- */

static size_t root(size_t *of, size_t point)
{
    while (of[point] != point) point = of[point] = of[of[point]];
    return point;
}

/* False: they were joined already, so that this closes a loop. */
static bool join(size_t *of, size_t a, size_t b)
{
    a = root(of, a);
    b = root(of, b);
    of[a] = b;
    return a != b;
}

static bool tree(const tt_piece *piece, size_t *of)
{
    const size_t ground = piece->points.n;
    bool open = true;
    for (size_t i = 0; i <= ground; i++) of[i] = i;
    for (size_t i = 0; i < piece->segments.n; i++)
        open = join(of, piece->segments.at[i].from, piece->segments.at[i].to) && open;
    for (size_t i = 0; i < piece->arms.n; i++)
        open = join(of, piece->arms.at[i].a, piece->arms.at[i].b) && open;
    for (size_t i = 0; i < piece->stands.n; i++)
        open = join(of, piece->stands.at[i].at, ground) && open;
    return open;
}

static bool loops(const tt_assessment *a, tt_report *out)
{
    size_t *of = tt_pool_take(&out->pool, a->piece->points.n + 1, sizeof *of);
    if (!of) out->failed = true;
    return tt_two_models(a) && (!of || !tree(a->piece, of));
}

/* ---- the list ---- */

enum { ARMATURE, WINGS, CARBON, LEADED, LOOPS, FEATURES };

/* Cautions about a thing, by how they begin; `instead`: what is said without the thing. */
static const struct {
    int feature;
    const char *begins, *instead;
} about[] = {
    {ARMATURE, "How much the bronze carries beside its armature", NULL},
    {ARMATURE, "The force between shell and armature", NULL},
    {WINGS, "Wings and capes", NULL},
    {CARBON, "Carbon steel in a damp shell", NULL},
    {LEADED, "Leaded bronze seams",
     "Bronze seams carry only as well as they are welded and looked at."},
    {LOOPS, "In a loop", NULL},
};

/* The caution as it is said of this piece; NULL: it is about what the piece does not have. */
static const char *said(const char *caution, const bool *has)
{
    for (size_t i = 0; i < sizeof about / sizeof *about; i++) {
        if (strncmp(caution, about[i].begins, strlen(about[i].begins)) != 0) continue;
        return has[about[i].feature] ? caution : about[i].instead;
    }
    return caution;
}

void tt_compose_cautions(const tt_assessment *a, tt_report *out)
{
    const bool has[FEATURES] = {[ARMATURE] = armature_in_bronze(a),
                                [WINGS] = wings(a),
                                [CARBON] = carbon_steel(a),
                                [LEADED] = leaded(a),
                                [LOOPS] = loops(a, out)};
    tt_report_heading(out, 2, "Cautions");
    tt_report_list(out, TT_BLOCK_CAUTIONS);
    for (const char *const *caution = tt_cautions(); *caution; caution++) {
        const char *words = said(*caution, has);
        if (words) tt_report_item(out, words);
    }
}
