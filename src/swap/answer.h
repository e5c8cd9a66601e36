/* One swap worked out, once it is known who decides on it: amounts, liquid, balance, macros,
 * allergens, diets. What does not depend on the replacement is worked out once for all of a line's
 * replacements. */
#ifndef SWAP_ANSWER_H
#define SWAP_ANSWER_H

#include "swap/note.h"

/* What leaves a recipe, and what the recipe is with and without it. */
typedef struct {
    const recipe_facts *about, *part; /* of the recipe, and of the part by which this is judged */
    size_t lines[2];                  /* the second SIZE_MAX unless two are replaced */
    part goes[2];                     /* all of each */
    size_t count;
    unsigned long long replaced; /* bits of all lines that hold them */
    balance before;              /* of the whole recipe */
    balance part_before;
    double share_in_part; /* of what goes */
    allergen_set allergens, kept_allergens;
    diet_set diets, kept_diets;
} leaving;

/* Lines `first` and `second` (SIZE_MAX for none), with all lines of the same ingredients. */
leaving leaving_of(const recipe_facts *about, size_t first, size_t second);

/* The note on replacing what leaves, as was decided. */
swap_note answer_of(arena *a, const leaving *what, const decided *said);

#endif
