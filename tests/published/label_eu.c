/* EU nutrition declaration: energy factors of Regulation (EU) 1169/2011, Annex XIV (consolidated
 * text of 2024), definitions of Annex I, and the rounding table of the Commission's guidance of
 * December 2012 (as a consultancy restates it). */
#include "unit/support/cmocka_rows.h"

#include "nutrition/label.h"
#include "nutrition/tolerance.h"
#include "unit/support/build_recipe.h"

static const struct {
    const char *name;
    nutrient which;
    double amount;
    const char *text;
} rounded[] = {
    {"fat 10.4", NUTRIENT_FAT, 10.4, "10 g"},
    {"fat 9.96", NUTRIENT_FAT, 9.96, "10 g"},
    {"fat 9.94", NUTRIENT_FAT, 9.94, "9.9 g"},
    {"fat 0.5", NUTRIENT_FAT, 0.5, "<0.5 g"},
    {"fat 0.51", NUTRIENT_FAT, 0.51, "0.5 g"},
    {"fat 0", NUTRIENT_FAT, 0, "0 g"},
    {"saturates 0.1", NUTRIENT_SATURATES, 0.1, "<0.1 g"},
    {"saturates 0.14", NUTRIENT_SATURATES, 0.14, "0.1 g"},
    {"saturates 12.5", NUTRIENT_SATURATES, 12.5, "13 g"},
    {"carbohydrate 0.3", NUTRIENT_AVAILABLE_CARBOHYDRATE, 0.3, "<0.5 g"},
    {"carbohydrate 36.4", NUTRIENT_CARBOHYDRATE, 36.4, "36 g"},
    {"sugars 4.25", NUTRIENT_SUGARS, 4.25, "4.3 g"},
    {"protein 7.44", NUTRIENT_PROTEIN, 7.44, "7.4 g"},
    {"fibre 5.06", NUTRIENT_FIBRE, 5.06, "5.1 g"},
    {"polyols 0.4", NUTRIENT_POLYOLS, 0.4, "<0.5 g"},
    {"kcal to the nearest 1", NUTRIENT_ENERGY_EU, 290.5, "291 kcal"},
    {"kJ to the nearest 1", NUTRIENT_ENERGY_EU_KJ, 1214.4, "1214 kJ"},
    {"calcium, three figures", NUTRIENT_CALCIUM, 1234.5, "1230 mg"},
    {"calcium below 100", NUTRIENT_CALCIUM, 55.55, "55.6 mg"},
    {"iron, two figures", NUTRIENT_IRON, 1.34, "1.3 mg"},
    {"iron below 1", NUTRIENT_IRON, 0.126, "0.13 mg"},
    {"no iron", NUTRIENT_IRON, 0, "0 mg"},
};

static void amounts_round_by_the_guidance(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rounded); i++)
        expect_text(rounded[i].name, label_round_eu(a, rounded[i].which, rounded[i].amount),
                    rounded[i].text);
    arena_free(a);
}

