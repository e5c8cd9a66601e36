/* How far long work has come: a counter that workers move and somebody else may look at. */
#ifndef BASE_PROGRESS_H
#define BASE_PROGRESS_H

#include <stdatomic.h>
#include <stddef.h>

typedef struct {
    atomic_size_t total, done; /* total 0: the work has not begun */
} progress;

/* The work has `total` pieces. `of` may be null: nobody looks. */
static inline void progress_begin(progress *of, size_t total) {
    if (of)
        atomic_store(&of->total, total);
}

/* One piece more is done. */
static inline void progress_step(progress *of) {
    if (of)
        atomic_fetch_add(&of->done, 1);
}

#endif
