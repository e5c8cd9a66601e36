/* The one place where the program meets the end of memory. */
#ifndef BASE_MEMORY_H
#define BASE_MEMORY_H

#include <stddef.h>

/* `size` bytes, not zeroed; never null. The caller frees them with free. */
void *memory_get(size_t size) __attribute__((malloc, returns_nonnull));

/* The same, zeroed. */
void *memory_get_zeroed(size_t size) __attribute__((malloc, returns_nonnull));

/* `count` times `size` bytes, zeroed; never null, whatever they multiply to. */
void *memory_get_array(size_t count, size_t size) __attribute__((malloc, returns_nonnull));

/* `old` (or null) grown or shrunk to `size` bytes; never null. */
void *memory_resize(void *old, size_t size) __attribute__((returns_nonnull));

/* Has large rooms given back to the machine when they are freed, in place of being kept for more of
 * that size: a build has one large page, or one arena, after another. To be called first. */
void memory_keep_little(void);

/* Says that memory ran out and ends the program with exit code 3. What was written so far is
 * whole, since files are written beside and renamed. */
_Noreturn void memory_failed(void);

#endif
