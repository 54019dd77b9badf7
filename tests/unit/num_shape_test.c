/* Polygons that may be concave against closed forms, and against a second route: summing squares of
 * a fine grid. */
#include "assert_close.h"
#include "num/polygon_shape.h"

static const double PI = 3.14159265358979323846;

/* An L of 150 x 100 x 10: reference values of the moments are computed by composing two
 * rectangles. */
static const tt_vec2 ANGLE[] = {{0, 0}, {100, 0}, {100, 10}, {10, 10}, {10, 150}, {0, 150}};

static void moments_of_an_angle(void **state)
{
    (void)state;
    const tt_plane_moments at = tt_polygon_moments(ANGLE, 6);
    assert_close(at.area, 2400.0, 1e-14);
    assert_close(at.x / at.area, 23.75, 1e-14);
    assert_close(at.y / at.area, 48.75, 1e-14);
    const tt_plane_moments own = tt_plane_about(&at, 23.75, 48.75);
    assert_close(own.yy, 5576250.0, 1e-12);
    assert_close(own.xx, 2026250.0, 1e-12);
    assert_close(own.xy, -1968750.0, 1e-12);
    assert_near(own.x, 0.0, 1e-9);
}

/* Z section of Beer and Johnston, Statics, sample problem 9.6: 10.38, 6.97, -6.56 in4, FROM MEMORY.
 */
static void moments_of_a_z(void **state)
{
    (void)state;
    static const tt_vec2 z[] = {{-0.25, -2}, {2.75, -2}, {2.75, -1.5}, {0.25, -1.5},
                                {0.25, 2},   {-2.75, 2}, {-2.75, 1.5}, {-0.25, 1.5}};
    const tt_plane_moments at = tt_polygon_moments(z, 8);
    assert_close(at.yy, 10.38, 0.003);
    assert_close(at.xx, 6.97, 0.003);
    assert_close(at.xy, -6.56, 0.003);
}

/* Squares of a grid whose middles lie at least `by` inside. */
static tt_plane_moments by_grid(const tt_vec2 *p, size_t n, double by, double size, int cells)
{
    tt_plane_moments sum = {0};
    const double h = size / cells;
    for (int i = 0; i < cells; i++) {
        for (int k = 0; k < cells; k++) {
            const tt_vec2 at = {h * (i + 0.5) - 0.1 * size, h * (k + 0.5) - 0.1 * size};
            if (tt_polygon_distance(p, n, at) < by) continue;
            const tt_plane_moments cell = {h * h,
                                           h * h * at.x,
                                           h * h * at.y,
                                           h * h * at.x * at.x,
                                           h * h * at.y * at.y,
                                           h * h * at.x * at.y};
            tt_plane_add(&sum, 1.0, &cell);
        }
    }
    return sum;
}

/* A concave outline: an arm, a notch, a neck that the wall closes so that two parts are left. */
static const tt_vec2 FIGURE[] = {{0, 0},   {60, 5},  {62, 30}, {40, 26}, {38, 34},
                                 {70, 40}, {66, 70}, {20, 66}, {30, 40}, {4, 34}};
enum { CORNERS = sizeof FIGURE / sizeof *FIGURE };

static void inset_against_a_grid(void **state)
{
    (void)state;
    static const double by[] = {1.0, 3.0, 5.0, 9.0};
    for (int i = 0; i < 4; i++) {
        const tt_plane_moments got = tt_polygon_inset_moments(FIGURE, CORNERS, by[i]);
        const tt_plane_moments grid = by_grid(FIGURE, CORNERS, by[i], 100.0, 700);
        assert_true(grid.area > 100.0);
        assert_close(got.area, grid.area, 4e-3);
        assert_close(got.x, grid.x, 5e-3);
        assert_close(got.y, grid.y, 5e-3);
        assert_close(got.xx, grid.xx, 6e-3);
        assert_close(got.yy, grid.yy, 6e-3);
        assert_close(got.xy, grid.xy, 6e-3);
    }
    assert_near(tt_polygon_inset_moments(FIGURE, CORNERS, 20.0).area, 0.0, 0.0);
}

/* Steiner: while nothing is trimmed, a convex polygon moved in by t loses P t less t^2 times the
 * sum of the cotangents of half its corners; a corner that stands out takes an arc. */
static void inset_by_closed_forms(void **state)
{
    (void)state;
    static const tt_vec2 triangle[] = {{0, 0}, {80, 0}, {0, 60}}; /* radius inside 20 */
    for (double t = 1.0; t < 20.0; t += 3.0) {
        const double left = 1.0 - t / 20.0;
        assert_close(tt_polygon_inset_moments(triangle, 3, t).area, 2400.0 * left * left, 1e-12);
    }
    assert_near(tt_polygon_inset_moments(triangle, 3, 20.5).area, 0.0, 0.0);
    /* The angle: two strips of 10 - 2 t, whose corner inside is round. */
    const double t = 3.0, b = 10.0 - 2.0 * t;
    const double arms = b * (100.0 - 2.0 * t) + b * (150.0 - 2.0 * t - b);
    const double corner = t * t * (1.0 - PI / 4.0); /* a sharp one would leave t^2 */
    assert_close(tt_polygon_inset_moments(ANGLE, 6, t).area, arms + corner, 5e-5); /* nine chords */
}

