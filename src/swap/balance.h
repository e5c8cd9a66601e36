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
    double dry_g;       /* solids: bulk */
    double firm_g;      /* protein that sets firm on heating: egg white, whey, gluten */
    double soft_g;      /* protein that sets soft: pea, soy */
    double setting_g;   /* the two as one, soft counted half */
    double sweetness_g; /* as sugar */
    double batch_g;
    double lost_g; /* water that the bake drives off: of a batch, not of an ingredient */
} balance;

/* Water in 1 g of `what`. Where the pantry does not state it (a pack label does not), what
 * protein, fat, carbohydrate and alcohol leave of the weight, minerals being counted as water. */
double balance_water_per_g(const ingredient *what);

/* Solids in 1 g of `what`. Fat is one of them where it is shut up in flour, meal, seed or powder,
 * which give a batter body whole. The fat of a butter, an oil, a nut butter, milk or egg is none.
 */
double balance_dry_per_g(const ingredient *what);

/* The cold uptake of `what` in g of water a g as published; 0 where it has none. */
range balance_cold_uptake(const ingredient *what);

/* True when the pantry says all that a water balance needs: a powder, flour, meal, starch or gum
 * without a water uptake is not known, whereas butter or sugar has none. */
bool balance_known(const ingredient *what);

/* The balance of `grams` (0 or more) of one ingredient. */
balance balance_of_ingredient(const ingredient *what, double grams);

/* The balance of a weighed recipe. */
balance balance_of(const recipe *of);

balance balance_sum(const balance *a, const balance *b);

/* `a` less `b`. What they take up shares one uncertainty, that of UPTAKE_IN_BATTER, so low goes
 * with low and high with high: taking a part out of a batch leaves what the other parts add up
 * to. */
balance balance_difference(const balance *a, const balance *b);

/* Free water in g: in the bowl, and in the bake; typical, and its range. Below 0 the dry things
 * could take up more than there is. */
range balance_free_cold_g(const balance *of);
range balance_free_heated_g(const balance *of);

#endif
