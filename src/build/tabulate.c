/* build/tabulate.c - from the tables of data/ to one C file of const arrays, in SI.
 *     tabulate OUT.c TABLE.csv ...
 * Refuses what data/README.md calls a fault, each with its place, and then writes nothing. A
 * program of the build alone: it prints. The tables are read as those of the option --data. */
#include "build/tabulate.h"

#include "base/text.h"
#include "catalogue/read.h"

#include <stdio.h>
#include <stdlib.h>

enum { LONGEST_TABLE = 1 << 20 };

/* The whole file; NULL when it cannot be read. */
static char *load(const char *path, size_t *length)
{
    FILE *in = fopen(path, "rb");
    char *text = in ? malloc(LONGEST_TABLE) : NULL;
    *length = text ? fread(text, 1, LONGEST_TABLE, in) : 0;
    const bool whole = in && *length > 0 && *length < LONGEST_TABLE && !ferror(in);
    if (in) fclose(in);
    if (whole) return text;
    free(text);
    return NULL;
}

static size_t say(const tt_diags *diags)
{
    for (size_t i = 0; i < tt_diags_count(diags); i++) {
        char words[4096];
        tt_diag_print(tt_diags_at(diags, i), words, sizeof words);
        fputs(words, stderr);
    }
    return tt_diags_errors(diags);
}

/* Faults of one table; without memory one. */
static size_t read_table(tt_data *into, const char *path)
{
    size_t length = 0;
    char *text = load(path, &length);
    tt_diags *diags = text ? tt_diags_new(0) : NULL;
    const bool read = diags && tt_rows_read(into, path, text, length, diags);
    const size_t faults = diags ? say(diags) : 0;
    if (!read) fprintf(stderr, "%s: cannot be read\n", path);
    tt_diags_free(diags);
    free(text);
    return faults + !read;
}

static int tabulate(tt_data *data, int n, char **paths)
{
    size_t faults = 0;
    for (int i = 1; i < n; i++) faults += read_table(data, paths[i]);
    if (faults) {
        fprintf(stderr, "%zu fault%s: nothing written\n", faults, faults == 1 ? "" : "s");
    } else if (!data->metals.n || !data->stock.n) {
        fputs("the tables hold no metal or no stock\n", stderr);
    } else if (!tt_tables_write(data, paths[0])) {
        fprintf(stderr, "%s: cannot be written\n", paths[0]);
    } else {
        return EXIT_SUCCESS;
    }
    return EXIT_FAILURE;
}

int main(int argc, char **argv)
{
    if (argc < 3) {
        fputs("usage: tabulate OUT.c TABLE.csv ...\n", stderr);
        return EXIT_FAILURE;
    }
    tt_data data = {0};
    const int outcome = tabulate(&data, argc - 1, argv + 1);
    tt_list_clear(&data.metals);
    tt_list_clear(&data.stock);
    tt_pool_clear(&data.pool);
    return outcome;
}
