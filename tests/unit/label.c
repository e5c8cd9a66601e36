#include "unit/support/cmocka_rows.h"

#include "nutrition/label.h"
#include "unit/support/build_recipe.h"

static ingredient *whole_food(arena *a, const char *name) {
    ingredient *one = food_of_nothing(a, name);
    const struct {
        nutrient which;
        double amount;
    } figures[] = {{NUTRIENT_ENERGY, 380},      {NUTRIENT_PROTEIN, 20},  {NUTRIENT_FAT, 10},
                   {NUTRIENT_SATURATES, 2.24},  {NUTRIENT_SUGARS, 6},    {NUTRIENT_ADDED_SUGARS, 4},
                   {NUTRIENT_CARBOHYDRATE, 48}, {NUTRIENT_FIBRE, 8},     {NUTRIENT_SODIUM, 400},
                   {NUTRIENT_CALCIUM, 260},     {NUTRIENT_IRON, 2.6},    {NUTRIENT_POTASSIUM, 470},
                   {NUTRIENT_CHOLESTEROL, 7},   {NUTRIENT_VITAMIN_D, 1}, {NUTRIENT_WATER, 12}};
    for (size_t i = 0; i < COUNT(figures); i++)
        food_set(one, figures[i].which, figures[i].amount);
    return one;
}

static recipe_macros half_portions_of(arena *a, const ingredient *what) {
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, what, 100);
    recipe_finish(r, 2, 0);
    return macros_of(r);
}

typedef struct {
    const char *name, *key, *portion, *per_100_g, *percent;
    bool part;
} panel_line;

static void expect_panel(const nutrition_label *label, const panel_line rows[], size_t count) {
    assert_int_equal(label->count, count);
    for (size_t i = 0; i < count; i++) {
        const label_line *line = &label->lines[i];
        expect_text(rows[i].name, line->name, rows[i].name);
        expect_text(rows[i].name, line->key, rows[i].key);
        expect_text(rows[i].name, line->portion_text, rows[i].portion);
        expect_text(rows[i].name, line->per_100_g_text, rows[i].per_100_g);
        expect_text(rows[i].name, line->daily_value_text, rows[i].percent);
        expect_bool(rows[i].name, line->part, rows[i].part);
        expect_bool(rows[i].name, line->known, true);
        expect_bool(rows[i].name, line->at_least, false);
    }
}

/* In the order of 21 CFR 101.9(c); percents are of the portion. */
static void us_panel(void **state) {
    (void)state;
    static const panel_line rows[] = {
        {"Calories", "energy_kcal", "190 kcal", "380 kcal", NULL, false},
        {"Total fat", "fat_g", "5 g", "10 g", "6 %", false},
        {"Saturated fat", "saturates_g", "1 g", "2 g", "6 %", true},
        {"Cholesterol", "cholesterol_mg", "less than 5 mg", "5 mg", "1 %", false},
        {"Sodium", "sodium_mg", "200 mg", "400 mg", "9 %", false},
        {"Total carbohydrate", "carbohydrate_g", "24 g", "48 g", "9 %", false},
        {"Dietary fiber", "fibre_g", "4 g", "8 g", "14 %", true},
        {"Total sugars", "sugars_g", "3 g", "6 g", NULL, true},
        {"Added sugars", "added_sugars_g", "2 g", "4 g", "4 %", true},
        {"Protein", "protein_g", "10 g", "20 g", NULL, false},
        {"Vitamin D", "vitamin_d_ug", "0.5 \u00b5g", "1 \u00b5g", "2 %", false},
        {"Calcium", "calcium_mg", "130 mg", "260 mg", "10 %", false},
        {"Iron", "iron_mg", "1.3 mg", "2.6 mg", "8 %", false},
        {"Potassium", "potassium_mg", "240 mg", "470 mg", "6 %", false},
    };
    arena *a = arena_new();
    recipe_macros m = half_portions_of(a, whole_food(a, "bar"));
    nutrition_label label = label_of(a, &m, LABEL_US, ENERGY_BY_SOURCE);
    expect_panel(&label, rows, COUNT(rows));
    expect_near("exact portion", label.lines[2].portion, 1.12, 1e-9);
    expect_near("exact 100 g", label.lines[2].per_100_g, 2.24, 1e-9);
    arena_free(a);
}

/* In the order of Annex XV; 80 + 90 + 160 + 16 = 346 kcal, 340 + 370 + 680 + 64 = 1454 kJ. */
static void eu_panel(void **state) {
    (void)state;
    static const panel_line rows[] = {
        {"Energy", "energy_kcal", "727 kJ / 173 kcal", "1454 kJ / 346 kcal", NULL, false},
        {"Fat", "fat_g", "5 g", "10 g", NULL, false},
        {"of which saturates", "saturates_g", "1.1 g", "2.2 g", NULL, true},
        {"Carbohydrate", "available_carbohydrate_g", "20 g", "40 g", NULL, false},
        {"of which sugars", "sugars_g", "3 g", "6 g", NULL, true},
        {"Fibre", "fibre_g", "4 g", "8 g", NULL, false},
        {"Protein", "protein_g", "10 g", "20 g", NULL, false},
        {"Salt", "salt_g", "0.5 g", "1 g", NULL, false},
    };
    arena *a = arena_new();
    recipe_macros m = half_portions_of(a, whole_food(a, "bar"));
    nutrition_label label = label_of(a, &m, LABEL_EU, ENERGY_BY_SOURCE);
    expect_panel(&label, rows, COUNT(rows));
    arena_free(a);
}

