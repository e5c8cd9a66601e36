/* Which swaps of a recipe get a page of their own: a few, those that readers ask for most.
 *
 * Of the notes that promise an amount (works, adjust, different) for a protein powder, a flour or
 * meal, a nut butter or an egg: what the recipe's own word or a trial says first, then from each
 * of these ingredients in turn the best of a kind it has not given yet, until there are enough:
 * as many as the site asks for.
 * One replacement has one page, whatever it replaces; where two come for one there is none. */
#ifndef SWAP_MAIN_SWAPS_H
#define SWAP_MAIN_SWAPS_H

#include "swap/note.h"

enum { MAIN_SWAPS_USUAL = 3, MAIN_SWAPS_MOST = 12 };

typedef struct {
    const swap_note *items[MAIN_SWAPS_MOST]; /* borrowed, in the order of their choice */
    size_t count;
} main_swaps;

/* True when `what` is of a kind that home bakers own most, in the families readers ask for. */
bool is_owned_by_many(const ingredient *what);

/* True for the families that readers ask for: protein powder, flour, meal, nut butter, egg. */
bool main_swaps_asked_for(family in);

/* Chooses up to `wanted` (MAIN_SWAPS_MOST at the most) among `notes` of `of`, which are in the
 * order of notes_of. */
main_swaps main_swaps_of(const recipe *of, const swap_notes *notes, size_t wanted);

/* True when `note` (one of the same notes) was chosen. */
bool main_swaps_have(const main_swaps *chosen, const swap_note *note);

#endif
