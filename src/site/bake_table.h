/* What can be baked with each powder, flour, meal and nut butter: the recipes that use it as
 * written, and those where it stands in for something, by verdict. */
#ifndef SITE_BAKE_TABLE_H
#define SITE_BAKE_TABLE_H

#include "site/row.h"

/* A recipe and what gives way in it; `from` is NO_SWAP where the recipe has it as written. */
typedef struct {
    uint32_t row;
    uint16_t from;
} bake_way;

enum { NO_SWAP = UINT16_MAX };

/* As written, works, adjust, different. */
enum { BAKE_WAYS = VERDICT_AVOID + 1, BAKE_AS_WRITTEN = 0 };

/* Recipes listed of one ingredient and way; the rest is only counted, so that the table stays
 * small however many recipes there are. */
enum { BAKES_LISTED = 200 };

typedef struct {
    bake_way *items;
    size_t count, capacity; /* listed */
    size_t all;             /* counted */
} bake_list;

typedef struct {
    bake_list (*of)[BAKE_WAYS]; /* for every pantry index */
} bake_table;

/* True for the families that readers ask about: what a bake is built of. */
bool bake_is_asked_for(const ingredient *what);

/* The table of `rows`, in their order. Each recipe counts once for an ingredient, in the best way:
 * as written, else by the best verdict on a swap. In `a`. */
bake_table bake_table_of(arena *a, const recipe_rows *rows, const pantry *shelf);

/* Recipes that an ingredient can be baked in, in any way. */
size_t bake_count(const bake_table *table, size_t which);

#endif
