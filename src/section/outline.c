/* section/outline.c - lengths, areas and widths of the outside of a limb, m and m2. */
#include "section/section.h"
#include "section/parts.h"

#include <math.h>

/* Perimeter of an ellipse from its semi-axes by the arithmetic-geometric mean:
 * P = (2 pi / M)(a0^2 - sum 2^(n-1) c_n^2), c_0^2 = a^2 - b^2, c_n = (a_(n-1) - b_(n-1)) / 2.
 * Abramowitz and Stegun, Handbook of Mathematical Functions, 17.6, FROM MEMORY. */
static double ellipse_perimeter(double p, double q)
{
    double a = fmax(p, q), b = fmin(p, q);
    if (b <= 0.0) return 4.0 * a;
    double sum = 0.5 * (a * a + b * b), power = 0.5;
    double c = a;
    while (c > 1e-9 * a) {
        c = 0.5 * (a - b);
        const double mean = 0.5 * (a + b);
        b = sqrt(a * b);
        a = mean;
        power *= 2.0;
        sum -= power * c * c;
    }
    return 2.0 * PI / a * sum;
}

bool tt_outline_of_girth(double girth, double deep, tt_outline *out)
{
    if (!(girth > 0.0)) return false;
    if (!(deep > 0.0)) {
        *out = (tt_outline){TT_OUTLINE_ELLIPSE, girth / PI, girth / PI};
        return true;
    }
    if (!(girth > 2.0 * deep)) return false;
    /* The perimeter grows with the width, from 2 deep at none; it is longer than twice the width.
     */
    double low = 0.0, high = 0.5 * girth;
    while (high - low > 1e-15 * girth) {
        const double wide = 0.5 * (low + high);
        if (ellipse_perimeter(0.5 * wide, 0.5 * deep) < girth)
            low = wide;
        else
            high = wide;
    }
    *out = (tt_outline){TT_OUTLINE_ELLIPSE, 0.5 * (low + high), deep};
    return true;
}

tt_outline tt_outline_between(const tt_outline *a, const tt_outline *b, double t)
{
    return (tt_outline){a->kind, a->wide + t * (b->wide - a->wide),
                        a->deep + t * (b->deep - a->deep)};
}

double tt_outline_area(const tt_outline *outline)
{
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
        return 0.25 * PI * outline->wide * outline->deep;
    case TT_OUTLINE_BOX:
        return outline->wide * outline->deep;
    }
    return 0.0;
}

double tt_outline_perimeter(const tt_outline *outline)
{
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
        return ellipse_perimeter(0.5 * outline->wide, 0.5 * outline->deep);
    case TT_OUTLINE_BOX:
        return 2.0 * (outline->wide + outline->deep);
    }
    return 0.0;
}

double tt_outline_width(const tt_outline *outline, double uy, double uz)
{
    const double y = outline->wide * fabs(uy), z = outline->deep * fabs(uz);
    switch (outline->kind) {
    case TT_OUTLINE_NONE:
        return 0.0;
    case TT_OUTLINE_ELLIPSE:
        return hypot(y, z);
    case TT_OUTLINE_BOX:
        return y + z;
    }
    return 0.0;
}

double tt_outline_closing_wall(const tt_outline *outline)
{
    return outline->kind == TT_OUTLINE_NONE ? 0.0 : 0.5 * fmin(outline->wide, outline->deep);
}

/* The inside is the set of points at least a wall from the outside, trimmed or not, so a circle of
 * radius r fits inside it exactly where one of radius r + wall fits inside the outside. The largest
 * in an ellipse or a box is as wide as the smaller width. */
double tt_outline_bore(const tt_outline *outline, double wall)
{
    return fmax(0.0, 2.0 * (tt_outline_closing_wall(outline) - wall));
}
