/* All that the pages of one recipe are made from, worked out once. */
#ifndef SITE_WHOLE_RECIPE_H
#define SITE_WHOLE_RECIPE_H

#include "site/method.h"
#include "site/view_note.h"

typedef struct {
    const page_maker *by;
    const recipe *of;
    const recipe_facts *about;
    const recipe_figures *figures;
    const swap_notes *notes;
    note_words words;     /* for the notes */
    mention_names called; /* what its method calls its ingredients */
    method how;           /* as written */
} whole_recipe;

/* The recipe that `about`, `figures` and `notes` are of; all is borrowed, what is made is in `a`.
 */
whole_recipe whole_recipe_of(arena *a, const page_maker *by, const recipe_facts *about,
                             const recipe_figures *figures, const swap_notes *notes);

#endif
