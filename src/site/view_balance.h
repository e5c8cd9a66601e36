/* The view of a swap's balance: what a baker would notice, in words with small bars, and the whole
 * comparison at three points. */
#ifndef SITE_VIEW_BALANCE_H
#define SITE_VIEW_BALANCE_H

#include "site/view_note.h"

/* Puts under `key` a list of {text, zero, was, is}: a row for each difference, between the batch as
 * written and swapped, that is noticed, and the lengths of two bars. Nothing at all where none is.
 * Of what is never baked the bake says nothing; where an uptake is not known, the waters do not. */
void view_put_balance_changes(arena *a, const language *in, view *to, const char *key,
                              const swap_note *note);

/* Puts `untried`: {groups: [{balance_text, names_text}]}, those of the `count` notes that nobody
 * decides on and nobody tried elsewhere, by what their water and what sets would do weight for
 * weight: figures, no promise. Nothing where there are none. */
void view_put_untried_balance(arena *a, const language *in, view *to, const swap_note *notes,
                              size_t count);

/* The best amounts in words: "about 30 g (1/4 cup) soy protein isolate and 15 g more greek yogurt";
 * null where there are none. */
const char *balance_best_text(arena *a, const note_words *by, const swap_note *note);

/* Puts under `key` the whole comparison for the partial `balance`:
 *     {points: [{name, key, what, amount_text, range_text?, also_text?, liquid_text?}],
 *      quantities: [{name, key, rows: [{name, key, text, range_text?, is_range,
 *                                       zero, length, low, high}]}],
 *      changes: [{text, zero, was, is}]?, faces_text?, no_promise, uptake_unknown}
 * `about`: facts of the recipe that `note` is of. Lengths are of bars in a box 200 wide. */
void view_put_balance(arena *a, view *to, const char *key, const note_words *by,
                      const recipe_facts *about, const swap_note *note);

#endif
