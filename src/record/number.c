/* record/number.c - a double as JSON text: the fewest digits, 15 to 17, that read back equal. */
#include "record/put.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void tt_record_point(char *text)
{
    char *out = text;
    bool sign = false;
    for (const char *in = text; *in; in++) {
        const bool own = strchr("+-0123456789e", *in) != NULL;
        if (own) *out++ = *in;
        if (!own && !sign) *out++ = '.';
        sign = !own;
    }
    *out = '\0';
}

bool tt_record_number(double value, char text[32])
{
    if (!isfinite(value)) return false;
    const double plain = value == 0.0 ? 0.0 : value; /* -0 reads back equal to 0 */
    for (int digits = 15; digits <= 17; digits++) {
        snprintf(text, 32, "%.*g", digits, plain);
        if (strtod(text, NULL) == plain) break;
    }
    tt_record_point(text);
    return true;
}
