/* compose/members.c - rows of the tables of tubes, pipes, boxes, bars, flats and rods. */
#include "compose/parts.h"
#include "compose/stock.h"

#include <string.h>

/* kg/m3, general engineering figures (FROM MEMORY), the heavy end for stainless steel, of which
 * some grades have 7800 or 7900: for the printed lists alone, a piece is weighed with its own
 * grade's. */
static const double carbon = 7850.0, stainless = 8000.0;

static const char *row_name(const tt_stock_table *table, const tt_data *own, size_t i)
{
    const tt_stock *stock = tt_stock_at(own, i);
    return stock && strcmp(stock->form, table->form) == 0 ? stock->name : NULL;
}

static const tt_row_place *row_place(const tt_data *own, size_t i)
{
    return &tt_stock_at(own, i)->at;
}

static const double inch = 0.0254, pound_a_foot = 0.45359237 / 0.3048;

static const char *length_of(const tt_notes *notes, double length)
{
    return notes->inches ? tt_report_text(notes->out, "%.4g", length / inch)
                         : tt_report_text(notes->out, "%.5g mm", length * 1000.0);
}

static double mass_of(const tt_stock *stock)
{
    return tt_stock_area(stock) * (stock->stainless ? stainless : carbon);
}

/* ---- a row of the list ---- */

static const char *wall(const tt_notes *notes, const tt_stock *stock)
{
    return stock->wall > 0.0 ? length_of(notes, stock->wall) : "solid";
}

/* As printed; in brackets as computed. */
static const char *mass(const tt_notes *notes, const tt_stock *stock)
{
    const double unit = notes->inches ? pound_a_foot : 1.0;
    const char *name = notes->inches ? "" : " kg/m"; /* of inches the head of the column says it */
    return stock->mass > 0.0 ? tt_report_text(notes->out, "%.4g%s", stock->mass / unit, name)
                             : tt_report_text(notes->out, "(%.3g%s)", mass_of(stock) / unit, name);
}

static const char *area(const tt_notes *notes, double of)
{
    return notes->inches ? tt_report_text(notes->out, "%.4g", of / (inch * inch))
                         : tt_report_text(notes->out, "%.4g mm2", of * 1e6);
}

/* Of a flat or a box on edge. */
static const char *modulus(const tt_notes *notes, const tt_stock *stock)
{
    const double of = tt_stock_inertia(stock, stock->deep > 0.0) / (stock->od / 2.0);
    return tt_report_text(notes->out, "%.4g", of / (inch * inch * inch));
}

static void row(const tt_stock_table *table, const tt_data *own, size_t i, tt_notes *notes,
                const char **cells)
{
    const tt_stock *stock = tt_stock_at(own, i);
    const bool rod = stock->pitch > 0.0, box = stock->deep > 0.0 && stock->wall > 0.0;
    size_t n = 0;
    cells[n++] = stock->name;
    cells[n++] = stock->series;
    cells[n++] = length_of(notes, stock->od);
    if (stock->deep > 0.0) cells[n++] = length_of(notes, stock->deep);
    if (stock->deep <= 0.0 || box)
        cells[n++] = rod ? length_of(notes, stock->pitch) : wall(notes, stock);
    cells[n++] = rod ? area(notes, stock->area) : mass(notes, stock);
    if (notes->inches && !rod) cells[n++] = modulus(notes, stock);
    cells[n++] = tt_note(notes, &stock->source);
    (void)table;
}

/* ---- a row whole ---- */

typedef struct {
    tt_report *out;
    const char *source, *note;
} sheet;

static void put(const sheet *s, const char *words, double si, double metric, const char *unit,
                double imperial, const char *inch_unit)
{
    const char *cells[] = {words, tt_report_text(s->out, "%.4g %s", si * metric, unit),
                           tt_report_text(s->out, "%.4g %s", si * imperial, inch_unit), s->source};
    tt_report_row(s->out, cells);
}

static void length(const sheet *s, const char *words, double value)
{
    if (value > 0.0) put(s, words, value, 1e3, "mm", 1.0 / 0.0254, "in");
}

static void sizes(const sheet *s, const tt_stock *stock)
{
    const bool flat = stock->deep > 0.0, rod = stock->pitch > 0.0;
    length(s, flat ? "width" : rod ? "nominal diameter" : "outside diameter", stock->od);
    length(s, stock->wall > 0.0 ? "depth" : "thickness", stock->deep);
    length(s, "wall", stock->wall);
    length(s, "outside corner", stock->corner);
    length(s, "inside corner", stock->corner_in);
    length(s, "pitch", stock->pitch);
    if (stock->area > 0.0)
        put(s, "stress area", stock->area, 1e6, "mm2", 1.0 / (inch * inch), "in2");
    if (stock->mass > 0.0)
        put(s, "mass per length", stock->mass, 1.0, "kg/m", 0.3048 / 0.45359237, "lb/ft");
}

static void bending(const sheet *s, const tt_stock *stock, bool about_deep, const char *words[2])
{
    const double inertia = tt_stock_inertia(stock, about_deep);
    const double across = stock->deep > 0.0 && !about_deep ? stock->deep : stock->od;
    put(s, words[0], inertia, 1e8, "cm4", 1.0 / (inch * inch * inch * inch), "in4");
    put(s, words[1], inertia / (across / 2.0), 1e6, "cm3", 1.0 / (inch * inch * inch), "in3");
}

