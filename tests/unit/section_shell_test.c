/* Hollow sections. The inside is found again from its meaning: a point is inside it when its
 * distance from the outline, solved point by point, is the wall or more. Columns of such points are
 * summed; nothing here uses the equation of the parallel curve. */
#include "assert_close.h"
#include "section/section.h"

#include <stdbool.h>
#include <string.h>

static const double PI = 3.14159265358979323846;

/* Distance from (x, y) inside, x, y >= 0, to the ellipse: the foot is (a2 x / (s + a2),
 * b2 y / (s + b2)) with the root s > -b2 that puts it on the ellipse. */
static double distance(double a, double b, double x, double y)
{
    const double a2 = a * a, b2 = b * b;
    if (y <= 0.0) {
        if (x >= (a2 - b2) / a) return a - x;
        const double foot = a2 * x / (a2 - b2);
        return hypot(foot - x, b * sqrt(1.0 - foot * foot / a2));
    }
    double low = b * y, high = hypot(a * x, b * y); /* of s + b2 */
    while (high - low > 1e-15 * high) {
        const double mid = 0.5 * (low + high);
        if (mid <= low || mid >= high) break;
        if (hypot(a * x / (mid + a2 - b2), b * y / mid) > 1.0)
            low = mid;
        else
            high = mid;
    }
    return hypot(a2 * x / (low + a2 - b2) - x, b2 * y / low - y);
}

/* How far from the centre, along x or along y at x, points are at least a wall deep. */
static double reach(double a, double b, double wall, double x, bool along_x)
{
    double low = 0.0, high = along_x ? a : b * sqrt(1.0 - x * x / (a * a));
    for (int i = 0; i < 60; i++) {
        const double mid = 0.5 * (low + high);
        const double depth = along_x ? distance(a, b, mid, 0.0) : distance(a, b, x, mid);
        if (depth >= wall)
            low = mid;
        else
            high = mid;
    }
    return low;
}

typedef struct {
    double area, xx, yy, x, y; /* x, y: first moments of half of it */
} hole;

/* Columns at x = X sin v: three Gauss points in each of 200 stretches of v. */
static hole hole_of(double a, double b, double wall)
{
    enum { STRETCHES = 200 };
    const double offset[] = {-sqrt(0.6), 0.0, sqrt(0.6)}, weight[] = {5.0, 8.0, 5.0};
    const double end = reach(a, b, wall, 0.0, true), step = 0.5 * PI / STRETCHES;
    hole sum = {0};
    for (int i = 0; i < 3 * STRETCHES; i++) {
        const double v = (i / 3 + 0.5 + 0.5 * offset[i % 3]) * step;
        const double x = end * sin(v), h = reach(a, b, wall, x, false);
        const double dx = 4.0 * end * cos(v) * step * weight[i % 3] / 18.0;
        sum.area += h * dx;
        sum.xx += x * x * h * dx;
        sum.yy += h * h * h / 3.0 * dx;
        sum.x += 0.5 * x * h * dx;
        sum.y += 0.25 * h * h * dx;
    }
    return sum;
}

/* Shear area / area of a thin wall along a polyline from the x axis to the y axis, load along y. */
static double energy_shear(const double *x, const double *y, int n)
{
    double from_top = 0.0, i = 0.0, flow = 0.0, length = 0.0;
    for (int k = n - 1; k > 0; k--) {
        const double ds = hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
        const double middle = 0.5 * (y[k] + y[k - 1]), s = from_top + 0.5 * middle * ds;
        i += middle * middle * ds;
        flow += s * s * ds;
        from_top += middle * ds;
        length += ds;
    }
    return i * i / (length * flow);
}

/* To the last bit, field by field: what lies between fields is nobody's. */
static void assert_same(const tt_section *s, const tt_section *t)
{
    const double of_s[] = {
        s->area,         s->iy,          s->iz,      s->iyz,     s->j,
        s->shear_y,      s->shear_z,     s->reach_y, s->reach_z, s->torsion_modulus,
        s->peak_shear_y, s->peak_shear_z};
    const double of_t[] = {
        t->area,         t->iy,          t->iz,      t->iyz,     t->j,
        t->shear_y,      t->shear_z,     t->reach_y, t->reach_z, t->torsion_modulus,
        t->peak_shear_y, t->peak_shear_z};
    assert_memory_equal(of_s, of_t, sizeof of_s);
    assert_true(s->elliptic == t->elliptic);
}

