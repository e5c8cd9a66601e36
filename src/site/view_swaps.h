/* The swap notes of a recipe, as its own page shows them in short and the page of its notes in
 * full: one view, worded once. */
#ifndef SITE_VIEW_SWAPS_H
#define SITE_VIEW_SWAPS_H

#include "site/whole_recipe.h"

/* By replaced ingredient, and within it by what decides, in the order of the notes (untried last,
 * combined ones after all others). In `a`. */
view *view_of_swaps(arena *a, const note_words *by, const swap_notes *notes);

/* The page at recipes/<slug>/swaps/. `swaps` as above; borrowed. */
view *view_of_notes_page(arena *a, const whole_recipe *of, const view *swaps);

#endif
