/* check/unchecked.c - what this version does not compute, by name, with what it would take. Nothing
 * that a piece needs may be left out of a judgement in silence. */
#include "check/parts.h"

#include <math.h>
#include <string.h>

typedef bool when_fn(const tt_check_input *in);

static bool always(const tt_check_input *in)
{
    (void)in;
    return true;
}

static bool outdoors(const tt_check_input *in)
{
    return !in->piece->site.indoors;
}

static bool wind_unsaid(const tt_check_input *in)
{
    return outdoors(in) && !in->piece->site.wind.given && !in->piece->site.wind.ruled_out;
}

static bool unsaid(const tt_site_load *load)
{
    return !load->given && !load->ruled_out;
}

static bool earthquake_unsaid(const tt_check_input *in)
{
    return unsaid(&in->piece->site.earthquake.load);
}

static bool ice_unsaid(const tt_check_input *in)
{
    return outdoors(in) && unsaid(&in->piece->site.ice.load);
}

static bool snow_unsaid(const tt_check_input *in)
{
    return outdoors(in) && unsaid(&in->piece->site.snow.load);
}

static bool hollow_bronze(const tt_check_input *in)
{
    for (size_t i = 0; i < in->piece->segments.n; i++) {
        const tt_segment *segment = &in->piece->segments.at[i];
        if (segment->outline.kind != TT_OUTLINE_NONE && !segment->solid) return true;
    }
    return false;
}

static bool armature_in_bronze(const tt_check_input *in)
{
    for (size_t i = 0; i < in->piece->segments.n; i++) {
        const tt_segment *segment = &in->piece->segments.at[i];
        if (segment->armature.form != TT_MEMBER_NONE && segment->outline.kind != TT_OUTLINE_NONE)
            return true;
    }
    return false;
}

static bool seams(const tt_check_input *in)
{
    for (size_t i = 0; i < in->model->cuts.n; i++) {
        const tt_cut *cut = &in->model->cuts.at[i];
        const tt_seam_kind kind = cut->seam ? cut->seam->kind : in->piece->works->seams;
        if (cut->seam_possible && cut->bronze.area > 0.0 && kind == TT_SEAM_UNKNOWN) return true;
    }
    return false;
}

static bool doubtful(const tt_piece *piece, tt_seam_kind kind, size_t filler)
{
    if (kind != TT_SEAM_FULL && kind != TT_SEAM_PARTIAL) return false;
    if (filler == TT_NONE) return true;
    const tt_fact *fact = piece->metals.at[filler].fact;
    return !fact[TT_P_YIELD].has || !fact[TT_P_ULTIMATE].has;
}

/* A welded seam without a filler, or one of which yield or rupture is not known. */
static bool fillers(const tt_check_input *in)
{
    const tt_works *works = in->piece->works;
    bool any = doubtful(in->piece, works->seams, works->seams_metal);
    for (size_t i = 0; i < works->seam.n; i++)
        any = any || doubtful(in->piece, works->seam.at[i].kind, works->seam.at[i].metal);
    return any;
}

static bool flat_limbs(const tt_check_input *in)
{
    if (in->actions->winds == 0) return false;
    for (size_t i = 0; i < in->piece->segments.n; i++) {
        const tt_segment *segment = &in->piece->segments.at[i];
        if (tt_outline_flatness(&segment->outline) > 3.0) return true;
        if (tt_outline_flatness(&segment->outline_to) > 3.0) return true;
    }
    return false;
}

static bool windy(const tt_check_input *in)
{
    return in->actions->winds > 0;
}

static bool standing(const tt_check_input *in)
{
    for (size_t i = 0; i < in->piece->stands.n; i++) {
        if (in->piece->stands.at[i].sole_n) return true;
    }
    return false;
}

/* Is any stand held against tilting, by what does not give? */
static bool held_level_turns(const tt_check_input *in)
{
    for (size_t i = 0; i < in->piece->stands.n; i++) {
        if (in->piece->stands.at[i].way[3] || in->piece->stands.at[i].way[4]) return true;
    }
    return false;
}

/* Does another member than this segment's end at a point? One that runs through is the same. */
static bool another(const tt_piece *piece, size_t index, size_t point)
{
    const size_t run = piece->segments.at[index].armature.run;
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *other = &piece->segments.at[i];
        if (i == index || other->armature.form == TT_MEMBER_NONE) continue;
        if (run > 0 && other->armature.run == run) continue;
        if (other->from == point || other->to == point) return true;
    }
    return false;
}

static bool described(const tt_piece *piece, size_t point)
{
    for (size_t i = 0; i < piece->works->splices.n; i++)
        if (piece->works->splices.at[i].at == point) return true;
    return false;
}

static bool open_end(const tt_piece *piece, size_t index, size_t point)
{
    return another(piece, index, point) && !described(piece, point);
}

/* Do two members of the armature meet anywhere, and nothing says how? */
static bool spliced(const tt_check_input *in)
{
    const tt_piece *piece = in->piece;
    for (size_t i = 0; i < piece->segments.n; i++) {
        const tt_segment *segment = &piece->segments.at[i];
        if (segment->armature.form == TT_MEMBER_NONE) continue;
        if (open_end(piece, i, segment->from) || open_end(piece, i, segment->to)) return true;
    }
    return false;
}

static bool swings_by_hand(const tt_check_input *in)
{
    for (int carry = 0; carry < TT_MODELS; carry++) {
        const tt_modes *modes = &in->solution->modes[carry];
        for (size_t i = 0; i < modes->n; i++) {
            if (modes->at[i].frequency >= 1.0 && modes->at[i].frequency <= 5.0) return true;
        }
    }
    return false;
}

