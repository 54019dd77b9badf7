/* num/polygon_inset.c - the part of a polygon that lies at least so far inside, by level strips.
 * Its edge consists of stretches of the edges moved in, and of arcs round the corners that stand
 * out into the area. All of these are drawn; between the levels at which they end or cross they
 * bound trapezia, of which each is inside or outside as a whole: its middle tells. */
#include "num/polygon_shape.h"

#include <math.h>
#include <stdlib.h>

enum { ARC_MOST = 9, LINES_MOST = TT_POLYGON_MOST * (1 + ARC_MOST) };

static const double ARC_STEP = 3.14159265358979323846 / 18.0; /* ten degrees */

typedef struct {
    tt_vec2 low, high; /* low.y < high.y */
} line;

typedef struct {
    const tt_vec2 *corners;
    size_t n;
    double by, tiny;
    line lines[LINES_MOST];
    double levels[2 * LINES_MOST];
    size_t count, level_count;
    tt_plane_moments sum;
} inset;

static void draw(inset *s, tt_vec2 a, tt_vec2 b)
{
    s->levels[s->level_count++] = a.y;
    s->levels[s->level_count++] = b.y;
    if (fabs(a.y - b.y) <= s->tiny) return; /* a level line bounds strips, no side of a trapezium */
    s->lines[s->count++] = a.y < b.y ? (line){a, b} : (line){b, a};
}

static tt_vec2 normal_in(tt_vec2 a, tt_vec2 b)
{
    const double dx = b.x - a.x, dy = b.y - a.y, length = hypot(dx, dy);
    return length > 0.0 ? (tt_vec2){-dy / length, dx / length} : (tt_vec2){0.0, 0.0};
}

static tt_vec2 off(tt_vec2 at, tt_vec2 way, double by)
{
    return (tt_vec2){at.x + by * way.x, at.y + by * way.y};
}

/* Round a corner that stands out into the area, from one inward normal to the next. */
static void draw_arc(inset *s, tt_vec2 corner, tt_vec2 from, tt_vec2 to)
{
    const double turn = atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y);
    if (!(turn < 0.0)) return;
    const double wanted = ceil(-turn / ARC_STEP - 1e-9);
    const int steps = wanted > ARC_MOST ? ARC_MOST : wanted < 1.0 ? 1 : (int)wanted;
    tt_vec2 last = off(corner, from, s->by);
    for (int i = 1; i <= steps; i++) {
        const double c = cos(turn * i / steps), d = sin(turn * i / steps);
        const tt_vec2 way = {c * from.x - d * from.y, d * from.x + c * from.y};
        const tt_vec2 next = off(corner, i < steps ? way : to, s->by);
        draw(s, last, next);
        last = next;
    }
}

/* The edges moved in, and the arcs. Edges without length are passed over. */
static void draw_all(inset *s)
{
    const tt_vec2 *p = s->corners;
    tt_vec2 before = {0.0, 0.0};
    for (size_t i = s->n; i-- > 0 && before.x == 0.0 && before.y == 0.0;)
        before = normal_in(p[i], p[(i + 1) % s->n]);
    for (size_t i = 0; i < s->n; i++) {
        const tt_vec2 a = p[i], b = p[(i + 1) % s->n], in = normal_in(a, b);
        if (in.x == 0.0 && in.y == 0.0) continue;
        draw_arc(s, a, before, in);
        draw(s, off(a, in, s->by), off(b, in, s->by));
        before = in;
    }
}

