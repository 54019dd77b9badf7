/* Plane polygons against figures whose values are known: square, 3-4-5 triangle, hexagon, L. */
#include "assert_close.h"
#include "num/polygon.h"

#include <stdlib.h>

enum { MANY = 200 };

static void hull_keeps_corners(void **unused)
{
    (void)unused;
    const tt_vec2 points[] = {{1, 1}, {0, 0}, {0.5, 0.5}, {0.5, 0}, {1, 0}, {0, 1}, {1, 1}, {0, 0}};
    const tt_vec2 expected[] = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    tt_vec2 hull[17];
    assert_int_equal(tt_hull(points, 8, hull), 4);
    for (int i = 0; i < 4; i++) {
        assert_near(hull[i].x, expected[i].x, 0.0);
        assert_near(hull[i].y, expected[i].y, 0.0);
    }
}

static void hull_of_little(void **unused)
{
    (void)unused;
    const tt_vec2 line[] = {{2, 4}, {0, 0}, {1, 2}, {3, 6}}, one[] = {{5, 6}, {5, 6}, {5, 6}};
    tt_vec2 hull[9];
    assert_int_equal(tt_hull(line, 4, hull), 2);
    assert_near(hull[0].x, 0.0, 0.0);
    assert_near(hull[1].x, 3.0, 0.0);
    assert_int_equal(tt_hull(one, 3, hull), 1);
    assert_near(hull[0].y, 6.0, 0.0);
    assert_int_equal(tt_hull(one, 0, hull), 0);
}

static void hull_holds_all_points(void **unused)
{
    (void)unused;
    tt_vec2 points[MANY], hull[2 * MANY + 1];
    unsigned state = 12345;
    for (int i = 0; i < MANY; i++) {
        state = state * 1664525u + 1013904223u;
        points[i].x = 100.0 + (state >> 8) / 16777216.0;
        state = state * 1664525u + 1013904223u;
        points[i].y = -50.0 + (state >> 8) / 16777216.0 * 0.3;
    }
    const size_t n = tt_hull(points, MANY, hull);
    assert_true(n >= 3 && n < MANY);
    assert_true(tt_polygon_area(hull, n, NULL) > 0.2);
    for (int i = 0; i < MANY; i++)
        assert_true(tt_convex_distance(hull, n, points[i], NULL) > -1e-12);
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 a = hull[i], b = hull[(i + 1) % n], c = hull[(i + 2) % n];
        assert_true((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0.0);
    }
}

static void area_and_centroid(void **unused)
{
    (void)unused;
    const double away = 1e4;
    tt_vec2 l[] = {{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}, centroid;
    assert_close(tt_polygon_area(l, 6, &centroid), 3.0, 1e-15);
    assert_close(centroid.x, 5.0 / 6.0, 1e-15);
    assert_close(centroid.y, 5.0 / 6.0, 1e-15);
    for (int i = 0; i < 6; i++) l[i] = (tt_vec2){l[i].x + away, l[i].y - away};
    assert_close(tt_polygon_area(l, 6, &centroid), 3.0, 1e-11);
    assert_near(centroid.x - away, 5.0 / 6.0, 1e-11);
    const tt_vec2 clockwise[] = {{0, 0}, {0, 1}, {1, 0}};
    assert_close(tt_polygon_area(clockwise, 3, NULL), -0.5, 1e-15);
}

static void distance_to_edges(void **unused)
{
    (void)unused;
    const tt_vec2 square[] = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
    size_t edge = 9;
    assert_near(tt_convex_distance(square, 4, (tt_vec2){0.7, 0.1}, &edge), 0.3, 1e-15);
    assert_int_equal(edge, 1);
    assert_near(tt_convex_distance(square, 4, (tt_vec2){0.1, -0.9}, &edge), 0.1, 1e-15);
    assert_int_equal(edge, 0);
    assert_near(tt_convex_distance(square, 4, (tt_vec2){-1.5, 0.0}, &edge), -0.5, 1e-15);
    assert_int_equal(edge, 3);
    assert_near(tt_convex_distance(square, 4, (tt_vec2){2.0, 2.0}, &edge), -sqrt(2.0), 1e-15);
    assert_near(tt_convex_distance(square, 4, (tt_vec2){1.0, 0.0}, NULL), 0.0, 0.0);
    assert_near(tt_convex_distance(square, 2, (tt_vec2){0.0, 1.0}, NULL), -2.0, 1e-15);
    assert_near(tt_convex_distance(square, 1, (tt_vec2){-1.0, 2.0}, NULL), -3.0, 1e-15);
}

static void inset_shrinks(void **unused)
{
    (void)unused;
    /* radius of the circle inside is 1, so that an inset d leaves a copy of scale 1 - d */
    const tt_vec2 triangle[] = {{0, 0}, {4, 0}, {0, 3}};
    tt_vec2 out[12];
    const size_t n = tt_convex_inset(triangle, 3, 0.25, out);
    assert_int_equal(n, 3);
    assert_close(tt_polygon_area(out, n, NULL), 6.0 * 0.75 * 0.75, 1e-12);
    for (size_t i = 0; i < n; i++) {
        assert_near(tt_convex_distance(triangle, 3, out[i], NULL), 0.25, 1e-12);
    }
    assert_int_equal(tt_convex_inset(triangle, 3, 0.0, out), 3);
    assert_close(tt_polygon_area(out, 3, NULL), 6.0, 1e-15);
    assert_int_equal(tt_convex_inset(triangle, 3, 1.0001, out), 0);
    assert_int_equal(tt_convex_inset(triangle, 2, 0.0, out), 0);
}

/* A short edge vanishes before the others do. */
static void inset_loses_an_edge(void **unused)
{
    (void)unused;
    const tt_vec2 cut[] = {{0, 0}, {10, 0}, {10, 9.9}, {9.9, 10}, {0, 10}};
    tt_vec2 out[20];
    assert_int_equal(tt_convex_inset(cut, 5, 1.0, out), 4);
    assert_close(tt_polygon_area(out, 4, NULL), 64.0, 1e-12);
}

static void least_width(void **unused)
{
    (void)unused;
    const double h = sqrt(3.0) / 2.0;
    const tt_vec2 triangle[] = {{0, 0}, {4, 0}, {0, 3}};
    const tt_vec2 hexagon[] = {{1, 0}, {0.5, h}, {-0.5, h}, {-1, 0}, {-0.5, -h}, {0.5, -h}};
    assert_close(tt_convex_width(triangle, 3), 2.4, 1e-14);
    assert_close(tt_convex_width(hexagon, 6), 2.0 * h, 1e-14);
    assert_near(tt_convex_width(triangle, 2), 0.0, 0.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(hull_keeps_corners),    cmocka_unit_test(hull_of_little),
        cmocka_unit_test(hull_holds_all_points), cmocka_unit_test(area_and_centroid),
        cmocka_unit_test(distance_to_edges),     cmocka_unit_test(inset_shrinks),
        cmocka_unit_test(inset_loses_an_edge),   cmocka_unit_test(least_width),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
