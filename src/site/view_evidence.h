/* What trials of recipes like this one say, beside a swap note. */
#ifndef SITE_VIEW_EVIDENCE_H
#define SITE_VIEW_EVIDENCE_H

#include "site/view_note.h"

/* "Tried in 3 recipes like this one: 2 agree."; of a swap that is untried here only how often, of
 * other bakes of this recipe alone "Other bakes of this recipe.". Null where nothing was tried. */
const char *evidence_text(arena *a, const language *in, const evidence *of, verdict says);

/* Puts `tried` on the group of `notes` that one rule decides, what all their trials say together;
 * nothing where there are none. */
void view_put_tried(arena *a, view *group, const note_words *by, const swap_note *const notes[],
                    size_t count);

/* Puts `tried_untried` on the line: what is tried elsewhere of the `count` untried notes from
 * `first`, one entry for each of which something is known. */
void view_put_tried_untried(arena *a, view *line, const note_words *by, const swap_note *first,
                            size_t count);

/* Puts `evidence` on a document for programs: {recipes, agree, trials}. */
void view_put_evidence(arena *a, view *to, const evidence *of);

#endif
