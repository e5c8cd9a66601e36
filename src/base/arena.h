/* Memory that is freed whole.
 *
 * One arena a recipe (its worker makes it, every stage allocates from it, nothing inside frees)
 * and one for what lives as long as the program (pantry, rules, theme). What outlives a recipe is
 * copied out by name into a longer-lived arena.
 *
 * When the machine has no memory left, allocation does not return: memory_failed (base/memory.h)
 * says so and ends the program with exit code 3. So nobody below checks for null. */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include "base/span.h"

#include <stdalign.h>

/* Room is handed out in units that are aligned for any type; a block holds a whole number of
 * them. What is not handed out yet is all zero: a block is cleared whole when it is made and used
 * again, not piece by piece. */
typedef struct arena_block {
    struct arena_block *older;
    size_t size, used;
    alignas(max_align_t) char bytes[];
} arena_block;

typedef struct {
    arena_block *newest;
    size_t used; /* of all blocks */
} arena;

/* A new, empty arena. The caller frees it with arena_free. */
arena *arena_new(void);

/* Frees `a` and all that was allocated from it. Null is fine. */
void arena_free(arena *a);

/* Forgets all that was allocated from `a` but keeps room for as much in one block. */
void arena_reset(arena *a);

/* A point to go back to. */
typedef struct {
    void *block;
    size_t block_used, used;
} arena_mark;

arena_mark arena_here(const arena *a);

/* Forgets all that was allocated from `a` since `mark` was taken. */
void arena_back(arena *a, arena_mark mark);

/* arena_alloc where the newest block has no room for `size` bytes, or none are asked for. */
void *arena_alloc_more(arena *a, size_t size) __attribute__((returns_nonnull));

/* `size` zeroed bytes, aligned for any type; good until the arena is freed. */
static inline void *arena_alloc(arena *a, size_t size) {
    const size_t aligned = alignof(max_align_t);
    arena_block *b = a->newest;
    if (size == 0 || size > b->size - b->used)
        return arena_alloc_more(a, size);
    void *room = b->bytes + b->used;
    size = (size + aligned - 1) / aligned * aligned;
    b->used += size;
    a->used += size;
    return room;
}

/* A zeroed T. */
#define ARENA_NEW(a, T) ((T *)arena_alloc((a), sizeof(T)))

/* Zeroed room for `count` Ts. Counts come from our own lists, whose sizes are limited. */
#define ARENA_ARRAY(a, T, count) ((T *)arena_alloc((a), sizeof(T) * (count)))

/* Copies `bytes` into the arena and terminates the copy. */
char *arena_copy(arena *a, span bytes);

/* The same, as a span. */
span arena_copy_span(arena *a, span bytes);

/* printf into the arena; the result is terminated. No %f or %g: numbers go through
 * base/number.h, which knows no locale. */
char *arena_format(arena *a, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Bytes handed out so far; for the bench. */
size_t arena_used(const arena *a);

#endif
