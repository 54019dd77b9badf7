/* build/tabulate.h - the tables of data/ as the build's own program tabulate holds them, in SI.
 * Strings are lent from the texts of the files. */
#ifndef TT_BUILD_TABULATE_H
#define TT_BUILD_TABULATE_H

#include <stdbool.h>
#include <stddef.h>

enum {
#define TT_PROPERTY(id, words, unit, least, most) P_##id,
#include "catalogue/properties.def"
#undef TT_PROPERTY
    PROPERTIES
};

#define COUNT(array) (sizeof(array) / sizeof *(array))

enum { FIELDS = 16, FILES = 8, METALS = 512, STOCK = 4096, LONGEST_TABLE = 1 << 20 };

typedef struct {
    const char *file; /* NULL: not there */
    unsigned line;
} place;

typedef struct {
    const char *document, *edition, *where, *mark;
} source;

typedef struct {
    double value;
    source source;
    place at;
} figure;

typedef struct {
    const char *name, *title, *basis, *form;
    bool steel, stainless;
    place at;
    figure figure[PROPERTIES];
} metal;

typedef struct {
    const char *name, *series, *form;
    double od, wall, mass;
    source source;
    place at;
} item;

typedef struct {
    metal base; /* the metal whose rows are being read: what all its forms share */
    bool reading, formed;
    metal metals[METALS];
    item stock[STOCK];
    size_t n_metals, n_stock, n_files;
    char *text[FILES];
    place at;
    const char *field[FIELDS];
    size_t n_fields;
    unsigned faults;
} tables;

/** Writes the const arrays of catalogue/tables.h; false when the file cannot be written. */
bool tt_tables_write(const tables *t, const char *path);

#endif
