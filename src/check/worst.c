/* check/worst.c - the worst cut of a segment for one part, over everything that may act. */
#include "check/parts.h"

#include <math.h>

typedef struct {
    const tt_check_input *in;
    const tt_judged_part *part;
    const bool *levels;
    double weight, others; /* largest factor on the weight, and largest sum of the others, of any
                              combination of these levels */
    tt_worst worst;
} search;

static void weigh_factors(search *s)
{
    for (size_t i = 0; i < s->in->combinations->n; i++) {
        const tt_combination *together = &s->in->combinations->at[i];
        double sum = 0.0;
        for (size_t k = 0; k < together->parts; k++) sum += fabs(together->part[k].factor);
        if (!s->levels[together->level]) continue;
        s->weight = fmax(s->weight, fabs(together->weight));
        s->others = fmax(s->others, sum);
    }
}

static double use_under(const search *s, const tt_loaded_cut *at, double *stress)
{
    *stress = s->part->stress(at);
    return *stress < 0.0 ? -1.0 : s->part->use(at, *stress);
}

static void keep(search *s, const tt_loaded_cut *at, double use, size_t nearest, int pattern,
                 const tt_combination *together)
{
    if (use < 0.0 || (s->worst.any && use <= s->worst.use * (1.0 + 1e-12))) return; /* ties stay */
    s->worst = (tt_worst){.any = true,
                          .use = use,
                          .cut = *at->cut,
                          .nearest = nearest,
                          .carry = at->carry,
                          .pattern = pattern,
                          .together = together,
                          .whole = at->whole};
}

/* Stress of each unit case by itself at a cut; false where the part is not asked. */
static bool unit_stresses(const search *s, size_t cut, int carry, double *stress)
{
    const tt_check_input *in = s->in;
    for (size_t i = 0; i < in->actions->cases.n; i++) {
        const size_t same =
            in->actions->cases.at[i].against; /* a norm: the negative has the same */
        const tt_loaded_cut at = {in, &in->model->cuts.at[cut], carry,
                                  tt_answer_forces(&in->solution->answer[carry][i], cut)};
        stress[i] = same != TT_NONE ? stress[same] : s->part->stress(&at);
        if (stress[i] < 0.0) return false;
    }
    return true;
}

/* No combination can make more, whatever is in it. */
static double ceiling_of(const search *s, const double *unit)
{
    double most = 0.0;
    for (size_t i = TT_PATTERNS; i < s->in->actions->cases.n; i++) most = fmax(most, unit[i]);
    return s->weight * fmax(unit[TT_HEAVY], unit[TT_LIGHT]) + s->others * most;
}

static double bound_of(const tt_combination *together, int pattern, const double *stress)
{
    double bound = fabs(together->weight) * stress[pattern];
    for (size_t i = 0; i < together->parts; i++) {
        bound += fabs(together->part[i].factor) * stress[together->part[i].acting];
    }
    return bound;
}

/* A combination with a pattern of weight: what may be the worst at a cut. */
typedef struct {
    const tt_combination *together;
    int pattern;
    double bound;
} candidate;

/* The combination with the largest bound: looked at first, it lets most others be passed over. */
static candidate likeliest(const search *s, const double *unit)
{
    candidate most = {.together = NULL, .bound = -1.0};
    for (size_t i = 0; i < s->in->combinations->n; i++) {
        const tt_combination *together = &s->in->combinations->at[i];
        if (!s->levels[together->level]) continue;
        for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
            const double bound = bound_of(together, pattern, unit);
            if (bound > most.bound) most = (candidate){together, pattern, bound};
        }
    }
    return most;
}

/* Stress of a cut under loads together; the largest so far is kept in `most`. */
typedef struct {
    double stress;
    candidate of;
    tt_forces whole;
} most_stressed;

static void look_at(const search *s, tt_loaded_cut *at, size_t cut, const candidate *of,
                    most_stressed *most)
{
    at->whole = tt_superpose(s->in->solution, at->carry, of->together, of->pattern, cut);
    const double stress = s->part->stress(at);
    if (stress > most->stress) *most = (most_stressed){stress, *of, at->whole};
}

