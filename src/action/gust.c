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
        const double half = across > 0.0 ? across * tt_outline_width(&strip->outline, y / across, z / across) / 2.0 : 0.0;
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

/* ---- which modes the wind shakes ---------------------------------------------------------------- */

typedef struct {
    const tt_model *model;
    const tt_basis *basis;
    const tt_modes *modes;
    const tt_wind_cut *on; /* [strips] */
    tt_vec3 wind;
} gale;

/* Sums over strips and lumps of one way of swinging: phi its movement, w the wind. */
typedef struct {
    double mass;    /* sum of m phi^2, kg */
    double along;   /* sum of m phi.w */
    double all;     /* sum of m */
    double drag;    /* sum of cf A (phi.w)^2, m2 */
    double pushed;  /* sum of cf A phi.w */
    double sail;    /* sum of cf A */
} swing;

static void add_to(swing *sum, tt_vec3 move, tt_vec3 w, double mass, double drag_area)
{
    const double with = tt_dot(move, w);
    sum->mass += mass * tt_dot(move, move);
    sum->along += mass * with;
    sum->all += mass;
    sum->drag += drag_area * with * with;
    sum->pushed += drag_area * with;
    sum->sail += drag_area;
}

/* Movement of modes first .. last - 1, each by its weight, at a strip or a lump. */
static tt_vec3 strip_moves(const gale *g, size_t first, size_t last, const double *weight, size_t strip)
{
    tt_vec3 move = {0, 0, 0};
    for (size_t k = first; k < last; k++) {
        move = tt_add(move, tt_scale(tt_strip_move(g->model, &g->modes->at[k], strip), weight[k - first]));
    }
    return move;
}

static tt_vec3 lump_moves(const gale *g, size_t first, size_t last, const double *weight, const tt_lump *lump)
{
    tt_vec3 move = {0, 0, 0};
    for (size_t k = first; k < last; k++) {
        move = tt_add(move, tt_scale(lump_move(lump, &g->modes->at[k]), weight[k - first]));
    }
    return move;
}

static swing swing_of(const gale *g, size_t first, size_t last, const double *weight)
{
    swing sum = {0};
    const tt_piece *piece = g->model->piece;
    for (size_t i = 0; i < g->model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &g->model->strips[i];
        add_to(&sum, strip_moves(g, first, last, weight, i), g->wind,
               (strip->bronze[TT_HEAVY] + strip->armature) * strip->length,
               g->on[i].drag * g->on[i].width * g->on[i].sine * strip->length);
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        add_to(&sum, lump_moves(g, first, last, weight, lump), g->wind, lump->mass.high,
               tt_wind_lump_drag(g->basis, lump) * lump->wind_area);
    }
    return sum;
}

/* The wind shakes what moves this way with a tenth of the mass (decision), or with a tenth of the
 * sail: a slender arm with little mass swings in gusts too. */
static bool shaken(const swing *sum)
{
    const double part = 0.1;
    if (!(sum->mass > 0.0)) return false;
    return sum->along * sum->along >= part * sum->mass * sum->all ||
           sum->pushed * sum->pushed >= part * sum->drag * sum->sail;
}

enum { ALIKE = 6 };

/* Modes within 2 % of each other swing in any mixture: they are taken as the one that goes with the
 * wind, each by its share of it, so that the accidental axes of an equal pair mean nothing. */
static size_t alike(const gale *g, size_t first, double *weight)
{
    size_t last = first + 1;
    const double one = 1.0;
    while (last < g->modes->n && last - first < ALIKE && g->modes->at[last].frequency <= 1.02 * g->modes->at[first].frequency) last++;
    weight[0] = 1.0;
    for (size_t k = first; last - first > 1 && k < last; k++) {
        const swing own = swing_of(g, k, k + 1, &one);
        weight[k - first] = own.mass > 0.0 ? own.along / own.mass : 0.0;
    }
    return last;
}

static double gust_in(const gale *g, const tt_wind_site *site, tt_wind_direction *report, size_t mode,
                      const swing *sum, tt_steps *steps)
{
    const tt_piece *piece = g->model->piece;
    const double frequency = sum ? tt_mode_heavy_frequency(g->model, &g->modes->at[mode]) : 0.0;
    const tt_wind_body body = {.height = report->height, .base_height = piece->site.base_height.is,
                               .breadth = report->breadth, .depth = report->depth,
                               .frequency = frequency, .log_decrement = piece->site.damping.is,
                               .drag_area_modal = sum ? sum->drag : 0.0, .mass_modal = sum ? sum->mass : 0.0};
    if (steps) report->frequency = frequency;
    return g->basis->gust(site, &body, steps);
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

/* The largest gust factor of the ways of swinging that the wind shakes; none of them: that of the
 * first mode; no mode: as a rigid body. */
static void find_gust(const gale *g, const tt_wind_site *site, tt_wind_direction *report)
{
    const double one = 1.0;
    const bool any = g->modes->n > 0;
    size_t worst = 0;
    swing worst_sum = any ? swing_of(g, 0, 1, &one) : (swing){0};
    double most = 0.0;
    for (size_t first = 0; first < g->modes->n;) {
        double weight[ALIKE];
        const size_t last = alike(g, first, weight);
        const swing sum = swing_of(g, first, last, weight);
        const double gust = shaken(&sum) ? gust_in(g, site, report, first, &sum, NULL) : 0.0;
        if (gust > most) {
            most = gust;
            worst = first;
            worst_sum = sum;
        }
        first = last;
    }
    report->gust = gust_in(g, site, report, worst, any ? &worst_sum : NULL, &report->steps);
}

void tt_wind_gust(const tt_model *model, const tt_basis *basis, const tt_wind_site *site,
                  const tt_modes *modes, tt_vec3 wind, const tt_wind_cut *on, tt_wind_direction *report)
{
    const gale g = {model, basis, modes, on, wind};
    report->height = height_of(model);
    report->area = sail_area(model, on);
    report->breadth = report->height > 0.0 ? report->area / report->height : 0.0;
    report->depth = fmax(extent_of_places(model, wind), extent_of_outlines(model, wind));
    basis->pressure(site, model->piece->site.base_height.is + fmax(0.0, report->height), &report->steps);
    find_gust(&g, site, report);
}
