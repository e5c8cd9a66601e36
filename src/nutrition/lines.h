/* What the nutrition room asks of a recipe's lines. */
#ifndef NUTRITION_LINES_H
#define NUTRITION_LINES_H

#include "measure/recipe.h"

/* True when line `i` brings an amount: all but "to taste". */
bool line_counts(const recipe *of, size_t i);

/* True when line `i` has a weight and an ingredient that the pantry knows. */
bool line_is_weighed(const recipe *of, size_t i);

/* The ingredient's name, or the name as written when the pantry does not know it. Borrows. */
const char *line_name(const recipe *of, size_t i);

/* Adds `name` (borrowed) to `list` unless it is there. */
void word_add_once(arena *a, word_list *list, const char *name);

/* "almond butter, egg and milk", in the arena. */
const char *words_joined(arena *a, const word_list *list);

#endif
