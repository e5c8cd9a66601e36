/* What recipe.json says of swaps beyond their amounts: what each changes, and what a script needs
 * to add several up. Figures are those of the label, not rounded, in the order of
 * `picking.figures`.
 *
 * swaps[]:                lines, those that go, counted over all groups from 0; asked, one of those
 *                         that readers ask for: may be picked
 * swaps[].answers[].to[]: changes, the weight of a portion in g, then each figure, null: not known;
 *                         liquid_line, where liquid is added or held back, none: water is added;
 *                         of one that may be picked id, its place on the page of notes, and
 *                         measure, its amount in kitchen measures
 * picking:                figures, portion, portion_g, lines, water, foods, contains, diets */
#ifndef SITE_VIEW_PICKS_H
#define SITE_VIEW_PICKS_H

#include "site/whole_recipe.h"

/* True when readers may pick `note` on the page: one for one, of an ingredient that is asked for,
 * with an amount. */
bool note_may_be_picked(const recipe *of, const swap_note *note);

/* Puts `lines` and `asked` of what `note` replaces. */
void view_put_lines_that_go(arena *a, view *to, const recipe *of, const swap_note *note);

/* Puts what `note`, which promises an amount, changes. */
void view_put_changes_data(arena *a, view *to, const note_words *by, const swap_note *note);

/* Puts `picking` on the document. */
void view_put_picking(arena *a, view *document, const whole_recipe *of);

#endif
