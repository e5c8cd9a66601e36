/* What sets a recipe.
 *
 * Three proteins set a bake by heat (egg, whey, gluten); gels set it by holding its water, hot or
 * cold; starch sets it by swelling in the oven. One of them is said to set a recipe when there is
 * enough of it, and, for a protein, when it is no mere trace beside the other two. The amounts
 * stand in the source. */
#ifndef SWAP_SETTING_H
#define SWAP_SETTING_H

#include "swap/facts.h"

/* The strongest thing that sets what `about` is of: SETTING_NOTHING where nothing does. Asks for
 * `baked` and `water_by`, which must be filled in. */
setting setting_of(const recipe_facts *about);

#endif
