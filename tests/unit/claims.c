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

static claims claims_for(arena *a, const recipe *r, label_law law) {
    recipe_macros m = macros_of(r);
    protein_quality q = quality_of(a, r);
    claims whole = claims_of(a, r, &m, &q, law), brief = claims_brief_of(a, r, &m, &q, law);
    assert_int_equal(brief.count, whole.count);
    for (size_t i = 0; i < whole.count; i++) {
        expect_bool(whole.items[i].claim, brief.items[i].holds, whole.items[i].holds);
        expect_bool(whole.items[i].claim, brief.items[i].tested, whole.items[i].tested);
    }
    return whole;
}

static const double pattern[] = {1.9, 2.8, 6.6, 5.8, 2.5, 6.3, 3.4, 1.1, 3.5};

static ingredient *powder(arena *a) {
    ingredient *one = food_of_nothing(a, "plain powder");
    food_set(one, NUTRIENT_PROTEIN, 40);
    food_set(one, NUTRIENT_CARBOHYDRATE, 40);
    food_set(one, NUTRIENT_FIBRE, 8);
    food_amino_acids(one, pattern, 0.9);
    return one;
}

static void says_why(void **state) {
    (void)state;
    static const struct {
        label_law law;
        const char *claim;
        bool holds;
        const char *rule, *because;
    } rows[] = {
        {LAW_EU, "high protein", true, "Regulation (EC) 1924/2006, Annex",
         "52.8 % of the energy is from protein; the rule asks for at least 20 %"},
        {LAW_EU, "high fibre", true, "Regulation (EC) 1924/2006, Annex",
         "8 g of fibre in 100 g; the rule asks for at least 6 g"},
        {LAW_EU, "low fat", true, "Regulation (EC) 1924/2006, Annex",
         "0 g of fat in 100 g; the rule asks for at most 3 g"},
        {LAW_EU, "no added sugars", true, "Regulation (EC) 1924/2006, Annex",
         "nothing in it sweetens by its sugars; what sugars it has occur naturally"},
        {LAW_US, "high protein", true, "21 CFR 101.54, 101.9(c)(7)",
         "12 g of protein in the reference amount of 30 g, 10.8 g when corrected for its quality "
         "(PDCAAS 0.9), is 21.6 % of the daily value; the rule asks for at least 20 %"},
        {LAW_US, "good source of protein", false, "21 CFR 101.54, 101.9(c)(7)",
         "12 g of protein in the reference amount of 30 g, 10.8 g when corrected for its quality "
         "(PDCAAS 0.9), is 21.6 % of the daily value; the rule asks for less than 20 %"},
        {LAW_US, "low fat", true, "21 CFR 101.62(b)",
         "0 g of fat in the amount for small portions of 50 g; the rule asks for at most 3 g"},
        {LAW_US, "sugar free", true, "21 CFR 101.60(c)",
         "0 g of sugars in the reference amount of 30 g; the rule asks for less than 0.5 g"},
    };
    arena *a = arena_new();
    recipe *r = recipe_new(a, "cookie");
    recipe_add(a, r, powder(a), 100);
    recipe_finish(r, 1, 0);
    for (size_t i = 0; i < COUNT(rows); i++) {
        claims all = claims_for(a, r, rows[i].law);
        const claim *c = claim_named(&all, rows[i].claim);
        expect_bool(rows[i].claim, c->holds, rows[i].holds);
        expect_bool(rows[i].claim, c->tested, true);
        expect_text(rows[i].claim, c->rule, rows[i].rule);
        expect_text(rows[i].claim, in_english(a, c->because), rows[i].because);
    }
    arena_free(a);
}

/* A lower bound can bear out "at least" and refute "at most", never the other way round. */
static const struct {
    const char *name, *claim;
    label_law law;
    nutrient which;
    double of_100_g; /* in the powder, beside as much bran that is silent */
    bool holds, tested;
} bounds[] = {
    {"fibre enough already", "high fibre", LAW_EU, NUTRIENT_FIBRE, 14, true, true},
    {"fibre not enough, yet", "high fibre", LAW_EU, NUTRIENT_FIBRE, 8, false, false},
    {"fat too much already", "low fat", LAW_EU, NUTRIENT_FAT, 7, false, true},
    {"fat little, so far", "low fat", LAW_EU, NUTRIENT_FAT, 2, false, false},
    {"sodium too much already", "low salt", LAW_EU, NUTRIENT_SODIUM, 300, false, true},
    {"sodium little, so far", "low sodium", LAW_US, NUTRIENT_SODIUM, 20, false, false},
    {"saturates too much already", "low saturated fat", LAW_EU, NUTRIENT_SATURATES, 20, false,
     true},
    {"energy unknown", "high protein", LAW_EU, NUTRIENT_PROTEIN, 90, false, false},
};

static void lower_bounds_prove_one_way_only(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(bounds); i++) {
        ingredient *one = powder(a);
        food_set(one, bounds[i].which, bounds[i].of_100_g);
        ingredient *bran = food(a, "silent bran", FAMILY_GRAIN, "", ORIGIN_PLANT);
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, one, 100);
        recipe_add(a, r, bran, 100);
        recipe_finish(r, 1, 0);
        claims all = claims_for(a, r, bounds[i].law);
        const claim *c = claim_named(&all, bounds[i].claim);
        expect_bool(bounds[i].name, c->holds, bounds[i].holds);
        expect_bool(bounds[i].name, c->tested, bounds[i].tested);
        if (!c->tested)
            expect_holds_text(bounds[i].name, in_english(a, c->because), "silent bran");
    }
    arena_free(a);
}