static void check_shear(const tt_section *s, double a, double b, double wall)
{
    enum { POINTS = 2001 };
    static double x[POINTS], y[POINTS], back_x[POINTS], back_y[POINTS];
    const double end = reach(a, b, 0.5 * wall, 0.0, true);
    for (int i = 0; i < POINTS; i++) {
        const double v = 0.5 * PI * (1.0 - i / (POINTS - 1.0));
        x[i] = end * sin(v);
        y[i] = i ? reach(a, b, 0.5 * wall, x[i], false) : 0.0;
        back_x[POINTS - 1 - i] = y[i];
        back_y[POINTS - 1 - i] = x[i];
    }
    assert_close(s->shear_z / s->area, energy_shear(x, y, POINTS), 1e-5);
    assert_close(s->shear_y / s->area, energy_shear(back_x, back_y, POINTS), 1e-5);
}

/* First moment about x of the quadrant's part beyond the normal of the ellipse through (x, 0):
 * where the inside is trimmed the full wall ends at that normal. */
static double beyond_normal(double a, double b, double x)
{
    enum { ROWS = 40000 };
    const double foot = a * a * x / (a * a - b * b);
    if (foot >= a) return 0.0;
    const double top = b * sqrt(1.0 - foot * foot / (a * a));
    double sum = 0.0;
    for (int i = 0; i < ROWS; i++) {
        const double y = top * (i + 0.5) / ROWS;
        const double edge = a * sqrt(1.0 - y * y / (b * b));
        sum += y * (edge - x - (foot - x) * y / top) * top / ROWS;
    }
    return sum;
}

static void check_shell(double a, double b, double wall)
{
    const tt_outline outline = tt_outline_of(TT_OUTLINE_ELLIPSE, 2.0 * a, 2.0 * b);
    const tt_section s = tt_section_shell(&outline, wall, 0.3);
    const tt_section solid = tt_section_solid(&outline, 0.3);
    const hole in = hole_of(a, b, wall);
    assert_close(s.area, PI * a * b - in.area, 1e-10);
    assert_close(s.iy, PI * a * b * b * b / 4.0 - in.yy, 1e-10);
    assert_close(s.iz, PI * a * a * a * b / 4.0 - in.xx, 1e-10);
    assert_near(s.iyz, 0.0, 0.0);
    const double q_y = 2.0 / 3.0 * a * a * b - in.x, q_z = 2.0 / 3.0 * a * b * b - in.y;
    assert_close(s.peak_shear_y, q_y / (s.iz * 2.0 * wall), 1e-9);
    const double end = reach(a, b, wall, 0.0, true), tip = a - end;
    const double full = q_z / 2.0 - beyond_normal(a, b, end);
    assert_close(s.peak_shear_z, fmax(full / wall, q_z / 2.0 / tip) / s.iy, 1e-7);
    /* the length of the mid-line: how fast what it holds shrinks with depth */
    const double step = 1e-4 * b;
    const double inside = hole_of(a, b, 0.5 * wall).area;
    const double length =
        (hole_of(a, b, 0.5 * wall - step).area - hole_of(a, b, 0.5 * wall + step).area) /
        (2.0 * step);
    const double j = 4.0 * inside * inside * wall / length + length * wall * wall * wall / 3.0;
    assert_close(s.j, fmin(j, solid.j), 1e-6);
    const double c_t = fmin(j, solid.j) / (wall + 2.0 * inside / length);
    assert_close(s.torsion_modulus, fmin(c_t, solid.torsion_modulus), 1e-6);
    check_shear(&s, a, b, wall);
}

/* Radius of curvature at the end of the major axis, b^2 / a: 25 mm. */
static void inside_at_two_to_one(void **state)
{
    (void)state;
    check_shell(0.1, 0.05, 0.004);
    check_shell(0.1, 0.05, 0.024);
    check_shell(0.1, 0.05, 0.026);
    check_shell(0.1, 0.05, 0.040);
}

/* Radius of curvature 1 mm. */
static void inside_at_ten_to_one(void **state)
{
    (void)state;
    check_shell(0.1, 0.01, 0.0009);
    check_shell(0.1, 0.01, 0.0011);
    check_shell(0.1, 0.01, 0.005);
    check_shell(0.1, 0.01, 0.0099);
}

static void inside_at_hundred_to_one(void **state)
{
    (void)state;
    check_shell(0.1, 0.001, 0.0004);
}

static void untrimmed_area_is_that_of_steiner(void **state)
{
    (void)state;
    const double wide[] = {0.101, 0.15, 0.3, 0.6, 1.0}, deep = 0.1;
    for (size_t i = 0; i < sizeof wide / sizeof *wide; i++) {
        const tt_outline outline = tt_outline_of(TT_OUTLINE_ELLIPSE, wide[i], deep);
        const double round = 0.5 * deep * deep / wide[i];
        for (int k = 1; k <= 4; k++) {
            const double wall = 0.249 * k * round;
            const double area = tt_outline_perimeter(&outline) * wall - PI * wall * wall;
            assert_close(tt_section_shell(&outline, wall, 0.3).area, area, 1e-12);
            assert_close(tt_outline_shell_area(&outline, wall), area, 1e-12);
            const tt_section stress = tt_section_shell_for_stress(&outline, wall);
            tt_section whole = tt_section_shell(&outline, wall, 0.3);
            whole.shear_y = whole.shear_z = 0.0;
            assert_same(&stress, &whole);
        }
    }
}