static int ascending(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* ---- strips ---- */

typedef struct {
    double x, slope; /* at the foot of the strip */
} side;

static int by_place(const void *a, const void *b)
{
    const side *p = a, *q = b;
    if (p->x != q->x) return p->x < q->x ? -1 : 1;
    return (p->slope > q->slope) - (p->slope < q->slope);
}

static size_t sides_of(const inset *s, double low, double high, side *sides)
{
    size_t n = 0;
    const double middle = 0.5 * (low + high);
    for (size_t i = 0; i < s->count; i++) {
        const line *l = &s->lines[i];
        if (l->low.y > middle || l->high.y < middle) continue;
        const double slope = (l->high.x - l->low.x) / (l->high.y - l->low.y);
        sides[n++] = (side){l->low.x + slope * (low - l->low.y), slope};
    }
    qsort(sides, n, sizeof *sides, by_place);
    return n;
}

/* The height above the foot at which the first two neighbours cross, or `height`. */
static double first_crossing(const inset *s, const side *sides, size_t n, double height)
{
    double least = height;
    for (size_t i = 0; i + 1 < n; i++) {
        const double closing = sides[i].slope - sides[i + 1].slope;
        if (closing <= 0.0) continue;
        const double at = (sides[i + 1].x - sides[i].x) / closing;
        if (at < least) least = fmax(at, s->tiny);
    }
    return least;
}

static void add_strip(inset *s, const side *sides, size_t n, double low, double height)
{
    for (size_t i = 0; i + 1 < n; i++) {
        const side *a = &sides[i], *b = &sides[i + 1];
        const double a_top = a->x + a->slope * height, b_top = b->x + b->slope * height;
        const tt_vec2 middle = {0.25 * (a->x + a_top + b->x + b_top), low + 0.5 * height};
        if (b->x + b_top - a->x - a_top <= s->tiny) continue;
        if (tt_polygon_distance(s->corners, s->n, middle) < s->by * (1.0 - 1e-9)) continue;
        const tt_vec2 cell[] = {
            {a->x, low}, {b->x, low}, {b_top, low + height}, {a_top, low + height}};
        const tt_plane_moments part = tt_polygon_moments(cell, 4);
        tt_plane_add(&s->sum, 1.0, &part);
    }
}

static void sweep(inset *s)
{
    side sides[LINES_MOST];
    qsort(s->levels, s->level_count, sizeof *s->levels, ascending);
    for (size_t i = 0; i + 1 < s->level_count; i++) {
        double low = s->levels[i];
        const double high = s->levels[i + 1];
        while (high - low > s->tiny) {
            size_t n = sides_of(s, low, high, sides);
            const double height = first_crossing(s, sides, n, high - low);
            add_strip(s, sides, n, low, height);
            low += height;
        }
    }
}

tt_plane_moments tt_polygon_inset_moments(const tt_vec2 *corners, size_t n, double by)
{
    inset s;
    s.corners = corners;
    s.n = n;
    s.by = by;
    s.tiny = 1e-13 * (tt_polygon_extent(corners, n, (tt_vec2){1.0, 0.0}) +
                      tt_polygon_extent(corners, n, (tt_vec2){0.0, 1.0}));
    s.count = s.level_count = 0;
    s.sum = (tt_plane_moments){0};
    if (n < 3 || n > TT_POLYGON_MOST) return s.sum;
    draw_all(&s);
    sweep(&s);
    return s.sum;
}

/* ---- the moved polygon ---- */

static size_t without_doubles(const tt_vec2 *corners, size_t n, tt_vec2 *out)
{
    const double near = 1e-9 * tt_polygon_perimeter(corners, n);
    size_t m = 0;
    for (size_t i = 0; i < n; i++) {
        const tt_vec2 *last = m ? &out[m - 1] : &corners[n - 1];
        if (hypot(corners[i].x - last->x, corners[i].y - last->y) > near) out[m++] = corners[i];
    }
    return m;
}

bool tt_polygon_moved(const tt_vec2 *corners, size_t n, double by, tt_vec2 *out, size_t *left)
{
    tt_vec2 p[TT_POLYGON_MOST];
    if (n < 3 || n > TT_POLYGON_MOST) return false;
    const size_t m = *left = without_doubles(corners, n, p);
    for (size_t i = 0; i < m; i++) {
        const tt_vec2 a = normal_in(p[(i + m - 1) % m], p[i]), b = normal_in(p[i], p[(i + 1) % m]);
        const double scale = by / (1.0 + a.x * b.x + a.y * b.y);
        if (!(scale < 50.0 * by)) return false;
        out[i] = (tt_vec2){p[i].x + scale * (a.x + b.x), p[i].y + scale * (a.y + b.y)};
    }
    for (size_t i = 0; i < m; i++) {
        const size_t k = (i + 1) % m;
        const double dot =
            (out[k].x - out[i].x) * (p[k].x - p[i].x) + (out[k].y - out[i].y) * (p[k].y - p[i].y);
        if (!(dot > 0.0)) return false;
    }
    return m > 2;
}
