/* build/tabulate.c - from the tables of data/ to one C file of const arrays, in SI.
 *     tabulate OUT.c TABLE.csv ...
 * Refuses what data/README.md calls a fault, each with the file and line, and then writes nothing.
 * A program of the build alone: it prints, and its strings are lent from the files it holds. */
#include "build/tabulate.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    const char *id, *unit;
    double least, most;
} properties[PROPERTIES] = {
#define TT_PROPERTY(id, words, unit, least, most) {#id, unit, least, most},
#include "catalogue/properties.def"
#undef TT_PROPERTY
};

static const struct {
    const char *written, *si;
    double times, over;
} units[] = {
    {"", "", 1, 1},           {"MPa", "Pa", 1e6, 1},  {"GPa", "Pa", 1e9, 1},
    {"kg/m3", "kg/m3", 1, 1}, {"1/K", "1/K", 1, 1},   {"mm", "m", 1, 1000},
    {"in", "m", 254, 10000},  {"kg/m", "kg/m", 1, 1}, {"lb/ft", "kg/m", 0.45359237, 0.3048},
};

static const struct {
    const char *word, *id;
} marks[] = {{"read", "TT_READ"},
             {"from memory", "TT_FROM_MEMORY"},
             {"common practice", "TT_COMMON_PRACTICE"}};

/* What a metal must have to be used at all. */
static const int every_metal[] = {P_DENSITY, P_YIELD, P_ULTIMATE, P_POISSON};
static const int every_cast[] = {P_YOUNG_LOW, P_YOUNG_HIGH, P_LEAD, P_SEAM};
static const int every_steel[] = {P_YOUNG_EU, P_YOUNG_US, P_EXPANSION};

#define PI 3.14159265358979323846

/* --- complaints --- */

__attribute__((format(printf, 3, 4))) static void complain(tables *t, place at, const char *format,
                                                           ...)
{
    va_list args;
    va_start(args, format);
    fprintf(stderr, "%s:%u: ", at.file, at.line);
    vfprintf(stderr, format, args);
    fputc('\n', stderr);
    va_end(args);
    t->faults++;
}

static bool same(const char *a, const char *b)
{
    return strcmp(a, b) == 0;
}

/* --- fields into values --- */

static double number(tables *t, const char *field, const char *what)
{
    char *end = NULL;
    const double value = strtod(field, &end);
    if (end != field && !*end && isfinite(value)) return value;
    complain(t, t->at, "%s '%s' is not a number", what, field);
    return NAN;
}

/* A number in a written unit, as SI; `si` is the unit that is due. */
static double measure(tables *t, const char *field, const char *unit, const char *si,
                      const char *what)
{
    const double value = number(t, field, what);
    for (size_t i = 0; i < COUNT(units); i++) {
        if (same(units[i].written, unit) && same(units[i].si, si))
            return value * units[i].times / units[i].over;
    }
    if (!*unit)
        complain(t, t->at, "%s has no unit", what);
    else
        complain(t, t->at, "%s: unit '%s' is not one of %s", what, unit,
                 *si ? si : "a bare number");
    return NAN;
}

/* document, edition, place, mark: the last four fields from `first` on. */
static source cite(tables *t, size_t first)
{
    source s = {t->field[first], t->field[first + 1], t->field[first + 2], NULL};
    const char *mark = t->field[first + 3];
    if (!*s.document) complain(t, t->at, "no source: the document is missing");
    for (size_t i = 0; i < COUNT(marks); i++) {
        if (same(marks[i].word, mark)) s.mark = marks[i].id;
    }
    if (!*mark)
        complain(t, t->at, "no mark: read, from memory or common practice is due");
    else if (!s.mark)
        complain(t, t->at, "mark '%s' is not read, from memory or common practice", mark);
    return s;
}

/* One of two words; false for the second and for a complaint. */
static bool choice(tables *t, const char *field, const char *yes, const char *no)
{
    if (same(field, yes)) return true;
    if (!same(field, no)) complain(t, t->at, "'%s' is not %s or %s", field, yes, no);
    return false;
}

/* --- metals --- */

static void require(tables *t, const metal *m, const int *must, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        if (!m->figure[must[i]].at.file) {
            complain(t, m->at, "%s has no %s, which it must have", m->name, properties[must[i]].id);
        }
    }
}

/* Figures of one metal that contradict each other. */
static void compare(tables *t, const metal *m)
{
    const figure *f = m->figure;
    if (f[P_YIELD].value > f[P_ULTIMATE].value)
        complain(t, f[P_YIELD].at, "%s: YIELD over ULTIMATE", m->name);
    if (f[P_YOUNG_LOW].value > f[P_YOUNG_HIGH].value) {
        complain(t, f[P_YOUNG_LOW].at, "%s: YOUNG_LOW over YOUNG_HIGH", m->name);
    }
    if (f[P_LEAD].value > 0.01 && f[P_SEAM].value > 0.0) {
        complain(t, f[P_SEAM].at, "%s: SEAM over 0 with more than 1 %% lead", m->name);
    }
}

