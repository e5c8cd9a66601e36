/* The swap notes of a recipe for programs: grams in place of words. */
#ifndef SITE_SWAP_DATA_H
#define SITE_SWAP_DATA_H

#include "site/view_note.h"

/* Puts `swaps` on a document: a list of {from, from_g, answers}, each answer a verdict with its
 * reasons and the replacements it holds for, in grams. */
void view_put_swap_data(arena *a, view *document, const note_words *by, const swap_notes *notes);

#endif
