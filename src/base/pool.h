/* base/pool.h - a pool of memory that is given back all at once.
 * A piece, a tree, an assessment each own one: everything they point to lives in it. */
#ifndef TT_BASE_POOL_H
#define TT_BASE_POOL_H

#include <stdarg.h>
#include <stddef.h>

typedef struct tt_pool_block tt_pool_block;
typedef struct {
    tt_pool_block *newest;
    size_t used;  /* bytes taken in the newest block */
    size_t bytes; /* bytes held in all */
} tt_pool;

/** A pool starts as {0}; clear gives everything back and leaves it as new. */
void tt_pool_clear(tt_pool *pool);

/** n zeroed items of `size` bytes, aligned for any type; NULL without memory. */
void *tt_pool_take(tt_pool *pool, size_t n, size_t size);

/** A copy of a text of `length` bytes, ended by a zero; NULL without memory. */
char *tt_pool_copy(tt_pool *pool, const char *text, size_t length);

/** A copy of a zero-ended text; NULL for NULL or without memory. */
char *tt_pool_text(tt_pool *pool, const char *text);

/** Formatted text, as printf; NULL without memory. */
char *tt_pool_format(tt_pool *pool, const char *format, ...) __attribute__((format(printf, 2, 3)));
char *tt_pool_vformat(tt_pool *pool, const char *format, va_list args)
    __attribute__((format(printf, 2, 0)));

#endif
