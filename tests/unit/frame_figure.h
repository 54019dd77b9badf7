/* tests/unit/frame_figure.h - an invented heron on two legs, built along any axes: bars of several
 * kinds, an arm, a mass beside a node, two supports. */
#ifndef TT_TESTS_FRAME_FIGURE_H
#define TT_TESTS_FRAME_FIGURE_H

#include "frame_make.h"

enum { FIGURE_NODES = 8 };

static const make_material figure_bronze = {.e = 1.05e11, .g = 3.9e10, .rho = 8800.0, .shear = 0.7};

static inline tt_vec3 figure_turn(tt_vec3 v, double about_z)
{
    const double c = cos(about_z), s = sin(about_z);
    return (tt_vec3){c * v.x - s * v.y, s * v.x + c * v.y, v.z};
}

/* Feet 0 and 1, hips 2 and 3, breast 4, head 5, tail 6, a lamp 7 on an arm from the head. */
static inline tt_vec3 figure_spot(size_t i, double about_z)
{
    static const tt_vec3 spot[FIGURE_NODES] = {
        {0, 0.1, 0},     {0.3, -0.1, 0},  {0.02, 0.06, 0.9}, {0.1, -0.06, 0.9},
        {0.3, 0.0, 1.2}, {0.5, 0.1, 2.0}, {-0.6, 0.05, 1.0}, {0.7, 0.2, 2.05}};
    return figure_turn(spot[i], about_z);
}

/* Sections lie in a plane that turns with the figure. */
static inline void figure_bar(tt_frame *frame, size_t a, size_t b, const make_shape *shape,
                              double about_z)
{
    tt_bar_section sections[TT_BAR_POINTS];
    const tt_vec3 from = figure_spot(a, about_z), to = figure_spot(b, about_z);
    const tt_axes axes = make_axes(from, to, figure_turn((tt_vec3){-1.0, 0.3, 0.2}, about_z));
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const make_area area = make_area_at(shape, tt_bar_point[i]);
        sections[i] = make_section(&figure_bronze, &area);
        sections[i].stiffness[4][5] = sections[i].stiffness[5][4] =
            0.2 * sqrt(sections[i].stiffness[4][4] * sections[i].stiffness[5][5]);
    }
    assert_true(tt_frame_add_bar(frame, a, b, &axes, sections));
}

static inline tt_frame *figure_new(double about_z)
{
    static const make_shape leg = {.kind = MAKE_ROUND, .size = {0.04, 0.06}};
    static const make_shape body = {.kind = MAKE_RECTANGLE, .size = {0.2, 0.12, 0.1, 0.16}};
    static const make_shape neck = {.kind = MAKE_ROUND, .size = {0.08, 0.03}};
    static const double lamp[3] = {0.02, 0.02, 0.02};
    tt_frame *frame = tt_frame_new();
    assert_non_null(frame);
    for (size_t i = 0; i < FIGURE_NODES; i++) {
        assert_true(tt_frame_add_node(frame, figure_spot(i, about_z)));
    }
    figure_bar(frame, 0, 2, &leg, about_z);
    figure_bar(frame, 1, 3, &leg, about_z);
    figure_bar(frame, 2, 4, &body, about_z);
    figure_bar(frame, 3, 4, &body, about_z);
    figure_bar(frame, 4, 5, &neck, about_z);
    figure_bar(frame, 6, 2, &neck, about_z);
    assert_true(tt_frame_add_arm(frame, 7, 5));
    const tt_vec3 hung = figure_turn((tt_vec3){0.05, 0.0, -0.1}, about_z);
    assert_true(tt_frame_add_mass(frame, 7, 3.5, hung, lamp));
    assert_true(tt_frame_hold(frame, 0, make_fixed));
    const bool pinned[TT_SIX] = {true, true, true, false, false, false};
    assert_true(tt_frame_hold(frame, 1, pinned));
    make_prepare(frame);
    return frame;
}

static inline tt_frame_state figure_solve(const tt_frame *frame, double (*node)[TT_SIX],
                                          const tt_vec3 *line, tt_pool *pool)
{
    tt_frame_state state;
    const tt_frame_load load = {.line_force = line, .node = (const double(*)[TT_SIX])node};
    assert_int_equal(tt_frame_solve(frame, &load, pool, &state), TT_OK);
    return state;
}

#endif
