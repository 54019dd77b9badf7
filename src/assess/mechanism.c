/* assess/mechanism.c - a piece that is free to move, in words: which stand lets it, which way, and
 * the line of the piece file that would hold it. Found by trying: the piece is built again with one
 * direction more held at one stand. */
#include "assess/parts.h"
#include "base/alloc.h"
#include "base/diags.h"
#include "base/text.h"

#include <math.h>
#include <string.h>

enum { WAYS = 6, ALL = WAYS }; /* moves along x, y, z, turns about them; or all of these */

static const char *const way_words[] = {"move along x", "move along y", "move up and down",
                                        "turn about x", "turn about y", "turn about z"};

/* From a stand to the one furthest from it: the line through both is what a piece turns about. */
static tt_vec3 furthest_stand(const tt_piece *piece, size_t stand)
{
    const tt_vec3 from = piece->points.at[piece->stands.at[stand].at].at;
    tt_vec3 most = {0, 0, 0};
    for (size_t i = 0; i < piece->stands.n; i++) {
        const tt_vec3 along = tt_sub(piece->points.at[piece->stands.at[i].at].at, from);
        if (tt_length(along) > tt_length(most)) most = along;
    }
    return most;
}

/* Directions in the order of trying: turns about the longest axis first, then moves. */
static void order_of(const tt_piece *piece, size_t stand, int way[WAYS])
{
    const tt_vec3 along = furthest_stand(piece, stand);
    const double size[3] = {fabs(along.x), fabs(along.y), fabs(along.z)};
    int first = 0;
    for (int i = 1; i < 3; i++) {
        if (size[i] > size[first]) first = i;
    }
    for (int i = 0; i < 3; i++) {
        way[i] = 3 + (first + i) % 3;
        way[3 + i] = i;
    }
}

static void hold(tt_stand *stand, int way)
{
    for (int d = 0; d < WAYS; d++) {
        if (d != way && way != ALL) continue;
        stand->way[d] = true;
        stand->spring[d] = (tt_given){0};
    }
}

/* Does the piece stand with this held as well? TT_E_NOMEM, or TT_OK. */
static tt_status stands_with(const tt_piece *piece, size_t stand, int way, bool *does)
{
    tt_piece again = *piece; /* all but its stands is lent */
    tt_frame_fault fault;
    tt_model *model = NULL;
    again.stands.at = tt_alloc(piece->stands.n, sizeof *again.stands.at);
    if (!again.stands.at) return TT_E_NOMEM;
    memcpy(again.stands.at, piece->stands.at, piece->stands.n * sizeof *again.stands.at);
    hold(&again.stands.at[stand], way);
    const tt_status status = tt_model_new(&again, &model, &fault);
    *does = status == TT_OK;
    tt_model_free(model);
    tt_free(again.stands.at);
    return status == TT_E_NOMEM ? status : TT_OK;
}

/* The first stand that would hold it with one direction more, else with all; piece->stands.n when
 * none would. */
static tt_status find(const tt_piece *piece, size_t *stand, int *way)
{
    const size_t n = piece->stands.n;
    for (size_t k = 0; k < n * (WAYS + 1); k++) {
        const bool single = k < n * WAYS;
        int order[WAYS];
        *stand = single ? k / WAYS : k - n * WAYS;
        order_of(piece, *stand, order);
        *way = single ? order[k % WAYS] : ALL;
        bool does = false;
        if (single && piece->stands.at[*stand].way[*way]) continue;
        const tt_status status = stands_with(piece, *stand, *way, &does);
        if (status != TT_OK || does) return status;
    }
    *stand = n;
    return TT_OK;
}

static void put_ways(tt_text *words, const char *key, const bool way[3])
{
    const char *before = "[";
    if (!way[0] && !way[1] && !way[2]) return;
    tt_text_format(words, "%s%s: ", words->at && words->at[words->n - 1] == '{' ? "" : ", ", key);
    for (int i = 0; i < 3; i++) {
        if (way[i]) tt_text_format(words, "%s%c", before, "xyz"[i]);
        if (way[i]) before = ", ";
    }
    tt_text_put(words, "]");
}

static void put_springs(const tt_piece *piece, tt_text *words, const tt_stand *stand)
{
    const char *before = ", spring: {";
    bool any = false;
    for (int i = 0; i < WAYS; i++) {
        const char *written = piece->origins.at[stand->spring[i].origin].written;
        if (!stand->spring[i].origin) continue;
        tt_text_format(words, "%s%s_%c: %s", before, i < 3 ? "move" : "turn", "xyz"[i % 3],
                       written ? written : "...");
        before = ", ";
        any = true;
    }
    if (any) tt_text_put(words, "}");
}

/* "{move: [x, y, z], turn: [x]}"; "fixed". */
static void put_held(const tt_piece *piece, tt_text *words, const tt_stand *stand)
{
    int held = 0;
    for (int i = 0; i < WAYS; i++) held += stand->way[i];
    if (held == WAYS) {
        tt_text_put(words, "fixed");
        return;
    }
    tt_text_put(words, "{");
    put_ways(words, "move", stand->way);
    put_ways(words, "turn", stand->way + 3);
    put_springs(piece, words, stand);
    tt_text_put(words, "}");
}

static void say(const tt_piece *piece, size_t index, int way, const char *more, tt_diags *diags)
{
    static const tt_place nowhere = {0, 0, 0};
    tt_stand stand = piece->stands.at[index];
    const char *name = piece->points.at[stand.at].name;
    const bool slides = !stand.way[0] || !stand.way[1] || !stand.way[2];
    const char *all = slides ? "move and turn" : "turn";
    tt_text hint = {0};
    hold(&stand, way);
    tt_text_format(&hint, "this would hold it: {at: %s, held: ", name);
    put_held(piece, &hint, &stand);
    tt_text_put(&hint, "}");
    tt_complain(diags, TT_D_MECHANISM, nowhere, tt_text_of(&hint),
                "the piece cannot stand as described: at the stand \"%s\" it is free to %s%s", name,
                way == ALL ? all : way_words[way], more);
    tt_text_clear(&hint);
}

/* What no stand mends: a part that hangs on nothing, or a joint between two parts. */
static void say_place(const char *place, int direction, tt_diags *diags)
{
    static const tt_place nowhere = {0, 0, 0};
    if (direction < 0)
        tt_complain(diags, TT_D_MECHANISM, nowhere,
                    "join it to the rest, or give it a stand of its own",
                    "the piece cannot stand as described: nothing holds the part at \"%s\"", place);
    else
        tt_complain(diags, TT_D_MECHANISM, nowhere,
                    "hold that direction by a stand, or join the parts there by a limb",
                    "the piece cannot stand as described: \"%s\" is free to %s", place,
                    way_words[direction]);
}

void tt_assessment_mechanism(const tt_piece *piece, const char *place, int direction,
                             tt_diags *diags)
{
    size_t stand = piece->stands.n;
    int way = ALL;
    tt_text more = {0};
    if (direction >= 0 && find(piece, &stand, &way) != TT_OK) stand = piece->stands.n;
    if (direction >= 0)
        tt_text_format(&more, ", so that \"%s\" can %s", place, way_words[direction]);
    if (stand < piece->stands.n)
        say(piece, stand, way, tt_text_of(&more), diags);
    else
        say_place(place, direction, diags);
    tt_text_clear(&more);
}