static void thin_walls(void **state)
{
    (void)state;
    const tt_outline outlines[] = {tt_outline_of(TT_OUTLINE_ELLIPSE, 0.3, 0.1), tt_outline_of(TT_OUTLINE_BOX, 0.3, 0.1)};
    for (int i = 0; i < 2; i++) {
        const tt_section s = tt_section_shell(&outlines[i], 1e-9, 0.3);
        const double length = tt_outline_perimeter(&outlines[i]);
        const double area = tt_outline_area(&outlines[i]);
        assert_close(s.area, length * 1e-9, 1e-6);
        assert_close(s.j, 4.0 * area * area * 1e-9 / length, 1e-6);
        assert_close(s.torsion_modulus, 2.0 * area * 1e-9, 1e-6);
    }
    const tt_outline none = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    assert_near(tt_section_shell(&none, 0.01, 0.3).area, 0.0, 0.0);
    assert_near(tt_section_solid(&none, 0.3).area, 0.0, 0.0);
    assert_near(tt_section_shell(&outlines[0], 0.0, 0.3).area, 0.0, 0.0);
}

static void closing_wall_gives_the_solid(void **state)
{
    (void)state;
    const tt_outline ovals[] = {tt_outline_of(TT_OUTLINE_ELLIPSE, 0.101, 0.1),
                                tt_outline_of(TT_OUTLINE_ELLIPSE, 0.3, 0.1),
                                tt_outline_of(TT_OUTLINE_ELLIPSE, 0.1, 1.0),
                                tt_outline_of(TT_OUTLINE_ELLIPSE, 0.1, 0.1)};
    for (int i = 0; i < 4; i++) {
        const tt_section solid = tt_section_solid(&ovals[i], 0.34);
        const tt_section closed = tt_section_shell(&ovals[i], 0.05, 0.34);
        assert_same(&closed, &solid);
        const tt_section near = tt_section_shell(&ovals[i], 0.05 * (1.0 - 1e-12), 0.34);
        assert_close(near.area, solid.area, 1e-10);
        assert_close(near.iy, solid.iy, 1e-10);
        assert_close(near.iz, solid.iz, 1e-10);
        assert_close(near.peak_shear_y, solid.peak_shear_y, 1e-5);
        assert_close(near.peak_shear_z, solid.peak_shear_z, 1e-5);
        assert_true(near.j <= solid.j * (1.0 + 1e-12));
        assert_true(near.torsion_modulus <= solid.torsion_modulus * (1.0 + 1e-12));
    }
}

/* A slit tube: J = 2 pi r t^3 / 3, largest stress 3 T / (2 pi r t^2) (Roark, 7th ed., Table 10.1,
 * thin open strips, FROM MEMORY); all but torsion stays. */
static void slit(void **state)
{
    (void)state;
    const double r = 0.0475, t = 0.005, pi = 3.14159265358979323846;
    const tt_outline outline = tt_outline_of(TT_OUTLINE_ELLIPSE, 2.0 * r + t, 2.0 * r + t);
    const tt_section closed = tt_section_shell(&outline, t, 0.34);
    tt_section open = closed;
    tt_section_slit(&open, t);
    assert_close(open.j, 2.0 * pi * r * t * t * t / 3.0, 1e-12);
    assert_close(open.torsion_modulus, 2.0 * pi * r * t * t / 3.0, 1e-12);
    assert_true(open.j < 0.01 * closed.j);
    open.j = closed.j;
    open.torsion_modulus = closed.torsion_modulus;
    assert_memory_equal(&open, &closed, sizeof open);
}

static void equal_widths_are_a_tube(void **state)
{
    (void)state;
    const tt_outline round = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.1, 0.1);
    const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.1, 0.1 * (1.0 + 1e-7));
    const tt_section tube = tt_section_tube(0.1, 0.01, 0.34);
    const tt_section shell = tt_section_shell(&round, 0.01, 0.34);
    const tt_section near = tt_section_shell(&oval, 0.01, 0.34);
    assert_same(&shell, &tube);
    assert_close(near.area, tube.area, 1e-6);
    assert_close(near.iy, tube.iy, 1e-6);
    assert_close(near.iz, tube.iz, 1e-6);
    assert_close(near.peak_shear_y, tube.peak_shear_y, 1e-6);
    assert_close(near.peak_shear_z, tube.peak_shear_z, 1e-6);
    /* U t^3 / 3 for the exact 2 pi r t^3 / 4: apart by t^2 / 12 in r^2 + t^2 / 4, r = 45 mm */
    assert_close(near.j, tube.j * (1.0 + 100.0 / 12.0 / 2050.0), 1e-6);
    assert_close(near.shear_y / near.area, 0.5, 1e-6); /* energy; Cowper 0.544 */
    const tt_section bar = tt_section_tube(0.1, 0.05, 0.34);
    const tt_section solid = tt_section_solid(&round, 0.34);
    assert_close(bar.area, solid.area, 1e-14);
    assert_close(bar.iy, solid.iy, 1e-14);
    assert_close(bar.j, solid.j, 1e-14);
    assert_close(bar.shear_y, solid.shear_y, 1e-14);
    assert_close(bar.torsion_modulus, solid.torsion_modulus, 1e-14);
    assert_close(bar.peak_shear_z, solid.peak_shear_z, 1e-14);
    assert_true(bar.elliptic && solid.elliptic);
}

