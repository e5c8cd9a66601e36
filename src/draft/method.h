/* The method of a recipe in schema.org's many forms: one text, a list of texts, HowToStep,
 * HowToSection, HowToDirection, HowToTip, ItemList, any of them in each other. */
#ifndef DRAFT_METHOD_H
#define DRAFT_METHOD_H

#include "draft/parts.h"

#include <jansson.h>

/* Adds the steps in `value` to `out->steps`, tips to `out->notes`. */
void method_read(arena *a, const json_t *value, draft_parts *out);

/* Cuts one text into steps, at its lines, or at "1. … 2. …" where it has but one, and adds them. */
void method_cut(arena *a, span words, const char *section, draft_parts *out);

#endif