/* Whether a stress at a cut could be worse than the worst so far. */
static bool could_be_worse(const search *s, const tt_loaded_cut *at, double stress)
{
    return !s->worst.any || s->part->use(at, stress * (1.0 + 1e-12)) > s->worst.use;
}

/* One cut in one carry model. It is passed over whole when even its largest bound is no worse than
 * the worst; then combinations whose bound is not above the stress seen here are. The use follows
 * the stress, so that it is asked for once. */
static void search_cut(search *s, size_t cut, int carry, double *unit)
{
    const tt_check_input *in = s->in;
    tt_loaded_cut at = {.in = in, .cut = &in->model->cuts.at[cut], .carry = carry};
    if (!unit_stresses(s, cut, carry, unit)) return;
    if (!could_be_worse(s, &at, ceiling_of(s, unit))) return;
    const candidate first = likeliest(s, unit);
    if (!first.together || !could_be_worse(s, &at, first.bound)) return;
    most_stressed most = {.stress = -1.0};
    look_at(s, &at, cut, &first, &most);
    for (size_t i = 0; i < in->combinations->n; i++) {
        const tt_combination *together = &in->combinations->at[i];
        if (!s->levels[together->level]) continue;
        for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
            const candidate one = {together, pattern, bound_of(together, pattern, unit)};
            if (one.bound * (1.0 + 1e-12) > most.stress) look_at(s, &at, cut, &one, &most);
        }
    }
    at.whole = most.whole;
    keep(s, &at, s->part->use(&at, most.stress), cut, most.of.pattern, most.of.together);
}

static double use_at(const search *s, size_t cut)
{
    const tt_check_input *in = s->in;
    const tt_loaded_cut at = {
        in, &in->model->cuts.at[cut], s->worst.carry,
        tt_superpose(in->solution, s->worst.carry, s->worst.together, s->worst.pattern, cut)};
    double stress;
    return use_under(s, &at, &stress);
}

/* A parabola through the worst cut and its neighbours: its top is looked at as one more cut. */
static void step_between(search *s, size_t segment)
{
    const tt_check_input *in = s->in;
    const size_t c = s->worst.nearest;
    if (c == in->model->first_cut[segment] || c + 1 == in->model->first_cut[segment + 1]) return;
    const tt_cut *cut = &in->model->cuts.at[c];
    const double h0 = cut[0].x - cut[-1].x, h1 = cut[1].x - cut[0].x;
    const double s0 = (s->worst.use - use_at(s, c - 1)) / h0,
                 s1 = (use_at(s, c + 1) - s->worst.use) / h1;
    const double bend = (s1 - s0) / (h0 + h1), slope = s0 + bend * h0; /* at the worst cut */
    if (!(bend < 0.0) || !isfinite(slope)) return;
    const double x = cut->x - slope / (2.0 * bend);
    if (!(x > cut[-1].x && x < cut[1].x)) return;
    const tt_worst from = s->worst;
    const tt_cut between = tt_model_cut_at(in->model, segment, x);
    const tt_loaded_cut at = {in, &between, from.carry,
                              tt_superpose_at(in->model, in->actions, in->solution, from.carry,
                                              from.together, from.pattern, &between)};
    double stress;
    const double use = use_under(s, &at, &stress);
    keep(s, &at, use, c, from.pattern, from.together);
}

tt_worst tt_worst_of(const tt_check_input *in, size_t segment, const bool levels[TT_LEVELS],
                     const tt_judged_part *part)
{
    search s = {.in = in, .part = part, .levels = levels};
    weigh_factors(&s);
    for (size_t c = in->model->first_cut[segment]; c < in->model->first_cut[segment + 1]; c++) {
        for (int carry = 0; carry < TT_MODELS; carry++) search_cut(&s, c, carry, in->scratch);
    }
    if (s.worst.any && isfinite(s.worst.use)) step_between(&s, segment);
    return s.worst;
}
