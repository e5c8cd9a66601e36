/* A small pantry with real figures, and rules over it, for the tests of swap.
 *
 *     larder *l = larder_new();
 *     recipe *r = larder_recipe(l, "cookie", (portion_of[]){{"oat flour", 60}, {"egg white", 140}},
 * 2); swap_rule *rule = larder_rule(l, "a", by_family(FAMILY_FLOUR), by_kind(l, "coconut"),
 * VERDICT_AVOID); rule->when.baked = ANSWER_YES, rule->when.count = 1; recipe_facts about =
 * larder_facts(l, r);       indexes the rules
 *     ...
 *     larder_free(l);
 *
 * Figures are SR28's where a number stands beside the row, else those of the functional
 * properties' literature named in the reference pantry; the uptakes are that literature's. */
#ifndef UNIT_SUPPORT_BUILD_SWAPS_H
#define UNIT_SUPPORT_BUILD_SWAPS_H

#include "base/words.h"
#include "read/language.h"
#include "swap/match.h"
#include "unit/support/build_recipe.h"

typedef struct {
    const char *name, *kind;
    family in;
    origin from;
    double protein_g, fat_g, carbohydrate_g, fibre_g, sugars_g, water_g; /* in 100 g */
    range cold, heated;                                                  /* all 0: has none */
    heat_set sets;
    range cup_g; /* all 0: none */
    double sweetness;
    allergen_set allergens;
} larder_row;

#define HOLDS(allergen) (1u << ALLERGEN_##allergen)

