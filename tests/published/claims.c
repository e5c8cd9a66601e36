/* Nutrition claims worked by hand from the rules: Regulation (EC) 1924/2006, Annex (protein,
 * fibre, fat and low sugars as a university's and dietitians' guides to food labelling give them,
 * "no added sugars" from its text; the rest from memory) and 21 CFR 101.54, 101.60 to 101.62 with
 * the reference amounts of 101.12 (from memory where the row does not say otherwise). */
#include "unit/support/cmocka_rows.h"

#include "nutrition/claims.h"
#include "unit/support/build_recipe.h"
#include "unit/support/in_english.h"

static const claim *claim_named(const claims *all, const char *name) {
    for (size_t i = 0; i < all->count; i++)
        if (strcmp(all->items[i].claim, name) == 0)
            return &all->items[i];
    fail_msg("no claim \"%s\"", name);
    return NULL;
}

/* A recipe of one food, a single portion of 100 g. */
static claims claims_for(arena *a, const ingredient *what, const char *kind, double pdcaas,
                         label_law law) {
    recipe *r = recipe_new(a, kind);
    recipe_add(a, r, what, 100);
    recipe_finish(r, 1, 0);
    recipe_macros m = macros_of(r);
    protein_quality q = {.known = true, .pdcaas = pdcaas};
    return claims_of(a, r, &m, &q, law);
}

static const struct {
    const char *name, *kind;
    double protein, pdcaas;
    bool good_source, high;
    const char *because; /* of the claim "good source" */
} us_protein[] = {
    {"brownie: 40 g hold 6.0 g, corrected 5.4 g", "brownie", 15, 0.90, true, false, "10.8 %"},
    {"muffin: 110 g hold 13.2 g, corrected 12.54 g", "muffin", 12, 0.95, false, true, "25.1 %"},
    {"cookie: 30 g hold 6.0 g, corrected 2.4 g", "cookie", 20, 0.40, false, false, "4.8 %"},
    {"cookie of full quality: 12 %", "cookie", 20, 1.00, true, false, "12 %"},
    {"exactly 5.0 g is enough", "cookie", 50.0 / 3, 1.00, true, false, "10 %"},
    {"19.5 % is not yet high", "cookie", 32.5, 1.00, true, false, "19.5 %"},
    {"exactly 10.0 g is high", "bar", 25, 1.00, false, true, "20 %"},
    {"griddle cake of 110 g", "griddle cake", 5, 1.00, true, false, "11 %"},
};

static void us_protein_is_corrected_and_per_reference_amount(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(us_protein); i++) {
        ingredient *one = food_of_nothing(a, "mix");
        food_set(one, NUTRIENT_PROTEIN, us_protein[i].protein);
        claims all = claims_for(a, one, us_protein[i].kind, us_protein[i].pdcaas, LAW_US);
        const claim *good = claim_named(&all, "good source of protein");
        expect_bool(us_protein[i].name, good->holds, us_protein[i].good_source);
        expect_bool(us_protein[i].name, claim_named(&all, "high protein")->holds,
                    us_protein[i].high);
        expect_holds_text(us_protein[i].name, in_english(a, good->because), us_protein[i].because);
    }
    arena_free(a);
}

typedef struct {
    const char *name;
    double protein, kj, kcal, fibre; /* of 100 g; energy as the row states it */
    bool source_of_protein, high_protein, source_of_fibre, high_fibre;
} eu_row;

