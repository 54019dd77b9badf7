/* build/tabulate_write.c - from checked tables to the C file of const arrays. */
#include "build/tabulate.h"

#include <stdio.h>

static const char *const ids[TT_P_COUNT] = {
#define TT_PROPERTY(id, words, unit, least, most) #id,
#include "catalogue/properties.def"
#undef TT_PROPERTY
};
static const char *const kinds[] = {"TT_CAST", "TT_STEEL", "TT_FILLER", "TT_MATERIAL"};
static const char *const marks[] = {"TT_READ", "TT_FROM_MEMORY", "TT_COMMON_PRACTICE"};

/* NULL stays NULL. */
static void put_string(FILE *out, const char *words)
{
    if (!words) {
        fputs("NULL", out);
        return;
    }
    fputc('"', out);
    for (; *words; words++) {
        if (*words == '"' || *words == '\\') fputc('\\', out);
        fputc(*words, out);
    }
    fputc('"', out);
}

static void put_words(FILE *out, const char *field, const char *words)
{
    fprintf(out, ".%s = ", field);
    put_string(out, words);
    fputs(", ", out);
}

static void put_source(FILE *out, const tt_source *s)
{
    fputc('{', out);
    put_string(out, s->document);
    fputs(", ", out);
    put_string(out, s->edition);
    fputs(", ", out);
    put_string(out, s->place);
    fprintf(out, ", %s}", marks[s->mark]);
}

static void put_metal(FILE *out, const tt_metal *m)
{
    fputs("    {", out);
    put_words(out, "name", m->name);
    put_words(out, "title", m->title);
    put_words(out, "form", m->form);
    put_words(out, "yield_basis", m->yield_basis);
    fprintf(out, ".kind = %s, .stainless = %d, .fact = {\n", kinds[m->kind], m->stainless);
    for (int i = 0; i < TT_P_COUNT; i++) {
        if (!m->fact[i].has) continue;
        fprintf(out, "        [TT_P_%s] = {%.17g, ", ids[i], m->fact[i].value);
        put_source(out, &m->fact[i].source);
        fputs(", 1},\n", out);
    }
    fputs("    }},\n", out);
}

static void put_stock(FILE *out, const tt_stock *s)
{
    fputs("    {", out);
    put_words(out, "name", s->name);
    put_words(out, "series", s->series);
    put_words(out, "form", s->form);
    fprintf(out, ".od = %.17g, .wall = %.17g, .deep = %.17g, ", s->od, s->wall, s->deep);
    fprintf(out, ".corner = %.17g, .corner_in = %.17g, ", s->corner, s->corner_in);
    fprintf(out,
            ".pitch = %.17g, .area = %.17g, .mass = %.17g, .stainless = %d, .source = ", s->pitch,
            s->area, s->mass, s->stainless);
    put_source(out, &s->source);
    fputs("},\n", out);
}

bool tt_tables_write(const tt_data *data, const char *path)
{
    FILE *out = fopen(path, "w");
    if (!out) return false;
    fputs("/* Made by the build from data/; do not edit. */\n#include \"catalogue/tables.h\"\n\n"
          "const tt_metal tt_metal_table[] = {\n",
          out);
    for (size_t i = 0; i < data->metals.n; i++) put_metal(out, &data->metals.at[i]);
    fputs("};\n\nconst tt_stock tt_stock_table[] = {\n", out);
    for (size_t i = 0; i < data->stock.n; i++) put_stock(out, &data->stock.at[i]);
    fprintf(out, "};\n\nconst size_t tt_metal_rows = %zu, tt_stock_rows = %zu;\n", data->metals.n,
            data->stock.n);
    const bool written = !ferror(out);
    return fclose(out) == 0 && written;
}
