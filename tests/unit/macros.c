#include "unit/support/cmocka_rows.h"

#include "nutrition/macros.h"
#include "unit/support/build_recipe.h"

#define NEAR 1e-9

/* Figures per 100 g from USDA SR28 20132 (oat flour, partially debranned) and 01124 (egg white,
 * raw, fresh). */
static ingredient *oat_flour(arena *a) {
    ingredient *one = food(a, "oat flour", FAMILY_FLOUR, "oat", ORIGIN_PLANT);
    food_holds(one, 14.66, 9.12, 65.70, 6.5);
    food_set(one, NUTRIENT_WATER, 8.55);
    food_set(one, NUTRIENT_SODIUM, 19);
    return one;
}

static ingredient *egg_white(arena *a) {
    ingredient *one = food(a, "egg white", FAMILY_EGG, "white", ORIGIN_EGG);
    food_holds(one, 10.90, 0.17, 0.73, 0);
    food_set(one, NUTRIENT_WATER, 87.57);
    food_set(one, NUTRIENT_SODIUM, 166);
    return one;
}

static recipe *rounds(arena *a) {
    recipe *r = recipe_new(a, "griddle cake");
    recipe_add(a, r, oat_flour(a), 60);
    recipe_add(a, r, egg_white(a), 140);
    recipe_finish(r, 4, 0.10);
    return r;
}

static void sums_batch_portion_and_hundred_grams(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe_macros m = macros_of(rounds(a));
    double protein_g = 0.6 * 14.66 + 1.4 * 10.90, water_g = 0.6 * 8.55 + 1.4 * 87.57;
    const struct {
        const char *name;
        double got, wanted;
    } rows[] = {
        {"batch weight", m.batch.weight_g, 200},
        {"batch protein", m.batch.of.of[NUTRIENT_PROTEIN], protein_g},
        {"batch water, as mixed", m.batch.of.of[NUTRIENT_WATER], water_g},
        {"portion weight, as baked", m.portion.weight_g, 45},
        {"portion protein", m.portion.of.of[NUTRIENT_PROTEIN], protein_g / 4},
        {"portion water, as baked", m.portion.of.of[NUTRIENT_WATER], (water_g - 20) / 4},
        {"100 g weight", m.per_100_g.weight_g, 100},
        {"100 g protein, as baked", m.per_100_g.of.of[NUTRIENT_PROTEIN], protein_g / 1.8},
        {"100 g water, as baked", m.per_100_g.of.of[NUTRIENT_WATER], (water_g - 20) / 1.8},
        {"portion salt", macros_salt_g(&m.portion), (0.6 * 19 + 1.4 * 166) * 2.5 / 4000},
        {"portion available carbohydrate", macros_available_carbohydrate_g(&m.portion),
         (0.6 * 59.2 + 1.4 * 0.73) / 4},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_near(rows[i].name, rows[i].got, rows[i].wanted, NEAR);
    arena_free(a);
}

static bool lacks(const macros *of, nutrient which) {
    return of->lacking >> which & 1u;
}

static void a_missing_figure_is_told(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = rounds(a);
    ingredient *odd = food(a, "odd bran", FAMILY_GRAIN, "", ORIGIN_PLANT);
    food_set(odd, NUTRIENT_PROTEIN, 10);
    recipe_add(a, r, odd, 20);
    recipe_add(a, r, odd, 5);
    recipe_finish(r, 1, 0);
    recipe_macros m = macros_of(r);
    const struct {
        const char *name;
        bool got, wanted;
    } rows[] = {
        {"fibre is known in part", nutrient_known(&m.batch.of, NUTRIENT_FIBRE), true},
        {"fibre is lacking", lacks(&m.batch, NUTRIENT_FIBRE), true},
        {"portion too", lacks(&m.portion, NUTRIENT_FIBRE), true},
        {"100 g too", lacks(&m.per_100_g, NUTRIENT_FIBRE), true},
        {"energy is lacking", lacks(&m.batch, NUTRIENT_ENERGY_EU), true},
        {"protein is whole", lacks(&m.batch, NUTRIENT_PROTEIN), false},
        {"calcium is known to none", nutrient_known(&m.batch.of, NUTRIENT_CALCIUM), false},
        {"unstated polyols are none", lacks(&m.batch, NUTRIENT_POLYOLS), false},
        {"unstated alcohol is none", lacks(&m.batch, NUTRIENT_ALCOHOL), false},
        {"no added sugars in a plain grain", lacks(&m.batch, NUTRIENT_ADDED_SUGARS), false},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].name, rows[i].got, rows[i].wanted);
    word_list without = macros_lacking(a, r, NUTRIENT_FIBRE);
    assert_int_equal(without.count, 1);
    assert_string_equal(without.items[0], "odd bran");
    arena_free(a);
}