static void plain_panel_has_one_decimal(void **state) {
    (void)state;
    static const panel_line rows[] = {
        {"Energy", "energy_kcal", "190 kcal", "380 kcal", NULL, false},
        {"Protein", "protein_g", "10 g", "20 g", NULL, false},
        {"Fat", "fat_g", "5 g", "10 g", NULL, false},
        {"of which saturates", "saturates_g", "1.1 g", "2.2 g", NULL, true},
        {"Carbohydrate with fibre", "carbohydrate_g", "24 g", "48 g", NULL, false},
        {"of which fibre", "fibre_g", "4 g", "8 g", NULL, true},
        {"of which sugars", "sugars_g", "3 g", "6 g", NULL, true},
        {"of which added sugars", "added_sugars_g", "2 g", "4 g", NULL, true},
        {"Salt", "salt_g", "0.5 g", "1 g", NULL, false},
        {"Calcium", "calcium_mg", "130 mg", "260 mg", NULL, false},
        {"Iron", "iron_mg", "1.3 mg", "2.6 mg", NULL, false},
        {"Potassium", "potassium_mg", "235 mg", "470 mg", NULL, false},
        {"Cholesterol", "cholesterol_mg", "3.5 mg", "7 mg", NULL, false},
        {"Vitamin D", "vitamin_d_ug", "0.5 \u00b5g", "1 \u00b5g", NULL, false},
        {"Water", "water_g", "6 g", "12 g", NULL, false},
    };
    arena *a = arena_new();
    recipe_macros m = half_portions_of(a, whole_food(a, "bar"));
    nutrition_label label = label_of(a, &m, LABEL_NONE, ENERGY_BY_SOURCE);
    expect_panel(&label, rows, COUNT(rows));
    arena_free(a);
}

static const label_line *line_with(const nutrition_label *label, const char *key) {
    for (size_t i = 0; i < label->count; i++)
        if (strcmp(label->lines[i].key, key) == 0)
            return &label->lines[i];
    return NULL;
}

static void energy_follows_the_rule(void **state) {
    (void)state;
    static const struct {
        const char *name;
        energy_rule rule;
        double kcal;
    } rows[] = {{"source", ENERGY_BY_SOURCE, 380},
                {"Atwater", ENERGY_BY_ATWATER, 80 + 90 + 192},
                {"EU", ENERGY_BY_EU, 346}};
    arena *a = arena_new();
    recipe_macros m = half_portions_of(a, whole_food(a, "bar"));
    for (size_t i = 0; i < COUNT(rows); i++)
        for (label_rule rule = LABEL_US; rule <= LABEL_NONE; rule++) {
            nutrition_label label = label_of(a, &m, rule, rows[i].rule);
            expect_near(rows[i].name, line_with(&label, "energy_kcal")->per_100_g,
                        rule == LABEL_EU ? 346 : rows[i].kcal, 1e-9);
        }
    arena_free(a);
}

static void polyols_show_where_there_are_some(void **state) {
    (void)state;
    static const struct {
        label_rule rule;
        const char *name, *text;
    } rows[] = {{LABEL_US, "Sugar alcohol", "5 g"},
                {LABEL_EU, "of which polyols", "5.2 g"},
                {LABEL_NONE, "of which polyols", "5.2 g"}};
    arena *a = arena_new();
    ingredient *one = whole_food(a, "bar");
    one->polyols = POLYOL_MALTITOL;
    food_set(one, NUTRIENT_POLYOLS, 10.4);
    recipe_macros m = half_portions_of(a, one);
    for (size_t i = 0; i < COUNT(rows); i++) {
        nutrition_label label = label_of(a, &m, rows[i].rule, ENERGY_BY_EU);
        const label_line *line = line_with(&label, "polyols_g");
        assert_non_null(line);
        expect_text(rows[i].name, line->name, rows[i].name);
        expect_text(rows[i].name, line->portion_text, rows[i].text);
    }
    arena_free(a);
}

/* A food without calcium and fibre figures beside a whole one. */
static void what_is_lacking_shows(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *odd = food(a, "odd bran", FAMILY_GRAIN, "", ORIGIN_PLANT);
    food_set(odd, NUTRIENT_CARBOHYDRATE, 50);
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, whole_food(a, "bar"), 100);
    recipe_add(a, r, odd, 100);
    recipe_finish(r, 1, 0);
    recipe_macros m = macros_of(r);
    static const struct {
        label_rule rule;
        const char *key;
        bool at_least;
        double portion;
    } rows[] = {
        {LABEL_US, "carbohydrate_g", false, 98}, {LABEL_US, "calcium_mg", true, 260},
        {LABEL_US, "energy_kcal", true, 380},    {LABEL_EU, "available_carbohydrate_g", true, 40},
        {LABEL_EU, "salt_g", true, 1},           {LABEL_NONE, "fibre_g", true, 8}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        nutrition_label label = label_of(a, &m, rows[i].rule, ENERGY_BY_SOURCE);
        const label_line *line = line_with(&label, rows[i].key);
        expect_bool(rows[i].key, line->known, true);
        expect_bool(rows[i].key, line->at_least, rows[i].at_least);
        expect_near(rows[i].key, line->portion, rows[i].portion, 1e-9);
    }
    arena_free(a);
}

