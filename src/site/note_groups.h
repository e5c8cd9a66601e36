/* The notes of a recipe by what they replace, and within that by what decides: what one rule says
 * of many replacements is worded once. */
#ifndef SITE_NOTE_GROUPS_H
#define SITE_NOTE_GROUPS_H

#include "site/view_note.h"

/* The notes of one replaced ingredient, borrowed: those that something decides on first. */
typedef struct {
    const swap_note *first;
    size_t count, tried;
    bool combined;
} line_notes;

/* The notes of the next replaced ingredient from `*at` on; moves `*at` past them. */
line_notes line_notes_next(const swap_notes *notes, size_t *at);

/* Shows on `to` the `count` notes that one rule decides alike. */
typedef void group_putter(arena *a, view *to, const note_words *by, const swap_note *const notes[],
                          size_t count);

/* Calls `put` for each group of the decided notes of `of`, in their order. */
void line_notes_put_groups(arena *a, view *to, const note_words *by, const line_notes *of,
                           group_putter *put);

#endif