static void check_swapped(const tt_section *s, const tt_section *t)
{
    assert_close(s->area, t->area, 1e-14);
    assert_close(s->iy, t->iz, 1e-14);
    assert_close(s->iz, t->iy, 1e-14);
    assert_close(s->j, t->j, 1e-14);
    assert_close(s->shear_y, t->shear_z, 1e-14);
    assert_close(s->shear_z, t->shear_y, 1e-14);
    assert_close(s->reach_y, t->reach_z, 0.0);
    assert_close(s->reach_z, t->reach_y, 0.0);
    assert_close(s->torsion_modulus, t->torsion_modulus, 1e-14);
    assert_close(s->peak_shear_y, t->peak_shear_z, 1e-14);
    assert_close(s->peak_shear_z, t->peak_shear_y, 1e-14);
    assert_true(s->elliptic == t->elliptic);
    assert_true(s->iz > s->iy); /* wide is y */
}

static void wide_and_deep_change_places(void **state)
{
    (void)state;
    const tt_outline_kind kinds[] = {TT_OUTLINE_ELLIPSE, TT_OUTLINE_BOX};
    for (int i = 0; i < 2; i++) {
        const tt_outline lying = tt_outline_of(kinds[i], 0.3, 0.1),
                         standing = tt_outline_of(kinds[i], 0.1, 0.3);
        const tt_section s = tt_section_solid(&lying, 0.3), t = tt_section_solid(&standing, 0.3);
        check_swapped(&s, &t);
        for (int k = 1; k < 5; k++) {
            const tt_section u = tt_section_shell(&lying, 0.01 * k, 0.3);
            const tt_section v = tt_section_shell(&standing, 0.01 * k, 0.3);
            check_swapped(&u, &v);
        }
    }
}

static void hollow_box(void **state)
{
    (void)state;
    const tt_outline box = tt_outline_of(TT_OUTLINE_BOX, 0.2, 0.12);
    const tt_section s = tt_section_shell(&box, 0.02, 0.3);
    /* outside 200 x 120 less inside 160 x 80, mm */
    assert_close(s.area, 0.2 * 0.12 - 0.16 * 0.08, 1e-14);
    assert_close(s.iy, (0.2 * pow(0.12, 3) - 0.16 * pow(0.08, 3)) / 12.0, 1e-13);
    assert_close(s.iz, (0.12 * pow(0.2, 3) - 0.08 * pow(0.16, 3)) / 12.0, 1e-13);
    const double q_z = 0.2 * 0.12 * 0.12 / 8.0 - 0.16 * 0.08 * 0.08 / 8.0;
    assert_close(s.peak_shear_z, q_z / (s.iy * 0.04), 1e-13);
    /* mid-line 180 x 100 */
    const double j = 4.0 * 0.018 * 0.018 * 0.02 / 0.56 + 0.56 * pow(0.02, 3) / 3.0;
    assert_close(s.j, j, 1e-13);
    assert_false(s.elliptic);
    enum { SIDE = 2000 };
    static double x[2 * SIDE + 1], y[2 * SIDE + 1];
    for (int i = 0; i <= SIDE; i++) {
        x[i] = 0.09;
        y[i] = 0.05 * i / SIDE;
        x[SIDE + i] = 0.09 * (SIDE - i) / SIDE;
        y[SIDE + i] = 0.05;
    }
    assert_close(s.shear_z / s.area, energy_shear(x, y, 2 * SIDE + 1), 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(inside_at_two_to_one),
        cmocka_unit_test(inside_at_ten_to_one),
        cmocka_unit_test(inside_at_hundred_to_one),
        cmocka_unit_test(untrimmed_area_is_that_of_steiner),
        cmocka_unit_test(thin_walls),
        cmocka_unit_test(closing_wall_gives_the_solid),
        cmocka_unit_test(slit),
        cmocka_unit_test(equal_widths_are_a_tube),
        cmocka_unit_test(wide_and_deep_change_places),
        cmocka_unit_test(hollow_box),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
