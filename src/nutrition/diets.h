/* Diets that a recipe's ingredients allow. Said of ingredients only: what a pack or a kitchen
 * brings besides is for its label to say. */
#ifndef NUTRITION_DIETS_H
#define NUTRITION_DIETS_H

#include "measure/recipe.h"

typedef enum {
    DIET_VEGAN,      /* of plant or mineral origin only */
    DIET_VEGETARIAN, /* nothing of the animal itself: gelatine, collagen, fish */
    DIET_NO_DAIRY,
    DIET_NO_EGG,
    DIET_NO_GLUTEN, /* no ingredient with gluten; never "gluten-free". Oats count as one: those
                     * on sale are mostly mixed with wheat or barley */
    DIET_COUNT
} diet;
typedef unsigned diet_set; /* bit 1u << diet */

/* What one ingredient allows; what a recipe allows (all its known lines do and none is unknown).
 * A recipe without lines allows none. */
diet_set diets_of_ingredient(const ingredient *what);
diet_set diets_of(const recipe *of);

/* "vegan", "no gluten ingredient" …; the schema.org RestrictedDiet name, or null. */
const char *diet_word(diet which);
const char *diet_schema(diet which);

#endif