static void salt_rounds_by_the_guidance(void **state) {
    (void)state;
    static const struct {
        double salt_g;
        const char *text;
    } rows[] = {{1.26, "1.3 g"}, {0.126, "0.13 g"}, {0.0125, "<0.01 g"}, {0.0126, "0.01 g"},
                {0.996, "1 g"},  {1, "1 g"},        {0, "0 g"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_text(rows[i].text, label_round_eu_salt(a, rows[i].salt_g), rows[i].text);
    arena_free(a);
}

/* Annex XIV by hand: protein 20, fat 10, carbohydrate 30 of which polyols 10, fibre 8 is
 * 80 + 90 + 80 + 24 + 16 = 290 kcal and 340 + 370 + 340 + 100 + 64 = 1214 kJ; with erythritol for
 * the polyols 266 and 1114. The pantry's carbohydrate includes the fibre: 38. */
static void energy_by_annex_xiv(void **state) {
    (void)state;
    static const struct {
        const char *name;
        polyol which;
        double kcal, kj;
        const char *text;
    } rows[] = {{"maltitol", POLYOL_MALTITOL, 290, 1214, "1214 kJ / 290 kcal"},
                {"erythritol", POLYOL_ERYTHRITOL, 266, 1114, "1114 kJ / 266 kcal"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        ingredient *one = food(a, "bar", FAMILY_SWEETENER, "", ORIGIN_PLANT);
        one->polyols = rows[i].which;
        nutrient_set(&one->per_100_g, NUTRIENT_POLYOLS, 10);
        food_holds(one, 20, 10, 38, 8);
        expect_near(rows[i].name, one->per_100_g.of[NUTRIENT_ENERGY_EU], rows[i].kcal, 1e-9);
        expect_near(rows[i].name, one->per_100_g.of[NUTRIENT_ENERGY_EU_KJ], rows[i].kj, 1e-9);
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, one, 100);
        recipe_finish(r, 1, 0);
        recipe_macros m = macros_of(r);
        nutrition_label label = label_of(a, &m, LABEL_EU, ENERGY_BY_SOURCE);
        expect_text(rows[i].name, label.lines[0].per_100_g_text, rows[i].text);
    }
    arena_free(a);
}

/* Annex I: salt is sodium x 2.5; carbohydrate leaves fibre out. */
static void definitions_of_annex_i(void **state) {
    (void)state;
    macros m = {0};
    nutrient_set(&m.of, NUTRIENT_SODIUM, 400);
    nutrient_set(&m.of, NUTRIENT_CARBOHYDRATE, 38);
    nutrient_set(&m.of, NUTRIENT_FIBRE, 8);
    expect_near("salt", macros_salt_g(&m), 1, 1e-12);
    expect_near("carbohydrate", macros_available_carbohydrate_g(&m), 30, 1e-12);
}

/* The guidance's tolerances for foods; from memory. */
static void tolerances_by_the_guidance(void **state) {
    (void)state;
    static const struct {
        const char *name;
        nutrient which;
        double stated, low, high;
    } rows[] = {
        {"protein 20 g", NUTRIENT_PROTEIN, 20, 16, 24},
        {"fat 8 g", NUTRIENT_FAT, 8, 6.5, 9.5},
        {"fat 50 g", NUTRIENT_FAT, 50, 42, 58},
        {"sugars 1 g", NUTRIENT_SUGARS, 1, 0, 3},
        {"carbohydrate 40 g", NUTRIENT_AVAILABLE_CARBOHYDRATE, 40, 32, 48},
        {"carbohydrate 60 g", NUTRIENT_CARBOHYDRATE, 60, 52, 68},
        {"fibre 5 g", NUTRIENT_FIBRE, 5, 3, 7},
        {"saturates 3 g", NUTRIENT_SATURATES, 3, 2.2, 3.8},
        {"saturates 10 g", NUTRIENT_SATURATES, 10, 8, 12},
        {"vitamin D 2 \u00b5g", NUTRIENT_VITAMIN_D, 2, 1.3, 3},
        {"iron 10 mg", NUTRIENT_IRON, 10, 6.5, 14.5},
        {"no tolerance for energy", NUTRIENT_ENERGY, 400, 400, 400},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        range got = label_tolerance_eu(rows[i].which, rows[i].stated);
        expect_near(rows[i].name, got.low, rows[i].low, 1e-9);
        expect_near(rows[i].name, got.high, rows[i].high, 1e-9);
    }
    expect_near("salt 1 g", label_tolerance_eu_salt(1).low, 0.625, 1e-9);
    expect_near("salt 2 g", label_tolerance_eu_salt(2).high, 2.4, 1e-9);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(amounts_round_by_the_guidance),
        cmocka_unit_test(salt_rounds_by_the_guidance),
        cmocka_unit_test(energy_by_annex_xiv),
        cmocka_unit_test(definitions_of_annex_i),
        cmocka_unit_test(tolerances_by_the_guidance),
    };
    return cmocka_run_group_tests_name("published: EU label", tests, NULL, NULL);
}