static const larder_row larder_rows[] = {
    {"pea protein isolate",
     "pea isolate",
     FAMILY_PROTEIN_POWDER,
     ORIGIN_PLANT,
     80,
     7,
     4,
     2,
     0.5,
     6,
     {1.2, 3, 6},
     {1.5, 3.2, 6},
     HEAT_SET_SOFT,
     {80, 100, 130},
     0,
     0},
    {"brown rice protein",
     "rice",
     FAMILY_PROTEIN_POWDER,
     ORIGIN_PLANT,
     79,
     4,
     10,
     5,
     0.5,
     5,
     {1.5, 2.3, 3.9},
     {1.5, 2.5, 4},
     HEAT_SET_NONE,
     {90, 110, 130},
     0,
     0},
    {"whey protein isolate",
     "whey isolate",
     FAMILY_PROTEIN_POWDER,
     ORIGIN_DAIRY,
     84.5,
     1.4,
     1,
     0,
     0.5,
     4.4,
     {0.5, 0.8, 1.2},
     {5.3, 6.1, 7},
     HEAT_SET_FIRM,
     {70, 90, 130},
     0,
     HOLDS(MILK)},
    {"whey protein hydrolysate",
     "whey hydrolysate",
     FAMILY_PROTEIN_POWDER,
     ORIGIN_DAIRY,
     80,
     3,
     4,
     0,
     3,
     5,
     {0.3, 0.5, 1},
     {4, 5.3, 6},
     HEAT_SET_NONE,
     {0, 0, 0},
     0,
     HOLDS(MILK)},
    {"micellar casein",
     "casein micellar",
     FAMILY_PROTEIN_POWDER,
     ORIGIN_DAIRY,
     82,
     1.5,
     4,
     0,
     4,
     6,
     {1.8, 2.5, 3.5},
     {1, 1.4, 2},
     HEAT_SET_NONE,
     {80, 100, 125},
     0,
     HOLDS(MILK)},
    {"egg white powder",
     "egg white",
     FAMILY_PROTEIN_POWDER,
     ORIGIN_EGG,
     81.1,
     0,
     7.8,
     0,
     5.4,
     5.8,
     {0.4, 0.8, 1.5},
     {4, 6, 8},
     HEAT_SET_FIRM,
     {95, 107, 120},
     0,
     HOLDS(EGG)}, /* 01136 */
    {"oat flour",
     "oat",
     FAMILY_FLOUR,
     ORIGIN_PLANT,
     14.66,
     9.12,
     65.7,
     6.5,
     0.8,
     8.55,
     {1.2, 2.2, 2.4},
     {1.5, 2.6, 3.5},
     HEAT_SET_NONE,
     {90, 104, 120},
     0,
     HOLDS(OATS)}, /* 20132 */
    {"coconut flour",
     "coconut",
     FAMILY_FLOUR,
     ORIGIN_PLANT,
     18,
     12,
     62,
     38,
     9,
     4,
     {2.5, 4, 7},
     {2.5, 4, 7},
     HEAT_SET_NONE,
     {100, 112, 130},
     0,
     HOLDS(COCONUT)},
    {"all-purpose flour",
     "wheat white",
     FAMILY_FLOUR,
     ORIGIN_PLANT,
     10.33,
     0.98,
     76.31,
     2.7,
     0.27,
     11.92,
     {0.6, 1, 1.5},
     {0.8, 1.4, 2},
     HEAT_SET_SOFT,
     {113, 125, 140},
     0,
     HOLDS(WHEAT)}, /* 20081 */
    {"self-raising flour",
     "wheat self-raising",
     FAMILY_FLOUR,
     ORIGIN_PLANT,
     9.89,
     0.97,
     74.22,
     2.7,
     0.22,
     10.59,
     {0.6, 1, 1.5},
     {0.8, 1.4, 2},
     HEAT_SET_SOFT,
     {113, 125, 140},
     0,
     HOLDS(WHEAT)},
    {"almond meal",
     "almond",
     FAMILY_MEAL,
     ORIGIN_PLANT,
     21.15,
     49.93,
     21.55,
     12.5,
     4.35,
     4.41,
     {0.5, 0.9, 1.5},
     {0.5, 0.9, 1.5},
     HEAT_SET_NONE,
     {92, 96, 112},
     0,
     HOLDS(ALMOND)}, /* 12061 */
    {"flaxseed meal",
     "flaxseed",
     FAMILY_MEAL,
     ORIGIN_PLANT,
     18.29,
     42.16,
     28.88,
     27.3,
     1.55,
     6.96,
     {2.5, 3.5, 6},
     {2.5, 3.5, 6},
     HEAT_SET_NONE,
     {95, 104, 115},
     0,
     0}, /* 12220 */
    {"almond butter",
     "almond",
     FAMILY_NUT_BUTTER,
     ORIGIN_PLANT,
     20.96,
     55.5,
     18.82,
     10.3,
     4.43,
     1.64,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {240, 250, 260},
     0,
     HOLDS(ALMOND)}, /* 12195 */
    {"cashew butter",
     "cashew",
     FAMILY_NUT_BUTTER,
     ORIGIN_PLANT,
     17.56,
     49.41,
     27.57,
     2,
     5,
     2.96,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {240, 256, 260},
     0,
     HOLDS(CASHEW)}, /* 12088 */
    {"egg",
     "whole",
     FAMILY_EGG,
     ORIGIN_EGG,
     12.56,
     9.51,
     0.72,
     0,
     0.37,
     76.15,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_FIRM,
     {0, 0, 0},
     0,
     HOLDS(EGG)}, /* 01123 */
    {"egg white",
     "white",
     FAMILY_EGG,
     ORIGIN_EGG,
     10.9,
     0.17,
     0.73,
     0,
     0.71,
     87.57,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_FIRM,
     {243, 243, 243},
     0,
     HOLDS(EGG)}, /* 01124 */
    {"whole milk",
     "milk whole",
     FAMILY_DAIRY,
     ORIGIN_DAIRY,
     3.15,
     3.25,
     4.8,
     0,
     5.05,
     88.13,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {244, 244, 244},
     0,
     HOLDS(MILK)}, /* 01077 */
    {"yogurt",
     "yogurt whole",
     FAMILY_DAIRY,
     ORIGIN_DAIRY,
     3.47,
     3.25,
     4.66,
     0,
     4.66,
     87.9,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {245, 245, 245},
     0,
     HOLDS(MILK)}, /* 01116 */
    {"oat milk",
     "plant milk oat",
     FAMILY_LIQUID,
     ORIGIN_PLANT,
     1,
     1.5,
     6.6,
     0.8,
     4,
     90.5,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {240, 244, 248},
     0,
     HOLDS(OATS)},
    {"water",
     "water",
     FAMILY_LIQUID,
     ORIGIN_MINERAL,
     0,
     0,
     0,
     0,
     0,
     100,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {237, 237, 237},
     0,
     0}, /* 14429 */
    {"lemon juice",
     "juice lemon",
     FAMILY_LIQUID,
     ORIGIN_PLANT,
     0.35,
     0.24,
     6.9,
     0.3,
     2.52,
     92.31,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {244, 244, 244},
     0,
     0}, /* 09152 */
    {"apple purée",
     "apple",
     FAMILY_FRUIT_PUREE,
     ORIGIN_PLANT,
     0.17,
     0.1,
     11.27,
     1.1,
     9.42,
     88.22,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {244, 244, 244},
     0,
     0}, /* 09019 */
    {"carrot",
     "carrot",
     FAMILY_VEGETABLE,
     ORIGIN_PLANT,
     0.93,
     0.24,
     9.58,
     2.8,
     4.74,
     88.29,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {110, 110, 110},
     0,
     0}, /* 11124 */
    {"sugar",
     "sugar white",
     FAMILY_SWEETENER,
     ORIGIN_PLANT,
     0,
     0,
     99.98,
     0,
     99.8,
     0.02,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {200, 200, 200},
     1,
     0}, /* 19335 */
    {"erythritol",
     "polyol erythritol",
     FAMILY_SWEETENER,
     ORIGIN_PLANT,
     0,
     0,
     100,
     0,
     0,
     0,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {185, 200, 215},
     0.65,
     0},
    {"maple syrup",
     "syrup maple",
     FAMILY_SWEETENER,
     ORIGIN_PLANT,
     0.04,
     0.06,
     67.04,
     0,
     60.46,
     32.39,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {315, 315, 315},
     0.6,
     0}, /* 19353 */
    {"butter",
     "butter",
     FAMILY_FAT,
     ORIGIN_DAIRY,
     0.85,
     81.11,
     0.06,
     0,
     0.06,
     16.17,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {227, 227, 227},
     0,
     HOLDS(MILK)}, /* 01145 */
    {"cornstarch",
     "corn",
     FAMILY_STARCH,
     ORIGIN_PLANT,
     0.26,
     0.05,
     91.27,
     0.9,
     0,
     8.32,
     {0.5, 0.8, 1.1},
     {3, 5, 8},
     HEAT_SET_NONE,
     {120, 128, 136},
     0,
     0}, /* 20027 */
    {"psyllium husk",
     "psyllium husk",
     FAMILY_GUM,
     ORIGIN_PLANT,
     2.3,
     0.6,
     87,
     85,
     0,
     8,
     {8, 15, 40},
     {8, 15, 40},
     HEAT_SET_NONE,
     {70, 80, 120},
     0,
     0},
    {"cocoa powder",
     "cocoa powder",
     FAMILY_COCOA,
     ORIGIN_PLANT,
     19.6,
     13.7,
     57.9,
     37,
     1.75,
     3,
     {1, 1.5, 2.2},
     {1.5, 2, 3},
     HEAT_SET_NONE,
     {75, 86, 95},
     0,
     0}, /* 19165 */
    {"baking powder",
     "baking powder",
     FAMILY_LEAVENER,
     ORIGIN_MINERAL,
     0,
     0,
     27.7,
     0.2,
     0,
     5.3,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {0, 0, 0},
     0,
     0}, /* 18369 */
    {"cream of tartar",
     "acid",
     FAMILY_LEAVENER,
     ORIGIN_PLANT,
     0,
     0,
     61.5,
     0.2,
     0,
     1.7,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {0, 0, 0},
     0,
     0}, /* 18373 */
    {"instant yeast",
     "yeast instant",
     FAMILY_LEAVENER,
     ORIGIN_PLANT,
     40.44,
     7.61,
     41.22,
     26.9,
     0,
     5.08,
     {0, 0, 0},
     {0, 0, 0},
     HEAT_SET_NONE,
     {0, 0, 0},
     0,
     0}, /* 18375 */
};

