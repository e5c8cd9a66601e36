/* Allergens, diets and cautions of a recipe, from its ingredients alone. Never a promise: the
 * pages add that labels and kitchens decide. */
#ifndef NUTRITION_ALLERGENS_H
#define NUTRITION_ALLERGENS_H

#include "measure/recipe.h"

/* All that any line brings, optional lines included. */
allergen_set allergens_of(const recipe *of);
/* What ingredients may contain by the pantry's word, less what is contained anyway. */
allergen_set allergens_may_contain(const recipe *of);

typedef struct {
    allergen what;
    word_list because; /* names of the ingredients that bring it */
} allergen_cause;

typedef struct {
    allergen_cause *items;
    size_t count, capacity;
} allergen_causes;

/* Each allergen in `of` with the ingredients behind it, in the order of the allergen list. */
allergen_causes allergen_causes_of(arena *a, const recipe *of);

/* "milk; tree nuts (almond)" as `law` names them; foods that the law does not list are left out.
 * In the arena; empty string when none. */
const char *allergen_statement(arena *a, allergen_set set, label_law law);

typedef enum {
    DIET_VEGAN,
    DIET_VEGETARIAN,
    DIET_NO_DAIRY,
    DIET_NO_EGG,
    DIET_NO_GLUTEN, /* no ingredient with gluten; never "gluten-free" */
    DIET_COUNT
} diet;
typedef unsigned diet_set; /* bit 1u << diet */

/* What one ingredient allows; what a recipe allows (all its known lines do and none is unknown). */
diet_set diets_of_ingredient(const ingredient *what);
diet_set diets_of(const recipe *of);

/* "vegan", "no gluten ingredient" …; the schema.org RestrictedDiet name, or null. */
const char *diet_word(diet which);
const char *diet_schema(diet which);

/* Cautions the recipe gives cause for, as whole sentences in the arena: raw egg, raw flour in
 * what is not baked, honey and infants, high protein, polyols. */
word_list cautions_of(arena *a, const recipe *of, double protein_g_per_portion);

/* Cost of the batch from pack prices; `*lacking` counts weighed lines without a price. 0 when no
 * line has one. */
double cost_of(const recipe *of, size_t *lacking);

#endif
