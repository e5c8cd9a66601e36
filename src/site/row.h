/* What is kept of each recipe once its page is written: enough for the lists, the search index,
 * the ingredient pages, the chart and the feed, and no more, since there may be a hundred
 * thousand of them. */
#ifndef SITE_ROW_H
#define SITE_ROW_H

#include "nutrition/allergens.h"
#include "nutrition/macros.h"
#include "read/site_folder.h"
#include "swap/note.h"

#include <stdint.h>

/* One ingredient of a recipe: an index into the pantry, and grams in the batch. */
typedef struct {
    uint16_t what;
    uint16_t optional; /* 1 or 0; no bool, so that there is no hole */
    float grams;
} row_use;

/* One answered swap: pantry indexes and the verdict. */
typedef struct {
    uint16_t from, to;
    uint16_t says; /* verdict */
} row_swap;

typedef struct {
    const char *slug, *title, *summary, *kind, *kind_slug, *date, *changed, *author;
    const char *picture, *picture_text; /* null when none */
    const char *makes_text, *portion_text;
    const char **tags;
    size_t tag_count;
    double portions, minutes;
    double energy_kcal, protein_g, fat_g, carbohydrate_g, fibre_g, sugars_g; /* per portion */
    bool lacking; /* one of these is a lower bound */
    const row_use *uses;
    size_t use_count;
    const row_swap *swaps;
    size_t swap_count;
    allergen_set allergens;
    diet_set diets;
} recipe_row;

typedef struct {
    recipe_row *items;
    size_t count, capacity;
} recipe_rows;

/* The row of `of`, copied whole into `keep`; `figures` and `notes` are the recipe's. */
recipe_row row_of(arena *keep, const recipe *of, const recipe_macros *figures,
                  const swap_notes *notes, const site_folder *by);

/* Sorts by slug: the order of work does not show. */
void rows_sort(recipe_rows *rows);

#endif
