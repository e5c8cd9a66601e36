/* The name in an ingredient line with the words around it: "very ripe bananas, mashed". */
#ifndef MEASURE_NAMING_H
#define MEASURE_NAMING_H

#include "pantry/pantry.h"

typedef struct {
    const ingredient *what; /* null: no known name in it */
    const char *name;       /* as written; all of it when no name is known */
    size_t name_at;         /* where the name begins, in bytes */
    const char *before;     /* the words ahead of the name, as written; may be empty */
    const char *after;      /* the words behind it */
    const char *turns;      /* a word behind it that makes it another food; null: none. Then
                             * `what` is null and `name` all of it */
    const char *may_turn;   /* a word ahead of it that may; null: none */
} naming;

/* The measure of `of` that `words` (folded, a leading part counts) name in either number, as the
 * entry has it ("clove" for "cloves, crushed"); null when they name none. `*used` is its bytes. */
const char *naming_measure(const ingredient *of, span words, size_t *used);

/* Finds the name in `words` (no brackets, no comma). All strings are copied into `a`. */
naming naming_read(arena *a, span words, const pantry *shelf);

#endif