static void what_nobody_knows_has_no_text(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *odd = food(a, "odd meal", FAMILY_GRAIN, "", ORIGIN_ANIMAL);
    food_set(odd, NUTRIENT_PROTEIN, 10);
    recipe_macros m = half_portions_of(a, odd);
    for (label_rule rule = LABEL_US; rule <= LABEL_NONE; rule++) {
        nutrition_label label = label_of(a, &m, rule, ENERGY_BY_SOURCE);
        for (size_t i = 0; i < label.count; i++) {
            const label_line *line = &label.lines[i];
            bool known =
                strcmp(line->key, "protein_g") == 0 || strcmp(line->key, "added_sugars_g") == 0;
            expect_bool(line->name, line->known, known);
            expect_bool(line->name, line->portion_text != NULL, known);
            expect_bool(line->name, line->per_100_g_text != NULL, known);
        }
        static const size_t lines[] = {14, 8, 1};
        assert_int_equal(label.count, lines[rule]);
    }
    arena_free(a);
}

/* Figures that did not pass through a pantry: total and fibre stand in. */
static void available_carbohydrate_from_total_and_fibre(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe_macros m = {0};
    nutrient_set(&m.batch.of, NUTRIENT_CARBOHYDRATE, 20);
    nutrient_set(&m.batch.of, NUTRIENT_FIBRE, 8);
    m.portion = m.per_100_g = m.batch;
    nutrition_label label = label_of(a, &m, LABEL_EU, ENERGY_BY_EU);
    expect_text("both", line_with(&label, "available_carbohydrate_g")->portion_text, "12 g");
    m.batch.of.known &= ~(1u << NUTRIENT_FIBRE);
    label = label_of(a, &m, LABEL_EU, ENERGY_BY_EU);
    expect_bool("no fibre", line_with(&label, "available_carbohydrate_g")->known, false);
    arena_free(a);
}

static void daily_values_are_the_laws(void **state) {
    (void)state;
    expect_near("fat", daily_value_of(NUTRIENT_FAT), 78, 0);
    expect_near("sugars", daily_value_of(NUTRIENT_SUGARS), 0, 0);
}

/* What a change adds to each line is what the panels of before and after differ by; in a panel of
 * every law, salt and available carbohydrate too. */
static void a_change_is_the_difference_of_two_panels(void **state) {
    (void)state;
    static const label_rule rules[] = {LABEL_US, LABEL_EU, LABEL_NONE};
    arena *a = arena_new();
    ingredient *one = food_of_nothing(a, "one"), *other = food_of_nothing(a, "other");
    food_holds(one, 20, 10, 48, 8);
    food_set(one, NUTRIENT_SODIUM, 400);
    food_holds(other, 60, 5, 20, 12);
    food_set(other, NUTRIENT_SODIUM, 100);
    recipe_macros was = half_portions_of(a, one), is = half_portions_of(a, other);
    macros change = macros_difference(&is.portion, &was.portion);
    for (size_t r = 0; r < COUNT(rules); r++) {
        nutrition_label before = label_of(a, &was, rules[r], ENERGY_BY_SOURCE);
        nutrition_label after = label_of(a, &is, rules[r], ENERGY_BY_SOURCE);
        assert_int_equal(before.count, after.count);
        for (size_t i = 0; i < before.count; i++)
            expect_near(before.lines[i].name, label_change(&before.lines[i], &change),
                        after.lines[i].portion - before.lines[i].portion, 1e-9);
    }
    change.lacking |= 1u << NUTRIENT_PROTEIN;
    nutrition_label us = label_of(a, &was, LABEL_US, ENERGY_BY_SOURCE);
    for (size_t i = 0; i < us.count; i++)
        expect_bool(us.lines[i].name, isnan(label_change(&us.lines[i], &change)),
                    us.lines[i].behind == NUTRIENT_PROTEIN);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_change_is_the_difference_of_two_panels),
        cmocka_unit_test(us_panel),
        cmocka_unit_test(eu_panel),
        cmocka_unit_test(plain_panel_has_one_decimal),
        cmocka_unit_test(energy_follows_the_rule),
        cmocka_unit_test(polyols_show_where_there_are_some),
        cmocka_unit_test(what_is_lacking_shows),
        cmocka_unit_test(what_nobody_knows_has_no_text),
        cmocka_unit_test(available_carbohydrate_from_total_and_fibre),
        cmocka_unit_test(daily_values_are_the_laws),
    };
    return cmocka_run_group_tests_name("label", tests, NULL, NULL);
}
