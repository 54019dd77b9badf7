/* base/pool.c - blocks in a chain, each as large as all before it together (within bounds), so that
 * what is left over at the end of a block stays small against the whole; the newest is filled
 * first. */
#include "base/pool.h"
#include "base/alloc.h"

#include <stdalign.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

enum { BLOCK = 8192, LARGEST_BLOCK = 1 << 20 };

struct tt_pool_block {
    tt_pool_block *older;
    size_t size;
    alignas(max_align_t) unsigned char bytes[];
};

void tt_pool_clear(tt_pool *pool)
{
    tt_pool_block *block = pool->newest;
    while (block) {
        tt_pool_block *older = block->older;
        tt_free(block);
        block = older;
    }
    *pool = (tt_pool){0};
}

static tt_pool_block *room_for(tt_pool *pool, size_t need)
{
    if (pool->newest && pool->newest->size - pool->used >= need) return pool->newest;
    const size_t all = pool->bytes < LARGEST_BLOCK ? pool->bytes : LARGEST_BLOCK;
    const size_t usual = all > BLOCK ? all : BLOCK;
    const size_t size = need > usual ? need : usual;
    tt_pool_block *block = tt_realloc(NULL, 1, sizeof *block + size); /* zeroed as it is taken */
    if (!block) return NULL;
    block->older = pool->newest;
    block->size = size;
    pool->newest = block;
    pool->used = 0;
    pool->bytes += size;
    return block;
}

void *tt_pool_take(tt_pool *pool, size_t n, size_t size)
{
    const size_t unit = alignof(max_align_t);
    if (size != 0 && n > (SIZE_MAX / 2) / size) return NULL;
    const size_t need = (n * size + unit - 1) / unit * unit;
    tt_pool_block *block = room_for(pool, need);
    if (!block) return NULL;
    void *start = block->bytes + pool->used;
    pool->used += need;
    return memset(start, 0, need);
}

char *tt_pool_copy(tt_pool *pool, const char *text, size_t length)
{
    char *copy = tt_pool_take(pool, length + 1, 1);
    if (!copy) return NULL;
    if (length) memcpy(copy, text, length);
    copy[length] = '\0';
    return copy;
}

char *tt_pool_text(tt_pool *pool, const char *text)
{
    return text ? tt_pool_copy(pool, text, strlen(text)) : NULL;
}

char *tt_pool_vformat(tt_pool *pool, const char *format, va_list args)
{
    char brief[256]; /* formatted once where it is short */
    va_list again;
    va_copy(again, args);
    const int length = vsnprintf(brief, sizeof brief, format, args);
    char *text = NULL;
    if (length >= 0 && (size_t)length < sizeof brief) {
        text = tt_pool_copy(pool, brief, (size_t)length);
    } else if (length >= 0) {
        text = tt_pool_take(pool, (size_t)length + 1, 1);
        if (text) vsnprintf(text, (size_t)length + 1, format, again);
    }
    va_end(again);
    return text;
}

char *tt_pool_format(tt_pool *pool, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    char *text = tt_pool_vformat(pool, format, args);
    va_end(args);
    return text;
}
