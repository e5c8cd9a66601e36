#include "base/names.h"

#include <xxhash.h>

names names_in(arena *home) {
    return (names){.home = home};
}

/* The slot that holds `key`, or the free one where it belongs. */
static name_slot *slot_of(const names *table, span key) {
    size_t mask = table->room - 1;
    size_t i = (size_t)XXH3_64bits(key.at ? key.at : "", key.length) & mask;
    while (table->slots[i].taken && !span_equal(table->slots[i].key, key))
        i = (i + 1) & mask;
    return &table->slots[i];
}

static void grow(names *table) {
    names larger = {.home = table->home, .count = table->count};
    larger.room = table->room ? table->room * 2 : 64;
    larger.slots = ARENA_ARRAY(table->home, name_slot, larger.room);
    for (size_t i = 0; i < table->room; i++)
        if (table->slots[i].taken)
            *slot_of(&larger, table->slots[i].key) = table->slots[i];
    *table = larger;
}

bool names_add(names *table, span key, size_t value, size_t *earlier) {
    if (table->count * 2 >= table->room)
        grow(table);
    name_slot *slot = slot_of(table, key);
    if (slot->taken) {
        if (earlier)
            *earlier = slot->value;
        return false;
    }
    *slot = (name_slot){arena_copy_span(table->home, key), value, true};
    table->count++;
    return true;
}

bool names_find(const names *table, span key, size_t *value) {
    if (table->count == 0)
        return false;
    const name_slot *slot = slot_of(table, key);
    if (!slot->taken)
        return false;
    *value = slot->value;
    return true;
}
