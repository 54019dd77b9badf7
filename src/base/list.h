/* base/list.h - a growable list of records, typed by the struct that embeds it:
 *     typedef struct { tt_place_of_piece *at; size_t n, cap; } tt_places;
 *     if (!tt_list_push(&piece->places, place)) return TT_E_NOMEM;
 * The owner frees `at` with tt_list_clear. Pointers into a list die when it grows. */
#ifndef TT_BASE_LIST_H
#define TT_BASE_LIST_H

#include <stdbool.h>
#include <stddef.h>

#define TT_LIST(type)                                                                              \
    struct {                                                                                       \
        type *at;                                                                                  \
        size_t n, cap;                                                                             \
    }

/** Room for one more item; false without memory, the list unharmed. */
bool tt_list_grow(void *address_of_at, size_t n, size_t *cap, size_t size);
void tt_list_drop(void *address_of_at, size_t *n, size_t *cap);

#define tt_list_push(list, ...)                                                                    \
    (tt_list_grow(&(list)->at, (list)->n, &(list)->cap, sizeof *(list)->at)                        \
         ? ((list)->at[(list)->n++] = (__VA_ARGS__), true)                                         \
         : false)
#define tt_list_clear(list) tt_list_drop(&(list)->at, &(list)->n, &(list)->cap)

#endif
