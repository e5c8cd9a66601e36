/* US Nutrition Facts: roundings and daily values of 21 CFR 101.9 as amended in 2016, against
 * worked values. Where no other source is named, the rule was read in the FDA Food Labeling Guide
 * (2009), appendix H, or in 21 CFR 101.9(c)(1) as regulation checkers quote it, and the value
 * follows from it by hand. */
#include "unit/support/cmocka_rows.h"

#include "nutrition/label.h"
#include "nutrition/quality.h"
#include "pantry/ingredient.h"

static const struct {
    const char *name;
    nutrient which;
    double amount;
    const char *text;
} rounded[] = {
    /* 101.9(c)(1) calories: under 5 may be 0 */
    {"4.9 kcal", NUTRIENT_ENERGY, 4.9, "0 kcal"},
    {"5 kcal", NUTRIENT_ENERGY, 5, "5 kcal"},
    {"47 kcal", NUTRIENT_ENERGY, 47, "45 kcal"},
    {"50 kcal", NUTRIENT_ENERGY, 50, "50 kcal"},
    {"52 kcal", NUTRIENT_ENERGY, 52, "50 kcal"},
    {"54.9 kcal", NUTRIENT_ENERGY, 54.9, "50 kcal"},
    {"55 kcal", NUTRIENT_ENERGY, 55, "60 kcal"},
    {"106 kcal", NUTRIENT_ENERGY, 106, "110 kcal"},
    {"Atwater rounds the same", NUTRIENT_ENERGY_ATWATER, 106, "110 kcal"},
    {"EU energy rounds the same", NUTRIENT_ENERGY_EU, 47, "45 kcal"},
    /* 101.9(c)(2) fat, saturated fat */
    {"0.49 g fat", NUTRIENT_FAT, 0.49, "0 g"},
    {"0.5 g fat", NUTRIENT_FAT, 0.5, "0.5 g"},
    {"4.38 g fat", NUTRIENT_FAT, 4.38, "4.5 g"},
    {"4.74 g fat", NUTRIENT_FAT, 4.74, "4.5 g"},
    {"4.76 g fat", NUTRIENT_FAT, 4.76, "5 g"},
    {"7.8 g fat", NUTRIENT_FAT, 7.8, "8 g"},
    {"0.4 g saturates", NUTRIENT_SATURATES, 0.4, "0 g"},
    {"1.3 g saturates", NUTRIENT_SATURATES, 1.3, "1.5 g"},
    {"0.1 + 0.4 g is half a gram", NUTRIENT_FAT, 0.1 + 0.4, "0.5 g"},
    /* 101.9(c)(3) cholesterol */
    {"1.9 mg cholesterol", NUTRIENT_CHOLESTEROL, 1.9, "0 mg"},
    {"3 mg cholesterol", NUTRIENT_CHOLESTEROL, 3, "less than 5 mg"},
    {"5 mg cholesterol", NUTRIENT_CHOLESTEROL, 5, "less than 5 mg"},
    {"12 mg cholesterol", NUTRIENT_CHOLESTEROL, 12, "10 mg"},
    /* 101.9(c)(4) sodium */
    {"4.9 mg sodium", NUTRIENT_SODIUM, 4.9, "0 mg"},
    {"66 mg sodium", NUTRIENT_SODIUM, 66, "65 mg"},
    {"140 mg sodium", NUTRIENT_SODIUM, 140, "140 mg"},
    {"142 mg sodium", NUTRIENT_SODIUM, 142, "140 mg"},
    {"154 mg sodium", NUTRIENT_SODIUM, 154, "150 mg"},
    /* 101.9(c)(6) carbohydrate, fibre, sugars, added sugars, sugar alcohol */
    {"0.4 g carbohydrate", NUTRIENT_CARBOHYDRATE, 0.4, "0 g"},
    {"0.7 g carbohydrate", NUTRIENT_CARBOHYDRATE, 0.7, "less than 1 g"},
    {"21.25 g carbohydrate", NUTRIENT_CARBOHYDRATE, 21.25, "21 g"},
    {"0.7 g fibre", NUTRIENT_FIBRE, 0.7, "less than 1 g"},
    {"1.5 g sugars", NUTRIENT_SUGARS, 1.5, "2 g"},
    {"0.49 g added sugars", NUTRIENT_ADDED_SUGARS, 0.49, "0 g"},
    {"8.2 g sugar alcohol", NUTRIENT_POLYOLS, 8.2, "8 g"},
    /* 101.9(c)(7) protein */
    {"0.4 g protein", NUTRIENT_PROTEIN, 0.4, "0 g"},
    {"0.7 g protein", NUTRIENT_PROTEIN, 0.7, "less than 1 g"},
    {"12.5 g protein", NUTRIENT_PROTEIN, 12.5, "13 g"},
    /* vitamins and minerals, amounts: FDA guidance, from memory */
    {"calcium", NUTRIENT_CALCIUM, 263, "260 mg"},
    {"iron", NUTRIENT_IRON, 1.34, "1.3 mg"},
    {"potassium", NUTRIENT_POTASSIUM, 236, "240 mg"},
    {"vitamin D", NUTRIENT_VITAMIN_D, 1.26, "1.3 \u00b5g"},
};

