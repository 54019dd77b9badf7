/* check/worst.c - the worst cut of a segment for one part, over everything that may act: bounded
 * from first order, judged of second order where it could be the worst. */
#include "check/parts.h"

#include "base/alloc.h"

#include <math.h>

/* Of second order is solved the worst of first order, so that every row tells one; and, surely,
 * whatever could fall short or govern the piece. */
static const double near_first = 1.0 - 1e-9;

typedef struct {
    const tt_check_input *in;
    const tt_judged_part *part;
    const bool *levels;
    double weight, others;   /* largest factor on the weight, and largest sum of the others, of any
                                combination of these levels */
    double lean;             /* largest imperfection */
    double drift[TT_MODELS]; /* largest of any situation of these levels */
    double floor;            /* a use that some segment surely has */
    double first;            /* largest use of first order in the segment */
    tt_worst worst;
} search;

/* What bounds the stress at a cut: of each unit case (and lean) by itself, and of what second order
 * may add to one unit of drift. */
typedef struct {
    size_t cut;
    int carry;
    bool asked;
    double *unit;
    double reach;
} bounds;

static void weigh_factors(search *s)
{
    for (size_t i = 0; i < s->in->combinations->n; i++) {
        const tt_combination *together = &s->in->combinations->at[i];
        double sum = 0.0;
        for (size_t k = 0; k < together->parts; k++) sum += fabs(together->part[k].factor);
        if (!s->levels[together->level]) continue;
        s->weight = fmax(s->weight, fabs(together->weight));
        s->others = fmax(s->others, sum);
        s->lean = fmax(s->lean, together->imperfection);
        for (int carry = 0; carry < TT_MODELS; carry++) {
            for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
                s->drift[carry] =
                    fmax(s->drift[carry], tt_most_drift(s->in->second, carry, together, pattern));
            }
        }
    }
}

static double use_under(const search *s, const tt_loaded_cut *at)
{
    const double stress = s->part->stress(at);
    return stress < 0.0 ? -1.0 : s->part->use(at, stress);
}

static void keep(search *s, const tt_loaded_cut *at, double use, size_t nearest,
                 const tt_exact *exact)
{
    if (use < 0.0 || (s->worst.any && use <= s->worst.use * (1.0 + 1e-12))) return; /* ties stay */
    if (isfinite(use)) s->floor = fmax(s->floor, use);
    s->worst = (tt_worst){.any = true,
                          .use = use,
                          .cut = *at->cut,
                          .nearest = nearest,
                          .carry = at->carry,
                          .pattern = exact->of.pattern,
                          .together = exact->of.together,
                          .exact = exact,
                          .whole = at->whole};
}

static double unit_stress(const search *s, tt_loaded_cut *at, const tt_answer *answer, size_t cut)
{
    at->whole = tt_answer_forces(answer, cut);
    return s->part->stress(at);
}

/* What one unit of drift may add: section forces f of it have f' C f at most 1, C the inverse of
 * their reach, and their stress is at most the sum of that of each. */
static double reach_of(const search *s, tt_loaded_cut *at)
{
    double stress[TT_SIX], square = 0.0;
    tt_mat6 reach;
    tt_second_reach(s->in->second, at->carry, at->cut, &reach);
    for (int k = 0; k < TT_SIX; k++) {
        double f[TT_SIX] = {0};
        f[k] = 1.0;
        at->whole = (tt_forces){f[0], f[1], f[2], f[3], f[4], f[5]};
        stress[k] = s->part->stress(at);
    }
    for (int k = 0; k < TT_SIX; k++) {
        for (int l = 0; l < TT_SIX; l++) square += stress[k] * stress[l] * fabs(reach.at[k][l]);
    }
    return sqrt(square);
}

/* Stress of each unit case at a cut, those that lean with both their leans (any way between them is
 * no worse); not asked where the part is not. */
static void bound_cut(const search *s, bounds *b)
{
    const tt_check_input *in = s->in;
    const size_t cases = in->actions->cases.n, leans = in->actions->leans.n;
    tt_loaded_cut at = {.in = in, .cut = &in->model->cuts.at[b->cut], .carry = b->carry};
    b->asked = true;
    for (size_t i = 0; i < cases + leans && b->asked; i++) {
        const size_t same = i < cases ? in->actions->cases.at[i].against : TT_NONE;
        const tt_answer *answer = i < cases ? &in->solution->answer[b->carry][i]
                                            : &in->solution->lean[b->carry][i - cases];
        /* a norm: the negative has the same */
        b->unit[i] = same != TT_NONE ? b->unit[same] : unit_stress(s, &at, answer, b->cut);
        b->asked = b->unit[i] >= 0.0;
    }
    for (size_t i = 0; i < leans && b->asked; i++)
        b->unit[in->actions->leans.at[i].of] += s->lean * b->unit[cases + i];
    b->reach = b->asked ? reach_of(s, &at) : 0.0;
}