static const eu_row eu_rows[] = {
    {"4.7 g protein of 334 kJ: 23.9 %", 4.7, 334, 80, 0, true, true, false, false},
    {"10 g of 1214 kJ: 14.0 %", 10, 1214, 290, 0, true, false, false, false},
    {"20 g of 1214 kJ: 28.0 %", 20, 1214, 290, 0, true, true, false, false},
    {"12 % to the point", 12, 1700, 400, 0, true, false, false, false},
    {"just under 12 %", 11.9, 1700, 400, 0, false, false, false, false},
    {"20 % to the point", 20, 1700, 400, 0, true, true, false, false},
    {"fibre 5 g of 160 kcal: 3.1 g in 100 kcal", 0, 670, 160, 5, false, false, true, true},
    {"fibre 5 g of 400 kcal", 0, 1670, 400, 5, false, false, true, false},
    {"fibre 6 g", 0, 1670, 400, 6, false, false, true, true},
    {"fibre 3 g", 0, 1670, 400, 3, false, false, true, false},
    {"fibre 2 g of 120 kcal: 1.7 g", 0, 500, 120, 2, false, false, true, false},
    {"fibre 2 g of 400 kcal", 0, 1670, 400, 2, false, false, false, false},
};

static void eu_protein_is_a_share_of_energy(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(eu_rows); i++) {
        const eu_row *row = &eu_rows[i];
        ingredient *one = food_of_nothing(a, "mix");
        food_set(one, NUTRIENT_FIBRE, row->fibre);
        food_set(one, NUTRIENT_PROTEIN, row->protein);
        nutrient_set(&one->per_100_g, NUTRIENT_ENERGY_EU_KJ, row->kj);
        nutrient_set(&one->per_100_g, NUTRIENT_ENERGY_EU, row->kcal);
        claims all = claims_for(a, one, "bar", 0, LAW_EU);
        const struct {
            const char *claim;
            bool holds;
        } wanted[] = {{"source of protein", row->source_of_protein},
                      {"high protein", row->high_protein},
                      {"source of fibre", row->source_of_fibre},
                      {"high fibre", row->high_fibre}};
        for (size_t j = 0; j < COUNT(wanted); j++)
            if (claim_named(&all, wanted[j].claim)->holds != wanted[j].holds)
                fail_msg("%s: %s: %s", row->name, wanted[j].claim,
                         in_english(a, claim_named(&all, wanted[j].claim)->because));
    }
    arena_free(a);
}

/* One figure, one claim: at the limit and just past it. The food holds nothing else but 50 g of
 * carbohydrate. */
static const struct {
    const char *claim;
    label_law law;
    const char *kind;
    nutrient which;
    double holds_at, fails_at; /* per 100 g */
} limits[] = {
    /* per 100 g */
    {"low fat", LAW_EU, "bar", NUTRIENT_FAT, 3, 3.01},
    {"fat-free", LAW_EU, "bar", NUTRIENT_FAT, 0.5, 0.51},
    {"low sugars", LAW_EU, "bar", NUTRIENT_SUGARS, 5, 5.01},
    {"sugars-free", LAW_EU, "bar", NUTRIENT_SUGARS, 0.5, 0.51},
    {"low salt", LAW_EU, "bar", NUTRIENT_SODIUM, 120, 121},
    {"very low salt", LAW_EU, "bar", NUTRIENT_SODIUM, 40, 41},
    {"salt-free", LAW_EU, "bar", NUTRIENT_SODIUM, 5, 5.1},
    /* a muffin's 110 g; a cookie's 30 g count as 50 g */
    {"low fat", LAW_US, "muffin", NUTRIENT_FAT, 2.72, 2.74},
    {"low fat", LAW_US, "cookie", NUTRIENT_FAT, 6, 6.1},
    {"low fat", LAW_US, "brownie", NUTRIENT_FAT, 7.5, 7.6},   /* 40 g */
    {"fat free", LAW_US, "brownie", NUTRIENT_FAT, 0.49, 0.5}, /* the portion of 100 g */
    {"fat free", LAW_US, "muffin", NUTRIENT_FAT, 0.45, 0.46}, /* the 110 g */
    {"sugar free", LAW_US, "brownie", NUTRIENT_SUGARS, 0.49, 0.5},
    {"sodium free", LAW_US, "brownie", NUTRIENT_SODIUM, 4.9, 5},
    {"low saturated fat", LAW_US, "brownie", NUTRIENT_SATURATES, 2.5, 2.51},
    {"sugar free", LAW_US, "muffin", NUTRIENT_SUGARS, 0.45, 0.46},
    {"low sodium", LAW_US, "cookie", NUTRIENT_SODIUM, 280, 281},
    {"very low sodium", LAW_US, "cookie", NUTRIENT_SODIUM, 70, 71},
    {"sodium free", LAW_US, "muffin", NUTRIENT_SODIUM, 4.5, 4.6},
    {"good source of fiber", LAW_US, "brownie", NUTRIENT_FIBRE, 7, 6.9}, /* 2.8 g in 40 g */
    {"good source of fiber", LAW_US, "brownie", NUTRIENT_FIBRE, 13.9, 14},
    {"high fiber", LAW_US, "brownie", NUTRIENT_FIBRE, 14, 13.9},
};

