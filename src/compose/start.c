/* compose/start.c - a piece file to begin with, its lines chosen by basis and unit, its lengths
 * from mm to round inches where inches are asked for. */
#include "compose/start.h"

#include "base/diags.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { QUARTERS = 4 }; /* of an inch: as fine as a tape is read on a maquette */

static const char *const bases[] = {"eu", "us", NULL};
static const char *const units[] = {"mm", "in", NULL};

/* The choice among the words, NULL and told when it is none of them. */
static const char *choice(const char *option, const char *asked, const char *const *words,
                          tt_diags *diags)
{
    tt_text all = {0};
    const char *found = NULL;
    for (size_t i = 0; words[i]; i++) {
        if (strcmp(words[i], asked) == 0) found = words[i];
        tt_text_format(&all, "%s%s", i ? ", " : "it reads: ", words[i]);
    }
    if (!found)
        tt_complain(diags, TT_D_CHOICE, (tt_place){0}, tt_text_of(&all),
                    "%s does not read the word `%.60s`", option, asked);
    tt_text_clear(&all);
    return found;
}

static const tt_start *start_named(const char *asked, tt_diags *diags)
{
    enum { MOST = 16 };
    const char *names[MOST + 1] = {NULL};
    const tt_start *found = NULL;
    for (size_t i = 0; tt_starts[i].name && i < MOST; i++) {
        names[i] = tt_starts[i].name;
        if (strcmp(names[i], asked) == 0) found = &tt_starts[i];
    }
    return choice("--for", asked, names, diags) ? found : NULL;
}

/* Takes the marks in front of the line; false when the line is for another basis or unit. */
static bool is_meant(const char **line, const char *basis, const char *unit)
{
    bool meant = true;
    while ((*line)[0] == '@') {
        meant = meant && (strncmp(*line + 1, basis, 2) == 0 || strncmp(*line + 1, unit, 2) == 0);
        *line += strlen("@eu ");
    }
    return meant;
}

/* A length of the file in the unit asked for, as wide as it stands there. */
static void put_length(tt_text *out, const char *from, size_t n, bool inches)
{
    const double mm = strtod(from, NULL);
    const double inch = round(mm / 25.4 * QUARTERS) / QUARTERS + 0.0; /* never -0 */
    tt_text_format(out, "%*.6g", (int)n, inches ? inch : mm);
}

static void put_line(tt_text *out, const char *line, bool inches)
{
    const char *open, *shut;
    while ((open = strchr(line, '<')) && (shut = strchr(open, '>'))) {
        tt_text_add(out, line, (size_t)(open - line));
        put_length(out, open + 1, (size_t)(shut - open - 1), inches);
        line = shut + 1;
    }
    tt_text_format(out, "%s\n", line);
}

tt_status tt_compose_start(const tt_start_options *options, tt_diags *diags, tt_text *out)
{
    const tt_start *start = start_named(options->what ? options->what : tt_starts[0].name, diags);
    const char *basis = choice("--basis", options->basis ? options->basis : bases[0], bases, diags);
    const bool us = basis && strcmp(basis, "us") == 0;
    const char *unit = choice("--units", options->units ? options->units : units[us], units, diags);
    if (!start || !basis || !unit) return TT_E_INPUT;
    for (size_t i = 0; start->line[i]; i++) {
        const char *line = start->line[i];
        if (is_meant(&line, basis, unit)) put_line(out, line, strcmp(unit, "in") == 0);
    }
    return out->failed ? TT_E_NOMEM : TT_OK;
}
