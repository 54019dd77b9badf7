/* build/tabulate_write.c - from checked tables to the C file of const arrays. */
#include "build/tabulate.h"

#include <stdio.h>

static const char *const ids[PROPERTIES] = {
#define TT_PROPERTY(id, words, unit, least, most) #id,
#include "catalogue/properties.def"
#undef TT_PROPERTY
};

static void put_string(FILE *out, const char *words)
{
    fputc('"', out);
    for (; *words; words++) {
        if (*words == '"' || *words == '\\') fputc('\\', out);
        fputc(*words, out);
    }
    fputc('"', out);
}

static void put_or_null(FILE *out, const char *words)
{
    if (*words)
        put_string(out, words);
    else
        fputs("NULL", out);
}

static void put_source(FILE *out, const source *s)
{
    fputc('{', out);
    put_string(out, s->document);
    fputs(", ", out);
    put_or_null(out, s->edition);
    fputs(", ", out);
    put_or_null(out, s->where);
    fprintf(out, ", %s}", s->mark);
}

static void put_metal(FILE *out, const metal *m)
{
    const char *const words[] = {m->name, m->title, m->form, m->basis};
    fputs("    {", out);
    for (size_t i = 0; i < COUNT(words); i++) {
        put_string(out, words[i]);
        fputs(", ", out);
    }
    fprintf(out, "%s, %s, {\n", m->steel ? "TT_STEEL" : "TT_CAST", m->stainless ? "true" : "false");
    for (int i = 0; i < PROPERTIES; i++) {
        if (!m->figure[i].at.file) continue;
        fprintf(out, "        [TT_P_%s] = {%.17g, ", ids[i], m->figure[i].value);
        put_source(out, &m->figure[i].source);
        fputs(", true},\n", out);
    }
    fputs("    }},\n", out);
}

static void put_item(FILE *out, const item *s)
{
    const char *const words[] = {s->name, s->series, s->form};
    fputs("    {", out);
    for (size_t i = 0; i < COUNT(words); i++) {
        put_string(out, words[i]);
        fputs(", ", out);
    }
    fprintf(out, "%.17g, %.17g, %.17g, ", s->od, s->wall, s->mass);
    put_source(out, &s->source);
    fputs("},\n", out);
}

bool tt_tables_write(const tables *t, const char *path)
{
    FILE *out = fopen(path, "w");
    if (!out) return false;
    fputs("/* Made by the build from data/; do not edit. */\n#include \"catalogue/tables.h\"\n\n"
          "const tt_metal tt_metal_table[] = {\n",
          out);
    for (size_t i = 0; i < t->n_metals; i++) put_metal(out, &t->metals[i]);
    fputs("};\n\nconst tt_stock tt_stock_table[] = {\n", out);
    for (size_t i = 0; i < t->n_stock; i++) put_item(out, &t->stock[i]);
    fprintf(out, "};\n\nconst size_t tt_metal_rows = %zu, tt_stock_rows = %zu;\n", t->n_metals,
            t->n_stock);
    const bool written = !ferror(out);
    return fclose(out) == 0 && written;
}
