/* piecefile/weighed_rules.c - what was weighed against the ledger: the same part twice, weights
 * that cannot be, walls so thin by their weight that strength must take them so. kg, m. */
#include "piece/ledger.h"
#include "piecefile/works.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Assumptions of this program: over solid bronze by more is no weighing of that part; five times
 * off is a slip rather than a wall. The wax is a ninth of its bronze. */
#define OVER_SOLID 1.15
#define FAR_OFF 5.0

static const char *name_of(const tt_piece *piece, const tt_weighing *weighing)
{
    return weighing->what == TT_WEIGHED_WHOLE   ? "the whole"
           : weighing->what == TT_WEIGHED_PANEL ? piece->works->panels.at[weighing->index].name
                                                : piece->segments.at[weighing->index].name;
}

/* ---- twice ----------------------------------------------------------------------------------- */

static const tt_weighing *before(const tt_works *works, size_t i)
{
    const tt_weighing *at = works->weighings.at;
    for (size_t k = i; k-- > 0;)
        if (at[k].what == at[i].what && at[k].index == at[i].index && at[k].wax == at[i].wax)
            return &at[k];
    return NULL;
}

/* Days tell that a part was weighed again; written as 2026-03-02 they stand in the order of time.
 */
static bool in_order(const tt_weighing *first, const tt_weighing *second)
{
    if (!first->day || !second->day) return first->day || second->day;
    return strcmp(first->day, second->day) < 0;
}

static void twice(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    for (size_t i = 0; i < piece->works->weighings.n; i++) {
        const tt_weighing *second = &piece->works->weighings.at[i];
        const tt_weighing *first = before(piece->works, i);
        const tt_node *node = reader->weighed.at[i];
        if (!first || in_order(first, second)) continue;
        tt_tell(reader, TT_WARNING, TT_D_WEIGHED_TWICE, node, tt_key_place(node),
                "give each its `day`, in the order of the file, or take one out",
                "%.60s was weighed twice%s (%.30s, %.30s); the last in the file is taken",
                name_of(piece, second), second->wax ? " in wax" : "",
                piece->origins.at[first->mass.origin].written,
                piece->origins.at[second->mass.origin].written);
    }
}

/* ---- weights that cannot be ------------------------------------------------------------------ */

typedef struct {
    double is, estimate, solid; /* bronze */
} tt_against;

static tt_against against(const tt_piece *piece, const tt_ledger *ledger,
                          const tt_weighing *weighing)
{
    const tt_ledger_part *part = tt_ledger_part_of(ledger, weighing);
    const double is = tt_ledger_bronze(piece, ledger, weighing);
    if (part) return (tt_against){is, part->estimate.is, part->solid};
    const double other = ledger->armature + ledger->lumps.is;
    tt_against whole = {is - other, ledger->estimated - other, 0.0};
    for (size_t i = 0; i < ledger->parts; i++) whole.solid += ledger->part[i].solid;
    return whole;
}

static const char *question(const tt_weighing *weighing)
{
    return weighing->what == TT_WEIGHED_WHOLE ? "was all of it on the hook, and was it kg?"
           : weighing->wax
               ? "is this the weight of its wax, and not the bronze's? was it kg, not grams?"
               : "is this the weight of its bronze, and not the wax's? was it kg, not grams?";
}

static void tell_far(tt_reader *reader, size_t i, tt_severity severity, const tt_against *kg,
                     bool over)
{
    const tt_weighing *weighing = &reader->piece->works->weighings.at[i];
    const tt_node *node = reader->weighed.at[i];
    const char *name = name_of(reader->piece, weighing);
    const char *by =
        over ? "full of bronze it would weigh" : "by its outlines and walls it would be";
    const double other = over ? kg->solid : kg->estimate;
    if (weighing->wax)
        tt_tell(reader, severity, TT_D_WEIGHED_FAR, node, tt_key_place(node), question(weighing),
                "the wax of `%.60s` makes %.4g kg of bronze; %s %.4g kg", name, kg->is, by, other);
    else
        tt_tell(reader, severity, TT_D_WEIGHED_FAR, node, tt_key_place(node), question(weighing),
                "the bronze of %.60s weighs %.4g kg; %s %.4g kg", name, kg->is, by, other);
}

