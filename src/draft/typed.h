/* A recipe as somebody typed it: the title first, one ingredient a line, the method under its
 * heading or behind the ingredients. Markdown's marks before lines are passed over. */
#ifndef DRAFT_TYPED_H
#define DRAFT_TYPED_H

#include "base/arena.h"

#include <jansson.h>

/* `words` as an object like those of JSON-LD, which the caller owns. Null when it has no line that
 * begins like an ingredient ("60 g …") and none under a heading for them. */
json_t *typed_recipe(arena *a, span words);

#endif