static double drifted(const bounds *b, double drift)
{
    return b->reach > 0.0 ? b->reach * drift : 0.0;
}

/* No combination can make more, whatever is in it. */
static double ceiling_of(const search *s, const bounds *b)
{
    double most = 0.0;
    for (size_t i = TT_PATTERNS; i < s->in->actions->cases.n; i++) most = fmax(most, b->unit[i]);
    return s->weight * fmax(b->unit[TT_HEAVY], b->unit[TT_LIGHT]) + s->others * most;
}

/* A combination with a pattern of weight: what may be the worst at a cut. */
typedef struct {
    const tt_combination *together;
    int pattern;
    double bound;
} candidate;

static candidate bounded(const bounds *b, const tt_combination *together, int pattern)
{
    double bound = fabs(together->weight) * b->unit[pattern];
    for (size_t i = 0; i < together->parts; i++) {
        bound += fabs(together->part[i].factor) * b->unit[together->part[i].acting];
    }
    return (candidate){together, pattern, bound};
}

/* The combination with the largest bound: looked at first, it lets most others be passed over. */
static candidate likeliest(const search *s, const bounds *b)
{
    candidate most = {.together = NULL, .bound = -1.0};
    for (size_t i = 0; i < s->in->combinations->n; i++) {
        const tt_combination *together = &s->in->combinations->at[i];
        if (!s->levels[together->level]) continue;
        for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
            const candidate one = bounded(b, together, pattern);
            if (one.bound > most.bound) most = one;
        }
    }
    return most;
}

static double use_of(const search *s, const bounds *b, double stress)
{
    const tt_loaded_cut at = {
        .in = s->in, .cut = &s->in->model->cuts.at[b->cut], .carry = b->carry};
    return s->part->use(&at, stress * (1.0 + 1e-12));
}

/* Whether a stress that is surely not exceeded at a cut could be the worst of the segment, and fall
 * short or govern the piece. */
static bool could_govern(const search *s, const bounds *b, double stress)
{
    const double use = use_of(s, b, stress), limit = s->in->piece->limits.use.is;
    const bool short_already = s->worst.any && s->worst.use > limit;
    return !s->worst.any ||
           (use > s->worst.use && use > (short_already ? s->floor : fmin(limit, s->floor)));
}

/* Whether a stress of first order is near the largest of the segment. */
static bool is_near(const search *s, const bounds *b, double stress)
{
    return use_of(s, b, stress) >= near_first * s->first;
}

/* A situation that buckles has no stress: it is worse than any. */
static void judge_exact(search *s, const bounds *b, const tt_situation *of)
{
    tt_second_order *second = s->in->second;
    const tt_exact *exact = tt_situation_exact(second, b->carry, of);
    tt_loaded_cut at = {.in = s->in, .cut = &s->in->model->cuts.at[b->cut], .carry = b->carry};
    if (!exact) return;
    if (exact->second.buckles) {
        keep(s, &at, INFINITY, b->cut, exact);
        s->worst.buckles |= s->worst.exact == exact;
        return;
    }
    at.whole = tt_exact_strain_forces(second, exact, at.cut);
    keep(s, &at, use_under(s, &at), b->cut, exact);
}

typedef void visit_situation(search *s, const bounds *b, const tt_situation *of, double stress);

static void see_first(search *s, const bounds *b, const tt_situation *of, double stress)
{
    (void)of;
    s->first = fmax(s->first, use_of(s, b, stress));
}

static void see_near(search *s, const bounds *b, const tt_situation *of, double stress)
{
    if (is_near(s, b, stress)) judge_exact(s, b, of);
}

static void see_all(search *s, const bounds *b, const tt_situation *of, double stress)
{
    const double drift = drifted(b, tt_situation_drift(s->in->second, b->carry, of));
    if (!could_govern(s, b, stress + drift)) return;
    const double closer = drifted(b, tt_situation_drift_closer(s->in->second, b->carry, of,
                                                               s->in->model->cuts.at[b->cut].bar));
    if (could_govern(s, b, stress + fmin(drift, closer))) judge_exact(s, b, of);
}

/* Every way of leaning of a combination with its stress of first order. */
static void each_lean(search *s, const bounds *b, const candidate *of, visit_situation *see)
{
    tt_second_order *second = s->in->second;
    tt_situation situation = {of->together, of->pattern, TT_UPRIGHT};
    tt_loaded_cut at = {.in = s->in, .cut = &s->in->model->cuts.at[b->cut], .carry = b->carry};
    const int leans = tt_leans(second, of->together);
    for (situation.lean = leans ? 0 : TT_UPRIGHT; situation.lean < leans; situation.lean++) {
        at.whole = tt_situation_forces(second, b->carry, &situation, b->cut);
        see(s, b, &situation, s->part->stress(&at));
    }
}

