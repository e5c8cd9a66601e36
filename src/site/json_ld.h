/* schema.org Recipe with NutritionInformation as JSON-LD, for search engines and other programs. */
#ifndef SITE_JSON_LD_H
#define SITE_JSON_LD_H

#include "site/method.h"
#include "site/page.h"
#include "site/view_figures.h"

/* The JSON text, safe inside a script element, in the arena. Properties: schema.org/Recipe;
 * steps from `how`, figures per portion (servingSize), with their units as schema.org asks. */
const char *json_ld_of(arena *a, const page_maker *by, const recipe_figures *of, const method *how);

/* The same for a recipe with a swap applied, whose title says so, at `path`: schema.org/isBasedOn
 * names the recipe as written. */
const char *json_ld_of_swapped(arena *a, const page_maker *by, const recipe_figures *of,
                               const method *how, const char *path);

#endif
