/* Traces against closed forms and against the other outlines: a rectangle, an ellipse drawn as a
 * polygon, a triangle, an angle, a rounded box; mirrored and turned. */
#include "assert_close.h"
#include "section/section.h"

static const double PI = 3.14159265358979323846;

static tt_outline traced(tt_pool *pool, const tt_vec2 *p, size_t n, double wall)
{
    const tt_trace *trace = tt_trace_new(pool, p, p, n, (const double[]){wall, wall});
    assert_non_null(trace);
    return (tt_outline){.kind = TT_OUTLINE_TRACE, .trace = trace};
}

static double torsion(const tt_vec2 *p, size_t n)
{
    double j, error;
    assert_true(tt_torsion_of_solid(p, n, &j, &error));
    assert_true(error < 3e-3);
    return j;
}

static void rectangle(double wide, double deep, tt_vec2 p[4])
{
    const double y = 0.5 * wide, z = 0.5 * deep;
    const tt_vec2 corner[] = {{-y, -z}, {y, -z}, {y, z}, {-y, z}};
    for (int i = 0; i < 4; i++) p[i] = corner[i];
}

/* J / (b a^3): Timoshenko and Goodier, art. 109, more digits from its series. FROM MEMORY */
static void torsion_of_rectangles(void **state)
{
    (void)state;
    static const double ratio[] = {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 10.0};
    static const double beta[] = {.1406, .1958, .2287, .2494, .2633, .2808, .2913, .3123};
    for (int i = 0; i < 8; i++) {
        tt_vec2 p[4];
        rectangle(ratio[i], 1.0, p);
        assert_close(torsion(p, 4) / ratio[i], beta[i], 4e-4); /* the table's last digit */
        const tt_outline box = tt_outline_of(TT_OUTLINE_BOX, ratio[i], 1.0);
        assert_close(torsion(p, 4), tt_section_solid(&box, 0.3).j, 1.5e-4);
    }
}

static void torsion_of_a_triangle(void **state)
{
    (void)state;
    const tt_vec2 p[] = {{0, 0}, {0.1, 0}, {0.05, 0.05 * sqrt(3.0)}};
    assert_close(torsion(p, 3), 2165064e-12, 3e-5); /* s^4 sqrt 3 / 80 */
}

/* Semi-axes 60, 40: J = 8 351 803; 200 chords are 0.03 % short of the ellipse's area, J twice that.
 */
static void torsion_of_an_ellipse(void **state)
{
    (void)state;
    tt_vec2 p[200];
    const double grown = sqrt(2.0 * PI / 200 / sin(2.0 * PI / 200)); /* the area of the ellipse */
    for (int i = 0; i < 200; i++)
        p[i] = (tt_vec2){0.06 * grown * cos(2.0 * PI * i / 200),
                         0.04 * grown * sin(2.0 * PI * i / 200)};
    assert_close(torsion(p, 200), 8351803e-12, 1e-4);
}

/* Thin legs: sum of b t^3 / 3 less 0.105 t^4 for each of two free ends, plus what the joint adds,
 * 0.07 (circle in it / t)^4 t^4: Roark, 7th ed., table 10.7, FROM MEMORY, to its 1 %. */
static void torsion_of_an_angle(void **state)
{
    (void)state;
    static const tt_vec2 p[] = {{0, 0}, {100, 0}, {100, 10}, {10, 10}, {10, 150}, {0, 150}};
    const double joint = 2.0 * 10.0 * sqrt(2.0) / (1.0 + sqrt(2.0)); /* diameter of the circle */
    const double legs =
        150.0 * 1000.0 * (1.0 / 3.0 - 0.21 / 15.0 * (1.0 - 1.0 / (12.0 * 50625.0))) +
        90.0 * 1000.0 * (1.0 / 3.0 - 0.105 / 9.0 * (1.0 - 1.0 / (192.0 * 6561.0)));
    assert_close(torsion(p, 6), legs + 0.07 * joint * joint * joint * joint, 0.012);
}

