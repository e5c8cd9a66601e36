/* A table from names to numbers (mostly indexes into a list): open addressing, in an arena.
 *
 * Keys are compared byte for byte; fold them first (base/words.h) where case must not count. */
#ifndef BASE_NAMES_H
#define BASE_NAMES_H

#include "base/arena.h"

typedef struct {
    span key;
    size_t value;
    bool taken;
} name_slot;

typedef struct {
    arena *home; /* borrowed */
    name_slot *slots;
    size_t count, room;
} names;

/* An empty table in `home`. */
names names_in(arena *home);

/* Adds `key` (copied) with `value`. False when the key is there already: the table is unchanged
 * and `*earlier`, where not null, is the value it has. */
bool names_add(names *table, span key, size_t value, size_t *earlier);

/* Sets `*value` to what `key` stands for; false when it is unknown. */
bool names_find(const names *table, span key, size_t *value);

#endif
