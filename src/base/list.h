/* Growing arrays in an arena.
 *
 * A list is any struct with the fields `items`, `count` and `capacity`, so that walking one is a
 * plain loop:
 *
 *     typedef struct { rule *items; size_t count, capacity; } rules;
 *     LIST_ADD(a, &all, one);
 *     for (size_t i = 0; i < all.count; i++) use(&all.items[i]);
 *
 * Growing moves the items: keep indexes, not pointers, while a list still grows. */
#ifndef BASE_LIST_H
#define BASE_LIST_H

#include "base/arena.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

/* Appends `...` (one value) to `*list`. */
#define LIST_ADD(a, list, ...)                                                                     \
    do {                                                                                           \
        if ((list)->count == (list)->capacity)                                                     \
            (list)->items =                                                                        \
                list_grow((a), (list)->items, sizeof *(list)->items, &(list)->capacity);           \
        (list)->items[(list)->count++] = (__VA_ARGS__);                                            \
    } while (0)

/* `items` moved to twice the room, `*capacity` set; used by LIST_ADD. */
void *list_grow(arena *a, const void *items, size_t item_size, size_t *capacity);

#endif
