#include "base/arena.h"

#include "base/format.h"
#include "base/memory.h"

#include <stdarg.h>
#include <stdint.h>

enum { FIRST_BLOCK = 4 * 1024, LARGEST_BLOCK = 1024 * 1024, KEPT_MOST = 4 * LARGEST_BLOCK };

static size_t rounded(size_t size) {
    const size_t unit = alignof(max_align_t);
    return size ? (size + unit - 1) / unit * unit : unit;
}

static arena_block *block_new(size_t size, arena_block *older) {
    arena_block *b = memory_get_zeroed(sizeof(arena_block) + size);
    b->older = older;
    b->size = size;
    b->used = 0;
    return b;
}

arena *arena_new(void) {
    arena *a = memory_get(sizeof *a);
    a->newest = block_new(FIRST_BLOCK, NULL);
    a->used = 0;
    return a;
}

static void free_blocks(arena_block *b, const arena_block *stop) {
    while (b != stop) {
        arena_block *older = b->older;
        free(b);
        b = older;
    }
}

void arena_free(arena *a) {
    if (!a)
        return;
    free_blocks(a->newest, NULL);
    free(a);
}

void arena_reset(arena *a) {
    if (a->newest->older) { /* one that would have held it all: the next use mostly takes as much */
        size_t size = rounded(a->used + a->used / 4);
        free_blocks(a->newest, NULL);
        a->newest = block_new(size < KEPT_MOST ? size : KEPT_MOST, NULL);
    } else {
        memset(a->newest->bytes, 0, a->newest->used);
        a->newest->used = 0;
    }
    a->used = 0;
}

static void take(arena *a, arena_block *b, size_t size) {
    b->used += size;
    a->used += size;
}

arena_mark arena_here(const arena *a) {
    return (arena_mark){a->newest, a->newest->used, a->used};
}

void arena_back(arena *a, arena_mark mark) {
    arena_block *kept = mark.block;
    free_blocks(a->newest, kept);
    a->newest = kept;
    memset(kept->bytes + mark.block_used, 0, kept->used - mark.block_used);
    kept->used = mark.block_used;
    a->used = mark.used;
}

void *arena_alloc_more(arena *a, size_t size) {
    if (size > SIZE_MAX / 2)
        memory_failed();
    size = rounded(size);
    arena_block *b = a->newest;
    if (b->size - b->used < size) {
        size_t next = b->size * 2 < LARGEST_BLOCK ? b->size * 2 : LARGEST_BLOCK;
        b = a->newest = block_new(size > next ? size : next, b);
    }
    void *room = b->bytes + b->used;
    take(a, b, size);
    return room;
}

char *arena_copy(arena *a, span bytes) {
    char *copy = arena_alloc(a, bytes.length + 1);
    if (bytes.length)
        memcpy(copy, bytes.at, bytes.length);
    return copy;
}

span arena_copy_span(arena *a, span bytes) {
    return (span){arena_copy(a, bytes), bytes.length};
}

char *arena_format(arena *a, const char *format, ...) {
    va_list values;
    va_start(values, format);
    arena_block *b = a->newest;
    char *room = b->bytes + b->used;
    size_t size = format_into(room, b->size - b->used, format, values) + 1;
    if (size <= b->size - b->used) {
        take(a, b, rounded(size));
    } else {
        memset(room, 0, b->size - b->used);
        room = arena_alloc(a, size);
        format_into(room, size, format, values);
    }
    va_end(values);
    return room;
}

size_t arena_used(const arena *a) {
    return a->used;
}