static void what_is_not_weighed_makes_everything_lacking(void **state) {
    (void)state;
    arena *a = arena_new();
    const struct {
        const char *name;
        void (*add)(arena *, recipe *, const ingredient *);
        bool lacking;
    } rows[] = {
        {"unweighed", recipe_add_unweighed, true},
        {"to taste", recipe_add_to_taste, false},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe *r = rounds(a);
        rows[i].add(a, r, egg_white(a));
        recipe_finish(r, 1, 0);
        recipe_macros m = macros_of(r);
        for (nutrient n = 0; n < NUTRIENT_COUNT; n++)
            if (nutrient_known(&egg_white(a)->per_100_g, n))
                expect_bool(rows[i].name, lacks(&m.batch, n), rows[i].lacking);
    }
    recipe *r = rounds(a);
    recipe_add_unknown(a, r, "mystery powder", 50);
    recipe_finish(r, 1, 0);
    recipe_macros m = macros_of(r);
    expect_near("an unknown thing weighs", m.batch.weight_g, 250, NEAR);
    expect_bool("an unknown thing lacks all", m.batch.lacking == (1u << NUTRIENT_COUNT) - 1, true);
    assert_string_equal(macros_lacking(a, r, NUTRIENT_PROTEIN).items[0], "mystery powder");
    arena_free(a);
}

static void nothing_is_known_to_hold_nothing(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = recipe_new(a, "cookie");
    recipe_macros m = macros_of(r);
    expect_bool("known", nutrient_known(&m.batch.of, NUTRIENT_PROTEIN), true);
    expect_bool("lacking", m.batch.lacking != 0, false);
    expect_near("100 g", m.per_100_g.of.of[NUTRIENT_PROTEIN], 0, 0);
    r->portions = 0;
    expect_near("no portions", macros_of(r).portion.weight_g, 0, 0);
    macros none = macros_of_ingredient(egg_white(a), 0);
    expect_bool("0 g of a food lacks nothing", none.lacking != 0, false);
    arena_free(a);
}

static void loss_never_makes_water_negative(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = recipe_new(a, "cracker");
    recipe_add(a, r, oat_flour(a), 100);
    recipe_finish(r, 1, 0.20);
    expect_near("water", macros_of(r).portion.of.of[NUTRIENT_WATER], 0, 0);
    arena_free(a);
}

static void a_difference_is_known_where_both_are(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *odd = food(a, "odd bran", FAMILY_GRAIN, "", ORIGIN_PLANT);
    food_set(odd, NUTRIENT_PROTEIN, 10);
    macros new = macros_of_ingredient(oat_flour(a), 50), old = macros_of_ingredient(odd, 40);
    macros change = macros_difference(&new, &old);
    expect_near("protein", change.of.of[NUTRIENT_PROTEIN], 14.66 / 2 - 4, NEAR);
    expect_near("weight", change.weight_g, 10, NEAR);
    expect_bool("fat unknown", nutrient_known(&change.of, NUTRIENT_FAT), false);
    expect_near("and 0", change.of.of[NUTRIENT_FAT], 0, 0);
    expect_bool("fat lacking", lacks(&change, NUTRIENT_FAT), true);
    macros twice = macros_times(&change, -2);
    expect_near("times", twice.of.of[NUTRIENT_PROTEIN], -2 * (14.66 / 2 - 4), NEAR);
    expect_near("times, weight", twice.weight_g, -20, NEAR);
    arena_free(a);
}

static void carbohydrate_without_fibre(void **state) {
    (void)state;
    const struct {
        const char *name;
        double total_g, fibre_g, wanted_g;
    } rows[] = {{"less fibre", 20, 8, 12}, {"never below 0", 5, 6, 0}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        macros m = {0};
        nutrient_set(&m.of, NUTRIENT_CARBOHYDRATE, rows[i].total_g);
        nutrient_set(&m.of, NUTRIENT_FIBRE, rows[i].fibre_g);
        expect_near(rows[i].name, macros_available_carbohydrate_g(&m), rows[i].wanted_g, NEAR);
    }
}

static void energy_is_chosen_by_rule(void **state) {
    (void)state;
    assert_int_equal(energy_nutrient(ENERGY_BY_SOURCE), NUTRIENT_ENERGY);
    assert_int_equal(energy_nutrient(ENERGY_BY_ATWATER), NUTRIENT_ENERGY_ATWATER);
    assert_int_equal(energy_nutrient(ENERGY_BY_EU), NUTRIENT_ENERGY_EU);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sums_batch_portion_and_hundred_grams),
        cmocka_unit_test(a_missing_figure_is_told),
        cmocka_unit_test(what_is_not_weighed_makes_everything_lacking),
        cmocka_unit_test(nothing_is_known_to_hold_nothing),
        cmocka_unit_test(loss_never_makes_water_negative),
        cmocka_unit_test(a_difference_is_known_where_both_are),
        cmocka_unit_test(carbohydrate_without_fibre),
        cmocka_unit_test(energy_is_chosen_by_rule),
    };
    return cmocka_run_group_tests_name("macros", tests, NULL, NULL);
}
