/* compose/segments.c - what was put in of the limbs, segment by segment: outlines, wall, armature,
 * and the bore that is left for it. */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

/* Of a length the bare number, in mm or inches. */
static const char *bare(const tt_assessment *a, double m, tt_report *out)
{
    out->not_finite |= !isfinite(m);
    return tt_report_text(out, "%.4g", m / (a->piece->report == TT_METRIC ? 1e-3 : 0.0254));
}

static const char *outline(const tt_assessment *a, const tt_outline *o, tt_report *out)
{
    if (o->kind == TT_OUTLINE_NONE) return "none";
    const char *kind = o->kind == TT_OUTLINE_BOX || o->corner > 0.0 ? "box "
                       : o->kind == TT_OUTLINE_TRACE                ? "trace "
                       : o->kind == TT_OUTLINE_NUMBERS              ? "numbers "
                                                                    : "";
    const char *widths =
        tt_report_text(out, "%s%s x %s", kind, bare(a, o->wide, out), bare(a, o->deep, out));
    return o->corner > 0.0 ? tt_report_text(out, "%s r %s", widths, bare(a, o->corner, out))
                           : widths;
}

static const char *thickness(const tt_assessment *a, const tt_given *wall, tt_report *out)
{
    if (wall->low == wall->is && wall->high == wall->is) return bare(a, wall->is, out);
    return tt_report_text(out, "%s (%s-%s)", bare(a, wall->is, out), bare(a, wall->low, out),
                          bare(a, wall->high, out));
}

static const char *wall(const tt_assessment *a, const tt_segment *segment, tt_report *out)
{
    if (segment->outline.kind == TT_OUTLINE_NONE) return "none";
    if (segment->outline.kind == TT_OUTLINE_NUMBERS) return "as given";
    if (segment->solid) return "solid";
    const char *from = thickness(a, &segment->wall, out),
               *to = thickness(a, &segment->wall_to, out);
    return strcmp(from, to) == 0 ? from : tt_report_text(out, "%s to %s", from, to);
}

/* One end of a member: its first measures, as many as its kind has. */
static const char *size(const tt_assessment *a, const double measure[3], int n, tt_report *out)
{
    const char *words = bare(a, measure[0], out);
    for (int i = 1; i < n; i++)
        words = tt_report_text(out, "%s x %s", words, bare(a, measure[i], out));
    return words;
}

static const char *beside(const tt_assessment *a, const tt_member *m, tt_report *out)
{
    const bool off = m->off[0] != 0.0 || m->off[1] != 0.0;
    return off ? tt_report_text(out, " at %s, %s", bare(a, m->off[0], out), bare(a, m->off[1], out))
               : "";
}

static const char *member(const tt_assessment *a, const tt_member *m, tt_report *out)
{
    static const char *const words[] = {"none", "tube", "bar", "box", "flat"};
    static const int measures[] = {0, 2, 1, 3, 2};
    const bool round = m->form == TT_MEMBER_TUBE || m->form == TT_MEMBER_BAR;
    const double first[3] = {m->od, round ? m->wall : m->deep, m->wall};
    const double last[3] = {m->od_to, round ? m->wall_to : m->deep_to, m->wall_to};
    if (m->form == TT_MEMBER_NONE) return m->choose ? "to be chosen" : "none";
    const char *written = a->piece->origins.at[m->origin].written;
    if (written && strncmp(written, "pipe ", 5) == 0)
        return tt_report_text(out, "%s%s", written, beside(a, m, out));
    const char *from = size(a, first, measures[m->form], out);
    const char *to = size(a, last, measures[m->form], out);
    const bool same = strcmp(from, to) == 0;
    return tt_report_text(out, "%s %s%s%s%s", words[m->form], from, same ? "" : " to ",
                          same ? "" : to, beside(a, m, out));
}

/* The narrowest of a segment's cuts. */
static const char *bore(const tt_assessment *a, size_t index, tt_report *out)
{
    double least = INFINITY;
    for (size_t c = 0; c < a->model->cuts.n; c++) {
        const tt_cut *cut = &a->model->cuts.at[c];
        if (cut->segment == index) least = fmin(least, cut->bore);
    }
    return isfinite(least) && least > 0.0 ? bare(a, least, out) : "none";
}

static bool several_alloys(const tt_piece *piece)
{
    size_t n = 0;
    for (size_t m = 0; m < piece->metals.n; m++) n += piece->metals.at[m].kind == TT_CAST;
    return n > 1;
}

static const char *alloy(const tt_piece *piece, const tt_segment *segment)
{
    const bool has = segment->outline.kind != TT_OUTLINE_NONE && segment->alloy < piece->metals.n;
    return has ? piece->metals.at[segment->alloy].name : "none";
}

static void row(const tt_assessment *a, size_t index, bool alloys, tt_report *out)
{
    const tt_segment *segment = &a->piece->segments.at[index];
    const char *const first[] = {segment->name, outline(a, &segment->outline, out),
                                 outline(a, &segment->outline_to, out), wall(a, segment, out)};
    for (size_t i = 0; i < sizeof first / sizeof *first; i++) tt_report_item(out, first[i]);
    if (alloys) tt_report_item(out, alloy(a->piece, segment));
    tt_report_item(out, member(a, &segment->armature, out));
    tt_report_item(out, bore(a, index, out));
}

void tt_compose_segments(const tt_assessment *a, tt_report *out)
{
    static const tt_column with_alloy[] = {
        {"segment", TT_LEFT}, {"first end", TT_LEFT}, {"last end", TT_LEFT}, {"wall", TT_LEFT},
        {"alloy", TT_LEFT},   {"armature", TT_LEFT},  {"bore", TT_RIGHT}};
    static const tt_column without[] = {{"segment", TT_LEFT},  {"first end", TT_LEFT},
                                        {"last end", TT_LEFT}, {"wall", TT_LEFT},
                                        {"armature", TT_LEFT}, {"bore", TT_RIGHT}};
    const bool alloys = several_alloys(a->piece);
    tt_report_say(out,
                  tt_report_text(out,
                                 "The segments, all in %s: outside of the bronze at both ends, "
                                 "wide x deep; wall, with its spread; armature; and the "
                                 "narrowest bore inside the wall at its thickest.",
                                 a->piece->report == TT_METRIC ? "mm" : "inches"));
    if (alloys)
        tt_report_table(out, with_alloy, sizeof with_alloy / sizeof *with_alloy);
    else
        tt_report_table(out, without, sizeof without / sizeof *without);
    for (size_t i = 0; i < a->piece->segments.n; i++) row(a, i, alloys, out);
}