typedef struct {
    const language *in;
    arena *a;
    pantry shelf;
    rule_book book;
    problems found;
} larder;

static inline void larder_add(larder *l, const larder_row *row) {
    ingredient *one = food(l->a, row->name, row->in, row->kind, row->from);
    one->plural = NULL;
    food_holds(one, row->protein_g, row->fat_g, row->carbohydrate_g, row->fibre_g);
    food_set(one, NUTRIENT_SUGARS, row->sugars_g);
    food_set(one, NUTRIENT_WATER, row->water_g);
    one->has_uptake = row->cold.high > 0;
    one->cold_uptake = row->cold;
    one->heated_uptake = row->heated;
    one->sets = row->sets;
    one->sweetness = row->sweetness;
    one->allergens = row->allergens;
    one->has_gluten = row->allergens & HOLDS(WHEAT) ? GLUTEN_YES : GLUTEN_NONE;
    if (row->cup_g.high > 0)
        LIST_ADD(l->a, &one->measures, (household_measure){"cup", row->cup_g});
    pantry_add(&l->shelf, one, &l->found);
}

static inline larder *larder_new(void) {
    arena *a = arena_new();
    larder *l = ARENA_NEW(a, larder);
    *l =
        (larder){.a = a, .in = language_english(a), .shelf = pantry_in(a), .found = problems_in(a)};
    for (size_t i = 0; i < COUNT(larder_rows); i++)
        larder_add(l, &larder_rows[i]);
    l->book.shelf = &l->shelf;
    return l;
}

