/* A piece written out and read again is the same piece, record for record; what is written is SI,
 * and written again it does not change. Over every piece file of tests and examples. */
#include "piece/works.h"
#include "pieces.h"

#include "base/text.h"

#include <dirent.h>
#include <math.h>

static const tt_changes rewritable = {.rewritable = 1};

static int gather(void *user, const char *bytes, size_t n)
{
    tt_text_add(user, bytes, n);
    return 0;
}

static char *written(const tt_piece *piece)
{
    tt_text text = {0};
    assert_int_equal(tt_piece_write(piece, gather, &text), TT_OK);
    char *copy = malloc(text.n + 1);
    assert_non_null(copy);
    memcpy(copy, tt_text_of(&text), text.n + 1);
    tt_text_clear(&text);
    return copy;
}

/* ---- every field of every record in words: seventeen digits tell two doubles apart ----------- */

static void word(tt_text *out, const char *text)
{
    tt_text_format(out, " %s", text ? text : "(none)");
}

static void number(tt_text *out, double value)
{
    tt_text_format(out, " %.17g", value);
}

static void numbers(tt_text *out, const double *value, size_t n)
{
    for (size_t i = 0; i < n; i++) number(out, value[i]);
}

static void index_of(tt_text *out, size_t i)
{
    if (i == TT_NONE)
        tt_text_put(out, " -");
    else
        tt_text_format(out, " %zu", i);
}

static void vector(tt_text *out, tt_vec3 v)
{
    numbers(out, (const double[]){v.x, v.y, v.z}, 3);
}

/* Of an origin what it is and why; its place and its units differ. */
static void origin(tt_text *out, const tt_piece *piece, unsigned i)
{
    const tt_origin *from = &piece->origins.at[i];
    tt_text_format(out, " from %d", from->kind == TT_ORIGIN_SET ? TT_ORIGIN_FILE : from->kind);
    word(out, from->key);
    word(out, from->why);
}

static void given(tt_text *out, const tt_piece *piece, const tt_given *g)
{
    numbers(out, (const double[]){g->is, g->low, g->high}, 3);
    origin(out, piece, g->origin);
}

static void outline(tt_text *out, const tt_outline *o)
{
    tt_text_format(out, " outline %d", (int)o->kind);
    numbers(out, (const double[]){o->wide, o->deep}, 2);
}

static void member(tt_text *out, const tt_member *m)
{
    tt_text_format(out, " member %d", (int)m->form);
    index_of(out, m->metal);
    numbers(out, (const double[]){m->od, m->wall, m->od_to, m->wall_to, m->loss, m->wall_factor},
            6);
}

static void segment(tt_text *out, const tt_piece *piece, const tt_segment *s)
{
    word(out, s->name);
    index_of(out, s->from);
    index_of(out, s->to);
    index_of(out, s->limb);
    index_of(out, s->place_in_limb);
    index_of(out, s->alloy);
    vector(out, s->faces);
    outline(out, &s->outline);
    outline(out, &s->outline_to);
    given(out, piece, &s->wall);
    given(out, piece, &s->wall_to);
    given(out, piece, &s->surface);
    given(out, piece, &s->extra);
    given(out, piece, &s->casting_quality);
    numbers(out, (const double[]){s->turn, s->turn_to, s->neck_quality, s->drag}, 4);
    tt_text_format(out, " %d %d", s->solid, (int)s->wind);
    word(out, s->drag_because);
    member(out, &s->armature);
}

