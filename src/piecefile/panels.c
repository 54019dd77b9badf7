/* piecefile/panels.c - parts of the bronze that are cast as one: segments, or shares of them. */
#include "piecefile/works.h"

/* `body-neck`, or {hock-body: 40 %}. */
static bool part(tt_reader *reader, const tt_node *node, tt_panel_part *out)
{
    const bool share = node->kind == TT_MAPPING && node->n == 1;
    if (node->kind != TT_SCALAR && !share) {
        tt_wrong(reader, TT_D_SHAPE, node, tt_panel_share.example,
                 "a panel is a list of segments, each alone or with its share");
        return false;
    }
    tt_node name = share ? *node->child[0] : *node;
    if (share) {
        name.kind = TT_SCALAR;
        name.text = name.key;
        name.place = tt_key_place(node->child[0]);
    }
    out->segment = tt_segment_named(reader, &name);
    out->share = share ? tt_take_number(reader, node->child[0], &tt_panel_share) : 1.0;
    if (out->segment == TT_NONE) return false;
    if (reader->piece->segments.at[out->segment].alloy != TT_NONE) return out->share > 0;
    tt_wrong(reader, TT_D_NOTHING_TO_JOIN, &name, "name segments of bronze",
             "`%.80s` has no bronze", reader->piece->segments.at[out->segment].name);
    return false;
}

/* Of a segment no more than all. */
static void shares(tt_reader *reader, const tt_node *node, const tt_panel_part *added)
{
    const tt_works *works = reader->piece->works;
    double sum = 0.0;
    for (size_t p = 0; p < works->panels.n; p++)
        for (size_t i = 0; i < works->panels.at[p].parts; i++)
            if (works->panels.at[p].part[i].segment == added->segment)
                sum += works->panels.at[p].part[i].share;
    if (sum + added->share > 1.0 + 1e-9)
        tt_wrong(reader, TT_D_SHARES, node, "give each panel its share: {hock-body: 40 %}",
                 "%.4g %% of `%.80s` stand in panels", 100 * (sum + added->share),
                 reader->piece->segments.at[added->segment].name);
}

static void panel(tt_reader *reader, const tt_node *node, const tt_key *key, tt_works *works)
{
    tt_panel made = {.name = tt_keep(reader, node->key), .place = tt_keep_place(node)};
    if (node->kind != TT_SEQUENCE || node->n == 0) {
        tt_wrong_shape(reader, node, key);
        return;
    }
    made.part = tt_pool_take(&reader->piece->pool, node->n, sizeof *made.part);
    if (!made.part) reader->no_memory = true;
    for (size_t i = 0; made.part && i < node->n; i++) {
        tt_panel_part *out = &made.part[made.parts];
        if (!part(reader, node->child[i], out)) continue;
        for (size_t k = 0; k < made.parts; k++)
            if (made.part[k].segment == out->segment)
                tt_wrong(reader, TT_D_NAME_TWICE, node->child[i], "keep one of the two",
                         "this segment stands in the panel already");
        shares(reader, node->child[i], out);
        made.parts++;
    }
    if (!tt_list_push(&works->panels, made)) reader->no_memory = true;
}

void tt_read_panels(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    for (size_t i = 0; i < node->n && !reader->no_memory; i++)
        panel(reader, node->child[i], key, field);
}

void tt_read_panel_name(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const char *text = tt_take_text(reader, node, key);
    const tt_works *works = reader->piece->works;
    *(size_t *)field = text[0] ? tt_piece_panel(reader->piece, text) : TT_NONE;
    if (*(size_t *)field != TT_NONE || !text[0] || tt_weighed_instead(reader, node)) return;
    tt_near near = tt_near_to(text);
    for (size_t i = 0; i < works->panels.n; i++) tt_near_try(&near, works->panels.at[i].name);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node,
             tt_near_words(&near, "panels: {P3: [body-neck]} makes one"),
             "no panel is named `%.60s`", text);
}
