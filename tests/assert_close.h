/* tests/assert_close.h - comparison of doubles as doubles, with a relative or an absolute limit. */
#ifndef TT_TESTS_ASSERT_CLOSE_H
#define TT_TESTS_ASSERT_CLOSE_H

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <cmocka.h>

static inline void tt_close(double got, double expected, double limit, const char *what,
                            const char *file, int line)
{
    if (fabs(got - expected) <= limit) return; /* false for NaN */
    print_error("%s: got %.15g, expected %.15g within %.3g\n", what, got, expected, limit);
    _fail(file, line);
}

/** |got - expected| <= limit */
#define assert_near(got, expected, limit) tt_close(got, expected, limit, #got, __FILE__, __LINE__)
/** |got - expected| <= relative * |expected| */
#define assert_close(got, expected, relative) \
    tt_close(got, expected, (relative) * fabs(expected), #got, __FILE__, __LINE__)

#endif
