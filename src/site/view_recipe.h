/* The views of a recipe: its page, and its recipe.json for other programs. */
#ifndef SITE_VIEW_RECIPE_H
#define SITE_VIEW_RECIPE_H

#include "site/whole_recipe.h"

/* What both have: ingredients, method, figures, trials. In `a`. */
view *view_of_recipe(arena *a, const whole_recipe *of);

/* Its parts, for pages that show a recipe otherwise: makes, portion and weights; minutes, oven and
 * pan; the lines by groups; the steps as plain words. */
void view_put_yield(arena *a, const language *in, view *to, const recipe *of);
void view_put_times(arena *a, const language *in, view *to, const recipe *of);
void view_put_groups(arena *a, view *to, const recipe *of, saying by);
void view_put_steps(arena *a, view *to, const method *how);

/* recipe.json: `alone` (borrowed) with the swaps as figures. */
view *view_of_recipe_document(arena *a, const whole_recipe *of, const view *alone);

/* The page at recipes/<slug>/: `alone` and `swaps` (see site/view_swaps.h; both borrowed) with what
 * all pages share and the JSON-LD. */
view *view_of_recipe_page(arena *a, const whole_recipe *of, const view *alone, const view *swaps);

#endif
