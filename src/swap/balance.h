/* The water balance of a batch in two states.
 *
 *     in the bowl:  free water = water of all lines - what dry things take up cold
 *     in the bake:  free water = water of all lines - bake loss - what heated things hold
 *
 * Whey takes up little cold and much once it has set; plant powders take up much at once. That
 * is why whey for plant runs in the bowl and bakes dry, and plant for whey stays crumbs.
 *
 * Published capacities are measured in excess water and overstate what a batter meets, so they
 * serve as ratios and ranges: UPTAKE_IN_BATTER of them counts. */
#ifndef SWAP_BALANCE_H
#define SWAP_BALANCE_H

#include "measure/recipe.h"

/* Share of a published uptake that a batter's competition leaves: a quarter to a half (estimate:
 * it turns 66 g a scoop for pea into the one to two spoons of practice). */
#define UPTAKE_IN_BATTER_LOW  0.25
#define UPTAKE_IN_BATTER      0.375
#define UPTAKE_IN_BATTER_HIGH 0.5

typedef struct {
    double water_g;      /* water of all lines */
    range taken_cold_g;  /* what dry things take up in the bowl */
    range held_heated_g; /* what they hold in the bake */
    double fat_g;
    double dry_g;       /* solids other than fat: bulk */
    double setting_g;   /* protein that sets on heating, soft counted half */
    double sweetness_g; /* as sugar */
    double batch_g;
} balance;

/* The balance of `grams` of one ingredient. */
balance balance_of_ingredient(const ingredient *what, double grams);

/* The balance of a weighed recipe. */
balance balance_of(const recipe *of);

balance balance_sum(const balance *a, const balance *b);
balance balance_difference(const balance *a, const balance *b);

/* Free water in g: in the bowl, and in the bake; typical, and its range. */
range balance_free_cold_g(const balance *of);
range balance_free_heated_g(const balance *of);

#endif
