/* A recipe with a swap applied: what nutrition says of it is what a reader would bake. */
#ifndef SWAP_SWAPPED_H
#define SWAP_SWAPPED_H

#include "swap/note.h"

/* `of` with the amounts of `note`: what goes is taken off its lines (and they vanish when nothing
 * is left), what comes stands in the place of the first of them, and liquid is added to or held
 * back from its line, or follows as a line of `water` where the recipe has none. Groups
 * stay. For reckoning: lines that change keep the words they had. In `a`; ingredients and other
 * texts are borrowed. */
recipe *recipe_swapped(arena *a, const recipe *of, const swap_note *note, const ingredient *water);

/* The same with the lines that change written anew, in grams, as a page shows them; `*was` gets,
 * for each of its lines, the index of that line in `of`, or SIZE_MAX for one that came new. In `a`.
 */
recipe *recipe_swapped_lines(arena *a, const recipe *of, const swap_note *note,
                             const ingredient *water, const size_t **was);

#endif
