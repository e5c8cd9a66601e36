/* The views of combined swaps: what goes and what comes, where there are two of either. */
#ifndef SITE_VIEW_COMBINED_H
#define SITE_VIEW_COMBINED_H

#include "site/view_note.h"

/* True for two by one and one by two. */
bool note_is_combined(const swap_note *note);

/* "egg white + butter": what comes; "oat flour + butter": what goes. As the swap command takes
 * them. */
const char *note_to_names(arena *a, const swap_note *note);
const char *note_from_names(arena *a, const recipe *of, const swap_note *note);

/* "14 g (2 tbsp) coconut flour and 14 g apple purée": the amounts that go; those that come. */
const char *note_from_amounts(arena *a, const note_words *by, const swap_note *note);
const char *note_to_amounts(arena *a, const note_words *by, const swap_note *note);

/* Puts on a note of the page what a combined one has beside the others; nothing for those. */
void view_put_combined(arena *a, view *to, const note_words *by, const swap_note *note);

/* The same in grams, for programs; `decimals` places. */
void view_put_combined_data(arena *a, const language *in, view *to, const recipe *of,
                            const swap_note *note, int decimals);

#endif