static void head(tt_text *out, const tt_piece *p)
{
    word(out, p->name);
    word(out, p->revision);
    word(out, p->date);
    word(out, p->basis);
    word(out, p->edition);
    tt_text_format(out, " %d %d %d", p->risk, (int)p->inspection, (int)p->report);
    numbers(out, (const double[]){p->scale, p->height}, 2);
    vector(out, p->faces);
    for (size_t i = 0; i < p->metals.n; i++) {
        const tt_metal *metal = &p->metals.at[i];
        word(out, metal->name);
        for (size_t k = 0; k < TT_P_COUNT; k++) number(out, metal->fact[k].value);
    }
    for (size_t i = 0; i < p->points.n; i++) {
        word(out, p->points.at[i].name);
        vector(out, p->points.at[i].at);
    }
    for (size_t i = 0; i < p->limbs.n; i++) {
        word(out, p->limbs.at[i].name);
        index_of(out, p->limbs.at[i].first);
        index_of(out, p->limbs.at[i].count);
        index_of(out, p->limbs.at[i].joins);
    }
    for (size_t i = 0; i < p->arms.n; i++) {
        index_of(out, p->arms.at[i].a);
        index_of(out, p->arms.at[i].b);
    }
}

static void burdens(tt_text *out, const tt_piece *p)
{
    for (size_t i = 0; i < p->lumps.n; i++) {
        const tt_lump *lump = &p->lumps.at[i];
        word(out, lump->name);
        index_of(out, lump->at);
        given(out, p, &lump->mass);
        vector(out, lump->offset);
        numbers(out, (const double[]){lump->wind_area, lump->drag}, 2);
        numbers(out, lump->inertia, 3);
    }
    for (size_t i = 0; i < p->stands.n; i++) {
        index_of(out, p->stands.at[i].at);
        tt_text_format(out, " held %d", (int)p->stands.at[i].held);
        for (size_t k = 0; k < p->stands.at[i].sole_n; k++) vector(out, p->stands.at[i].sole[k]);
    }
    for (size_t i = 0; i < p->loads.n; i++) {
        const tt_own_load *load = &p->loads.at[i];
        word(out, load->name);
        tt_text_format(out, " %d", (int)load->kind);
        index_of(out, load->at);
        index_of(out, load->along);
        vector(out, load->force);
        vector(out, load->moment);
        vector(out, load->line);
        numbers(out, load->between, 2);
    }
    for (size_t i = 0; i < p->combinations.n; i++) {
        const tt_own_combination *own = &p->combinations.at[i];
        word(out, own->name);
        tt_text_format(out, " %d", own->level);
        for (size_t k = 0; k < own->terms; k++) {
            word(out, own->term[k].name);
            number(out, own->term[k].factor);
        }
    }
}

static void site(tt_text *out, const tt_piece *p)
{
    const tt_site *s = &p->site;
    const tt_site_wind *w = &s->wind;
    const tt_given *const all[] = {&s->base_height, &s->damping,          &w->basic_speed,
                                   &w->orography,   &w->direction_factor, &w->season_factor,
                                   &w->air,         &w->directionality,   &w->elevation,
                                   &p->limits.mass, &p->limits.sway,      &p->limits.frequency,
                                   &p->limits.use};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) given(out, p, all[i]);
    tt_text_format(out, " %d %d %d %d %d", s->indoors, s->open_to_public, w->given, w->ruled_out,
                   w->exposure);
    word(out, w->none_because);
}

