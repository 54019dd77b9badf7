/* base/alloc.h - the only pair of functions that takes and gives back memory.
 * A test links its own pair in place of alloc.c and refuses each allocation in turn. */
#ifndef TT_BASE_ALLOC_H
#define TT_BASE_ALLOC_H

#include <stddef.h>

/** n items of `size` bytes, zeroed. NULL without memory or when n * size overflows.
 *  A request for nothing gives a pointer that may be freed. */
void *tt_alloc(size_t n, size_t size);

/** Resizes; new bytes are not zeroed. NULL leaves the old block as it was. */
void *tt_realloc(void *block, size_t n, size_t size);

/** Gives back; takes NULL, returns NULL. */
void *tt_free(void *block);

#endif
