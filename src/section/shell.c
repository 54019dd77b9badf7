/* section/shell.c - hollow ellipse and box of one wall all round, m.
 *
 * Area and second moments: outside less the true inside. Torsion and shear areas: by the mid-line,
 * half a wall inside the outside. The energy of the shear flow gives a thin circle half its area;
 * Cowper's coefficient, which a circle takes here, gives it 0.53 at nu = 0.3. The coefficient is
 * found on the mid-line and multiplies the true area: the two areas are the same, mid-line times
 * wall, except where the curves are trimmed. */
#include "section/parallel.h"
#include "section/parts.h"
#include "section/section.h"

#include <math.h>

/* Widths equal to 1e-9: the closed forms of a circle hold. */
static bool is_circle(const tt_outline *outline)
{
    return outline->kind == TT_OUTLINE_ELLIPSE &&
           fabs(outline->wide - outline->deep) <= 1e-9 * outline->wide;
}

/* A section without iyz, turned a quarter about its axis: y and z change places. */
static tt_section turned(const tt_section *from)
{
    tt_section section = *from;
    section.iy = from->iz;
    section.iz = from->iy;
    section.shear_y = from->shear_z;
    section.shear_z = from->shear_y;
    section.reach_y = from->reach_z;
    section.reach_z = from->reach_y;
    section.peak_shear_y = from->peak_shear_z;
    section.peak_shear_z = from->peak_shear_y;
    return section;
}

/* Torsion from the area inside the mid-line and its length: EN 10210-2:2006 annex A, FROM MEMORY,
 * and Bredt's mean stress through the wall. Never more than the solid: to fill a hollow makes
 * nothing softer, and near the closing wall the mid-line promises too much. The modulus is that of
 * the surface (annex A's C_t = J / (t + 2 Am / U)), where the stress is higher than its mean
 * through the wall, 2 Am t, by 3 to 14 % for limbs' walls. */
void tt_mid_line_torsion(tt_section *section, double inside, double length, double wall)
{
    section->j = 4.0 * inside * inside * wall / length + length * wall * wall * wall / 3.0;
    section->torsion_modulus = section->j / (wall + 2.0 * inside / length);
}

static void set_torsion(tt_section *section, const tt_section *solid, double inside, double length,
                        double wall)
{
    tt_section line;
    tt_mid_line_torsion(&line, inside, length, wall);
    section->j = fmin(line.j, solid->j);
    section->torsion_modulus =
        fmin(section->j / (wall + 2.0 * inside / length), solid->torsion_modulus);
}

/* wide >= deep. Without stiffness the shear areas stay nil: they are the dearest part. */
static tt_section shell_ellipse(double wide, double deep, double wall, const tt_section *solid,
                                bool stiffness)
{
    const double a = 0.5 * wide, b = 0.5 * deep;
    tt_quadrant q;
    tt_quadrant_of(a, b, &q);
    const tt_strip strip = tt_parallel_strip(&q, wall),
                   outer_half = tt_parallel_strip(&q, 0.5 * wall);
    const tt_moments mid = tt_parallel_line(&q, 0.5 * wall);
    const tt_shear_flow flow =
        stiffness ? tt_parallel_flow(&q, 0.5 * wall, &mid) : (tt_shear_flow){0.0, 0.0};
    const tt_moments *full = &strip.wall, *end = &strip.trimmed;
    tt_section section = {
        .area = 4.0 * (full->size + end->size),
        .iy = 4.0 * (full->yy + end->yy),
        .iz = 4.0 * (full->xx + end->xx),
        .reach_y = a,
        .reach_z = b,
        .elliptic = true,
    };
    section.shear_y = flow.x * section.area;
    section.shear_z = flow.y * section.area;
    /* V Q / (I 2 t), Q of half the section (so two quadrants, over two walls). Along z the flow
     * grows towards the ends of the major axis: the full wall ends where the curve is trimmed, and
     * on the axis the metal is as thick as the tip. */
    section.peak_shear_y = (full->x + end->x) / (section.iz * wall);
    section.peak_shear_z = fmax(full->y / wall, (full->y + end->y) / strip.tip) / section.iy;
    const double inside = PI * a * b - 4.0 * (outer_half.wall.size + outer_half.trimmed.size);
    set_torsion(&section, solid, inside, 4.0 * mid.size, wall);
    return section;
}

