/* How much a recipe makes, from what a page states: "8", "Serves 4", "Makes 12 slices". */
#ifndef DRAFT_STATED_YIELD_H
#define DRAFT_STATED_YIELD_H

#include "measure/recipe.h"

typedef struct {
    const char *makes;  /* as a recipe file has it: "12 slices"; "1 batch" where nothing fits */
    const char *remark; /* what to ask the author; null: nothing */
} stated_yield;

/* Chooses among what is stated: what says of what, before a bare number. Strings in `a`. */
stated_yield yield_stated(arena *a, const word_list *stated);

/* The portion in a stated serving size ("2 slices (80 g)") when it is one of what the recipe
 * makes; null otherwise. */
const char *portion_stated(arena *a, const char *makes, const char *serving);

/* What to ask where no portion is stated, with what the stated yields hint at ("1 loaf, 10
 * slices"); null: nothing, as servings are portions. */
const char *portion_asked(arena *a, const char *makes, const word_list *stated);

#endif
