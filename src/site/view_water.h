/* The view of the page "How the water is reckoned": what the model of swap/balance.h assumes, with
 * the figures that the program reckons with, and one swap of the site worked through. */
#ifndef SITE_VIEW_WATER_H
#define SITE_VIEW_WATER_H

#include "site/page.h"
#include "site/row.h"

#define WATER_PATH "balance/"

/* A swap to work through. */
typedef struct {
    const recipe *of;
    const ingredient *from, *to;
} water_example;

/* Whether the recipe of `row` has a swap that shows what the model is for: one protein powder for
 * another, whey for a plant powder or a plant powder for whey. Sets its pantry indexes. */
bool water_example_in(const recipe_row *row, const pantry *shelf, size_t *from, size_t *to);

/* The page; `shown` may be null, then nothing is worked through. */
view *view_of_water(arena *a, const page_maker *by, const water_example *shown);

#endif
