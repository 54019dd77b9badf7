/* tests/unit/frame_make.h - sections and frames in few words, for the tests of module frame; and
 * the frame that a reference case describes (words: see tests/cases/frame/README.md). */
#ifndef TT_TESTS_FRAME_MAKE_H
#define TT_TESTS_FRAME_MAKE_H

#include "cases.h"
#include "frame/frame.h"

#define PI 3.14159265358979323846

typedef struct {
    double e, g, rho, shear; /* shear: area of shear over area; 0: rigid in shear */
    double axial;            /* factor on EA */
    double soft;             /* factor on bending and torsion */
    bool slim;               /* without rotary inertia of bending */
} make_material;

typedef enum { MAKE_PLAIN, MAKE_ROUND, MAKE_THIN_TUBE, MAKE_TUBE, MAKE_RECTANGLE } make_kind;

typedef struct {
    make_kind kind;
    double size[5];
} make_shape;

typedef struct {
    double area, iy, iz, j;
} make_area;

static inline make_area make_plain(const double *s)
{
    return (make_area){s[0], s[1], s[2], s[3]};
}

/* Closed forms; t along the bar, 0..1. Thin tube: d its median diameter. */
static inline make_area make_area_at(const make_shape *shape, double t)
{
    const double *s = shape->size, d = s[0] + t * (s[1] - s[0]);
    const double i4 = PI * d * d * d * d / 64.0, thin = PI * d * d * d * s[2] / 8.0;
    const double bore = s[0] - 2.0 * s[1], wall4 = PI * (pow(s[0], 4) - pow(bore, 4)) / 64.0;
    const double h = s[2] + t * (s[3] - s[2]);
    switch (shape->kind) {
    case MAKE_ROUND:
        return (make_area){PI * d * d / 4.0, i4, i4, 2.0 * i4};
    case MAKE_THIN_TUBE:
        return (make_area){PI * d * s[2], thin, thin, 2.0 * thin};
    case MAKE_TUBE:
        return (make_area){PI * (s[0] * s[0] - bore * bore) / 4.0, wall4, wall4, 2.0 * wall4};
    case MAKE_RECTANGLE: /* wide d along y, deep h along z; torsion as the polar moment */
        return (make_area){d * h, d * h * h * h / 12.0, h * d * d * d / 12.0,
                           d * h * (h * h + d * d) / 12.0};
    case MAKE_PLAIN:
        break;
    }
    return make_plain(s);
}

static inline tt_bar_section make_section(const make_material *m, const make_area *a)
{
    tt_bar_section s = {.mass = m->rho * a->area};
    const double shear = m->shear > 0.0 ? m->shear * m->g * a->area : INFINITY;
    const double soft = m->soft > 0.0 ? m->soft : 1.0;
    s.stiffness[0][0] = m->e * a->area * (m->axial > 0.0 ? m->axial : 1.0);
    s.stiffness[1][1] = s.stiffness[2][2] = shear;
    s.stiffness[3][3] = m->g * a->j * soft;
    s.stiffness[4][4] = m->e * a->iy * soft;
    s.stiffness[5][5] = m->e * a->iz * soft;
    s.turn_inertia[0] = m->rho * (a->iy + a->iz);
    s.turn_inertia[1] = m->slim ? 0.0 : m->rho * a->iy;
    s.turn_inertia[2] = m->slim ? 0.0 : m->rho * a->iz;
    return s;
}

/* Local z as near to `up` as the bar lets it. */
static inline tt_axes make_axes(tt_vec3 from, tt_vec3 to, tt_vec3 up)
{
    tt_axes axes = {.x = tt_unit(tt_sub(to, from))};
    axes.y = tt_unit(tt_cross(up, axes.x));
    axes.z = tt_cross(axes.x, axes.y);
    return axes;
}

static inline tt_vec3 make_up(tt_vec3 from, tt_vec3 to)
{
    const tt_vec3 along = tt_unit(tt_sub(to, from));
    return fabs(along.z) > 0.9 ? (tt_vec3){-1.0, 0.0, 0.0} : (tt_vec3){0.0, 0.0, 1.0};
}

/* One bar between two nodes that are there, of the shape from t0 to t1. */
static inline void make_bar_part(tt_frame *frame, size_t a, tt_vec3 from, size_t b, tt_vec3 to,
                                 const make_material *m, const make_shape *shape, double t0,
                                 double t1)
{
    tt_bar_section sections[TT_BAR_POINTS];
    const tt_axes axes = make_axes(from, to, make_up(from, to));
    for (int i = 0; i < TT_BAR_POINTS; i++) {
        const make_area area = make_area_at(shape, t0 + tt_bar_point[i] * (t1 - t0));
        sections[i] = make_section(m, &area);
    }
    assert_true(tt_frame_add_bar(frame, a, b, &axes, sections));
}