static bool holds_with(arena *a, size_t i, double amount) {
    ingredient *one = food_of_nothing(a, "mix");
    food_set(one, NUTRIENT_CARBOHYDRATE, 50);
    food_set(one, limits[i].which, amount);
    claims all = claims_for(a, one, limits[i].kind, 1, limits[i].law);
    const claim *c = claim_named(&all, limits[i].claim);
    if (!c->tested)
        fail_msg("%s: not tested: %s", limits[i].claim, in_english(a, c->because));
    return c->holds;
}

static void limits_of_each_claim(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(limits); i++) {
        if (!holds_with(a, i, limits[i].holds_at))
            fail_msg("%s, %s: does not hold at its limit", limits[i].claim, limits[i].kind);
        if (holds_with(a, i, limits[i].fails_at))
            fail_msg("%s, %s: holds past its limit", limits[i].claim, limits[i].kind);
    }
    arena_free(a);
}

/* "No mono- or disaccharides nor any other food used for its sweetening properties" (the Annex):
 * dates and date sugar count; polyols do not. */
static const struct {
    const char *name;
    family in;
    double sugars, added; /* of 100 g; negative: not stated */
    bool holds, tested;
} sweet[] = {
    {"date sugar", FAMILY_SWEETENER, 76.5, -1, false, true},
    {"honey", FAMILY_SWEETENER, 82, 82, false, true},
    {"erythritol", FAMILY_SWEETENER, 0, 0, true, true},
    {"date", FAMILY_FRUIT, 63, 0, false, true},
    {"blueberry", FAMILY_FRUIT, 10, 0, true, true},
    {"apple purée", FAMILY_FRUIT_PUREE, 9.4, 0, false, false},
    {"pumpkin purée", FAMILY_FRUIT_PUREE, 3.3, 0, true, true},
    {"apple juice", FAMILY_LIQUID, 9.6, 0, false, false},
    {"dark chocolate", FAMILY_COCOA, 48, 47, false, true},
    {"a pack of cocoa that is silent", FAMILY_COCOA, 40, -1, false, false},
    {"milk", FAMILY_DAIRY, 5, 0, true, true},
    {"a trace of added sugars", FAMILY_FLAVOUR, 0.5, 0.5, true, true},
    {"more than a trace", FAMILY_FLAVOUR, 0.6, 0.6, false, true},
    {"a sweetener with a trace", FAMILY_SWEETENER, 0.5, -1, true, true},
    {"a sweetener with more", FAMILY_SWEETENER, 0.6, -1, false, true},
    {"a sweetener that is silent", FAMILY_SWEETENER, -1, -1, false, false},
    {"fruit that is a fifth sugars", FAMILY_FRUIT, 20, 0, false, true},
    {"fruit that is less", FAMILY_FRUIT, 19.9, 0, true, true},
    {"fruit that is silent", FAMILY_FRUIT, -1, -1, false, false},
    {"a drink of 5 %", FAMILY_LIQUID, 5, 0, false, false},
    {"a drink of less", FAMILY_LIQUID, 4.9, 0, true, true},
};