typedef void visit(search *s, const bounds *b, const candidate *one);

static void each_candidate(search *s, const bounds *b, visit *to)
{
    for (size_t i = 0; i < s->in->combinations->n; i++) {
        const tt_combination *together = &s->in->combinations->at[i];
        if (!s->levels[together->level]) continue;
        for (int pattern = TT_HEAVY; pattern <= TT_LIGHT; pattern++) {
            const candidate one = bounded(b, together, pattern);
            to(s, b, &one);
        }
    }
}

static void visit_first(search *s, const bounds *b, const candidate *one)
{
    if (use_of(s, b, one->bound) > s->first) each_lean(s, b, one, see_first);
}

static void visit_near(search *s, const bounds *b, const candidate *one)
{
    if (is_near(s, b, one->bound)) each_lean(s, b, one, see_near);
}

static void visit_all(search *s, const bounds *b, const candidate *one)
{
    const double drift =
        drifted(b, tt_most_drift(s->in->second, b->carry, one->together, one->pattern));
    if (could_govern(s, b, one->bound + drift)) each_lean(s, b, one, see_all);
}

/* The largest use of first order at one cut in one carry model: passed over whole when even its
 * largest bound is no worse. */
static void search_first(search *s, const bounds *b)
{
    if (!b->asked || use_of(s, b, ceiling_of(s, b)) <= s->first) return;
    const candidate likely = likeliest(s, b);
    if (!likely.together || use_of(s, b, likely.bound) <= s->first) return;
    each_lean(s, b, &likely, see_first);
    each_candidate(s, b, visit_first);
}

static void search_near(search *s, const bounds *b)
{
    if (b->asked && is_near(s, b, ceiling_of(s, b))) each_candidate(s, b, visit_near);
}

static void search_all(search *s, const bounds *b)
{
    if (b->asked && could_govern(s, b, ceiling_of(s, b) + drifted(b, s->drift[b->carry])))
        each_candidate(s, b, visit_all);
}

static double use_at(const search *s, size_t cut)
{
    const tt_check_input *in = s->in;
    const tt_cut *place = &in->model->cuts.at[cut];
    const tt_loaded_cut at = {in, place, s->worst.carry,
                              tt_exact_strain_forces(in->second, s->worst.exact, place)};
    return use_under(s, &at);
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
                              tt_exact_strain_forces(in->second, from.exact, &between)};
    const double use = use_under(s, &at);
    keep(s, &at, use, c, from.exact);
}

/* What is known of every cut of a segment in both carry models. */
typedef struct {
    bounds *at;
    double *unit;
    size_t n;
} all_bounds;

static all_bounds bounds_of(const search *s, size_t segment)
{
    const tt_check_input *in = s->in;
    const size_t from = in->model->first_cut[segment], to = in->model->first_cut[segment + 1];
    const size_t units = in->actions->cases.n + in->actions->leans.n;
    all_bounds b = {.n = TT_MODELS * (to - from)};
    b.at = tt_alloc(b.n, sizeof *b.at);
    b.unit = tt_alloc(b.n * units, sizeof *b.unit);
    for (size_t i = 0; i < b.n && b.at && b.unit; i++) {
        b.at[i] =
            (bounds){from + i / TT_MODELS, (int)(i % TT_MODELS), false, b.unit + i * units, 0};
        bound_cut(s, &b.at[i]);
    }
    return b;
}

static void bounds_free(all_bounds *b)
{
    tt_free(b->at);
    tt_free(b->unit);
}

tt_status tt_worst_of(const tt_check_input *in, size_t segment, const tt_judged_part *part,
                      double floor, tt_worst *worst)
{
    search s = {.in = in, .part = part, .levels = part->levels, .floor = floor};
    weigh_factors(&s);
    all_bounds b = bounds_of(&s, segment);
    const bool fits = b.at && b.unit;
    if (fits) {
        for (size_t i = 0; i < b.n; i++) search_first(&s, &b.at[i]);
        for (size_t i = 0; i < b.n; i++) search_near(&s, &b.at[i]);
        for (size_t i = 0; i < b.n; i++) search_all(&s, &b.at[i]);
        if (s.worst.any && isfinite(s.worst.use)) step_between(&s, segment);
    }
    bounds_free(&b);
    *worst = s.worst;
    return fits ? tt_second_failed(in->second) : TT_E_NOMEM;
}

tt_status tt_most_of_first(const tt_check_input *in, size_t segment, const tt_judged_part *part,
                           double *use)
{
    search s = {.in = in, .part = part, .levels = part->levels};
    weigh_factors(&s);
    all_bounds b = bounds_of(&s, segment);
    const bool fits = b.at && b.unit;
    for (size_t i = 0; i < b.n && fits; i++) search_first(&s, &b.at[i]);
    bounds_free(&b);
    *use = s.first;
    return fits ? TT_OK : TT_E_NOMEM;
}
