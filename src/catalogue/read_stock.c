/* catalogue/read_stock.c - rows of stock: sizes that can be, a printed mass against area times
 * density, a printed stress area against the formula of the thread. */
#include "catalogue/read.h"

#include <math.h>
#include <string.h>

static const char *form_of(const tt_rows *rows)
{
    return rows->field[0].text;
}

static void wrong(tt_rows *rows, tt_number number, const char *what, const char *words)
{
    tt_complain(rows->diags, number, rows->field[1].place, NULL, "%s: %s", what, words);
}

/* A length over nothing; what is none is told by tt_row_measure. */
static double length(tt_rows *rows, const tt_stock *stock, size_t field, size_t unit,
                     const char *what)
{
    const double value = tt_row_measure(rows, field, unit, "m", what);
    if (value <= 0.0)
        tt_complain(rows->diags, TT_D_DATA_SIZE, rows->field[field].place, NULL,
                    "%s: %s is not over 0", stock->name, what);
    return value;
}

static tt_stock begin(tt_rows *rows)
{
    tt_row_end(rows);
    return (tt_stock){.name = tt_row_words(rows, 1, "the name"),
                      .series = tt_row_words(rows, 2, "the series"),
                      .form = form_of(rows),
                      .at = {rows->file, rows->row.line}};
}

/* ---- mass ---- */

/* Within 2 %: carbon steel 7850, stainless steel 7930 to 8000 kg/m3. */
static void weigh(tt_rows *rows, const tt_stock *stock, size_t field)
{
    const double area = tt_stock_area(stock);
    const double light = area * (stock->stainless ? 7930.0 : 7850.0),
                 heavy = area * (stock->stainless ? 8000.0 : 7850.0);
    if (stock->mass < 0.98 * light || stock->mass > 1.02 * heavy)
        tt_complain(rows->diags, TT_D_DATA_MASS, rows->field[field].place,
                    "check the size, the mass and the kind of steel",
                    "%s: mass of %.4g kg/m against area x density %.4g kg/m", stock->name,
                    stock->mass, light);
}

/* mass, its unit, carbon or stainless: three fields from `first` on; a solid may leave the steel
 * open. */
static void read_mass(tt_rows *rows, tt_stock *stock, size_t first)
{
    const bool open = stock->wall <= 0.0 && !*rows->field[first + 2].text;
    stock->stainless = !open && tt_row_choice(rows, first + 2, "stainless", "carbon");
    if (!*rows->field[first].text) return;
    stock->mass = tt_row_measure(rows, first, first + 1, "kg/m", "mass");
    weigh(rows, stock, first);
}

/* ---- keeping ---- */

static bool differ(double a, double b)
{
    return a < b || a > b;
}

static bool another_size(const tt_stock *a, const tt_stock *b)
{
    return differ(a->od, b->od) || differ(a->wall, b->wall) || differ(a->deep, b->deep) ||
           differ(a->corner, b->corner) || differ(a->pitch, b->pitch);
}

static void seek_twin(tt_rows *rows, const tt_stock *stock)
{
    for (size_t i = 0; i < rows->into->stock.n; i++) {
        const tt_stock *other = &rows->into->stock.at[i];
        if (strcmp(other->form, stock->form) != 0 ||
            !tt_same_size(stock->form, other->name, stock->name))
            continue;
        if (strcmp(other->series, stock->series) == 0)
            tt_complain(rows->diags, TT_D_DATA_TWICE, rows->field[1].place, "keep one of the two",
                        "%s of %s a second time, first in %s", stock->name, stock->series,
                        tt_row_first(rows, &other->at));
        else if (another_size(stock, other))
            tt_complain(rows->diags, TT_D_DATA_TWICE, rows->field[1].place,
                        "one name is one size in all series", "%s has another size than in %s",
                        stock->name, tt_row_first(rows, &other->at));
    }
}

static void keep(tt_rows *rows, tt_stock stock, size_t source)
{
    stock.source = tt_row_source(rows, source);
    seek_twin(rows, &stock);
    if (!tt_list_push(&rows->into->stock, stock)) rows->no_memory = true;
}

/* ---- kinds ---- */

void tt_row_round(tt_rows *rows)
{
    tt_stock stock = begin(rows);
    const bool bar = strcmp(form_of(rows), "bar") == 0;
    stock.od = length(rows, &stock, 3, 5, "diameter");
    if (!bar)
        stock.wall = length(rows, &stock, 4, 5, "wall");
    else if (*rows->field[4].text)
        wrong(rows, TT_D_DATA_SIZE, stock.name, "a bar has no wall");
    if (stock.wall > 0.0 && stock.od > 0.0 && stock.wall >= stock.od / 2.0)
        wrong(rows, TT_D_DATA_SIZE, stock.name, "the wall is not under half the diameter");
    read_mass(rows, &stock, 6);
    keep(rows, stock, 9);
}

void tt_row_box(tt_rows *rows)
{
    tt_stock stock = begin(rows);
    stock.od = length(rows, &stock, 3, 8, "width");
    stock.deep = length(rows, &stock, 4, 8, "depth");
    stock.wall = length(rows, &stock, 5, 8, "wall");
    stock.corner = tt_row_measure(rows, 6, 8, "m", "corner");
    stock.corner_in = tt_row_measure(rows, 7, 8, "m", "inside corner");
    const double least = fmin(stock.od, stock.deep) / 2.0;
    if (stock.wall >= least)
        wrong(rows, TT_D_DATA_SIZE, stock.name, "the wall is not under half the narrow side");
    if (stock.corner < 0.0 || stock.corner > least || stock.corner_in < 0.0 ||
        stock.corner_in > stock.corner)
        wrong(rows, TT_D_DATA_SIZE, stock.name,
              "the outside corner is not within half the narrow side, or the inside one over it");
    read_mass(rows, &stock, 9);
    keep(rows, stock, 12);
}

void tt_row_flat(tt_rows *rows)
{
    tt_stock stock = begin(rows);
    stock.od = length(rows, &stock, 3, 5, "width");
    stock.deep = length(rows, &stock, 4, 5, "thickness");
    if (stock.deep > stock.od)
        wrong(rows, TT_D_DATA_SIZE, stock.name, "thicker than it is wide: width stands first");
    read_mass(rows, &stock, 6);
    keep(rows, stock, 9);
}

/* In inches the pitch is given by the threads per inch. */
static double pitch_of(tt_rows *rows, const tt_stock *stock, bool inch)
{
    const double value = length(rows, stock, 4, 5, inch ? "threads per inch" : "pitch");
    const double one = 0.0254;
    return inch ? one * one / value : value;
}

void tt_row_rod(tt_rows *rows)
{
    tt_stock stock = begin(rows);
    const bool inch = strcmp(rows->field[5].text, "in") == 0;
    stock.od = length(rows, &stock, 3, 5, "diameter");
    stock.pitch = pitch_of(rows, &stock, inch);
    stock.area = tt_row_measure(rows, 6, 7, "m2", "stress area");
    const double due = tt_thread_area(stock.od, stock.pitch, inch);
    if (stock.area < 0.99 * due || stock.area > 1.01 * due)
        tt_complain(rows->diags, TT_D_DATA_SIZE, rows->field[6].place,
                    "coarse thread: check diameter and pitch",
                    "%s: stress area of %.4g mm2 against %.4g mm2 by the formula of the thread",
                    stock.name, stock.area * 1e6, due * 1e6);
    keep(rows, stock, 8);
}