static void amounts_round_by_101_9_c(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rounded); i++)
        expect_text(rounded[i].name, label_round_us(a, rounded[i].which, rounded[i].amount),
                    rounded[i].text);
    arena_free(a);
}

static const struct {
    const char *name;
    nutrient which;
    double amount;
    const char *text;
} percents[] = {
    /* daily values: a table citing the Federal Register of May 2016 */
    {"fat, 8 g of 78", NUTRIENT_FAT, 8, "10 %"},
    {"added sugars, 12 g of 50", NUTRIENT_ADDED_SUGARS, 12, "24 %"},
    {"saturated fat of 20", NUTRIENT_SATURATES, 20, "100 %"},
    {"cholesterol of 300", NUTRIENT_CHOLESTEROL, 300, "100 %"},
    {"sodium of 2300", NUTRIENT_SODIUM, 2300, "100 %"},
    {"carbohydrate of 275", NUTRIENT_CARBOHYDRATE, 275, "100 %"},
    {"fibre of 28", NUTRIENT_FIBRE, 28, "100 %"},
    {"protein of 50", NUTRIENT_PROTEIN, 50, "100 %"},
    {"vitamin D of 20", NUTRIENT_VITAMIN_D, 20, "100 %"},
    {"potassium of 4700", NUTRIENT_POTASSIUM, 4700, "100 %"},
    /* 101.9(c)(8)(iii) tiers */
    {"calcium, 260 mg of 1300", NUTRIENT_CALCIUM, 260, "20 %"},
    {"iron, 1.3 mg of 18: 7.2 to the nearest 2", NUTRIENT_IRON, 1.3, "8 %"},
    {"under 2 % may be 0", NUTRIENT_IRON, 0.35, "0 %"},
    {"2 % of calcium", NUTRIENT_CALCIUM, 26, "2 %"},
    {"to 10 % nearest 2", NUTRIENT_CALCIUM, 130, "10 %"},
    {"above 10 % nearest 5", NUTRIENT_CALCIUM, 170, "15 %"},
    {"to 50 % nearest 5", NUTRIENT_CALCIUM, 650, "50 %"},
    {"above 50 % nearest 10", NUTRIENT_CALCIUM, 690, "50 %"},
    {"and up", NUTRIENT_CALCIUM, 720, "60 %"},
    /* no daily value: total sugars (21 CFR 101.9(c)(6)(ii)), sugar alcohol, energy */
    {"sugars", NUTRIENT_SUGARS, 12, NULL},
    {"sugar alcohol", NUTRIENT_POLYOLS, 12, NULL},
    {"energy", NUTRIENT_ENERGY, 200, NULL},
};

static void percents_of_the_daily_values(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(percents); i++)
        expect_text(percents[i].name, label_daily_value(a, percents[i].which, percents[i].amount),
                    percents[i].text);
    arena_free(a);
}

/* 21 CFR 101.9(c)(7)(ii), (iii); PDCAAS values from Phillips, Nutrition and Metabolism 2016, table
 * 1 (whey isolate 1.00, rice 0.42, pea 0.89); 0.47 is hemp meal, House et al. 2010. */
static void protein_percents_are_corrected(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double protein_g, pdcaas;
        const char *percent;
    } rows[] = {
        {"20 g of whey", 20, 1.00, "40 %"},        {"20 g of rice: 16.8", 20, 0.42, "17 %"},
        {"10 g of pea: 17.8", 10, 0.89, "18 %"},   {"10 g of hemp: 9.4", 10, 0.47, "9 %"},
        {"small, 0.2 corrected", 0.4, 0.5, "0 %"},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        protein_quality q = {.known = true, .pdcaas = rows[i].pdcaas};
        expect_text(rows[i].name, quality_daily_value(a, &q, rows[i].protein_g), rows[i].percent);
        q.known = false;
        expect_text(rows[i].name, quality_daily_value(a, &q, rows[i].protein_g), NULL);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(amounts_round_by_101_9_c),
        cmocka_unit_test(percents_of_the_daily_values),
        cmocka_unit_test(protein_percents_are_corrected),
    };
    return cmocka_run_group_tests_name("published: US label", tests, NULL, NULL);
}
