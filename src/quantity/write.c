/* quantity/write.c - SI values to a reader's units with so many significant digits. The locale has
 * no say: only the digits of printf are used. */
#include "quantity/unit.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST = 17, SMALLEST = -4, LARGEST = 7 }; /* powers of ten written without an exponent */

static const struct {
    tt_kind kind;
    tt_unit_system system;
    const char *unit;
    double least;
} writings[] = {
#define TT_WRITING(kind, system, unit, least) {TT_Q_##kind, TT_##system, unit, least},
#include "quantity/writings.def"
#undef TT_WRITING
};

/* |value| = 0.d1 d2 d3 ... times ten to `point`. */
typedef struct {
    char digit[MOST + 1];
    int n, point;
} rounded;

static rounded round_to(double value, int n)
{
    rounded r = {.n = n};
    char text[64];
    snprintf(text, sizeof text, "%.*e", n - 1, fabs(value));
    const char *power = strchr(text, 'e');
    int k = 0;
    for (const char *at = text; at < power && k < n; at++) {
        if (*at >= '0' && *at <= '9') r.digit[k++] = *at;
    }
    r.point = value == 0.0 ? 1 : (int)strtol(power + 1, NULL, 10) + 1;
    if (value == 0.0) r.n = 1;
    return r;
}

static double size_of(const rounded *r)
{
    return strtod(r->digit, NULL) * pow(10.0, r->point - (int)strlen(r->digit));
}

/* The digits with the decimal point behind `point` of them. */
static void put_plain(tt_text *out, const rounded *r, int point)
{
    if (point <= 0) {
        tt_text_put(out, "0.");
        tt_text_fill(out, '0', (size_t)-point);
        tt_text_add(out, r->digit, (size_t)r->n);
    } else if (point >= r->n) {
        tt_text_add(out, r->digit, (size_t)r->n);
        tt_text_fill(out, '0', (size_t)(point - r->n));
    } else {
        tt_text_add(out, r->digit, (size_t)point);
        tt_text_put(out, ".");
        tt_text_add(out, r->digit + point, (size_t)(r->n - point));
    }
}

static void put_number(tt_text *out, const rounded *r)
{
    if (r->point > SMALLEST && r->point <= LARGEST) {
        put_plain(out, r, r->point);
        return;
    }
    const int lead = ((r->point - 1) % 3 + 3) % 3 + 1; /* exponents in steps of three */
    put_plain(out, r, lead);
    tt_text_format(out, "e%d", r->point - lead);
}

void tt_quantity_write(tt_text *out, double value, tt_kind kind, tt_unit_system system, int digits)
{
    if (!isfinite(value)) {
        tt_text_put(out, "not a finite number");
        return;
    }
    const int n = digits < 1 ? 1 : digits > MOST ? MOST : digits;
    rounded best = {.n = 0};
    const char *unit = "";
    for (size_t i = sizeof writings / sizeof *writings; i-- > 0 && best.n == 0;) {
        if (writings[i].kind != kind || writings[i].system != system) continue;
        tt_unit own;
        tt_unit_slip slip;
        tt_unit_parse(writings[i].unit, strlen(writings[i].unit), &own, &slip);
        const rounded r = round_to(value / own.factor, n);
        if (size_of(&r) < writings[i].least * (1.0 - 1e-9)) continue;
        best = r;
        unit = writings[i].unit;
    }
    if (best.n == 0) best = round_to(value, n);
    if (value < 0.0) tt_text_put(out, "-");
    put_number(out, &best);
    if (unit[0]) tt_text_format(out, " %s", unit);
}

void tt_quantity_write_exactly(tt_text *out, double value, tt_kind kind)
{
    for (int n = 1; n <= MOST; n++) {
        const rounded r = round_to(value, n);
        tt_text digits = {0};
        if (value < 0.0) tt_text_put(&digits, "-");
        put_number(&digits, &r);
        tt_text_format(&digits, " %s", tt_kind_si(kind));
        const bool same = tt_quantity_read(tt_text_of(&digits), kind, 0).value == value;
        if (same || n == MOST || digits.failed) tt_text_put(out, tt_text_of(&digits));
        if (digits.failed) out->failed = true;
        const bool done = same || digits.failed;
        tt_text_clear(&digits);
        if (done) return;
    }
}
