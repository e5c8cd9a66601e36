/* How far a figure may be from what a pack states: by rounding, and by the EU's tolerances.
 *
 * A pack's "1 g" means 0.5 to 1.5 g. Per serving that is little; on 100 g, or on a batch that
 * takes eight servings, it can be much. Figures of tables carry no such range. */
#ifndef NUTRITION_TOLERANCE_H
#define NUTRITION_TOLERANCE_H

#include "measure/recipe.h"

/* The amounts that a label rounds to `stated` (in the nutrient's unit): half a step each way,
 * never below 0. The step is the coarsest that either law allows for such a number: whole numbers
 * mean whole grams, numbers with decimals their last decimal (half a gram for fat under 5 g in
 * the US), energy 10 above 50 kcal and 5 below, sodium 10 above 140 mg and 5 below, but 1 where
 * the number is no multiple of that. */
range label_rounding_range(nutrient which, double stated);

/* `which` in 100 g of `what`, with its range; low = high for an entry that is not from a pack. An
 * unknown figure is 0 throughout. */
range figure_range(const ingredient *what, nutrient which);

/* `which` in a portion of `of`, with the ranges of all pack labels added up; lines without the
 * figure count as nothing, as in macros_of. Only for figures that packs state, so not for those
 * worked out. */
range portion_range(const recipe *of, nutrient which);

/* True when a range is wide enough to be shown: more than 5 % to a side, and more in all than a
 * label of the whole portion would hide (1 g, 10 kcal, 10 mg). Our choice. */
bool range_matters(nutrient which, range of);

/* What an EU authority lets a stated amount per 100 g be off: Commission guidance of December
 * 2012, foods; from memory. Energy, alcohol and water, which it does not name, get no room. */
range label_tolerance_eu(nutrient which, double stated);

/* The same for salt, g. */
range label_tolerance_eu_salt(double stated_g);

#endif
