/* The view of a recipe with a swap applied: a whole recipe page of its own, worked out by the same
 * figures as any recipe, with what changed marked. */
#ifndef SITE_VIEW_SWAPPED_H
#define SITE_VIEW_SWAPPED_H

#include "site/view_figures.h"
#include "site/view_swaps.h"

/* The page of `note`, which is one of `by->of` and promises an amount. `as_written`: the figures
 * of the recipe without the swap. In `a`; arguments are borrowed. */
view *view_of_swapped_page(arena *a, const page_maker *with, const note_words *by,
                           const recipe_figures *as_written, const swap_note *note);

#endif
