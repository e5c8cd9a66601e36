/* The name in an ingredient line with the words around it: "very ripe bananas, mashed". */
#ifndef MEASURE_PHRASE_H
#define MEASURE_PHRASE_H

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
} phrase;

/* Finds the name in `words` (no brackets, no comma). All strings are copied into `a`. */
phrase phrase_read(arena *a, span words, const pantry *shelf);

#endif
