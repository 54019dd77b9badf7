/* catalogue/read_metals.c - rows of metals, fillers and materials: the head, its forms, their
 * figures; what each must have, and figures that contradict each other. */
#include "catalogue/read.h"
#include "quantity/quantity.h"

#include <math.h>
#include <string.h>

static const struct {
    const char *id, *unit;
    double least, most;
} properties[TT_P_COUNT] = {
#define TT_PROPERTY(id, words, unit, least, most) {#id, unit, least, most},
#include "catalogue/properties.def"
#undef TT_PROPERTY
};

/* ---- what a metal must have ---- */

enum { MOST_DUE = 8 };
static const struct {
    size_t n;
    tt_property due[MOST_DUE];
} must[] = {
    [TT_CAST] = {8,
                 {TT_P_DENSITY, TT_P_YIELD, TT_P_ULTIMATE, TT_P_POISSON, TT_P_YOUNG_LOW,
                  TT_P_YOUNG_HIGH, TT_P_LEAD, TT_P_SEAM}},
    [TT_STEEL] = {7,
                  {TT_P_DENSITY, TT_P_YIELD, TT_P_ULTIMATE, TT_P_POISSON, TT_P_YOUNG_EU,
                   TT_P_YOUNG_US, TT_P_EXPANSION}},
    [TT_MATERIAL] = {2, {TT_P_DENSITY_LOW, TT_P_DENSITY_HIGH}},
};

static void require(tt_rows *rows, const tt_sheet *sheet)
{
    const tt_metal_kind kind = sheet->metal.kind;
    if (kind == TT_FILLER) {
        if (!sheet->at[TT_P_ULTIMATE].line && !sheet->at[TT_P_ULTIMATE_TYPICAL].line)
            tt_complain(rows->diags, TT_D_DATA_LACKS, sheet->name, NULL,
                        "%s has neither ULTIMATE nor ULTIMATE_TYPICAL", sheet->metal.name);
        return;
    }
    for (size_t i = 0; i < must[kind].n; i++) {
        const tt_property p = must[kind].due[i];
        if (sheet->at[p].line) continue;
        tt_complain(rows->diags, TT_D_DATA_LACKS, sheet->name,
                    "a row stands whole: nothing is taken from a built-in one of its name",
                    "%s has no %s, which it must have", sheet->metal.name, properties[p].id);
    }
}

/* ---- figures against each other ---- */

static const struct {
    tt_property low, high;
} orders[] = {
    {TT_P_YIELD, TT_P_ULTIMATE},
    {TT_P_YIELD_TYPICAL, TT_P_ULTIMATE_TYPICAL},
    {TT_P_YIELD, TT_P_YIELD_TYPICAL},
    {TT_P_ULTIMATE, TT_P_ULTIMATE_TYPICAL},
    {TT_P_ELONGATION, TT_P_ELONGATION_TYPICAL},
    {TT_P_YOUNG_LOW, TT_P_YOUNG_HIGH},
    {TT_P_DENSITY_LOW, TT_P_DENSITY_HIGH},
};

static void compare(tt_rows *rows, const tt_sheet *sheet)
{
    const tt_fact *fact = sheet->metal.fact;
    for (size_t i = 0; i < sizeof orders / sizeof *orders; i++) {
        const tt_property low = orders[i].low, high = orders[i].high;
        if (!fact[low].has || !fact[high].has || !(fact[low].value > fact[high].value)) continue;
        tt_complain(rows->diags, TT_D_DATA_CONTRADICTION, sheet->at[low], "were the two exchanged?",
                    "%s: %s over %s", sheet->metal.name, properties[low].id, properties[high].id);
    }
    if (fact[TT_P_LEAD].value > 0.01 && fact[TT_P_SEAM].value > 0.0)
        tt_complain(rows->diags, TT_D_DATA_CONTRADICTION, sheet->at[TT_P_SEAM],
                    "leaded bronze is not counted on as welded: 0",
                    "%s: SEAM over 0 with more than 1 %% lead", sheet->metal.name);
}

/* ---- keeping ---- */

static const tt_metal *twin_of(const tt_rows *rows, const tt_metal *metal)
{
    for (size_t i = 0; i < rows->into->metals.n; i++) {
        const tt_metal *other = &rows->into->metals.at[i];
        if (other->kind == metal->kind && strcmp(other->name, metal->name) == 0 &&
            strcmp(other->form, metal->form) == 0)
            return other;
    }
    return NULL;
}

static void keep(tt_rows *rows, const tt_sheet *sheet)
{
    const tt_metal *metal = &sheet->metal, *twin = twin_of(rows, metal);
    if (twin)
        tt_complain(rows->diags, TT_D_DATA_TWICE, sheet->name, "keep one of the two",
                    "%s%s%s a second time, first in %s", metal->name, *metal->form ? ", " : "",
                    metal->form, tt_row_first(rows, &twin->at));
    require(rows, sheet);
    compare(rows, sheet);
    if (!tt_list_push(&rows->into->metals, *metal)) rows->no_memory = true;
}

