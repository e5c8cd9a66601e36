#include "unit/support/cmocka_rows.h"

#include "nutrition/energy.h"
#include "unit/support/build_recipe.h"

#define NEAR 1e-9

static void needs_its_macros(void **state) {
    (void)state;
    const struct {
        const char *name;
        nutrient missing;
        bool atwater, eu;
    } rows[] = {
        {"no protein", NUTRIENT_PROTEIN, false, false},
        {"no fat", NUTRIENT_FAT, false, false},
        {"no carbohydrate", NUTRIENT_CARBOHYDRATE, false, false},
        {"no fibre", NUTRIENT_FIBRE, true, false},
        {"no sodium", NUTRIENT_SODIUM, true, true},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        nutrients n = {.known = (1u << NUTRIENT_COUNT) - 1};
        n.known &= ~(1u << rows[i].missing);
        double kcal = -1, kj = -1;
        expect_bool(rows[i].name, energy_atwater(&n, POLYOL_NONE, &kcal), rows[i].atwater);
        expect_near(rows[i].name, kcal, rows[i].atwater ? 0 : -1, 0);
        kcal = -1;
        expect_bool(rows[i].name, energy_eu(&n, POLYOL_NONE, &kcal, &kj), rows[i].eu);
        expect_near(rows[i].name, kj, rows[i].eu ? 0 : -1, 0);
    }
}

static void an_unnamed_polyol_gets_no_discount_in_the_us(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *one = food(a, "sweet bulk", FAMILY_SWEETENER, "", ORIGIN_PLANT);
    food_holds(one, 0, 0, 100, 0);
    food_set(one, NUTRIENT_POLYOLS, 100);
    expect_near("US", one->per_100_g.of[NUTRIENT_ENERGY_ATWATER], 400, NEAR);
    expect_near("EU", one->per_100_g.of[NUTRIENT_ENERGY_EU], 240, NEAR);
    expect_near("EU, kJ", one->per_100_g.of[NUTRIENT_ENERGY_EU_KJ], 1000, NEAR);
    arena_free(a);
}

typedef struct {
    nutrient which;
    double amount;
} figure;

#define UNKNOWN (-1.0)

typedef struct {
    const char *name;
    family in;
    bool hers;
    figure stated[4]; /* what is not filled in states 0 g water */
    figure wanted;
} filled_entry;

static const filled_entry filled[] = {
    {"no cholesterol in a plant", FAMILY_FLOUR, true, {{0}}, {NUTRIENT_CHOLESTEROL, 0}},
    {"no fat, no saturates", FAMILY_DAIRY, true, {{NUTRIENT_FAT, 0}}, {NUTRIENT_SATURATES, 0}},
    {"fat", FAMILY_DAIRY, true, {{NUTRIENT_FAT, 1}}, {NUTRIENT_SATURATES, UNKNOWN}},
    {"no carbohydrate, no fibre",
     FAMILY_DAIRY,
     true,
     {{NUTRIENT_CARBOHYDRATE, 0}},
     {NUTRIENT_FIBRE, 0}},
    {"nor sugars, nor added ones",
     FAMILY_DAIRY,
     true,
     {{NUTRIENT_CARBOHYDRATE, 0}},
     {NUTRIENT_ADDED_SUGARS, 0}},
    {"a yogurt of hers may be sweetened",
     FAMILY_DAIRY,
     true,
     {{NUTRIENT_SUGARS, 5}},
     {NUTRIENT_ADDED_SUGARS, UNKNOWN}},
    {"one of the reference would say so",
     FAMILY_DAIRY,
     false,
     {{NUTRIENT_SUGARS, 5}},
     {NUTRIENT_ADDED_SUGARS, 0}},
    {"a sweetener's sugars may be its own",
     FAMILY_SWEETENER,
     false,
     {{NUTRIENT_SUGARS, 60}},
     {NUTRIENT_ADDED_SUGARS, UNKNOWN}},
    {"a plain flour", FAMILY_FLOUR, true, {{NUTRIENT_SUGARS, 1}}, {NUTRIENT_ADDED_SUGARS, 0}},
    {"what is stated stays",
     FAMILY_NUT,
     true,
     {{NUTRIENT_SUGARS, 9}, {NUTRIENT_ADDED_SUGARS, 7}},
     {NUTRIENT_ADDED_SUGARS, 7}},
    {"available carbohydrate",
     FAMILY_FLOUR,
     true,
     {{NUTRIENT_CARBOHYDRATE, 20}, {NUTRIENT_FIBRE, 8}},
     {NUTRIENT_AVAILABLE_CARBOHYDRATE, 12}},
    {"as a pack states it",
     FAMILY_FLOUR,
     true,
     {{NUTRIENT_AVAILABLE_CARBOHYDRATE, 11}},
     {NUTRIENT_AVAILABLE_CARBOHYDRATE, 11}},
    {"fibre unknown",
     FAMILY_FLOUR,
     true,
     {{NUTRIENT_CARBOHYDRATE, 20}},
     {NUTRIENT_AVAILABLE_CARBOHYDRATE, UNKNOWN}},
    {"EU energy needs fibre",
     FAMILY_FLOUR,
     true,
     {{NUTRIENT_PROTEIN, 1}, {NUTRIENT_FAT, 1}, {NUTRIENT_CARBOHYDRATE, 1}},
     {NUTRIENT_ENERGY_EU, UNKNOWN}},
    {"Atwater does not",
     FAMILY_FLOUR,
     true,
     {{NUTRIENT_PROTEIN, 1}, {NUTRIENT_FAT, 1}, {NUTRIENT_CARBOHYDRATE, 1}},
     {NUTRIENT_ENERGY_ATWATER, 17}},
    {"alcohol",
     FAMILY_FLAVOUR,
     true,
     {{NUTRIENT_PROTEIN, 0},
      {NUTRIENT_FAT, 0},
      {NUTRIENT_CARBOHYDRATE, 10},
      {NUTRIENT_ALCOHOL, 30}},
     {NUTRIENT_ENERGY_ATWATER, 250}},
};

