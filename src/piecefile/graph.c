/* piecefile/graph.c - rules over how the parts hang together: every place that is used reaches a
 * stand, no two places lie in one spot, no rigid arm carries two stands. Lengths m. */
#include "base/alloc.h"
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>

/* Sets of places that hang together: the leader of a set is its first place. */
static size_t leader(size_t *of, size_t i)
{
    while (of[i] != i) i = of[i] = of[of[i]];
    return i;
}

static void join(size_t *of, size_t a, size_t b)
{
    a = leader(of, a);
    b = leader(of, b);
    if (a < b)
        of[b] = a;
    else
        of[a] = b;
}

static void single(size_t *of, size_t n)
{
    for (size_t i = 0; i < n; i++) of[i] = i;
}

static void mark_used(const tt_piece *piece, bool *used)
{
    for (size_t i = 0; i < piece->segments.n; i++)
        used[piece->segments.at[i].from] = used[piece->segments.at[i].to] = true;
    for (size_t i = 0; i < piece->arms.n; i++)
        used[piece->arms.at[i].a] = used[piece->arms.at[i].b] = true;
    for (size_t i = 0; i < piece->lumps.n; i++)
        if (piece->lumps.at[i].at != TT_NONE) used[piece->lumps.at[i].at] = true;
    for (size_t i = 0; i < piece->loads.n; i++)
        if (piece->loads.at[i].at != TT_NONE) used[piece->loads.at[i].at] = true;
}

/* The place of what is held that lies nearest to the part of the place; TT_NONE: none is held. */
static size_t nearest_held(const tt_piece *piece, size_t *of, const bool *held, size_t part)
{
    size_t best = TT_NONE;
    double least = INFINITY;
    for (size_t i = 0; i < piece->points.n; i++) {
        if (leader(of, i) != leader(of, part)) continue;
        for (size_t k = 0; k < piece->points.n; k++) {
            const double apart = tt_length(tt_sub(piece->points.at[i].at, piece->points.at[k].at));
            if (!held[leader(of, k)] || !(apart < least)) continue;
            least = apart;
            best = k;
        }
    }
    return best;
}

static const char *limb_of(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *s = &piece->segments.at[i];
        if ((s->from == point || s->to == point) && s->limb != TT_NONE)
            return piece->limbs.at[s->limb].name;
    }
    return NULL;
}

static void tell_loose(tt_reader *reader, size_t *of, const bool *held, size_t point)
{
    const tt_piece *piece = reader->piece;
    const size_t near = nearest_held(piece, of, held, point);
    const char *limb = limb_of(piece, point);
    char hint[240] = "join it by a limb that names a place of the rest, by `joins` or by `rigid`";
    if (near != TT_NONE && limb)
        snprintf(hint, sizeof hint,
                 "begin `%.40s` with a place that exists, such as - [%.40s], or say joins: %.40s",
                 limb, piece->points.at[near].name, piece->points.at[near].name);
    tt_complain(reader->diags, TT_D_LOOSE, piece->points.at[point].place, hint,
                "the part with `%.60s` hangs on nothing", piece->points.at[point].name);
}

static void loose(tt_reader *reader, size_t *of, bool *held, bool *used)
{
    const tt_piece *piece = reader->piece;
    single(of, piece->points.n);
    for (size_t i = 0; i < piece->segments.n; i++)
        join(of, piece->segments.at[i].from, piece->segments.at[i].to);
    for (size_t i = 0; i < piece->arms.n; i++) join(of, piece->arms.at[i].a, piece->arms.at[i].b);
    for (size_t i = 0; i < piece->stands.n; i++) {
        const tt_stand *stand = &piece->stands.at[i];
        held[leader(of, stand->at)] = true;
        if (!used[stand->at])
            tt_complain(reader->diags, TT_D_LOOSE, stand->place, "name a place of a limb",
                        "the stand at `%.60s` holds nothing", piece->points.at[stand->at].name);
    }
    for (size_t i = 0; i < piece->points.n; i++) {
        const size_t set = leader(of, i);
        if (!used[i] || held[set]) continue;
        tell_loose(reader, of, held, i);
        for (size_t k = i; k < piece->points.n; k++) /* told once */
            if (leader(of, k) == set) used[k] = false;
    }
}

static void arms_share(tt_reader *reader, size_t *of, bool *held)
{
    const tt_piece *piece = reader->piece;
    single(of, piece->points.n);
    for (size_t i = 0; i < piece->points.n; i++) held[i] = false;
    for (size_t i = 0; i < piece->arms.n; i++) join(of, piece->arms.at[i].a, piece->arms.at[i].b);
    for (size_t i = 0; i < piece->stands.n; i++) {
        const size_t set = leader(of, piece->stands.at[i].at);
        if (held[set])
            tt_complain(reader->diags, TT_D_ARM_SHARES, piece->stands.at[i].place,
                        "let one of the two carry, or make the part between them a segment",
                        "two stands on one rigid arm: how they share cannot be told");
        held[set] = true;
    }
}

static void short_segments(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *s = &piece->segments.at[i];
        if (tt_segment_length(piece, s) < TT_SHORTEST)
            tt_complain(reader->diags, TT_D_COINCIDE, s->place, "move one of its two places",
                        "the segment `%.80s` has no length", s->name);
    }
}

static bool neighbours(const tt_piece *piece, size_t a, size_t b)
{
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *s = &piece->segments.at[i];
        if ((s->from == a && s->to == b) || (s->from == b && s->to == a)) return true;
    }
    for (size_t i = 0; i < piece->arms.n; i++) {
        const tt_arm *arm = &piece->arms.at[i];
        if ((arm->a == a && arm->b == b) || (arm->a == b && arm->b == a)) return true;
    }
    return false;
}

static void coincide(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    for (size_t j = 1; j < piece->points.n; j++)
        for (size_t i = 0; i < j; i++) {
            const tt_point *a = &piece->points.at[i], *b = &piece->points.at[j];
            if (!(fabs(a->at.z - b->at.z) < TT_SHORTEST)) continue;
            if (!(tt_length(tt_sub(a->at, b->at)) < TT_SHORTEST) || neighbours(piece, i, j))
                continue;
            tt_complain(reader->diags, TT_D_COINCIDE, b->place,
                        "name the one place in both limbs, or tie the two by `rigid`",
                        "`%.60s` lies where `%.60s` is, and nothing joins them", b->name, a->name);
        }
}

/* Judged only when every part was read: a part that was dropped would leave others loose. */
void tt_graph_rules(tt_reader *reader)
{
    const size_t n = reader->piece->points.n;
    short_segments(reader);
    coincide(reader);
    if (reader->holes || reader->piece->segments.n == 0) return;
    size_t *of = tt_alloc(n, sizeof *of);
    bool *held = tt_alloc(n, sizeof *held), *used = tt_alloc(n, sizeof *used);
    if (of && held && used) {
        mark_used(reader->piece, used);
        if (reader->piece->stands.n > 0) loose(reader, of, held, used);
        arms_share(reader, of, held);
    } else {
        reader->no_memory = true;
    }
    tt_free(of);
    tt_free(held);
    tt_free(used);
}