static metal *push_metal(tables *t, const char *form, place at)
{
    if (t->n_metals == METALS) {
        complain(t, at, "more than %d metals", METALS);
        return NULL;
    }
    metal *m = &t->metals[t->n_metals++];
    *m = t->base;
    m->form = form;
    m->at = at;
    for (const metal *other = t->metals; other < m; other++) {
        if (same(other->name, m->name) && same(other->form, form) && other->steel == m->steel) {
            complain(t, at, "%s%s%s a second time, first at %s:%u", m->name, *form ? ", " : "",
                     form, other->at.file, other->at.line);
        }
    }
    return m;
}

/* A metal without form rows stands by itself. */
static void end_metal(tables *t)
{
    if (t->reading && !t->formed) push_metal(t, "", t->base.at);
    t->reading = false;
}

static void read_metal(tables *t)
{
    end_metal(t);
    const char *const *f = t->field;
    t->base = (metal){.name = f[1], .title = f[2], .basis = f[3], .form = "", .at = t->at};
    if (!*f[1] || !*f[2] || !*f[3])
        complain(t, t->at, "a metal needs a name, a title and a basis of yield");
    t->base.steel = choice(t, f[4], "steel", "cast");
    t->base.stainless = choice(t, f[5], "yes", "no");
    t->reading = true;
    t->formed = false;
}

static void read_form(tables *t)
{
    if (!t->reading) {
        complain(t, t->at, "a form before any metal");
        return;
    }
    if (!*t->field[1]) complain(t, t->at, "a form without words");
    if (push_metal(t, t->field[1], t->at)) t->formed = true;
}

static int property_of(const char *id)
{
    for (int i = 0; i < PROPERTIES; i++) {
        if (same(properties[i].id, id)) return i;
    }
    return -1;
}

static void read_figure(tables *t)
{
    const char *id = t->field[1];
    const int p = property_of(id);
    if (p < 0 || !t->reading) {
        if (p < 0)
            complain(t, t->at, "unknown property '%s'", id);
        else
            complain(t, t->at, "a figure before any metal");
        return;
    }
    metal *m = t->formed ? &t->metals[t->n_metals - 1] : &t->base;
    figure *f = &m->figure[p];
    if (f->at.file) {
        complain(t, t->at, "%s: %s a second time, first at %s:%u", m->name, id, f->at.file,
                 f->at.line);
        return;
    }
    f->at = t->at;
    f->value = measure(t, t->field[2], t->field[3], properties[p].unit, id);
    f->source = cite(t, 4);
    if (f->value < properties[p].least || f->value > properties[p].most) {
        complain(t, t->at, "%s: %s of %s %s is outside the plausible band, %g to %g %s", m->name,
                 id, t->field[2], t->field[3], properties[p].least, properties[p].most,
                 properties[p].unit);
    }
}

/* --- stock --- */

/* A printed mass against area x density, within 2 %: carbon 7850, stainless 7930 to 8000 kg/m3. */
static void weigh(tables *t, const item *s, bool stainless)
{
    const double bore = s->wall > 0.0 ? s->od - 2.0 * s->wall : 0.0;
    const double area = PI / 4.0 * (s->od * s->od - bore * bore);
    const double light = area * (stainless ? 7930.0 : 7850.0),
                 heavy = area * (stainless ? 8000.0 : 7850.0);
    if (s->mass < 0.98 * light || s->mass > 1.02 * heavy) {
        complain(t, t->at, "%s: mass of %.4g kg/m against area x density %.4g kg/m", s->name,
                 s->mass, light);
    }
}

static void seek_twin(tables *t, const item *s)
{
    for (const item *other = t->stock; other < s; other++) {
        if (!same(other->name, s->name) || !same(other->form, s->form)) continue;
        if (same(other->series, s->series)) {
            complain(t, s->at, "%s of %s a second time, first at %s:%u", s->name, s->series,
                     other->at.file, other->at.line);
        } else if (other->od < s->od || other->od > s->od || other->wall < s->wall ||
                   other->wall > s->wall) {
            complain(t, s->at, "%s has another size than at %s:%u", s->name, other->at.file,
                     other->at.line);
        }
    }
}

