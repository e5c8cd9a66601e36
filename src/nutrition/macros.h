/* What a recipe holds: per batch, per portion and per 100 g as baked.
 *
 * Sums of line weight times the pantry's figures. A line whose ingredient lacks a figure makes
 * the sum say so: its bit in `lacking` is set and the sum is a lower bound. Bake loss is water:
 * it changes the weight and the water, nothing else. */
#ifndef NUTRITION_MACROS_H
#define NUTRITION_MACROS_H

#include "measure/recipe.h"

typedef struct {
    nutrients of;     /* known: at least one line gave a figure (or there are no lines) */
    unsigned lacking; /* bit 1u << nutrient: a weighed line has no figure for it */
    double weight_g;  /* what these amounts are for */
} macros;

typedef struct {
    macros batch, portion, per_100_g;
} recipe_macros;

/* Which energy is shown: site.yaml `energy`. */
typedef enum { ENERGY_BY_SOURCE, ENERGY_BY_ATWATER, ENERGY_BY_EU } energy_rule;

/* The nutrient that holds energy under `rule`. */
nutrient energy_nutrient(energy_rule rule);

/* The figures of `of`, whose lines are weighed. Unweighed lines count as nothing and make every
 * figure lacking. */
recipe_macros macros_of(const recipe *of);

/* The figures of `grams` of one ingredient. */
macros macros_of_ingredient(const ingredient *what, double grams);

/* `a` and `b` together; `a` less `b` (for what a swap changes); `of` times `times`. */
macros macros_sum(const macros *a, const macros *b);
macros macros_difference(const macros *a, const macros *b);
macros macros_times(const macros *of, double times);

/* Salt in g: sodium x 2.5 (Regulation (EU) 1169/2011, Annex I). */
double macros_salt_g(const macros *of);

/* Carbohydrate without fibre in g, as the EU counts it (Annex I); never below 0. */
double macros_available_carbohydrate_g(const macros *of);

/* Names of the ingredients of `of` that have no figure for `which`, in line order, each once.
 * In the arena. */
word_list macros_lacking(arena *a, const recipe *of, nutrient which);

#endif
