/* What moistens a recipe. */
#ifndef SWAP_MOISTURE_H
#define SWAP_MOISTURE_H

#include "swap/facts.h"

/* What brings most of the water of what `about` is of. Butters, syrups and fats hardly bring any,
 * yet hold a dough that has little: there they count by their weight. Fills `water_by`. */
moisture moisture_of(recipe_facts *about);

#endif