static void expect_untested(arena *a, const recipe *r, label_law law, const char *name,
                            const char *because) {
    claims all = claims_for(a, r, law);
    const claim *c = claim_named(&all, name);
    expect_bool(name, c->holds, false);
    expect_bool(name, c->tested, false);
    expect_holds_text(name, in_english(a, c->because), because);
}

static void what_is_not_known_is_not_tested(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = recipe_new(a, "no-bake");
    recipe_add(a, r, powder(a), 100);
    recipe_finish(r, 1, 0);
    expect_untested(a, r, LAW_US, "high protein",
                    "US law has no reference amount in grams for this kind: no-bake");
    expect_untested(a, r, LAW_EU, "low saturated fat", "trans fat");
    r->kind = NULL;
    expect_untested(a, r, LAW_US, "low fat", "for this kind");
    ingredient *bare = powder(a);
    bare->digestibility = 0;
    bare->name = "bare powder";
    r->kind = "bar";
    recipe_add(a, r, bare, 100);
    recipe_finish(r, 1, 0);
    expect_untested(a, r, LAW_US, "good source of protein",
                    "the quality of the protein of bare powder is not known");
    recipe_add_unknown(a, r, "mystery", 10);
    recipe_finish(r, 1, 0);
    expect_untested(a, r, LAW_EU, "no added sugars", "mystery is not in the pantry");
    recipe_add_unweighed(a, r, bare);
    recipe_finish(r, 1, 0);
    expect_untested(a, r, LAW_EU, "source of fibre", "no weight is known for bare powder");
    expect_untested(a, r, LAW_US, "high protein", "no weight is known for bare powder");
    recipe *empty = recipe_new(a, "bar");
    expect_untested(a, empty, LAW_US, "low fat", "nothing in it is weighed");
    arena_free(a);
}

static void no_energy_no_share(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, food_of_nothing(a, "water"), 100);
    recipe_finish(r, 1, 0);
    expect_untested(a, r, LAW_EU, "source of protein", "it has no energy");
    expect_untested(a, r, LAW_EU, "source of fibre", "it has no energy");
    expect_untested(a, r, LAW_US, "low saturated fat", "it has no energy");
    expect_untested(a, r, LAW_US, "high protein", "the quality of the protein is not known");
    arena_free(a);
}

static void a_swap_gains_and_loses_claims(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *plain = recipe_new(a, "bar"), *sweet = recipe_new(a, "bar");
    recipe_add(a, plain, powder(a), 100);
    recipe_finish(plain, 1, 0);
    ingredient *honey = food_of_nothing(a, "honey");
    food_set(honey, NUTRIENT_CARBOHYDRATE, 82);
    food_set(honey, NUTRIENT_SUGARS, 82);
    food_set(honey, NUTRIENT_ADDED_SUGARS, 82);
    recipe_add(a, sweet, powder(a), 100);
    recipe_add(a, sweet, honey, 10);
    recipe_finish(sweet, 1, 0);
    claims then = claims_for(a, plain, LAW_EU), now = claims_for(a, sweet, LAW_EU);
    word_list gained = claims_gained(a, &then, &now), lost = claims_gained(a, &now, &then);
    assert_int_equal(gained.count, 0);
    assert_int_equal(lost.count, 3);
    expect_text("first", lost.items[0], "low sugars");
    expect_text("second", lost.items[1], "sugars-free");
    expect_text("third", lost.items[2], "no added sugars");
    arena_free(a);
}

static void honey_to_taste_sweetens(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *honey = food(a, "honey", FAMILY_SWEETENER, "", ORIGIN_BEE);
    food_set(honey, NUTRIENT_SUGARS, 82);
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, powder(a), 100);
    recipe_add_to_taste(a, r, honey);
    recipe_finish(r, 1, 0);
    claims all = claims_for(a, r, LAW_EU);
    expect_text("because", in_english(a, claim_named(&all, "no added sugars")->because),
                "honey is added to sweeten");
    arena_free(a);
}

static void hints_where_a_portion_is_far_from_usual(void **state) {
    (void)state;
    static const struct {
        const char *kind;
        double portion_g;
        const char *hint;
    } rows[] = {
        {"cookie", 15, NULL},   {"cookie", 14.9, "A portion weighs 15 g; US law takes 30 g"},
        {"cookie", 60, NULL},   {"cookie", 61, "A portion weighs 61 g"},
        {"no-bake", 500, NULL}, {"cookie", 0, NULL},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *hint =
            in_english(a, reference_amount_hint(a, recipe_new(a, rows[i].kind), rows[i].portion_g));
        if (rows[i].hint)
            expect_holds_text(rows[i].kind, hint, rows[i].hint);
        else
            expect_text(rows[i].kind, hint, NULL);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(says_why),
        cmocka_unit_test(lower_bounds_prove_one_way_only),
        cmocka_unit_test(what_is_not_known_is_not_tested),
        cmocka_unit_test(no_energy_no_share),
        cmocka_unit_test(a_swap_gains_and_loses_claims),
        cmocka_unit_test(honey_to_taste_sweetens),
        cmocka_unit_test(hints_where_a_portion_is_far_from_usual),
    };
    return cmocka_run_group_tests_name("claims", tests, NULL, NULL);
}
