#include "unit/support/cmocka_rows.h"

#include "swap/liquid.h"
#include "unit/support/build_swaps.h"

enum { LINES = 5 };

/* Replaces the whole of line `from` by `to_g` of `to`; `before` gives the balance room. */
static exchange exchange_of(larder *l, const recipe_facts *about, size_t from, const char *to,
                            double to_g, balance *before) {
    *before = balance_of(about->of);
    const recipe_line *line = &about->of->lines.items[from];
    return (exchange){.about = about,
                      .replaced = facts_same_lines(about, from),
                      .before = before,
                      .goes = {{line->what, about->of->weights[from].grams}},
                      .goes_count = 1,
                      .comes = {larder_find(l, to), to_g}};
}

static liquid_change rebalanced(larder *l, const recipe *r, const char *from, const char *to,
                                double to_g) {
    recipe_facts about = larder_facts(l, r);
    balance before;
    exchange made = exchange_of(l, &about, larder_line(l, r, from), to, to_g, &before);
    return liquid_rebalanced(&made);
}

/* By hand. As written: water 0.06 x 30 + 8.55 + 0.905 x 200 = 191.35; taken up 0.375 x (3 x 30 +
 * 2.2 x 100) = 116.25; free 75.10; dry 28.2 + 91.45 + 16 = 135.65; free a g of dry 0.5536.
 * With whey: water 190.87, taken up 0.375 x (0.8 x 30 + 220) = 91.5, free 99.37, dry 136.13.
 * Oat milk brings 0.905 of water and 0.08 of dry: (75.10 + 0.5536 x 0.48 - 99.37) / (0.905 - 0.5536
 * x 0.08) = -27.89. */
static void whey_for_pea_holds_milk_back(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "muffin",
        (portion_of[]){{"pea protein isolate", 30}, {"oat flour", 100}, {"oat milk", 200}}, 3);
    liquid_change change = rebalanced(l, r, "pea protein isolate", "whey protein isolate", 30);
    expect_near("held back", change.grams.typical, -27.89, 0.01);
    assert_int_equal(change.line, 2);
    assert_true(change.rescues);
    /* pea is 1.2 to 6 g/g: the range must be wide, and mostly on the side of more */
    assert_true(change.grams.low < -50 && change.grams.high > -10 && change.grams.high < 0);
    larder_free(l);
}

/* One to two tablespoons for a 30 g scoop when pea stands in for whey: common practice, no
 * source. */
static void pea_for_whey_adds_one_to_two_spoons_a_scoop(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "muffin",
        (portion_of[]){
            {"whey protein isolate", 30}, {"oat flour", 150}, {"egg", 100}, {"oat milk", 200}},
        4);
    liquid_change change = rebalanced(l, r, "whey protein isolate", "pea protein isolate", 30);
    assert_true(change.grams.typical > 15 && change.grams.typical < 33);
    larder_free(l);
}

/* Giving back the water that left with the liquid egg white is no burden on the batch, however much
 * it is, and it is plain water that is given. */
static void a_dried_thing_is_wetted_again_with_water(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "cake", (portion_of[]){{"oat flour", 100}, {"egg white", 200}, {"yogurt", 60}}, 3);
    liquid_change change = rebalanced(l, r, "egg white", "egg white powder", 27);
    assert_true(change.grams.typical > 120 && change.grams.typical < 200);
    assert_true(change.line == SIZE_MAX);
    assert_true(change.rescues);
    larder_free(l);
}

static void the_liquid_is_one_that_the_recipe_has(void **state) {
    (void)state;
    larder *l = larder_new();
    const struct {
        const char *name;
        portion_of lines[LINES];
        double grams;
        const char *line; /* null: none */
    } rows[] = {
        {"milk before purée, though lighter",
         {{"apple purée", 200}, {"whole milk", 60}},
         20,
         "whole milk"},
        {"the heavier of two", {{"water", 40}, {"oat milk", 90}}, -20, "oat milk"},
        {"the heavier of two, other order", {{"oat milk", 90}, {"water", 40}}, -20, "oat milk"},
        {"purée where there is no drink", {{"egg", 100}, {"apple purée", 60}}, 20, "apple purée"},
        {"yogurt likewise", {{"egg", 100}, {"yogurt", 60}}, 20, "yogurt"},
        {"egg is held back", {{"egg white", 120}, {"oat flour", 60}}, -10, "egg white"},
        {"but not added", {{"egg white", 120}, {"oat flour", 60}}, 10, NULL},
        {"lemon juice is no drink", {{"lemon juice", 30}, {"oat flour", 60}}, 10, NULL},
        {"nor a sip of water", {{"water", 8}, {"oat flour", 60}}, 10, NULL},
        {"nor syrup", {{"maple syrup", 80}, {"oat flour", 60}}, -10, NULL},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const recipe *r = larder_recipe(l, "cake", rows[i].lines, LINES);
        recipe_facts about = larder_facts(l, r);
        size_t line = liquid_line(&about, 0, rows[i].grams);
        const char *got = line == SIZE_MAX ? NULL : r->lines.items[line].what->name;
        expect_text(rows[i].name, got, rows[i].line);
        expect_text(rows[i].name, liquid_at(&about, line)->name, got ? got : "water");
    }
    larder_free(l);
}

static void what_is_replaced_lends_no_liquid(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r =
        larder_recipe(l, "cake", (portion_of[]){{"whole milk", 200}, {"water", 40}}, 2);
    recipe_facts about = larder_facts(l, r);
    assert_int_equal(liquid_line(&about, 1, -10), 1);
    assert_true(liquid_line(&about, 3, -10) == SIZE_MAX);
    larder_free(l);
}

