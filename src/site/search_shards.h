/* The search index of a large site, in pieces that a page fetches as it needs them, so that a first
 * answer costs the same whether there are a thousand recipes or a hundred thousand.
 *
 *     search/index.json            how many recipes, what kinds, diets and allergens there are
 *     search/shelf.json            ingredients in use or offered as a swap, by number
 *     search/also.json             their other names
 *     search/words/br.json         words that begin with these two letters: where they stand
 *     search/words/fl-flour.json   a word that stands in very many recipes
 *     search/columns/protein.json  one figure of every recipe, for filters and their counts
 *     search/own/oat-flour.json    recipes that use it, and those where it stands in for something
 *     search/rows/7.json           what is shown of recipes 56 to 63
 *
 * Recipes are numbered by the order of their slugs. Sets of them are written as site/posting.h
 * has it. The format is documented in search-shards.schema.json beside this file. */
#ifndef SITE_SEARCH_SHARDS_H
#define SITE_SEARCH_SHARDS_H

#include "site/page.h"
#include "site/row.h"

/* From how many recipes on the index is in pieces: one file would be about half a megabyte. */
enum { SHARDS_FROM = 300 };

/* Recipes in a piece of rows. */
enum { SHARD_ROWS_EACH = 8 };

/* Takes the JSON of `path` ("search/words/br.json"), both good until it returns. */
typedef void shard_taker(const char *path, span json, void *state);

/* The pieces come in parts that can be made side by side. */
enum { SHARD_PARTS = 3 };

/* Makes all pieces of one of the parts, 0 to SHARD_PARTS - 1. Memory is that of two numbers a word
 * of each recipe, freed on return. */
void search_shards_make(const page_maker *by, const recipe_rows *rows, size_t which,
                        shard_taker *take, void *state);

#endif
