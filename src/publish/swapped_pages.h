/* Makes the pages of a recipe's main swaps: the whole recipe with one swap applied, each in a
 * folder below the recipe's own. */
#ifndef PUBLISH_SWAPPED_PAGES_H
#define PUBLISH_SWAPPED_PAGES_H

#include "publish/recipe_pages.h"
#include "site/view_figures.h"

/* Writes a page for each of main_swaps_of(`notes`). `as_written`: the figures of the recipe that
 * `about` is of. */
void swapped_pages_make(recipe_maker *with, const recipe_facts *about,
                        const recipe_figures *as_written, const swap_notes *notes);

#endif
