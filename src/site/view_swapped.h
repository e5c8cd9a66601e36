/* The view of a recipe with a swap applied: a whole recipe page of its own, worked out by the same
 * figures as any recipe, with what changed marked. */
#ifndef SITE_VIEW_SWAPPED_H
#define SITE_VIEW_SWAPPED_H

#include "site/whole_recipe.h"

/* The page of `note`, which is one of those of `of` and promises an amount. In `a`; arguments are
 * borrowed. */
view *view_of_swapped_page(arena *a, const whole_recipe *of, const swap_note *note);

#endif
