/* piecefile/metals.c - bronze and steel by name: from the catalogue or from `materials`; what is
 * said of the bronze at large. Each metal that is used is copied once into the piece. */
#include "piecefile/reader.h"

#include <stdio.h>
#include <string.h>

/* One own number becomes the fact of every property that it stands for. */
static void mark_facts(tt_metal *metal)
{
    static const tt_property young[] = {TT_P_YOUNG_HIGH, TT_P_YOUNG_EU, TT_P_YOUNG_US};
    for (size_t i = 0; i < sizeof young / sizeof *young; i++)
        metal->fact[young[i]].value = metal->fact[TT_P_YOUNG_LOW].value;
    for (size_t i = 0; i < TT_P_COUNT; i++) {
        tt_fact *fact = &metal->fact[i];
        fact->source = (tt_source){
            .document = "given in the piece file", .place = metal->name, .mark = TT_GIVEN};
        fact->has = fact->value > 0;
    }
    metal->fact[TT_P_POISSON].has = true;
}

void tt_read_materials(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    for (size_t i = 0; i < node->n; i++) {
        const tt_node *child = node->child[i];
        tt_own_metal said = {.metal = {.name = tt_keep(reader, child->key),
                                       .title = "given in the piece file",
                                       .form = "",
                                       .yield_basis = "as given"}};
        tt_metal *metal = &said.metal;
        tt_enter(reader, child->key);
        tt_walk(reader, child, key->map, &said);
        tt_leave(reader);
        metal->stainless = said.stainless == TT_YES;
        const double yield = metal->fact[TT_P_YIELD].value, most = metal->fact[TT_P_ULTIMATE].value;
        if (yield > most && most > 0)
            tt_wrong_key(reader, TT_D_CONTRADICTION, child, "the two were exchanged?",
                         "`yield` of %.60s is more than `ultimate`", child->key);
        mark_facts(metal);
        if (!tt_list_push(&reader->own, *metal)) reader->no_memory = true;
    }
}

static const tt_metal *look_up(tt_reader *reader, const char *name, tt_metal_kind kind)
{
    for (size_t i = 0; i < reader->own.n; i++) {
        if (strcmp(reader->own.at[i].name, name) != 0) continue;
        reader->own.at[i].kind = kind;
        return &reader->own.at[i];
    }
    return tt_metal_named(reader->data, name, kind);
}

static tt_near nearest(const tt_reader *reader, const char *name, tt_metal_kind kind)
{
    tt_near near = tt_near_to(name);
    const char *best[3];
    const size_t n = tt_metals_alike(reader->data, name, kind, best, 3);
    for (size_t i = 0; i < n; i++) near.best[i] = best[i]; /* by what the table says of them */
    for (size_t i = 0; n == 0 && i < reader->own.n; i++) tt_near_try(&near, reader->own.at[i].name);
    for (size_t i = 0; n == 0 && i < tt_metals_count(reader->data); i++) {
        const tt_metal *metal = tt_metals_at(reader->data, i);
        if (metal && metal->kind == kind) tt_near_try(&near, metal->name);
    }
    return near;
}

static void tell_unknown(tt_reader *reader, const tt_node *node, const char *name,
                         tt_metal_kind kind)
{
    tt_near near = nearest(reader, name, kind);
    static const char *const tables[] = {"alloys", "steels", "fillers", "materials"};
    static const char *const kinds[] = {"an alloy", "a steel", "a filler", "a material"};
    char hint[400];
    snprintf(hint, sizeof hint, "%s `tiptoe stock %s` lists them",
             tt_near_words(&near, "name one of the table, or give its numbers under `materials`;"),
             tables[kind]);
    tt_wrong(reader, TT_D_NAME_UNKNOWN, node, hint, "`%.60s` is not %s that is known here", name,
             kinds[kind]);
}

size_t tt_metal_use(tt_reader *reader, const tt_node *node, const char *name, tt_metal_kind kind)
{
    const tt_metal *metal = look_up(reader, name, kind);
    if (!metal) {
        tell_unknown(reader, node, name, kind);
        return TT_NONE;
    }
    tt_piece *piece = reader->piece;
    tt_origin_data(reader, metal->name, &metal->at, &metal->fact[TT_P_YIELD].source);
    for (size_t i = 0; i < piece->metals.n; i++)
        if (piece->metals.at[i].kind == kind && strcmp(piece->metals.at[i].name, name) == 0)
            return i;
    tt_doubt_metal(reader, metal);
    if (tt_list_push(&piece->metals, *metal)) return piece->metals.n - 1;
    reader->no_memory = true;
    return TT_NONE;
}

/* In place of a metal that is unknown and told, so that not every rule about metals is told as
 * well: one that welds, or does not rust. */
static size_t stand_in(tt_reader *reader, tt_metal_kind kind)
{
    const tt_metal *best = NULL;
    for (size_t i = 0; i < tt_metals_count(reader->data); i++) {
        const tt_metal *metal = tt_metals_at(reader->data, i);
        const bool good = metal && (metal->stainless || metal->fact[TT_P_SEAM].value > 0.5);
        if (good && metal->kind == kind && !best) best = metal;
    }
    if (!best) return TT_NONE;
    if (tt_list_push(&reader->piece->metals, *best)) return reader->piece->metals.n - 1;
    reader->no_memory = true;
    return TT_NONE;
}

static void use(tt_reader *reader, const tt_node *node, const tt_key *key, tt_metal_kind kind,
                tt_said_metal *out)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    const char *name = tt_take_text(reader, node, key);
    *out = (tt_said_metal){true, TT_NONE, value};
    if (name[0]) out->metal = tt_metal_use(reader, value, name, kind);
    if (name[0] && out->metal == TT_NONE) out->metal = stand_in(reader, kind);
}

void tt_read_alloy(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    use(reader, node, key, TT_CAST, field);
}

void tt_read_grade(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    use(reader, node, key, TT_STEEL, field);
}

void tt_read_bronze(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    tt_walk(reader, node, key->map, &reader->bronze);
    tt_check_said(reader, node, &reader->bronze.said);
}
