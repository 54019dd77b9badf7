/* catalogue/catalogue.c - looks up metals and stock: rows of one's own first, then the tables that
 * the build made. */
#include "catalogue/catalogue.h"

#include "catalogue/tables.h"

#include <string.h>

static size_t own_metals(const tt_data *own)
{
    return own ? own->metals.n : 0;
}

static size_t own_stock(const tt_data *own)
{
    return own ? own->stock.n : 0;
}

size_t tt_metals_count(const tt_data *own)
{
    return own_metals(own) + tt_metal_rows;
}

size_t tt_stock_count(const tt_data *own)
{
    return own_stock(own) + tt_stock_rows;
}

const tt_metal *tt_metals_at(const tt_data *own, size_t i)
{
    const size_t mine = own_metals(own);
    if (i < mine) return &own->metals.at[i];
    if (i - mine >= tt_metal_rows) return NULL;
    const tt_metal *metal = &tt_metal_table[i - mine];
    for (size_t k = 0; k < mine; k++) {
        const tt_metal *other = &own->metals.at[k];
        if (other->kind == metal->kind && strcmp(other->name, metal->name) == 0) return NULL;
    }
    return metal;
}

const tt_stock *tt_stock_at(const tt_data *own, size_t i)
{
    const size_t mine = own_stock(own);
    if (i < mine) return &own->stock.at[i];
    if (i - mine >= tt_stock_rows) return NULL;
    const tt_stock *stock = &tt_stock_table[i - mine];
    for (size_t k = 0; k < mine; k++) {
        const tt_stock *other = &own->stock.at[k];
        if (strcmp(other->form, stock->form) == 0 &&
            tt_same_size(stock->form, other->name, stock->name))
            return NULL;
    }
    return stock;
}

const tt_metal *tt_metal_named(const tt_data *own, const char *name, tt_metal_kind kind)
{
    const tt_metal *found = NULL;
    for (size_t i = 0; i < tt_metals_count(own); i++) {
        const tt_metal *metal = tt_metals_at(own, i);
        if (!metal || metal->kind != kind || strcmp(metal->name, name) != 0) continue;
        if (!found || metal->fact[TT_P_YIELD].value < found->fact[TT_P_YIELD].value) found = metal;
    }
    return found;
}

const tt_stock *tt_stock_named(const tt_data *own, const char *form, const char *words)
{
    for (size_t i = 0; i < tt_stock_count(own); i++) {
        const tt_stock *stock = tt_stock_at(own, i);
        if (stock && strcmp(stock->form, form) == 0 && tt_same_size(form, stock->name, words))
            return stock;
    }
    return NULL;
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
