/* The searchable index: search/index.json, read by the theme's script and by any other program.
 * Its format is documented in search-index.schema.json beside this file. */
#ifndef SITE_SEARCH_INDEX_H
#define SITE_SEARCH_INDEX_H

#include "site/page.h"
#include "site/row.h"

/* Adds the document: version, ingredients in use, recipes. What is needed on the way is in `a`. */
void search_index_write(arena *a, const page_maker *by, const recipe_rows *rows, text *t);

#endif
