/* What US law takes to be eaten at one time: the reference amounts that its claims are measured
 * by (21 CFR 101.12(b), table 2, as amended in 2016). */
#ifndef NUTRITION_REFERENCE_AMOUNT_H
#define NUTRITION_REFERENCE_AMOUNT_H

#include "base/message.h"
#include "measure/recipe.h"

/* US reference amount customarily consumed, g, for a recipe kind (lower case); 0 when the table
 * has none. */
double reference_amount_g(const char *kind);

/* The same for a recipe. A pie crust has no weight in the table but an area, 8 square inches of
 * crust: its weight is worked out from the baked weight and the bottom of the pan, where the
 * recipe states both; a crust without a pan has none. */
double reference_amount_of(const recipe *of);

/* A hint, one sentence in the arena, when a portion of `portion_g` is less than half or more than
 * twice the reference amount; null when it is not, or when there is none. */
const message *reference_amount_hint(arena *a, const recipe *of, double portion_g);

#endif