static void joints(tt_text *out, const tt_piece *p)
{
    const tt_works *w = p->works;
    tt_text_format(out, " seams %d %d", (int)w->seams, w->seams_said);
    for (size_t i = 0; i < w->seam.n; i++) {
        const tt_seam *seam = &w->seam.at[i];
        index_of(out, seam->at);
        index_of(out, seam->between[0]);
        index_of(out, seam->between[1]);
        tt_text_format(out, " %d", (int)seam->kind);
        given(out, p, &seam->efficiency);
        word(out, seam->filler);
        index_of(out, seam->metal);
        word(out, seam->because);
    }
    for (size_t i = 0; i < w->splices.n; i++) {
        const tt_splice *s = &w->splices.at[i];
        index_of(out, s->at);
        index_of(out, s->between[0]);
        index_of(out, s->between[1]);
        tt_text_format(out, " splice %d %d", (int)s->kind, s->bolts);
        numbers(out,
                (const double[]){s->throat, s->insert, s->pin, s->diameter, s->thickness,
                                 s->bolt_circle, s->hole, s->edge},
                8);
        word(out, s->bolt);
        member(out, &s->inner);
    }
    for (size_t i = 0; i < w->ties.n; i++) {
        const tt_tie *tie = &w->ties.at[i];
        index_of(out, tie->at);
        tt_text_format(out, " tie %d %d", (int)tie->kind, tie->count);
        numbers(out, (const double[]){tie->throat, tie->length}, 2);
    }
    for (size_t i = 0; i < w->holes.n; i++) {
        const tt_hole *hole = &w->holes.at[i];
        index_of(out, hole->segment);
        tt_text_format(out, " hole %d %d", hole->in_armature, hole->has_angle);
        numbers(out, (const double[]){hole->x, hole->across, hole->angle}, 3);
    }
    for (size_t i = 0; i < w->rack.n; i++) {
        member(out, &w->rack.at[i].member);
        tt_text_format(out, " %d", w->rack.at[i].count);
        number(out, w->rack.at[i].length);
    }
}

static void base(tt_text *out, const tt_base *b)
{
    tt_text_format(out, " base %d %d %d %d %d %d %d %d %d", b->given, b->has_plate, b->has_anchors,
                   b->has_concrete, b->has_pedestal, b->has_footing, b->anchors.in,
                   b->concrete.uncracked, b->pedestal.material);
    numbers(out, (const double[]){b->plate.wide,           b->plate.deep,
                                  b->plate.thickness,      b->grout,
                                  b->anchors.diameter,     b->anchors.embedment,
                                  b->anchors.standoff,     b->anchors.tested_tension,
                                  b->anchors.tested_shear, b->concrete.strength,
                                  b->concrete.thickness,   b->concrete.edge,
                                  b->pedestal.wide,        b->pedestal.deep,
                                  b->pedestal.high,        b->footing.wide,
                                  b->footing.deep,         b->footing.high,
                                  b->footing.bearing,      b->footing.friction},
            20);
    word(out, b->anchors.rod);
    word(out, b->anchors.grade);
    word(out, b->anchors.tested_by);
    for (size_t i = 0; i < b->anchors.n; i++) vector(out, b->anchors.at[i]);
}

static void weighings(tt_text *out, const tt_piece *p)
{
    const tt_works *w = p->works;
    for (size_t i = 0; i < w->panels.n; i++) {
        word(out, w->panels.at[i].name);
        for (size_t k = 0; k < w->panels.at[i].parts; k++) {
            index_of(out, w->panels.at[i].part[k].segment);
            number(out, w->panels.at[i].part[k].share);
        }
    }
    for (size_t i = 0; i < w->weighings.n; i++) {
        const tt_weighing *one = &w->weighings.at[i];
        tt_text_format(out, " weighed %d %d", (int)one->what, one->wax);
        index_of(out, one->index);
        given(out, p, &one->mass);
        given(out, p, &one->tare);
        given(out, p, &one->gates);
        given(out, p, &one->wax_density);
        given(out, p, &one->not_in_wax);
        word(out, one->day);
        word(out, one->by);
        for (size_t k = 0; k < one->hangs; k++) {
            index_of(out, one->hang[k].at);
            numbers(out, one->hang[k].plumb, 2);
        }
    }
    tt_text_format(out, " %d %d", w->form, w->sealed);
    word(out, w->handling);
}

