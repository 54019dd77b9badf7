/* catalogue/catalogue.h - metals, fillers, materials and stock, each figure with its source: the
 * tables of data/, turned into const arrays by the build, and over them rows of one's own.
 * `own` is everywhere what --data gave, NULL for the built-in tables alone. */
#ifndef TT_CATALOGUE_CATALOGUE_H
#define TT_CATALOGUE_CATALOGUE_H

#include "base/list.h"
#include "base/pool.h"
#include "source/source.h"
#include "tiptoe/data.h"

#include <stdbool.h>
#include <stddef.h>

/** One figure of a metal: value in SI, `has` false when the table has none. */
typedef struct {
    double value;
    tt_source source;
    bool has;
} tt_fact;

/** Properties, in the order of properties.def: TT_PROPERTY(id, words, unit, least, most). */
typedef enum {
#define TT_PROPERTY(id, words, unit, least, most) TT_P_##id,
#include "catalogue/properties.def"
#undef TT_PROPERTY
    TT_P_COUNT
} tt_property;

/** Where a row of one's own was read; file NULL: the row is built in. */
typedef struct {
    const char *file;
    unsigned line;
} tt_row_place;

/** TT_MATERIAL: what is no metal of the piece - stone, concrete, wax, resin. */
typedef enum { TT_CAST, TT_STEEL, TT_FILLER, TT_MATERIAL } tt_metal_kind;

typedef struct {
    const char *name;        /* "C87300", "1.4462", "ERCuSi-A", "granite" */
    const char *title;       /* "silicon bronze, 94Cu-4Si-1Mn" */
    const char *form;        /* product form; "" where there is only one */
    const char *yield_basis; /* "0.5 % extension under load", "Rp0.2", "ReH"; "" of a material */
    tt_metal_kind kind;
    bool stainless;
    tt_fact fact[TT_P_COUNT];
    tt_row_place at;
} tt_metal;

typedef struct {
    const char *name;         /* "33.7 x 4", "1 1/2 sch 40", "bar 20", "50 x 10", "M16" */
    const char *series;       /* "EN 10220 series 1" ... */
    const char *form;         /* "tube" | "pipe" | "box" | "bar" | "flat" | "rod" */
    double od;                /* m: outside or nominal diameter; width of a box or flat */
    double wall;              /* m; 0: solid */
    double deep;              /* m: the other side of a box or flat; else 0 */
    double corner, corner_in; /* m: outside and inside radius of a box; else 0 */
    double pitch;             /* m: of the thread of a rod; else 0 */
    double area;              /* m2: stress area of a rod as printed; else 0 */
    double mass;              /* kg/m as printed in the source; 0 when none */
    bool stainless;
    tt_source source;
    tt_row_place at;
} tt_stock;

/** Rows of one's own. Everything lives in the pool. */
struct tt_data {
    tt_pool pool;
    const char *file, *sha256;
    TT_LIST(tt_metal) metals;
    TT_LIST(tt_stock) stock;
};

/* Rows, those of one's own first. NULL: a built-in row whose place one of one's own took. */
size_t tt_metals_count(const tt_data *own);
const tt_metal *tt_metals_at(const tt_data *own, size_t i);
size_t tt_stock_count(const tt_data *own);
const tt_stock *tt_stock_at(const tt_data *own, size_t i);

/** By name and kind; a metal with several product forms gives the one of lowest yield. NULL: none.
 */
const tt_metal *tt_metal_named(const tt_data *own, const char *name, tt_metal_kind kind);

/** Names of the metals of this kind that the words tell of though they name none, the closest first
 *  and at most `most`: the name in other letters, "cc480k"; a word of the title, "S31603",
 *  "CuSn10"; every word in it, "silicon bronze". How many there are is returned. */
size_t tt_metals_alike(const tt_data *own, const char *words, tt_metal_kind kind,
                       const char **names, size_t most);

/** The first row of a form ("pipe", "rod" ...) that the words name, however they are spelt:
 *  "1-1/2in SCH40", "m 16", "50x10". NULL: none. */
const tt_stock *tt_stock_named(const tt_data *own, const char *form, const char *words);

/** Do two spellings name the same size? Blanks, dashes, case and words such as "pipe" do not
 *  count; numbers by their value; of a pipe inch marks and "sch" do not count, std is 40, xs and xh
 *  are 80, xxh is xxs.
 */
bool tt_same_size(const char *form, const char *a, const char *b);

/** Of the nominal size: area of the steel, m2 (of a rod the full one); second moment about the axis
 *  across `od` (about a level axis: as wide as `od`) and about the other, m4. */
double tt_stock_area(const tt_stock *stock);
double tt_stock_inertia(const tt_stock *stock, bool about_deep);
/** Stress area of a thread by its formula, m2; `inch`: of the Unified series. */
double tt_thread_area(double diameter, double pitch, bool inch);

/** Words and unit of a property. */
const char *tt_property_words(tt_property property);
const char *tt_property_unit(tt_property property);

#endif
