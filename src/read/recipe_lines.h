/* The ingredient lines of a recipe: read from the front matter's list, weighed, summed. */
#ifndef READ_RECIPE_LINES_H
#define READ_RECIPE_LINES_H

#include "measure/recipe.h"
#include "read/yaml.h"

/* The swap rules keep lines as bits of a 64-bit set (swap/facts.h). */
enum { RECIPE_LINES_MOST = 64 };

/* Reads the list `ingredients` (lines, mappings of one line, groups) into the lines and groups of
 * `out`, in `a`. Problems for what can't be read; the rest is kept. */
void recipe_lines_read(arena *a, const yaml_node *ingredients, const pantry *shelf, recipe *out,
                       problems *found);

/* Weighs the lines of `out` with `cups`: its weights, in `a`, batch weight and count of unweighed
 * lines. Problems for what can't be weighed. */
void recipe_lines_weigh(arena *a, cup_standard cups, recipe *out, problems *found);

#endif
