/* compose/bronze.c - what was put in of the metals: each with the strength that was used and its
 * source. Items of a list. */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

static const tt_metal *metal_at(const tt_piece *piece, size_t i)
{
    return i < piece->metals.n ? &piece->metals.at[i] : NULL;
}

const tt_metal *tt_main_alloy(const tt_piece *piece)
{
    size_t best = TT_NONE, most = 0;
    for (size_t m = 0; m < piece->metals.n; m++) {
        size_t n = 0;
        for (size_t i = 0; i < piece->segments.n; i++) {
            const tt_segment *segment = &piece->segments.at[i];
            n += segment->outline.kind != TT_OUTLINE_NONE && segment->alloy == m;
        }
        if (n > most) best = m;
        if (n > most) most = n;
    }
    return metal_at(piece, best);
}

const tt_metal *tt_main_steel(const tt_piece *piece)
{
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_member *member = &piece->segments.at[i].armature;
        if (member->form != TT_MEMBER_NONE) return metal_at(piece, member->metal);
    }
    return NULL;
}

/* ---- a metal ----------------------------------------------------------------------------------
 */

/* " [document, edition, place, mark]"; "" for what was given in the file. */
static const char *cited(const tt_source *source, tt_report *out)
{
    if (source->mark == TT_GIVEN) return "";
    tt_text words = {0};
    tt_source_words(&words, source);
    if (words.failed) out->failed = true;
    const char *text =
        tt_report_text(out, " [%s, %s]", tt_text_of(&words), tt_mark_word(source->mark));
    tt_text_clear(&words);
    return text;
}

/* " (Rp0.2)" behind the yield strength. */
static const char *basis_of(const tt_metal *metal, tt_property property, tt_report *out)
{
    const bool told = property == TT_P_YIELD && metal->fact[property].source.mark != TT_GIVEN;
    return told ? tt_report_text(out, " (%s)", metal->yield_basis) : "";
}

/* ", f_y 124 MPa (Rp0.2)"; a source stands behind the last figure that it gives. */
static const char *figures(const tt_metal *metal, tt_unit_system units, tt_report *out)
{
    static const struct {
        tt_property property;
        const char *words;
        bool own; /* told only of a metal of the file's own */
    } rows[] = {{TT_P_YIELD, "f_y", false},
                {TT_P_ULTIMATE, "f_u", false},
                {TT_P_DENSITY, "density", true},
                {TT_P_YOUNG_LOW, "modulus", true},
                {TT_P_POISSON, "Poisson's ratio", true},
                {TT_P_EXPANSION, "expansion", true}};
    const char *all = "", *last = "";
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const tt_fact *fact = &metal->fact[rows[i].property];
        if (!fact->has || (rows[i].own && fact->source.mark != TT_GIVEN)) continue;
        const char *source = cited(&fact->source, out);
        const bool same = strcmp(source, last) == 0;
        all = tt_report_text(
            out, "%s%s, %s %s%s", all, same ? "" : last, rows[i].words,
            tt_say_exactly(out, fact->value, tt_property_unit(rows[i].property), units, 1),
            basis_of(metal, rows[i].property, out));
        last = source;
    }
    return tt_report_text(out, "%s%s", all, last);
}

static const char *whole(const tt_metal *metal, tt_unit_system units, tt_report *out)
{
    return tt_report_text(out, "%s (%s%s%s)%s", metal->name, metal->title,
                          metal->form[0] ? ", " : "", metal->form, figures(metal, units, out));
}

/* ---- the bronze -------------------------------------------------------------------------------
 */

/* One value; a unit of "%" is a part of the whole. */
static const char *value(tt_report *out, double is, const char *unit, tt_unit_system units)
{
    if (strcmp(unit, "%") != 0) return tt_say_exactly(out, is, unit, units, 1);
    return tt_report_text(out, "%s %%", tt_say_exactly(out, 100.0 * is, "", units, 1));
}

