/* Makes the pages of a recipe's main swaps: the whole recipe with one swap applied, each in a
 * folder below the recipe's own. */
#ifndef PUBLISH_SWAPPED_PAGES_H
#define PUBLISH_SWAPPED_PAGES_H

#include "publish/recipe_pages.h"
#include "site/whole_recipe.h"

/* Writes a page for each of the main swaps of `of`. */
void swapped_pages_make(recipe_maker *with, const whole_recipe *of);

#endif