/* Everything but what is read another way is that of the box. */
static void a_rectangle_is_a_box(void **state)
{
    (void)state;
    tt_pool pool = {0};
    tt_vec2 p[4];
    rectangle(0.12, 0.08, p);
    const tt_outline trace = traced(&pool, p, 4, 0.006),
                     box = tt_outline_of(TT_OUTLINE_BOX, 0.12, 0.08);
    for (int i = 1; i < 6; i++) {
        const double wall = 0.006 * i;
        const tt_section a = tt_section_shell(&trace, wall, 0.3),
                         b = tt_section_shell(&box, wall, 0.3);
        assert_close(a.area, b.area, 1e-12);
        assert_close(a.iy, b.iy, 1e-12);
        assert_close(a.iz, b.iz, 1e-12);
        assert_near(a.iyz, 0.0, 1e-18);
        assert_near(a.at_y, 0.0, 1e-15);
        assert_close(a.j, b.j, 1e-12);
        assert_close(a.shear_y, b.shear_y, 1e-12);
        assert_close(a.shear_z, b.shear_z, 1e-12);
        assert_close(a.reach_y, b.reach_y, 1e-12);
        if (i == 1) assert_close(a.peak_shear_z, b.peak_shear_z, 0.005); /* thin wall */
        if (i == 1) assert_close(a.torsion_modulus, b.torsion_modulus, 1e-12);
        assert_close(tt_outline_bore(&trace, wall), tt_outline_bore(&box, wall), 1e-9);
        assert_close(tt_outline_shell_area(&trace, wall), tt_outline_shell_area(&box, wall), 1e-12);
    }
    const tt_section a = tt_section_solid(&trace, 0.3), b = tt_section_solid(&box, 0.3);
    assert_close(a.area, b.area, 1e-12);
    assert_close(a.j, b.j, 5e-5);
    assert_close(a.shear_y, b.shear_y, 1e-12);
    assert_close(a.torsion_modulus, PI / 2.0 * 0.04 * 0.04 * 0.04, 1e-9); /* of the circle inside */
    const tt_section closed = tt_section_shell(&trace, 0.04, 0.3);
    assert_close(closed.area, b.area, 1e-12);
    tt_pool_clear(&pool);
}

static void a_polygon_of_an_ellipse(void **state)
{
    (void)state;
    tt_pool pool = {0};
    tt_vec2 p[160];
    for (int i = 0; i < 160; i++)
        p[i] = (tt_vec2){0.06 * cos(2.0 * PI * i / 160), 0.04 * sin(2.0 * PI * i / 160)};
    const tt_outline trace = traced(&pool, p, 160, 0.005),
                     oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.12, 0.08);
    /* 30 mm is beyond the radius of curvature of the ends: trimmed */
    static const double walls[] = {0.003, 0.005, 0.012, 0.03};
    for (int i = 0; i < 4; i++) {
        const tt_section a = tt_section_shell(&trace, walls[i], 0.3),
                         b = tt_section_shell(&oval, walls[i], 0.3);
        assert_close(a.area, b.area, 3e-4);
        assert_close(a.iy, b.iy, 1e-3);
        assert_close(a.iz, b.iz, 1e-3);
        assert_close(a.j, b.j, 1e-3);
        assert_close(a.shear_y / a.area, b.shear_y / b.area, 1e-3);
        assert_close(a.shear_z / a.area, b.shear_z / b.area, 1e-3);
    }
    tt_pool_clear(&pool);
}

static const tt_vec2 HOOK[] = {{0, 0},        {0.09, 0},     {0.09, 0.03},
                               {0.035, 0.03}, {0.035, 0.11}, {0, 0.11}};
enum { HOOKED = 6 };

/* Mirrored in z: iyz changes its sign and nothing else does. */
static void mirrored(void **state)
{
    (void)state;
    tt_pool pool = {0};
    tt_vec2 mirror[HOOKED];
    for (int i = 0; i < HOOKED; i++) mirror[HOOKED - 1 - i] = (tt_vec2){-HOOK[i].x, HOOK[i].y};
    static const double walls[] = {0.0, 0.004, 0.008};
    for (int i = 0; i < 3; i++) {
        const tt_outline one = traced(&pool, HOOK, HOOKED, walls[i]),
                         other = traced(&pool, mirror, HOOKED, walls[i]);
        const tt_section a =
            walls[i] > 0.0 ? tt_section_shell(&one, walls[i], 0.3) : tt_section_solid(&one, 0.3);
        const tt_section b = walls[i] > 0.0 ? tt_section_shell(&other, walls[i], 0.3)
                                            : tt_section_solid(&other, 0.3);
        assert_true(fabs(a.iyz) > 0.1 * fmin(a.iy, a.iz));
        assert_close(b.iyz, -a.iyz, 1e-10);
        assert_close(b.iy, a.iy, 1e-11);
        assert_close(b.iz, a.iz, 1e-11);
        assert_close(b.j, a.j, 1e-6);
        assert_close(b.shear_y, a.shear_y, 1e-10);
        assert_near(b.shear_yz, -a.shear_yz, 1e-10 * a.shear_y);
        const tt_forces f = {.n = 2e3, .my = 300.0, .mz = -200.0};
        const tt_forces g = {.n = 2e3, .my = 300.0, .mz = 200.0};
        assert_close(tt_section_stress(&a, &f).normal, tt_section_stress(&b, &g).normal, 1e-10);
    }
    tt_pool_clear(&pool);
}

