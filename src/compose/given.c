/* compose/given.c - what was put in: the file, the basis, what the command line changed, the piece
 * itself, reasons that were given; and the defaults that were used. */
#include "compose/parts.h"

#include "tiptoe/version.h"

#include <string.h>

/* A file, as a terminal may see it. */
static const char *file_of(const char *file, tt_report *out)
{
    if (!file || strcmp(file, "-") == 0) return "standard input";
    tt_text words = {0};
    tt_text_put_plain(&words, file);
    if (words.failed) out->failed = true;
    const char *text = tt_report_text(out, "%s", tt_text_of(&words));
    tt_text_clear(&words);
    return text;
}

static void input(const tt_assessment *a, tt_report *out)
{
    const tt_piece *piece = a->piece;
    const char *digest = piece->sha256 ? tt_report_text(out, ", SHA-256 %s", piece->sha256) : "";
    const char *edition = piece->edition ? tt_report_text(out, " (%s)", piece->edition) : "";
    tt_report_say(out, tt_report_text(out,
                                      "Computed by tiptoe " TIPTOE_VERSION
                                      " from %s%s. Basis: %s%s, risk %d, "
                                      "scale %g.",
                                      file_of(piece->file, out), digest, a->basis->title, edition,
                                      piece->risk, piece->scale));
    if (piece->sets) tt_report_say(out, "Changed on the command line:");
    if (piece->sets) tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < piece->sets; i++) tt_report_item(out, piece->set[i]);
}

/* Rows of one's own that this piece uses. */
static void own_data(const tt_assessment *a, tt_report *out)
{
    const tt_piece *piece = a->piece;
    size_t used = 0;
    if (!piece->data) return;
    for (size_t i = 1; i < piece->origins.n; i++)
        used += piece->origins.at[i].kind == TT_ORIGIN_DATA;
    tt_report_say(out, tt_report_text(out, "Own data: %s, SHA-256 %s; %s",
                                      file_of(piece->data->file, out), piece->data->sha256,
                                      used ? "used in place of, or beside, the built-in tables:"
                                           : "none of its rows is used here."));
    if (used) tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 1; i < piece->origins.n; i++) {
        const tt_origin *origin = &piece->origins.at[i];
        if (origin->kind != TT_ORIGIN_DATA) continue;
        tt_report_item(out, tt_report_text(out, "%s: %s, line %u, %s", origin->key, origin->written,
                                           origin->place.line, origin->why));
    }
}

/* " = 0.0394 in" behind the "1 mm" of a default, where the report is in inches. */
static const char *converted(const tt_origin *origin, tt_unit_system units, tt_report *out)
{
    static const struct {
        tt_kind kind;
        const char *si;
    } kinds[] = {{TT_Q_LENGTH, "m"},  {TT_Q_MASS, "kg"}, {TT_Q_PRESSURE, "Pa"},
                 {TT_Q_SPEED, "m/s"}, {TT_Q_AREA, "m2"}, {TT_Q_FORCE, "N"}};
    if (units == TT_METRIC || origin->kind != TT_ORIGIN_DEFAULT || !origin->written) return "";
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        const tt_quantity read = tt_quantity_read(origin->written, kinds[i].kind, 0.0);
        if (read.fault != TT_QUANTITY_OK || read.bare) continue;
        return tt_report_text(out, " = %s", tt_say(out, read.value, kinds[i].si, units));
    }
    return "";
}

static const char *one(const tt_origin *origin, tt_unit_system units, tt_report *out)
{
    const char *why = origin->why ? tt_report_text(out, " (%s)", origin->why) : "";
    return tt_report_text(out, "%s: %s%s%s", origin->key,
                          origin->written ? origin->written : "as the file says",
                          converted(origin, units, out), why);
}

static bool with_reason(const tt_origin *origin)
{
    return origin->why && (origin->kind == TT_ORIGIN_FILE || origin->kind == TT_ORIGIN_SET);
}

static bool is_default(const tt_origin *origin)
{
    return origin->kind == TT_ORIGIN_DEFAULT;
}

static void list(const tt_assessment *a, bool (*wanted)(const tt_origin *), int level,
                 const char *head, tt_report *out)
{
    bool any = false;
    for (size_t i = 1; i < a->piece->origins.n; i++) {
        const tt_origin *origin = &a->piece->origins.at[i];
        if (!origin->key || !wanted(origin)) continue;
        if (!any) tt_report_heading(out, level, head);
        if (!any) tt_report_list(out, TT_BLOCK_LIST);
        any = true;
        tt_report_item(out, one(origin, a->piece->report, out));
    }
}

void tt_compose_given(const tt_assessment *a, tt_report *out)
{
    tt_report_heading(out, 2, "What was put in");
    input(a, out);
    own_data(a, out);
    tt_report_list(out, TT_BLOCK_LIST);
    tt_compose_site(a, out);
    tt_compose_bronze(a, out);
    tt_compose_steel(a, out);
    tt_compose_works(a, out);
    tt_compose_segments(a, out);
    tt_compose_burdens(a, out);
    list(a, with_reason, 3, "Values with a reason", out);
    list(a, is_default, 2, "Defaults used", out);
}