/* Shear area / area of a thin box loaded along its side `along`, both sides of the mid-line: energy
 * of the shear flow, A_s = t i^2 / integral S^2 ds. */
static double box_shear(double along, double across)
{
    const double i = along * along * (0.5 * across + along / 6.0);
    const double corner = 0.25 * along * across, rise = 0.125 * along * along;
    const double flanges = along * along * across * across * across / 24.0;
    const double webs =
        along * (2.0 * corner * corner + 8.0 / 3.0 * corner * rise + 16.0 / 15.0 * rise * rise);
    return i * i / (2.0 * (along + across) * (flanges + webs));
}

static tt_section shell_box(double wide, double deep, double wall, const tt_section *solid)
{
    const double w = wide - 2.0 * wall, d = deep - 2.0 * wall;
    const double mid_w = wide - wall, mid_d = deep - wall;
    /* Outside less inside, as top and bottom strips and side strips: no difference of near equals.
     */
    const double area = 2.0 * wall * (mid_w + mid_d);
    tt_section section = {
        .area = area,
        .iy = wide * wall * (wall * wall + 3.0 * mid_d * mid_d) / 6.0 + wall * d * d * d / 6.0,
        .iz = deep * wall * (wall * wall + 3.0 * mid_w * mid_w) / 6.0 + wall * w * w * w / 6.0,
        .reach_y = 0.5 * wide,
        .reach_z = 0.5 * deep,
        .shear_y = area * box_shear(mid_w, mid_d),
        .shear_z = area * box_shear(mid_d, mid_w),
    };
    /* V Q / (I 2 t) at the neutral axis, Q of half the section. */
    const double q_z = 0.5 * wide * wall * mid_d + 0.25 * wall * d * d;
    const double q_y = 0.5 * deep * wall * mid_w + 0.25 * wall * w * w;
    section.peak_shear_z = q_z / (section.iy * 2.0 * wall);
    section.peak_shear_y = q_y / (section.iz * 2.0 * wall);
    set_torsion(&section, solid, mid_w * mid_d, 2.0 * (mid_w + mid_d), wall);
    return section;
}

static tt_section shell_of(const tt_outline *outline, double wall, double nu, bool stiffness)
{
    if (outline->kind == TT_OUTLINE_NUMBERS) return tt_section_solid(outline, nu);
    if (outline->kind == TT_OUTLINE_NONE || !(wall > 0.0)) return (tt_section){0};
    if (outline->kind == TT_OUTLINE_TRACE) return tt_trace_shell(outline, wall);
    const tt_section solid = tt_section_solid(outline, nu);
    if (wall >= tt_outline_closing_wall(outline)) return solid;
    if (is_circle(outline)) return tt_section_tube(outline->wide, wall, nu);
    if (outline->kind == TT_OUTLINE_BOX) {
        return shell_box(outline->wide, outline->deep, wall, &solid);
    }
    if (outline->wide >= outline->deep) {
        return shell_ellipse(outline->wide, outline->deep, wall, &solid, stiffness);
    }
    const tt_section lying = shell_ellipse(outline->deep, outline->wide, wall, &solid, stiffness);
    return turned(&lying);
}

tt_section tt_section_shell(const tt_outline *outline, double wall, double nu)
{
    return shell_of(outline, wall, nu, true);
}

tt_section tt_section_shell_for_stress(const tt_outline *outline, double wall)
{
    tt_section section = shell_of(outline, wall, 0.0, false);
    section.shear_y = section.shear_z = section.shear_yz = 0.0;
    return section;
}

double tt_outline_shell_area(const tt_outline *outline, double wall)
{
    const double small = fmin(outline->wide, outline->deep),
                 large = fmax(outline->wide, outline->deep);
    if (outline->kind == TT_OUTLINE_ELLIPSE && wall > 0.0 && wall <= 0.5 * small * small / large) {
        return tt_outline_perimeter(outline) * wall - PI * wall * wall;
    }
    if (outline->kind == TT_OUTLINE_TRACE && wall > 0.0) return tt_trace_shell_area(outline, wall);
    return tt_section_shell_for_stress(outline, wall).area;
}

/* U t = area: the mid-line is what the wall stands on. */
void tt_section_slit(tt_section *shell, double wall)
{
    shell->j = shell->area * wall * wall / 3.0;
    shell->torsion_modulus = shell->area * wall / 3.0;
}
