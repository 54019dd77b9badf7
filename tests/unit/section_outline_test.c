/* Lengths, areas and widths of outlines against sums over many points and closed forms. */
#include "assert_close.h"
#include "section/section.h"

#include <stdbool.h>

static const double PI = 3.14159265358979323846;

/* The trapezium rule over a whole period: exact but for rounding with this many points. */
static double perimeter_by_points(double wide, double deep)
{
    enum { POINTS = 4000 };
    double sum = 0.0;
    for (int i = 0; i < POINTS; i++) {
        const double u = 2.0 * PI * i / POINTS;
        sum += hypot(0.5 * wide * sin(u), 0.5 * deep * cos(u));
    }
    return sum * 2.0 * PI / POINTS;
}

static void perimeter_of_ellipse(void **state)
{
    (void)state;
    const double wide[] = {0.10, 0.100001, 0.12, 0.2, 0.5, 1.0, 0.03, 0.01};
    for (size_t i = 0; i < sizeof wide / sizeof *wide; i++) {
        const tt_outline outline = tt_outline_of(TT_OUTLINE_ELLIPSE, wide[i], 0.1);
        assert_close(tt_outline_perimeter(&outline), perimeter_by_points(wide[i], 0.1), 1e-13);
    }
    const tt_outline flat = tt_outline_of(TT_OUTLINE_ELLIPSE, 1.0, 1e-9);
    assert_close(tt_outline_perimeter(&flat), 2.0, 1e-12);
}

static void areas_and_lengths(void **state)
{
    (void)state;
    const tt_outline none = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.4, 0.2);
    const tt_outline box = tt_outline_of(TT_OUTLINE_BOX, 0.4, 0.2);
    assert_near(tt_outline_area(&none), 0.0, 0.0);
    assert_near(tt_outline_perimeter(&none), 0.0, 0.0);
    assert_near(tt_outline_width(&none, 1.0, 0.0), 0.0, 0.0);
    assert_near(tt_outline_bore(&none, 0.0), 0.0, 0.0);
    assert_close(tt_outline_area(&oval), 0.02 * PI, 1e-14);
    assert_close(tt_outline_area(&box), 0.08, 1e-14);
    assert_close(tt_outline_perimeter(&box), 1.2, 1e-14);
}

/* The extent along a direction is the largest difference of the outline's points along it. */
static void turned_widths(void **state)
{
    (void)state;
    for (int degrees = 0; degrees < 360; degrees += 15) {
        const double uy = cos(degrees * PI / 180.0), uz = sin(degrees * PI / 180.0);
        const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.4, 0.1);
        const tt_outline box = tt_outline_of(TT_OUTLINE_BOX, 0.4, 0.1);
        double farthest = 0.0, corner = 0.0;
        for (int i = 0; i < 20000; i++) {
            const double u = 2.0 * PI * i / 20000;
            farthest = fmax(farthest, 0.2 * cos(u) * uy + 0.05 * sin(u) * uz);
        }
        for (int i = 0; i < 4; i++) {
            corner = fmax(corner, (i & 1 ? 0.2 : -0.2) * uy + (i & 2 ? 0.05 : -0.05) * uz);
        }
        assert_close(tt_outline_width(&oval, uy, uz), 2.0 * farthest, 1e-6);
        assert_close(tt_outline_width(&box, uy, uz), 2.0 * corner, 1e-12);
    }
}

static void girth_there_and_back(void **state)
{
    (void)state;
    const double wide[] = {0.004, 0.02, 0.0999, 0.1, 0.1001, 0.13, 0.4, 1.0, 3.0};
    for (size_t i = 0; i < sizeof wide / sizeof *wide; i++) {
        const double girth = perimeter_by_points(wide[i], 0.1);
        tt_outline found = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
        assert_true(tt_outline_of_girth(girth, 0.1, &found));
        assert_int_equal(found.kind, TT_OUTLINE_ELLIPSE);
        assert_near(found.deep, 0.1, 0.0);
        assert_near(found.wide, wide[i], 1e-11);
        assert_close(tt_outline_perimeter(&found), girth, 1e-12);
    }
}

