/* The method of a recipe in schema.org's many forms: one text, a list of texts, HowToStep,
 * HowToSection, HowToDirection, HowToTip, ItemList, any of them in each other. */
#ifndef DRAFT_STEPS_H
#define DRAFT_STEPS_H

#include "draft/parts.h"

#include <jansson.h>

/* Adds the steps in `value` to `out->steps`, tips to `out->notes`. One text is cut at its lines, or
 * at "1. … 2. …" where it has but one. Strings are copied into `a`. */
void steps_read(arena *a, const json_t *value, draft_parts *out);

#endif
