/* compose/verdict.c - the verdict in one sentence: governing place, load, percentage; and whether a
 * default decides it. */
#include "compose/parts.h"

#include <string.h>

enum { ASD = 1 }; /* of piece->method */

static size_t needed(const tt_assessment *a)
{
    size_t n = 0;
    for (size_t i = 0; i < a->findings.unchecked.n; i++) n += a->findings.unchecked.at[i].needed;
    return n;
}

static const char *things_not_checked(const tt_assessment *a, tt_report *out)
{
    const size_t n = needed(a);
    return n == 1 ? "1 thing was not" : tt_report_text(out, "%zu things were not", n);
}

/* What stands before the governing place. */
static const char *opening(const tt_assessment *a, tt_report *out)
{
    const bool place = a->governing != TT_NONE;
    switch (a->verdict) {
    case TT_FALLS_SHORT:
        return place ? "Falls short: " : "Falls short.";
    case TT_HOLDS:
        return place ? "Holds; tightest " : "Holds.";
    case TT_NOT_CHECKED:
        break;
    }
    if (!place)
        return tt_report_text(out, "Nothing could be judged; %s checked.",
                              things_not_checked(a, out));
    return tt_report_text(out, "What was checked holds; %s. Tightest ", things_not_checked(a, out));
}

/* "at foot", "12 mm from foot towards knee" are whole; a place by its bare name and the whole piece
 * lack a word. */
static const char *lead_word(const tt_assessment *a, const tt_finding *finding)
{
    if (finding->segment != TT_NONE) return "";
    for (size_t i = 0; i < a->piece->points.n; i++) {
        if (strcmp(a->piece->points.at[i].name, finding->where) == 0) return "at ";
    }
    return a->verdict == TT_FALLS_SHORT ? "" : "for ";
}

static const char *figure(const tt_assessment *a, const tt_finding *finding, tt_report *out)
{
    const char *what = tt_say_check(finding->check);
    const char *loads = tt_say_loads(out, a, finding);
    const char *under = *loads ? " under " : "";
    if (!finding->has_use) {
        return tt_report_text(out, ", %s%s%s: %s.", what, under, loads,
                              finding->why ? finding->why : "no use can be told");
    }
    if (tt_never_fits(finding))
        return tt_report_text(out, ", %s: %s.", what, tt_say_misfit(out, a, finding));
    const char *neck = tt_margin_of_neck(a, finding)
                           ? ", which counts the lower casting quality of a neck from half use on"
                           : "";
    return tt_report_text(out, ", %s: use %s%s%s, margin %s%s.", what,
                          tt_say_use(out, finding, a->piece->limits.use.is), under, loads,
                          tt_say_margin(out, finding), neck);
}

static const tt_origin *default_of(const tt_piece *piece, const char *key)
{
    for (size_t i = 0; i < piece->origins.n; i++) {
        const tt_origin *origin = &piece->origins.at[i];
        if (origin->kind == TT_ORIGIN_DEFAULT && origin->key && strcmp(origin->key, key) == 0)
            return origin;
    }
    return NULL;
}

static void decided_by(const tt_assessment *a, tt_report *out)
{
    const char *key = a->decided_by_default;
    if (!key) return;
    const tt_origin *origin = default_of(a->piece, key);
    const char *written = origin ? origin->written : NULL;
    const bool rule = written && strncmp(written, "by ", 3) == 0; /* "by the inspection" */
    const char *taken =
        written ? tt_report_text(out, ", taken %s%s", rule ? "" : "as ", written) : "";
    tt_report_run(out, false,
                  tt_report_text(out, " It rests on a value that nobody gave: %s%s.", key, taken));
}

static bool windless(const tt_site *site)
{
    return !site->indoors && !site->wind.given && !site->wind.ruled_out;
}

static const char without_wind[] = "Only its weight and its own loads were checked: no wind was "
                                   "given, and it stands outdoors.";

void tt_compose_verdict(const tt_assessment *a, tt_report *out)
{
    const bool short_of = a->verdict == TT_FALLS_SHORT, calm = windless(&a->piece->site);
    tt_report_paragraph(out);
    if (calm && !short_of) tt_report_run(out, false, tt_report_text(out, "%s ", without_wind));
    tt_report_run(out, false, opening(a, out));
    if (a->governing != TT_NONE) {
        const tt_finding *finding = &a->findings.list.at[a->governing];
        tt_report_run(out, false, lead_word(a, finding));
        tt_report_run(out, true, finding->where);
        tt_report_run(out, false, figure(a, finding, out));
    }
    decided_by(a, out);
    if (short_of && needed(a) > 0)
        tt_report_run(out, false,
                      tt_report_text(out, " Besides, %s checked.", things_not_checked(a, out)));
    if (calm && short_of) tt_report_run(out, false, tt_report_text(out, " %s", without_wind));
    if (a->piece->method == ASD)
        tt_report_run(out, false,
                      " The file asks for asd: this version does not compute it, and the steel was "
                      "judged by lrfd.");
}
