/* The searchable index: search/index.json, read by the theme's script and by any other program.
 * Its format is documented in search-index.schema.json beside this file. */
#ifndef SITE_SEARCH_INDEX_H
#define SITE_SEARCH_INDEX_H

#include "site/page.h"
#include "site/row.h"

/* Numbers in the index of the ingredients that recipes use or that can stand in, in the order of
 * the pantry; INDEX_NOT_NAMED for the others. In `a`. */
uint16_t *index_numbers_of(arena *a, const recipe_rows *rows, const pantry *shelf);

enum { INDEX_NOT_NAMED = UINT16_MAX };

/* Adds "ingredients": name, slug, family (and other names) of those with a number, in its order;
 * and "also": for each of them the list of its other names. */
void index_add_ingredients(text *t, const page_maker *by, const uint16_t *numbers, bool with_also);
void index_add_other_names(text *t, const uint16_t *numbers, const pantry *shelf);

/* Adds what a list of results shows of a recipe: slug, title, summary, kind, portion, picture,
 * figures; and the numbers of its ingredients that are not optional. */
void index_add_shown(arena *a, text *t, const page_maker *by, const recipe_row *of);
void index_add_needed(text *t, const recipe_row *of, const uint16_t *numbers);

/* Adds the document: version, ingredients in use, recipes. What is needed on the way is in `a`. */
void search_index_write(arena *a, const page_maker *by, const recipe_rows *rows, text *t);

#endif
