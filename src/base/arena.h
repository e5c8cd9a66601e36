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

typedef struct arena arena;

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

/* `size` zeroed bytes, aligned for any type; good until the arena is freed. */
void *arena_alloc(arena *a, size_t size) __attribute__((malloc, returns_nonnull));

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