static inline void larder_free(larder *l) {
    arena_free(l->a);
}

/* The ingredient called `name`, which must be there. */
static inline const ingredient *larder_find(larder *l, const char *name) {
    const ingredient *one = pantry_find(&l->shelf, span_of(name), l->a);
    if (!one)
        fail_msg("the test's pantry has no %s", name);
    return one;
}

typedef struct {
    const char *name; /* null ends a list that is not full */
    double grams;
} portion_of;

/* A recipe of up to `count` lines, in four portions, losing a tenth in the bake; no oven. */
static inline recipe *larder_recipe(larder *l, const char *kind, const portion_of lines[],
                                    size_t count) {
    recipe *r = recipe_new(l->a, kind);
    for (size_t i = 0; i < count && lines[i].name; i++)
        recipe_add(l->a, r, larder_find(l, lines[i].name), lines[i].grams);
    recipe_finish(r, 4, 0.1);
    return r;
}

/* Puts the lines of `r` from line `first` on under `heading`. */
static inline void larder_group(larder *l, recipe *r, const char *heading, size_t first) {
    LIST_ADD(l->a, &r->groups, (line_group){NULL, 0, first});
    LIST_ADD(l->a, &r->groups, (line_group){heading, first, r->lines.count - first});
}

/* The line of `r` that holds `name`. */
static inline size_t larder_line(larder *l, const recipe *r, const char *name) {
    const ingredient *what = larder_find(l, name);
    size_t i = 0;
    while (i < r->lines.count && r->lines.items[i].what != what)
        i++;
    if (i == r->lines.count)
        fail_msg("the test's recipe has no %s", name);
    return i;
}

static inline selector by_family(family in) {
    return (selector){.families = 1u << in};
}

static inline selector by_name(larder *l, const char *name) {
    selector by = {0};
    LIST_ADD(l->a, &by.names, words_fold(l->a, span_of(name)));
    return by;
}

static inline selector by_kind(larder *l, family in, const char *kind) {
    selector by = by_family(in);
    LIST_ADD(l->a, &by.kinds, span_of(kind));
    return by;
}

static inline selector with_origin(selector by, origin from) {
    by.origins |= 1u << from;
    return by;
}

static inline swap_rule rule_of(larder *l, const char *id, selector replace, selector with,
                                verdict says) {
    swap_rule rule = {.id = id,
                      .at = {"rules/test.yaml", 1, 3},
                      .by = SAID_BY_REFERENCE,
                      .says = says,
                      .amount = AMOUNT_WEIGHT,
                      .ratio = 1,
                      .basis = "common practice"};
    LIST_ADD(l->a, &rule.replace, replace);
    LIST_ADD(l->a, &rule.with, with);
    return rule;
}

/* Adds a rule to the book: good until the next is added. */
static inline swap_rule *larder_rule(larder *l, const char *id, selector replace, selector with,
                                     verdict says) {
    LIST_ADD(l->a, &l->book.rules, rule_of(l, id, replace, with, says));
    return &l->book.rules.items[l->book.rules.count - 1];
}

/* Indexes the book as it is now and works out the facts of `r`. */
static inline recipe_facts larder_facts(larder *l, const recipe *r) {
    rule_book_index(l->a, &l->book);
    return facts_of(l->a, r, &l->shelf);
}

#endif
