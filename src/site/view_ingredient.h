/* The views of the ingredient pages and of the swap chart. */
#ifndef SITE_VIEW_INGREDIENT_H
#define SITE_VIEW_INGREDIENT_H

#include "site/bake_table.h"
#include "site/page.h"
#include "site/swap_table.h"

/* Which recipes use each ingredient: for every pantry index, row indexes in order. */
typedef struct {
    uint32_t **rows;
    size_t *counts;
} use_table;

use_table use_table_of(arena *a, const recipe_rows *rows, const pantry *shelf);

/* What the recipes of a site add up to, seen from the ingredients. */
typedef struct {
    const recipe_rows *rows;
    use_table uses;
    swap_table swaps;
    bake_table bakes;
} ingredient_tables;

/* The tables of `rows`, in `a`. */
ingredient_tables ingredient_tables_of(arena *a, const recipe_rows *rows, const pantry *shelf);

/* ingredients/<slug>/ of the ingredient with pantry index `which`. */
view *view_of_ingredient(arena *a, const page_maker *by, size_t which,
                         const ingredient_tables *from);

/* ingredients/: the ones in use, by family. */
view *view_of_ingredients(arena *a, const page_maker *by, const use_table *uses);

/* True when the ingredient has a page: a recipe uses it, or it can stand in for one that does. */
bool ingredient_has_page(const ingredient_tables *from, size_t which);

/* {text, certainty?} under `key`; nothing where a group of figures has no source. */
void view_put_source(arena *a, const language *in, view *to, const char *key,
                     const source_note *of);

#endif