static void fills_what_follows(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(filled); i++) {
        const filled_entry *row = &filled[i];
        ingredient *one = food(a, "thing", row->in, "", ORIGIN_PLANT);
        one->hers = row->hers;
        for (size_t j = 0; j < COUNT(row->stated); j++)
            nutrient_set(&one->per_100_g, row->stated[j].which, row->stated[j].amount);
        energy_fill(one);
        bool known = nutrient_known(&one->per_100_g, row->wanted.which);
        expect_near(row->name, known ? one->per_100_g.of[row->wanted.which] : UNKNOWN,
                    row->wanted.amount, NEAR);
    }
    arena_free(a);
}

typedef struct {
    const char *name;
    double serving_g; /* 0: figures from a table */
    double water, protein, fat, saturates, carbohydrate, sugars, fibre, energy;
    certainty sure;
    bool hers;
    const char *warns; /* part of the message; null: no warning */
} checked_entry;

static const checked_entry checked[] = {
    {"sound", 0, 8, 15, 9, 1.6, 66, 1, 6, 404, CERTAINTY_MEMORY, true, NULL},
    {"over 100 g", 0, 10, 30, 20, 1, 45, 1, 6, 480, CERTAINTY_MEMORY, true, "add up to 105 g"},
    {"a gram over is assay", 0, 5.9, 30, 20, 1, 45, 1, 6, 480, CERTAINTY_MEMORY, true, NULL},
    {"a pack's rounding may exceed", 30, 0, 80, 10, 1, 14, 1, 1, 466, CERTAINTY_LABEL, true, NULL},
    {"sugars over carbohydrate", 0, 0, 10, 5, 1, 10, 11, 0, 125, CERTAINTY_MEMORY, true,
     "more sugars (11 g) than carbohydrate (10 g)"},
    {"milk's sugars by another assay", 0, 88.13, 3.15, 3.25, 1.865, 4.80, 5.05, 0, 61,
     CERTAINTY_PUBLISHED, true, NULL}, /* USDA SR28 01077 */
    {"fibre over carbohydrate", 0, 0, 10, 5, 1, 10, 1, 14, 125, CERTAINTY_MEMORY, true,
     "more fibre"},
    {"saturates over fat", 0, 0, 10, 5, 6, 10, 1, 0, 125, CERTAINTY_MEMORY, true,
     "more saturates (6 g) than fat (5 g)"},
    {"kJ as kcal", 0, 8, 15, 9, 1.6, 66, 1, 6, 1690, CERTAINTY_PUBLISHED, true,
     "1690 kcal stated, but its macros give 405 kcal"},
    {"16 % too much", 0, 0, 50, 0, 0, 50, 0, 0, 476, CERTAINTY_MEMORY, true, "476 kcal stated"},
    {"15 % is let pass", 0, 0, 50, 0, 0, 50, 0, 0, 470, CERTAINTY_MEMORY, true, NULL},
    {"too little", 0, 0, 50, 0, 0, 50, 0, 0, 340, CERTAINTY_MEMORY, true, "340 kcal stated"},
    {"a pack of 50 g may be off by 42 kcal", 50, 0, 50, 0, 0, 50, 0, 0, 276, CERTAINTY_LABEL, true,
     "276 kcal stated"},
    {"a pack of 10 g by 150", 10, 0, 50, 0, 0, 50, 0, 0, 251, CERTAINTY_LABEL, true, NULL},
    {"not by more", 10, 0, 50, 0, 0, 50, 0, 0, 249, CERTAINTY_LABEL, true, "249 kcal stated"},
    {"15 kcal is let pass", 0, 90, 1, 0, 0, 5, 0, 0, 10, CERTAINTY_MEMORY, true, NULL},
    {"fibre may count as nothing", 0, 5, 17, 4, 0, 66, 3, 36, 210, CERTAINTY_MEMORY, true, NULL},
    {"cocoa has factors of its own", 0, 3, 19.6, 13.7, 8.07, 57.9, 1.75, 37, 228,
     CERTAINTY_PUBLISHED, false, NULL}, /* USDA SR28 19165 */
    {"not in an entry of one's own", 0, 3, 19.6, 13.7, 8.07, 57.9, 1.75, 37, 228,
     CERTAINTY_PUBLISHED, true, "228 kcal stated, but its macros give 285 kcal"},
};

