/* Local axes of a segment, by the rule of the piece file's page: z is the part of `faces` across
 * the limb; within 20 degrees of that line the part of +z; within 20 degrees of +z too, of +x. y =
 * z x x. */
#include "assert_close.h"
#include "piece/piece.h"

static tt_piece *piece_of(tt_vec3 to, tt_vec3 faces, double turn, double turn_to)
{
    tt_piece *piece = tt_piece_new();
    assert_non_null(piece);
    assert_true(tt_list_push(&piece->points, (tt_point){.name = "a"}));
    assert_true(tt_list_push(&piece->points, (tt_point){.name = "b", .at = to}));
    assert_true(tt_list_push(
        &piece->segments,
        (tt_segment){
            .name = "a-b", .from = 0, .to = 1, .faces = faces, .turn = turn, .turn_to = turn_to}));
    return piece;
}

static void assert_vec(tt_vec3 got, double x, double y, double z)
{
    assert_near(got.x, x, 1e-12);
    assert_near(got.y, y, 1e-12);
    assert_near(got.z, z, 1e-12);
}

static const tt_vec3 forward = {1, 0, 0}, upward = {0, 0, 1};

static void axes_are(tt_vec3 to, tt_vec3 faces, double turn, tt_vec3 y, tt_vec3 z)
{
    tt_piece *piece = piece_of(to, faces, turn, turn);
    const tt_axes axes = tt_segment_axes(piece, &piece->segments.at[0], 0.3);
    assert_vec(axes.y, y.x, y.y, y.z);
    assert_vec(axes.z, z.x, z.y, z.z);
    assert_vec(tt_cross(axes.x, axes.y), axes.z.x, axes.z.y, axes.z.z); /* right-handed */
    tt_piece_free(piece);
}

static void by_the_rule(void **state)
{
    (void)state;
    axes_are((tt_vec3){0, 0, 2}, forward, 0, (tt_vec3){0, -1, 0}, forward); /* a plumb shank */
    axes_are((tt_vec3){3, 0, 0}, forward, 0, (tt_vec3){0, 1, 0}, upward); /* an arm held forwards */
    axes_are((tt_vec3){0, 3, 0}, forward, 0, (tt_vec3){0, 0, 1},
             forward); /* an arm to the side: y = z cross x */
    axes_are((tt_vec3){0, 0, 2}, upward, 0, (tt_vec3){0, -1, 0},
             forward); /* faces along a plumb limb */
    axes_are((tt_vec3){0, 0, -2}, forward, 0, (tt_vec3){0, 1, 0}, forward);
}

/* A quarter turn about x carries y to z and z to -y. */
static void turned(void **state)
{
    (void)state;
    const double quarter = 2.0 * atan(1.0);
    axes_are((tt_vec3){0, 0, 2}, forward, quarter, forward, (tt_vec3){0, 1, 0});
    tt_piece *piece = piece_of((tt_vec3){0, 0, 2}, forward, 0, quarter);
    const tt_axes middle = tt_segment_axes(piece, &piece->segments.at[0], 0.5);
    assert_vec(middle.y, sqrt(0.5), -sqrt(0.5), 0);
    assert_vec(middle.z, sqrt(0.5), sqrt(0.5), 0);
    tt_piece_free(piece);
}

/* A shank that leans a little keeps its outline's direction, whichever way it leans. */
static void no_flip_near_plumb(void **state)
{
    (void)state;
    for (int lean = 0; lean <= 19; lean++) {
        for (int way = 0; way < 360; way += 15) {
            const double a = lean * atan(1.0) / 45.0, w = way * atan(1.0) / 45.0;
            tt_piece *piece =
                piece_of((tt_vec3){sin(a) * cos(w), sin(a) * sin(w), cos(a)}, forward, 0, 0);
            const tt_axes axes = tt_segment_axes(piece, &piece->segments.at[0], 0);
            assert_true(tt_dot(axes.z, forward) >= cos(a) - 1e-12);
            assert_true(-axes.y.y >= cos(a) - 1e-12);
            tt_piece_free(piece);
        }
    }
}

/* Degrees from the switch, counted by hand: a limb 30 degrees off the front is 10 from it. */
static void margin(void **state)
{
    (void)state;
    const double degree = atan(1.0) / 45.0;
    tt_piece *piece = piece_of((tt_vec3){cos(30 * degree), sin(30 * degree), 0}, forward, 0, 0);
    assert_near(tt_segment_axes_margin(piece, &piece->segments.at[0]), 10.0, 1e-9);
    tt_piece_free(piece);
    piece = piece_of((tt_vec3){cos(17 * degree), 0, sin(17 * degree)}, forward, 0, 0);
    assert_near(tt_segment_axes_margin(piece, &piece->segments.at[0]), 3.0, 1e-9);
    tt_piece_free(piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_the_rule),
        cmocka_unit_test(turned),
        cmocka_unit_test(no_flip_near_plumb),
        cmocka_unit_test(margin),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