static void read_stock(tables *t)
{
    if (t->n_stock == STOCK) {
        complain(t, t->at, "more than %d sizes of stock", STOCK);
        return;
    }
    const char *const *f = t->field;
    const bool bar = same(f[0], "bar");
    item *s = &t->stock[t->n_stock++];
    *s = (item){.name = f[1], .series = f[2], .form = f[0], .at = t->at};
    if (!*s->name || !*s->series) complain(t, t->at, "stock needs a name and a series");
    s->od = measure(t, f[3], f[5], "m", "diameter");
    if (!bar)
        s->wall = measure(t, f[4], f[5], "m", "wall");
    else if (*f[4])
        complain(t, t->at, "%s: a bar has no wall", s->name);
    if (s->od <= 0.0) complain(t, t->at, "%s: diameter is not over 0", s->name);
    if (!bar && s->wall <= 0.0) complain(t, t->at, "%s: wall is not over 0", s->name);
    if (s->wall >= s->od / 2.0)
        complain(t, t->at, "%s: wall is not under half the diameter", s->name);
    const bool stainless = (!bar || *f[8]) && choice(t, f[8], "stainless", "carbon");
    if (*f[6]) {
        s->mass = measure(t, f[6], f[7], "kg/m", "mass");
        weigh(t, s, stainless);
    }
    s->source = cite(t, 9);
    seek_twin(t, s);
}

/* --- reading --- */

static const struct {
    const char *word;
    size_t fields;
    void (*read)(tables *t);
} kinds[] = {
    {"metal", 6, read_metal}, {"form", 2, read_form},  {"figure", 8, read_figure},
    {"tube", 13, read_stock}, {"bar", 13, read_stock},
};

/* One field, unquoted in place; returns where the next begins, NULL behind the last. */
static char *split_field(char *at, const char **field)
{
    const bool quoted = *at == '"';
    *field = quoted ? ++at : at;
    char *to = at;
    while (*at && (quoted ? *at != '"' || *++at == '"' : *at != ',')) *to++ = *at++;
    char *next = *at == ',' ? at + 1 : NULL;
    *to = '\0';
    return next;
}

static void read_line(tables *t, char *line)
{
    line[strcspn(line, "\r")] = '\0';
    if (!*line || *line == '#') return;
    t->n_fields = 0;
    while (line && t->n_fields < FIELDS) line = split_field(line, &t->field[t->n_fields++]);
    for (size_t i = 0; i < COUNT(kinds); i++) {
        if (!same(kinds[i].word, t->field[0])) continue;
        if (t->n_fields == kinds[i].fields && !line)
            kinds[i].read(t);
        else
            complain(t, t->at, "a %s row has %zu fields", kinds[i].word, kinds[i].fields);
        return;
    }
    complain(t, t->at, "unknown kind of row '%s'", t->field[0]);
}

/* The whole file, ended by a zero; NULL when it cannot be read. */
static char *load(const char *path)
{
    FILE *in = fopen(path, "rb");
    char *text = in ? calloc(1, LONGEST_TABLE + 1) : NULL;
    const size_t n = text ? fread(text, 1, LONGEST_TABLE, in) : 0;
    const bool whole = in && n > 0 && n < LONGEST_TABLE && !ferror(in);
    if (in) fclose(in);
    if (whole) return text;
    free(text);
    return NULL;
}

static void read_table(tables *t, const char *path)
{
    t->at = (place){path, 0};
    char *line = t->n_files < FILES ? load(path) : NULL;
    if (!line) {
        complain(t, t->at, "cannot be read");
        return;
    }
    t->text[t->n_files++] = line;
    while (line) {
        char *end = strchr(line, '\n');
        if (end) *end++ = '\0';
        t->at.line++;
        read_line(t, line);
        line = end;
    }
    end_metal(t);
}

static void check_metals(tables *t)
{
    for (const metal *m = t->metals; m < t->metals + t->n_metals; m++) {
        require(t, m, every_metal, COUNT(every_metal));
        if (m->steel)
            require(t, m, every_steel, COUNT(every_steel));
        else
            require(t, m, every_cast, COUNT(every_cast));
        compare(t, m);
    }
}

/* --- the run --- */

static int tabulate(tables *t, int n, char **paths)
{
    for (int i = 1; i < n; i++) read_table(t, paths[i]);
    check_metals(t);
    if (!t->n_metals || !t->n_stock) {
        fputs("the tables hold no metal or no stock\n", stderr);
        return EXIT_FAILURE;
    }
    if (t->faults) {
        fprintf(stderr, "%u fault%s: nothing written\n", t->faults, t->faults == 1 ? "" : "s");
        return EXIT_FAILURE;
    }
    if (tt_tables_write(t, paths[0])) return EXIT_SUCCESS;
    fprintf(stderr, "%s: cannot be written\n", paths[0]);
    return EXIT_FAILURE;
}

int main(int argc, char **argv)
{
    if (argc < 3) {
        fputs("usage: tabulate OUT.c TABLE.csv ...\n", stderr);
        return EXIT_FAILURE;
    }
    tables *t = calloc(1, sizeof *t);
    if (!t) return EXIT_FAILURE;
    const int outcome = tabulate(t, argc - 1, argv + 1);
    for (size_t i = 0; i < t->n_files; i++) free(t->text[i]);
    free(t);
    return outcome;
}