/* A rectangle drawn turned by 30 degrees is the box under moments turned as much. */
static void turned(void **state)
{
    (void)state;
    tt_pool pool = {0};
    tt_vec2 p[4];
    const double c = cos(PI / 6.0), s = sin(PI / 6.0);
    rectangle(0.12, 0.05, p);
    for (int i = 0; i < 4; i++) p[i] = (tt_vec2){c * p[i].x - s * p[i].y, s * p[i].x + c * p[i].y};
    const tt_outline trace = traced(&pool, p, 4, 0.005),
                     box = tt_outline_of(TT_OUTLINE_BOX, 0.12, 0.05);
    const tt_section a = tt_section_shell(&trace, 0.005, 0.3),
                     b = tt_section_shell(&box, 0.005, 0.3);
    assert_close(a.iy + a.iz, b.iy + b.iz, 1e-12);
    assert_close(a.iy, c * c * b.iy + s * s * b.iz, 1e-11); /* of z = s y' + c z' */
    assert_close(a.iyz, c * s * (b.iz - b.iy), 1e-11);
    assert_close(a.shear_y, c * c * b.shear_y + s * s * b.shear_z, 1e-11); /* a tensor */
    assert_close(a.shear_yz, c * s * (b.shear_y - b.shear_z), 1e-10);
    /* moments are a vector (My, Mz): along the turned axes c My + s Mz, c Mz - s My */
    const tt_forces f = {.my = 700.0, .mz = -350.0};
    const tt_forces g = {.my = c * 700.0 - s * 350.0, .mz = -c * 350.0 - s * 700.0};
    assert_close(tt_section_stress(&a, &f).normal, tt_section_stress(&b, &g).normal, 1e-10);
    assert_close(tt_outline_width(&trace, c, s), 0.12, 1e-12);
    assert_close(tt_outline_width(&trace, 1.0, 0.0), 0.12 * c + 0.05 * s, 1e-12);
    assert_close(tt_outline_flatness(&trace), 2.4, 1e-12);
    tt_pool_clear(&pool);
}

/* The centroid of the metal of that wall lies on the axis; of another wall it does not, and what is
 * told about the axis is brought to it: against a sum over corners by hand. */
static void centroid_of_the_metal(void **state)
{
    (void)state;
    tt_pool pool = {0};
    const tt_outline trace = traced(&pool, HOOK, HOOKED, 0.006);
    const tt_section nominal = tt_section_shell(&trace, 0.006, 0.3),
                     weak = tt_section_shell_for_stress(&trace, 0.003);
    assert_near(nominal.at_y, 0.0, 1e-15);
    assert_near(nominal.at_z, 0.0, 1e-15);
    assert_true(hypot(weak.at_y, weak.at_z) > 1e-5);
    const tt_forces f = {.n = 5e3, .my = 200.0, .mz = 150.0};
    const double my = f.my - weak.at_z * f.n, mz = f.mz + weak.at_y * f.n;
    const double det = weak.iy * weak.iz - weak.iyz * weak.iyz;
    tt_vec2 corner[HOOKED];
    double worst = 0.0;
    tt_trace_corners(trace.trace, 0.0, corner);
    for (int i = 0; i < HOOKED; i++) {
        const double y = corner[i].x - weak.at_y, z = corner[i].y - weak.at_z;
        worst = fmax(
            worst,
            fabs(((weak.iz * my + weak.iyz * mz) * z - (weak.iy * mz + weak.iyz * my) * y) / det));
    }
    assert_close(tt_section_stress(&weak, &f).normal, f.n / weak.area + worst, 1e-12);
    tt_pool_clear(&pool);
}

/* Stress of the angle L 150 x 100 x 10 under My = 1 kN m about its level axis: its worst corner by
 * sigma = (Iz z + ...) from the composed moments (reference: Iy 5 576 250, Iz 2 026 250, Iyz
 * -1 968 750, A 2400, centroid 23.75, 48.75). */
