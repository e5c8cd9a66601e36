/* What a recipe costs, from the pack prices that the pantry knows. */
#ifndef NUTRITION_COST_H
#define NUTRITION_COST_H

#include "measure/recipe.h"

/* Cost of the batch from pack prices, in the site's currency; `*lacking` (may be null) counts
 * weighed lines without a price, so that a cost with some lacking is known for a lower bound. 0
 * when no line has one. Lines that could not be weighed are counted by the recipe's own
 * `unweighed`. */
double cost_of(const recipe *of, size_t *lacking);

/* Cost of `grams` of one ingredient; 0 when its price is unknown. */
double cost_of_ingredient(const ingredient *what, double grams);

#endif
