/* compose/given.c - what it was computed from: the file, the basis, what the command line changed,
 * reasons that were given, and the defaults that were used. */
#include "compose/parts.h"

#include "tiptoe/version.h"

static void input(const tt_assessment *a, tt_report *out)
{
    const tt_piece *piece = a->piece;
    const char *digest = piece->sha256 ? tt_report_text(out, ", SHA-256 %s", piece->sha256) : "";
    const char *edition = piece->edition ? tt_report_text(out, " (%s)", piece->edition) : "";
    tt_report_say(out, tt_report_text(out,
                                      "Computed by tiptoe " TIPTOE_VERSION
                                      " from %s%s. Basis: %s%s, risk %d, "
                                      "scale %g.",
                                      piece->file ? piece->file : "-", digest, a->basis->title,
                                      edition, piece->risk, piece->scale));
    if (piece->sets) tt_report_say(out, "Changed on the command line:");
    if (piece->sets) tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < piece->sets; i++) tt_report_item(out, piece->set[i]);
}

static const char *one(const tt_origin *origin, tt_report *out)
{
    const char *why = origin->why ? tt_report_text(out, " (%s)", origin->why) : "";
    return tt_report_text(out, "%s: %s%s", origin->key,
                          origin->written ? origin->written : "as the file says", why);
}

static bool with_reason(const tt_origin *origin)
{
    return origin->why && (origin->kind == TT_ORIGIN_FILE || origin->kind == TT_ORIGIN_SET);
}

static bool is_default(const tt_origin *origin)
{
    return origin->kind == TT_ORIGIN_DEFAULT;
}

static void list(const tt_assessment *a, bool (*wanted)(const tt_origin *), const char *head,
                 tt_report *out)
{
    bool any = false;
    for (size_t i = 1; i < a->piece->origins.n; i++) {
        const tt_origin *origin = &a->piece->origins.at[i];
        if (!origin->key || !wanted(origin)) continue;
        if (!any) tt_report_heading(out, 2, head);
        if (!any) tt_report_list(out, TT_BLOCK_LIST);
        any = true;
        tt_report_item(out, one(origin, out));
    }
}

void tt_compose_given(const tt_assessment *a, tt_report *out)
{
    tt_report_heading(out, 2, "What it was computed from");
    input(a, out);
    list(a, with_reason, "Values with a reason", out);
    list(a, is_default, "Defaults used", out);
}
