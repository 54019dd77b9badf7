/* action/gust.c - the body that the gust factor sees from one direction: its height, its breadth
 * (sail area over height), its depth, and the way of swinging that makes the gust worst. */
#include "action/parts.h"
#include "action/wind.h"

#include <math.h>

typedef struct {
    double least, most;
} range;

static void widen(range *to, double least, double most)
{
    to->least = fmin(to->least, least);
    to->most = fmax(to->most, most);
}

static double extent_of_places(const tt_model *model, tt_vec3 way)
{
    range all = {INFINITY, -INFINITY};
    for (size_t i = 0; i < model->piece->points.n; i++) {
        const double at = tt_dot(model->piece->points.at[i].at, way);
        widen(&all, at, at);
    }
    return all.most - all.least;
}

/* The outermost points of the strips' outlines along a unit direction. */
static double extent_of_outlines(const tt_model *model, tt_vec3 way)
{
    range all = {INFINITY, -INFINITY};
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &model->strips[i];
        const double y = tt_dot(strip->axes.y, way), z = tt_dot(strip->axes.z, way);
        const double across = sqrt(y * y + z * z), at = tt_dot(strip->at, way);
        const double half =
            across > 0.0 ? across * tt_outline_width(&strip->outline, y / across, z / across) / 2.0
                         : 0.0;
        widen(&all, at - half, at + half);
    }
    return all.most - all.least;
}

/* From the lowest to the tallest place; of a piece that lies level, by its outlines. */
static double height_of(const tt_model *model)
{
    const tt_vec3 up = {0, 0, 1};
    const double places = extent_of_places(model, up), outlines = extent_of_outlines(model, up);
    return places >= 0.5 * outlines ? places : outlines;
}

tt_vec3 tt_strip_move(const tt_model *model, const tt_mode *mode, size_t strip)
{
    const size_t bar = strip / TT_BAR_POINTS;
    size_t from, to;
    tt_model_bar_nodes(model, bar, &from, &to);
    const double *a = mode->shape[from], *b = mode->shape[to];
    const double t = tt_bar_point[strip % TT_BAR_POINTS];
    return tt_lerp((tt_vec3){a[0], a[1], a[2]}, (tt_vec3){b[0], b[1], b[2]}, t);
}

static tt_vec3 lump_move(const tt_lump *lump, const tt_mode *mode)
{
    const double *u = mode->shape[lump->at];
    return tt_add((tt_vec3){u[0], u[1], u[2]}, tt_cross((tt_vec3){u[3], u[4], u[5]}, lump->offset));
}

double tt_mode_heavy_frequency(const tt_model *model, const tt_mode *mode)
{
    double nominal = 0.0, heavy = 0.0;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &model->strips[i];
        const tt_vec3 move = tt_strip_move(model, mode, i);
        const double square = tt_dot(move, move) * strip->length;
        nominal += (strip->bronze[TT_NOMINAL] + strip->armature) * square;
        heavy += (strip->bronze[TT_HEAVY] + strip->armature) * square;
    }
    for (size_t i = 0; i < model->piece->lumps.n; i++) {
        const tt_lump *lump = &model->piece->lumps.at[i];
        const tt_vec3 move = lump_move(lump, mode);
        nominal += lump->mass.is * tt_dot(move, move);
        heavy += lump->mass.high * tt_dot(move, move);
    }
    return heavy > 0.0 ? mode->frequency * sqrt(nominal / heavy) : mode->frequency;
}

/* ---- which modes the wind shakes ----------------------------------------------------------------
 */

tt_status tt_gale_of(const tt_model *model, const tt_basis *basis, const tt_modes *modes,
                     tt_pool *pool, tt_gale *g)
{
    const size_t strips = model->bars.n * TT_BAR_POINTS, lumps = model->piece->lumps.n;
    *g = (tt_gale){.model = model,
                   .basis = basis,
                   .modes = modes,
                   .height = height_of(model),
                   .parts = strips + lumps};
    g->move = tt_pool_take(pool, modes->n * g->parts, sizeof *g->move);
    g->frequency = tt_pool_take(pool, modes->n, sizeof *g->frequency);
    g->mass = tt_pool_take(pool, g->parts, sizeof *g->mass);
    g->sail = tt_pool_take(pool, g->parts, sizeof *g->sail);
    if (!g->move || !g->frequency || !g->mass || !g->sail) return TT_E_NOMEM;
    for (size_t k = 0; k < modes->n; k++) {
        tt_vec3 *move = &g->move[k * g->parts];
        for (size_t i = 0; i < strips; i++) move[i] = tt_strip_move(model, &modes->at[k], i);
        for (size_t i = 0; i < lumps; i++)
            move[strips + i] = lump_move(&model->piece->lumps.at[i], &modes->at[k]);
        g->frequency[k] = tt_mode_heavy_frequency(model, &modes->at[k]);
    }
    for (size_t i = 0; i < strips; i++) {
        g->mass[i] = (model->strips[i].bronze[TT_HEAVY] + model->strips[i].armature) *
                     model->strips[i].length;
    }
    for (size_t i = 0; i < lumps; i++) g->mass[strips + i] = model->piece->lumps.at[i].mass.high;
    return TT_OK;
}

