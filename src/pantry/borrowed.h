/* Water uptake for the site's own entries that do not state one.
 *
 * A pack says nothing of it, so the figures are taken from the reference entry whose name it bears,
 * else from the one of its family whose kind has the most leading words in common ("whey
 * concentrate" before "whey"), the more general one where two have as many. Their range is widened:
 * hers is that kind of powder, not that powder. */
#ifndef PANTRY_BORROWED_H
#define PANTRY_BORROWED_H

#include "pantry/pantry.h"

/* The range reaches this much further down and up, by a factor (an estimate). */
#define BORROWED_WIDENED 1.5

/* Fills the uptakes of `hers` that have none; `borrowed_from` of such an entry is set, and its
 * source says so. How its protein sets is taken along where that is not stated. One that states
 * what it is like takes that one's; an error in `found` where there is none such. What has no
 * relative in the reference stays unknown. */
void pantry_borrow(pantry *shelf, problems *found);

/* Adds a warning at each of her entries that takes up water and states neither how much nor what
 * it is like: whose figures stand in, or that the water of its swaps is not worked out; and how to
 * find out at home. For `check` alone: it is a question, not a fault. */
void pantry_borrowed_report(const pantry *shelf, problems *found);

#endif