static void stress_of_an_angle(void **state)
{
    (void)state;
    tt_pool pool = {0};
    static const tt_vec2 p[] = {{0, 0}, {.1, 0}, {.1, .01}, {.01, .01}, {.01, .15}, {0, .15}};
    const tt_outline trace = traced(&pool, p, 6, 0.0);
    const tt_section s = tt_section_solid(&trace, 0.3);
    const double iy = 5576250.0, iz = 2026250.0, iyz = -1968750.0, det = iy * iz - iyz * iyz;
    const double m = 1e6;                            /* N mm */
    const double y = 0.0 - 23.75, z = 150.0 - 48.75; /* the corner (0, 150) */
    const double there = m * (iz * z - iyz * y) / det;
    const double other = m * (iz * (0.0 - 48.75) - iyz * (0.0 - 23.75)) / det; /* (0, 0) */
    const double third = m * (iz * (150.0 - 48.75) - iyz * (10.0 - 23.75)) / det;
    const double worst = fmax(fmax(fabs(there), fabs(other)), fabs(third));
    assert_close(tt_section_stress(&s, &(tt_forces){.my = 1000.0}).normal, worst * 1e6, 1e-9);
    assert_true(fabs(third) > m * z / iy * 1.05); /* by iy alone it would be missed */
    tt_pool_clear(&pool);
}

/* A box with rounded corners: what the corners lack is 4 - pi squares of their radius. */
static void rounded_box(void **state)
{
    (void)state;
    tt_pool pool = {0};
    tt_vec2 p[TT_ROUNDED_CORNERS];
    const double w = 0.1, d = 0.06, r = 0.012, t = 0.004, lack = 4.0 - PI;
    tt_rounded_box(w, d, r, p);
    const tt_outline trace = traced(&pool, p, TT_ROUNDED_CORNERS, t);
    const tt_section s = tt_section_shell(&trace, t, 0.3);
    const double inner = r - t, within = r - 0.5 * t;
    const double outside = w * d - lack * r * r,
                 inside = (w - 2 * t) * (d - 2 * t) - lack * inner * inner;
    assert_close(tt_outline_area(&trace), outside, 3e-4); /* twelve chords a corner */
    assert_close(s.area, outside - inside, 4e-4);
    const double am = (w - t) * (d - t) - lack * within * within;
    const double u = 2.0 * (w + d - 2.0 * t) - 2.0 * lack * within;
    assert_close(s.j, 4.0 * am * am * t / u + u * t * t * t / 3.0, 1e-3);
    assert_close(tt_outline_bore(&trace, t), d - 2.0 * t, 1e-6);
    /* corners of 30 mm make a circle of a square of 60 mm */
    tt_rounded_box(0.06, 0.06, 0.03, p);
    const tt_outline ring = traced(&pool, p, TT_ROUNDED_CORNERS, t);
    const tt_section a = tt_section_shell(&ring, t, 0.3), b = tt_section_tube(0.06, t, 0.3);
    assert_close(a.area, b.area, 2e-3);
    assert_close(a.iy, b.iy, 5e-3);
    assert_close(a.j, b.j, 5e-3);
    /* corners of nothing make the box */
    tt_rounded_box(w, d, 0.0, p);
    const tt_outline sharp = traced(&pool, p, TT_ROUNDED_CORNERS, t),
                     box = tt_outline_of(TT_OUTLINE_BOX, w, d);
    const tt_section e = tt_section_shell(&sharp, t, 0.3), f = tt_section_shell(&box, t, 0.3);
    assert_close(e.area, f.area, 1e-12);
    assert_close(e.j, f.j, 1e-12);
    assert_close(e.shear_z, f.shear_z, 1e-12);
    tt_pool_clear(&pool);
}

/* A taper that only grows: at any place the section of that size, torsion of the solid with it. */
static void tapers(void **state)
{
    (void)state;
    tt_pool pool = {0};
    tt_vec2 large[HOOKED], middle[HOOKED];
    for (int i = 0; i < HOOKED; i++) {
        large[i] = (tt_vec2){2.5 * HOOK[i].x, 2.5 * HOOK[i].y};
        middle[i] = (tt_vec2){1.45 * HOOK[i].x, 1.45 * HOOK[i].y};
    }
    const tt_trace *trace = tt_trace_new(&pool, HOOK, large, HOOKED, (const double[]){0.0, 0.0});
    assert_non_null(trace);
    const tt_outline from = {.kind = TT_OUTLINE_TRACE, .trace = trace},
                     to = {.kind = TT_OUTLINE_TRACE, .trace = trace, .t = 1.0};
    const tt_outline here = tt_outline_between(&from, &to, 0.3),
                     same = traced(&pool, middle, HOOKED, 0.0);
    const tt_section a = tt_section_solid(&here, 0.3), b = tt_section_solid(&same, 0.3);
    assert_close(a.area, b.area, 1e-12);
    assert_close(a.iyz, b.iyz, 1e-10);
    assert_close(a.j, b.j, 1e-9);
    assert_near(a.at_y, 0.0, 1e-14);
    tt_pool_clear(&pool);
}

