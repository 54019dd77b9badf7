/* compose/metals.c - rows of the tables of cast alloys, steels, fillers and materials. */
#include "compose/parts.h"
#include "compose/stock.h"

#include <string.h>

static const char *row_name(const tt_stock_table *table, const tt_data *own, size_t i)
{
    const tt_metal *metal = tt_metals_at(own, i);
    return metal && metal->kind == table->kind ? metal->name : NULL;
}

static const tt_row_place *row_place(const tt_data *own, size_t i)
{
    return &tt_metals_at(own, i)->at;
}

static bool in_per_cent(tt_property property)
{
    return property == TT_P_ELONGATION || property == TT_P_ELONGATION_TYPICAL ||
           property == TT_P_LEAD;
}

static const char *exact(tt_report *out, const tt_metal *metal, tt_property property)
{
    const double value = metal->fact[property].value;
    if (in_per_cent(property)) return tt_report_text(out, "%.3g %%", 100.0 * value);
    return tt_say_exactly(out, value, tt_property_unit(property), TT_METRIC, 2);
}

/* ---- a row of the list ---- */

/* Where there is no minimum, what is typical. */
static const char *figure(tt_notes *notes, const tt_metal *metal, tt_property property)
{
    const tt_property other = property == TT_P_YIELD      ? TT_P_YIELD_TYPICAL
                              : property == TT_P_ULTIMATE ? TT_P_ULTIMATE_TYPICAL
                                                          : property;
    const bool least = metal->fact[property].has;
    const tt_property told = least ? property : other;
    if (!metal->fact[told].has) return "none";
    const char *value =
        notes->inches && *tt_property_unit(told)
            ? tt_say(notes->out, metal->fact[told].value, tt_property_unit(told), TT_IMPERIAL)
            : exact(notes->out, metal, told);
    return tt_report_text(notes->out, "%s%s %s", least ? "" : "typical ", value,
                          tt_note(notes, &metal->fact[told].source));
}

enum { NAME, WHAT, FORM, FIGURES };
static const struct {
    tt_property property[TT_STOCK_CELLS - WHAT];
    size_t n;
} shown[TT_STOCK_METALS] = {
    [TT_CAST] = {{TT_P_DENSITY, TT_P_YIELD, TT_P_ULTIMATE, TT_P_SEAM}, 4},
    [TT_STEEL] = {{TT_P_YIELD, TT_P_ULTIMATE}, 2},
    [TT_FILLER] = {{TT_P_YIELD, TT_P_ULTIMATE}, 2},
    [TT_MATERIAL] = {{TT_P_DENSITY_LOW, TT_P_DENSITY_HIGH}, 2},
};

static void row(const tt_stock_table *table, const tt_data *own, size_t i, tt_notes *notes,
                const char **cells)
{
    const tt_metal *metal = tt_metals_at(own, i);
    const bool forms = table->kind == TT_STEEL;
    const tt_metal *above = i > 0 ? tt_metals_at(own, i - 1) : NULL;
    const bool again = above && above->kind == table->kind && strcmp(above->name, metal->name) == 0;
    cells[NAME] = metal->name;
    cells[WHAT] = again ? "" : metal->title;
    if (forms) cells[FORM] = metal->form;
    for (size_t k = 0; k < shown[table->kind].n; k++)
        cells[WHAT + 1 + forms + k] = figure(notes, metal, shown[table->kind].property[k]);
}

/* ---- a row whole ---- */

/* Has any built-in row of the kind a figure of it? */
static bool told_of_kind(tt_metal_kind kind, tt_property property)
{
    for (size_t i = 0; i < tt_metals_count(NULL); i++) {
        const tt_metal *metal = tt_metals_at(NULL, i);
        if (metal->kind == kind && metal->fact[property].has) return true;
    }
    return false;
}

static const char *unknown(const tt_metal *metal, tt_report *out)
{
    const char *all = "";
    for (int p = 0; p < TT_P_COUNT; p++) {
        if (metal->fact[p].has || !told_of_kind(metal->kind, (tt_property)p)) continue;
        all =
            tt_report_text(out, "%s%s%s", all, *all ? "; " : "", tt_property_words((tt_property)p));
    }
    return all;
}