static bool without_plate(const tt_check_input *in)
{
    return !in->piece->works->base.has_plate;
}

static bool with_plate(const tt_check_input *in)
{
    return !without_plate(in);
}

static bool racked(const tt_check_input *in)
{
    return in->piece->works->rack.n > 0;
}

typedef struct {
    const char *check, *why, *give;
    bool needed;
    when_fn *when;
} row;

static const char later[] = "this version does not compute it";

static const row rows[] = {
    {"wind", "site says nothing of the wind",
     "site: {wind: {basic_speed: ..., terrain or exposure: ...}}, or wind: none", true,
     wind_unsaid},
    {"wind.flats", "wind square to a flat limb, off its middle: this version does not compute it",
     NULL, true, flat_limbs},
    {"wind.torsion", "wind on one side of the piece only: this version does not compute it", NULL,
     true, windy},
    {"vortex",
     "shedding of vortices and galloping of slender limbs: this version does not compute it", NULL,
     true, windy},
    {"earthquake", "site says nothing of the earthquake",
     "site: {earthquake: {...}}, or earthquake: none", true, earthquake_unsaid},
    {"ice", "site says nothing of ice", "site: {ice: {thickness: ..., wind: ...}}, or ice: none",
     true, ice_unsaid},
    {"snow", "site says nothing of snow", "site: {snow: {ground: ...}}, or snow: none", true,
     snow_unsaid},
    {"weight.patterns",
     "weight heavy on one side and light on the other: this version takes all heavy and all light",
     NULL, true, always},
    {"member.buckling", later, NULL, true, always},
    {"local.buckling", later, NULL, true, hollow_bronze},
    {"follow",
     "whether the bronze cracks before the armature is spent: this version does not compute it",
     NULL, false, armature_in_bronze},
    {"base spring",
     "how far the base turns under the stands: this version takes them as held as written",
     "its stiffness, where it is known: held: {move: [x, y, z], turn: [z], spring: {turn_x: ..., "
     "turn_y: ...}}",
     true, held_level_turns},
    {"splices", "where members of the armature meet: their welds or sockets are not described",
     "splices: [{at: ..., weld: {throat: ...}}]", true, spliced},
    {"anchors",
     "what holds the stands: the welds of bronze and armature to it, plate, rods, and what they "
     "sit in are not described",
     "base: {plate: ..., anchors: ..., concrete: ...}", true, without_plate},
    {"anchors",
     "what holds the plate: the welds of bronze and armature to it, rods, and what they sit in are "
     "not described",
     "base: {anchors: ..., concrete: ...}", true, with_plate},
    {"footing", "pedestal, footing and soil: not described", "base: {pedestal: ..., footing: ...}",
     true, standing},
    {"fatigue", "fatigue of welds and of the bronze: this version does not compute it", NULL, true,
     windy},
    {"galvanic",
     "bronze and another metal that touch in the wet: this version does not judge the pair", NULL,
     false, armature_in_bronze},
    {"rack",
     "what lies in the rack is kept and not used: choosing the armature is not in this version",
     NULL, false, racked},
    {"handling", "lifting, laying down, transport: this version does not compute it", NULL, false,
     always},
    {"seams", "seams of the bronze that nobody described: taken as the alloy's seams count",
     "seams: [{at: ..., bronze: full | partial | none}]", true, seams},
    {"seams",
     "a welded seam whose filler is not named, or lacks yield or strength: judged by the casting "
     "alone where it does",
     "filler: one that `tiptoe stock fillers` gives both of, or its numbers under materials", true,
     fillers},
    {"shaking",
     "it can be shaken by hand (a mode between 1 and 5 Hz): a static push does not cover this",
     NULL, false, swings_by_hand},
};

/* What the file says and nothing uses yet. */
static bool waiting(const tt_check_input *in, tt_findings *out)
{
    for (size_t i = 0; i < in->piece->waiting.n; i++) {
        const tt_waiting *said = &in->piece->waiting.at[i];
        const char *why = tt_pool_format(&out->pool, "%s: %s", said->key, said->why);
        const tt_unchecked entry = {.check = said->check,
                                    .where = said->where,
                                    .why = why,
                                    .give = said->give,
                                    .needed = said->needed};
        if (!why || !tt_unchecked_add(out, entry)) return false;
    }
    return true;
}

/* The file gives what the row asks for: its own row stands there already. */
static bool said(const tt_piece *piece, const char *check)
{
    for (size_t i = 0; i < piece->waiting.n; i++)
        if (strcmp(piece->waiting.at[i].check, check) == 0 &&
            strcmp(piece->waiting.at[i].where, "the whole piece") == 0)
            return true;
    return false;
}

tt_status tt_unchecked_find(const tt_check_input *in, tt_findings *out)
{
    if (!waiting(in, out)) return TT_E_NOMEM;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (said(in->piece, rows[i].check) || !rows[i].when(in)) continue;
        const tt_unchecked entry = {.check = rows[i].check,
                                    .where = "the whole piece",
                                    .why = rows[i].why,
                                    .give = rows[i].give,
                                    .needed = rows[i].needed};
        if (!tt_unchecked_add(out, entry)) return TT_E_NOMEM;
    }
    return tt_unchecked_members(in, out) && tt_unchecked_transfer(in, out) && tt_lifting(in, out)
               ? TT_OK
               : TT_E_NOMEM;
}
