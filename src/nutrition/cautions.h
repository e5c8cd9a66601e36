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

/* Cautions the recipe gives cause for, as whole sentences in the arena: raw egg, raw flour in
 * what is not baked; egg that has to set; honey and infants; high protein; polyols. */
word_list cautions_of(arena *a, const recipe *of, double protein_g_per_portion);

/* True when the recipe says that it is cooked: it has minutes to bake, an oven or a griddle. */
bool recipe_is_cooked(const recipe *of);

#endif
