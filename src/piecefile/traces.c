/* piecefile/traces.c - a trace: its corners in the piece file or in a CSV file that it names, local
 * y and z, m at full size; anticlockwise, simple, with an area. */
#include "piecefile/reader.h"

#include <math.h>
#include <string.h>

static const tt_key *trace_key(void)
{
    return tt_key_named(&tt_outline_map, "trace");
}

/* ---- a CSV file becomes the tree that the same corners in the piece file would be ---- */

static tt_node *new_node(tt_reader *reader, tt_node_kind kind, tt_place place)
{
    tt_node *node = tt_pool_take(&reader->trees, 1, sizeof *node);
    if (node) *node = (tt_node){.kind = kind, .place = place, .set = true};
    return node;
}

static bool put(tt_reader *reader, tt_node *parent, tt_node *child)
{
    const bool fits = child && tt_tree_put(parent, &reader->trees, child);
    if (!fits) reader->no_memory = true;
    return fits;
}

static bool blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r';
}

/* One cell of a line, without the blanks round it. */
static tt_node *cell(tt_reader *reader, const char *line, size_t from, size_t to, unsigned number)
{
    while (from < to && blank(line[from])) from++;
    while (to > from && blank(line[to - 1])) to--;
    const tt_place place = {number, (unsigned)from + 1, to > from ? (unsigned)(to - from) : 1};
    tt_node *node = new_node(reader, TT_SCALAR, place);
    if (node) node->text = tt_pool_copy(&reader->trees, line + from, to - from);
    return node && node->text ? node : NULL;
}

static void add_line(tt_reader *reader, tt_node *corners, const char *line, size_t n,
                     unsigned number)
{
    size_t start = 0;
    while (start < n && blank(line[start])) start++;
    if (start == n || line[start] == '#') return;
    const char *comma = memchr(line, ',', n);
    const size_t at = comma ? (size_t)(comma - line) : n;
    if (!comma || memchr(comma + 1, ',', n - at - 1)) {
        const tt_node here = {.place = {number, 1, 1}};
        tt_wrong(reader, TT_D_TRACE_LINE, &here,
                 "a line holds y, z: -20 mm, 15 mm; # begins a remark", "this line is no corner");
        return;
    }
    tt_node *pair = new_node(reader, TT_SEQUENCE, (tt_place){number, 1, 1});
    if (!pair || !put(reader, pair, cell(reader, line, 0, at, number)) ||
        !put(reader, pair, cell(reader, line, at + 1, n, number)) || !put(reader, corners, pair))
        reader->no_memory = true;
}

static tt_node *csv(tt_reader *reader, const char *text, size_t length)
{
    tt_node *corners = new_node(reader, TT_SEQUENCE, (tt_place){1, 1, 1});
    const size_t mark = length >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    unsigned number = 1;
    for (size_t at = mark; corners && at < length; number++) {
        const char *end = memchr(text + at, '\n', length - at);
        const size_t n = end ? (size_t)(end - text) - at : length - at;
        add_line(reader, corners, text + at, n, number);
        at += n + 1;
    }
    if (!corners) reader->no_memory = true;
    return corners;
}

/* ---- corners ---- */

static bool take_corners(tt_reader *reader, const tt_node *node, tt_vec2 *corner)
{
    bool finite = true;
    for (size_t i = 0; i < node->n; i++) {
        const tt_node *pair = node->child[i];
        if (pair->kind != TT_SEQUENCE || pair->n != 2) {
            tt_wrong(reader, TT_D_TRACE, pair, "a corner is [y, z]: [-20 mm, 15 mm]",
                     "this is no corner");
            finite = false;
            continue;
        }
        corner[i].x = tt_take_number(reader, pair->child[0], trace_key());
        corner[i].y = tt_take_number(reader, pair->child[1], trace_key());
        finite = finite && isfinite(corner[i].x) && isfinite(corner[i].y);
    }
    return finite;
}