static void head(const tt_metal *metal, tt_report *out)
{
    const char *form = metal->form[0] ? tt_report_text(out, ", %s", metal->form) : "";
    const bool yields = metal->fact[TT_P_YIELD].has || metal->fact[TT_P_YIELD_TYPICAL].has;
    const char *basis = yields ? tt_report_text(out, " Yield is %s.", metal->yield_basis) : "";
    tt_report_say(out, tt_report_text(out, "%s%s.%s", metal->title, form, basis));
}

static void whole(const tt_stock_table *table, const tt_data *own, size_t i, tt_notes *notes)
{
    static const tt_column all[] = {{"property", TT_LEFT},
                                    {"value", TT_RIGHT},
                                    {"in inch units", TT_RIGHT},
                                    {"source", TT_LEFT}};
    (void)table;
    const tt_metal *metal = tt_metals_at(own, i);
    tt_report *out = notes->out;
    head(metal, out);
    tt_report_table(out, all, sizeof all / sizeof *all);
    for (int p = 0; p < TT_P_COUNT; p++) {
        const tt_fact *fact = &metal->fact[p];
        if (!fact->has) continue;
        const char *unit = tt_property_unit((tt_property)p);
        const char *cells[] = {tt_property_words((tt_property)p), exact(out, metal, (tt_property)p),
                               *unit ? tt_say(out, fact->value, unit, TT_IMPERIAL) : "",
                               tt_note(notes, &fact->source)};
        tt_report_row(out, cells);
    }
    const char *rest = unknown(metal, out);
    if (*rest) tt_report_say(out, tt_report_text(out, "Not known: %s.", rest));
}

/* ---- the tables ---- */

static const tt_column of_alloys[] = {{"name", TT_LEFT},     {"what", TT_LEFT},
                                      {"density", TT_RIGHT}, {"yield", TT_RIGHT},
                                      {"tensile", TT_RIGHT}, {"seam", TT_RIGHT}};
static const tt_column of_steels[] = {{"name", TT_LEFT},
                                      {"what", TT_LEFT},
                                      {"product", TT_LEFT},
                                      {"yield", TT_RIGHT},
                                      {"tensile", TT_RIGHT}};
static const tt_column of_fillers[] = {
    {"name", TT_LEFT}, {"what", TT_LEFT}, {"yield", TT_RIGHT}, {"tensile", TT_RIGHT}};
static const tt_column of_materials[] = {
    {"name", TT_LEFT}, {"what", TT_LEFT}, {"density from", TT_RIGHT}, {"to", TT_RIGHT}};

#define METALS(the_name, the_words, the_kind, the_columns, the_remark)                             \
    {                                                                                              \
        .name = the_name, .words = the_words, .kind = the_kind, .columns = the_columns,            \
        .columns_n = sizeof the_columns / sizeof *the_columns, .remark = the_remark,               \
        .count = tt_metals_count, .row_name = row_name, .row_place = row_place, .row = row,        \
        .whole = whole                                                                             \
    }

const tt_stock_table tt_stock_metals[TT_STOCK_METALS] = {
    METALS("alloys", "cast bronzes", TT_CAST, of_alloys,
           "Strengths are minimums of a separately cast bar. American alloys give yield at 0.5 % "
           "extension under load, European ones at 0.2 % proof: the two are not the same. Seam is "
           "the share of strength that a weld in the shell is counted on for."),
    METALS("steels", "steels of armatures, plates and rods, by product", TT_STEEL, of_steels,
           "A grade that is named without its product stands for the row of lowest yield."),
    METALS("fillers", "filler metals", TT_FILLER, of_fillers,
           "Strengths are minimums of the weld metal, or typical where the standard sets none."),
    METALS("materials", "stone, concrete, wax, plaster, resin and the like", TT_MATERIAL,
           of_materials, "The high end is the one to reckon a weight with."),
};
