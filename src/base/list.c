#include "base/list.h"

void *list_grow(arena *a, const void *items, size_t item_size, size_t *capacity) {
    size_t room = *capacity ? *capacity * 2 : 8;
    void *moved = arena_alloc(a, room * item_size);
    if (*capacity)
        memcpy(moved, items, *capacity * item_size);
    *capacity = room;
    return moved;
}
