/* check/balance.c - balance over the hull of the soles, drawn in for chips and shims: how far the
 * centre of mass lies inside, and the worst of tipping over keeping moment about every edge, over
 * the equilibrium combinations. N.m about an edge; the weight is split about it. */
#include "check/parts.h"
#include "num/polygon.h"

#include <math.h>

static const double draw_least = 5e-3,
                    draw_part = 0.05; /* m, of the hull's least width: decision */

static bool hull_of_soles(const tt_piece *piece, tt_pool *pool, tt_vec2 **hull, size_t *n)
{
    size_t all = 0, at = 0;
    for (size_t i = 0; i < piece->stands.n; i++) all += piece->stands.at[i].sole_n;
    *n = 0;
    if (all < 3) return true;
    tt_vec2 *corner = tt_pool_take(pool, all, sizeof *corner);
    *hull = tt_pool_take(pool, 2 * all + 1, sizeof **hull);
    if (!corner || !*hull) return false;
    for (size_t i = 0; i < piece->stands.n; i++) {
        const tt_stand *stand = &piece->stands.at[i];
        for (size_t k = 0; k < stand->sole_n; k++) {
            const tt_vec3 p = tt_add(piece->points.at[stand->at].at, stand->sole[k]);
            corner[at++] = (tt_vec2){p.x, p.y};
        }
    }
    *n = tt_hull(corner, all, *hull);
    return true;
}

/* An edge to tip over: a point on it, its outward level normal, and the axis along it. */
typedef struct {
    tt_vec3 at, out, axis;
    double tips[TT_PATTERNS], keeps[TT_PATTERNS]; /* moments of the weight, N.m */
} edge;

static edge edge_of(const tt_vec2 *polygon, size_t n, size_t i, double z)
{
    const tt_vec2 a = polygon[i], b = polygon[(i + 1) % n];
    const tt_vec3 along = tt_unit((tt_vec3){b.x - a.x, b.y - a.y, 0.0});
    const tt_vec3 out = {along.y, -along.x, 0.0};
    return (edge){.at = {a.x, a.y, z}, .out = out, .axis = tt_cross((tt_vec3){0, 0, 1}, out)};
}

static void hang(edge *about, int pattern, tt_vec3 at, double mass)
{
    const double moment = mass * TT_GRAVITY * tt_dot(tt_sub(at, about->at), about->out);
    if (moment > 0.0)
        about->tips[pattern] += moment;
    else
        about->keeps[pattern] -= moment;
}

static void hang_weight(const tt_model *model, edge *about, int pattern)
{
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &model->strips[i];
        hang(about, pattern, strip->at, (strip->bronze[pattern] + strip->armature) * strip->length);
    }
    for (size_t i = 0; i < model->piece->lumps.n; i++) {
        const tt_lump *lump = &model->piece->lumps.at[i];
        hang(about, pattern, tt_add(model->piece->points.at[lump->at].at, lump->offset),
             tt_lump_mass(lump, pattern));
    }
}

/* What a case adds up to, about the origin. */
typedef struct {
    tt_vec3 force, moment;
} resultant;

static resultant *resultants(const tt_check_input *in, tt_pool *pool)
{
    const size_t n = in->actions->cases.n;
    resultant *of = tt_pool_take(pool, n, sizeof *of);
    for (size_t i = 0; i < n && of; i++) {
        tt_case_resultant(in->model, &in->actions->cases.at[i], (tt_vec3){0, 0, 0}, &of[i].force,
                          &of[i].moment);
    }
    return of;
}

/* Tipping moment of the loads that act beside the weight. */
static double pushed_over(const resultant *of, const tt_combination *together, const edge *about)
{
    double tips = 0.0;
    for (size_t i = 0; i < together->parts; i++) {
        const resultant *part = &of[together->part[i].acting];
        const tt_vec3 moment = tt_sub(part->moment, tt_cross(about->at, part->force));
        tips += together->part[i].factor * tt_dot(moment, about->axis);
    }
    return tips;
}

static void tip(const tt_combination *together, double tips, double keeps, tt_balance *out)
{
    const double factor = together->overturning_factor > 0.0 ? together->overturning_factor : 1.0;
    const double use = keeps > 0.0 ? fmax(0.0, tips * factor) / keeps : INFINITY;
    if (out->combination && use <= out->use) return;
    out->use = use;
    out->combination = together->name;
}

/* The nominal weight with its two factors, and the heavy and light weight at 1.00: the worse. */
static void tip_over_edges(const tt_check_input *in, const resultant *of, const tt_vec2 *polygon,
                           size_t n, tt_balance *out)
{
    const double z = in->piece->points.at[in->piece->stands.at[0].at].at.z;
    for (size_t i = 0; i < n; i++) {
        edge about = edge_of(polygon, n, i, z);
        for (int p = 0; p < TT_PATTERNS; p++) hang_weight(in->model, &about, p);
        for (size_t c = 0; c < in->combinations->n; c++) {
            const tt_combination *together = &in->combinations->at[c];
            if (together->level != TT_EQUILIBRIUM) continue;
            const double pushed = pushed_over(of, together, &about);
            tip(together, pushed + together->weight * about.tips[TT_NOMINAL],
                together->weight_restoring * about.keeps[TT_NOMINAL], out);
            tip(together, pushed + about.tips[TT_HEAVY], about.keeps[TT_HEAVY], out);
            tip(together, pushed + about.tips[TT_LIGHT], about.keeps[TT_LIGHT], out);
        }
    }
}

static bool keep_polygon(const tt_vec2 *hull, size_t n, tt_pool *pool, double z, tt_balance *out)
{
    out->polygon = tt_pool_take(pool, n, sizeof *out->polygon);
    if (!out->polygon) return false;
    for (size_t i = 0; i < n; i++) out->polygon[i] = (tt_vec3){hull[i].x, hull[i].y, z};
    out->polygon_n = n;
    return true;
}

tt_status tt_balance_find(const tt_check_input *in, tt_pool *pool, tt_balance *out)
{
    *out = (tt_balance){.applies = false};
    tt_vec2 *hull = NULL;
    size_t n = 0, nearest = 0;
    if (!hull_of_soles(in->piece, pool, &hull, &n)) return TT_E_NOMEM;
    if (n < 3) return TT_OK;
    const double z = in->piece->points.at[in->piece->stands.at[0].at].at.z;
    tt_vec2 *inner = tt_pool_take(pool, 4 * n, sizeof *inner);
    if (!inner || !keep_polygon(hull, n, pool, z, out)) return TT_E_NOMEM;
    out->drawn_in = fmax(draw_least, draw_part * tt_convex_width(hull, n));
    const size_t m = tt_convex_inset(hull, n, out->drawn_in, inner);
    if (m < 3) return TT_OK;
    const tt_vec3 centre = in->model->centre[TT_NOMINAL];
    out->applies = true;
    out->edge_distance = tt_convex_distance(inner, m, (tt_vec2){centre.x, centre.y}, &nearest);
    out->edge_way = edge_of(inner, m, nearest, z).out;
    const resultant *of = resultants(in, pool);
    if (!of) return TT_E_NOMEM;
    tip_over_edges(in, of, inner, m, out);
    return TT_OK;
}