static void computed(const sheet *s, const tt_stock *stock)
{
    static const char *round[] = {"second moment", "section modulus"},
                      *upright[] = {"second moment, on edge", "section modulus, on edge"},
                      *level[] = {"second moment, laid flat", "section modulus, laid flat"};
    if (stock->pitch > 0.0) return;
    put(s, "area", tt_stock_area(stock), 1e4, "cm2", 1.0 / (inch * inch), "in2");
    if (stock->deep > 0.0 && stock->deep < stock->od) {
        bending(s, stock, true, upright);
        bending(s, stock, false, level);
    } else {
        bending(s, stock, false, round);
    }
    if (stock->mass <= 0.0)
        put(s, "mass per length", mass_of(stock), 1.0, "kg/m", 0.3048 / 0.45359237, "lb/ft");
}

static void whole(const tt_stock_table *table, const tt_data *own, size_t i, tt_notes *notes)
{
    static const tt_column all[] = {
        {"figure", TT_LEFT}, {"value", TT_RIGHT}, {"in inch units", TT_RIGHT}, {"source", TT_LEFT}};
    const tt_stock *stock = tt_stock_at(own, i);
    tt_report *out = notes->out;
    (void)table;
    const char *steel = stock->pitch > 0.0 ? ""
                        : stock->stainless ? ", stainless steel"
                                           : ", carbon steel";
    const bool open = stock->wall <= 0.0; /* a solid comes in every steel */
    tt_report_say(out, tt_report_text(out, "%s%s.", stock->series, open ? "" : steel));
    tt_report_table(out, all, sizeof all / sizeof *all);
    const sheet read = {.out = out, .source = tt_note(notes, &stock->source)};
    const sheet from_size = {.out = out, .source = "computed from the nominal size"};
    sizes(&read, stock);
    computed(&from_size, stock);
}

/* ---- the tables ---- */

static const tt_column of_tubes[] = {
    {"name", TT_LEFT},  {"series", TT_LEFT},          {"outside", TT_RIGHT},
    {"wall", TT_RIGHT}, {"mass per metre", TT_RIGHT}, {"source", TT_LEFT}};
static const tt_column of_boxes[] = {
    {"name", TT_LEFT},  {"series", TT_LEFT},          {"width", TT_RIGHT}, {"depth", TT_RIGHT},
    {"wall", TT_RIGHT}, {"mass per metre", TT_RIGHT}, {"source", TT_LEFT}};
static const tt_column of_flats[] = {
    {"name", TT_LEFT},       {"series", TT_LEFT},          {"width", TT_RIGHT},
    {"thickness", TT_RIGHT}, {"mass per metre", TT_RIGHT}, {"source", TT_LEFT}};
static const tt_column of_rods[] = {{"name", TT_LEFT},         {"series", TT_LEFT},
                                    {"diameter", TT_RIGHT},    {"pitch", TT_RIGHT},
                                    {"stress area", TT_RIGHT}, {"source", TT_LEFT}};

/* Inches stand in the heads, so that a row stays on one line. */
static const tt_column of_tubes_in[] = {{"name", TT_LEFT},         {"series", TT_LEFT},
                                        {"outside, in", TT_RIGHT}, {"wall, in", TT_RIGHT},
                                        {"lb/ft", TT_RIGHT},       {"modulus, in3", TT_RIGHT},
                                        {"source", TT_LEFT}};
static const tt_column of_boxes_in[] = {{"name", TT_LEFT},          {"series", TT_LEFT},
                                        {"width, in", TT_RIGHT},    {"depth, in", TT_RIGHT},
                                        {"wall, in", TT_RIGHT},     {"lb/ft", TT_RIGHT},
                                        {"modulus, in3", TT_RIGHT}, {"source", TT_LEFT}};
static const tt_column of_flats_in[] = {{"name", TT_LEFT},       {"series", TT_LEFT},
                                        {"width, in", TT_RIGHT}, {"thickness, in", TT_RIGHT},
                                        {"lb/ft", TT_RIGHT},     {"on edge, in3", TT_RIGHT},
                                        {"source", TT_LEFT}};
static const tt_column of_rods_in[] = {{"name", TT_LEFT},
                                       {"series", TT_LEFT},
                                       {"diameter, in", TT_RIGHT},
                                       {"pitch, in", TT_RIGHT},
                                       {"stress area, in2", TT_RIGHT},
                                       {"source", TT_LEFT}};

static const char brackets[] =
    "A mass in brackets is computed: area of the nominal size times 7850 kg/m3, of stainless steel "
    "8000 kg/m3, both from memory and whatever the grade; a solid as carbon steel.";

#define FORM(the_name, the_words, the_form, the_columns, the_remark)                               \
    {                                                                                              \
        .name = the_name, .words = the_words, .form = the_form, .columns = the_columns,            \
        .columns_n = sizeof the_columns / sizeof *the_columns, .columns_in = the_columns##_in,     \
        .columns_in_n = sizeof the_columns##_in / sizeof *the_columns##_in, .remark = the_remark,  \
        .count = tt_stock_count, .row_name = row_name, .row_place = row_place, .row = row,         \
        .whole = whole                                                                             \
    }

const tt_stock_table tt_stock_forms[TT_STOCK_FORMS] = {
    FORM("tubes", "round tubes and round hollow sections", "tube", of_tubes, brackets),
    FORM("pipes", "pipes by nominal size in inches and schedule", "pipe", of_tubes, brackets),
    FORM("boxes", "square and rectangular hollow sections", "box", of_boxes, brackets),
    FORM("bars", "round bars", "bar", of_tubes, brackets),
    FORM("flats", "flat and square bars", "flat", of_flats, brackets),
    FORM("rods", "threaded rods, coarse thread", "rod", of_rods, NULL),
};
