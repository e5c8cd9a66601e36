/* Short, general cautions that a recipe gives cause for. They defer to pack labels, food law and
 * qualified advice, and never call a food safe. */
#ifndef NUTRITION_CAUTIONS_H
#define NUTRITION_CAUTIONS_H

#include "measure/recipe.h"

/* Protein in a portion from which the caution about kidney disease is shown, g: common practice,
 * no source. */
#define CAUTION_PROTEIN_G 30.0

/* Share of polyols in the food as baked from which the laxative effect is mentioned: more than
 * 10 % (Regulation (EU) 1169/2011, Annex III, 2.4). */
#define CAUTION_POLYOLS 0.10

typedef enum {
    CAUTION_RAW_EGG, /* in what is not cooked */
    CAUTION_RAW_FLOUR,
    CAUTION_EGG_TO_SET,
    CAUTION_HONEY, /* and infants */
    CAUTION_MUCH_PROTEIN,
    CAUTION_MUCH_POLYOLS,
    CAUTION_COUNT
} caution_cause;
typedef unsigned caution_set; /* bit 1u << caution_cause */

/* The cautions that the recipe gives cause for. */
caution_set cautions_of(const recipe *of, double protein_g_per_portion);

/* "raw egg" and the like: what its sentence is found by. */
const char *caution_key(caution_cause which);

/* True when the recipe says that it is cooked: it has minutes to bake, an oven or a griddle. */
bool recipe_is_cooked(const recipe *of);

#endif
