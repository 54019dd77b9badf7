/* action/wind.c - wind from every ten degrees, strip by strip, on limbs and lumps.
 * Force per length = q G cf b (sin g w + sin^2 g cos g c): g between wind and axis, w the wind, c
 * the unit vector across the wind in the plane of both (decision on leaning limbs; no shielding,
 * no friction). With n' = w - (w.a) a the part of the wind across the axis a, |n'| = sin g, the
 * same force is q G cf b (sin g w + sin g n' - sin^3 g w), which needs no division. */
#include "action/parts.h"
#include "action/wind.h"

#include <math.h>
#include <string.h>

enum { HALF = 18 }; /* directions of half a circle, ten degrees apart */

static const double degree = 3.14159265358979323846 / 180.0;

/* Force per unit of (cf or area across the wind): the gust pressure, not under the least one. */
static double pressure_on(const tt_basis *basis, double q, double gust, double drag)
{
    return fmax(q * gust * drag, basis->least_pressure);
}

typedef struct {
    const tt_model *model;
    const tt_basis *basis;
    tt_actions *actions;
    const double *q;      /* [strips] velocity pressure */
    const double *q_lump; /* [lumps] */
} wind_job;

static void blow_on_strips(const wind_job *job, const tt_wind_cut *on, tt_wind_direction *report,
                           tt_vec3 w, const tt_case_arrays *to)
{
    tt_vec3 *line = to->line;
    const tt_model *model = job->model;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        if (on[i].drag <= 0.0) continue;
        const double p = pressure_on(job->basis, job->q[i], report->gust, on[i].drag) * on[i].width;
        const double s = on[i].sine;
        line[i] = tt_add(tt_scale(w, p * (s - s * s * s)), tt_scale(on[i].across, p * s));
        report->force = tt_add(report->force, tt_scale(line[i], model->strips[i].length));
        if (to->moment && model->strips[i].bare) /* the wind finds a bare member where it is */
            to->moment[i] =
                tt_cross(tt_part_lever(&model->strips[i], &model->strips[i].core), line[i]);
    }
}

static void blow_on_lumps(const wind_job *job, tt_wind_direction *report, tt_vec3 w,
                          const tt_case_arrays *to)
{
    const tt_piece *piece = job->model->piece;
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_lump *lump = &piece->lumps.at[i];
        if (lump->wind_area <= 0.0) continue;
        const double drag = tt_wind_lump_drag(job->basis, lump);
        const double p = pressure_on(job->basis, job->q_lump[i], report->gust, drag);
        const tt_vec3 force = tt_scale(w, p * lump->wind_area);
        tt_force_at(to, lump->at, force, lump->offset);
        report->force = tt_add(report->force, force);
    }
}

static bool pressures(wind_job *job, double **q, double **q_lump)
{
    const tt_model *model = job->model;
    const tt_piece *piece = model->piece;
    const tt_wind_site *site = &job->actions->wind_site;
    const double base = piece->site.base_height.is;
    *q = tt_pool_take(&job->actions->pool, model->bars.n * TT_BAR_POINTS, sizeof **q);
    *q_lump = tt_pool_take(&job->actions->pool, piece->lumps.n, sizeof **q_lump);
    if (!*q || !*q_lump) return false;
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        (*q)[i] = job->basis->pressure(site, fmax(0.0, base + model->strips[i].at.z), NULL);
    }
    for (size_t i = 0; i < piece->lumps.n; i++) {
        const tt_vec3 at =
            tt_add(piece->points.at[piece->lumps.at[i].at].at, piece->lumps.at[i].offset);
        (*q_lump)[i] = job->basis->pressure(site, fmax(0.0, base + at.z), NULL);
    }
    job->q = *q;
    job->q_lump = *q_lump;
    return true;
}

static const char *name_of(const wind_job *job, double direction)
{
    return tt_pool_format(&job->actions->pool, "wind %.0f", direction);
}

/* One direction of the first half circle; report holds its body and gust factor already. */
static bool blow(const wind_job *job, const tt_wind_cut *on, tt_wind_direction *report)
{
    const tt_vec3 w = {cos(report->direction * degree), sin(report->direction * degree), 0.0};
    tt_case_arrays to;
    if (!tt_case_add(job->model, job->actions, name_of(job, report->direction), TT_CASE_WIND,
                     TT_LOAD_VARIABLE, report->direction, &to))
        return false;
    blow_on_strips(job, on, report, w, &to);
    blow_on_lumps(job, report, w, &to);
    return true;
}

