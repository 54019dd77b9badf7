/* tests/figure.h - a figure on two legs with a ball in its hand, as the text of a piece file, told
 * in one of several ways that must come to the same. SI unless the text says otherwise. */
#ifndef TT_TESTS_FIGURE_H
#define TT_TESTS_FIGURE_H

#include "run_piece.h"

typedef struct {
    int split;       /* segments of the left leg */
    bool turned;     /* by 90 degrees about the vertical, x to y */
    bool mirrored;   /* y to -y */
    bool swapped;    /* right before left */
    double measured; /* size of what is measured, over full size */
    const char *basis, *wall, *wind;
} telling;

static const telling plain = {.split = 1,
                              .measured = 1.0,
                              .basis = "eu",
                              .wall = "{is: 5 mm, low: 4 mm, high: 7 mm}",
                              .wind = "{basic_speed: 24 m/s, terrain: II}"};

typedef struct {
    double x, y, z;
} triple;

static inline triple moved(const telling *t, triple v)
{
    if (t->mirrored) v.y = -v.y;
    return t->turned ? (triple){-v.y, v.x, v.z} : v;
}

/* A moment turns over when the piece is mirrored. */
static inline triple moved_moment(const telling *t, triple v)
{
    const double sign = t->mirrored ? -1.0 : 1.0;
    return moved(t, (triple){sign * v.x, sign * v.y, sign * v.z});
}

/* Degrees of the wind that was told as d. */
static inline int moved_wind(const telling *t, int d)
{
    if (t->mirrored) d = 360 - d;
    return (t->turned ? d + 90 : d) % 360;
}

static inline void say(run_text *to, const char *format, ...)
{
    char part[512];
    va_list list;
    va_start(list, format);
    const int n = vsnprintf(part, sizeof part, format, list);
    va_end(list);
    assert_true(n >= 0 && (size_t)n < sizeof part);
    assert_int_equal(run_take(to, part, (size_t)n), 0);
}

static inline void say_row(run_text *to, const telling *t, const char *name, triple at, double wide,
                           double deep)
{
    const double s = t->measured;
    const triple v = moved(t, at);
    say(to, "      - [%s, %.12g m, %.12g m, %.12g m, %.12g m, %.12g m]\n", name, s * v.x, s * v.y,
        s * v.z, s * wide, s * deep);
}

static inline double between(double a, double b, double x)
{
    return a + (b - a) * x;
}

static inline void say_leg(run_text *to, const telling *t, const char *side, triple foot,
                           triple hip, const char *armature, int split)
{
    char name[32];
    say(to, "  %s leg:\n    armature: {%s}\n    rows:\n", side, armature);
    for (int i = 0; i <= split; i++) {
        const double x = (double)i / split;
        snprintf(name, sizeof name, i == 0 ? "%s foot" : i == split ? "%s hip" : "%s %d", side, i);
        say_row(to, t, name,
                (triple){between(foot.x, hip.x, x), between(foot.y, hip.y, x),
                         between(foot.z, hip.z, x)},
                between(0.06, 0.11, x), between(0.05, 0.09, x));
    }
}

static inline void say_legs(run_text *to, const telling *t)
{
    for (int i = 0; i < 2; i++) {
        if ((i == 0) != t->swapped)
            say_leg(to, t, "left", (triple){0.12, 0.1, 0}, (triple){0.02, 0.08, 0.9},
                    "tube: [33.7 mm, 4 mm]", t->split);
        else
            say_leg(to, t, "right", (triple){-0.2, -0.1, 0}, (triple){-0.05, -0.08, 0.92},
                    "bar: 24 mm", 1);
    }
}

static inline void say_stand(run_text *to, const telling *t, const char *at)
{
    static const triple corner[] = {
        {-0.09, -0.06, 0}, {0.11, -0.07, 0}, {0.11, 0.07, 0}, {-0.09, 0.06, 0}};
    say(to, "  - {at: %s, held: fixed, sole: [", at);
    for (int i = 0; i < 4; i++) {
        const triple v = moved(t, corner[i]);
        say(to, "%s[%.12g m, %.12g m]", i ? ", " : "", t->measured * v.x, t->measured * v.y);
    }
    say(to, "]}\n");
}

static inline void say_triple(run_text *to, const char *before, triple v, const char *unit)
{
    say(to, "%s[%.12g %s, %.12g %s, %.12g %s]", before, v.x, unit, v.y, unit, v.z, unit);
}

static inline void say_rest(run_text *to, const telling *t)
{
    const double s = t->measured;
    say(to,
        "rigid: [[left hip, pelvis], [right hip, pelvis]]\n"
        "lumps:\n  - {name: ball, at: hand, mass: 2 kg, offset: [0, 0, %.12g m], wind_area: %.12g "
        "m2}\n",
        -0.05 * s, 0.02 * s * s);
    say(to, "stands:\n");
    say_stand(to, t, t->swapped ? "right foot" : "left foot");
    say_stand(to, t, t->swapped ? "left foot" : "right foot");
    say_triple(to, "loads:\n  - {case: banner, kind: variable, at: hand, force: ",
               moved(t, (triple){30, -20, -50}), "N");
    say_triple(to, ", moment: ", moved_moment(t, (triple){3, -2, 5}), "N.m");
    say(to,
        "}\nsite: {base_height: 0.9 m, wind: %s}\n"
        "limits: {mass: 200 kg, sway: 1/50, frequency: 1 Hz}\n",
        t->wind);
}

/* The text of the figure; the caller frees it. */
static inline run_text figure(const telling *t)
{
    run_text to = {0};
    say(&to,
        "piece: Figure with a ball\nbasis: %s\nscale: %.12g\nfaces: %s\nbronze: {alloy: C87300, "
        "wall: %s}\n",
        t->basis, 1.0 / t->measured, t->turned ? "+y" : "+x", t->wall);
    say(&to, "armature: {grade: \"1.4462\"}\nlimbs:\n");
    say_legs(&to, t);
    say(&to, "  trunk:\n    rows:\n");
    say_row(&to, t, "pelvis", (triple){0, 0, 0.95}, 0.2, 0.18);
    say_row(&to, t, "neck", (triple){0.1, 0.05, 1.4}, 0.12, 0.1);
    say(&to, "  arm:\n    rows:\n      - [neck, %.12g m, %.12g m]\n", 0.06 * t->measured,
        0.05 * t->measured);
    say_row(&to, t, "hand", (triple){0.6, 0.4, 1.6}, 0.05, 0.04);
    say_rest(&to, t);
    return to;
}

static inline cJSON *result_of(const telling *t, const tt_changes *changes)
{
    run_text text = figure(t);
    cJSON *tree = run_piece("figure", text.at, changes);
    free(text.at);
    return tree;
}

#endif