void tt_row_end(tt_rows *rows)
{
    if (rows->open) keep(rows, rows->forms ? &rows->form : &rows->base);
    rows->open = false;
}

/* ---- heads ---- */

static void begin(tt_rows *rows, tt_metal_kind kind, const char *basis)
{
    tt_row_end(rows);
    rows->base = (tt_sheet){.name = rows->field[1].place};
    tt_metal *metal = &rows->base.metal;
    metal->name = tt_row_words(rows, 1, "the name");
    metal->title = tt_row_words(rows, 2, "the title");
    metal->yield_basis = basis;
    metal->form = "";
    metal->kind = kind;
    metal->at = (tt_row_place){rows->file, rows->row.line};
    rows->open = true;
    rows->forms = rows->lost = false;
}

void tt_row_metal(tt_rows *rows)
{
    const char *basis = tt_row_words(rows, 3, "what the yield is"), *kind = rows->field[4].text;
    const bool steel = tt_row_choice(rows, 4, "steel", "cast");
    begin(rows, steel ? TT_STEEL : TT_CAST, basis);
    rows->base.metal.stainless = tt_row_choice(rows, 5, "yes", "no");
    if (steel || strcmp(kind, "cast") == 0) return;
    rows->open = false; /* nobody can say what it must have */
    rows->lost = true;
}

void tt_row_filler(tt_rows *rows)
{
    begin(rows, TT_FILLER, tt_row_words(rows, 3, "what the yield is"));
}

void tt_row_material(tt_rows *rows)
{
    begin(rows, TT_MATERIAL, "");
}

static bool within(tt_rows *rows, const char *what)
{
    if (!rows->open && !rows->lost)
        tt_complain(rows->diags, TT_D_DATA_ORDER, rows->row,
                    "a row `metal`, `filler` or `material` stands above it", "%s before any metal",
                    what);
    return rows->open;
}

void tt_row_form(tt_rows *rows)
{
    if (!within(rows, "a form")) return;
    if (rows->forms) keep(rows, &rows->form);
    rows->form = rows->base;
    rows->form.metal.form = tt_row_words(rows, 1, "the product form");
    rows->form.metal.at.line = rows->row.line;
    rows->form.name = rows->field[1].place;
    rows->forms = true;
}

/* ---- figures ---- */

static int property_of(const char *id)
{
    for (int i = 0; i < TT_P_COUNT; i++) {
        if (strcmp(properties[i].id, id) == 0) return i;
    }
    return -1;
}

/* An SI value as a table writes it: "55 GPa". */
static void put(tt_text *out, double value, const char *unit)
{
    int kind = 0;
    while (kind < TT_Q_COUNT && strcmp(tt_kind_si((tt_kind)kind), unit) != 0) kind++;
    tt_quantity_write(out, value, kind < TT_Q_COUNT ? (tt_kind)kind : TT_Q_PURE, TT_METRIC, 3);
}

static void check_band(tt_rows *rows, const char *name, int p, double value)
{
    if (!(value < properties[p].least || value > properties[p].most)) return;
    const char *unit = rows->field[3].text;
    tt_text band = {0};
    put(&band, properties[p].least, properties[p].unit);
    tt_text_put(&band, " to ");
    put(&band, properties[p].most, properties[p].unit);
    tt_complain(rows->diags, TT_D_DATA_BAND, rows->field[2].place, "check the digits and the unit",
                "%s: %s of %.40s%s%s is outside the plausible band, %s", name, properties[p].id,
                rows->field[2].text, *unit ? " " : "", unit, tt_text_of(&band));
    tt_text_clear(&band);
}

void tt_row_figure(tt_rows *rows)
{
    const int p = property_of(rows->field[1].text);
    if (p < 0)
        tt_complain(rows->diags, TT_D_DATA_PROPERTY, rows->field[1].place,
                    "`tiptoe explain data` tells the properties, as data/README.md does",
                    "unknown property '%.40s'", rows->field[1].text);
    if (p < 0 || !within(rows, "a figure")) return;
    tt_sheet *sheet = rows->forms ? &rows->form : &rows->base;
    if (sheet->at[p].line) {
        tt_complain(rows->diags, TT_D_DATA_TWICE, rows->field[1].place, "keep one of the two",
                    "%s: %s a second time, first in line %u", sheet->metal.name, properties[p].id,
                    sheet->at[p].line);
        return;
    }
    sheet->at[p] = rows->field[2].place;
    const double value = tt_row_measure(rows, 2, 3, properties[p].unit, properties[p].id);
    check_band(rows, sheet->metal.name, p, value);
    sheet->metal.fact[p] = (tt_fact){value, tt_row_source(rows, 4), true};
}