/* Turned by any angle it is the same area. */
static void inset_does_not_know_up(void **state)
{
    (void)state;
    const double straight = tt_polygon_inset_moments(FIGURE, CORNERS, 4.0).area;
    for (int k = 1; k < 12; k++) {
        tt_vec2 turned[CORNERS];
        const double c = cos(PI * k / 6.0), s = sin(PI * k / 6.0);
        for (size_t i = 0; i < CORNERS; i++)
            turned[i] =
                (tt_vec2){c * FIGURE[i].x - s * FIGURE[i].y, s * FIGURE[i].x + c * FIGURE[i].y};
        assert_close(tt_polygon_inset_moments(turned, CORNERS, 4.0).area, straight, 1e-10);
    }
}

static void largest_circles(void **state)
{
    (void)state;
    static const tt_vec2 square[] = {{0, 0}, {8, 0}, {8, 8}, {0, 8}};
    static const tt_vec2 strip[] = {{0, 0}, {90, 0}, {90, 8}, {0, 8}};
    static const tt_vec2 triangle[] = {{0, 0}, {80, 0}, {0, 60}};
    tt_vec2 centre;
    assert_close(tt_polygon_inscribed(square, 4, &centre), 4.0, 1e-12);
    assert_near(centre.x, 4.0, 1e-9);
    assert_close(tt_polygon_inscribed(strip, 4, NULL), 4.0, 1e-9);
    assert_close(tt_polygon_inscribed(triangle, 3, &centre), 20.0, 1e-6); /* (a + b - c) / 2 */
    assert_near(centre.x, 20.0, 1e-4);
    /* of the angle: in its corner, touching both outsides and the corner that stands out:
     * r + r sqrt 2 = 10 sqrt 2 */
    assert_close(tt_polygon_inscribed(ANGLE, 6, NULL), 10.0 * sqrt(2.0) / (1.0 + sqrt(2.0)), 1e-5);
}

static void crossings(void **state)
{
    (void)state;
    static const tt_vec2 bow[] = {{0, 0}, {4, 0}, {0, 3}, {4, 3}};
    static const tt_vec2 touch[] = {{0, 0}, {6, 0}, {6, 6}, {3, 0}, {0, 6}};
    static const tt_vec2 back[] = {{0, 0}, {6, 0}, {3, 0}, {3, 5}};
    size_t one = 9, other = 9;
    assert_true(tt_polygon_crossing(bow, 4, &one, &other));
    assert_int_equal(one, 1);
    assert_int_equal(other, 3);
    assert_true(tt_polygon_crossing(touch, 5, &one, &other));
    assert_true(tt_polygon_crossing(back, 4, &one, &other));
    assert_int_equal(one, 0);
    assert_int_equal(other, 1);
    assert_false(tt_polygon_crossing(ANGLE, 6, &one, &other));
    assert_false(tt_polygon_crossing(FIGURE, CORNERS, &one, &other));
}

static void moved_edges(void **state)
{
    (void)state;
    tt_vec2 out[8];
    size_t left = 0;
    static const tt_vec2 doubled[] = {{0, 0}, {80, 0}, {80, 0}, {0, 60}};
    assert_true(tt_polygon_moved(doubled, 4, 5.0, out, &left));
    assert_int_equal(left, 3);
    assert_close(tt_polygon_moments(out, left).area, 2400.0 * 0.75 * 0.75, 1e-12);
    assert_false(tt_polygon_moved(doubled, 4, 21.0, out, &left));
    assert_true(tt_polygon_moved(ANGLE, 6, 2.0, out, &left));
    assert_close(tt_polygon_perimeter(out, left), 500.0 - 16.0, 1e-12);
}

static void extents(void **state)
{
    (void)state;
    assert_close(tt_polygon_extent(ANGLE, 6, (tt_vec2){1, 0}), 100.0, 1e-15);
    assert_close(tt_polygon_extent(ANGLE, 6, (tt_vec2){0.6, 0.8}), 126.0, 1e-14);
    assert_close(tt_polygon_distance(ANGLE, 6, (tt_vec2){50, 4}), 4.0, 1e-14);
    assert_close(tt_polygon_distance(ANGLE, 6, (tt_vec2){13, 14}), -3.0, 1e-14);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(moments_of_an_angle),
        cmocka_unit_test(moments_of_a_z),
        cmocka_unit_test(inset_against_a_grid),
        cmocka_unit_test(inset_by_closed_forms),
        cmocka_unit_test(inset_does_not_know_up),
        cmocka_unit_test(largest_circles),
        cmocka_unit_test(crossings),
        cmocka_unit_test(moved_edges),
        cmocka_unit_test(extents),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