/* Simple, with an area; the first corner named again at the end is dropped. */
static bool closed(tt_reader *reader, const tt_node *node, tt_vec2 *corner, size_t *n)
{
    size_t one, other;
    if (*n > 3 && hypot(corner[0].x - corner[*n - 1].x, corner[0].y - corner[*n - 1].y) == 0.0)
        --*n;
    if (*n > 3 && tt_polygon_crossing(corner, *n, &one, &other)) {
        tt_wrong(reader, TT_D_TRACE_CROSSES, node->child[other],
                 "go round the outside once, without turning back",
                 "the edge from corner %zu to %zu crosses or touches that from %zu to %zu",
                 other + 1, (other + 1) % *n + 1, one + 1, one + 2);
        return false;
    }
    const double area = tt_polygon_moments(corner, *n).area;
    if (fabs(area) > TT_SHORTEST * TT_SHORTEST) return true;
    tt_wrong(reader, TT_D_TRACE, node, "three corners or more, not in one line",
             "the trace has no area");
    return false;
}

static void turn_round(tt_vec2 *corner, size_t n)
{
    for (size_t i = 0; i < n / 2; i++) {
        const tt_vec2 kept = corner[i];
        corner[i] = corner[n - 1 - i];
        corner[n - 1 - i] = kept;
    }
}

static bool of_tree(tt_reader *reader, const tt_node *node, tt_trace *out)
{
    if (node->n < 3 || node->n > TT_TRACE_MOST) {
        tt_wrong(reader, TT_D_TRACE, node, "trace: [[-20 mm, -15 mm], [25 mm, -15 mm], [0, 30 mm]]",
                 "a trace has 3 to %d corners, this one %zu", TT_TRACE_MOST, node->n);
        return false;
    }
    tt_vec2 *corner = tt_pool_take(&reader->trees, node->n, sizeof *corner);
    size_t n = node->n;
    if (!corner) reader->no_memory = true;
    if (!corner || !take_corners(reader, node, corner) || !closed(reader, node, corner, &n))
        return false;
    out->clockwise = tt_polygon_moments(corner, n).area < 0.0;
    if (out->clockwise) turn_round(corner, n);
    out->n = n;
    out->from = out->to = corner;
    return true;
}

static void look_at(tt_reader *reader, const char *file, const char *text, size_t length)
{
    reader->file = file;
    reader->text = text;
    reader->length = length;
    tt_diags_about(reader->diags, file, text, length);
}

/* Problems in the file are shown there. */
static bool of_file(tt_reader *reader, const tt_node *node, tt_trace *out)
{
    size_t length = 0;
    const char *text = tt_neighbour_text(reader, node, &length);
    if (!text) return false;
    const char *file = reader->file, *whole = reader->text;
    const size_t whole_length = reader->length;
    look_at(reader, node->text, text, length);
    const size_t errors = tt_diags_errors(reader->diags);
    const tt_node *corners = csv(reader, text, length);
    const bool good = corners && !reader->no_memory && tt_diags_errors(reader->diags) == errors &&
                      of_tree(reader, corners, out);
    look_at(reader, file, whole, whole_length);
    return good;
}

bool tt_take_trace(tt_reader *reader, const tt_node *node, tt_outline *out)
{
    tt_trace *trace = tt_pool_take(&reader->trees, 1, sizeof *trace);
    if (!trace) reader->no_memory = true;
    if (!trace) return false;
    if (node->kind == TT_MAPPING || (node->kind == TT_SCALAR && !node->text[0])) {
        tt_wrong_shape(reader, node, trace_key());
        return false;
    }
    const bool good =
        node->kind == TT_SCALAR ? of_file(reader, node, trace) : of_tree(reader, node, trace);
    if (!good) return false;
    *out = tt_outline_of(TT_OUTLINE_TRACE,
                         tt_polygon_extent(trace->from, trace->n, (tt_vec2){1.0, 0.0}),
                         tt_polygon_extent(trace->from, trace->n, (tt_vec2){0.0, 1.0}));
    out->trace = trace;
    return true;
}

