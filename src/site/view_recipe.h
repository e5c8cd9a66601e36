/* The view of a recipe's page, which is also its recipe.json. */
#ifndef SITE_VIEW_RECIPE_H
#define SITE_VIEW_RECIPE_H

#include "site/page.h"
#include "site/view_figures.h"
#include "swap/note.h"

/* The recipe alone: ingredients, method, figures, swaps, trials. In `a`. */
view *view_of_recipe(arena *a, const page_maker *by, const recipe_figures *of,
                     const swap_notes *notes);

/* The page at recipes/<slug>/: the recipe with what all pages share, and its JSON-LD. */
view *view_of_recipe_page(arena *a, const page_maker *by, const recipe_figures *of,
                          const view *alone);

#endif
