/* catalogue/catalogue.c - looks up metals and stock in the tables that the build made. */
#include "catalogue/catalogue.h"

#include "base/text.h"
#include "catalogue/tables.h"

#include <string.h>

size_t tt_metals_count(void)
{
    return tt_metal_rows;
}

const tt_metal *tt_metals_at(size_t i)
{
    return i < tt_metal_rows ? &tt_metal_table[i] : NULL;
}

const tt_metal *tt_metal_named(const char *name, tt_metal_kind kind)
{
    const tt_metal *found = NULL;
    for (size_t i = 0; i < tt_metal_rows; i++) {
        const tt_metal *metal = &tt_metal_table[i];
        if (metal->kind != kind || strcmp(metal->name, name) != 0) continue;
        if (!found || metal->fact[TT_P_YIELD].value < found->fact[TT_P_YIELD].value) found = metal;
    }
    return found;
}

const char *tt_metal_nearest(const char *name, tt_metal_kind kind)
{
    const char *nearest = NULL;
    size_t most = 1 + strlen(name) / 3;
    for (size_t i = 0; i < tt_metal_rows; i++) {
        if (tt_metal_table[i].kind != kind) continue;
        const size_t distance = tt_text_distance(name, tt_metal_table[i].name, most);
        if (distance > most || (nearest && distance == most)) continue;
        nearest = tt_metal_table[i].name;
        most = distance;
    }
    return nearest;
}

size_t tt_stock_count(void)
{
    return tt_stock_rows;
}

const tt_stock *tt_stock_at(size_t i)
{
    return i < tt_stock_rows ? &tt_stock_table[i] : NULL;
}

const char *tt_property_words(tt_property property)
{
    static const char *const words[TT_P_COUNT] = {
#define TT_PROPERTY(id, words, unit, least, most) words,
#include "catalogue/properties.def"
#undef TT_PROPERTY
    };
    return words[property];
}

const char *tt_property_unit(tt_property property)
{
    static const char *const units[TT_P_COUNT] = {
#define TT_PROPERTY(id, words, unit, least, most) unit,
#include "catalogue/properties.def"
#undef TT_PROPERTY
    };
    return units[property];
}
