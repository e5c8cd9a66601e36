/* What a recipe's figures leave open or out, in short sentences for the page and the terminal. */
#ifndef NUTRITION_REMARKS_H
#define NUTRITION_REMARKS_H

#include "base/message.h"
#include "nutrition/macros.h"

typedef struct {
    const message **items;
    size_t count, capacity;
} messages;

/* Whole sentences, none when there is nothing to remark: lines that could not be
 * weighed, that are to taste, optional or poured away in part; a bake without a stated loss;
 * alcohol, of which some bakes off; a griddle, whose fat counts only where it is listed; figures of
 * a portion that the rounding of pack labels leaves wide; under `law` US, a portion far from the
 * reference amount. */
messages remarks_of(arena *a, const recipe *of, const recipe_macros *figures, label_law law);

#endif
