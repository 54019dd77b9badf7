/* base/alloc.c - memory from the host, with the product of count and size checked. */
#include "base/alloc.h"

#include <stdint.h>
#include <stdlib.h>

void *tt_alloc(size_t n, size_t size)
{
    return calloc(n ? n : 1, size ? size : 1);
}

void *tt_realloc(void *block, size_t n, size_t size)
{
    if (size != 0 && n > SIZE_MAX / size) return NULL;
    const size_t bytes = n * size;
    return realloc(block, bytes > 0 ? bytes : 1);
}

void *tt_free(void *block)
{
    free(block);
    return NULL;
}