/* ---- from one end to the other ---- */

static const tt_trace *box_as_trace(tt_reader *reader, const tt_outline *box)
{
    tt_trace *trace = tt_pool_take(&reader->trees, 1, sizeof *trace);
    tt_vec2 *corner = tt_pool_take(&reader->trees, TT_ROUNDED_CORNERS, sizeof *corner);
    if (!trace || !corner) {
        reader->no_memory = true;
        return NULL;
    }
    tt_rounded_box(box->wide, box->deep, box->corner, corner);
    trace->n = TT_ROUNDED_CORNERS;
    trace->from = trace->to = corner;
    return trace;
}

/* Of a box with rounded corners, the drawn one. */
static const tt_trace *drawn(tt_reader *reader, const tt_outline *outline, bool rounded)
{
    return rounded ? box_as_trace(reader, outline) : outline->trace;
}

static bool stays_simple(tt_reader *reader, const tt_draft *draft, const tt_trace *from,
                         const tt_trace *to)
{
    const tt_trace both = {.n = from->n, .from = from->from, .to = to->to};
    for (int i = 1; i < 8; i++) {
        tt_vec2 corner[TT_TRACE_MOST];
        size_t one, other;
        tt_trace_corners(&both, i / 8.0, corner);
        if (!tt_polygon_crossing(corner, both.n, &one, &other)) continue;
        tt_wrong_key(reader, TT_D_TRACE_CROSSES, draft->node,
                     "begin both traces at the same corner of the limb",
                     "on the way from one trace of `%.80s` to the other its edges cross",
                     draft->name);
        return false;
    }
    return true;
}

static bool corner_to_corner(tt_reader *reader, const tt_draft *draft, const tt_trace *from,
                             const tt_trace *to)
{
    if (from->n == to->n && from->clockwise == to->clockwise)
        return from == to || stays_simple(reader, draft, from, to);
    if (from->n != to->n)
        tt_wrong_key(reader, TT_D_TRACE_CORNERS, draft->node,
                     "a taper goes corner to corner: give both ends the same number",
                     "the traces of `%.80s` have %zu and %zu corners", draft->name, from->n, to->n);
    else
        tt_wrong_key(reader, TT_D_TRACE_CORNERS, draft->node, "go round both the same way",
                     "the traces of `%.80s` go round in opposite ways", draft->name);
    return false;
}

static bool rounded(const tt_outline *outline)
{
    return outline->kind == TT_OUTLINE_BOX && outline->corner > 0.0;
}

void tt_finish_trace(tt_reader *reader, const tt_draft *draft, tt_segment *segment)
{
    const bool box = rounded(&segment->outline) || rounded(&segment->outline_to);
    if (!box && segment->outline.kind != TT_OUTLINE_TRACE) return;
    const tt_trace *from = drawn(reader, &segment->outline, box),
                   *to =
                       segment->outline.trace && segment->outline.trace == segment->outline_to.trace
                           ? from
                           : drawn(reader, &segment->outline_to, box);
    if (!from || !to || (!box && !corner_to_corner(reader, draft, from, to))) return;
    if (tt_diags_errors(reader->diags)) return; /* its torsion is dear, and nobody will ask for it */
    const double wall[2] = {segment->solid ? 0.0 : segment->wall.is,
                            segment->solid ? 0.0 : segment->wall_to.is};
    const tt_trace *trace = tt_trace_new(&reader->piece->pool, from->from, to->to, from->n, wall);
    if (!trace) reader->no_memory = true;
    segment->outline.kind = segment->outline_to.kind = TT_OUTLINE_TRACE;
    segment->outline.trace = segment->outline_to.trace = trace;
    segment->outline_to.t = 1.0;
}
