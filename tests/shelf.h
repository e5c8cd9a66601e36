/* A small pantry for tests: figures of USDA SR28 household weights where a code is given. */
#ifndef TESTS_SHELF_H
#define TESTS_SHELF_H

#include "checks.h"

#include "pantry/pantry.h"

enum { SHELF_MEASURES = 4 };

typedef struct {
    const char *name, *also;
    family in;
    struct {
        const char *word;
        double low, typical, high;
    } measures[SHELF_MEASURES];
    const char *source;
} shelf_row;

static const shelf_row shelf_rows[] = {
    {"oat flour", "ground oats", FAMILY_FLOUR, {{"cup", 90, 104, 120}}, "USDA SR28 20132"},
    {"rolled oats", NULL, FAMILY_GRAIN, {{"cup", 81, 81, 81}}, "USDA SR28 20038"},
    {"egg",
     NULL,
     FAMILY_EGG,
     {{"small", 38, 38, 38}, {"medium", 44, 44, 44}, {"large", 50, 50, 50}, {"cup", 243, 243, 243}},
     "USDA SR28 01123"},
    {"egg white",
     "liquid egg white",
     FAMILY_EGG,
     {{"large", 33, 33, 33}, {"cup", 243, 243, 243}},
     "USDA SR28 01124"},
    {"banana", NULL, FAMILY_FRUIT, {{"medium", 118, 118, 118}, {"cup", 225, 225, 225}}, NULL},
    {"butter", NULL, FAMILY_FAT, {{"cup", 227, 227, 227}, {"stick", 113, 113, 113}}, NULL},
    {"almond", NULL, FAMILY_NUT, {{"cup", 143, 143, 143}, {"each", 1.2, 1.2, 1.2}}, NULL},
    {"almond butter", NULL, FAMILY_NUT_BUTTER, {{"tbsp", 16, 16, 16}}, "USDA SR28 12195"},
    {"milk", "cow's milk", FAMILY_DAIRY, {{"cup", 244, 244, 244}}, "USDA SR28 01077"},
    {"salt", "table salt", FAMILY_SALT, {{"tsp", 6, 6, 6}, {"dash", 0.4, 0.4, 0.4}}, NULL},
    {"baking powder", NULL, FAMILY_LEAVENER, {{"tsp", 4.6, 4.6, 4.6}}, "USDA SR28 18369"},
    {"pea protein powder", "pea protein", FAMILY_PROTEIN_POWDER, {{"scoop", 28, 30, 33}}, NULL},
    {"whey protein isolate", NULL, FAMILY_PROTEIN_POWDER, {{"scoop", 30, 30, 30}}, NULL},
    {"vanilla extract", "vanilla", FAMILY_FLAVOUR, {{"tsp", 4.2, 4.2, 4.2}}, "USDA SR28 02050"},
    {"chickpea", NULL, FAMILY_LEGUME, {{"cup", 164, 164, 164}}, NULL},
    {"lemon", NULL, FAMILY_FRUIT, {{"each", 84, 84, 84}, {"wedge", 7, 7, 7}}, NULL},
    {"garlic", NULL, FAMILY_VEGETABLE, {{"clove", 3, 3, 3}}, NULL},
    {"walnut", NULL, FAMILY_NUT, {{"cup", 100, 100, 100}, {"half", 2, 2, 2}}, "USDA SR28 12155"},
    {"clove", NULL, FAMILY_FLAVOUR, {{"tsp", 2.1, 2.1, 2.1}}, NULL},
    {"chia seed", NULL, FAMILY_NUT, {{NULL, 0, 0, 0}}, NULL},
    {"water", NULL, FAMILY_LIQUID, {{"cup", 237, 237, 237}}, NULL},
};

static inline void shelf_add(pantry *shelf, const shelf_row *row, problems *found) {
    const char **also = ARENA_ARRAY(shelf->home, const char *, 1);
    also[0] = row->also;
    ingredient entry = {.name = row->name,
                        .also = also,
                        .also_count = row->also != NULL,
                        .in = row->in,
                        .measures_source = {row->source, CERTAINTY_PUBLISHED}};
    for (size_t i = 0; i < SHELF_MEASURES && row->measures[i].word; i++) {
        range grams = {row->measures[i].low, row->measures[i].typical, row->measures[i].high};
        LIST_ADD(shelf->home, &entry.measures, (household_measure){row->measures[i].word, grams});
    }
    pantry_add(shelf, &entry, found);
}

static inline pantry shelf_filled(arena *a, problems *found) {
    pantry shelf = pantry_in(a);
    for (size_t i = 0; i < COUNT(shelf_rows); i++)
        shelf_add(&shelf, &shelf_rows[i], found);
    return shelf;
}

#endif