static void girth_of_a_circle_and_of_nothing(void **state)
{
    (void)state;
    tt_outline found = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    assert_true(tt_outline_of_girth(PI, 0.0, &found));
    assert_near(found.wide, 1.0, 1e-15);
    assert_true(found.wide == found.deep);
    assert_false(tt_outline_of_girth(0.5, 0.25, &found));
    assert_false(tt_outline_of_girth(0.4, 0.25, &found));
    assert_false(tt_outline_of_girth(0.0, 0.0, &found));
    assert_true(tt_outline_of_girth(0.5000001, 0.25, &found));
    assert_true(found.wide > 0.0 && found.wide < 0.001);
}

static void between_two(void **state)
{
    (void)state;
    const tt_outline a = tt_outline_of(TT_OUTLINE_BOX, 0.4, 0.1),
                     b = tt_outline_of(TT_OUTLINE_BOX, 0.2, 0.3);
    const tt_outline none = tt_outline_of(TT_OUTLINE_NONE, 0.0, 0.0);
    const tt_outline mid = tt_outline_between(&a, &b, 0.25);
    assert_int_equal(mid.kind, TT_OUTLINE_BOX);
    assert_near(mid.wide, 0.35, 1e-15);
    assert_near(mid.deep, 0.15, 1e-15);
    assert_int_equal(tt_outline_between(&none, &none, 0.5).kind, TT_OUTLINE_NONE);
}

/* A circle of the bore, about the centre, touches the parallel curve and lies inside it: every
 * point of it is the wall or more from the outline. A circle a little larger, anywhere on the major
 * axis (where the deepest points are), comes nearer somewhere. */
static double nearest(double a, double b, double x, double y)
{
    double best = HUGE_VAL;
    for (int i = 0; i < 2000; i++) {
        const double u = 2.0 * PI * i / 2000;
        best = fmin(best, hypot(a * cos(u) - x, b * sin(u) - y));
    }
    return best;
}

static double nearest_of_circle(double a, double b, double at, double radius)
{
    double best = HUGE_VAL;
    for (int i = 0; i < 120; i++) {
        const double u = 2.0 * PI * i / 120;
        best = fmin(best, nearest(a, b, at + radius * cos(u), radius * sin(u)));
    }
    return best;
}

static void bore_is_the_largest_circle(void **state)
{
    (void)state;
    const double walls[] = {0.005, 0.02, 0.035}; /* radius of curvature at the end: 0.025 */
    const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.2, 0.1);
    for (size_t i = 0; i < sizeof walls / sizeof *walls; i++) {
        const double bore = tt_outline_bore(&oval, walls[i]);
        assert_near(nearest_of_circle(0.1, 0.05, 0.0, 0.5 * bore), walls[i], 1e-5);
        for (int k = 0; k < 8; k++) {
            const double least = nearest_of_circle(0.1, 0.05, 0.01 * k, 0.5 * bore + 0.0005);
            assert_true(least < walls[i] - 0.0004);
        }
    }
    const tt_outline box = tt_outline_of(TT_OUTLINE_BOX, 0.2, 0.1);
    assert_near(tt_outline_bore(&box, 0.01), 0.08, 1e-15);
    assert_near(tt_outline_closing_wall(&box), 0.05, 1e-15);
    assert_near(tt_outline_bore(&box, 0.05), 0.0, 0.0);
    assert_near(tt_outline_bore(&oval, 0.06), 0.0, 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(perimeter_of_ellipse),
        cmocka_unit_test(areas_and_lengths),
        cmocka_unit_test(turned_widths),
        cmocka_unit_test(girth_there_and_back),
        cmocka_unit_test(girth_of_a_circle_and_of_nothing),
        cmocka_unit_test(between_two),
        cmocka_unit_test(bore_is_the_largest_circle),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