static void own_numbers(void **state)
{
    (void)state;
    const tt_numbers a = {.area = 2e-3,
                          .iy = 4e-6,
                          .iz = 6e-6,
                          .iyz = -1e-6,
                          .j = 7e-6,
                          .shear_y = 1e-3,
                          .reach_y = 0.06,
                          .reach_z = 0.05};
    tt_numbers b = a;
    b.area = 1e-3;
    b.iy = 2e-6;
    const tt_outline from = {
        .kind = TT_OUTLINE_NUMBERS, .wide = 0.12, .deep = 0.1, .numbers = {&a, &b}};
    const tt_outline to = {
        .kind = TT_OUTLINE_NUMBERS, .wide = 0.1, .deep = 0.08, .t = 1.0, .numbers = {&a, &b}};
    const tt_outline half = tt_outline_between(&from, &to, 0.5);
    const tt_section s = tt_section_shell(&half, 0.005, 0.3);
    assert_close(s.area, 1.5e-3, 1e-14);
    assert_close(s.iy, 3e-6, 1e-14);
    assert_close(s.iyz, -1e-6, 1e-14);
    assert_close(tt_outline_area(&to), 1e-3, 1e-14);
    assert_close(tt_outline_shell_area(&half, 0.005), 1.5e-3, 1e-14);
    assert_close(s.shear_y, 1e-3, 1e-14);
    assert_true(s.shear_z > 1e6 * s.area); /* none was given: no shear strain that way */
    assert_close(tt_outline_width(&half, 0.6, 0.8), 0.11 * 0.6 + 0.09 * 0.8, 1e-13);
    assert_close(s.torsion_modulus, 7e-6 / 0.1, 1e-13);
    const double det = 3e-6 * 6e-6 - 1e-12;
    const tt_forces f = {.my = 500.0};
    assert_close(tt_section_stress(&s, &f).normal, 500.0 * (6e-6 * 0.05 + 1e-6 * 0.06) / det,
                 1e-12);
}

/* Distance to an ellipse from places on its axes and on a normal of it. */
static void depths(void **state)
{
    (void)state;
    const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.12, 0.08),
                     box = tt_outline_of(TT_OUTLINE_BOX, 0.12, 0.08);
    assert_close(tt_outline_depth(&oval, 0.0, 0.0), 0.04, 1e-12);
    assert_close(tt_outline_depth(&oval, 0.0, -0.03), 0.01, 1e-12);
    assert_close(tt_outline_depth(&oval, 0.055, 0.0), 0.005, 1e-12);
    for (double u = 0.2; u < 1.5; u += 0.3) {
        const double ny = 0.04 * cos(u), nz = 0.06 * sin(u), n = hypot(ny, nz);
        const double y = 0.06 * cos(u) - 0.01 * ny / n, z = 0.04 * sin(u) - 0.01 * nz / n;
        assert_close(tt_outline_depth(&oval, -y, z), 0.01, 1e-9);
    }
    assert_close(tt_outline_depth(&box, 0.05, -0.02), 0.01, 1e-12);
    assert_true(tt_outline_depth(&oval, 0.06, 0.04) < 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(torsion_of_rectangles),
        cmocka_unit_test(torsion_of_a_triangle),
        cmocka_unit_test(torsion_of_an_ellipse),
        cmocka_unit_test(torsion_of_an_angle),
        cmocka_unit_test(a_rectangle_is_a_box),
        cmocka_unit_test(a_polygon_of_an_ellipse),
        cmocka_unit_test(mirrored),
        cmocka_unit_test(turned),
        cmocka_unit_test(centroid_of_the_metal),
        cmocka_unit_test(stress_of_an_angle),
        cmocka_unit_test(rounded_box),
        cmocka_unit_test(tapers),
        cmocka_unit_test(own_numbers),
        cmocka_unit_test(depths),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
