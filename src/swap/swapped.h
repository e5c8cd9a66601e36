/* A recipe with a swap applied: what nutrition says of it is what a reader would bake. */
#ifndef SWAP_SWAPPED_H
#define SWAP_SWAPPED_H

#include "swap/note.h"

/* `of` with the amounts of `note`: what goes is taken off its lines (and they vanish when nothing
 * is left), what comes is a line of its own at the end, and liquid is added to or held back from
 * its line, or stands as a line of `water` where the recipe has none. Groups are left out: the
 * lines are for computing, not for printing. In `a`; ingredients and texts are borrowed. */
recipe *recipe_swapped(arena *a, const recipe *of, const swap_note *note, const ingredient *water);

#endif
