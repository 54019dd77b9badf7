/* piecefile/pipes.c - a pipe's nominal size is not its outside diameter: hints where one was taken
 * for the other. m. */
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define ALIKE 0.006 /* of a diameter; the table is rounded to 0.1 mm */
#define WALL 0.01   /* of a wall */

static bool near_to(double a, double b, double part)
{
    return fabs(a - b) <= part * b;
}

/* Bytes of "1 1/4" in "1 1/4 sch 40". */
static size_t nominal(const tt_stock *stock)
{
    size_t n = strspn(stock->name, "0123456789/ ");
    while (n && stock->name[n - 1] == ' ') n--;
    return n;
}

/* The nominal size, m. */
static double nominal_size(const tt_stock *stock)
{
    char words[40];
    snprintf(words, sizeof words, "%.*s in", (int)nominal(stock), stock->name);
    return tt_quantity_read(words, TT_Q_LENGTH, 0).value;
}

static const tt_stock *pipe_at(const tt_reader *reader, size_t i)
{
    const tt_stock *stock = tt_stock_at(reader->data, i);
    return stock && strcmp(stock->form, "pipe") == 0 ? stock : NULL;
}

bool tt_hint_outside(const tt_reader *reader, const char *name, char *hint, size_t size)
{
    char words[40];
    const size_t n = strspn(name, "0123456789.");
    snprintf(words, sizeof words, "%.*s in", n < 20 ? (int)n : 20, name);
    const double outside = tt_quantity_read(words, TT_Q_LENGTH, 0).value;
    for (size_t i = 0; n && i < tt_stock_count(reader->data); i++) {
        const tt_stock *stock = pipe_at(reader, i);
        if (!stock || !near_to(outside, stock->od, ALIKE)) continue;
        snprintf(hint, size, "%s is the outside of %.*s: write %.*s%.20s", words,
                 (int)nominal(stock), stock->name, (int)nominal(stock), stock->name, name + n);
        return true;
    }
    return false;
}

/* A tube of this diameter is bought too; told only where the wall is one of that pipe's. */
void tt_doubt_nominal(tt_reader *reader, const tt_node *node, const double tube[2])
{
    char hint[120];
    const tt_stock *found = NULL;
    for (size_t i = 0; i < tt_stock_count(reader->data); i++) {
        const tt_stock *stock = pipe_at(reader, i);
        if (!stock) continue;
        if (near_to(tube[0], stock->od, ALIKE)) return;
        if (!found && near_to(tube[1], stock->wall, WALL) &&
            near_to(tube[0], nominal_size(stock), 1e-6))
            found = stock;
    }
    if (!found) return;
    snprintf(hint, sizeof hint, "for the pipe: pipe: %.40s, or tube: [%.3g in, %.3g in]",
             found->name, found->od / 0.0254, tube[1] / 0.0254);
    tt_tell(reader, TT_WARNING, TT_D_DOUBT, node, node->place, hint,
            "a tube of %.3g in outside; pipe %.*s, which has this wall, is %.3g in outside",
            tube[0] / 0.0254, (int)nominal(found), found->name, found->od / 0.0254);
}
