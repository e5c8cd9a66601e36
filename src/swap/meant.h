/* Which ingredients of a recipe a reader's word means: "flour" is any flour in it, "whey" any whey,
 * "protein powder" any of the family. */
#ifndef SWAP_MEANT_H
#define SWAP_MEANT_H

#include "measure/recipe.h"
#include "pantry/pantry.h"

/* Lines of a recipe, each ingredient once, by its first line. */
typedef struct {
    size_t *items;
    size_t count, capacity;
} meant_lines;

/* The weighed lines of `of` that `words` may mean: those with the ingredient of that name; where
 * there are none, those of its kind, whose names hold `words` as whole words, or whose family is
 * called so. In the arena; empty when nothing fits. */
meant_lines meant_in(arena *a, const recipe *of, const pantry *shelf, const char *words);

#endif
