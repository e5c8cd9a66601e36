/* Energy by the general Atwater factors, the US sugar alcohol factors and the EU's. */
#include "unit/support/cmocka_rows.h"

#include "nutrition/energy.h"
#include "unit/support/build_recipe.h"

typedef struct {
    const char *name;
    double protein, fat, carbohydrate, fibre, polyols;
    polyol which;
    double atwater_kcal, eu_kcal;
    double within;
} energy_row;

static const energy_row rows[] = {
    /* USDA SR28 12061, almonds: 4 x 21.15 + 9 x 49.93 + 4 x 21.55 = 620.2; EU 84.6 + 449.4 + 36.2
     * + 25.0 = 595.2. The table's own 579 kcal is by specific factors. */
    {"almonds", 21.15, 49.93, 21.55, 12.5, 0, POLYOL_NONE, 620.2, 595.2, 0.1},
    /* 21 CFR 101.9(c)(1)(i)(B): 4/4/9 on 10, 5, 20 is 165 */
    {"4/4/9", 10, 5, 20, 0, 0, POLYOL_NONE, 165, 165, 1e-9},
    /* 101.9(c)(1)(i)(F), from memory: 100 g of each */
    {"erythritol", 0, 0, 100, 0, 100, POLYOL_ERYTHRITOL, 0, 0, 1e-9},
    {"xylitol", 0, 0, 100, 0, 100, POLYOL_XYLITOL, 240, 240, 1e-9},
    {"maltitol", 0, 0, 100, 0, 100, POLYOL_MALTITOL, 210, 240, 1e-9},
    {"sorbitol", 0, 0, 100, 0, 100, POLYOL_SORBITOL, 260, 240, 1e-9},
    {"isomalt", 0, 0, 100, 0, 100, POLYOL_ISOMALT, 200, 240, 1e-9},
    {"lactitol", 0, 0, 100, 0, 100, POLYOL_LACTITOL, 200, 240, 1e-9},
    {"mannitol", 0, 0, 100, 0, 100, POLYOL_MANNITOL, 160, 240, 1e-9},
    /* 10, 5, 20 of which erythritol 8 and fibre 2: 40 + 45 + 48 by the general factors with the
     * sugar alcohol at 0; 40 + 45 + 40 + 4 = 129 where fibre is at 2, as in the EU and as 101.9
     * allows for soluble fibre */
    {"erythritol and fibre", 10, 5, 20, 2, 8, POLYOL_ERYTHRITOL, 133, 129, 1e-9},
};

static void energies(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        nutrients n = {0};
        double atwater_kcal, eu_kcal, eu_kj;
        nutrient_set(&n, NUTRIENT_PROTEIN, rows[i].protein);
        nutrient_set(&n, NUTRIENT_FAT, rows[i].fat);
        nutrient_set(&n, NUTRIENT_CARBOHYDRATE, rows[i].carbohydrate);
        nutrient_set(&n, NUTRIENT_FIBRE, rows[i].fibre);
        nutrient_set(&n, NUTRIENT_POLYOLS, rows[i].polyols);
        expect_bool(rows[i].name, energy_atwater(&n, rows[i].which, &atwater_kcal), true);
        expect_bool(rows[i].name, energy_eu(&n, rows[i].which, &eu_kcal, &eu_kj), true);
        expect_near(rows[i].name, atwater_kcal, rows[i].atwater_kcal, rows[i].within);
        expect_near(rows[i].name, eu_kcal, rows[i].eu_kcal, rows[i].within);
    }
}

/* Annex XIV, 1 g of each: kcal and kJ stand apart and are not each other's conversion. */
static void annex_xiv_factor_by_factor(void **state) {
    (void)state;
    static const struct {
        const char *name;
        nutrient which;
        polyol kind;
        double kcal, kj;
    } factors[] = {
        {"carbohydrate", NUTRIENT_CARBOHYDRATE, POLYOL_NONE, 4, 17},
        {"protein", NUTRIENT_PROTEIN, POLYOL_NONE, 4, 17},
        {"fat", NUTRIENT_FAT, POLYOL_NONE, 9, 37},
        {"alcohol", NUTRIENT_ALCOHOL, POLYOL_NONE, 7, 29},
        {"fibre", NUTRIENT_FIBRE, POLYOL_NONE, 2, 8},
        {"polyols", NUTRIENT_POLYOLS, POLYOL_XYLITOL, 2.4, 10},
        {"erythritol", NUTRIENT_POLYOLS, POLYOL_ERYTHRITOL, 0, 0},
    };
    for (size_t i = 0; i < COUNT(factors); i++) {
        nutrients n = {.known = (1u << NUTRIENT_COUNT) - 1};
        double kcal, kj;
        n.of[factors[i].which] = 1;
        if (factors[i].which == NUTRIENT_FIBRE || factors[i].which == NUTRIENT_POLYOLS)
            n.of[NUTRIENT_CARBOHYDRATE] = 1; /* a part of it */
        expect_bool(factors[i].name, energy_eu(&n, factors[i].kind, &kcal, &kj), true);
        expect_near(factors[i].name, kcal, factors[i].kcal, 1e-12);
        expect_near(factors[i].name, kj, factors[i].kj, 1e-12);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(energies),
        cmocka_unit_test(annex_xiv_factor_by_factor),
    };
    return cmocka_run_group_tests_name("published: energy factors", tests, NULL, NULL);
}
