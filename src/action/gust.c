/* action/gust.c - the body that the gust factor sees from one direction: its height, its breadth
 * (sail area over height), its depth, and the lowest mode that moves with the wind. */
#include "action/parts.h"
#include "action/wind.h"

#include <math.h>

static const double moves_this_way = 0.1; /* of the mass (decision on Annex B for a body) */

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

typedef struct {
    double heavy; /* sum of m phi^2, kg */
    double along;          /* sum of m phi.w, kg, heavy */
    double mass;           /* heavy, kg */
    double drag;           /* sum of cf A (phi.w)^2, m2 */
} modal;

static void add_mass(modal *sum, tt_vec3 move, tt_vec3 w, double heavy)
{
    sum->heavy += heavy * tt_dot(move, move);
    sum->along += heavy * tt_dot(move, w);
    sum->mass += heavy;
}

static modal modal_sums(const tt_model *model, const tt_basis *basis, const tt_mode *mode, tt_vec3 w,
                        const tt_wind_cut *on)
{
    modal sum = {0};
    const tt_piece *piece = model->piece;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &model->strips[i];
        const tt_vec3 move = tt_strip_move(model, mode, i);
        add_mass(&sum, move, w, (strip->bronze[TT_HEAVY] + strip->armature) * strip->length);
        const double with = tt_dot(move, w);
        sum.drag += on[i].drag * on[i].width * on[i].sine * strip->length * with * with;
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        const tt_vec3 move = lump_move(lump, mode);
        add_mass(&sum, move, w, lump->mass.high);
        sum.drag += tt_wind_lump_drag(basis, lump) * lump->wind_area * pow(tt_dot(move, w), 2.0);
    }
    return sum;
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

static double sail_area(const tt_model *model, const tt_wind_cut *on)
{
    double area = 0.0;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        area += on[i].width * on[i].sine * model->strips[i].length;
    }
    for (size_t i = 0; i < model->piece->lumps.n; i++) area += model->piece->lumps.at[i].wind_area;
    return area;
}

/* The lowest mode with a tenth of the mass this way; none: the first (decision, Annex B). */
static const tt_mode *mode_of(const tt_model *model, const tt_basis *basis, const tt_modes *modes,
                              tt_vec3 w, const tt_wind_cut *on, modal *sum)
{
    for (size_t i = 0; i < modes->n; i++) {
        *sum = modal_sums(model, basis, &modes->at[i], w, on);
        if (sum->along * sum->along >= moves_this_way * sum->heavy * sum->mass) return &modes->at[i];
    }
    if (modes->n == 0) return NULL;
    *sum = modal_sums(model, basis, &modes->at[0], w, on);
    return &modes->at[0];
}

void tt_wind_gust(const tt_model *model, const tt_basis *basis, const tt_wind_site *site,
                  const tt_modes *modes, tt_vec3 wind, const tt_wind_cut *on, tt_wind_direction *report)
{
    const tt_piece *piece = model->piece;
    modal sum = {0};
    const tt_mode *mode = mode_of(model, basis, modes, wind, on, &sum);
    report->height = height_of(model);
    report->area = sail_area(model, on);
    report->breadth = report->height > 0.0 ? report->area / report->height : 0.0;
    report->depth = fmax(extent_of_places(model, wind), extent_of_outlines(model, wind));
    report->frequency = mode ? tt_mode_heavy_frequency(model, mode) : 0.0;
    const tt_wind_body body = {.height = report->height, .base_height = piece->site.base_height.is,
                               .breadth = report->breadth, .depth = report->depth,
                               .frequency = report->frequency, .log_decrement = piece->site.damping.is,
                               .drag_area_modal = sum.drag, .mass_modal = sum.heavy};
    basis->pressure(site, piece->site.base_height.is + fmax(0.0, report->height), &report->steps);
    report->gust = basis->gust(site, &body, &report->steps);
}