/* A bar in `pieces` of one length, with new nodes between. */
static inline void make_bar(tt_frame *frame, size_t a, tt_vec3 from, size_t b, tt_vec3 to,
                            const make_material *m, const make_shape *shape, int pieces)
{
    size_t last = a;
    tt_vec3 here = from;
    for (int i = 1; i <= pieces; i++) {
        const double t = (double)i / pieces;
        const tt_vec3 next = tt_lerp(from, to, t);
        const size_t node = i < pieces ? tt_frame_nodes(frame) : b;
        if (i < pieces) assert_true(tt_frame_add_node(frame, next));
        make_bar_part(frame, last, here, node, next, m, shape, (double)(i - 1) / pieces, t);
        last = node;
        here = next;
    }
}

static const bool make_fixed[TT_SIX] = {true, true, true, true, true, true};

static inline void make_prepare(tt_frame *frame)
{
    tt_frame_fault fault;
    const tt_status status = tt_frame_prepare(frame, &fault);
    if (status != TT_OK) {
        print_error("prepare: %s (node %zu, direction %d)\n", tt_status_text(status), fault.node,
                    fault.direction);
    }
    assert_int_equal(status, TT_OK);
}

/* --- the frame of a reference case --- */

enum { MAKE_NODES = 512, MAKE_BARS = 64 };

typedef struct {
    tt_frame *frame;
    tt_vec3 at[MAKE_NODES];
    size_t nodes, bars;          /* as written */
    size_t first[MAKE_BARS + 1]; /* of the bars as written */
    make_material material;
    make_shape shape;
    tt_vec3 *line;
    double (*force)[TT_SIX];
    double (*lever)[3][3];
} make_case;

static inline bool make_shape_word(const case_item *item, make_shape *shape)
{
    static const char *const words[] = {"plain", "round", "thin_tube", "tube", "rectangle"};
    for (int k = 0; k < 5; k++) {
        if (strcmp(item->name, words[k]) != 0) continue;
        *shape = (make_shape){.kind = (make_kind)k};
        for (int i = 0; i < item->n && i < 5; i++) shape->size[i] = item->value[i];
        return true;
    }
    return false;
}

static inline void make_case_node(make_case *made, const case_item *item)
{
    const tt_vec3 at = {item->value[0], item->value[1], item->value[2]};
    assert_true(made->nodes < MAKE_NODES && made->bars == 0);
    made->at[made->nodes++] = at;
    assert_true(tt_frame_add_node(made->frame, at));
}

static inline void make_case_bar(make_case *made, const case_item *item)
{
    const size_t a = (size_t)item->value[0], b = (size_t)item->value[1];
    const int pieces = item->n > 2 ? (int)item->value[2] : 1;
    assert_true(a < made->nodes && b < made->nodes && made->bars < MAKE_BARS);
    made->first[made->bars++] = tt_frame_bars(made->frame);
    make_bar(made->frame, a, made->at[a], b, made->at[b], &made->material, &made->shape, pieces);
    made->first[made->bars] = tt_frame_bars(made->frame);
}

static inline bool make_case_part(make_case *made, const case_item *item)
{
    const double *v = item->value;
    if (strcmp(item->name, "node") == 0)
        make_case_node(made, item);
    else if (strcmp(item->name, "bar") == 0)
        make_case_bar(made, item);
    else if (strcmp(item->name, "material") == 0) {
        made->material = (make_material){.e = v[0], .g = v[1], .rho = v[2], .shear = v[3]};
    } else if (strcmp(item->name, "axial_factor") == 0)
        made->material.axial = v[0];
    else if (strcmp(item->name, "soft_factor") == 0)
        made->material.soft = v[0];
    else if (strcmp(item->name, "slim") == 0)
        made->material.slim = v[0] != 0.0;
    else if (strcmp(item->name, "arm") == 0) {
        assert_true(tt_frame_add_arm(made->frame, (size_t)v[0], (size_t)v[1]));
    } else if (strcmp(item->name, "mass") == 0) {
        const tt_vec3 offset = {v[2], v[3], v[4]};
        assert_true(tt_frame_add_mass(made->frame, (size_t)v[0], v[1], offset, v + 5));
    } else
        return make_shape_word(item, &made->shape);
    return true;
}

static inline void make_hold(tt_frame *frame, size_t node, const double *v)
{
    bool held[TT_SIX];
    for (int d = 0; d < TT_SIX; d++) held[d] = v[d] != 0.0;
    assert_true(tt_frame_hold(frame, node, held));
}

