/* build/starts.c - the files of data/starts as const arrays of lines, for compose/start.h.
 *   starts OUT.c NAME.yaml... */
#include <stdio.h>
#include <string.h>

enum { LONGEST = 256 };

static void put_line(FILE *out, char *line)
{
    line[strcspn(line, "\n")] = '\0';
    fputs("    \"", out);
    for (; *line; line++) {
        if (*line == '"' || *line == '\\') fputc('\\', out);
        fputc(*line, out);
    }
    fputs("\",\n", out);
}

/* "figure" of "some/where/figure.yaml" */
static int name_length(const char *path, const char **name)
{
    const char *stroke = strrchr(path, '/');
    *name = stroke ? stroke + 1 : path;
    return (int)strcspn(*name, ".");
}

static int put_file(FILE *out, const char *path)
{
    char line[LONGEST];
    const char *name;
    const int n = name_length(path, &name);
    FILE *in = fopen(path, "r");
    if (!in) return 0;
    fprintf(out, "static const char *const %.*s[] = {\n", n, name);
    int whole = 1;
    while (whole && fgets(line, sizeof line, in)) {
        whole = strchr(line, '\n') != NULL;
        put_line(out, line);
    }
    fputs("    NULL};\n\n", out);
    whole = whole && !ferror(in);
    fclose(in);
    return whole;
}

int main(int argc, char **argv)
{
    FILE *out = argc > 2 ? fopen(argv[1], "w") : NULL;
    int whole = out != NULL;
    if (out)
        fputs("/* Made by the build from data/starts; do not edit. */\n#include "
              "\"compose/start.h\"\n\n",
              out);
    for (int i = 2; whole && i < argc; i++) whole = put_file(out, argv[i]);
    if (out) fputs("const tt_start tt_starts[] = {", out);
    for (int i = 2; whole && i < argc; i++) {
        const char *name;
        const int n = name_length(argv[i], &name);
        fprintf(out, "{\"%.*s\", %.*s}, ", n, name, n, name);
    }
    if (out) fputs("{NULL, NULL}};\n", out);
    if (out && fclose(out) != 0) whole = 0;
    if (!whole) fputs("usage: starts OUT.c NAME.yaml..., no line over 254 bytes\n", stderr);
    return whole ? 0 : 1;
}