/* The wind against it, whose loads are the same turned round: the drag of a body does not know
 * front from back. */
static bool blow_back(const wind_job *job, size_t with, const tt_wind_direction *report)
{
    tt_case back = job->actions->cases.at[with];
    back.name = name_of(job, report->direction);
    back.direction = report->direction;
    back.against = with;
    back.sense = -1.0;
    return back.name && tt_list_push(&job->actions->cases, back);
}

/* What the wind of a direction meets: strips, body and gust factor. */
static void meet(const wind_job *job, tt_gale *gale, double direction, tt_wind_cut *on,
                 tt_wind_direction *report)
{
    const tt_model *model = job->model;
    const tt_vec3 w = {cos(direction * degree), sin(direction * degree), 0.0};
    for (size_t i = 0; i < model->bars.n * TT_BAR_POINTS; i++) {
        const tt_strip *strip = &model->strips[i];
        on[i] = tt_wind_on_strip(job->basis, &model->piece->segments.at[strip->segment], strip, w);
    }
    report->direction = direction;
    tt_wind_gust(gale, &job->actions->wind_site, w, on, report);
}

static const tt_hill_shape hill_shapes[] = {[TT_HILL_NONE] = TT_NO_HILL,
                                            [TT_HILL_RIDGE] = TT_RIDGE,
                                            [TT_HILL_ESCARPMENT] = TT_ESCARPMENT,
                                            [TT_HILL_ROUND] = TT_ROUND_HILL};

static tt_wind_site site_of(const tt_piece *piece)
{
    const tt_site_wind *wind = &piece->site.wind;
    return (tt_wind_site){.basic_speed = wind->basic_speed.is,
                          .exposure = wind->exposure,
                          .orography = wind->orography.is,
                          .direction_factor = wind->direction_factor.is,
                          .season_factor = wind->season_factor.is,
                          .air = wind->air.is,
                          .directionality = wind->directionality.is,
                          .elevation = wind->elevation.is,
                          .once_in = wind->once_in.origin ? wind->once_in.is : 0.0,
                          .service = wind->speed_is == TT_SPEED_SERVICE,
                          .hill = {hill_shapes[wind->hill], wind->hill_height.is,
                                   wind->hill_half_length.is, wind->hill_from_crest.is},
                          .edition = piece->edition && strstr(piece->edition, "22") ? 22 : 16};
}

/* The half circle first, so that each wind against another takes over what that one met. */
static bool blow_all(const wind_job *job, tt_gale *gale, tt_wind_cut *on)
{
    tt_actions *actions = job->actions;
    const size_t first = actions->cases.n;
    for (size_t i = 0; i < HALF; i++) {
        tt_wind_direction *with = &actions->wind[i];
        meet(job, gale, 10.0 * (double)i, on, with);
        if (!blow(job, on, with)) return false;
    }
    for (size_t i = 0; i < HALF; i++) {
        tt_wind_direction *against = &actions->wind[i + HALF];
        *against = actions->wind[i];
        against->direction = 10.0 * (double)(i + HALF);
        against->force = tt_scale(actions->wind[i].force, -1.0);
        if (!blow_back(job, first + i, against)) return false;
    }
    return true;
}

tt_status tt_actions_wind(const tt_model *model, const tt_basis *basis, const tt_modes *modes,
                          tt_actions *actions)
{
    const tt_site *site = &model->piece->site;
    if (!site->wind.given || site->wind.ruled_out || site->indoors) return TT_OK;
    actions->wind_site = site_of(model->piece);
    actions->wind = tt_pool_take(&actions->pool, 2 * HALF, sizeof *actions->wind);
    wind_job job = {.model = model, .basis = basis, .actions = actions};
    double *q, *q_lump;
    tt_wind_cut *on = tt_pool_take(&actions->pool, model->bars.n * TT_BAR_POINTS, sizeof *on);
    if (!actions->wind || !on || !pressures(&job, &q, &q_lump)) return TT_E_NOMEM;
    tt_gale gale;
    const tt_status status = tt_gale_of(model, basis, modes, &actions->pool, &gale);
    if (status != TT_OK) return status;
    actions->winds = 2 * HALF;
    return blow_all(&job, &gale, on) ? TT_OK : TT_E_NOMEM;
}