static void far_off(tt_reader *reader, const tt_ledger *ledger)
{
    const tt_works *works = reader->piece->works;
    for (size_t i = 0; i < works->weighings.n; i++) {
        const tt_against kg = against(reader->piece, ledger, &works->weighings.at[i]);
        if (kg.is <= 0.0 || kg.estimate <= 0.0)
            continue; /* a whole: told by too_light, or no bronze */
        if (kg.is > OVER_SOLID * kg.solid)
            tell_far(reader, i, TT_ERROR, &kg, true);
        else if (kg.is > kg.solid)
            tell_far(reader, i, TT_WARNING, &kg, true);
        else if (kg.is > FAR_OFF * kg.estimate || kg.is < kg.estimate / FAR_OFF)
            tell_far(reader, i, TT_WARNING, &kg, false);
    }
}

static void too_light(tt_reader *reader, const tt_ledger *ledger)
{
    const tt_weighing *whole = ledger->too_light;
    if (!whole) return;
    const tt_node *node = reader->weighed.at[whole - reader->piece->works->weighings.at];
    const bool parts = ledger->least > ledger->armature + ledger->lumps.is;
    tt_wrong_key(reader, TT_D_WEIGHED, node,
                 parts
                     ? "was all of it on the hook, and each part weighed without gates and slings?"
                     : "was the armature in it when it was weighed?",
                 "the whole weighs %.4g kg, its armature%s alone %.4g kg", tt_weighing_net(whole),
                 parts ? ", lumps and the parts that were weighed" : " and lumps", ledger->least);
}

/* ---- walls ----------------------------------------------------------------------------------- */

static bool lower(tt_given *wall, double *said, double factor)
{
    if (factor * wall->is >= wall->low) return false;
    *said = wall->low;
    wall->low = factor * wall->is;
    return true;
}

/* Decision of this program: the measured mass sets the weight, the low wall stays for strength,
 * unless the mean wall of what was weighed is less. */
static void lower_walls(tt_reader *reader, const tt_ledger *ledger)
{
    for (size_t s = 0; s < reader->piece->segments.n; s++) {
        tt_segment *segment = &reader->piece->segments.at[s];
        const tt_ledger_segment *row = &ledger->segment[s];
        double said[2] = {segment->wall.low, segment->wall_to.low};
        if (segment->solid) continue;
        const bool from = lower(&segment->wall, &said[0], row->wall_factor);
        const bool to = lower(&segment->wall_to, &said[1], row->wall_factor);
        if (!from && !to) continue;
        memcpy(segment->said_low, said, sizeof said);
        char path[120], words[80];
        snprintf(path, sizeof path, "segments/%.80s/wall", segment->name);
        snprintf(words, sizeof words, "low %.3g mm",
                 1e3 * fmin(segment->wall.low, segment->wall_to.low));
        tt_origin_default(reader, path, words,
                          row->thin_by_wax
                              ? "by its wax, 10 % lighter than it weighed, the mean wall is no more"
                              : "by the scales the mean wall is no more");
    }
}

void tt_weighed_rules(tt_reader *reader)
{
    tt_pool pool = {0};
    tt_ledger ledger;
    if (!tt_piece_weighed(reader->piece) || reader->holes ||
        tt_diags_errors(reader->diags) > reader->errors)
        return;
    twice(reader);
    if (tt_ledger_make(reader->piece, &pool, &ledger)) {
        too_light(reader, &ledger);
        far_off(reader, &ledger);
        lower_walls(reader, &ledger);
    } else {
        reader->no_memory = true;
    }
    tt_pool_clear(&pool);
}