static ingredient *entry_of(arena *a, const checked_entry *row) {
    ingredient *one = food(a, "thing", FAMILY_DAIRY, "", ORIGIN_PLANT);
    const figure stated[] = {{NUTRIENT_WATER, row->water},
                             {NUTRIENT_PROTEIN, row->protein},
                             {NUTRIENT_FAT, row->fat},
                             {NUTRIENT_SATURATES, row->saturates},
                             {NUTRIENT_CARBOHYDRATE, row->carbohydrate},
                             {NUTRIENT_SUGARS, row->sugars},
                             {NUTRIENT_FIBRE, row->fibre},
                             {NUTRIENT_ENERGY, row->energy}};
    for (size_t i = 0; i < COUNT(stated); i++)
        nutrient_set(&one->per_100_g, stated[i].which, stated[i].amount);
    one->serving_g = row->serving_g;
    one->composition_source = (source_note){"test", row->sure};
    one->hers = row->hers;
    energy_fill(one);
    return one;
}

static void animals_bring_cholesterol(void **state) {
    (void)state;
    static const struct {
        const char *name;
        origin from;
        allergen_set allergens;
        bool known;
    } rows[] = {
        {"salt", ORIGIN_MINERAL, 0, true},
        {"egg", ORIGIN_EGG, 1u << ALLERGEN_EGG, false},
        {"whey", ORIGIN_DAIRY, 1u << ALLERGEN_MILK, false},
        {"collagen", ORIGIN_ANIMAL, 0, false},
        {"milk chocolate, a plant's by origin", ORIGIN_PLANT, 1u << ALLERGEN_MILK, false},
        {"almond", ORIGIN_PLANT, 1u << ALLERGEN_ALMOND, true},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        ingredient *one = food(a, rows[i].name, FAMILY_FLOUR, "", rows[i].from);
        one->allergens = rows[i].allergens;
        energy_fill(one);
        expect_bool(rows[i].name, nutrient_known(&one->per_100_g, NUTRIENT_CHOLESTEROL),
                    rows[i].known);
    }
    arena_free(a);
}

static void warns_of_contradictions(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(checked); i++) {
        problems found = problems_in(a);
        energy_check(entry_of(a, &checked[i]), &found);
        if (found.errors != 0 || found.warnings != (checked[i].warns ? 1u : 0u))
            fail_msg("%s: %zu errors, %zu warnings: %s", checked[i].name, found.errors,
                     found.warnings, found.count ? found.items[0].message : "");
        if (checked[i].warns)
            expect_holds_text(checked[i].name, found.items[0].message, checked[i].warns);
    }
    arena_free(a);
}

static void unknown_figures_are_not_checked(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    ingredient *one = food(a, "thing", FAMILY_DAIRY, "", ORIGIN_PLANT);
    food_set(one, NUTRIENT_ENERGY, 400);
    food_set(one, NUTRIENT_SUGARS, 60);
    energy_check(one, &found);
    assert_int_equal(found.count, 0);
    arena_free(a);
}

static void shares_add_up(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *one = food(a, "thing", FAMILY_SWEETENER, "", ORIGIN_PLANT);
    one->polyols = POLYOL_MALTITOL;
    food_holds(one, 20, 10, 38, 8);
    food_set(one, NUTRIENT_POLYOLS, 10);
    food_set(one, NUTRIENT_ALCOHOL, 2);
    energy_shares s = energy_shares_of(&one->per_100_g);
    const struct {
        const char *name;
        double got, wanted_kcal;
    } rows[] = {{"protein", s.protein, 80},           {"fat", s.fat, 90},
                {"carbohydrate", s.carbohydrate, 80}, {"fibre", s.fibre, 16},
                {"polyols", s.polyols, 24},           {"alcohol", s.alcohol, 14}};
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_near(rows[i].name, rows[i].got, rows[i].wanted_kcal / 304, NEAR);
    nutrients none = {0};
    expect_near("nothing", energy_shares_of(&none).fat, 0, 0);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(needs_its_macros),
        cmocka_unit_test(an_unnamed_polyol_gets_no_discount_in_the_us),
        cmocka_unit_test(fills_what_follows),
        cmocka_unit_test(animals_bring_cholesterol),
        cmocka_unit_test(warns_of_contradictions),
        cmocka_unit_test(unknown_figures_are_not_checked),
        cmocka_unit_test(shares_add_up),
    };
    return cmocka_run_group_tests_name("energy", tests, NULL, NULL);
}
