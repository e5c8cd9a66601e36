/* A schema.org Recipe, as an object of JSON-LD, into the parts of a draft. What other forms hold
 * (microdata, classes in a page, plain text) is put into such an object first, so that there is
 * one reader of all. Source of the properties: https://schema.org/Recipe and its parents HowTo,
 * CreativeWork and Thing. */
#ifndef DRAFT_RECIPE_OBJECT_H
#define DRAFT_RECIPE_OBJECT_H

#include "draft/parts.h"

#include <jansson.h>

/* Reads `of`, an object in `document` (which its @ids are looked up in). Strings are copied into
 * `a`. Never fails: what can't be read is a remark in `out`. */
void recipe_object_read(arena *a, const json_t *document, const json_t *of, draft_parts *out);

#endif
