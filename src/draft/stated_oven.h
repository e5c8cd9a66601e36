/* The oven's heat, where the method states it: "Heat the oven to 180 C". */
#ifndef DRAFT_STATED_OVEN_H
#define DRAFT_STATED_OVEN_H

#include "draft/parts.h"

/* The first temperature with its unit in a step that names the oven, as a recipe file has it ("180
 * C"), in `a`; null when there is none. */
const char *oven_stated(arena *a, const draft_items *steps);

#endif
