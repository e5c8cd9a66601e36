/* Recipes and foods built in C, for tests of measure, nutrition and swap.
 *
 *     arena *a = arena_new();
 *     ingredient *oats = food(a, "oat flour", FAMILY_FLOUR, "oat", ORIGIN_PLANT);
 *     food_holds(oats, 14.66, 9.12, 65.7, 6.5);
 *     recipe *r = recipe_new(a, "cookie");
 *     recipe_add(a, r, oats, 60);
 *     recipe_finish(r, 4, 0.12);
 *     ...
 *     arena_free(a);
 *
 * Everything lives in the arena. food_set and food_holds work out anew what follows from the
 * figures (nutrition/energy.h). */
#ifndef UNIT_SUPPORT_BUILD_RECIPE_H
#define UNIT_SUPPORT_BUILD_RECIPE_H

#include "base/list.h"
#include "measure/recipe.h"
#include "nutrition/energy.h"

/* A food without figures. */
static inline ingredient *food(arena *a, const char *name, family in, const char *kind,
                               origin from) {
    ingredient *one = ARENA_NEW(a, ingredient);
    one->name = one->slug = name;
    one->plural = name;
    one->in = in;
    one->kind = kind;
    one->from = from;
    one->at = (place){"pantry/test.yaml", 1, 1};
    return one;
}

/* One figure; a pack's available carbohydrate comes last. */
static inline void food_set(ingredient *one, nutrient which, double amount) {
    one->per_100_g.known &= ~(1u << NUTRIENT_AVAILABLE_CARBOHYDRATE); /* worked out anew */
    nutrient_set(&one->per_100_g, which, amount);
    energy_fill(one);
}

/* Its macros per 100 g: total carbohydrate, fibre included. */
static inline void food_holds(ingredient *one, double protein_g, double fat_g,
                              double carbohydrate_g, double fibre_g) {
    nutrient_set(&one->per_100_g, NUTRIENT_PROTEIN, protein_g);
    nutrient_set(&one->per_100_g, NUTRIENT_FAT, fat_g);
    nutrient_set(&one->per_100_g, NUTRIENT_CARBOHYDRATE, carbohydrate_g);
    nutrient_set(&one->per_100_g, NUTRIENT_FIBRE, fibre_g);
    energy_fill(one);
}

/* A food of which every figure is stated as 0: add what it holds with food_set. */
static inline ingredient *food_of_nothing(arena *a, const char *name) {
    ingredient *one = food(a, name, FAMILY_FLOUR, "", ORIGIN_PLANT);
    for (size_t i = 0; i < NUTRIENT_ENERGY_ATWATER; i++)
        if ((nutrient)i != NUTRIENT_AVAILABLE_CARBOHYDRATE)
            nutrient_set(&one->per_100_g, (nutrient)i, 0);
    energy_fill(one);
    return one;
}

/* Its amino acids, g per 100 g protein in the order of amino_acid (negative: unknown), and its
 * digestibility. */
static inline void food_amino_acids(ingredient *one, const double profile[AMINO_COUNT],
                                    double digestibility) {
    for (size_t i = 0; i < AMINO_COUNT; i++) {
        one->has_amino_acids[i] = profile[i] >= 0;
        one->amino_acids_g[i] = profile[i] >= 0 ? profile[i] : 0;
    }
    one->digestibility = digestibility;
}

/* A recipe without lines: one portion, no bake loss. */
static inline recipe *recipe_new(arena *a, const char *kind) {
    recipe *r = ARENA_NEW(a, recipe);
    r->file = "recipes/test.md";
    r->slug = r->title = "test";
    r->kind = kind;
    r->makes = r->portion = (yield){1, "piece"};
    r->portions = 1;
    return r;
}

/* Adds a line with its weight; lines and weights grow together. */
static inline recipe_line *recipe_add_line(arena *a, recipe *r, const ingredient *what,
                                           const char *name, weight weighs) {
    weight *weights = ARENA_ARRAY(a, weight, r->lines.count + 1);
    for (size_t i = 0; i < r->lines.count; i++)
        weights[i] = r->weights[i];
    weights[r->lines.count] = weighs;
    r->weights = weights;
    LIST_ADD(a, &r->lines,
             (recipe_line){.at = {r->file, (unsigned)r->lines.count + 3, 5},
                           .written = name,
                           .has_amount = weighs.way != WEIGHT_NONE,
                           .quantity = {weighs.grams, weighs.grams},
                           .name = name,
                           .what = what,
                           .to_taste = weighs.way == WEIGHT_NONE});
    return &r->lines.items[r->lines.count - 1];
}

/* `grams` of a food. */
static inline void recipe_add(arena *a, recipe *r, const ingredient *what, double grams) {
    recipe_add_line(a, r, what, what->name,
                    (weight){WEIGHT_WRITTEN, grams, grams, grams, "as written"});
}

/* A line with an amount that could not be weighed. */
static inline void recipe_add_unweighed(arena *a, recipe *r, const ingredient *what) {
    recipe_add_line(a, r, what, what->name, (weight){.way = WEIGHT_UNKNOWN});
}

/* "to taste". */
static inline void recipe_add_to_taste(arena *a, recipe *r, const ingredient *what) {
    recipe_add_line(a, r, what, what->name, (weight){.way = WEIGHT_NONE});
}

/* `grams` of something that the pantry does not know. */
static inline void recipe_add_unknown(arena *a, recipe *r, const char *name, double grams) {
    recipe_add_line(a, r, NULL, name, (weight){WEIGHT_WRITTEN, grams, grams, grams, "as written"});
}

/* Sets portions and bake loss (a share) and works out the weights that follow. */
static inline void recipe_finish(recipe *r, double portions, double bake_loss) {
    r->portions = r->makes.count = portions;
    r->bake_loss = bake_loss;
    r->batch_g = 0;
    r->unweighed = 0;
    for (size_t i = 0; i < r->lines.count; i++) {
        r->batch_g += r->weights[i].grams;
        r->unweighed += r->weights[i].way == WEIGHT_UNKNOWN;
    }
    r->baked_g = r->batch_g * (1 - bake_loss);
}

#endif
