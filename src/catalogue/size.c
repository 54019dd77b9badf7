/* catalogue/size.c - area and second moments of stock from its nominal size, m2 and m4; the stress
 * area of a thread. */
#include "catalogue/catalogue.h"
#include "section/section.h"

#define PI 3.14159265358979323846

static double square(double a)
{
    return a * a;
}

static bool is_round(const tt_stock *stock)
{
    return stock->deep <= 0.0;
}

double tt_stock_area(const tt_stock *stock)
{
    const double less = 2.0 * stock->wall, bore = stock->od - less;
    const bool hollow = stock->wall > 0.0;
    if (is_round(stock)) return PI / 4.0 * (square(stock->od) - (hollow ? square(bore) : 0.0));
    const double whole = tt_rounded_area(stock->od, stock->deep, stock->corner);
    return hollow ? whole - tt_rounded_area(bore, stock->deep - less, stock->corner_in) : whole;
}

double tt_stock_inertia(const tt_stock *stock, bool about_deep)
{
    const double less = 2.0 * stock->wall;
    const bool hollow = stock->wall > 0.0;
    if (is_round(stock)) {
        const double bore = hollow ? stock->od - less : 0.0;
        return PI / 64.0 * (square(square(stock->od)) - square(square(bore)));
    }
    const double wide = about_deep ? stock->deep : stock->od;
    const double deep = about_deep ? stock->od : stock->deep;
    const double whole = tt_rounded_inertia(wide, deep, stock->corner);
    return hollow ? whole - tt_rounded_inertia(wide - less, deep - less, stock->corner_in) : whole;
}

double tt_thread_area(double diameter, double pitch, bool inch)
{
    /* ISO 898-1; ASME B1.1: from memory */
    return PI / 4.0 * square(diameter - (inch ? 0.9743 : 0.938194) * pitch);
}