static char *all_of(const tt_piece *p)
{
    tt_text out = {0};
    head(&out, p);
    tt_text_put(&out, "\n");
    for (size_t i = 0; i < p->segments.n; i++) segment(&out, p, &p->segments.at[i]);
    tt_text_put(&out, "\n");
    burdens(&out, p);
    site(&out, p);
    tt_text_put(&out, "\n");
    joints(&out, p);
    base(&out, &p->works->base);
    weighings(&out, p);
    tt_text_put(&out, "\n");
    for (size_t i = 0; i < p->origins.n; i++) {
        const char *key = p->origins.at[i].key;
        if (!key || strcmp(key, "scale") != 0) origin(&out, p, (unsigned)i); /* --scale adds one */
    }
    assert_false(out.failed);
    return out.at;
}

/* Shows where. */
static void differ(const char *name, const char *before, const char *after)
{
    size_t i = 0;
    while (before[i] && before[i] == after[i]) i++;
    const size_t from = i > 60 ? i - 60 : 0;
    fail_msg("%s is another piece:\n%.120s\n%.120s", name, before + from, after + from);
}

static void same_again(const char *name, tt_piece *piece)
{
    char *text = written(piece), *before = all_of(piece);
    tt_piece *again = tt_test_piece_of(text, &rewritable);
    char *second = written(again), *after = all_of(again);
    if (strcmp(before, after) != 0) differ(name, before, after);
    assert_string_equal(text, second);
    free(before);
    free(after);
    free(text);
    free(second);
    tt_piece_free(again);
    tt_piece_free(piece);
}

static size_t folder(const char *name)
{
    char path[400];
    snprintf(path, sizeof path, "%s/%s", TT_ROOT, name);
    DIR *in = opendir(path);
    assert_non_null(in);
    size_t n = 0;
    for (struct dirent *entry; (entry = readdir(in)) != NULL;) {
        const char *dot = strrchr(entry->d_name, '.');
        if (!dot || strcmp(dot, ".yaml") != 0) continue;
        snprintf(path, sizeof path, "%s/%.200s", name, entry->d_name);
        same_again(path, tt_test_piece(path, &rewritable));
        n++;
    }
    closedir(in);
    return n;
}

static void every_piece(void **state)
{
    (void)state;
    assert_true(folder("tests/pieces") >= 6);
    assert_true(folder("tests/pieces/reference") >= 10);
    assert_true(folder("examples") >= 2);
}

static void changed(void **state)
{
    (void)state;
    const char *const sets[] = {"limbs/neck/wall=7", "segments/bill/wall={is: 3, low: 2.5}",
                                "site/wind/basic_speed=51.4 mph", "weighed=[]"};
    same_again(
        "changed",
        tt_test_piece("tests/pieces/every-key.yaml",
                      &(tt_changes){.set = sets, .sets = 4, .scale = "2.5", .rewritable = 1}));
}

/* Quantities in SI, words in quotes only where they must be, names that look like lengths left. */
static void words(void **state)
{
    (void)state;
    static const char text[] =
        "piece: \"A: Leg # 1\"\nunits: mm\nrevision: '-'\nbronze: {alloy: C87300, wall: 5}\n"
        "limbs: {leg: [[3, 0, 0, 0, 150], [4 in, 0, 0, 1/3 ft, 200]]}\n"
        "stands: [{at: 3, held: {is: fixed, because: \"say \\\"so\\\"\"}}]\n";
    tt_piece *piece = tt_test_piece_of(text, &rewritable);
    char *out = written(piece);
    assert_non_null(strstr(out, "piece: \"A: Leg # 1\"\n"));
    assert_non_null(strstr(out, "revision: \"-\"\n"));
    assert_non_null(strstr(out, "wall: 0.005 m"));
    assert_non_null(strstr(out, "[3, 0 m, 0 m, 0 m, 0.15 m]"));
    assert_non_null(strstr(out, "[4 in, 0 m, 0 m, 0.1016 m, 0.2 m]"));
    assert_non_null(strstr(out, "because: \"say \\\"so\\\"\""));
    assert_null(strstr(out, "surface")); /* no default is written as if it had been said */
    free(out);
    same_again("words", piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_piece), cmocka_unit_test(changed),
                                       cmocka_unit_test(words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