/* A force beside its node. */
static inline void make_case_hung(make_case *made, const double *v)
{
    const size_t node = (size_t)v[0];
    const tt_vec3 force = {v[1], v[2], v[3]}, off = {v[4], v[5], v[6]};
    const tt_vec3 moment = tt_cross(off, force);
    const double six[TT_SIX] = {force.x, force.y, force.z, moment.x, moment.y, moment.z};
    for (int d = 0; d < TT_SIX; d++) made->force[node][d] += six[d];
    for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) made->lever[node][i][j] += v[1 + i] * v[4 + j];
    }
}

static inline tt_frame_load make_load(const make_case *made)
{
    return (tt_frame_load){.line_force = made->line,
                           .node = (const double(*)[TT_SIX])made->force,
                           .lever = (const double(*)[3][3])made->lever};
}

static inline void make_case_load(make_case *made, const case_item *item)
{
    const double *v = item->value;
    if (strcmp(item->name, "force") == 0) {
        for (int d = 0; d < TT_SIX; d++) made->force[(size_t)v[0]][d] += v[d + 1];
    } else if (strcmp(item->name, "hung") == 0) {
        make_case_hung(made, v);
    } else if (strcmp(item->name, "line") == 0) {
        const size_t bar = (size_t)v[0];
        for (size_t k = made->first[bar] * TT_BAR_POINTS; k < made->first[bar + 1] * TT_BAR_POINTS;
             k++) {
            made->line[k] = (tt_vec3){v[1], v[2], v[3]};
        }
    } else if (strcmp(item->name, "hold") == 0) {
        make_hold(made->frame, (size_t)v[0], v + 1);
    } else if (strcmp(item->name, "spring") == 0) {
        assert_true(tt_frame_spring(made->frame, (size_t)v[0], v + 1));
    } else if (strcmp(item->name, "hold_all") == 0) {
        for (size_t i = 0; i < tt_frame_nodes(made->frame); i++) make_hold(made->frame, i, v);
    } else {
        print_error("unknown input '%s'\n", item->name);
        fail();
    }
}

/* Builds, holds, loads and prepares the frame of a case; free with make_case_free. */
static inline make_case *make_of_case(const test_case *c)
{
    bool used[CASE_ITEMS] = {false};
    make_case *made = calloc(1, sizeof *made);
    assert_non_null(made);
    made->frame = tt_frame_new();
    assert_non_null(made->frame);
    for (int i = 0; i < c->ins; i++) {
        used[i] = make_case_part(made, &c->in[i]);
        used[i] = used[i] || strcmp(c->in[i].name, "least") == 0;
    }
    made->line = calloc(tt_frame_bars(made->frame) * TT_BAR_POINTS, sizeof *made->line);
    made->force = calloc(tt_frame_nodes(made->frame), sizeof *made->force);
    made->lever = calloc(tt_frame_nodes(made->frame), sizeof *made->lever);
    assert_true(made->line && made->force && made->lever);
    for (int i = 0; i < c->ins; i++) {
        if (!used[i]) make_case_load(made, &c->in[i]);
    }
    make_prepare(made->frame);
    return made;
}

static inline void make_case_free(make_case *made)
{
    tt_frame_free(made->frame);
    free(made->line);
    free(made->force);
    free(made->lever);
    free(made);
}

/* --- what a case asks for --- */

/** A place on a bar as written, on the piece of it that it lies in. */
typedef struct {
    size_t bar; /* of the frame */
    double x;   /* fraction of it */
    int force;  /* 0..5 */
} make_place;

/** "start_BAR_K" and its like; false: another word. */
static inline bool make_place_of(const make_case *made, const char *name, make_place *out)
{
    static const struct {
        const char *word;
        double x;
    } words[] = {{"start_%zu_%d", 0.0},
                 {"end_%zu_%d", 1.0},
                 {"middle_%zu_%d", 0.5},
                 {"at375_%zu_%d", 0.375}};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        size_t bar = 0;
        if (sscanf(name, words[i].word, &bar, &out->force) != 2) continue;
        const size_t first = made->first[bar], pieces = made->first[bar + 1] - first;
        const double along = words[i].x * (double)pieces;
        const size_t piece = along < (double)pieces ? (size_t)along : pieces - 1;
        out->bar = first + piece;
        out->x = along - (double)piece;
        return true;
    }
    return false;
}

/** "move_NODE_D" and "reaction_NODE_D" of a state; anything else fails. */
static inline double make_answer(const tt_frame_state *state, const char *name)
{
    size_t i = 0;
    int d = 0;
    if (sscanf(name, "move_%zu_%d", &i, &d) == 2) return state->move[i][d];
    if (sscanf(name, "reaction_%zu_%d", &i, &d) == 2) return state->reaction[i][d];
    print_error("unknown expectation '%s'\n", name);
    fail();
    return 0.0;
}

#endif
