/* catalogue/catalogue.h - metals and stock from data/, each figure with its source.
 * The tables are turned into const arrays by the build; nothing is read at run time. */
#ifndef TT_CATALOGUE_CATALOGUE_H
#define TT_CATALOGUE_CATALOGUE_H

#include "source/source.h"

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

typedef enum { TT_CAST, TT_STEEL } tt_metal_kind;

typedef struct {
    const char *name;        /* "C87300", "1.4462" */
    const char *title;       /* "silicon bronze, 94Cu-4Si-1Mn" */
    const char *form;        /* product form; "" where there is only one */
    const char *yield_basis; /* "0.5 % extension under load", "Rp0.2", "ReH" */
    tt_metal_kind kind;
    bool stainless;
    tt_fact fact[TT_P_COUNT];
} tt_metal;

typedef struct {
    const char *name;   /* "33.7 x 4", "bar 20" */
    const char *series; /* "EN 10220 series 1" ... */
    const char *form;   /* "tube" | "bar" */
    double od, wall;    /* m; wall 0 for a bar */
    double mass;        /* kg/m as printed in the source; 0 when none */
    tt_source source;
} tt_stock;

size_t tt_metals_count(void);
const tt_metal *tt_metals_at(size_t i);
/** By name and kind; a steel with several product forms gives the one of lowest yield. NULL: none. */
const tt_metal *tt_metal_named(const char *name, tt_metal_kind kind);
/** The name of that kind nearest to a misspelt one, for "did you mean"; NULL when none is near. */
const char *tt_metal_nearest(const char *name, tt_metal_kind kind);

size_t tt_stock_count(void);
const tt_stock *tt_stock_at(size_t i);

/** Words and unit of a property. */
const char *tt_property_words(tt_property property);
const char *tt_property_unit(tt_property property);

#endif
