/* quantity/number.c - decimal numbers, fractions and mixed numbers, from text to double. The locale
 * has no say: digits are checked here, and what strtod gets has no decimal point. */
#include "quantity/number.h"

#include <float.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_DIGITS = 40, MOST_EXPONENT = 9999 };

/* Signs that people write behind a number and that are not read. */
static const struct {
    const char *bytes, *hint;
} odd[] = {
    {",", "commas are not read: write a decimal point, thousands without a mark"},
    {"_", "write the digits without marks between them, such as 1000"},
    {".", "one decimal point, with digits behind it, such as 4.5"},
    {"'", "write feet and inches as 6 ft 2 1/2 in"},
    {"\"", "write in for the inch mark, as in 1 1/2 in"},
    {"\xE2\x80\xB2", "write feet and inches as 6 ft 2 1/2 in"},
    {"\xE2\x80\xB3", "write in for the inch mark, as in 1 1/2 in"},
    {"\xE2\x80\x9D", "write in for the inch mark, as in 1 1/2 in"},
    {"\xC2\xB0", "write deg for an angle, K for a temperature difference"},
    {"\xC2\xBA", "write deg for an angle, K for a temperature difference"},
    {"\xC2\xA0", "write a plain blank between number and unit"},
    {"\xE2\x80\xAF", "write a plain blank between number and unit"},
    {"\t", "write a plain blank between number and unit"},
    {"-", "a minus stands in front of the whole; mixed numbers are written as 1 1/2"},
    {"x", "only decimal numbers are read, such as 16"},
    {"X", "only decimal numbers are read, such as 16"},
    {"\xC2\xBC", "write the fraction as 1/4"},
    {"\xC2\xBD", "write the fraction as 1/2"},
    {"\xC2\xBE", "write the fraction as 3/4"},
};

const char *tt_article(const char *word)
{
    return strchr("aeiou", word[0]) ? "an" : "a";
}

bool tt_quantity_fail(tt_quantity *out, tt_quantity_fault fault, size_t at, size_t length,
                      const char *format, ...)
{
    out->fault = fault;
    out->at = at;
    out->length = length;
    va_list args;
    va_start(args, format);
    vsnprintf(out->hint, sizeof out->hint, format, args);
    va_end(args);
    out->plain = strlen(out->hint);
    return false;
}

bool tt_quantity_due(tt_quantity *out, tt_quantity_fault fault, size_t at, size_t length,
                     tt_kind kind, const char *before)
{
    const char *word = tt_kind_word(kind);
    tt_quantity_fail(out, fault, at, length, "%s%s %s is due", before, tt_article(word), word);
    snprintf(out->hint + out->plain, sizeof out->hint - out->plain, ", for example %s",
             tt_kind_example(kind));
    return false;
}

static size_t digits(const char *text)
{
    return strspn(text, "0123456789");
}

/* The bytes of an exponent such as "e-3", 0 when there is none. */
static size_t exponent(const char *text, long *power)
{
    if (text[0] != 'e' && text[0] != 'E') return 0;
    const size_t sign = text[1] == '-' || text[1] == '+';
    const size_t n = digits(text + 1 + sign);
    for (size_t i = 0; i < n && *power < MOST_EXPONENT; i++) {
        *power = *power * 10 + (text[1 + sign + i] - '0');
    }
    if (text[1] == '-') *power = -*power;
    return n ? 1 + sign + n : 0;
}

/* The bytes of a decimal number, 0 when it is none. "12.5e3" goes to strtod as "125e2". */
static size_t decimal(const char *text, double *value, bool *whole)
{
    const size_t before = digits(text);
    const size_t after = text[before] == '.' ? digits(text + before + 1) : 0;
    if (before + after == 0 || before + after > MOST_DIGITS) return 0;
    const size_t mantissa = before + (after ? after + 1 : 0);
    long power = 0;
    const size_t n = mantissa + exponent(text + mantissa, &power);
    char plain[MOST_DIGITS + 16];
    snprintf(plain, sizeof plain, "%.*s%.*se%ld", (int)before, text, (int)after,
             text + before + (after ? 1 : 0), power - (long)after);
    *value = strtod(plain, NULL);
    *whole = n == before;
    const bool nil = strspn(plain, "0") >= before + after;
    if (!nil && (!isfinite(*value) || *value < DBL_MIN)) *value = NAN;
    return n;
}

