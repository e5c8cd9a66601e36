/* The parts of a draft as a recipe file: front matter with remarks for the author as YAML comments,
 * then the method as a numbered list. */
#ifndef DRAFT_WRITTEN_H
#define DRAFT_WRITTEN_H

#include "draft/draft.h"
#include "draft/parts.h"

/* Writes `from` into `out` (all but `recipes`), strings in `a`. `drafted_from` says what it was
 * drafted from ("the JSON-LD in it"). */
void written_recipe(arena *a, const draft_parts *from, const draft_request *asked,
                    const char *drafted_from, draft *out);

#endif