/* cf times the area across the wind, of each strip and lump. */
static void set_sail(tt_gale *g, const tt_wind_cut *on)
{
    const size_t lumps = g->model->piece->lumps.n, strips = g->parts - lumps;
    for (size_t i = 0; i < strips; i++)
        g->sail[i] = on[i].drag * on[i].width * on[i].sine * g->model->strips[i].length;
    for (size_t i = 0; i < lumps; i++) {
        const tt_lump *lump = &g->model->piece->lumps.at[i];
        g->sail[strips + i] = tt_wind_lump_drag(g->basis, lump) * lump->wind_area;
    }
}

/* Sums over strips and lumps of one way of swinging: phi its movement, w the wind. */
typedef struct {
    double mass;   /* sum of m phi^2, kg */
    double along;  /* sum of m phi.w */
    double all;    /* sum of m */
    double drag;   /* sum of cf A (phi.w)^2, m2 */
    double pushed; /* sum of cf A phi.w */
    double sail;   /* sum of cf A */
} swing;

/* Of modes first .. last - 1 together, each by its weight. */
static swing swing_of(const tt_gale *g, size_t first, size_t last, const double *weight, tt_vec3 w)
{
    swing sum = {0};
    for (size_t i = 0; i < g->parts; i++) {
        tt_vec3 move = {0, 0, 0};
        for (size_t k = first; k < last; k++)
            move = tt_add(move, tt_scale(g->move[k * g->parts + i], weight[k - first]));
        const double with = tt_dot(move, w);
        sum.mass += g->mass[i] * tt_dot(move, move);
        sum.along += g->mass[i] * with;
        sum.all += g->mass[i];
        sum.drag += g->sail[i] * with * with;
        sum.pushed += g->sail[i] * with;
        sum.sail += g->sail[i];
    }
    return sum;
}

/* The wind shakes what moves this way with a tenth of the mass, or with a tenth of the sail: a
 * slender arm with little mass swings in gusts too. Both are assumptions of this program; the
 * second adds ways of swinging, of which the worst counts. */
static bool shaken(const swing *sum)
{
    const double part = 0.1;
    if (!(sum->mass > 0.0)) return false;
    return sum->along * sum->along >= part * sum->mass * sum->all ||
           sum->pushed * sum->pushed >= part * sum->drag * sum->sail;
}

enum { ALIKE = 6 };

/* Modes within 2 % of each other swing in any mixture: they are taken as the one that goes with the
 * wind, each by its share of it, so that the accidental axes of an equal pair mean nothing. The 2 %
 * are an assumption of this program. */
static size_t alike(const tt_gale *g, size_t first, double *weight, tt_vec3 w)
{
    size_t last = first + 1;
    const double one = 1.0;
    while (last < g->modes->n && last - first < ALIKE &&
           g->modes->at[last].frequency <= 1.02 * g->modes->at[first].frequency)
        last++;
    weight[0] = 1.0;
    for (size_t k = first; last - first > 1 && k < last; k++) {
        const swing own = swing_of(g, k, k + 1, &one, w);
        weight[k - first] = own.mass > 0.0 ? own.along / own.mass : 0.0;
    }
    return last;
}

static double sail_area(const tt_model *model, const tt_wind_cut *on)
{
    double area = 0.0;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        area += on[i].width * on[i].sine * model->strips[i].length;
    }
    for (size_t i = 0; i < model->piece->lumps.n; i++) area += model->piece->lumps.at[i].wind_area;
    return area;
}

/* The body with the largest gust factor of the ways of swinging that the wind shakes, where the
 * standards take the first along the wind: an assumption of this program, on the side of more load.
 * None of them: that of the first mode; no mode: as a rigid body. */
static tt_wind_body worst_body(const tt_gale *g, const tt_wind_site *site, tt_vec3 w,
                               tt_wind_body body)
{
    tt_wind_body worst = body;
    double most = 0.0;
    for (size_t first = 0; first < g->modes->n;) {
        double weight[ALIKE];
        const size_t last = alike(g, first, weight, w);
        const swing sum = swing_of(g, first, last, weight, w);
        body.frequency = g->frequency[first];
        body.drag_area_modal = sum.drag;
        body.mass_modal = sum.mass;
        const double gust = shaken(&sum) ? g->basis->gust(site, &body, NULL) : 0.0;
        if (first == 0 || gust > most) worst = body;
        most = fmax(most, gust);
        first = last;
    }
    return worst;
}

void tt_wind_gust(tt_gale *g, const tt_wind_site *site, tt_vec3 wind, const tt_wind_cut *on,
                  tt_wind_direction *report)
{
    const tt_site *at = &g->model->piece->site;
    set_sail(g, on);
    report->area = sail_area(g->model, on);
    const tt_wind_body body = {
        .height = g->height,
        .base_height = at->base_height.is,
        .breadth = g->height > 0.0 ? report->area / g->height : 0.0,
        .depth = fmax(extent_of_places(g->model, wind), extent_of_outlines(g->model, wind)),
        .log_decrement = at->damping.is};
    report->body = worst_body(g, site, wind, body);
    report->gust = g->basis->gust(site, &report->body, NULL);
}

void tt_wind_steps(const tt_basis *basis, const tt_wind_site *site,
                   const tt_wind_direction *direction, tt_steps *steps)
{
    const tt_wind_body *body = &direction->body;
    basis->pressure(site, body->base_height + fmax(0.0, body->height), steps);
    if (body->frequency > 0.0)
        tt_step_add(steps, "n1", NULL, body->frequency, "Hz", tt_source_of(TT_S_gust_mode), NULL);
    basis->gust(site, body, steps);
}
