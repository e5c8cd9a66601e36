/* All answered swaps of a site gathered by pair: what the ingredient pages and the chart show. */
#ifndef SITE_SWAP_TABLE_H
#define SITE_SWAP_TABLE_H

#include "site/row.h"

/* One replaced ingredient, one replacement, one kind of recipe. */
typedef struct {
    uint16_t from, to;
    const char *kind;             /* null when the recipe has none */
    uint16_t says[VERDICT_COUNT]; /* how many recipes say what */
    uint32_t row[VERDICT_COUNT];  /* one recipe that says so: an index into the rows */
} pair_answer;

typedef struct {
    pair_answer *items; /* sorted by from, kind, to */
    size_t count, capacity;
} swap_table;

/* Gathers the swaps of `rows`. Kinds are borrowed from them. */
swap_table swap_table_of(arena *a, const recipe_rows *rows);

/* What most recipes say; among equals the more cautious. */
verdict pair_verdict(const pair_answer *of);

/* How many recipes answer this pair. */
size_t pair_count(const pair_answer *of);

#endif
