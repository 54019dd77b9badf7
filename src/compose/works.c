/* compose/works.c - what was put in of how the piece is made and set up: seams of the bronze, the
 * base. Items of a list; nothing where nothing was said. */
#include "compose/parts.h"

static const char *size(double m, const tt_assessment *a, tt_report *out)
{
    return tt_say_exactly(out, m, "m", a->piece->report, 1);
}

/* ---- seams ---- */

static const char *const kinds[] = {[TT_SEAM_UNKNOWN] = "unknown",
                                    [TT_SEAM_NONE] = "cast in one",
                                    [TT_SEAM_PARTIAL] = "welded in part",
                                    [TT_SEAM_FULL] = "welded through"};

static const char *with(const tt_piece *piece, size_t metal, tt_report *out)
{
    if (metal == TT_NONE) return "";
    return tt_report_text(out, " with %s", piece->metals.at[metal].name);
}

/* "hock: welded through with ERCuSi-A, counts 60 %". */
static const char *seam(const tt_piece *piece, const tt_seam *s, tt_report *out)
{
    const char *counts =
        s->efficiency.origin ? tt_report_text(out, ", counts %g %%", 100.0 * s->efficiency.is) : "";
    return tt_report_text(out, "%s: %s%s%s", piece->points.at[s->at].name, kinds[s->kind],
                          with(piece, s->metal, out), counts);
}

static void seams(const tt_piece *piece, tt_report *out)
{
    const tt_works *works = piece->works;
    if (works->seam.n == 0 && !works->seams_said) return;
    const char *words = "";
    for (size_t i = 0; i < works->seam.n; i++)
        words = tt_report_text(out, "%s%s; ", words, seam(piece, &works->seam.at[i], out));
    tt_report_item(out, tt_report_text(out, "Seams: %sall others: %s%s.", words,
                                       kinds[works->seams], with(piece, works->seams_metal, out)));
}

/* ---- base ---- */

static const char *plate(const tt_assessment *a, tt_report *out)
{
    const tt_plate *p = &a->piece->works->base.plate;
    const char *of = p->metal == TT_NONE
                         ? ""
                         : tt_report_text(out, " of %s", a->piece->metals.at[p->metal].name);
    return tt_report_text(out, "plate %s x %s x %s%s", size(p->wide, a, out), size(p->deep, a, out),
                          size(p->thickness, a, out), of);
}

static const char *anchors(const tt_assessment *a, tt_report *out)
{
    const tt_anchors *rods = &a->piece->works->base.anchors;
    return tt_report_text(out, "%zu rods %s of %s, %s deep in %s", rods->n, rods->rod, rods->grade,
                          size(rods->embedment, a, out),
                          rods->in == TT_IN_STONE ? "stone" : "concrete");
}

static const char *block(const char *name, double wide, double deep, double high,
                         const tt_assessment *a, tt_report *out)
{
    return tt_report_text(out, "%s %s x %s x %s", name, size(wide, a, out), size(deep, a, out),
                          size(high, a, out));
}

static const char *pedestal(const tt_assessment *a, tt_report *out)
{
    const tt_base *b = &a->piece->works->base;
    const char *name =
        tt_report_text(out, "pedestal of %s", tt_pedestal_words[b->pedestal.material]);
    return block(name, b->pedestal.wide, b->pedestal.deep, b->pedestal.high, a, out);
}

static const char *footing(const tt_assessment *a, tt_report *out)
{
    const tt_base *b = &a->piece->works->base;
    return block("footing", b->footing.wide, b->footing.deep, b->footing.high, a, out);
}

static void base(const tt_assessment *a, tt_report *out)
{
    typedef const char *part_fn(const tt_assessment *a, tt_report *out);
    const tt_base *b = &a->piece->works->base;
    const struct {
        bool has;
        part_fn *say;
    } part[] = {{b->has_plate, plate},
                {b->has_anchors, anchors},
                {b->has_pedestal, pedestal},
                {b->has_footing, footing}};
    const char *words = "Base, kept and not computed yet", *mark = ":";
    for (size_t i = 0; i < sizeof part / sizeof *part; i++) {
        if (!part[i].has) continue;
        words = tt_report_text(out, "%s%s %s", words, mark, part[i].say(a, out));
        mark = ";";
    }
    if (b->given) tt_report_item(out, tt_report_text(out, "%s.", words));
}

void tt_compose_works(const tt_assessment *a, tt_report *out)
{
    seams(a->piece, out);
    base(a, out);
}