const char *tt_say_spread(tt_report *out, const tt_given *given, const char *unit,
                          tt_unit_system units)
{
    const char *is = value(out, given->is, unit, units);
    if (given->low == given->is && given->high == given->is) return is;
    return tt_report_text(out, "%s (%s to %s)", is, value(out, given->low, unit, units),
                          value(out, given->high, unit, units));
}

typedef const tt_given *field(const tt_segment *segment);

static const tt_given *wall_of(const tt_segment *segment)
{
    return segment->solid ? NULL : &segment->wall;
}

static const tt_given *surface_of(const tt_segment *segment)
{
    return segment->solid ? NULL : &segment->surface;
}

static const tt_given *extra_of(const tt_segment *segment)
{
    return &segment->extra;
}

/* What all bronze has of something. */
typedef struct {
    tt_given given; /* low and high: the least and the most of all */
    bool any, alike;
} span;

static span span_of(const tt_piece *piece, field *of)
{
    span all = {.alike = true};
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *segment = &piece->segments.at[i];
        const tt_given *here = segment->outline.kind == TT_OUTLINE_NONE ? NULL : of(segment);
        if (!here) continue;
        if (!all.any) all.given = *here;
        all.any = true;
        all.alike &=
            here->is == all.given.is && here->low == all.given.low && here->high == all.given.high;
        all.given.low = fmin(all.given.low, here->low);
        all.given.high = fmax(all.given.high, here->high);
    }
    return all;
}

/* "; wall 5 mm (4 mm to 7 mm)"; "; wall from 3 mm to 7 mm, by segment". */
static const char *common(const tt_assessment *a, field *of, const char *name, const char *unit,
                          tt_report *out)
{
    const tt_unit_system units = a->piece->report;
    const span all = span_of(a->piece, of);
    if (!all.any) return "";
    if (all.alike)
        return tt_report_text(out, "; %s %s", name, tt_say_spread(out, &all.given, unit, units));
    return tt_report_text(out, "; %s from %s to %s, by segment", name,
                          value(out, all.given.low, unit, units),
                          value(out, all.given.high, unit, units));
}

static const char *inspection(const tt_piece *piece)
{
    static const char *const words[] = {"looked at only", "looked at with penetrant",
                                        "looked at with penetrant and radiograph"};
    return words[piece->inspection];
}

void tt_compose_bronze(const tt_assessment *a, tt_report *out)
{
    const tt_piece *piece = a->piece;
    const tt_metal *alloy = tt_main_alloy(piece);
    if (!alloy) return;
    tt_report_item(out, tt_report_text(out, "Bronze: %s%s%s%s; castings %s.",
                                       whole(alloy, piece->report, out),
                                       common(a, wall_of, "wall", "m", out),
                                       common(a, surface_of, "surface", "", out),
                                       common(a, extra_of, "extra", "%", out), inspection(piece)));
    for (size_t m = 0; m < piece->metals.n; m++) {
        const tt_metal *metal = &piece->metals.at[m];
        if (metal->kind != TT_CAST || metal == alloy) continue;
        tt_report_item(out,
                       tt_report_text(out, "Also bronze: %s.", whole(metal, piece->report, out)));
    }
}

/* ---- the armature -----------------------------------------------------------------------------
 */

static const char *loss(const tt_piece *piece, tt_report *out)
{
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_member *member = &piece->segments.at[i].armature;
        if (member->form == TT_MEMBER_NONE || member->loss <= 0.0) continue;
        return tt_report_text(out, "; %s of its wall taken as lost to rust",
                              tt_say_exactly(out, member->loss, "m", piece->report, 1));
    }
    return "";
}

void tt_compose_steel(const tt_assessment *a, tt_report *out)
{
    const tt_metal *steel = tt_main_steel(a->piece);
    if (!steel) return;
    tt_report_item(out, tt_report_text(out, "Armature: %s%s.", whole(steel, a->piece->report, out),
                                       loss(a->piece, out)));
}
