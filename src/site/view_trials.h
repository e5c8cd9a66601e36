/* The view of a recipe's trial bakes. */
#ifndef SITE_VIEW_TRIALS_H
#define SITE_VIEW_TRIALS_H

#include "site/page.h"

/* Puts `trials` and `has_trials` on `to`: the bakes of `of`, in the order of the log. */
void view_put_trials(arena *a, view *to, const page_maker *by, const recipe *of);

/* The same for the bakes of the pair of `note` alone; null: of all. */
void view_put_trials_with(arena *a, view *to, const page_maker *by, const recipe *of,
                          const swap_note *note);

/* "trial-2026-01-04-pea-protein-isolate-whey-protein-isolate": the address of a trial within its
 * recipe's page. Of two bakes of one pair on one day it leads to the first. */
char *trial_id(arena *a, const trial *bake);

#endif