static void limits_are_owned_up_to(void **state) {
    (void)state;
    larder *l = larder_new();
    const struct {
        const char *name, *from, *to;
        portion_of lines[LINES];
        double least_g, most_g;
        bool rescues;
    } rows[] = {
        {"a whey cookie turned plant wants a quarter of the batch",
         "whey protein isolate",
         "pea protein isolate",
         {{"whey protein isolate", 60}, {"apple purée", 120}, {"coconut flour", 15}},
         45,
         70,
         false},
        {"no more is held back than the line holds",
         "pea protein isolate",
         "whey protein isolate",
         {{"pea protein isolate", 60}, {"egg", 150}, {"water", 20}, {"almond butter", 100}},
         -20,
         -20,
         false},
        {"nothing to hold back from",
         "pea protein isolate",
         "whey protein isolate",
         {{"pea protein isolate", 60}, {"carrot", 300}, {"almond butter", 50}},
         0,
         0,
         false},
        {"too little to matter",
         "cashew butter",
         "almond butter",
         {{"cashew butter", 100}, {"oat flour", 100}},
         0,
         1.5,
         true},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const recipe *r = larder_recipe(l, "cookie", rows[i].lines, LINES);
        double grams = r->weights[larder_line(l, r, rows[i].from)].grams;
        liquid_change change = rebalanced(l, r, rows[i].from, rows[i].to, grams);
        range g = change.grams;
        if (g.typical < rows[i].least_g - 1e-9 || g.typical > rows[i].most_g + 1e-9)
            fail_msg("%s: got %.3f g", rows[i].name, g.typical);
        expect_bool(rows[i].name, change.rescues, rows[i].rescues);
        expect_bool(rows[i].name, g.low <= g.typical && g.typical <= g.high, true);
    }
    larder_free(l);
}

/* By hand: oat 2.2 x 150 x 0.375 = 123.75 could be taken up, of 12.825 + 50 + 16.17 x 0.4 =
 * 69.293 that are there. Wheat could take up 56.25, and brings 17.88: 74.348. What is lacking stays
 * 44 %: wanted 56.25 x 0.55994 = 31.497 of water. */
static void a_dry_dough_keeps_the_share_it_lacks(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "cookie", (portion_of[]){{"oat flour", 150}, {"butter", 40}, {"water", 50}}, 3);
    liquid_change change = rebalanced(l, r, "oat flour", "all-purpose flour", 150);
    expect_near("held back", change.grams.typical, 31.497 - 74.348, 0.01);
    larder_free(l);
}

/* Dried egg white for fresh takes much water, but that was in the egg: no reason to say that the
 * batch is asked for too much. */
static void water_that_only_makes_up_for_what_went_is_no_harm(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "muffin", (portion_of[]){{"egg white", 140}, {"oat flour", 100}, {"sugar", 50}}, 3);
    liquid_change change = rebalanced(l, r, "egg white", "egg white powder", 18);
    assert_true(change.grams.typical > 0.35 * r->batch_g);
    assert_true(change.rescues);
    larder_free(l);
}

static void an_unknown_uptake_gives_no_figure(void **state) {
    (void)state;
    larder *l = larder_new();
    ingredient *hers = food(l->a, "her powder", FAMILY_PROTEIN_POWDER, "pea", ORIGIN_PLANT);
    food_holds(hers, 80, 5, 5, 2);
    pantry_add(&l->shelf, hers, &l->found);
    const recipe *r = larder_recipe(
        l, "cake", (portion_of[]){{"her powder", 60}, {"whey protein isolate", 60}, {"water", 200}},
        3);
    liquid_change goes = rebalanced(l, r, "her powder", "whey protein isolate", 60);
    liquid_change comes = rebalanced(l, r, "whey protein isolate", "her powder", 60);
    assert_true(goes.grams.typical == 0 && goes.grams.high == 0 && goes.rescues);
    assert_true(comes.grams.typical == 0 && comes.line == SIZE_MAX);
    larder_free(l);
}

/* Batches at the edge: nothing dry at all, and a liquid hardly wetter than the batch. */
static void odd_batches_get_finite_figures(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *wet =
        larder_recipe(l, "pudding", (portion_of[]){{"water", 100}, {"psyllium husk", 0}}, 2);
    liquid_change into_gel = rebalanced(l, wet, "psyllium husk", "psyllium husk", 10);
    expect_near("what the husk takes up, less its own water", into_gel.grams.typical,
                10 * 15 * 0.375 - 0.8, 1e-9);
    const recipe *thin =
        larder_recipe(l, "pudding", (portion_of[]){{"yogurt", 500}, {"sugar", 1}}, 2);
    liquid_change thinned = rebalanced(l, thin, "sugar", "cornstarch", 10);
    assert_true(isfinite(thinned.grams.typical) && thinned.grams.typical > 0);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(whey_for_pea_holds_milk_back),
        cmocka_unit_test(pea_for_whey_adds_one_to_two_spoons_a_scoop),
        cmocka_unit_test(a_dried_thing_is_wetted_again_with_water),
        cmocka_unit_test(the_liquid_is_one_that_the_recipe_has),
        cmocka_unit_test(what_is_replaced_lends_no_liquid),
        cmocka_unit_test(limits_are_owned_up_to),
        cmocka_unit_test(a_dry_dough_keeps_the_share_it_lacks),
        cmocka_unit_test(water_that_only_makes_up_for_what_went_is_no_harm),
        cmocka_unit_test(an_unknown_uptake_gives_no_figure),
        cmocka_unit_test(odd_batches_get_finite_figures),
    };
    return cmocka_run_group_tests_name("liquid", tests, NULL, NULL);
}
