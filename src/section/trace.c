/* section/trace.c - a closed polygon as an outline, m: where it lies, its section solid and hollow.
 *
 * The inside is the polygon moved in by the wall, trimmed, one thickness all round. Torsion of the
 * hollow: 4 Am^2 t/U + U t^3/3 with Am inside the mid-line and U = area / t, the mid-line's length
 * where nothing is trimmed; never more than the solid. Shear forces are taken through the
 * centroid. */
#include "section/parts.h"

#include <math.h>

void tt_trace_corners(const tt_trace *trace, double t, tt_vec2 *out)
{
    for (size_t i = 0; i < trace->n; i++) {
        const tt_vec2 a = trace->from[i], b = trace->to[i];
        out[i] = (tt_vec2){a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
    }
}

void tt_rounded_box(double wide, double deep, double corner, tt_vec2 *out)
{
    enum { ARC = TT_ROUNDED_CORNERS / 4 };
    const double y = 0.5 * wide - corner, z = 0.5 * deep - corner;
    for (int i = 0; i < TT_ROUNDED_CORNERS; i++) {
        const int quarter = i / ARC;
        const double angle = 0.5 * PI * (quarter + (double)(i % ARC) / (ARC - 1));
        out[i] = (tt_vec2){(quarter == 0 || quarter == 3 ? y : -y) + corner * cos(angle),
                           (quarter < 2 ? z : -z) + corner * sin(angle)};
    }
}

/* Outside less inside; the outside alone where the wall (nil: none) closes it. */
static tt_plane_moments metal_of(const tt_vec2 *corners, size_t n, double wall)
{
    tt_plane_moments metal = tt_polygon_moments(corners, n);
    if (!(wall > 0.0)) return metal;
    const tt_plane_moments inside = tt_polygon_inset_moments(corners, n, wall);
    if (inside.area > 1e-12 * metal.area) tt_plane_add(&metal, -1.0, &inside);
    return metal;
}

static const tt_vec2 *placed(tt_pool *pool, const tt_vec2 *drawn, size_t n, double wall)
{
    const tt_plane_moments metal = metal_of(drawn, n, wall);
    tt_vec2 *out = tt_pool_take(pool, n, sizeof *out);
    for (size_t i = 0; out && i < n; i++)
        out[i] = (tt_vec2){drawn[i].x - metal.x / metal.area, drawn[i].y - metal.y / metal.area};
    return out;
}

static bool twist(tt_trace *trace)
{
    bool same = true;
    for (size_t i = 0; i < trace->n; i++)
        same = same && trace->from[i].x == trace->to[i].x && trace->from[i].y == trace->to[i].y;
    for (int k = 0; k < TT_TRACE_STATIONS; k++) {
        tt_vec2 corner[TT_TRACE_MOST];
        double error = 0.0;
        trace->solid_j[k] = trace->solid_j[0];
        if (same && k > 0) continue;
        tt_trace_corners(trace, (double)k / (TT_TRACE_STATIONS - 1), corner);
        if (!tt_torsion_of_solid(corner, trace->n, &trace->solid_j[k], &error)) return false;
        trace->j_error = fmax(trace->j_error, error);
    }
    return true;
}

const tt_trace *tt_trace_new(tt_pool *pool, const tt_vec2 *from, const tt_vec2 *to, size_t n,
                             const double wall[2])
{
    tt_trace *trace = tt_pool_take(pool, 1, sizeof *trace);
    if (!trace) return NULL;
    trace->n = n;
    trace->from = placed(pool, from, n, wall[0]);
    trace->to = placed(pool, to, n, wall[1]);
    return trace->from && trace->to && twist(trace) ? trace : NULL;
}

/* Between the stations by the polynomial through the fourth roots: exact where the polygon keeps
 * its shape and only grows. */
static double solid_j(const tt_trace *trace, double t)
{
    double sum = 0.0;
    for (int k = 0; k < TT_TRACE_STATIONS; k++) {
        double weight = 1.0;
        for (int i = 0; i < TT_TRACE_STATIONS; i++) {
            if (i != k) weight *= (t * (TT_TRACE_STATIONS - 1) - i) / (k - i);
        }
        sum += weight * pow(trace->solid_j[k], 0.25);
    }
    return sum * sum * sum * sum;
}

/* Area, centroid, second moments and reach of this metal. */
static tt_section section_of(const tt_outline *outline, const tt_vec2 *corners,
                             const tt_plane_moments *metal)
{
    const double y = metal->x / metal->area, z = metal->y / metal->area;
    const tt_plane_moments own = tt_plane_about(metal, y, z);
    tt_section section = {.area = own.area,
                          .at_y = y,
                          .at_z = z,
                          .iy = own.yy,
                          .iz = own.xx,
                          .iyz = own.xy,
                          .trace = outline->trace,
                          .t = outline->t};
    for (size_t i = 0; i < outline->trace->n; i++) {
        section.reach_y = fmax(section.reach_y, fabs(corners[i].x - y));
        section.reach_z = fmax(section.reach_z, fabs(corners[i].y - z));
    }
    return section;
}

tt_section tt_trace_solid(const tt_outline *outline)
{
    tt_vec2 corner[TT_TRACE_MOST];
    const size_t n = outline->trace->n;
    tt_trace_corners(outline->trace, outline->t, corner);
    const tt_plane_moments metal = tt_polygon_moments(corner, n);
    tt_section section = section_of(outline, corner, &metal);
    const double circle = tt_polygon_inscribed(corner, n, NULL);
    section.j = solid_j(outline->trace, outline->t);
    section.torsion_modulus = 0.5 * PI * circle * circle * circle; /* of that circle (decision) */
    section.shear_y = section.shear_z = 5.0 / 6.0 * section.area;
    section.peak_shear_y = section.peak_shear_z = 1.5 / section.area; /* as a rectangle */
    return section;
}

/* Of the mid-line; where the polygon cannot be moved so far whole, of the outside, its flow grown
 * by the ratio of the lengths. */
static tt_closed_flow shear_of(const tt_vec2 *corners, size_t n, double wall, double length)
{
    tt_vec2 mid[TT_TRACE_MOST];
    size_t left = 0;
    if (tt_polygon_moved(corners, n, 0.5 * wall, mid, &left)) return tt_shear_of_closed(mid, left);
    tt_closed_flow outside = tt_shear_of_closed(corners, n);
    for (int k = 0; k < 2; k++) outside.flow[k] *= tt_polygon_perimeter(corners, n) / length;
    return outside;
}

double tt_trace_shell_area(const tt_outline *outline, double wall)
{
    tt_vec2 corner[TT_TRACE_MOST];
    const size_t n = outline->trace->n;
    tt_trace_corners(outline->trace, outline->t, corner);
    return metal_of(corner, n, wall).area;
}

tt_section tt_trace_shell(const tt_outline *outline, double wall)
{
    tt_vec2 corner[TT_TRACE_MOST];
    const size_t n = outline->trace->n;
    tt_trace_corners(outline->trace, outline->t, corner);
    const tt_plane_moments inside = tt_polygon_inset_moments(corner, n, wall);
    tt_plane_moments metal = tt_polygon_moments(corner, n);
    if (inside.area <= 1e-12 * metal.area) return tt_trace_solid(outline);
    tt_plane_add(&metal, -1.0, &inside);
    tt_section section = section_of(outline, corner, &metal);
    const double length = section.area / wall;
    const double within = tt_polygon_inset_moments(corner, n, 0.5 * wall).area;
    const double j = 4.0 * within * within * wall / length + length * wall * wall * wall / 3.0;
    section.j = fmin(j, solid_j(outline->trace, outline->t));
    section.torsion_modulus = section.j / (wall + 2.0 * within / length);
    const tt_closed_flow shear = shear_of(corner, n, wall, length);
    section.shear_y = shear.y * section.area;
    section.shear_z = shear.z * section.area;
    section.shear_yz = shear.yz * section.area;
    section.peak_shear_y = shear.flow[0] / wall;
    section.peak_shear_z = shear.flow[1] / wall;
    return section;
}
