/* base/list.c - growth by half as much again. The address of the typed pointer is handled as
 * bytes, so that no pointer is read through another pointer's type. */
#include "base/list.h"
#include "base/alloc.h"

#include <string.h>

bool tt_list_grow(void *address_of_at, size_t n, size_t *cap, size_t size)
{
    if (n < *cap) return true;
    void *at = NULL;
    memcpy(&at, address_of_at, sizeof at);
    const size_t wanted = *cap < 8 ? 8 : *cap + *cap / 2;
    void *grown = tt_realloc(at, wanted, size);
    if (!grown) return false;
    memcpy(address_of_at, &grown, sizeof grown);
    *cap = wanted;
    return true;
}

void tt_list_drop(void *address_of_at, size_t *n, size_t *cap)
{
    void *at = NULL;
    memcpy(&at, address_of_at, sizeof at);
    at = tt_free(at);
    memcpy(address_of_at, &at, sizeof at);
    *n = *cap = 0;
}
