/* quantity/read.c - "6 ft 2 1/2 in", "1.2 kN/m", "12 %" to a number in SI. */
#include "quantity/hint.h"
#include "quantity/number.h"

#include <float.h>
#include <math.h>
#include <string.h>

/* The text with the place that is read, without the blanks at its end. */
typedef struct {
    const char *text;
    size_t at, end;
    tt_kind kind;
    double number; /* without its sign */
} reading;

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool no_unit(const reading *r, size_t start, tt_quantity *out)
{
    const char *word = tt_kind_word(r->kind);
    const int length = r->end - start < 40 ? (int)(r->end - start) : 40;
    if (r->kind == TT_Q_LENGTH)
        return tt_quantity_fail(out, TT_QUANTITY_NO_UNIT, start, r->end - start,
                                "write %.*s mm, or say `units: mm` once at the top of the file",
                                length, r->text + start);
    return tt_quantity_fail(out, TT_QUANTITY_NO_UNIT, start, r->end - start,
                            "%s %s needs its unit: write %.*s %s, or as in %s", tt_article(word),
                            word, length, r->text + start, tt_kind_si(r->kind),
                            tt_kind_example(r->kind));
}

static bool bare(const reading *r, size_t start, double bare_unit, tt_quantity *out)
{
    out->bare = true;
    if (r->kind != TT_Q_PURE && r->number > 0.0 && !(bare_unit > 0.0))
        return no_unit(r, start, out);
    out->value = r->kind == TT_Q_PURE || !(bare_unit > 0.0) ? r->number : r->number * bare_unit;
    return true;
}

static bool per_cent(const reading *r, tt_quantity *out)
{
    out->value = r->number / 100.0;
    if (r->kind == TT_Q_PURE) return true;
    return tt_quantity_due(out, TT_QUANTITY_WRONG, r->at, 1, r->kind, "");
}

static bool fits(const reading *r, size_t length, const tt_unit *unit, tt_quantity *out)
{
    const tt_unit due = tt_kind_unit(r->kind);
    if (r->kind != TT_Q_PURE && tt_unit_same(unit, &due)) return true;
    return tt_hint_wrong(out, r->text, r->at, length, unit, r->kind);
}

/* "2 1/2 in" behind "6 ft "; the only two units that are written together. */
static bool feet_and_inches(reading *r, size_t length, tt_quantity *out)
{
    const char *text = r->text;
    const size_t begin = r->at, second = begin + length + strspn(text + begin + length, " ");
    if (length != 2 || memcmp(text + begin, "ft", 2) != 0 || !is_digit(text[second]))
        return tt_quantity_fail(
            out, TT_QUANTITY_UNKNOWN, begin, r->end - begin,
            "one unit behind the number; only 6 ft 2 1/2 in is written together");
    size_t at = second;
    double inches = 0.0;
    if (!tt_number_scan(text, &at, &inches, TT_Q_LENGTH, out)) return false;
    if (r->end - at != 2 || memcmp(text + at, "in", 2) != 0)
        return tt_quantity_fail(out, TT_QUANTITY_UNKNOWN, second, r->end - second,
                                "behind feet stand inches, as in 6 ft 2 1/2 in");
    if (floor(r->number) < r->number || inches >= 12.0)
        return tt_quantity_fail(out, TT_QUANTITY_NUMBER, 0, r->end,
                                "whole feet, then inches below 12, as in 6 ft 2 1/2 in");
    const tt_unit unit = tt_kind_unit(TT_Q_LENGTH);
    out->value = r->number * tt_length_unit("ft") + inches * tt_length_unit("in");
    return fits(r, r->end - begin, &unit, out);
}

static bool with_unit(reading *r, tt_quantity *out)
{
    const char *word = r->text + r->at;
    const size_t length = strcspn(word, " ");
    const bool inverse = word[0] == '1' && word[1] == '/' && !is_digit(word[2]);
    if (is_digit(word[0]) && !inverse)
        return tt_quantity_fail(out, TT_QUANTITY_NUMBER, r->at, length,
                                "one number: thousands without blanks, mixed numbers as 1 1/2");
    if (r->at + length < r->end) return feet_and_inches(r, length, out);
    tt_unit unit;
    tt_unit_slip slip;
    if (!tt_unit_parse_for(word, length, r->kind, &unit, &slip))
        return tt_hint_unknown(out, r->text, r->at, slip, r->kind);
    out->value = r->number * unit.factor;
    return fits(r, length, &unit, out);
}

static bool computable(const reading *r, size_t start, tt_quantity *out)
{
    const bool lost = r->number > 0.0 && out->value < DBL_MIN;
    if (isfinite(out->value) && !lost) return true;
    return tt_quantity_fail(out, TT_QUANTITY_RANGE, start, r->end - start,
                            "the value is larger or smaller than any that is computed with");
}

tt_quantity tt_quantity_read(const char *text, tt_kind kind, double bare_unit)
{
    tt_quantity out = {0};
    reading r = {.text = text, .end = strlen(text), .kind = kind};
    while (r.end > 0 && text[r.end - 1] == ' ') r.end--;
    const size_t start = strspn(text, " ");
    const bool minus = text[start] == '-';
    r.at = start + (minus || text[start] == '+');
    bool read = tt_number_scan(text, &r.at, &r.number, kind, &out);
    if (read && r.at >= r.end)
        read = bare(&r, start, bare_unit, &out);
    else if (read && text[r.at] == '%' && r.at + 1 == r.end)
        read = per_cent(&r, &out);
    else if (read)
        read = with_unit(&r, &out);
    read = read && computable(&r, start, &out);
    if (!read) out.value = 0.0;
    if (read && minus && out.value > 0.0) out.value = -out.value;
    return out;
}
