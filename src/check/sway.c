/* check/sway.c - the largest level movement of any place under service loads, in either carry
 * model, with heavy and light weight, however it leans, of second order. m. */
#include "check/parts.h"

#include "base/alloc.h"

#include <math.h>

typedef struct {
    const tt_check_input *in;
    double *soft[TT_MODELS]; /* [points] what a unit of drift moves a place level, at most */
    tt_sway most;
} search;

static double level(const double u[6])
{
    return sqrt(u[0] * u[0] + u[1] * u[1]);
}

/* The place that moves most by first order with `reach` times how soft it is. */
static double first_order(const search *s, int carry, const tt_situation *of, double reach,
                          size_t *point)
{
    double most = -1.0;
    for (size_t p = 0; p < s->in->piece->points.n; p++) {
        double u[6];
        tt_situation_move(s->in->second, carry, of, p, u);
        const double move = level(u) + (reach > 0.0 ? reach * s->soft[carry][p] : 0.0);
        if (move <= most) continue;
        most = move;
        *point = p;
    }
    return most;
}

static void keep(search *s, int carry, const tt_situation *of, size_t point, double move,
                 const tt_exact *exact)
{
    if (s->most.buckles || (s->most.together && move <= s->most.move)) return;
    s->most = (tt_sway){.together = of->together,
                        .move = move,
                        .point = point,
                        .carry = carry,
                        .pattern = of->pattern,
                        .exact = exact};
}

static void solve(search *s, int carry, const tt_situation *of)
{
    const tt_exact *exact = tt_situation_exact(s->in->second, carry, of);
    size_t point = 0;
    if (!exact) return;
    if (exact->second.buckles) {
        if (s->most.buckles) return;
        keep(s, carry, of, point, INFINITY, exact);
        s->most.move = first_order(s, carry, of, 0.0, &s->most.point);
        s->most.buckles = true;
        return;
    }
    for (size_t p = 0; p < s->in->piece->points.n; p++)
        keep(s, carry, of, p, level(exact->second.state.move[p]), exact);
}

/* Passed over when it cannot move further than what was found. */
static void look(search *s, int carry, const tt_situation *of)
{
    size_t unread;
    double drift = tt_situation_drift(s->in->second, carry, of);
    if (s->most.together && first_order(s, carry, of, drift, &unread) <= s->most.move) return;
    drift = fmin(drift, tt_situation_drift_closer(s->in->second, carry, of, TT_NONE));
    if (s->most.together && first_order(s, carry, of, drift, &unread) <= s->most.move) return;
    solve(s, carry, of);
}

typedef void visit(search *s, int carry, const tt_situation *of);

static void each_situation(search *s, visit *see)
{
    for (size_t i = 0; i < s->in->combinations->n; i++) {
        const tt_combination *together = &s->in->combinations->at[i];
        const int leans = tt_leans(s->in->second, together);
        if (together->level != TT_SERVICE) continue;
        for (int k = 0; k < 2 * TT_MODELS; k++) {
            for (int lean = leans ? 0 : TT_UPRIGHT; lean < leans; lean++) {
                const tt_situation of = {together, k % 2 ? TT_LIGHT : TT_HEAVY, lean};
                see(s, k / 2, &of);
            }
        }
    }
}

/* By first order alone: where to begin. */
static void look_first(search *s, int carry, const tt_situation *of)
{
    size_t point = 0;
    const double move = first_order(s, carry, of, 0.0, &point);
    keep(s, carry, of, point, move, NULL);
}

static tt_status begin(search *s)
{
    const size_t n = s->in->piece->points.n;
    for (int carry = 0; carry < TT_MODELS; carry++) {
        s->soft[carry] = tt_alloc(n, sizeof *s->soft[carry]);
        if (!s->soft[carry]) return TT_E_NOMEM;
        for (size_t p = 0; p < n; p++) {
            const tt_status status =
                tt_frame_soft(s->in->model->frame[carry], p, &s->soft[carry][p]);
            if (status != TT_OK) return status;
        }
    }
    return TT_OK;
}

/* Largest height of a place over, or under, the stand nearest in height. */
static double reach(const tt_piece *piece)
{
    double most = 0.0;
    for (size_t p = 0; p < piece->points.n; p++) {
        double near = INFINITY;
        for (size_t s = 0; s < piece->stands.n; s++) {
            near = fmin(near, fabs(piece->points.at[p].at.z -
                                   piece->points.at[piece->stands.at[s].at].at.z));
        }
        most = fmax(most, near);
    }
    return most;
}

tt_status tt_sway_find(const tt_check_input *in, tt_sway *most)
{
    search s = {.in = in};
    tt_status status = begin(&s);
    if (status == TT_OK) {
        search first = s;
        each_situation(&first, look_first);
        const tt_sway *of = &first.most;
        const int leans = of->together ? tt_leans(in->second, of->together) : -1;
        for (int lean = leans == 0 ? TT_UPRIGHT : 0; lean < leans; lean++) {
            look(&s, of->carry, &(tt_situation){of->together, of->pattern, lean});
        }
        each_situation(&s, look);
        status = tt_second_failed(in->second);
    }
    for (int carry = 0; carry < TT_MODELS; carry++) tt_free(s.soft[carry]);
    *most = s.most;
    most->height = reach(in->piece);
    return status;
}
