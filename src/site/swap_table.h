/* All answered swaps of a site gathered by pair: what the ingredient pages and the chart show. */
#ifndef SITE_SWAP_TABLE_H
#define SITE_SWAP_TABLE_H

#include "site/row.h"

/* One replaced ingredient, one replacement, one kind of recipe. */
typedef struct {
    uint16_t from, to;
    const char *kind;             /* null when the recipe has none */
    uint32_t says[VERDICT_COUNT]; /* how many recipes say what */
    uint32_t row[VERDICT_COUNT];  /* one recipe that says so: an index into the rows */
} pair_answer;

typedef struct {
    pair_answer *items; /* sorted by from, kind, to */
    size_t count, capacity;
    const uint32_t *order[2]; /* places of items: by `from`, then by `to`, else in their order */
    const uint32_t *first[2]; /* where in `order` those of each ingredient begin */
    size_t ingredients;       /* how many `first` knows; it has one more */
} swap_table;

/* Places of some pairs in a table, in its order. */
typedef struct {
    const uint32_t *items;
    size_t count;
} pair_places;

typedef enum { SIDE_FROM, SIDE_TO } pair_side;

/* Gathers the swaps of `rows`. Kinds are borrowed from them. */
swap_table swap_table_of(arena *a, const recipe_rows *rows);

/* The pairs that have the ingredient with pantry index `which` on one side. */
pair_places swap_table_pairs(const swap_table *of, size_t which, pair_side side);

/* What most recipes say; among equals the more cautious. */
verdict pair_verdict(const pair_answer *of);

/* How many recipes answer this pair. */
size_t pair_count(const pair_answer *of);

#endif
