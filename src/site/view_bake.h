/* The views of the pages that go from the cupboard to the recipes: bake-with/ where a reader picks
 * what is at hand, and bake-with/<slug>/ for each powder, flour, meal and nut butter. */
#ifndef SITE_VIEW_BAKE_H
#define SITE_VIEW_BAKE_H

#include "site/bake_table.h"
#include "site/page.h"

/* bake-with/<slug>/ */
char *path_of_bake(arena *a, const ingredient *of);

/* bake-with/: the ingredients that have a page, by family. */
view *view_of_cupboard(arena *a, const page_maker *by, const bake_table *bakes);

/* bake-with/<slug>/ of the ingredient with pantry index `which`: its recipes by way. */
view *view_of_bake(arena *a, const page_maker *by, size_t which, const recipe_rows *rows,
                   const bake_table *bakes);

#endif
