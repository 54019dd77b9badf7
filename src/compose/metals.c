/* compose/metals.c - rows of the tables of cast alloys and of steels. */
#include "compose/parts.h"
#include "compose/stock.h"

#include <string.h>

static const char *of_kind(size_t i, tt_metal_kind kind)
{
    return tt_metals_at(i)->kind == kind ? tt_metals_at(i)->name : NULL;
}

static const char *alloy_name(size_t i)
{
    return of_kind(i, TT_CAST);
}

static const char *steel_name(size_t i)
{
    return of_kind(i, TT_STEEL);
}

static const char *exact(tt_report *out, const tt_fact *fact, const char *unit)
{
    return tt_say_exactly(out, fact->value, unit, TT_METRIC, 2);
}

static const char *figure(tt_notes *notes, const tt_metal *metal, tt_property property)
{
    const tt_fact *fact = &metal->fact[property];
    if (!fact->has) return "none";
    return tt_report_text(notes->out, "%s %s", exact(notes->out, fact, tt_property_unit(property)),
                          tt_note(notes, &fact->source));
}

static const tt_column columns[] = {{"name", TT_LEFT},
                                    {"what", TT_LEFT},
                                    {"density", TT_RIGHT},
                                    {"yield", TT_RIGHT},
                                    {"tensile", TT_RIGHT}};

static void row(size_t i, tt_notes *notes, const char **cells)
{
    const tt_metal *metal = tt_metals_at(i);
    cells[0] = metal->name;
    cells[1] = metal->form[0] ? tt_report_text(notes->out, "%s, %s", metal->title, metal->form)
                              : metal->title;
    cells[2] = figure(notes, metal, TT_P_DENSITY);
    cells[3] = figure(notes, metal, TT_P_YIELD);
    cells[4] = figure(notes, metal, TT_P_ULTIMATE);
}

static void whole(size_t i, tt_report *out)
{
    static const tt_column all[] = {
        {"property", TT_LEFT}, {"value", TT_RIGHT}, {"source", TT_LEFT}};
    const tt_metal *metal = tt_metals_at(i);
    tt_notes notes = {.out = out};
    const char *form = metal->form[0] ? tt_report_text(out, ", %s", metal->form) : "";
    tt_report_say(
        out, tt_report_text(out, "%s%s. Yield is %s.", metal->title, form, metal->yield_basis));
    tt_report_table(out, all, sizeof all / sizeof *all);
    for (int p = 0; p < TT_P_COUNT; p++) {
        const tt_fact *fact = &metal->fact[p];
        const char *cells[] = {tt_property_words((tt_property)p),
                               fact->has ? exact(out, fact, tt_property_unit((tt_property)p))
                                         : "none",
                               fact->has ? tt_note(&notes, &fact->source) : ""};
        tt_report_row(out, cells);
    }
    tt_notes_write(&notes);
}

const tt_stock_table tt_stock_alloys = {
    "alloys",   "cast bronzes", tt_metals_count,
    alloy_name, columns,        sizeof columns / sizeof *columns,
    row,        whole};
const tt_stock_table tt_stock_steels = {"steels",
                                        "steels of armatures",
                                        tt_metals_count,
                                        steel_name,
                                        columns,
                                        sizeof columns / sizeof *columns,
                                        row,
                                        whole};
