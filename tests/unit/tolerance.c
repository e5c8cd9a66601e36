#include "unit/support/cmocka_rows.h"

#include "nutrition/tolerance.h"
#include "unit/support/build_recipe.h"

#define NEAR 1e-9

static void expect_range(const char *row, range got, double low, double high) {
    expect_near(row, got.low, low, NEAR);
    expect_near(row, got.high, high, NEAR);
}

static void a_label_stands_for_a_range(void **state) {
    (void)state;
    static const struct {
        const char *name;
        nutrient which;
        double stated, low, high;
    } rows[] = {
        {"1 g", NUTRIENT_PROTEIN, 1, 0.5, 1.5},
        {"24 g", NUTRIENT_PROTEIN, 24, 23.5, 24.5},
        {"0 g", NUTRIENT_SUGARS, 0, 0, 0.5},
        {"7.4 g", NUTRIENT_PROTEIN, 7.4, 7.35, 7.45},
        {"0.13 g", NUTRIENT_FIBRE, 0.13, 0.125, 0.135},
        {"2.5 g fat", NUTRIENT_FAT, 2.5, 2.25, 2.75},
        {"2 g fat may be a pack's 2", NUTRIENT_FAT, 2, 1.5, 2.5},
        {"2.3 g fat", NUTRIENT_FAT, 2.3, 2.25, 2.35},
        {"0.1 g saturates", NUTRIENT_SATURATES, 0.1, 0.05, 0.15},
        {"120 kcal", NUTRIENT_ENERGY, 120, 115, 125},
        {"45 kcal", NUTRIENT_ENERGY, 45, 42.5, 47.5},
        {"125 kcal is no tenth", NUTRIENT_ENERGY, 125, 122.5, 127.5},
        {"373 kcal", NUTRIENT_ENERGY, 373, 372.5, 373.5},
        {"150 mg sodium", NUTRIENT_SODIUM, 150, 145, 155},
        {"65 mg sodium", NUTRIENT_SODIUM, 65, 62.5, 67.5},
        {"no label's number", NUTRIENT_PROTEIN, 1.23456, 1.23456, 1.23456},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_range(rows[i].name, label_rounding_range(rows[i].which, rows[i].stated), rows[i].low,
                     rows[i].high);
}

/* 24 g of protein and 120 kcal in a serving of 31 g, as the reader keeps them: per 100 g. */
static ingredient *pack(arena *a) {
    ingredient *one = food(a, "pack powder", FAMILY_PROTEIN_POWDER, "", ORIGIN_PLANT);
    one->serving_g = 31;
    one->composition_source = (source_note){"label", CERTAINTY_LABEL};
    food_set(one, NUTRIENT_PROTEIN, 24 * (100.0 / 31));
    food_set(one, NUTRIENT_ENERGY, 120 * (100.0 / 31));
    food_set(one, NUTRIENT_SUGARS, 1 * (100.0 / 31));
    return one;
}

static void a_serving_widens_on_100_g(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *one = pack(a);
    expect_range("protein", figure_range(one, NUTRIENT_PROTEIN), 2350.0 / 31, 2450.0 / 31);
    expect_range("energy", figure_range(one, NUTRIENT_ENERGY), 11500.0 / 31, 12500.0 / 31);
    expect_range("unknown", figure_range(one, NUTRIENT_IRON), 0, 0);
    one->composition_source.sure = CERTAINTY_PUBLISHED;
    expect_range("a table's", figure_range(one, NUTRIENT_PROTEIN), 2400.0 / 31, 2400.0 / 31);
    one->composition_source.sure = CERTAINTY_LABEL;
    one->serving_g = 0;
    food_set(one, NUTRIENT_PROTEIN, 77);
    expect_range("a pack's per 100 g", figure_range(one, NUTRIENT_PROTEIN), 76.5, 77.5);
    arena_free(a);
}

static void portions_add_the_ranges_up(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *table = food_of_nothing(a, "table flour");
    food_set(table, NUTRIENT_PROTEIN, 10);
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, pack(a), 62);
    recipe_add(a, r, table, 100);
    recipe_add_unweighed(a, r, pack(a));
    recipe_finish(r, 4, 0);
    range protein = portion_range(r, NUTRIENT_PROTEIN);
    expect_range("protein", protein, (47 + 10) / 4.0, (49 + 10) / 4.0);
    expect_near("as macros_of has it", protein.typical, 58 / 4.0, NEAR);
    r->portions = 0;
    expect_range("no portions", portion_range(r, NUTRIENT_PROTEIN), 57, 59);
    arena_free(a);
}

static void narrow_ranges_do_not_matter(void **state) {
    (void)state;
    static const struct {
        const char *name;
        nutrient which;
        range of;
        bool matters;
    } rows[] = {
        {"5 % to a side", NUTRIENT_PROTEIN, {19, 20, 21}, false},
        {"more", NUTRIENT_PROTEIN, {18.9, 20, 21.1}, true},
        {"a gram in all", NUTRIENT_SUGARS, {0.5, 1, 1.5}, false},
        {"more than that", NUTRIENT_SUGARS, {0.4, 1, 1.6}, true},
        {"10 kcal", NUTRIENT_ENERGY, {25, 30, 35}, false},
        {"12 kcal", NUTRIENT_ENERGY, {24, 30, 36}, true},
        {"12 mg", NUTRIENT_SODIUM, {24, 30, 36}, true},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].name, range_matters(rows[i].which, rows[i].of), rows[i].matters);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_label_stands_for_a_range),
        cmocka_unit_test(a_serving_widens_on_100_g),
        cmocka_unit_test(portions_add_the_ranges_up),
        cmocka_unit_test(narrow_ranges_do_not_matter),
    };
    return cmocka_run_group_tests_name("tolerance", tests, NULL, NULL);
}