static void no_added_sugars_goes_by_the_ingredients(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(sweet); i++) {
        ingredient *one = food(a, sweet[i].name, sweet[i].in, "", ORIGIN_PLANT);
        one->hers = true;
        if (sweet[i].sugars >= 0)
            food_set(one, NUTRIENT_SUGARS, sweet[i].sugars);
        if (sweet[i].added >= 0)
            food_set(one, NUTRIENT_ADDED_SUGARS, sweet[i].added);
        for (label_law law = LAW_US; law <= LAW_EU; law++) {
            claims all = claims_for(a, one, "bar", 1, law);
            const claim *c = claim_named(&all, "no added sugars");
            expect_bool(sweet[i].name, c->holds, sweet[i].holds);
            expect_bool(sweet[i].name, c->tested, sweet[i].tested);
        }
    }
    arena_free(a);
}

/* 21 CFR 101.12(b), table 2: brownies, muffins, cakes and breads as a nutrient program's manual
 * copies the table of 2016; the others from memory. */
static void reference_amounts(void **state) {
    (void)state;
    static const struct {
        const char *kind;
        double grams;
    } rows[] = {{"brownie", 40}, {"muffin", 110}, {"cake", 80},    {"cupcake", 80},
                {"loaf", 50},    {"cookie", 30},  {"bar", 40},     {"griddle cake", 110},
                {"waffle", 85},  {"cracker", 30}, {"granola", 60}, {"flatbread", 50},
                {"bread", 50},   {"no-bake", 0}};
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_near(rows[i].kind, reference_amount_g(rows[i].kind), rows[i].grams, 0);
}

/* Pie crust: a sixth of an 8-inch crust or an eighth of a 9-inch one, which is 8 square inches. */
static void a_crust_goes_by_its_area(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = recipe_new(a, "crust");
    recipe_add(a, r, food_of_nothing(a, "dough"), 200);
    recipe_finish(r, 8, 0);
    expect_near("no pan", reference_amount_of(r), 0, 0);
    r->baked_in = (pan){.shape = PAN_ROUND, .length_cm = 9 * 2.54};
    expect_near("9 inches: an eighth", reference_amount_of(r), 200.0 / 8, 0.2);
    r->baked_in.length_cm = 8 * 2.54;
    expect_near("8 inches: a sixth", reference_amount_of(r), 200.0 / 6, 1.6);
    r->baked_in = (pan){.shape = PAN_SQUARE, .length_cm = 20.32};
    expect_near("8 inches square: an eighth", reference_amount_of(r), 200.0 / 8, 1e-9);
    arena_free(a);
}

/* 1.5 g and 10 % of the energy (the Annex); trans fat keeps it from being borne out. */
static void low_saturated_fat_can_only_be_refuted(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double saturates, kj;
        bool tested;
    } saturates[] = {
        {"1.5 g of 1000 kJ: 5.6 %", 1.5, 1000, false},
        {"1.6 g", 1.6, 1000, true},
        {"1 g of 370 kJ: 10 %", 1, 370, false},
        {"1 g of 365 kJ", 1, 365, true},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(saturates); i++) {
        ingredient *one = food_of_nothing(a, "mix");
        food_set(one, NUTRIENT_SATURATES, saturates[i].saturates);
        nutrient_set(&one->per_100_g, NUTRIENT_ENERGY_EU_KJ, saturates[i].kj);
        claims all = claims_for(a, one, "bar", 1, LAW_EU);
        const claim *c = claim_named(&all, "low saturated fat");
        expect_bool(saturates[i].name, c->holds, false);
        expect_bool(saturates[i].name, c->tested, saturates[i].tested);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(us_protein_is_corrected_and_per_reference_amount),
        cmocka_unit_test(eu_protein_is_a_share_of_energy),
        cmocka_unit_test(limits_of_each_claim),
        cmocka_unit_test(no_added_sugars_goes_by_the_ingredients),
        cmocka_unit_test(low_saturated_fat_can_only_be_refuted),
        cmocka_unit_test(reference_amounts),
        cmocka_unit_test(a_crust_goes_by_its_area),
    };
    return cmocka_run_group_tests_name("published: claims", tests, NULL, NULL);
}
