/* catalogue/tables.h - the arrays that the build makes from data/; for catalogue.c alone. */
#ifndef TT_CATALOGUE_TABLES_H
#define TT_CATALOGUE_TABLES_H

#include "catalogue/catalogue.h"

extern const tt_metal tt_metal_table[];
extern const tt_stock tt_stock_table[];
extern const size_t tt_metal_rows, tt_stock_rows;

#endif