/* The bytes of "1/100" with its value, 0 when there is none. */
static size_t fraction(const char *text, double *value)
{
    const size_t upper = digits(text);
    if (upper == 0 || upper > MOST_DIGITS || text[upper] != '/') return 0;
    const size_t lower = digits(text + upper + 1);
    if (lower == 0 || lower > MOST_DIGITS) return 0;
    double a = 0.0, b = 0.0;
    bool whole = false;
    decimal(text, &a, &whole);
    const size_t read = decimal(text + upper + 1, &b, &whole);
    *value = whole && read == lower ? a / b : NAN;
    return upper + 1 + (read > lower ? read : lower);
}

static bool followed_well(const char *text, size_t at, tt_quantity *out)
{
    if (text[at] == '\0' || text[at] == ' ') return true;
    for (size_t i = 0; i < sizeof odd / sizeof *odd; i++) {
        const size_t n = strlen(odd[i].bytes);
        if (strncmp(text + at, odd[i].bytes, n) == 0)
            return tt_quantity_fail(out, TT_QUANTITY_NUMBER, at, n, "%s", odd[i].hint);
    }
    return true;
}

/* What is typed, or put in by a word processor, in front of a number. */
static const char *const dashes[][2] = {
    {"\xE2\x88\x92", "the minus as -"},
    {"\xE2\x80\x93", "the minus as -, not as an en dash"},
    {"\xE2\x80\x94", "the minus as -, not as an em dash"},
    {"\xE2\x80\x9C", "the number without curly quotes"},
    {"\xE2\x80\x9D", "the number without curly quotes"},
    {"\xE2\x80\x9E", "the number without curly quotes"},
};

static bool no_number(const char *text, size_t at, tt_kind kind, tt_quantity *out)
{
    const size_t length = strcspn(text + at, " ");
    for (size_t i = 0; i < sizeof dashes / sizeof *dashes; i++)
        if (strncmp(text + at, dashes[i][0], 3) == 0)
            return tt_quantity_fail(out, TT_QUANTITY_NUMBER, at, 3, "write %s", dashes[i][1]);
    if (digits(text + at) > MOST_DIGITS)
        return tt_quantity_fail(out, TT_QUANTITY_NUMBER, at, digits(text + at),
                                "too many digits: 17 say all that can be told");
    return tt_quantity_due(out, TT_QUANTITY_NUMBER, at, length, kind, "");
}

/* A fraction at *at, behind a whole number or for itself. */
static bool add_fraction(const char *text, size_t *at, double *value, bool mixed, tt_quantity *out)
{
    double part = 0.0;
    const size_t n = fraction(text + *at, &part);
    if (n == 0) return true;
    if (!isfinite(part))
        return tt_quantity_fail(out, TT_QUANTITY_NUMBER, *at, n,
                                "a fraction has whole numbers above and below, none below is 0");
    if (mixed && part >= 1.0)
        return tt_quantity_fail(out, TT_QUANTITY_NUMBER, *at, n,
                                "the fraction behind a whole number is below 1, as in 1 1/2");
    *value = mixed ? *value + part : part;
    *at += n;
    return true;
}

bool tt_number_scan(const char *text, size_t *at, double *value, tt_kind kind, tt_quantity *out)
{
    bool whole = false;
    const size_t start = *at, n = decimal(text + start, value, &whole);
    if (n == 0) return no_number(text, start, kind, out);
    if (!isfinite(*value))
        return tt_quantity_fail(out, TT_QUANTITY_RANGE, start, n,
                                "the number is larger or smaller than any that is computed with");
    *at += n;
    if (whole && text[*at] == '/') {
        *at = start;
        if (!add_fraction(text, at, value, false, out)) return false;
        if (*at == start) *at += n; /* no fraction: "1/K" */
    } else if (whole && text[*at] == ' ') {
        *at += strspn(text + *at, " ");
        if (!add_fraction(text, at, value, true, out)) return false;
    }
    *at += strspn(text + *at, " ");
    return followed_well(text, *at, out);
}
