/* What a recipe holds: per batch, per portion and per 100 g as baked.
 *
 * Sums of line weight times the pantry's figures. A line whose ingredient lacks a figure makes
 * the sum say so: its bit in `lacking` is set and the sum is a lower bound. Polyols and alcohol
 * are the one exception: foods that hold them say so, so an ingredient whose entry states neither
 * is taken to hold none.
 *
 * Bake loss is water: it changes the weight and the water, nothing else. The batch is as mixed;
 * the portion and the 100 g are as baked. Not reckoned with: alcohol that bakes off, fat that a
 * bake takes up from the pan or leaves in it, marinade that is poured away. */
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

/* The figures of `grams` of one ingredient. None of it lacks nothing. */
macros macros_of_ingredient(const ingredient *what, double grams);

/* `a` and `b` together; `a` less `b` (for what a swap changes: known where both are); `of` times
 * `times`. Lacking is what either lacks. */
macros macros_sum(const macros *a, const macros *b);
macros macros_difference(const macros *a, const macros *b);
macros macros_times(const macros *of, double times);

/* Salt in g: sodium x 2.5 (Regulation (EU) 1169/2011, Annex I). */
double macros_salt_g(const macros *of);

/* Carbohydrate without fibre in g, as the EU counts it (Annex I); never below 0. The sum of what
 * the ingredients bring where that is known (NUTRIENT_AVAILABLE_CARBOHYDRATE, which is lacking
 * where it lacks), else carbohydrate less fibre. */
double macros_available_carbohydrate_g(const macros *of);

/* Names of the ingredients of `of` that have no figure for `which`, in line order, each once.
 * In the arena. */
word_list macros_lacking(arena *a, const recipe *of, nutrient which);

#endif
