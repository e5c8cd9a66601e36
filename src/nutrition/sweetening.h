/* What in a recipe sweetens it by its sugars: what "no added sugars" turns on. */
#ifndef NUTRITION_SWEETENING_H
#define NUTRITION_SWEETENING_H

#include "base/message.h"
#include "measure/recipe.h"

typedef enum {
    SWEETENING_NONE,    /* nothing in it brings sugars to sweeten */
    SWEETENING_UNCLEAR, /* something may: a purée, an ingredient that is not known enough */
    SWEETENING_SUGARS   /* something does */
} sweetening;

/* Regulation (EC) 1924/2006, Annex: no added mono- or disaccharides "or any other food used for
 * its sweetening properties", so dates, honey and juice count; polyols and intense sweeteners do
 * not. Our reading, on the careful side:
 * - a sweetener with sugars, anything with added sugars, fruit that is a fifth sugars (dried,
 *   powdered, pasted) sweetens;
 * - a fruit purée or a drink with 5 % sugars or more may be there to sweeten.
 * "To taste" lines count. `*because` is one sentence about the first ingredient that decides,
 * without a full stop, in the arena; a null `because` is not asked for. */
sweetening sweetening_of(arena *a, const recipe *of, const message **because);

#endif
